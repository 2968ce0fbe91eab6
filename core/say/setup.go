package say

import (
	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

func rig(f *core.Rig) string {
	var tanks []string
	for _, c := range f.Compartments {
		tanks = append(tanks, string(c.Letter)+" "+c.Capacity.Text())
	}
	s := "rig " + f.RigName + ": " + and(tanks) + " gal"
	for _, h := range f.Hoses {
		s += "; hose " + h.Name + " " + h.Volume.Text() + " gal"
	}
	for _, a := range f.Applicators {
		s += "; " + a.Name
	}
	return s
}

func product(f *core.Product) string {
	e := f.Label
	s := "label of " + f.ProductName
	if w := e.Words(); w != "" {
		s += " (" + w + ")"
	}
	switch {
	case e.HasRateLow && e.HasRateHigh:
		s += ": " + e.RateLow.Text() + " to " + e.RateHigh.Text()
	case e.HasRateHigh:
		s += ": at most " + e.RateHigh.Text()
	case e.HasRateLow:
		s += ": at least " + e.RateLow.Text()
	}
	if len(e.Grasses) == 0 {
		return s + ", no grass listed"
	}
	var on []string
	for _, g := range e.Grasses {
		on = append(on, label.GrassWords(g))
	}
	return s + ", on " + and(on)
}

func mix(f *core.Mix) string {
	var parts []string
	for _, p := range f.Parts {
		parts = append(parts, p.Product+" "+p.Rate.Text())
	}
	s := "mix " + f.MixName
	if f.Base != "" {
		s += ", made from " + f.Base
	}
	return s + ": " + and(parts)
}

// Difference is what a mix has otherwise than its base, "with iron 2.00 oz per 1,000 sq ft and without potash";
// "the same" where it has nothing otherwise.
func Difference(d []core.PartDifference) string {
	var parts []string
	for _, p := range d {
		switch {
		case !p.Base.Known:
			parts = append(parts, "with "+p.Product+" "+p.Have.V.Text())
		case !p.Have.Known:
			parts = append(parts, "without "+p.Product)
		default:
			parts = append(parts, p.Product+" "+p.Have.V.Text()+" instead of "+p.Base.V.Text())
		}
	}
	if len(parts) == 0 {
		return "the same"
	}
	return and(parts)
}

func lawn(f *core.Lawn) string {
	var zones []string
	for _, z := range f.Zones {
		zones = append(zones, z.Name+" "+z.Area.Text()+" sq ft of "+label.GrassWords(z.Grass))
	}
	return "lawn " + f.LawnName + ": " + and(zones)
}

func loaded(f *core.Loaded) string {
	if f.Volume == 0 && len(f.Parts) > 0 {
		return hopperLoad(f)
	}
	s := "loaded " + f.Volume.Text() + " gal"
	if f.Mix != "" {
		s += " of " + f.Mix
	}
	s += " into " + f.Into
	if f.For != "" {
		s += " for " + f.For
	}
	var parts []string
	for _, p := range f.Parts {
		parts = append(parts, p.Amount.Text()+" "+p.Product)
	}
	switch {
	case len(parts) > 0:
		s += ": " + and(parts)
	case f.Mix == "":
		s += ": water"
	}
	return s + filledWords(f.Place, f.MeterBefore, f.MeterAfter)
}
