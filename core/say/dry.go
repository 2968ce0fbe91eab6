package say

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

func spread(f *core.Spread) string {
	what := f.Product
	if what == "" {
		what = "what the hopper holds"
	}
	s := "spread " + f.Lawn
	for i, z := range f.Zones {
		if i > 0 {
			s += " +"
		}
		s += " " + z
	}
	s += ":"
	if f.Amount.N != 0 {
		s += " " + f.Amount.Text() + " of"
	}
	s += " " + what + " with " + f.Applicator
	if f.Area.Known {
		s += " on " + f.Area.V.Text() + " sq ft"
	}
	switch f.By {
	case core.ByArea:
		s += ", by area"
	case core.ByWeight:
		s += ", by weight"
	}
	return s
}

// hopperLoad is dry product put into a hopper.
func hopperLoad(f *core.Loaded) string {
	s := "loaded the hopper of " + f.Into
	if f.Mix != "" {
		s += " with " + f.Mix
	}
	var parts []string
	for _, p := range f.Parts {
		parts = append(parts, p.Amount.Text()+" "+p.Product)
	}
	return s + ": " + and(parts)
}

func hopperDump(f *core.Dumped) string {
	_, name := fluid.Place(f.From).Split()
	return fmt.Sprintf("poured %s out of the hopper of %s into %s", measure.DryAmount(f.Amount.V).Text(), name, Place(fluid.Place(f.To)))
}
