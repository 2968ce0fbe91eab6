package label

import "example.com/tintline/core/measure"

// Standing is how a rate stands to those of a label entry.
type Standing int

// The standings. Against a blank rate nothing is held.
const (
	Unheld Standing = iota // the entry has no rate to hold it against
	TooLow
	Within
	TooHigh
)

// Hold holds a rate against the entry's lowest and highest, as far as they are entered.
func (e Entry) Hold(r measure.Rate) Standing {
	switch {
	case r.Kind != e.Form || !e.HasRateLow && !e.HasRateHigh:
		return Unheld
	case e.HasRateHigh && r.V > e.RateHigh.V:
		return TooHigh
	case e.HasRateLow && r.V < e.RateLow.V:
		return TooLow
	}
	return Within
}

// Blank names what the entry leaves out, so that it is not checked.
func (e Entry) Blank() []string {
	var out []string
	for _, f := range []struct {
		known bool
		name  string
	}{
		{len(e.Actives) > 0, "actives"},
		{e.Registration != "", "registration"},
		{len(e.Grasses) > 0, "grasses"},
		{e.HasRateLow, "lowest rate"},
		{e.HasRateHigh, "highest rate"},
		{e.HasWindMax, "wind limit"},
	} {
		if !f.known {
			out = append(out, f.name)
		}
	}
	return out
}

// ListedByAll lists the grasses that all of these entries list, in order of their names: AllTurf alone if each of them
// lists every turfgrass.
func ListedByAll(entries []Entry) []string {
	var out []string
	general := len(entries) > 0
	for _, e := range entries {
		general = general && e.Lists(AllTurf)
	}
	if general {
		return []string{AllTurf}
	}
	for _, g := range grasses {
		all := len(entries) > 0
		for _, e := range entries {
			all = all && e.Lists(g.Name)
		}
		if all {
			out = append(out, g.Name)
		}
	}
	return out
}
