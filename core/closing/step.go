package closing

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// The kinds of step.
const (
	Visits  = "visits" // begun or planned: carried over
	Gauge   = "gauge"
	TrueUp  = "true_up"
	Meters  = "meters"
	Records = "records" // fields that the rule of the state asks for
	Stays   = "stays"   // what stands in a tank or a line overnight; nothing to be logged
	Planned = "planned" // against the plan of the day; nothing to be logged
)

// Step is one thing to do, or to look at, before the day is closed.
type Step struct {
	Kind string
	Of   string // the letter, the lawn, the hose
	Says string
	More string      // what to know of it, beside what is said
	Then string      // what Enter does; empty: it is only to be looked at
	Ask  bool        // a caution stands on it
	Log  []core.Fact // what Enter logs; empty with Then: a figure is to be typed
}

// ID names a step.
func (s *Step) ID() string { return s.Kind + "/" + s.Of }

// CarryReason is why a visit that was not reached is kept for another day.
const CarryReason = "the day ended"

// Steps lists what there is to do, in the order of doing. What is done does not stand there any more.
func Steps(b *core.Book) []Step {
	if !b.Day().Open {
		return nil
	}
	out := visits(b)
	out = append(out, gauges(b)...)
	out = append(out, trueUps(b)...)
	out = append(out, meters(b)...)
	out = append(out, stays(b)...)
	return append(out, planned(b)...)
}

func visits(b *core.Book) []Step {
	d := b.Day()
	var out []Step
	if v := d.Visiting(); v != nil {
		s := Step{Kind: Visits, Of: v.Lawn, Log: check.LeaveRest(b, CarryReason)}
		if rest := check.RestOf(b); len(rest) > 0 {
			s.Says, s.Then = v.Lawn+" is begun and not all of it is done", "end it and carry the rest over"
		} else {
			s.Says, s.Then = v.Lawn+" is not ended", "end it"
		}
		return append(out, s)
	}
	next := d.Next()
	if len(next) == 0 {
		return nil
	}
	s := Step{Kind: Visits, Of: "planned", Then: "carry over what was not reached"}
	var names []string
	for _, v := range next {
		names = append(names, v.Lawn)
		s.Log = append(s.Log, check.SkipAndCarry(b, v.Lawn, CarryReason, true)...)
	}
	s.Says = fmt.Sprintf("%d not reached: %s", len(names), strings.Join(names, ", "))
	return append(out, s)
}

// moved tells whether a compartment holds something else than its last reading of the day said, or, where it was not read, than in the
// morning.
func moved(b *core.Book, c *fluid.Compartment) bool {
	if read := b.Day().LastReading(c.Letter); read != nil {
		return c.Liquid.Volume != read.Read
	}
	f := c.Flows
	return f.Drawn != 0 || f.Loaded != 0 || f.PushedIn != 0 || f.Other != 0
}

// gauges asks for a reading of each compartment that was drawn from, and of one that holds something and was not read today.
func gauges(b *core.Book) []Step {
	var out []Step
	p := b.Plumbing()
	for i := range p.Compartments {
		c := &p.Compartments[i]
		s := Step{
			Kind: Gauge, Of: string(c.Letter), Then: "log what the gauge reads",
			Says: fmt.Sprintf("gauge of %c: booked %s gal, give or take %s", c.Letter, c.Liquid.Volume.Text(), b.Band(&c.Tank).Text()),
		}
		switch {
		case moved(b, c):
		case c.Drawable() > 0 && b.Day().LastReading(c.Letter) == nil:
			s.More = "not drawn from today"
		default:
			continue
		}
		out = append(out, s)
	}
	return out
}

func trueUps(b *core.Book) []Step {
	var out []Step
	p := b.Plumbing()
	for i := range p.Compartments {
		letter := string(p.Compartments[i].Letter)
		t, err := b.TrueUp(letter)
		if err != nil || len(t.Lines) == 0 {
			continue
		}
		out = append(out, Step{
			Kind: TrueUp, Of: letter, Then: "put the lawns right by it", Log: []core.Fact{&core.TruedUp{Tank: letter}},
			Says: fmt.Sprintf("%s: %s, over %s", letter, t.Words(), counted(len(t.Lines), "spraying")),
		})
	}
	return out
}

