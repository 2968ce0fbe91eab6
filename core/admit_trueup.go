package core

import (
	"fmt"

	"example.com/tintline/core/measure"
)

// mostTruedLines is how many sprayings one true-up may put right: more than a day has.
const mostTruedLines = 2000

// admitTruedTank refuses a tank whose last reading can put nothing right.
func (s *state) admitTruedTank(tank string, include []string) error {
	if err := s.needDay("true up"); err != nil {
		return err
	}
	if s.plumbing.Tank(tank) != nil {
		return refuse("Name the compartment by its letter.", "The tank of %s has no gauge that is read, so nothing shows what left it.", tank)
	}
	if len(tank) != 1 || s.plumbing.Compartment(tank[0]) == nil {
		return refuse(s.tanksHint(), "There is no compartment %q.", tank)
	}
	for _, by := range include {
		if by != ByArea && by != ByGallons && by != ByGauge {
			return refuse("Write area, gallons or gauge.", "The true-up is to include sprayings by %q, which is none of the ways.", by)
		}
	}
	if s.day.ShownBy(tank[0]) == nil {
		return refuse("Read the gauge and log it; then true up.", "The gauge of %s was not read on %s.", tank, s.day.Date)
	}
	return nil
}

func (s *state) admitTruedUp(f *TruedUp) error {
	if err := s.admitTruedTank(f.Tank, f.Include); err != nil {
		return err
	}
	shown := s.day.ShownBy(f.Tank[0])
	switch {
	case shown.Trued.Known:
		return shown.twice()
	case f.Showed.V != shown.Off:
		return refuse("Leave showed out.", "The gauge of %s shows %s, and the true-up says %s gal.", f.Tank, shown.Words(), f.Showed.V.Text())
	case len(f.Lines) == 0 || len(f.Lines) > mostTruedLines:
		return refuse("Give 1 to 2,000 lines.", "The true-up has %d lines.", len(f.Lines))
	}
	var names []string
	for i := range f.Lines {
		l := &f.Lines[i]
		if err := s.admitTruedLine(f.Tank[0], shown, l); err != nil {
			return err
		}
		names = append(names, fmt.Sprintf("%s/%s, %d", l.Lawn, l.Zone, l.Nth))
	}
	if err := unique("spraying", names); err != nil {
		return err
	}
	sum := f.Sum()
	if f.Moved.V != sum {
		return refuse("Leave moved out.", "The lines come to %s gal, and the true-up says %s gal.", sum.Text(), f.Moved.V.Text())
	}
	if absolute(sum) > absolute(shown.Off) {
		return refuse("Move no more than that.", "The lines move %s gal; the gauge of %s shows %s.", absolute(sum).Text(), f.Tank, shown.Words())
	}
	return nil
}

// admitTruedLine refuses a line that names no spraying of the span, or moves the wrong way or more than there is.
func (s *state) admitTruedLine(letter byte, shown *Shown, t *TruedLine) error {
	on := t.Lawn + ", " + t.Zone
	at := s.day.nthLaid(t)
	if at < shown.First || at >= shown.To {
		return refuse("Leave the lines out; they are worked out.", "Spraying %d on %s is none between %s and the reading of %c at %s.", t.Nth, on, shown.Since.Clock(), letter, shown.At.Clock())
	}
	l := &s.day.Laid[at]
	drew := l.DrewFrom(letter)
	switch {
	case l.Volume != t.Logged:
		return refuse("Leave the lines out; they are worked out.", "Spraying %d on %s has %s gal; the true-up says that %s gal were logged.", t.Nth, on, l.Volume.Text(), t.Logged.Text())
	case drew <= 0:
		return refuse("Leave that line out.", "Spraying %d on %s drew nothing from %c.", t.Nth, on, letter)
	case t.More == 0 || (t.More > 0) != (shown.Off > 0):
		return refuse("Give each line a share of that.", "The line of %s moves %s gal; the gauge of %c shows %s.", on, signedText(t.More), letter, shown.Words())
	case t.More <= -drew:
		return refuse("Take less than that.", "The line of %s takes %s gal away; %s gal were laid there from %c.", on, (-t.More).Text(), drew.Text(), letter)
	case t.More > LargestVolume:
		return bounded("A line of the true-up", t.More)
	}
	return nil
}

func signedText(v measure.Volume) string {
	if v < 0 {
		return "-" + (-v).Text()
	}
	return v.Text()
}
