package say

import (
	"fmt"
	"strconv"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

func dayOpened(f *core.DayOpened) string {
	s := "opened the day " + f.Date
	if f.Operator != "" {
		s += ", " + f.Operator
	}
	return s + ", " + count(len(f.Route), "lawn on the route", "lawns on the route")
}

func dayClosed(f *core.DayClosed) string {
	s := "closed the day"
	if f.Overnight != "" {
		s += "; overnight: " + f.Overnight
	}
	if f.Reason != "" {
		s += "; " + f.Reason
	}
	return s
}

func weather(f *core.Weather) string {
	var parts []string
	if f.Wind.Known {
		w := "wind " + f.Wind.V.Text()
		if f.WindFrom != "" {
			w += " from " + f.WindFrom
		}
		parts = append(parts, w)
	} else if f.WindFrom != "" {
		parts = append(parts, "wind from "+f.WindFrom)
	}
	for _, m := range []struct {
		v            core.Maybe[float64]
		before, unit string
	}{{f.Temp, "", " F"}, {f.Humidity, "humidity ", " %"}, {f.RainFree, "no rain for ", " h"}} {
		if m.v.Known {
			parts = append(parts, m.before+number(m.v.V)+m.unit)
		}
	}
	if f.ForecastHigh.Known || f.ForecastSource != "" || f.ForecastAt != "" {
		parts = append(parts, Forecast(f))
	}
	switch f.Inversion {
	case label.Yes:
		parts = append(parts, "signs of an inversion")
	case label.No:
		parts = append(parts, "no signs of an inversion")
	}
	return "weather: " + and(parts)
}

// Forecast is the high that is forecast, with who made it and when: "forecast high 88 F by county airport at 06:10".
func Forecast(f *core.Weather) string {
	s := "forecast"
	if f.ForecastHigh.Known {
		s += " high " + number(f.ForecastHigh.V) + " F"
	}
	if f.ForecastSource != "" {
		s += " by " + f.ForecastSource
	} else {
		s += ", source not said"
	}
	if f.ForecastAt != "" {
		s += " at " + f.ForecastAt
	}
	return s
}

// number is a figure as it was typed.
func number(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }

func overridden(f *core.Overridden) string {
	s := "went on at " + f.Lawn
	if f.Zone != "" {
		s += " " + f.Zone
	}
	s += " in spite of the " + f.Rule + " finding"
	if f.Weight != "" {
		s += " (" + f.Weight + ")"
	}
	return s + ": " + f.Reason
}

func struck(f *core.Struck) string {
	s := fmt.Sprintf("struck entry %d", f.Of)
	if len(f.Also) > 0 {
		numbers := []string{strconv.FormatInt(f.Of, 10)}
		for _, n := range f.Also {
			numbers = append(numbers, strconv.FormatInt(n, 10))
		}
		s = "struck entries " + and(numbers)
	}
	if f.Reason != "" {
		s += " (" + f.Reason + ")"
	}
	if f.Instead != nil {
		s += "; instead: " + Fact(f.Instead)
	}
	return s
}