func counted(n int, of string) string {
	if n == 1 {
		return "1 " + of
	}
	return fmt.Sprintf("%d %ss", n, of)
}

// meters asks for those that were ever read, once what is laid on a day is laid; of a book that never read any it asks for the odometer and
// the engine's hours.
func meters(b *core.Book) []Step {
	m := b.Meters()
	var last []string
	due := false
	for _, x := range namedMeters(&m) {
		if !x.Last.Known {
			continue
		}
		last = append(last, fmt.Sprintf("%s %v %s", x.name, x.Last.V, x.unit))
		due = due || x.At.Unix <= lastWork(b.Day()).Unix
	}
	switch {
	case len(last) == 0:
		return []Step{{Kind: Meters, Then: "log what the meters say", Says: "odometer and hour meter: never read"}}
	case due:
		return []Step{{Kind: Meters, Then: "log what the meters say", Says: "meters, last: " + strings.Join(last, ", ")}}
	}
	return nil
}

type namedMeter struct {
	core.Meter
	name, unit string
}

func namedMeters(m *core.Meters) []namedMeter {
	return []namedMeter{{m.Odometer, "odometer", "mi"}, {m.Engine, "engine", "h"}, {m.Pump, "pump", "h"}}
}

// lastWork is when the last was laid in the day, else when it was opened.
func lastWork(d *core.Day) core.Moment {
	at := d.Opened
	for i := range d.Laid {
		if d.Laid[i].At.Unix > at.Unix {
			at = d.Laid[i].At
		}
	}
	return at
}

// stays lists what stands in tanks and lines overnight, with a caution where it is more than water.
func stays(b *core.Book) []Step {
	var out []Step
	p := b.Plumbing()
	add := func(of, place string, l fluid.Liquid, mix string) {
		if l.Volume <= 0 {
			return
		}
		mixed := len(l.Holds) > 0
		s := Step{Kind: Stays, Of: of, Ask: mixed}
		switch {
		case mix != "":
			s.Says = fmt.Sprintf("%s: %s gal of %s", place, l.Volume.Text(), mix)
		case mixed:
			s.Says = fmt.Sprintf("%s: %s gal with %s", place, l.Volume.Text(), holds(b, l.Holds))
		default:
			s.Says = fmt.Sprintf("%s: %s gal of water", place, l.Volume.Text())
		}
		out = append(out, s)
	}
	settle := check.Agitated(b, b.Day().Opened)
	for i := range p.Compartments {
		c := &p.Compartments[i]
		letter, n := string(c.Letter), len(out)
		add(letter, letter, c.Liquid, b.MixIn(letter))
		if at, loaded := b.LoadedAt(c.Letter); len(out) > n && out[n].Ask {
			out[n].More = standingWords(len(settle[i].Settles) > 0, at, loaded)
		}
	}
	for i := range p.Tanks {
		t := &p.Tanks[i]
		add(t.Name, t.Name, t.Liquid, b.MixIn(t.Name))
	}
	for i := range p.Hoses {
		var in fluid.Liquid
		for _, c := range p.Hoses[i].Charge {
			in = in.Plus(c.Liquid)
		}
		add("hose "+p.Hoses[i].Name, "hose "+p.Hoses[i].Name, in, "")
	}
	add("cell", "pump, strainer and manifold", p.Cell.Liquid, "")
	for i := range p.Hoppers {
		h := &p.Hoppers[i]
		if m := h.Mass(); m > 0 {
			out = append(out, Step{Kind: Stays, Of: "hopper " + h.Name, Says: fmt.Sprintf("hopper of %s: %s", h.Name, measure.DryAmount(m).Text())})
		}
	}
	return out
}

func holds(b *core.Book, parts fluid.Parts) string {
	var out []string
	for _, h := range parts {
		p := b.ProductByKey(h.Key)
		out = append(out, measure.Amount{N: h.N, Kind: p.Label.Form}.Text()+" of "+p.ProductName)
	}
	return strings.Join(out, ", ")
}

// StandingCaution stands below what stays in the tanks overnight.
//
// Source: Texas A&M extension, as the setting standing_h has it: spray within a few hours, never leave it overnight in solution.
const StandingCaution = "What stands overnight may settle, separate or lose strength: the label says whether it may, and how long."
