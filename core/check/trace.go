package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

const ruleTrace = "trace"

// traceRule: what reaches a grass that its label entry does not list only as residue of another mix, parcel by parcel, by
// its share of the lowest label rate. What is more than a tenth of its full strength (setting residue_share) is that mix
// itself and a matter of grassRule. And what no account holds: see strainers.
func traceRule(s *situation) []Finding {
	var out []Finding
	for _, k := range s.products() {
		out = append(out, s.perZone(ruleTrace, k, func() (found []Finding) {
			for _, z := range s.zones {
				if !s.judges(z.Name) || s.isStopped(k, z) {
					continue
				}
				if r := s.residueOn(k, z); r.weight > None {
					found = append(found, s.residueFinding(k, z, r))
				}
			}
			return s.sameOfMoreZones(found)
		})...)
	}
	sayAfterwards(out)
	return append(out, s.strainers()...)
}

// sayAfterwards says once, behind the figures, when to look at the lawn again, and what has to be done after a product that
// sticks, where it stands in what is drawn from: what to do now goes before it.
func sayAfterwards(found []Finding) {
	looked, rinsed := false, false
	for i := range found {
		f := &found[i]
		if !looked && (f.Weight >= Ask || f.About != "") { // also where it was answered before
			f.Says += lookAgain
			looked = true
		}
		if !rinsed && f.sticks {
			f.Says += threeRinses
			f.Source += rinsesSource
			rinsed = true
		}
	}
}

// isStopped tells whether the grass rule stops all of a product on a zone already.
func (s *situation) isStopped(k int32, z core.Zone) bool {
	for _, o := range s.stoppedOn {
		if o == (onZone{k, z.Name}) {
			return true
		}
	}
	return false
}

// limitsOn are those of a product's residue on a zone; none where its label entry lists the grass.
func (s *situation) limitsOn(k int32, z core.Zone) []residueLimit {
	at := onZone{k, z.Name}
	if l, ok := s.limits[at]; ok {
		return l
	}
	var l []residueLimit
	if p := s.b.ProductByKey(k); !p.Label.Lists(z.Grass) {
		l = s.judge().residueLimits(p, z)
	}
	if s.limits == nil {
		s.limits = map[onZone][]residueLimit{}
	}
	s.limits[at] = l
	return l
}

// residue is what there is of a product's residue on a zone.
type residue struct {
	weight Weight
	limit  residueLimit
	share  float64 // the highest, of the lowest label rate
	sum    bool    // it is that of all herbicides of HRAC 4
	own    bool    // it stands in what is drawn from
	volume measure.Volume
}

func (s *situation) residueOn(k int32, z core.Zone) residue {
	var r residue
	limits := s.limitsOn(k, z)
	if len(limits) == 0 {
		return r
	}
	other := s.of(k).other
	s.eachParcel(func(at core.Zone, l fluid.Liquid) {
		x := float64(l.Strength(k))
		if at.Name != z.Name || x == 0 || x > other {
			return
		}
		one := residue{share: s.shareOf(k, s.counted(k, x)), own: s.counted(k, x) < x || x <= s.of(k).own*slack, volume: l.Volume}
		lim, w := heaviestOf(limits, one.share)
		if sum, leads := s.sumOfHRAC4(k, z, l); leads {
			for i := range limits {
				if v, _, _ := limits[i].weigh(sum); v > w && limits[i].class == 'D' {
					lim, w, one.share, one.sum = &limits[i], v, sum, true
				}
			}
		}
		one.limit, one.weight = *lim, w
		r = r.with(one)
	})
	return r
}

// with adds a parcel: the heaviest decides, and how much there is of it.
func (r residue) with(one residue) residue {
	switch {
	case one.weight == None || one.weight < r.weight:
		return r
	case one.weight > r.weight:
		return one
	}
	one.volume += r.volume
	one.own = one.own || r.own
	if r.share >= one.share {
		r.volume, r.own = one.volume, one.own
		return r
	}
	return one
}

// ofProduct is what parcel after parcel is held against, worked out once.
type ofProduct struct{ own, other, tolerated float64 }

