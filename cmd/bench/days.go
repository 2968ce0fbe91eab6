package main

import (
	"slices"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// lastYear is the year in which every book ends, so that a short book and a long one have their last day in common.
const lastYear = 2025

// all writes the whole book.
func (w *writer) all() {
	demo, err := fromDemo()
	if err != nil {
		w.err = err
		return
	}
	years, days := w.years, w.days
	if years == 0 {
		years, days = 1, 1
	}
	for n := range years {
		dates := season(lastYear-years+1+n, w.days)
		dates = dates[len(dates)-days:]
		w.morning(dates[0], 4)
		if n == 0 {
			w.reseed(0) // so that every book has the same lawns
			w.setUp(demo)
		} else {
			w.reseed(uint64(dates[0].Year()))
			w.newYear(demo, n)
		}
		for i, d := range dates {
			w.day(d, n == years-1 && i == len(dates)-1)
			if w.err != nil {
				return
			}
		}
	}
}

// season lists the working days of a year: from the middle of February on, without Sundays where there is room.
func season(year, days int) []time.Time {
	var out []time.Time
	for d := time.Date(year, 2, 15, 0, 0, 0, 0, time.UTC); len(out) < days; d = d.AddDate(0, 0, 1) {
		if d.Weekday() != time.Sunday || days > 260 {
			out = append(out, d)
		}
	}
	return out
}

// offset is that of the clock in the cab, in seconds.
const offset = -5 * 3600

func (w *writer) morning(d time.Time, hour int64) {
	w.at = core.Moment{Unix: d.Unix() + hour*3600 - offset, Offset: offset}
}

// route is the lawns of a day; it goes round the book, so that each comes again after some weeks.
func (w *writer) route(d time.Time) []string {
	lawns := w.book.Lawns()
	first := (d.Year()*366 + d.YearDay()) * w.visits
	var out []string
	for i := range w.visits {
		out = append(out, lawns[(first+i)%len(lawns)].LawnName)
	}
	for i := 0; i+neighbours <= len(out); i += neighbours {
		part := out[i : i+neighbours]
		w.r.Shuffle(len(part), func(i, j int) { part[i], part[j] = part[j], part[i] })
	}
	// Those of one mix follow each other.
	slices.SortStableFunc(out, func(a, b string) int { return w.class(a) - w.class(b) })
	return out
}

// class is 0 for lawns that get what feeds the pump, 1 for the others.
func (w *writer) class(lawn string) int {
	if isWarm(w.book.Lawn(lawn).Zones[0].Grass) == (w.up() != coolLetter) {
		return 0
	}
	return 1
}

func (w *writer) day(d time.Time, last bool) {
	w.reseed(uint64(d.Unix()))
	w.morning(d, 6)
	route := w.route(d)
	w.log(&core.DayOpened{Date: d.Format(time.DateOnly), Operator: "J. Example", Route: route})
	w.opened++
	w.turned = 0
	w.loads()
	w.weather()
	if w.up() == 0 {
		w.log(&core.LinedUp{Supply: []byte{warmLetter}, Return: warmLetter})
	}
	for i, lawn := range route {
		w.reseed(uint64(d.Unix()) + uint64(i) + 1)
		w.visit(lawn, i)
		w.calls++
	}
	if last && w.open {
		return
	}
	w.evening(d)
}

// loads plans, ticks and puts in what the tanks are short of.
func (w *writer) loads() {
	for _, l := range []struct {
		letter byte
		mix    string
	}{{anyLetter, mixAny}, {coolLetter, mixCool}, {warmLetter, mixWarm}} {
		c := w.book.Plumbing().Compartment(l.letter)
		room := c.Room() - c.Capacity/10
		if room < measure.Gallons(10) {
			continue
		}
		room = measure.Gallons(float64(int(room.Gallons())))
		into := string(rune(l.letter))
		w.log(&core.LoadPlanned{Into: into, Volume: room, Mix: l.mix, For: "gun"})
		for _, p := range w.book.Mix(l.mix).Parts {
			w.wait(1)
			w.log(&core.Ticked{List: core.LoadList(into), Item: p.Product})
		}
		w.wait(3)
		w.log(&core.Loaded{Into: into, Volume: room, Mix: l.mix, For: "gun"})
	}
	w.loadTank("ride-on", mixWarm, 12)
	w.loadTank("backpack", mixAny, 3)
}

// loadTank puts a mix straight into an applicator's tank when it is nearly empty.
func (w *writer) loadTank(applicator, mix string, gallons float64) {
	t := w.book.Plumbing().Tank(applicator)
	if v := measure.Gallons(gallons); t.Room() >= v {
		w.log(&core.Loaded{Into: applicator, Volume: v, Mix: mix, For: applicator})
	}
}

// evening rinses now and then, and closes the day; now and then it is forgotten.
func (w *writer) evening(d time.Time) {
	w.reseed(uint64(d.Unix()) + uint64(w.visits) + 1)
	w.wait(10)
	if c := w.book.Plumbing().Compartment(anyLetter); d.Day() == 1 || c.Liquid.Volume < measure.Gallons(12) {
		w.log(&core.Rinsed{Compartment: anyLetter, Water: measure.Gallons(8), To: "waste/pad"})
	}
	if w.chance(4) {
		w.log(&core.Cleaned{What: core.Strainers})
	}
	if !w.chance(90) {
		w.wait(5)
		w.log(&core.DayClosed{Overnight: "left in the tanks"})
	}
}
