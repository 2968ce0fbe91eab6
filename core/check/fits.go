package check

import (
	"sort"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/label"
)

// Fits lists the compartments that may go on all grasses of a lawn, best first: none of the products in them would be a stop
// there, as a mix or as residue. Mixes made for some grasses come before those for all turf, the compartment in use before
// others, fuller before emptier.
func Fits(b *core.Book, lawn string) []byte {
	l := b.Lawn(lawn)
	if l == nil {
		return nil
	}
	type candidate struct {
		c       *fluid.Compartment
		general bool
		inUse   bool
	}
	var all []candidate
	p := b.Plumbing()
	for i := range p.Compartments {
		c := &p.Compartments[i]
		if allowed, general := fitsLawn(b, c, l); allowed {
			all = append(all, candidate{c, general, len(p.LineUp.Supply) == 1 && p.LineUp.Supply[0] == c.Letter})
		}
	}
	sort.SliceStable(all, func(i, j int) bool {
		x, y := all[i], all[j]
		switch {
		case x.general != y.general:
			return y.general
		case x.inUse != y.inUse:
			return x.inUse
		}
		return x.c.Drawable() > y.c.Drawable()
	})
	var out []byte
	for _, c := range all {
		out = append(out, c.c.Letter)
	}
	return out
}

// fitsLawn tells whether nothing that a compartment holds would be a stop on a zone, and whether all of it is for all turf.
// An empty compartment, or one that holds no product, fits nothing.
func fitsLawn(b *core.Book, c *fluid.Compartment, l *core.Lawn) (allowed, general bool) {
	if c.Drawable() == 0 {
		return false, false
	}
	general = true
	some := false
	j := judge{b, b.LastAt(), label.FormSpray}
	for _, p := range c.Liquid.Holds {
		x := heldAnywhere(b, c, p.Key)
		prod := b.ProductByKey(p.Key)
		for _, z := range l.Zones {
			if j.stops(prod, l.LawnName, z, x) {
				return false, false
			}
		}
		if !x.full {
			continue
		}
		some = true
		if !hasText(prod.Label.Grasses, label.AllTurf) {
			general = false
		}
	}
	return some, general
}

// heldAnywhere is how strong a product is in a compartment, against the strongest that it is anywhere, and as the first
// applicator would lay it.
func heldAnywhere(b *core.Book, c *fluid.Compartment, product int32) strengthOf {
	strength, strongest := float64(c.Liquid.Strength(product)), strongestAnywhere(b, product)
	x := strengthOf{full: !isTrace(b, c, product)}
	if strongest > 0 {
		x.share = strength / strongest
	}
	if a := b.Applicator(FirstApplicator(b)); a != nil && a.Delivery.V > 0 {
		x.rate = strength * a.Delivery.V
		if low := usualRate(b, product); low > 0 {
			x.share = x.rate / low
		}
	}
	return x
}

// isTrace tells whether a compartment holds so little of a product that it is residue.
func isTrace(b *core.Book, c *fluid.Compartment, product int32) bool {
	return float64(c.Liquid.Strength(product)) <= b.Setting(core.ResidueShare)*strongestAnywhere(b, product)
}

func hasText(list []string, s string) bool {
	for _, t := range list {
		if t == s {
			return true
		}
	}
	return false
}

// IsTrace tells whether a compartment holds so little of a product that it is residue: at most the setting residue_share of the
// strongest that it stands anywhere.
func IsTrace(b *core.Book, c *fluid.Compartment, product int32) bool { return isTrace(b, c, product) }

// strongestAnywhere is the strongest that a product stands in any compartment, or its usual rate at
// the first applicator's delivery where that is more.
func strongestAnywhere(b *core.Book, k int32) float64 {
	ref := 0.0
	for i := range b.Plumbing().Compartments {
		ref = max(ref, float64(b.Plumbing().Compartments[i].Liquid.Strength(k)))
	}
	if a := b.Applicator(FirstApplicator(b)); a != nil && a.Delivery.V > 0 {
		ref = max(ref, usualRate(b, k)/a.Delivery.V)
	}
	return ref
}

// Subject is the lawn of the visit now, else the next one planned; empty if there is none.
func Subject(b *core.Book) string {
	if v := b.Day().Visiting(); v != nil {
		return v.Lawn
	}
	if next := b.Day().Next(); len(next) > 0 {
		return next[0].Lawn
	}
	return ""
}
