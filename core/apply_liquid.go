package core

import (
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// applyLoaded puts a load into a compartment, an applicator's tank or its hopper.
func (s *state) applyLoaded(f *Loaded) {
	if h := s.loadsHopper(f); h != nil {
		s.applyHopperLoad(f, h)
		return
	}
	t, letter := s.tank(f.Into)
	if t == nil {
		return
	}
	s.endPlan(f.Into)
	s.meet(f.Parts)
	s.noteFill(f)
	empty := t.Liquid.Volume <= t.Heel
	l := fluid.Liquid{Volume: f.Volume}
	packages := map[int32]fluid.Place{}
	for _, p := range f.Parts {
		if k, ok := s.productAt[p.Product]; ok {
			l.Holds = l.Holds.Plus(fluid.Parts{{Key: int32(k), N: p.Amount.N}})
			packages[int32(k)] = fluid.PackagePlace(p.Product)
		}
	}
	s.batches[f.Into] = batchName(s.batches[f.Into], f.Mix, empty)
	if empty {
		t.Moved, t.ReadBand = 0, 0
	}
	s.noteLoad(letter, empty)
	if letter == 0 {
		l.From = fluid.Parts{{Key: s.origin(0, s.batches[f.Into]), N: int64(f.Volume)}}
	} else {
		t.Rename(s.origin(letter, s.batches[f.Into]), empty)
	}
	s.plumbing.Load(t, l, packages, func(k int32) bool { return s.products[k].Now().Label.Form == measure.Liquid })
}

// batchName is what the liquid is called after a load: a top-up without a mix keeps the name, one with
// another mix names both.
func batchName(before, mix string, empty bool) string {
	switch {
	case empty:
		return mix
	case mix == "" || mix == before:
		return before
	case before == "":
		return mix
	}
	return before + " + " + mix
}

// tank finds the tank of a letter or an applicator; the letter is 0 for an applicator.
func (s *state) tank(name string) (*fluid.Tank, byte) {
	if len(name) == 1 {
		if c := s.plumbing.Compartment(name[0]); c != nil {
			return &c.Tank, c.Letter
		}
	}
	if t := s.plumbing.Tank(name); t != nil {
		return &t.Tank, 0
	}
	return nil, 0
}

// applyDumped lets liquid run out of a place, or dry product out of a hopper.
func (s *state) applyDumped(f *Dumped) {
	if !f.Amount.Known {
		s.plumbing.Dump(fluid.Place(f.From), f.Volume.V, fluid.Place(f.To))
		return
	}
	if kind, n := fluid.Place(f.From).Split(); kind == "applicator" {
		if h := s.plumbing.Hopper(n); h != nil {
			s.plumbing.Empty(h, f.Amount.V, fluid.Place(f.To))
		}
	}
}

func (s *state) applyFilled(f *Filled) {
	t, a := s.plumbing.Tank(f.Applicator), s.Applicator(f.Applicator)
	if t == nil || a == nil {
		return
	}
	if t.Liquid.Volume == 0 {
		t.Moved = 0
		delete(s.batches, f.Applicator)
	}
	s.plumbing.Fill(a.Hose, f.Volume, f.Bypass.Or(0), t)
}

// applyPushedBack sprays the hose into a compartment, or to a place outside.
func (s *state) applyPushedBack(f *PushedBack) {
	if f.To != "" {
		s.plumbing.PushOut(f.Hose, f.Volume, f.Bypass.Or(0), fluid.Place(f.To))
		return
	}
	if c := s.plumbing.Compartment(f.Into); c != nil {
		s.plumbing.PushBack(f.Hose, f.Volume, f.Bypass.Or(0), c)
	}
}

// applySprayed draws what was sprayed and lays it, parcel by parcel in the order in which it left the
// nozzle, on the zones in their order, each with the share of its area.
func (s *state) applySprayed(e Entry, f *Sprayed) {
	s.noteDraw(f)
	s.noteJob(f)
	before := s.drawnBy()
	out := s.plumbing.Laying(s.Applicator(f.Applicator).hose(), f.Applicator, f.Volume.V, f.Bypass.Or(0))
	parts, over := s.spread(f, out)
	for _, l := range over {
		s.plumbing.Outside.Give(fluid.Unexplained, l)
	}
	for _, part := range parts {
		laid := Laid{
			Seq: e.Seq, At: e.At, Lawn: f.Lawn, Zone: part.Zone.Name, Grass: part.Zone.Grass,
			Applicator: f.Applicator, Area: part.Area, By: f.By,
		}
		for _, l := range part.Parcels {
			laid.Volume += l.Volume
			laid.From, laid.Holds = laid.From.Plus(l.From), laid.Holds.Plus(l.Holds)
			s.plumbing.Outside.Give(fluid.ZonePlace(f.Lawn, part.Zone.Name), l)
		}
		laid.Drew = s.drewSince(before, laid.Volume)
		s.lay(laid, part.Parcels)
	}
}

func (a *Applicator) hose() string {
	if a == nil {
		return ""
	}
	return a.Hose
}

// ZonePart is what one zone gets of a spraying.
type ZonePart struct {
	Zone    Zone
	Area    measure.Area
	Volume  measure.Volume
	Parcels []fluid.Liquid
}

// spread shares a spraying over its zones: area by what is meant of each, volume by area, parcels in order. What
// no zone takes, because an entry names none that the book knows, is over.
func (s *state) spread(f *Sprayed, out []fluid.Liquid) (zones []ZonePart, over []fluid.Liquid) {
	lawn := s.Lawn(f.Lawn)
	if lawn == nil {
		return nil, out
	}
	var parts []ZonePart
	var weights []int64
	for _, n := range f.Zones {
		if z, ok := lawn.Zone(n); ok {
			parts = append(parts, ZonePart{Zone: z})
			weights = append(weights, int64(s.AreaMeant(f.Lawn, z)))
		}
	}
	areas := measure.Apportion(weights, int64(f.Area.V))
	volumes := measure.Apportion(areas, int64(f.Volume.V))
	for i := range parts {
		parts[i].Area, parts[i].Volume = measure.Area(areas[i]), measure.Volume(volumes[i])
		for left := parts[i].Volume; left > 0 && len(out) > 0; {
			taken, rest := out[0].Split(left)
			parts[i].Parcels = append(parts[i].Parcels, taken)
			left -= taken.Volume
			if rest.Volume > 0 {
				out[0] = rest
			} else {
				out = out[1:]
			}
		}
	}
	return parts, out
}

// Foresee is what a spraying would lay, zone by zone and parcel by parcel, if the trigger were pulled now
// with the valves as in up; nil leaves them as they are. The book is not changed.
func (s *state) Foresee(f *Sprayed, up *fluid.LineUp) ([]ZonePart, *fluid.Plumbing) {
	p := s.plumbing.Sketch()
	if up != nil {
		p.Turn(*up)
	}
	a := s.Applicator(f.Applicator)
	bypass := f.Bypass
	if !bypass.Known {
		bypass = s.bypassWith(a, f.Volume.V)
	}
	parts, _ := s.spread(f, p.Laying(a.hose(), f.Applicator, f.Volume.V, bypass.Or(0)))
	return parts, p
}
