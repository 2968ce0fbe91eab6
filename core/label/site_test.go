package label

import (
	"slices"
	"testing"
)

func TestSiteTables(t *testing.T) {
	seen := map[string]bool{}
	for _, a := range siteActives {
		if !slices.Contains(SiteKinds(), a.Site) || a.Words == "" || a.Source == "" || seen[a.Site+a.What] {
			t.Errorf("%+v", a)
		}
		if (a.Basis == BasisRecalled) != (a.Source == BasisRecalled) || !slices.Contains([]string{BasisTrial, BasisExtension, BasisRecalled}, a.Basis) {
			t.Errorf("%+v rests on nothing that is known", a)
		}
		seen[a.Site+a.What] = true
		if _, ok := FindActive(a.What); !ok && a.What[:4] != "HRAC" && a.What[:4] != "IRAC" {
			t.Errorf("the reference has no %s", a.What)
		}
	}
	for word, kind := range siteWords {
		if !slices.Contains(SiteKinds(), kind) {
			t.Errorf("%s is no site: %s", word, kind)
		}
	}
}

// The groups are those of the reference: triclopyr and mecoprop-p are HRAC 4, imidacloprid is IRAC 4A (open lists of the
// resistance action committees).
func TestBeside(t *testing.T) {
	for _, r := range []struct{ site, active, what string }{
		{SiteRoots, "Dicamba", "dicamba"},
		{SiteRoots, "dicamba DMA salt", "dicamba"},
		{SiteRoots, "triclopyr", ""},
		{SiteRoots, "mesotrione", ""},
		{SiteEdible, "triclopyr", "HRAC 4"},
		{SiteEdible, "mecoprop-p", "HRAC 4"},
		{SiteEdible, "2,4-D amine", "2,4-D"},
		{SiteEdible, "quinclorac", "HRAC 4"},
		{SiteEdible, "mesotrione", ""},
		{SiteEdible, "something new", ""},
		{SiteBloom, "imidacloprid", "IRAC 4A"},
		{SiteBloom, "bifenthrin", "IRAC 3A"},
		{SiteBloom, "chlorantraniliprole", ""},
		{SiteBloom, "dicamba", ""},
	} {
		if got, ok := Beside(r.site, r.active); got.What != r.what || ok != (r.what != "") {
			t.Errorf("%s beside %s: %+v, want %q", r.active, r.site, got, r.what)
		}
	}
}

func TestHazardsInFreeWordsAreSites(t *testing.T) {
	for said, want := range map[string]string{
		"pond": SiteWater, "Open drain": SiteWater, "two ponds": SiteWater, "well": SiteWell, "vegetable bed": SiteEdible, "berries": SiteEdible,
		"tree roots": SiteRoots, "Bees": SiteBloom, "gate": "", "dog": "", "": "", "wellington boots": "", "swelling": "",
	} {
		if got, ok := SiteOf(said); got != want || ok != (want != "") {
			t.Errorf("%q is %q, not %q", said, got, want)
		}
	}
}
