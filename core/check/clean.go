package check

import (
	"math"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// ToClean says what it takes until the nozzle gives the liquid of the compartment lined up, clean enough for
// the lawn; nil if it does now, if nothing is lined up, or if the applicator has a tank of its own.
//
// The hose is pushed out as a plug; behind it the cell washes out as F = 1 - e^(-x/Vm) (Levenspiel 1999; see
// package fluid). Clean is decided by consequence, product by product: one that may not go on the grass
// ahead must be below the share at which traceRule asks about it on the strictest of the grasses, and down to the share of
// the setting clean_not_allowed; another old one to clean_allowed, and one that is in both liquids within
// strength_band_pct of the strength meant.
func ToClean(b *core.Book, in Intent) *Changeover {
	s, err := look(b, in)
	if err != nil {
		return nil
	}
	return s.toClean()
}

func (s *situation) toClean() *Changeover {
	c := s.supply()
	h := s.b.Plumbing().Hose(s.with.Hose)
	if c == nil || h == nil || c.Liquid.Volume == 0 || len(s.up.Supply) != 1 {
		return nil
	}
	out := &Changeover{To: c.Letter}
	for _, k := range s.inLine(c, h) {
		clean, share := s.cleanFor(k, c, h)
		if clean > out.Clean {
			out.Clean, out.Share, out.DecidedBy = clean, share, s.b.ProductByKey(k).ProductName
		}
	}
	if out.Clean == 0 {
		return nil
	}
	out.Arrives, out.Half = s.front(c, h, 0.01), max(s.front(c, h, 0.5), s.halfInCell(c, h))
	out.Half = max(out.Half, out.Arrives)
	out.PushBack = upToHundredth(out.Clean)
	out.Into = s.pushInto(c, h, out.PushBack)
	out.Legs = legs(out)
	out.Band = measure.Volume(s.spread(out.Clean, h))
	out.TintFrom, out.TintBy = s.tintFrom(out.Arrives, h), s.tintBy(h)
	s.seconds(out)
	return out
}

// inLine lists the products in supply, cell and hose, in order.
func (s *situation) inLine(c *fluid.Compartment, h *fluid.Hose) []int32 {
	all := c.Liquid.Holds.Plus(s.b.Plumbing().Cell.Liquid.Holds).Plus(h.Liquid().Holds)
	out := make([]int32, 0, len(all))
	for _, p := range all {
		out = append(out, p.Key)
	}
	return out
}

// cleanFor is the volume until one product is where it has to be, 0 if it is there, and the share of new
// liquid at which it is.
func (s *situation) cleanFor(k int32, c *fluid.Compartment, h *fluid.Hose) (measure.Volume, float64) {
	in, full := s.supplied(k, c), s.full(k)
	cell := s.b.Plumbing().Cell
	now := float64(cell.Liquid.Strength(k))
	allowed := 1 - s.b.Setting(core.CleanAllowed)
	var tolerance float64
	switch {
	case s.wrongItself(k, in):
		return 0, 0 // the compartment itself is wrong for the grass: no changeover cures that
	case !s.listed(k): // what is cleaner than the compartment is clean
		if tolerance = s.tolerated(k); tolerance > 0 {
			return s.until(h, now-in, tolerance, above(k, in)), 1 - tolerance/(full-in)
		}
		return 0, 0
	case in > float64(allowed*full):
		tolerance = float64(s.b.Setting(core.StrengthBandPct) / 100 * in)
		return s.until(h, math.Abs(now-in), tolerance, offFrom(k, in)), 1 - tolerance/max(math.Abs(s.oldStrength(k, h, in)-in), tolerance)
	default:
		if s.askedAbout(k) { // what is asked about on the grass must be down to residue
			allowed = min(allowed, s.b.Setting(core.ResidueShare)/slack)
		}
		tolerance = float64(allowed * (full - in))
	}
	if tolerance <= 0 {
		return 0, 0
	}
	return s.until(h, math.Abs(now-in), tolerance, offFrom(k, in)), 1 - tolerance/(full-in)
}

// until is how much must leave until what comes is no farther than the tolerance from what the compartment gives; off is
// how far the cell is from it, by is how far a liquid is.
func (s *situation) until(h *fluid.Hose, off, tolerance float64, by func(fluid.Liquid) float64) measure.Volume {
	if cell := s.b.Plumbing().Cell; off > tolerance*slack && cell.Size > 0 {
		return h.Size + measure.Volume(math.Ceil(float64(cell.Size)*math.Log(off/tolerance)))
	}
	return lastOff(h, by, tolerance*slack)
}

func above(k int32, in float64) func(fluid.Liquid) float64 {
	return func(l fluid.Liquid) float64 { return float64(l.Strength(k)) - in }
}

func offFrom(k int32, in float64) func(fluid.Liquid) float64 {
	return func(l fluid.Liquid) float64 { return math.Abs(float64(l.Strength(k)) - in) }
}

// wrongItself tells whether a product would be a stop at the strength that the compartment gives.
func (s *situation) wrongItself(k int32, strength float64) bool {
	for _, z := range s.zones {
		if s.judge().stops(s.b.ProductByKey(k), s.lawn.LawnName, z, s.held(k, strength)) {
			return true
		}
	}
	return false
}

// held is a strength as the judge wants it.
func (s *situation) held(k int32, strength float64) strengthOf {
	return strengthOf{full: strength > s.otherMix(k), share: s.shareOf(k, strength), rate: strength * s.delivery()}
}

// askedAbout tells whether a product that is listed is more than noted on a zone ahead.
func (s *situation) askedAbout(k int32) bool {
	p := s.b.ProductByKey(k)
	rate := core.Known(measure.Rate{V: float64(s.full(k) * s.delivery()), Kind: p.Label.Form})
	for _, z := range s.zones {
		for _, o := range s.judge().opinions(p, s.lawn.LawnName, z, rate) {
			if o.weight >= Ask {
				return true
			}
		}
	}
	return false
}

// supplied is the strength of a product in what the compartment gives once the pump runs: the bypass has then
// swept the return line into it.
func (s *situation) supplied(k int32, c *fluid.Compartment) float64 {
	if later := s.after.Compartment(c.Letter); later != nil && later.Liquid.Volume > 0 {
		return float64(later.Liquid.Strength(k))
	}
	return float64(c.Liquid.Strength(k))
}

// oldStrength is the strength of a product in cell or hose that is farthest from the supply's.
func (s *situation) oldStrength(k int32, h *fluid.Hose, in float64) float64 {
	far := float64(s.b.Plumbing().Cell.Liquid.Strength(k))
	for _, p := range h.Charge {
		if v := float64(p.Strength(k)); math.Abs(v-in) > math.Abs(far-in) {
			far = v
		}
	}
	return far
}

// lastOff is how much must leave until no parcel in the hose is off by more than the tolerance.
func lastOff(h *fluid.Hose, by func(fluid.Liquid) float64, tolerance float64) measure.Volume {
	var at, last measure.Volume
	for _, p := range h.Charge {
		at += p.Volume
		if p.Volume >= sliver && by(p.Liquid) > tolerance {
			last = at
		}
	}
	return last
}

// newShare is how much of a liquid came from the compartment lined up.
func (s *situation) newShare(l fluid.Liquid, c *fluid.Compartment) float64 {
	share := 0.0
	for _, f := range l.From {
		if s.b.Origin(f.Key).Letter == c.Letter {
			share += float64(f.N) / float64(l.Volume)
		}
	}
	return share
}

// front is how much must leave until liquid with at least this share of new reaches the nozzle and stays.
func (s *situation) front(c *fluid.Compartment, h *fluid.Hose, share float64) measure.Volume {
	var at, last measure.Volume
	for _, p := range h.Charge {
		at += p.Volume
		if p.Volume > 0 && s.newShare(p.Liquid, c) < share {
			last = at
		}
	}
	return last
}

// halfInCell is when half of what leaves the nozzle is new, if that half is still in the cell: the hose and
// 0.69 of the cell where the cell is all old.
func (s *situation) halfInCell(c *fluid.Compartment, h *fluid.Hose) measure.Volume {
	cell := s.b.Plumbing().Cell
	old := 1 - s.newShare(cell.Liquid, c)
	if cell.Size == 0 || old <= 0.5 {
		return 0
	}
	return h.Size + measure.Volume(float64(cell.Size)*math.Log(2*old))
}

// upToHundredth rounds up to 0.01 gal, so that what is shown is what is pushed.
func upToHundredth(v measure.Volume) measure.Volume {
	return measure.Gallons(math.Ceil(v.Gallons()*100) / 100)
}

// legs parts a push-back at the half: up to there more of the old liquid leaves than of the new.
func legs(out *Changeover) []Leg {
	half := upToHundredth(out.Half)
	switch {
	case out.Into == 0:
		return nil
	case out.Into == out.To, half == 0, half >= out.PushBack:
		return []Leg{{out.Into, out.PushBack}}
	}
	return []Leg{{out.Into, half}, {out.To, out.PushBack - half}}
}

// pushInto is the compartment that most of what has to go came from, if it has room; 0 if none can take it.
// First water of a new rig goes into the compartment lined up, and so does a tail that is mostly new.
func (s *situation) pushInto(c *fluid.Compartment, h *fluid.Hose, v measure.Volume) byte {
	for _, p := range h.Charge {
		if p.Volume > 0 {
			if s.newShare(p.Liquid, c) >= 0.5 {
				return c.Letter
			}
			break
		}
	}
	came := make(map[byte]int64)
	for _, p := range h.Charge {
		for _, f := range p.From {
			came[s.b.Origin(f.Key).Letter] += f.N
		}
	}
	best, most := c.Letter, int64(0)
	for i := range s.b.Plumbing().Compartments {
		l := s.b.Plumbing().Compartments[i].Letter
		if l != c.Letter && came[l] > most {
			best, most = l, came[l]
		}
	}
	if most == 0 || best == c.Letter {
		return c.Letter
	}
	if s.b.Plumbing().Compartment(best).Room() < v {
		return 0
	}
	return best
}

func (s *situation) seconds(out *Changeover) {
	if !s.with.Flow.Known {
		return
	}
	at := func(v measure.Volume) core.Maybe[float64] { return core.Known(s.with.Flow.V.Seconds(v)) }
	out.ArrivesS, out.HalfS, out.CleanS = at(out.Arrives), at(out.Half), at(out.Clean)
	out.TintFromS, out.TintByS = at(out.TintFrom), at(out.TintBy)
}

// Relative standard uncertainties of a hose volume that was worked out from its bore: the ISO 1307:2006 range
// of bores as a rectangular distribution gives 9.7, 7.3 and 5.8 per cent for 3/8, 1/2 and 5/8 in. Of the cell
// half is uncertain until it is measured, of the flow 3 per cent (common practice, no source).
const (
	smallBore, middleBore, largeBore = 0.10, 0.07, 0.06
	cellUncertain                    = 0.5
	flowUncertain                    = 0.03
)

// hoseUncertain is the share by which the volume of a hose is uncertain.
func (s *situation) hoseUncertain(h *fluid.Hose) float64 {
	for _, r := range s.b.Rig().Hoses {
		if r.Name == h.Name && r.Bore.Known {
			switch in := r.Bore.V.Inches(); {
			case in < 0.45:
				return smallBore
			case in > 0.55:
				return largeBore
			}
		}
	}
	return middleBore
}
