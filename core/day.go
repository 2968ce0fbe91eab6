package core

import (
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// The states of a visit.
const (
	Planned = "planned"
	Begun   = "begun"
	Done    = "done"
	Skipped = "skipped"
)

// Visit is one call at one lawn on one day.
type Visit struct {
	Lawn         string
	State        string
	Reason       string // why it was skipped
	Begun, Ended Moment
}

// Laid is what one spraying or spreading put on one zone.
type Laid struct {
	Seq        uint64
	At         Moment
	Lawn, Zone string
	Grass      string
	Applicator string
	Volume     measure.Volume
	Area       measure.Area
	From       fluid.Parts // by origin
	Holds      fluid.Parts // by product
	Dry        bool        // spread by weight: no volume
}

// Reading is a gauge reading of the day: what it said, and what the book had thought.
type Reading struct {
	Letter       byte
	Read, Booked measure.Volume
	At           Moment
}

// Day is the open day, or the last one.
type Day struct {
	Open      bool
	Date      string
	Operator  string
	FlowModel int64
	LeftOpen  string // date of a day that was never closed and ended when this one was opened; empty if none
	Opened    Moment
	Closed    Moment
	Last      Moment // of the last entry in it
	Visits    []Visit
	Laid      []Laid
	Readings  []Reading
	Overnight string
}

func (d Day) clone() Day {
	d.Visits = append([]Visit(nil), d.Visits...)
	d.Laid = d.Laid[:len(d.Laid):len(d.Laid)]
	d.Readings = d.Readings[:len(d.Readings):len(d.Readings)]
	return d
}

// Visiting is the visit that is begun and not ended, nil if none is.
func (d *Day) Visiting() *Visit {
	for i := range d.Visits {
		if d.Visits[i].State == Begun {
			return &d.Visits[i]
		}
	}
	return nil
}

// Next lists the visits that are still planned, in order.
func (d *Day) Next() []Visit {
	var out []Visit
	for _, v := range d.Visits {
		if v.State == Planned {
			out = append(out, v)
		}
	}
	return out
}

// Number is the place of the visit now, or of the next one, and how many there are.
func (d *Day) Number() (at, of int) {
	for i, v := range d.Visits {
		if v.State == Begun {
			return i + 1, len(d.Visits)
		}
	}
	for i, v := range d.Visits {
		if v.State == Planned {
			return i + 1, len(d.Visits)
		}
	}
	return len(d.Visits), len(d.Visits)
}

// LaidAt lists what this visit has put down on its lawn so far.
func (d *Day) LaidAt(v *Visit) []Laid {
	var out []Laid
	for _, l := range d.Laid {
		if l.Lawn == v.Lawn && l.At.Unix >= v.Begun.Unix {
			out = append(out, l)
		}
	}
	return out
}

// find is the visit at a lawn in one of the states, the first if there are several.
func (d *Day) find(lawn string, states ...string) *Visit {
	for _, s := range states {
		for i := range d.Visits {
			if d.Visits[i].Lawn == lawn && d.Visits[i].State == s {
				return &d.Visits[i]
			}
		}
	}
	return nil
}
