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
	Into byte // the compartment of a nozzle or a push; 0: none can take it
	// Volume is what a push pushes; for the tint and for clean, what has gone through the nozzle by then.
	Volume  measure.Volume
	Seconds core.Maybe[float64]
	Set     []core.ValveChange // the valves to set
	Facts   []core.Fact        // what is logged when it is done
}

// Steps lists what to do, in order, until the nozzle gives a compartment's liquid clean enough for the lawn. It is
// empty where nothing is to do, and where the intent names something that the book does not have.
func Steps(b *core.Book, in Intent, to byte) []Step {
	in.From = to
	s, err := look(b, in)
	if err != nil || s.tank != nil || b.Plumbing().Compartment(to) == nil {
		return nil
	}
	var out []Step
	c := s.toClean()
	if c != nil {
		out = append(out, Step{Kind: StepWear, Text: "Eyewear and gloves on, and what else the label asks (common practice, no source)."})
	}
	if !s.sameLineUp() {
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
	step := Step{Kind: StepValves, Set: set, Facts: []core.Fact{&core.LinedUp{Supply: s.up.Supply, Return: s.up.Return}}}
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
		clean.Text += fmt.Sprintf("; hose and cell were never timed, so go on to %s. Let go of the trigger there: %s of the old liquid is left.", s.gone(c.PushBack), little(c.LeftAt(c.PushBack)))
	} else {
		clean.Text += fmt.Sprintf(": let go of the trigger; %s of the old liquid is left.", little(c.Left))
	}
	if c.Into == 0 {
		push := s.push(0, c.PushBack)
		push.Text = fmt.Sprintf("No compartment can take it: push %s into a can, and log where it went.", s.gone(c.PushBack))
		return []Step{push, tint, clean}
	}
	var out []Step
	for i, l := range c.Legs {
		out = append(out, s.nozzle(l.Into, i == 0), s.push(l.Into, l.Volume))
		if i == 0 {
			out = append(out, tint)
		}
	}
	return append(out, clean)
}

func (s *situation) nozzle(into byte, first bool) Step {
	text := fmt.Sprintf("Open the lid of %c and hold the nozzle inside it, above the liquid, never in it.", into)
	if !first {
		text = fmt.Sprintf("Half of it is new now: over to the lid of %c, the nozzle above the liquid there too.", into)
	}
	return Step{Kind: StepNozzle, Text: text, Into: into}
}

func (s *situation) push(into byte, v measure.Volume) Step {
	step := Step{Kind: StepPush, Into: into, Volume: v, Text: fmt.Sprintf("Push %s into %c.", s.gone(v), into)}
	if s.with.Flow.Known {
		step.Seconds = core.Known(s.with.Flow.V.Seconds(v))
	}
	if into != 0 {
		step.Facts = []core.Fact{&core.PushedBack{Into: into, Volume: v}}
	}
	return step
}

// gone is a volume with its seconds, where the flow is known.
func (s *situation) gone(v measure.Volume) string {
	if !s.with.Flow.Known {
		return gal(v)
	}
	return gal(v) + " (" + measure.SecondsText(s.with.Flow.V.Seconds(v)) + " s)"
}

// little is a volume in fluid ounces where hundredths of a gallon are too coarse for it.
func little(v measure.Volume) string {
	const ounces = 128 // in a gallon
	if v >= measure.Gallons(0.1) {
		return gal(v)
	}
	return strconv.FormatFloat(v.Gallons()*ounces, 'f', 2, 64) + " fl oz"
}
