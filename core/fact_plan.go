package core

import "example.com/tintline/core/measure"

// DayPlanned: this is how the operator means to do the day: the order, what comes from where, where the truck is refilled,
// and what was reckoned of it. It moves nothing; what comes otherwise needs no other plan. A later one for the same day takes
// its place.
type DayPlanned struct {
	Date   string
	Order  string // OrderGiven, OrderBest
	Visits []PlannedZone
	Loads  []PlannedLoad
	// What the plan was reckoned to come to. Saved are the minutes by which the order is shorter than the operator's own.
	Changeovers Maybe[float64]
	Minutes     Maybe[float64]
	Saved       Maybe[float64]
	Miles       Maybe[float64] // great-circle
	Cost        Maybe[measure.Money]
}

// PlannedZone is a zone in the order of the day, and what goes on it.
type PlannedZone struct {
	Lawn, Zone string
	Area       measure.Area
	Mix        string // empty: there is none for it
	From       string // a letter, or an applicator with a tank of its own
	With       string // the applicator
}

// PlannedLoad is what goes into a tank: in the morning, or before a lawn.
type PlannedLoad struct {
	Into   string // a letter, or an applicator
	Mix    string
	For    string // the applicator whose delivery rate it is made up for
	Volume measure.Volume
	Before string // the lawn before which it is loaded; empty: in the morning
	Place  string // where; empty: where the truck is
}

// The orders of a day that can be accepted.
const (
	OrderGiven = "given"
	OrderBest  = "best"
)

// Kind of the fact.
func (*DayPlanned) Kind() Kind { return kindPlanned }

// Name of the fact.
func (*DayPlanned) Name() string { return "day_planned" }

func (f *DayPlanned) fields(w walker) {
	w.text(1, "date", &f.Date)
	w.text(2, "order", &f.Order)
	list(w, 3, "visits", &f.Visits, func(w walker, v *PlannedZone) {
		w.text(1, "lawn", &v.Lawn)
		w.text(2, "zone", &v.Zone)
		w.area(3, "area", &v.Area)
		w.text(4, "mix", &v.Mix)
		w.text(5, "from", &v.From)
		w.text(6, "with", &v.With)
	})
	list(w, 4, "loads", &f.Loads, func(w walker, l *PlannedLoad) {
		w.text(1, "into", &l.Into)
		w.text(2, "mix", &l.Mix)
		w.text(3, "for", &l.For)
		w.volume(4, "volume", &l.Volume)
		w.text(5, "before", &l.Before)
		w.text(6, "place", &l.Place)
	})
	w.maybeNumber(5, "changeovers", &f.Changeovers)
	w.maybeNumber(6, "minutes", &f.Minutes)
	w.maybeNumber(7, "saved_min", &f.Saved)
	w.maybeNumber(8, "miles", &f.Miles)
	w.maybeMoney(9, "cost", &f.Cost)
}

// Lawns are those of the plan, each once, in their order.
func (f *DayPlanned) Lawns() []string {
	var out []string
	for _, v := range f.Visits {
		if len(out) == 0 || out[len(out)-1] != v.Lawn {
			out = append(out, v.Lawn)
		}
	}
	return out
}
