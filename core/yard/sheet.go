package yard

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// LoadSheet is one planned load in the order of doing, a line for each thing that is ticked.
type LoadSheet struct {
	Plan     core.LoadPlanned
	Tank     string // of a compartment its name; of an applicator's tank the applicator
	Lines    []SheetLine
	Findings []check.Finding
	Verdict  check.Weight
	Jar      *batch.Jar // where a pair meets for the first time
	Unmet    [][2]string
	Standing measure.Volume // that is in the tank already
	Water    measure.Volume // of the load
	// Metered is what the water meter gave, MeterOff by how much that is more than the water of the load, in per cent; unknown
	// until both readings are typed. MeterWrong: it is off by more than the setting meter_off_pct.
	Metered    core.Maybe[measure.Volume]
	MeterOff   core.Maybe[float64]
	MeterWrong bool
	Working    []batch.Step
}

// What a line asks for besides its tick.
const (
	AsksJar   = "jar"
	AsksPlace = "place"
	AsksMeter = "meter"
)

// SheetLine is a line of the sheet.
type SheetLine struct {
	Item    string // as it is ticked
	Says    string
	Amount  measure.Amount // of water and products
	Done    bool
	Asks    string
	Details []Detail
}

// Detail is what is to be heeded at a line, and on what it rests.
type Detail struct{ Says, Source string }

// SheetOf gives the sheet of the load that is planned for a compartment or an applicator's tank.
func SheetOf(b *core.Book, at core.Moment, into string) (LoadSheet, error) {
	p := b.LoadPlan(into)
	if p == nil {
		return LoadSheet{}, measure.Troublef(plannedHint(b), "No load is planned for %s.", into)
	}
	l := check.BeforeLoad(b, at, p)
	s := LoadSheet{Plan: *p, Findings: l.Findings, Verdict: l.Verdict, Unmet: l.Unmet, Tank: into}
	if len(into) == 1 {
		if c := b.RigCompartment(into[0]); c != nil && c.Name != "" {
			s.Tank = c.Name
		}
		if c := b.Plumbing().Compartment(into[0]); c != nil {
			s.Standing = c.Liquid.Volume
		}
	} else if t := b.Plumbing().Tank(into); t != nil {
		s.Standing = t.Liquid.Volume
	}
	s.Water = p.Volume
	for _, part := range p.Parts {
		if part.Amount.Kind == measure.Liquid {
			s.Water -= measure.Volume(part.Amount.N)
		}
	}
	s.jar(b, l.Standing)
	d := drafting{b: b, s: &s, adding: l.Adding}
	d.draft()
	for i := range s.Lines {
		s.Lines[i].Done = b.StepTicked(p, s.Lines[i].Item)
	}
	s.meter(b)
	return s, nil
}

func plannedHint(b *core.Book) string {
	var names []string
	for _, p := range b.LoadPlans() {
		names = append(names, p.Into)
	}
	if len(names) == 0 {
		return "Plan one first, on the page of loads or as a load_planned entry."
	}
	return "One is planned for " + strings.Join(names, ", ") + "."
}

// jar makes the load small, where a pair meets for the first time. What stands in the tank has no amount in the load, so
// that a jar with it is made from the tank.
func (s *LoadSheet) jar(b *core.Book, standing []string) {
	if len(s.Unmet) == 0 {
		return
	}
	ask := batch.JarAsk{Volume: s.Plan.Volume, Order: b.MixingOrder()}
	if a := b.Applicator(s.Plan.For); a != nil {
		ask.Delivery = a.Delivery
	}
	for _, p := range s.Plan.Parts {
		ask.Parts = append(ask.Parts, batch.JarPart{Name: p.Product, Entry: b.Product(p.Product).Label, Amount: p.Amount})
	}
	if j, err := batch.JarOf(ask); err == nil && len(standing) == 0 {
		s.Jar = &j
	}
}

// JarProducts are those that a jar is asked of: of the pairs that meet for the first time, else all of the load.
func (s *LoadSheet) JarProducts() []string {
	var out []string
	for _, p := range s.Unmet {
		for _, n := range p {
			if !slices.Contains(out, n) {
				out = append(out, n)
			}
		}
	}
	if len(out) > 0 {
		return out
	}
	for _, p := range s.Plan.Parts {
		out = append(out, p.Product)
	}
	return out
}

// meter holds what the meter gave against the water of the load.
func (s *LoadSheet) meter(b *core.Book) {
	before, after := s.Plan.MeterBefore, s.Plan.MeterAfter
	if !before.Known || !after.Known || s.Water <= 0 {
		return
	}
	s.Metered = core.Known(after.V - before.V)
	off := 100 * float64(s.Metered.V-s.Water) / float64(s.Water)
	s.MeterOff = core.Known(off)
	s.MeterWrong = math.Abs(off) > b.Setting(core.MeterOffPct)
	s.Working = append(s.Working, batch.Step{Says: fmt.Sprintf("meter: %s gal less %s gal = %s gal; the load has %s gal of water: %+.1f %%",
		after.V.Text(), before.V.Text(), s.Metered.V.Text(), s.Water.Text(), off)})
}

// MeterWords says what the meter gave; empty until both readings are there.
func (s *LoadSheet) MeterWords() string {
	if !s.MeterOff.Known {
		return ""
	}
	words := fmt.Sprintf("The meter gave %s gal for %s gal of water", s.Metered.V.Text(), s.Water.Text())
	switch off := s.MeterOff.V; {
	case off >= 0.1:
		words += fmt.Sprintf(", %.1f %% more", off)
	case off <= -0.1:
		words += fmt.Sprintf(", %.1f %% less", -off)
	}
	if s.MeterWrong {
		return words + ": the strength is off by as much."
	}
	return words + "."
}

// Next is the first line after one that is not done, else the first of all that is not; nil when none is left besides that
// one. Without one it is the first.
func (s *LoadSheet) Next(after string) *SheetLine {
	at := 0
	for i, l := range s.Lines {
		if l.Item == after {
			at = i + 1
		}
	}
	for i := range s.Lines {
		if l := &s.Lines[(at+i)%len(s.Lines)]; !l.Done && l.Item != after {
			return l
		}
	}
	return nil
}

// Line is the line of an item; nil if there is none.
func (s *LoadSheet) Line(item string) *SheetLine {
	for i := range s.Lines {
		if s.Lines[i].Item == item {
			return &s.Lines[i]
		}
	}
	return nil
}

// DoneOf counts the lines that are done, and all of them.
func (s *LoadSheet) DoneOf() (done, all int) {
	for _, l := range s.Lines {
		if l.Done {
			done++
		}
	}
	return done, len(s.Lines)
}

// MeterMeant is what the water meter is to show at the end; unknown where the first reading is.
func (s *LoadSheet) MeterMeant() core.Maybe[measure.Volume] {
	if !s.Plan.MeterBefore.Known {
		return core.Maybe[measure.Volume]{}
	}
	return core.Known(s.Plan.MeterBefore.V + s.Water)
}
