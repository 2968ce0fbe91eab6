package core

import (
	"math"
	"slices"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// turned is what stood in the line when the valves were last turned, and through which hoses the change has been timed
// since. It is never changed in place.
type turned struct {
	cell  fluid.Liquid
	hoses []fluid.Hose
	timed []string
}

func (s *state) turnValves(f *LinedUp) {
	t := &turned{cell: s.plumbing.Cell.Liquid}
	for _, h := range s.plumbing.Hoses {
		h.Charge = append([]fluid.Parcel(nil), h.Charge...)
		t.hoses = append(t.hoses, h)
	}
	s.turned = t
	s.plumbing.Turn(fluid.LineUp{Supply: f.Supply, Return: f.Return})
	s.overrides, s.tint, s.missed = nil, nil, nil
}

func (t *turned) hose(name string) *fluid.Hose {
	if t == nil {
		return nil
	}
	for i := range t.hoses {
		if t.hoses[i].Name == name {
			return &t.hoses[i]
		}
	}
	return nil
}

// clearShare is how much of what is in the line must be of one colour for that to be the colour that the eye sees; and
// how much of it must be old for the change to be one of a whole hose. Common practice, no source.
const clearShare = 0.98

// tintOf is the colour of what came from a compartment; letter 0 is the rig's first water. Empty: not said.
func (s *state) tintOf(letter byte) string {
	if letter == 0 {
		return NoTint
	}
	if c := s.RigCompartment(letter); c != nil {
		return c.Tint
	}
	return ""
}

// old lists by colour how much of cell and hose did not come from a compartment, and all that is in them.
func (s *state) old(cell fluid.Liquid, h *fluid.Hose, to byte) (byTint map[string]int64, old, all int64) {
	byTint = map[string]int64{}
	for _, p := range h.Liquid().Plus(cell).From {
		all += p.N
		if l := s.origins[p.Key].Letter; l != to {
			byTint[s.tintOf(l)] += p.N
			old += p.N
		}
	}
	return byTint, old, all
}

// towards is which way the colour at the nozzle changes from what is in cell and hose to what a compartment gives.
// Empty: not known, because a colour is not said or several stand in the line.
func (s *state) towards(cell fluid.Liquid, h *fluid.Hose, to byte) string {
	byTint, old, _ := s.old(cell, h, to)
	next := s.tintOf(to)
	if old == 0 {
		return BetweenAlike
	}
	for tint, n := range byTint {
		if float64(n) < float64(clearShare*float64(old)) {
			continue
		}
		switch {
		case tint == "" || next == "":
			return ""
		case tint == next:
			return BetweenAlike
		case next == NoTint:
			return TowardsClear
		}
		return TowardsTint
	}
	return ""
}

// TintTo is which way the colour at the nozzle of a hose (empty: the first) will change from what is in the line now to
// what a compartment gives; empty where that is not known.
func (s *state) TintTo(hose string, to byte) string {
	h := s.plumbing.Hose(hose)
	if h == nil || s.rig == nil {
		return ""
	}
	return s.towards(s.plumbing.Cell.Liquid, h, to)
}

// TintSince is the same from what was in the line when the valves were last turned to what is open to the pump now.
func (s *state) TintSince(hose string) string {
	up, h := s.plumbing.LineUp, s.plumbing.Hose(hose)
	if h == nil || len(up.Supply) != 1 {
		return ""
	}
	was := s.turned.hose(h.Name)
	if was == nil {
		return s.TintTo(h.Name, up.Supply[0])
	}
	return s.towards(s.turned.cell, was, up.Supply[0])
}

// resolveTint fills in on what the entry rests: the way the colour changed since the valves were turned, and, where that
// can be learned from, flow, share of the gun and how well all of it is known.
func (s *state) resolveTint(f *TintSeen) (Fact, error) {
	h, up := s.plumbing.Hose(f.Hose), s.plumbing.LineUp
	if f.Missed != "" || h == nil || len(up.Supply) != 1 {
		return f, nil
	}
	was := s.turned.hose(h.Name)
	if was == nil {
		return f, nil
	}
	c := *f
	if c.Direction == "" {
		c.Direction = s.towards(s.turned.cell, was, up.Supply[0])
	}
	_, old, all := s.old(s.turned.cell, was, up.Supply[0])
	whole := was.Air() == 0 && float64(old) >= float64(clearShare*float64(all))
	if (c.Direction != TowardsTint && c.Direction != TowardsClear) || !whole {
		return &c, nil
	}
	if !c.Flow.Known {
		c.Flow = s.flowAt(h.Name)
	}
	if !c.Flow.Known || !(c.Flow.V > 0) {
		return &c, nil
	}
	s.weigh(&c, h)
	return &c, nil
}

// weigh fills in how well each figure is known.
func (s *state) weigh(c *TintSeen, h *fluid.Hose) {
	if !c.GunShare.Known {
		c.GunShare = Known(s.gunShare(c.Flow.V))
	}
	known := s.Learned(h.Name)
	fill := func(m *Maybe[measure.Volume], v measure.Volume) {
		if !m.Known {
			*m = Known(v)
		}
	}
	number := func(m *Maybe[float64], v float64) {
		if !m.Known {
			*m = Known(v)
		}
	}
	fill(&c.HoseSD, known.HoseSD)
	fill(&c.CellSD, known.CellSD)
	fill(&c.FirstSD, share(known.Cell, s.Setting(TintFirstPct)/100))
	number(&c.TimeSD, s.Setting(TintTimeErrorS))
	number(&c.FlowSD, s.Setting(FlowErrorPct)/100)
	number(&c.OddSDs, s.Setting(TintOddSDs))
}

// gunShare is the share of what the pump gives that leaves at the nozzle. Where the rest is not reckoned it is all: the
// cell is then taken to be washed by the gun alone, and what is learned of it is the part that the gun has to wash.
func (s *state) gunShare(gun measure.Flow) float64 {
	up := s.plumbing.LineUp
	if s.rig == nil || !s.rig.PumpFlow.Known || s.rig.PumpFlow.V <= gun || s.plumbing.Compartment(up.Return) == nil {
		return 1
	}
	return float64(gun) / float64(s.rig.PumpFlow.V)
}

// timing is a moment of a changeover: what had gone, how many cells that is past the hose, and what the eye adds to the
// error of the clock.
type timing struct {
	at    measure.Volume
	cells float64
	sd    measure.Volume
}

// timings are the moments that say something. The first trace is seen where the colour comes; where it goes, the first
// change is seen late and says nothing, and full is the last of the colour. Full counts as nine tenths: 2.303 cells.
func (f *TintSeen) timings() []timing {
	var out []timing
	add := func(v Maybe[measure.Volume], s Maybe[float64], cells float64, sd measure.Volume) {
		switch {
		case v.Known:
			out = append(out, timing{v.V, cells, sd})
		case s.Known:
			out = append(out, timing{f.Flow.V.Over(s.V), cells, sd})
		}
	}
	if f.Direction == TowardsTint {
		add(f.Volume, f.Seconds, 0, f.FirstSD.V)
	}
	add(f.Half, f.HalfSeconds, math.Ln2, 0)
	add(f.Full, f.FullSeconds, math.Ln10, 0)
	return out
}

// teaches tells whether an entry has all that the fold needs to learn from it.
func (f *TintSeen) teaches() bool {
	way := f.Direction == TowardsTint || f.Direction == TowardsClear
	return f.Missed == "" && way && f.Flow.Known && f.Flow.V > 0 && f.GunShare.Known && f.HoseSD.Known && f.CellSD.Known &&
		f.TimeSD.Known && f.FlowSD.Known && f.OddSDs.Known && f.HoseSD.V > 0 && len(f.timings()) > 0
}

// learn updates what is known of hose and cell by a changeover that was timed: once for each turning of the valves. The
// ledger follows. What lies too far off is counted and not learned.
func (s *state) learn(f *TintSeen) {
	h := s.plumbing.Hose(f.Hose)
	if h == nil || s.turned == nil || !f.teaches() || slices.Contains(s.turned.timed, h.Name) {
		return
	}
	t := *s.turned
	t.timed = append(append([]string(nil), t.timed...), h.Name)
	s.turned = &t
	l := s.learned.clone(h.Name)
	i := l.index(h.Name)
	if _, could := l.taught(f, i, h.Size, s.plumbing.Cell.Size); !could {
		l = s.learned.clone(h.Name)
		l.hoses[i].odd++
		s.learned = l
		return
	}
	s.learned = l
	s.plumbing.Remeasure(h.Name, l.volume(hoseAt(i)))
	s.plumbing.RemeasureCell(l.volume(cellAt))
}

// taught updates the state by all moments of a changeover. It says how many standard deviations the one that is farthest
// off lay off, and whether that, and what comes of it, could be.
func (l *learning) taught(f *TintSeen, i int, hose, cell measure.Volume) (sds float64, could bool) {
	h := &l.hoses[i]
	if h.n == 0 {
		l.begin(hoseAt(i), float64(hose), float64(f.HoseSD.V))
	}
	if !l.cell {
		l.cell = true
		l.begin(cellAt, float64(cell), float64(f.CellSD.V))
	}
	if h.n == 0 || h.flow != f.Flow.V {
		l.begin(flowOf(i), 0, f.FlowSD.V)
	}
	h.n, h.flow = h.n+1, f.Flow.V
	clock := float64(f.Flow.V.Over(f.TimeSD.V))
	for _, t := range f.timings() {
		v := float64(t.at)
		sd := math.Sqrt(float64(clock*clock) + float64(float64(t.sd)*float64(t.sd)))
		parts := []part{{hoseAt(i), 1}, {flowOf(i), v}, {cellAt, float64(t.cells * f.GunShare.V)}}
		sds = max(sds, l.see(v, sd, parts))
		l.shown = l.shown || t.cells > 0
	}
	const most = float64(LargestVolume)
	mean := l.mean[hoseAt(i)]
	return sds, sds <= f.OddSDs.V && mean >= 1 && mean < most && l.mean[cellAt] >= 0 && l.mean[cellAt] < most
}

// OddTint tells how many standard deviations a timed tint, as Prepare makes it, lies from what is known of hose and cell,
// and how many are too many. It is not odd where nothing could be learned from it.
func (b *Book) OddTint(f *TintSeen) (sds, most float64, odd bool) {
	h := b.plumbing.Hose(f.Hose)
	if h == nil || !f.teaches() {
		return 0, 0, false
	}
	l := b.learned.clone(h.Name)
	sds, could := l.taught(f, l.index(h.Name), h.Size, b.plumbing.Cell.Size)
	return sds, f.OddSDs.V, !could
}
