package core

import (
	"slices"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// applyTruedUp moves what each line says between the unexplained and its zone. It never refuses: a line whose spraying is
// not there moves nothing, and no line takes more than was laid.
func (s *state) applyTruedUp(f *TruedUp) {
	var letter byte
	if len(f.Tank) == 1 {
		letter = f.Tank[0]
	}
	s.day.Laid = slices.Clone(s.day.Laid) // a clone shares it
	var sum measure.Volume
	for i := range f.Lines {
		if at := s.day.nthLaid(&f.Lines[i]); at >= 0 {
			sum += s.trueUp(&s.day.Laid[at], letter, f.Lines[i].More)
		}
	}
	if shown := s.day.ShownBy(letter); shown != nil {
		now := *shown
		now.Trued = Known(now.Trued.V + sum)
		s.day.show(now)
	}
}

// nthLaid is the place in the day's list of what a line names, less than 0 if it is not there.
func (d *Day) nthLaid(t *TruedLine) int {
	n := int64(0)
	for i := range d.Laid {
		if l := &d.Laid[i]; l.Lawn == t.Lawn && l.Zone == t.Zone {
			if n++; n == t.Nth {
				if l.Dry {
					return -1
				}
				return i
			}
		}
	}
	return -1
}

// nth is the place of something laid among what was laid on its zone on the day, from 1.
func (d *Day) nth(at int) int64 {
	n := int64(0)
	for i := range d.Laid[:at+1] {
		if d.Laid[i].Lawn == d.Laid[at].Lawn && d.Laid[i].Zone == d.Laid[at].Zone {
			n++
		}
	}
	return n
}

// trueUp changes what was laid by so much, at its own composition, and returns by how much it did.
func (s *state) trueUp(l *Laid, letter byte, more measure.Volume) measure.Volume {
	if l.Volume <= 0 {
		return 0
	}
	was := fluid.Liquid{Volume: l.Volume, From: l.From, Holds: l.Holds}
	place, now := fluid.ZonePlace(l.Lawn, l.Zone), was
	switch {
	case more > 0:
		add := was.As(more)
		s.plumbing.Outside.Take(fluid.Unexplained, add)
		s.plumbing.Outside.Give(place, add)
		now = was.Plus(add)
	case more < 0:
		var back fluid.Liquid
		back, now = was.Split(-more)
		s.plumbing.Outside.Take(place, back)
		s.plumbing.Outside.Give(fluid.Unexplained, back)
	}
	versions := make([]int32, 0, len(now.Holds))
	for i, p := range was.Holds {
		if i < len(l.Versions) && now.Holds.Of(p.Key) != 0 {
			versions = append(versions, l.Versions[i])
		}
	}
	l.Volume, l.From, l.Holds, l.Versions = now.Volume, now.From, now.Holds, versions
	l.Drew = drewMore(l.Drew, letter, now.Volume-was.Volume)
	s.rememberTruedUp(l, was.Volume)
	return now.Volume - was.Volume
}

// drewMore is the list with so much more from a compartment, made anew.
func drewMore(list []Drew, letter byte, more measure.Volume) []Drew {
	out := make([]Drew, 0, len(list))
	for _, d := range list {
		if d.Letter == letter {
			d.Volume += more
		}
		if d.Volume > 0 {
			out = append(out, d)
		}
	}
	return out
}

// rememberTruedUp puts what was laid into the zone's history as it is now. Each part of the zone got more or less in
// proportion, the one that got most too.
func (s *state) rememberTruedUp(l *Laid, was measure.Volume) {
	i, ok := s.lawnAt[l.Lawn]
	if !ok || s.zoneOf(l.Lawn, l.Zone) == nil {
		return
	}
	s.changeZone(i, l.Zone, func(z *zoneHistory) {
		*z = z.changed(l.Seq, func(laid []Went) []Went {
			out := make([]Went, 0, len(laid))
			for _, w := range laid {
				if n := l.Holds.Of(w.Product); n != 0 {
					w.Amount, w.Peak = n, measure.MulDivRound(w.Peak, int64(l.Volume), int64(was))
					out = append(out, w)
				}
			}
			return out
		})
	})
}

// changed is the history with what an entry laid put in another way; empty takes it out. Links are made anew, because a
// clone shares them.
func (z zoneHistory) changed(seq uint64, change func([]Went) []Went) zoneHistory {
	var newer [][]Went // newest first
	again := func(before *link, laid []Went) *link {
		if laid = change(laid); len(laid) > 0 {
			before = &link{laid: laid, before: before}
		}
		for i := len(newer) - 1; i >= 0; i-- {
			before = &link{laid: newer[i], before: before}
		}
		return before
	}
	for l := z.last; l != nil; l = l.before {
		if l.laid[0].Seq == seq {
			z.last = again(l.before, l.laid)
			return z
		}
		newer = append(newer, l.laid)
	}
	for r := z.older.read(); ; {
		laid := r.link()
		switch {
		case laid == nil:
			return z
		case laid[0].Seq == seq:
			z.older = packed{r.b, z.older.of}
			z.last = again(nil, laid)
			return z
		}
		newer = append(newer, laid)
	}
}
