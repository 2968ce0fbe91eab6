package core

import (
	"fmt"
	"math"
	"slices"

	"example.com/tintline/core/measure"
)

// TrueUp is what a compartment's last reading asks to put right on the lawns.
type TrueUp struct {
	Shown
	GiveOrTake measure.Volume // of the difference, standard uncertainty
	Share      measure.Volume // of the difference, that of this day
	Lines      []TruedSpray   // put right
	Left       []TruedSpray   // left as they are: they were not logged by area
}

// TruedSpray is one spraying on one zone, and by how much it is put right.
type TruedSpray struct {
	TruedLine
	At             Moment
	Applicator, By string
	Area           measure.Area
	Laid           int // its place in the day's list
}

// TrueUp works out a true-up by the last reading of a compartment. The error says why there is none; what the reading
// showed is told beside it.
func (s *state) TrueUp(tank string, include ...string) (TrueUp, error) {
	if err := s.admitTruedTank(tank, include); err != nil {
		return TrueUp{}, err
	}
	letter := tank[0]
	t := TrueUp{Shown: *s.day.ShownBy(letter)}
	t.GiveOrTake = s.shownBand(&t.Shown)
	var weights []int64
	for i := t.First; i < min(t.To, len(s.day.Laid)); i++ {
		l := &s.day.Laid[i]
		v := l.DrewFrom(letter)
		if v <= 0 {
			continue
		}
		line := TruedSpray{TruedLine{l.Lawn, l.Zone, s.day.nth(i), l.Volume, 0}, l.At, l.Applicator, l.By, l.Area, i}
		if l.By != ByArea && !slices.Contains(include, l.By) {
			t.Left = append(t.Left, line)
			continue
		}
		t.Lines, weights = append(t.Lines, line), append(weights, int64(v))
	}
	t.Share = t.Off
	if t.Earlier > 0 {
		t.Share = measure.Volume(measure.MulDivRound(int64(t.Off), int64(t.Drawn), int64(t.Drawn+t.Earlier)))
	}
	return t, t.apportion(letter, weights)
}

// apportion shares the difference in proportion to the gallons, or says why not.
func (t *TrueUp) apportion(letter byte, weights []int64) error {
	switch {
	case t.Trued.Known:
		return t.twice()
	case t.Off == 0 || absolute(t.Off) <= t.GiveOrTake:
		return refuse("Leave the lawns as they are.", "The gauge of %c shows %s; that is within what it can tell, give or take %s gal.", letter, t.Words(), t.GiveOrTake.Text())
	case len(t.Lines) == 0:
		return refuse("Leave it in the unexplained, or include those logged by gallons or by gauge.", "The gauge of %c shows %s, and no spraying from it was logged by area since %s.", letter, t.Words(), t.Since.Clock())
	case t.Share == 0:
		return refuse("Leave it in the unexplained.", "The gauge of %c shows %s, and all of it was drawn on days before.", letter, t.Words())
	}
	var sum int64
	for _, w := range weights {
		sum += w
	}
	if int64(-t.Share) >= sum {
		return refuse("Look for a load that was not logged, or read the gauge again.", "The gauge of %c shows %s; that is all that was laid from it by area, %s gal.", letter, t.Words(), measure.Volume(sum).Text())
	}
	for i, n := range measure.Apportion(weights, int64(t.Share)) {
		t.Lines[i].More = measure.Volume(max(n, 1-weights[i]))
	}
	t.Lines = slices.DeleteFunc(t.Lines, func(l TruedSpray) bool { return l.More == 0 })
	return nil
}

func (t *Shown) twice() error {
	return refuse("Read the gauge again; the next reading goes on from here.", "The reading of %c at %s was trued up already, by %s gal.", t.Letter, t.At.Clock(), t.Trued.V.Text())
}

// Words is the difference in trade words: "2.4 gal more gone than was logged".
func (t *Shown) Words() string {
	switch {
	case t.Off > 0:
		return fmt.Sprintf("%s gal more gone than was logged", t.Off.Text())
	case t.Off < 0:
		return fmt.Sprintf("%s gal less gone than was logged", (-t.Off).Text())
	}
	return "just what was logged"
}

// shownBand is the standard uncertainty of the difference: that of the reading, and of the one before where the span began
// with one. A reading of which no chart tells has the settings' share of the tank.
func (s *state) shownBand(t *Shown) measure.Volume {
	one := func(v measure.Volume) float64 {
		if c := s.plumbing.Compartment(t.Letter); v <= 0 && c != nil {
			return float64(float64(c.Capacity) * (s.Setting(GaugeErrorPct) / 100))
		}
		return float64(v)
	}
	now := one(t.Band)
	sum := float64(now * now)
	if t.By != FromLoad {
		before := one(t.BandBefore)
		sum += float64(before * before)
	}
	return measure.Volume(math.RoundToEven(math.Sqrt(sum)))
}

func absolute(v measure.Volume) measure.Volume { return max(v, -v) }

// resolveTruedUp fills in the lines, where none is given, and what they come to.
func (s *state) resolveTruedUp(f *TruedUp) (Fact, error) {
	c := *f
	if len(c.Lines) == 0 {
		t, err := s.TrueUp(c.Tank, c.Include...)
		if err != nil {
			return nil, err
		}
		for i := range t.Lines {
			c.Lines = append(c.Lines, t.Lines[i].TruedLine)
		}
	}
	if len(c.Tank) == 1 && !c.Showed.Known {
		if shown := s.day.ShownBy(c.Tank[0]); shown != nil {
			c.Showed = Known(shown.Off)
		}
	}
	if !c.Moved.Known {
		for i := range c.Lines {
			if absolute(c.Lines[i].More) > LargestVolume {
				return nil, bounded("A line of the true-up", absolute(c.Lines[i].More))
			}
		}
		c.Moved = Known(c.Sum())
	}
	return &c, nil
}