func (s *situation) of(k int32) ofProduct {
	if o, ok := s.worked[k]; ok {
		return o
	}
	o := ofProduct{s.own(k), s.otherMix(k), s.tolerated(k)}
	if s.worked == nil {
		s.worked = map[int32]ofProduct{}
	}
	s.worked[k] = o
	return o
}

// own is the strength of a product in what is drawn from.
func (s *situation) own(k int32) float64 {
	if s.tank != nil {
		return float64(s.tank.Liquid.Strength(k))
	}
	if c := s.supply(); c != nil {
		return s.supplied(k, c)
	}
	return 0
}

// counted is the strength that counts of a parcel: what counts as clean behind a changeover counts as what is drawn from.
func (s *situation) counted(k int32, x float64) float64 {
	if o := s.of(k); x > o.own && x-o.own <= o.tolerated*slack {
		return o.own
	}
	return x
}

// shareOf is a strength as a share of the lowest label rate; where that is blank, of the usual rate; where that is not known
// either, of the full strength.
func (s *situation) shareOf(k int32, strength float64) float64 {
	if low := usualRate(s.b, k); low > 0 {
		return strength * s.delivery() / low
	}
	return strength / s.full(k)
}

// strengthAt is the strength at which a product has a share.
func (s *situation) strengthAt(k int32, share float64) float64 {
	if low := usualRate(s.b, k); low > 0 {
		return share * low / s.delivery()
	}
	return share * s.full(k)
}

// sumOfHRAC4 is the sum of the shares of all residues of class D in a parcel, and whether this product has the most of it.
func (s *situation) sumOfHRAC4(k int32, z core.Zone, l fluid.Liquid) (sum float64, leads bool) {
	most, n := int32(-1), 0
	highest := 0.0
	for _, p := range l.Holds {
		x := float64(l.Strength(p.Key))
		if x == 0 || x > s.of(p.Key).other || !hasHRAC4(s.limitsOn(p.Key, z)) {
			continue
		}
		f := s.shareOf(p.Key, s.counted(p.Key, x))
		if sum += f; f > highest {
			most, highest = p.Key, f
		}
		n++
	}
	return sum, n > 1 && most == k
}

func hasHRAC4(limits []residueLimit) bool {
	for i := range limits {
		if limits[i].class == 'D' || limits[i].class == 'E' {
			return true
		}
	}
	return false
}

// tolerated is by how much a parcel may be above what is drawn from and still count as clean: below the share at which the
// residue is asked about on the strictest of the zones ahead, and no more than the setting clean_not_allowed leaves.
func (s *situation) tolerated(k int32) float64 {
	least, _ := s.toleratedWhy(k)
	return least
}

// toleratedWhy is tolerated, and what sets it.
func (s *situation) toleratedWhy(k int32) (least float64, why string) {
	full, own := s.full(k), s.own(k)
	least = (1 - s.b.Setting(core.CleanNotAllowed)) * max(full-own, 0)
	why = fmt.Sprintf("%g new (setting %s)", s.b.Setting(core.CleanNotAllowed), core.CleanNotAllowed)
	for _, z := range s.zones {
		limits := s.limitsOn(k, z)
		for i := range limits {
			if from := limits[i].askFrom(); from > 0 {
				at := s.strengthAt(k, from) / slack
				if limits[i].class == 'D' || limits[i].class == 'E' {
					at /= float64(max(s.productsOfHRAC4(z), 1))
				}
				if at < least {
					least = at
					why = fmt.Sprintf("residue on %s below %.2g of the lowest label rate (setting %s)", label.GrassWords(z.Grass), from, limits[i].askedBy())
				}
			}
		}
	}
	return least, why
}

// productsOfHRAC4 is how many products of class D that are not listed there stand in what would leave the nozzle.
func (s *situation) productsOfHRAC4(z core.Zone) int {
	n := 0
	for _, k := range s.products() {
		if hasHRAC4(s.limitsOn(k, z)) {
			n++
		}
	}
	return n
}
