package check

import (
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// outlet is what the nozzle will give, worked out from what the hose holds by the account. The account keeps parcels with
// sharp borders; each border came in at the pump end and has gone through the whole hose when it leaves, so each is
// smeared alike, with the sigma of the whole hose (Levenspiel 1999). Behind the last parcel comes the cell. A border that
// arose otherwise, where the hose was drained, is taken as one of these: it has gone less far, so this is the later side.
type outlet struct {
	run  hydraulics.Outlet // the cell behind the last border
	ends []hydraulics.Gallons
}

// reach is how many sigma from a border the smear is felt: beyond it the share is less than 1e-15.
const reach = 8

// old is the share that is still from before a border, in what leaves at v. The last border has the cell behind it.
func (o outlet) old(i int, v hydraulics.Gallons) float64 {
	b := o.border(i)
	if d := v - b.Hose; !b.Laminar && d < -reach*b.Sigma {
		return 1
	} else if !b.Laminar && b.Cell == 0 && d > reach*b.Sigma {
		return 0
	}
	return b.Old(v)
}

func (o outlet) border(i int) hydraulics.Outlet {
	b := o.run
	if i < len(o.ends) {
		b.Hose, b.Cell = o.ends[i], 0
	}
	return b
}

// profile is how far what leaves is from the new liquid, as a sum of borders: at each it falls by so much.
type profile struct {
	outlet
	falls []float64
}

// at is how far it is when so much has left.
func (p profile) at(v hydraulics.Gallons) float64 {
	sum := 0.0
	for i, f := range p.falls {
		if f != 0 {
			sum += float64(f * p.old(i, v))
		}
	}
	return sum
}

// left is the integral of at from v on, in gallons.
func (p profile) left(v hydraulics.Gallons) float64 {
	sum := 0.0
	for i, f := range p.falls {
		if f != 0 {
			sum += float64(f * float64(p.border(i).OldLeft(v)))
		}
	}
	return sum
}

// from is the volume, at the least so much, from which on at is no more than a limit; at must not rise. It lies between
// low and what it takes to be sure, found by doubling; rounding is upward.
func (p profile) from(limit float64, least hydraulics.Gallons) hydraulics.Gallons {
	low, high := least, max(p.run.Hose, least)+p.run.Cell+p.run.Sigma
	if p.at(low) <= limit || high <= 0 {
		return least
	}
	const most = 1e6 // gal: no hose takes that
	for p.at(high) > limit && high < most {
		low, high = high, 2*high
	}
	const fine = 1e-11 // gal: less than a unit of volume
	for range 60 {
		if high-low < fine {
			break
		}
		mid := low + (high-low)/2
		if p.at(mid) <= limit {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// profileOf puts parcels and cell together; by is how far a liquid is from the new one. What falls is kept only as far as it
// stays down where falling is asked for: then it is, from each volume on, the most that is still to come.
func (s *situation) profileOf(h *fluid.Hose, by func(fluid.Liquid) float64, falling bool) profile {
	p := profile{outlet: s.outlet(h)}
	cell := s.b.Plumbing().Cell
	var values []float64
	for _, c := range h.Charge {
		if c.Volume >= sliver {
			values = append(values, by(c.Liquid))
		}
	}
	if cell.Size > 0 {
		values = append(values, by(cell.Liquid))
	} else {
		values = append(values, 0)
	}
	if falling {
		for i := len(values) - 1; i >= 0; i-- {
			if values[i] = max(values[i], 0); i < len(values)-1 {
				values[i] = max(values[i], values[i+1])
			}
		}
	}
	p.falls = make([]float64, len(values))
	for i, v := range values {
		if p.falls[i] = v; i < len(values)-1 {
			p.falls[i] = v - values[i+1]
		}
	}
	return p
}

// liquidIn is what leaves a hose until it is pushed through once: air in it leaves first, and is not counted.
func liquidIn(h *fluid.Hose) measure.Volume { return h.Size - h.Air() }

// outlet works the borders out, in liquid that leaves; what is less than a sliver goes with its neighbour.
func (s *situation) outlet(h *fluid.Hose) outlet {
	o := outlet{run: s.model(h)}
	o.run.Hose -= hydraulics.Of(h.Air())
	at := measure.Volume(0)
	for _, c := range h.Charge {
		at += c.Volume
		switch end := hydraulics.Of(at); {
		case c.Volume >= sliver:
			o.ends = append(o.ends, end)
		case len(o.ends) > 0:
			o.ends[len(o.ends)-1] = end
		}
	}
	return o
}

// model is the closed form of hose, smear and cell. Without bore, length or flow there is no smear in it.
func (s *situation) model(h *fluid.Hose) hydraulics.Outlet {
	run := s.run(h)
	if !s.smears(h) {
		return hydraulics.Outlet{Hose: run.Hose, Cell: hydraulics.EffectiveCell(run.Cell, run.Gun, run.Bypass)}
	}
	return run.Outlet(s.margin(h))
}

// run is the hose with what goes through it.
func (s *situation) run(h *fluid.Hose) hydraulics.Run {
	r := hydraulics.Run{
		Hose: hydraulics.Of(h.Size), Cell: hydraulics.Of(s.b.Plumbing().Cell.Size), Gun: s.with.Flow.Or(0), Bypass: s.bypass(), C: hydraulics.Temperature,
	}
	if set := s.b.RigHose(h.Name); set != nil {
		r.Bore, r.Length = set.Bore.Or(0), set.Length.Or(0)
	}
	return r
}

// bypass is what of the pump's output does not leave the nozzle; 0 where it is not known.
func (s *situation) bypass() measure.Flow {
	pump := s.b.Rig().PumpFlow
	if !pump.Known || !s.with.Flow.Known || s.up.Return == 0 {
		return 0
	}
	return max(pump.V-s.with.Flow.V, 0)
}

// smears tells whether bore, length and flow are known, on which the smear rests.
func (s *situation) smears(h *fluid.Hose) bool {
	r := s.run(h)
	return r.Bore > 0 && r.Length > 0 && r.Gun > 0
}

// margin is what the smear is multiplied with, because a person relies on it.
func (s *situation) margin(h *fluid.Hose) float64 {
	if s.smearTimes > 0 {
		return s.smearTimes
	}
	return hydraulics.SmearMargin(s.run(h).Reynolds())
}
