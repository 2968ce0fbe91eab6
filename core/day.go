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
	Kind         string // what it is for; empty until it is begun
	Cause        string // of a call-back
	Reason       string // why it was skipped
	Begun, Ended Moment
	// Due is what was owed on the lawn when the visit was begun: that is what it is for. Empty: all of the lawn.
	Due []ZoneRest
	// Carried names the zones that were carried over while it was on.
	Carried []string
	// Price is what it is charged, as its entry says.
	Price Maybe[measure.Money]

	begun, ended uint64 // the entries that did; 0: none
	before       uint64 // the entry that ended the visit before at the same lawn
	dueSince     string // the date since which Due was owed
}

// Hold is why the day waits, and since when.
type Hold struct {
	Cause string
	Since Moment
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
	Versions   []int32     // of each of Holds: which of the product's label entries was in force, from 0
	Dry        bool        // spread by weight: no volume
	By         string      // how a spraying was measured
	Drew       []Drew      // from which compartments, whatever stood in the hose
	Load       LoadMark    // the load it came from, with the lawns up to this one; Seq 0: not known
}

// Reasoned is a reason that was given, and the entry.
type Reasoned struct {
	Seq  uint64
	What Overridden
}

// Reading is a gauge reading of the day: what it said, and what the book had thought.
type Reading struct {
	Letter       byte
	Read, Booked measure.Volume
	At           Moment
}

// Off is how much more the gauge said than was booked.
func (r Reading) Off() measure.Volume { return r.Read - r.Booked }

// LastReading is the last gauge reading of a compartment on this day, nil if there was none.
func (d *Day) LastReading(letter byte) *Reading {
	for i := len(d.Readings) - 1; i >= 0; i-- {
		if d.Readings[i].Letter == letter {
			return &d.Readings[i]
		}
	}
	return nil
}

// Day is the open day, or the last one.
type Day struct {
	Open bool
	Date string
	Seq  uint64 // the entry that opened it
	// Before is the entry that opened the day before, and BeforeDate its date; 0 and empty: this is the first.
	Before     uint64
	BeforeDate string
	Operator   string
	FlowModel  int64
	LeftOpen   string // date of a day that was never closed and ended when this one was opened; empty if none
	Opened     Moment
	Closed     Moment
	Last       Moment // of the last entry in it
	Hold       *Hold  // nil: it does not wait
	Visits     []Visit
	Laid       []Laid
	Readings   []Reading
	Spans      []LevelSpan // by compartment, where one began since the day did
	Shown      []Shown     // by compartment, of the last reading
	Overnight  string
	Looked     []WeatherAt // the observations of the weather, in order
	Recorded   []Recorded  // what was filled into the record
	Reasons    []Reasoned  // what was gone on with in spite of a finding
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

// LaidAt lists what this visit has put down on its lawn so far: what was logged while it was on, and before, if
// that was after the arrival.
func (d *Day) LaidAt(v *Visit) []Laid {
	var out []Laid
	for _, l := range d.Laid {
		if l.Lawn != v.Lawn || l.Seq <= v.before || (v.ended != 0 && l.Seq >= v.ended) {
			continue
		}
		if l.Seq > v.begun || l.At.Unix >= v.Begun.Unix {
			out = append(out, l)
		}
	}
	return out
}

// lastEnd is the entry that ended the last visit at a lawn today, 0 if none did.
func (d *Day) lastEnd(lawn string) uint64 {
	var last uint64
	for i := range d.Visits {
		if d.Visits[i].Lawn == lawn {
			last = max(last, d.Visits[i].ended)
		}
	}
	return last
}

// left is when the operator left the last lawn, or opened the day.
func (d *Day) left() (at Moment, where string) {
	at = d.Opened
	for i := range d.Visits {
		// A visit skipped from afar says nothing of where he was.
		if v := &d.Visits[i]; v.ended != 0 && !v.Begun.Zero() && v.Ended.Unix > at.Unix {
			at, where = v.Ended, v.Lawn
		}
	}
	return at, where
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
