package tally

import (
	"slices"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// Worked is what was laid: gallons, pounds spread, and the area treated, once where liquid and dry product met in a visit.
type Worked struct {
	Volume measure.Volume
	Mass   measure.Mass
	Area   measure.Area
}

func (w *Worked) add(o Worked) {
	w.Volume += o.Volume
	w.Mass += o.Mass
	w.Area += o.Area
}

// WorkedWith is what one applicator laid, with a tank of its own or without.
type WorkedWith struct {
	Applicator string
	Worked
}

// WorkedIn is what was laid in one hour of the clock, on all days together.
type WorkedIn struct {
	Hour int // 0 to 23, of the clock on which it was logged
	Worked
}

// TakeWork adds what was laid with an applicator at a moment.
func (t *Tally) TakeWork(applicator string, at core.Moment, w Worked) {
	t.takeWith(WorkedWith{applicator, w})
	t.takeIn(WorkedIn{at.Hour(), w})
}

func (t *Tally) takeWith(w WorkedWith) {
	for i := range t.With {
		if t.With[i].Applicator == w.Applicator {
			t.With[i].add(w.Worked)
			return
		}
	}
	t.With = append(t.With, w)
}

func (t *Tally) takeIn(w WorkedIn) {
	at, found := slices.BinarySearchFunc(t.In, w.Hour, func(e WorkedIn, hour int) int { return e.Hour - hour })
	if !found {
		t.In = slices.Insert(t.In, at, WorkedIn{Hour: w.Hour})
	}
	t.In[at].add(w.Worked)
}
