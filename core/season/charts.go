package season

import (
	"fmt"
	"time"

	"example.com/tintline/core/calib"
	"example.com/tintline/core/measure"
)

// manyDays is how many days stand one by one in a chart; of a longer season the last ones do, and all of it by the week.
const manyDays = 31

// Charts are the plots of a season.
func (s *Season) Charts() []Chart {
	out := []Chart{s.gallonsByDay(), s.areaByDay()}
	if len(s.Days) > manyDays {
		out = append(out, s.gallonsByWeek(), s.areaByWeek())
	}
	return append(out, s.drift(), s.nitrogenByMonth())
}

func (s *Season) lastDays() ([]Day, string) {
	if n := len(s.Days); n > manyDays {
		return s.Days[n-manyDays:], fmt.Sprintf(", the last %d days of %d on which something was laid", manyDays, n)
	}
	return s.Days, ""
}

func bars(days []Day, name func(Day) string, value func(Day) float64, step float64, places int) []Bar {
	var values []float64
	total := 0.0
	for _, d := range days {
		v := value(d)
		values, total = append(values, v), total+v
	}
	printed := measure.LargestRemainder(values, total, step)
	out := make([]Bar, len(days))
	for i, d := range days {
		out[i] = Bar{Name: name(d), Value: values[i], Says: measure.Commas(printed[i], places)}
	}
	return out
}

func gallons(d Day) float64    { return d.Volume.Gallons() }
func squareFeet(d Day) float64 { return d.Area.SquareFeet() }
func dayName(d Day) string     { return d.Date }

func (s *Season) gallonsByDay() Chart {
	days, more := s.lastDays()
	return Chart{Title: "gallons by day" + more, Unit: "gal", Bars: bars(days, dayName, gallons, 0.1, 1), None: "nothing was sprayed in " + s.Year}
}

func (s *Season) areaByDay() Chart {
	days, more := s.lastDays()
	return Chart{Title: "area by day" + more, Unit: "sq ft", Bars: bars(days, dayName, squareFeet, 10, 0), None: "nothing was treated in " + s.Year}
}

func (s *Season) gallonsByWeek() Chart {
	return Chart{Title: "gallons by week, from its Monday", Unit: "gal", Bars: bars(weeks(s.Days), dayName, gallons, 0.1, 1)}
}

func (s *Season) areaByWeek() Chart {
	return Chart{Title: "area by week, from its Monday", Unit: "sq ft", Bars: bars(weeks(s.Days), dayName, squareFeet, 10, 0)}
}

// weeks adds days up from Monday on. A week without work has its line too, so that a gap is seen.
func weeks(days []Day) []Day {
	var out []Day
	for _, d := range days {
		t, err := time.Parse(time.DateOnly, d.Date)
		if err != nil {
			continue
		}
		monday := t.AddDate(0, 0, -(int(t.Weekday())+6)%7)
		for len(out) > 0 && out[len(out)-1].Date < monday.AddDate(0, 0, -7).Format(time.DateOnly) {
			last, err := time.Parse(time.DateOnly, out[len(out)-1].Date)
			if err != nil {
				break
			}
			out = append(out, Day{Date: last.AddDate(0, 0, 7).Format(time.DateOnly)})
		}
		if name := monday.Format(time.DateOnly); len(out) == 0 || out[len(out)-1].Date != name {
			out = append(out, Day{Date: name})
		}
		out[len(out)-1].add(d.Sums)
	}
	return out
}

func (s *Season) drift() Chart {
	c := Chart{Title: "rate by applicator against the one meant", Unit: "per cent", Both: true, None: "no catch test was accepted, and the gauges teach nothing yet"}
	for _, d := range s.Drifts {
		name := d.Applicator + " " + d.Date
		says := fmt.Sprintf("%+.1f, %s", 100*d.Share, calib.RateText(d.Rate))
		if d.Date == "" {
			name = d.Applicator + " by gauges"
			says = fmt.Sprintf("%+.1f +- %.1f, %d readings", 100*d.Share, 100*d.Band, d.Readings)
		}
		c.Bars = append(c.Bars, Bar{Name: name, Value: float64(100 * d.Share), Says: says})
	}
	return c
}

func (s *Season) nitrogenByMonth() Chart {
	c := Chart{Title: "nitrogen by month", Unit: "lb", None: "nothing with nitrogen was laid in " + s.Year}
	var values []float64
	total := 0.0
	for i := range s.Months {
		v := s.Months[i].Mass.Pounds()
		values, total = append(values, v), total+v
	}
	for i, v := range measure.LargestRemainder(values, total, 0.01) {
		m := &s.Months[i]
		says := measure.Commas(v, 2)
		if m.Area > 0 {
			per, _ := m.Rate().In("lb_per_1000_sqft") // the unit is in the table
			says += fmt.Sprintf(", %.2f per 1,000 sq ft", per)
		}
		if len(m.Unknown) > 0 {
			says = "at least " + says
		}
		c.Bars = append(c.Bars, Bar{Name: m.Month, Value: values[i], Says: says})
	}
	return c
}
