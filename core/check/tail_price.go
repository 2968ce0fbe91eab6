package check

import (
	"math"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// pricing is what of a push-back is held against: of both compartments the products that are not their own, and the grasses
// that each still serves.
type pricing struct {
	s    *situation
	old  byte
	to   byte
	held []keptBy
}

// keptBy is what a compartment is kept for.
type keptBy struct {
	letter byte
	was    *fluid.Compartment
	own    map[int32]bool
	serves []served
	limits map[onZone][]residueLimit
}

// served is a zone that stands for all of its grass.
type served struct {
	lawn string
	zone core.Zone
}

func (s *situation) pricing(old, to byte) *pricing {
	p := &pricing{s: s, old: old, to: to}
	for _, l := range []byte{old, to} {
		p.held = append(p.held, s.keptFor(l))
	}
	return p
}

func (s *situation) keptFor(letter byte) keptBy {
	k := keptBy{letter: letter, was: s.b.Plumbing().Compartment(letter), limits: map[onZone][]residueLimit{}}
	k.own = s.ownProducts(k.was)
	k.serves = s.serves(k.own)
	return k
}

// strangeSum is what has come into a compartment of others since it was last loaded empty or rinsed.
func strangeSum(b *core.Book, letter byte) measure.Volume {
	var sum measure.Volume
	for _, x := range b.Strangers(letter) {
		sum += x.In
	}
	return sum
}

// ownProducts are those of a compartment's mix; where that has no name, all that stand in it as more than traces.
func (s *situation) ownProducts(c *fluid.Compartment) map[int32]bool {
	own := map[int32]bool{}
	mix := s.b.Mix(s.b.MixIn(string(c.Letter)))
	for _, p := range c.Liquid.Holds {
		if mix == nil {
			own[p.Key] = !isTrace(s.b, c, p.Key)
			continue
		}
		_, own[p.Key] = mix.Rate(s.b.ProductByKey(p.Key).ProductName)
	}
	return own
}

// serves lists, grass by grass, what a compartment is for: on the route that is left today, else of all lawns in the book.
func (s *situation) serves(own map[int32]bool) []served {
	var out []served
	seen := map[string]bool{}
	lists := map[string]bool{}
	add := func(l *core.Lawn) {
		for _, z := range l.Zones {
			ok, known := lists[z.Grass]
			if !known {
				ok = s.allList(own, z.Grass)
				lists[z.Grass] = ok
			}
			key := z.Grass
			if hasSite(z, label.SiteEdible) {
				key += " edible"
			}
			if ok && !seen[key] {
				seen[key] = true
				out = append(out, served{l.LawnName, z})
			}
		}
	}
	for _, v := range s.b.Day().Visits {
		if l := s.b.Lawn(v.Lawn); l != nil && isAhead(v) {
			add(l)
		}
	}
	if len(out) == 0 {
		for _, l := range s.b.Lawns() {
			add(l)
		}
	}
	return out
}

// allList tells whether the label entries of all these products list a grass.
func (s *situation) allList(own map[int32]bool, grass string) bool {
	some := false
	for k, is := range own {
		if !is {
			continue
		}
		if !s.b.ProductByKey(k).Label.Lists(grass) {
			return false
		}
		some = true
	}
	return some
}

// price fills in what a way costs, from how the rig would stand after it.
func (p *pricing) price(w *Way, after *fluid.Plumbing) {
	for i := range p.held {
		k := &p.held[i]
		c := after.Compartment(k.letter)
		for _, f := range c.Liquid.From {
			if from := p.s.b.Origin(f.Key).Letter; k.letter == p.old && from == p.to {
				w.NewOld += measure.Volume(f.N)
			} else if k.letter == p.to && from != p.to {
				w.OldNew += measure.Volume(f.N)
			}
		}
		cost := p.s.laysStrange(k, c)
		if k.letter == p.old {
			w.Old = cost.residue()
		} else {
			w.New = cost.residue()
		}
		if cost.weight > w.Weight || cost.weight == w.Weight && cost.load > w.Load {
			w.Weight, w.Load, w.Share, w.Worst, w.On, w.In = cost.weight, cost.load, cost.share, cost.product, cost.lawn, k.letter
			w.Own = cost.own
		}
	}
}

// strange is the worst that a compartment would lay of what is not its own.
type strange struct {
	weight        Weight
	share, load   float64 // of the lowest label rate; of the limit from which it is asked about
	product, lawn string
	own           bool // of the compartment's own mix
}

func (c strange) residue() Residue {
	return Residue{c.product, c.lawn, c.share, c.load, c.weight, c.own}
}

// laysStrange holds what a compartment would hold against the grasses that it serves: each product that is not its own by its
// trace limits, each of its own by the strength meant.
func (s *situation) laysStrange(k *keptBy, after *fluid.Compartment) strange {
	var worst strange
	take := func(c strange) {
		if c.weight > worst.weight || c.weight == worst.weight && c.load > worst.load {
			worst = c
		}
	}
	for _, part := range after.Liquid.Holds {
		prod, x := s.b.ProductByKey(part.Key), float64(after.Liquid.Strength(part.Key))
		if k.own[part.Key] {
			take(s.offStrength(prod.ProductName, float64(k.was.Liquid.Strength(part.Key)), x))
			continue
		}
		share := s.shareLaid(part.Key, x)
		for _, at := range k.serves {
			for _, l := range k.limitsOn(s, part.Key, at) {
				c := strange{share: share, product: prod.ProductName, lawn: at.lawn}
				c.weight, _, _ = l.weigh(share)
				if from := l.askFrom(); from > 0 {
					c.load = share / from
				}
				take(c)
			}
		}
	}
	return worst
}

// offStrength is how far a product of the compartment's own mix would be off, held against the strength that is allowed.
func (s *situation) offStrength(product string, was, now float64) strange {
	if !(was > 0) {
		return strange{}
	}
	off := math.Abs(now-was) / was
	c := strange{own: true, product: product, share: now / was, load: off / (s.b.Setting(core.StrengthBandPct) / 100)}
	if c.load > 1 {
		c.weight = Ask
	}
	return c
}

func (k *keptBy) limitsOn(s *situation, product int32, at served) []residueLimit {
	on := onZone{product, at.lawn + "\n" + at.zone.Name}
	l, ok := k.limits[on]
	if !ok {
		if p := s.b.ProductByKey(product); !p.Label.Lists(at.zone.Grass) {
			l = s.judge().residueLimits(p, at.zone)
		}
		k.limits[on] = l
	}
	return l
}

// shareLaid is a strength as the gun would lay it, as a share of the lowest label rate, or of the full strength where no rate
// is known.
func (s *situation) shareLaid(product int32, strength float64) float64 {
	if low := usualRate(s.b, product); low > 0 {
		return strength * s.with.Delivery.V / low
	}
	if full := strongestAnywhere(s.b, product); full > 0 {
		return strength / full
	}
	return 0
}
