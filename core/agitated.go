package core

import (
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// movedTank is when liquid last moved in a compartment.
type movedTank struct {
	loaded   Moment // put in from outside; a load mixes
	drawn    Moment // the pump drew from it
	returned Moment // the bypass ran into it
}

// moved is when liquid last moved in each part of the rig. It is shown and warned of; no account rests on it, and it is no
// part of the digest.
type moved struct {
	tanks [6]movedTank // by letter
	cell  Moment       // through pump and manifold
	hoses []movedHose
}

type movedHose struct {
	name string
	at   Moment
	came []inflow // what came in at the pump end, the last one last
}

func (m *moved) of(letter byte) movedTank {
	if i := int(letter) - 'a'; i >= 0 && i < len(m.tanks) {
		return m.tanks[i]
	}
	return movedTank{}
}

func (m *moved) set(letter byte, change func(*movedTank)) {
	if i := int(letter) - 'a'; i >= 0 && i < len(m.tanks) {
		change(&m.tanks[i])
	}
}

// through notes in place that so much went into a hose: clone copies the list.
func (m *moved) through(h *fluid.Hose, v measure.Volume, at Moment) {
	for i := range m.hoses {
		if m.hoses[i].name == h.Name {
			m.hoses[i].at, m.hoses[i].came = at, cameIn(m.hoses[i].came, inflow{v, at}, h.Size)
			return
		}
	}
	m.hoses = append(m.hoses, movedHose{h.Name, at, []inflow{{v, at}}})
}

// follow keeps, of an entry that is about to be applied, where liquid moves: the valves are those before it.
func (s *state) follow(e Entry) {
	switch f := e.What.(type) {
	case *Loaded:
		if _, letter := s.tank(f.Into); letter != 0 && f.Volume > 0 {
			s.moved.set(letter, func(t *movedTank) { t.loaded = e.At })
			s.wetLoaded(letter, f)
		}
	case *PushedBack:
		s.pumped(f.Hose, f.Volume, e.At)
	case *Filled:
		s.pumped(s.Applicator(f.Applicator).hose(), f.Volume, e.At)
	case *Sprayed:
		if s.plumbing.Tank(f.Applicator) == nil {
			s.pumped(s.Applicator(f.Applicator).hose(), f.Volume.V, e.At)
		}
	case *Ran:
		if f.Pump == PumpOn {
			s.ran(e.At)
		}
	case *Rinsed:
		s.wetRinsed(f.Compartment)
	}
}

// pumped: the pump gave so much through a hose.
func (s *state) pumped(hose string, v measure.Volume, at Moment) {
	if h := s.plumbing.Hose(hose); h != nil {
		s.moved.through(h, v, at)
	}
	s.ran(at)
}

// ran: the pump ran with the valves as they stand.
func (s *state) ran(at Moment) {
	up := s.plumbing.LineUp
	if len(up.Supply) == 0 {
		return
	}
	s.moved.cell = at
	for _, l := range up.Supply {
		s.moved.set(l, func(t *movedTank) { t.drawn = at })
		s.wetDrawn(l, at)
	}
	s.moved.set(up.Return, func(t *movedTank) { t.returned = at })
}

// LoadedAt is when a compartment was last loaded; false where the book does not know.
func (s *state) LoadedAt(letter byte) (Moment, bool) {
	at := s.moved.of(letter).loaded
	return at, !at.Zero()
}

// AgitatedAt is when what stands in a compartment was last moved about, as far as the entries say: by a load, by a paddle
// while the day is open, because the engine turns then, by a jet when the pump ran with the return leading to it. False
// where the rig does not say how it is agitated, and where the book has no such time.
func (s *state) AgitatedAt(letter byte, now Moment) (Moment, bool) {
	c := s.RigCompartment(letter)
	if c == nil || c.Agitation == "" {
		return Moment{}, false
	}
	t := s.moved.of(letter)
	at := t.loaded
	switch {
	case c.Agitation == Paddle && s.day.Open:
		return now, true
	case c.Agitation == Paddle && s.day.Closed.Unix > at.Unix:
		at = s.day.Closed
	case c.Agitation == Jet && t.returned.Unix > at.Unix:
		at = t.returned
	}
	return at, !at.Zero()
}

// HoseMovedAt is when something last went through a hose (empty: the first); false where the book does not know.
func (s *state) HoseMovedAt(hose string) (Moment, bool) {
	if h := s.plumbing.Hose(hose); h != nil {
		for _, m := range s.moved.hoses {
			if m.name == h.Name {
				return m.at, true
			}
		}
	}
	return Moment{}, false
}

// CellMovedAt is when the pump last ran, and with it what stands in the mixing cell; false where the book does not know.
func (s *state) CellMovedAt() (Moment, bool) { return s.moved.cell, !s.moved.cell.Zero() }
