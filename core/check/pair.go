package check

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
)

const rulePair = "pair"

// pairRule stops what would be sprayed as a mix of products that the operator marked as not to be mixed, or whose jar failed.
// A product that is there only as residue is no part of the mix.
func pairRule(s *situation) []Finding {
	if len(s.b.MarkedApart()) == 0 && len(s.b.Jars()) == 0 {
		return nil
	}
	var out []Finding
	for _, j := range s.b.NotToMix(s.mixedAhead()) {
		f := pairStop(j)
		f.Do = "Do not spray it: look at the lid and at the strainers what came of it, then dump it."
		out = append(out, f)
	}
	return out
}

// mixedAhead lists the products that would leave the nozzle together, as more than residue.
func (s *situation) mixedAhead() []string {
	var out []string
	share := s.b.Setting(core.ResidueShare)
	s.eachParcel(func(_ core.Zone, l fluid.Liquid) {
		var here []string
		for _, h := range l.Holds {
			if s.shareOf(h.Key, float64(l.Strength(h.Key))) > share {
				here = append(here, s.b.ProductByKey(h.Key).ProductName)
			}
		}
		if len(s.b.NotToMix(here)) == 0 {
			return
		}
		for _, n := range here {
			if !hasText(out, n) {
				out = append(out, n)
			}
		}
	})
	return out
}

// pairStop is a mark, or a jar that failed, as a finding.
func pairStop(j core.Jar) Finding {
	f := Finding{
		Rule: rulePair, Weight: Stop, Part: PartCompartment, Product: j.Products[0], Products: j.Products, Ground: GroundSetting,
		About: strings.Join(j.Products, " with "),
	}
	names := list(j.Products)
	if j.Result == core.JarFailed {
		f.Source = OwnNote + ": jar test of " + j.Date
		f.Says = fmt.Sprintf("The jar of %s failed on %s: %s.", names, j.Date, list(j.Signs))
	} else {
		f.Source = OwnNote + ": mark of " + j.Date
		f.Says = fmt.Sprintf("%s are marked as not to be mixed.", names)
	}
	if j.Note != "" {
		f.Says += " " + strings.TrimSuffix(strings.ToUpper(j.Note[:1])+j.Note[1:], ".") + "."
	}
	return f
}
