package check

import (
	"fmt"
	"math"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// ToClean says what it takes until the nozzle gives the liquid of the compartment lined up, clean enough for
// the lawn; nil if it does now, if nothing is lined up, or if the applicator has a tank of its own.
//
// The hose is pushed out as a plug, smeared on its way; behind it the cell washes out as F = 1 - e^(-x/Vm) (Levenspiel 1999;
// see packages fluid and hydraulics). The smear is no matter of the account: what counts as clean by the account is clean. Clean is decided by consequence, product by product: one that may not go on the grass
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

// AllWays is ToClean with all ways that the tail could go priced, where there is anything to choose: for who looks at them.
func AllWays(b *core.Book, in Intent) *Changeover {
	s, err := look(b, in)
	if err != nil {
		return nil
	}
	s.allWays = true
	return s.toClean()
}

func (s *situation) toClean() *Changeover {
	if !s.changeKnown {
		// It is one for all zones, whichever of them are judged when it is first asked for.
		group := s.group
		s.group = nil
		s.change, s.changeKnown = s.workClean(), true
		s.group = group
	}
	return s.change
}

func (s *situation) workClean() *Changeover {
	c := s.supply()
	h := s.b.Plumbing().Hose(s.with.Hose)
	if c == nil || h == nil || c.Liquid.Volume == 0 || len(s.up.Supply) != 1 {
		return nil
	}
	out := &Changeover{To: c.Letter}
	for _, k := range s.inLine(c, h) {
		if at := s.cleanFor(k, c, h, out.Clean); at.volume > out.Clean {
			out.Clean, out.Share, out.DecidedBy, out.Why = at.volume, at.share, s.b.ProductByKey(k).ProductName, at.why
		}
	}
	if out.Clean == 0 {
		return nil
	}
	if len(s.b.Plumbing().Hoses) > 0 && s.b.Plumbing().Hoses[0].Name != h.Name {
		out.Hose = h.Name
	}
	out.Air = h.Air()
	out.Arrives, out.Half = s.front(c, h, 0.01), max(s.front(c, h, 0.5), s.halfInCell(c, h))
	out.Half = max(out.Half, out.Arrives)
	s.advise(out, h)
	s.atNozzle(out, c, h)
	s.tintOf(out, c, h)
	s.pushInto(out, c, h)
	out.Legs = legs(out)
	out.Order = s.returnOrder(out.Into, h)
	s.planTail(out, h)
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

// cleanAt is the volume until one product is where it has to be, 0 if it is there, the share of new liquid at which it is,
// and what it is held against.
type cleanAt struct {
	volume measure.Volume
	share  float64
	why    string
}

// cleanFor is exact only where it takes more than the least: what another product asks for already.
func (s *situation) cleanFor(k int32, c *fluid.Compartment, h *fluid.Hose, least measure.Volume) cleanAt {
	in, full := s.supplied(k, c), s.full(k)
	now := float64(s.b.Plumbing().Cell.Liquid.Strength(k))
	allowed := 1 - s.b.Setting(core.CleanAllowed)
	why := fmt.Sprintf("%g new (setting %s)", 1-allowed, core.CleanAllowed)
	switch {
	case s.wrongItself(k, in):
		return cleanAt{} // the compartment itself is wrong for the grass: no changeover cures that
	case !s.listed(k): // what is cleaner than the compartment is clean
		tolerance, why := s.toleratedWhy(k)
		if tolerance <= 0 {
			return cleanAt{}
		}
		return cleanAt{s.until(h, now-in, tolerance, above(k, in), least), 1 - tolerance/(full-in), why}
	case in > float64(allowed*full):
		within := s.b.Setting(core.StrengthBandPct)
		tolerance := float64(within / 100 * in)
		why = fmt.Sprintf("within %g per cent of the strength meant (setting %s)", within, core.StrengthBandPct)
		return cleanAt{s.until(h, math.Abs(now-in), tolerance, offFrom(k, in), least), 1 - tolerance/max(math.Abs(s.oldStrength(k, h, in)-in), tolerance), why}
	}
	if share := s.b.Setting(core.ResidueShare) / slack; share < allowed && s.askedAbout(k) { // what is asked about on the grass must be down to residue
		allowed, why = share, "no more than residue (setting "+core.ResidueShare+")"
	}
	tolerance := float64(allowed * (full - in))
	if tolerance <= 0 {
		return cleanAt{}
	}
	return cleanAt{s.until(h, math.Abs(now-in), tolerance, offFrom(k, in), least), 1 - tolerance/(full-in), why}
}

// until is how much must leave until what comes is no farther than the tolerance from what the compartment gives; off is
// how far the cell is from it, by is how far a liquid is. The account decides whether anything has to go; how far, the smear
// decides with it: it never makes it less.
func (s *situation) until(h *fluid.Hose, off, tolerance float64, by func(fluid.Liquid) float64, least measure.Volume) measure.Volume {
	limit, cell := tolerance*slack, s.b.Plumbing().Cell
	sharp := lastOff(h, by, limit)
	if off > limit && cell.Size > 0 {
		behind := float64(hydraulics.EffectiveCell(hydraulics.Of(cell.Size), s.with.Flow.Or(0), s.bypass()).Volume())
		sharp = liquidIn(h) + measure.Volume(math.Ceil(behind*math.Log(off/tolerance)))
	}
	if sharp == 0 || !s.smears(h) {
		return sharp
	}
	p := s.profileOf(h, by, true)
	// Close to the tolerance more smear can bring it in sooner: the margin is there to make it no less. The search without it
	// comes first and is the same whatever the margin, so that no rounding makes it less either.
	with := p.run.Sigma
	p.run.Sigma /= hydraulics.Gallons(max(s.margin(h), 1))
	plain := p.from(tolerance, hydraulics.Of(max(sharp, least)))
	p.run.Sigma = with
	return max(sharp, p.from(tolerance, plain).Volume())
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
	return liquidIn(h) + measure.Volume(float64(s.model(h).Cell.Volume())*math.Log(2*old))
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
		return []Leg{{Into: out.Into, Volume: out.PushBack}}
	}
	return []Leg{{Into: out.Into, Volume: half}, {Into: out.To, Volume: out.PushBack - half}}
}

// pushInto finds the compartment that most of what has to go came from, if it has room; none if it would run over. First
// water of a new rig goes into the compartment lined up, and so does a tail that is mostly new.
func (s *situation) pushInto(out *Changeover, c *fluid.Compartment, h *fluid.Hose) {
	out.Into = c.Letter
	from := s.cameFrom(c, h)
	if from == 0 {
		return
	}
	out.Into = from
	gets := out.PushBack
	if half := upToHundredth(out.Half); half > 0 {
		gets = min(gets, half)
	}
	if room := s.b.Plumbing().Compartment(from).Room(); gets > room {
		out.Into, out.Overflow = 0, &Overflow{Letter: from, Gets: gets, Room: room, Over: gets - room}
	}
}

// cameFrom is the compartment that most of the old liquid in the hose came from; 0 where that is the one lined up, or none.
func (s *situation) cameFrom(c *fluid.Compartment, h *fluid.Hose) byte {
	for _, p := range h.Charge {
		if p.Volume > 0 {
			if s.newShare(p.Liquid, c) >= 0.5 {
				return 0
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
	best, most := byte(0), int64(0)
	for i := range s.b.Plumbing().Compartments {
		l := s.b.Plumbing().Compartments[i].Letter
		if l != c.Letter && came[l] > most {
			best, most = l, came[l]
		}
	}
	return best
}

func (s *situation) seconds(out *Changeover) {
	if !s.with.Flow.Known {
		return
	}
	at := func(v measure.Volume) core.Maybe[float64] { return core.Known(s.with.Flow.V.Seconds(v + out.Air)) }
	out.ArrivesS, out.HalfS, out.CleanS, out.AdvisedS = at(out.Arrives), at(out.Half), at(out.Clean), at(out.Advised)
	s.tintSeconds(out)
}

// listed tells whether a product's label entry lists the grass of every zone.
func (s *situation) listed(product int32) bool {
	e := s.b.ProductByKey(product).Label
	for _, z := range s.zones {
		if !e.Lists(z.Grass) {
			return false
		}
	}
	return true
}
