package check

import (
	"sort"
	"strings"

	"example.com/tintline/core"
)

// merged makes of what a rule found one finding for each product and zone, because a reason names no more than these: what
// else the rule says of them goes with the heaviest. What has the same weight and ground on other zones joins it, and so do
// products of which the same sentence is said.
func (s *situation) merged(found []Finding) []Finding {
	var out []Finding
	for _, f := range found {
		out = append(out, s.byReason(f)...)
	}
	out = s.mergedBy(out, samePlace)
	out = s.mergedBy(out, sameGround)
	return s.mergedBy(out, sameSentence)
}

// byReason parts a finding by the reasons that its zones have.
func (s *situation) byReason(f Finding) []Finding {
	f.Reason = ""
	if len(f.Zones) == 0 {
		went, _ := s.b.OverriddenAbout(f.Rule, s.lawn.LawnName, f.Product, "", f.About)
		f.goOn(went)
		return []Finding{f}
	}
	var out []Finding
	var wents []core.Overridden
next:
	for _, z := range f.Zones {
		went, _ := s.b.OverriddenAbout(f.Rule, s.lawn.LawnName, f.Product, z, f.About)
		for i := range wents {
			if wents[i].Reason == went.Reason && wents[i].Weight == went.Weight {
				out[i].Zones = append(out[i].Zones, z)
				continue next
			}
		}
		one := f
		one.Zones = []string{z}
		one.goOn(went)
		out, wents = append(out, one), append(wents, went)
	}
	return out
}

// mergedBy merges each finding with those before it that it goes with.
func (s *situation) mergedBy(found []Finding, with func(a, b *Finding) bool) []Finding {
	var out []Finding
	for _, f := range found {
		var kept []Finding
		at := -1
		for i := range out {
			if !with(&out[i], &f) {
				kept = append(kept, out[i])
				continue
			}
			f = s.both(out[i], f)
			if at < 0 {
				at = len(kept)
				kept = append(kept, Finding{})
			}
		}
		if at < 0 {
			at = len(kept)
			kept = append(kept, Finding{})
		}
		kept[at] = f
		out = kept
	}
	return out
}

// samePlace: it is the same product on the same zone, or what has no zone and one reason would go for both.
func samePlace(a, b *Finding) bool {
	if len(a.Zones) == 0 && len(b.Zones) == 0 {
		return a.Product == b.Product && a.About == b.About
	}
	return a.Product == b.Product && shareOne(a.Zones, b.Zones)
}

// sameGround: the same is wrong on other zones.
func sameGround(a, b *Finding) bool {
	return a.Product == b.Product && a.Weight == b.Weight && a.Ground == b.Ground && a.Source == b.Source && a.Grass == b.Grass &&
		a.Unit == b.Unit && a.About == b.About && a.Reason == b.Reason && len(a.Zones) > 0 && len(b.Zones) > 0
}

// sameSentence: it is said of several products, on the same zones.
func sameSentence(a, b *Finding) bool {
	return a.Product != "" && b.Product != "" && a.Says == b.Says && a.Do == b.Do && a.Weight == b.Weight && a.About == b.About && a.Reason == b.Reason &&
		sameZones(a.Zones, b.Zones) && sameZones(a.alone().Zones, b.alone().Zones)
}

func sameZones(a, b []string) bool { return strings.Join(a, "\n") == strings.Join(b, "\n") }

func shareOne(a, b []string) bool {
	for _, t := range a {
		if hasText(b, t) {
			return true
		}
	}
	return false
}

// both is two findings in one. What stands leads before what the operator goes on in spite of, the heavier before the
// lighter; of two as heavy the stronger, else the one found first.
func (s *situation) both(a, b Finding) Finding {
	lead, rest := a, b
	if leads(&b, &a) {
		lead, rest = b, a
	}
	if shareOne(a.Zones, b.Zones) || len(a.Zones) == 0 {
		lead.Area = max(a.Area, b.Area)
	} else {
		lead.Area = min(a.Area+b.Area, s.area)
	}
	first, second := lead.alone(), rest.alone()
	if a.Product != b.Product {
		first.Products = append(lead.products(), rest.products()...)
		lead.Products = first.Products
	}
	if first.About == second.About && first.Weight == second.Weight && first.Reason == second.Reason {
		first.Zones = s.inOrder(append(append([]string(nil), first.Zones...), second.Zones...)) // a reason for them goes for both
	}
	lead.Zones = s.inOrder(append(append([]string(nil), a.Zones...), b.Zones...))
	lead.Also = append([]Finding(nil), lead.Also...)
	if !lead.PushBack.Known {
		lead.PushBack = rest.PushBack
	}
	if rest.Weight == lead.Weight {
		lead.Do = joinNew(lead.Do, rest.Do)
	}
	lead.lead = &first
	for _, one := range append([]Finding{second}, rest.Also...) {
		if one.Says == first.Says && one.Source == first.Source && one.About == first.About && one.Weight == first.Weight && one.Reason == first.Reason {
			continue
		}
		lead.Says = joinNew(lead.Says, one.Says)
		lead.Also = append(lead.Also, one)
	}
	return lead
}

func leads(a, b *Finding) bool {
	switch {
	case a.stands() != b.stands():
		return a.stands()
	case a.Weight != b.Weight:
		return a.Weight > b.Weight
	}
	return a.Multiple.Known && b.Multiple.Known && a.Multiple.V > b.Multiple.V
}

// stands tells whether the operator has to answer it, and has not.
func (f *Finding) stands() bool { return f.Reason == "" && f.Weight >= Ask }

// joinNew puts sentences behind others, unless they are there already.
func joinNew(said, more string) string {
	switch {
	case strings.Contains(said, more):
		return said
	case said == "":
		return more
	}
	return said + " " + more
}

// Apart lists what was merged into the finding by what it is about, because that is what a reason names: of one thing one
// finding, in the words of all that is said of it.
func (f *Finding) Apart() []Finding {
	var out []Finding
next:
	for _, one := range f.All() {
		one.Rule = f.Rule
		for i := range out {
			o := &out[i]
			if o.About != one.About || o.Reason != one.Reason {
				continue
			}
			o.Says = joinNew(o.Says, one.Says)
			if o.Weight == one.Weight {
				o.Do = joinNew(o.Do, one.Do)
			}
			continue next
		}
		out = append(out, one)
	}
	return out
}

func (f *Finding) products() []string {
	if len(f.Products) == 0 {
		return []string{f.Product}
	}
	return f.Products[:len(f.Products):len(f.Products)]
}

// inOrder lists zones once each, in the order in which they are to be treated.
func (s *situation) inOrder(zones []string) []string {
	var out []string
	for _, z := range zones {
		if !hasText(out, z) {
			out = append(out, z)
		}
	}
	at := map[string]int{}
	for i, z := range s.zones {
		at[z.Name] = i
	}
	sort.SliceStable(out, func(i, j int) bool { return at[out[i]] < at[out[j]] })
	return out
}
