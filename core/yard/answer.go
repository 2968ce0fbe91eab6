package yard

import (
	"math"

	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/check"
)

// Answer is what every question gets, in the form in which it is shown.
type Answer struct {
	Kind     string // "topup", "stretch", ...
	About    string // what was asked, with what was taken from the book: "top up b, lawn weed for gun, to 150.0 gal"
	Possible bool
	Says     []string // the figures, the ones to act on first
	Why, Do  string   // where it is not possible
	Findings []Finding
	Steps    []batch.Step
	Plan     *core.LoadPlanned // what Enter would plan; nil: nothing is to be planned
	Done     *core.Dumped      // what is logged once it was done; nil: nothing is
	Facts    map[string]any    // figures for a script: keys end in their unit
}

// Finding is what check says of the answer, the heaviest first.
type Finding struct {
	Weight           check.Weight
	Says, Do, Source string
}

// note adds a finding behind those that are as heavy.
func (a *Answer) note(f Finding) {
	at := len(a.Findings)
	for at > 0 && a.Findings[at-1].Weight < f.Weight {
		at--
	}
	a.Findings = append(a.Findings, Finding{})
	copy(a.Findings[at+1:], a.Findings[at:])
	a.Findings[at] = f
}

// practice is the source of what is known without one.
const practice = "common practice, no source"

// finite is a figure for a script; nil where it is without end.
func finite(f float64) any {
	if math.IsInf(f, 0) || math.IsNaN(f) {
		return nil
	}
	return f
}
