package check

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// The kinds of step of a guided changeover.
const (
	StepWear   = "wear"
	StepValves = "valves"
	StepNozzle = "nozzle" // where to hold it from now on
	StepPush   = "push"
	StepTint   = "tint" // while it is pushed
	StepClean  = "clean"
)

// Step is one of the things to do in a changeover, at the tank lid.
type Step struct {
	Kind string
	Text string
	Into byte   // the compartment of a nozzle or a push; 0: none can take it
	To   string // a place outside, where it is no compartment
	// Volume is what a push pushes; for the tint and for clean, what has gone through the nozzle by then.
	Volume  measure.Volume
	Seconds core.Maybe[float64]
	Set     []core.ValveChange // the valves to set
	Facts   []core.Fact        // what is logged when it is done
}

// Steps lists what to do, in order, until the nozzle gives a compartment's liquid clean enough for the lawn. It is
// empty where nothing is to do, and where the intent names something that the book does not have.
func Steps(b *core.Book, in Intent, to byte) []Step {
	s, err := lookTo(b, in, to)
	if err != nil || s.tank != nil || b.Plumbing().Compartment(to) == nil {
		return nil
	}
	var out []Step
	c := s.toClean()
	if c != nil {
		out = append(out, Step{Kind: StepWear, Text: "Eyewear and gloves on, and what else the label asks (common practice, no source)."})
	}
	switch {
	case c.SweepS() > 0:
		out = append(out, s.sweptStep(c))
	case !s.sameLineUp():
		out = append(out, s.valvesStep())
	}
	if c == nil {
		return out
	}
	return append(out, s.pushSteps(c)...)
}

func (s *situation) valvesStep() Step {
	to := s.up.Supply[0]
	set, stay := s.b.ValvesTo(s.up)
	step := Step{Kind: StepValves, Set: set, Facts: s.turnFacts(nil)}
	step.Text = fmt.Sprintf("Turn supply and return to %c", to)
	if len(set) > 0 {
		step.Text += ": " + positions(set)
	}
	step.Text += "."
	if len(stay) > 0 {
		step.Text += " Leave " + positions(stay) + "."
	}
	return step
}

func positions(valves []core.ValveChange) string {
	var out []string
	for _, v := range valves {
		out = append(out, "valve "+v.Valve+" "+v.To)
	}
	return strings.Join(out, ", ")
}

// pushSteps are those from the first push to clean. The tint comes while the push goes on.
func (s *situation) pushSteps(c *Changeover) []Step {
	tint := s.tintStep(c)
	clean := Step{
		Kind: StepClean, Volume: c.Advised, Seconds: c.AdvisedS,
		Text: fmt.Sprintf("Clean at %s, give or take %s (%s)", s.gone(c.Clean), gal(c.Band), c.Margins),
	}
	if c.Advised > c.Clean {
		clean.Text += fmt.Sprintf("; what was never timed may be more, so go on to %s. Let go of the trigger there: %s of the old liquid is left.", s.gone(c.PushBack), LittleText(c.LeftAt(c.PushBack)))
	} else {
		clean.Text += fmt.Sprintf(": let go of the trigger; %s of the old liquid is left.", LittleText(c.Left))
	}
	if c.Into == 0 {
		push := s.push(c, Leg{Volume: c.PushBack})
		push.Text = fmt.Sprintf("No compartment can take it: push %s into a can, and log where it went.", s.gone(c.PushBack))
		if o := c.Overflow; o != nil {
			push.Text = o.words() + " " + push.Text
		}
		return []Step{push, tint, clean}
	}
	var out []Step
	for i, l := range c.Legs {
		out = append(out, s.nozzle(l, i == 0, i > 1), s.push(c, l))
		if i == 0 {
			out = append(out, tint)
		}
	}
	return append(out, clean)
}

func (s *situation) nozzle(l Leg, first, mostly bool) Step {
	text := fmt.Sprintf("Open the lid of %c and hold the nozzle inside it, above the liquid, never in it.", l.Into)
	switch {
	case l.Into == 0:
		text = fmt.Sprintf("Half of it is new now: over to %s, the nozzle above the liquid there too. Log what becomes of it.", l.Place())
	case !first && mostly:
		text = fmt.Sprintf("It is nearly all new now: over to the lid of %c, the nozzle above the liquid there too.", l.Into)
	case !first:
		text = fmt.Sprintf("Half of it is new now: over to the lid of %c, the nozzle above the liquid there too.", l.Into)
	}
	return Step{Kind: StepNozzle, Text: text, Into: l.Into, To: l.To}
}

func (s *situation) push(c *Changeover, l Leg) Step {
	var air measure.Volume
	if len(c.Legs) == 0 || l == c.Legs[0] {
		air = c.Air // it leaves before the first leg
	}
	step := Step{Kind: StepPush, Into: l.Into, To: l.To, Volume: l.Volume, Text: fmt.Sprintf("Push %s into %s.", s.withSeconds(l.Volume, air), l.Place())}
	if s.with.Flow.Known {
		step.Seconds = core.Known(s.with.Flow.V.Seconds(l.Volume + air))
	}
	if air > 0 {
		step.Text += fmt.Sprintf(" Air comes first, %s of it: the seconds count it, the gallons do not.", gal(air))
	}
	if l.Into != 0 || l.To != "" {
		step.Facts = []core.Fact{&core.PushedBack{Into: l.Into, To: l.To, Volume: l.Volume, Hose: c.Hose}}
	}
	return step
}

// sweptStep turns the supply first and the return once the bypass has washed the cell.
func (s *situation) sweptStep(c *Changeover) Step {
	step := Step{Kind: StepValves, Facts: s.turnFacts(c), Seconds: core.Known(c.SweepS())}
	step.Text = fmt.Sprintf("Gun shut: turn the supply to %c and leave the return on %c for %s s while the pump runs, then turn the return to %c.",
		c.To, c.Into, measure.SecondsText(c.SweepS()), c.To)
	step.Set, _ = s.b.ValvesTo(s.up)
	if len(step.Set) > 0 {
		step.Text += " In the end: " + positions(step.Set) + "."
	}
	if o := c.Order; o != nil {
		step.Text += fmt.Sprintf(" Turned together %s of %c would come into %c by the return; so %s of %c go into %c.", gal(o.Together), c.Into, c.To, gal(o.Held), c.To, c.Into)
	}
	return step
}

// gone is a volume that has left the nozzle with its seconds, where the flow is known; air in the hose leaves before it.
func (s *situation) gone(v measure.Volume) string {
	var air measure.Volume
	if h := s.b.Plumbing().Hose(s.with.Hose); h != nil {
		air = h.Air()
	}
	return s.withSeconds(v, air)
}

func (s *situation) withSeconds(v, air measure.Volume) string {
	if !s.with.Flow.Known {
		return gal(v)
	}
	return gal(v) + " (" + measure.SecondsText(s.with.Flow.V.Seconds(v+air)) + " s)"
}

// LittleText is a volume in gallons, or in fluid ounces where hundredths of a gallon are too coarse for it.
func LittleText(v measure.Volume) string {
	const ounces = 128 // in a gallon
	const least = measure.USGallon / ounces / 100
	switch {
	case v >= measure.Gallons(0.1):
		return gal(v)
	case v > 0 && v < least:
		return "under 0.01 fl oz"
	}
	return strconv.FormatFloat(v.Gallons()*ounces, 'f', 2, 64) + " fl oz"
}
