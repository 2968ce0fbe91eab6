package core

import (
	"strings"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// gives refuses a draw through the pump that the open compartments cannot explain.
func (s *state) gives(hose string, v, bypass measure.Volume) error {
	if len(s.plumbing.LineUp.Supply) == 0 {
		return refuse("Line up a compartment first.", "No compartment is open to the pump, so it runs dry.")
	}
	have, band := s.plumbing.SupplyDrawable(), s.SupplyBand()
	if needs := s.plumbing.Needs(hose, v, bypass); needs > have+band {
		letters := spaced(s.plumbing.LineUp.Supply)
		return beyond("Compartment "+letters, needs, have, band, "Read the gauge of "+letters+" and log it first.")
	}
	return nil
}

// passes refuses what gives does, and a bypass that is out of bounds or for which the compartment of the return has no
// room.
func (s *state) passes(hose string, v measure.Volume, bypass Maybe[measure.Volume]) error {
	if err := bounded("The bypass", bypass.Or(0)); err != nil {
		return err
	}
	if err := s.gives(hose, v, bypass.Or(0)); err != nil {
		return err
	}
	return s.returnFits(hose, v, bypass.Or(0))
}

// returnFits refuses a bypass that would run over: it comes from one compartment and the return leads to another, or to one
// of several that are open and gets more than is drawn from it.
func (s *state) returnFits(hose string, v, bypass measure.Volume) error {
	up, to := s.plumbing.LineUp, s.plumbing.Compartment(s.plumbing.LineUp.Return)
	if to == nil {
		return nil
	}
	if strings.IndexByte(string(up.Supply), up.Return) < 0 {
		r := s.plumbing.Return
		return s.runsOver(to, bypass-max(r.Size-r.Liquid.Volume, 0))
	}
	if len(up.Supply) == 1 || bypass <= to.Room() {
		return nil
	}
	try := s.plumbing.Sketch()
	try.Draw(hose, v, bypass)
	after := try.Compartment(up.Return)
	over := after.Liquid.Volume - after.Capacity
	if over <= 0 {
		return nil
	}
	return refuse(
		returnBack(up.Return),
		"Compartment %c would run over by %s gal: %s gal come through the return, more than is drawn from it, and it has room for %s gal.",
		up.Return, over.Text(), bypass.Text(), to.Room().Text(),
	)
}

func returnBack(l byte) string {
	return "Turn the return back first. If it did not run over, read the gauge of " + string(l) + " and log it, or give the gallons of the bypass."
}

// runsOver refuses what comes through the return into a compartment beyond its room.
func (s *state) runsOver(to *fluid.Compartment, back measure.Volume) error {
	over := back - to.Room()
	if back <= 0 || over <= 0 {
		return nil
	}
	return refuse(
		returnBack(to.Letter),
		"Compartment %c would run over by %s gal: %s gal come through the return, and it has room for %s gal.", to.Letter, over.Text(), back.Text(), to.Room().Text(),
	)
}

func (s *state) admitPushedBack(f *PushedBack) error {
	c := s.plumbing.Compartment(f.Into)
	switch {
	case f.To != "" && f.Into != 0:
		return refuse("Name one of the two.", "The push-back goes into compartment %c and to %s.", f.Into, f.To)
	case f.To != "":
		kind, rest := fluid.Place(f.To).Split()
		if kind != "waste" {
			return refuse("Name a compartment under into, or waste/NAME under to.", "%q is no place that a push-back can go to.", f.To)
		}
		if err := name("place for waste", rest); err != nil {
			return err
		}
	case c == nil:
		return s.noCompartment(f.Into)
	}
	if s.plumbing.Hose(f.Hose) == nil {
		return refuse(s.hosesHint(), "There is no hose %q.", f.Hose)
	}
	if err := positive("The push-back", f.Volume); err != nil {
		return err
	}
	if err := s.passes(f.Hose, f.Volume, f.Bypass); err != nil || c == nil {
		return err
	}
	// Tried on a sketch: the same compartment may feed the pump, or take what stood in the return line.
	try := s.plumbing.Sketch()
	after := try.Compartment(f.Into)
	try.PushBack(f.Hose, f.Volume, f.Bypass.Or(0), after)
	if over := after.Liquid.Volume - after.Capacity; over > 0 {
		return tooMuch(string(f.Into), &c.Tank, f.Volume, f.Volume-over)
	}
	return nil
}

func (s *state) hosesHint() string {
	if s.rig == nil || len(s.rig.Hoses) == 0 {
		return "Enter the hose with the rig first."
	}
	var have []string
	for _, h := range s.rig.Hoses {
		have = append(have, h.Name)
	}
	return "The rig has " + strings.Join(have, ", ") + "."
}

func (s *state) admitFilled(f *Filled) error {
	a := s.Applicator(f.Applicator)
	if a == nil {
		return refuse(s.applicatorsHint(), "There is no applicator %q.", f.Applicator)
	}
	t := s.plumbing.Tank(f.Applicator)
	if t == nil {
		return refuse("Fill one that has a tank.", "%s has no tank of its own.", f.Applicator)
	}
	if err := positive("The fill", f.Volume); err != nil {
		return err
	}
	if err := s.passes(a.Hose, f.Volume, f.Bypass); err != nil {
		return err
	}
	return s.fits(f.Applicator, &t.Tank, f.Volume, 0)
}
