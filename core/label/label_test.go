package label

import (
	"slices"
	"sort"
	"testing"
)

func TestGrassesAreNamedOnceAndInOrder(t *testing.T) {
	var names []string
	for _, g := range Grasses() {
		if g.CommonName == "" || g.Botanical == "" || g.Source == "" || (g.Season != "warm" && g.Season != "cool") {
			t.Errorf("%+v lacks a name, a season or a source", g)
		}
		if found, ok := FindGrass(g.Name); !ok || found != g {
			t.Errorf("%s is not found", g.Name)
		}
		names = append(names, g.Name)
	}
	if !sort.StringsAreSorted(names) || len(slices.Compact(slices.Clone(names))) != len(names) {
		t.Errorf("names are out of order or stand twice: %v", names)
	}
	if _, ok := FindGrass(AllTurf); ok {
		t.Error("all_turf is not a grass of its own")
	}
}

func TestNearestGrasses(t *testing.T) {
	for _, row := range []struct{ typed, first string }{
		{"tall fescew", "tall_fescue"},
		{"Tall Fescue", "tall_fescue"},
		{"zoysia", "zoysiagrass"},
		{"bermudagrass", "bermudagrass_common"},
		{"kentucky", "kentucky_bluegrass"},
		{"", ""},
	} {
		got := NearestGrasses(row.typed)
		if len(got) != 3 || (row.first != "" && got[0] != row.first) {
			t.Errorf("%q gives %v, and %s should come first", row.typed, got, row.first)
		}
	}
}

func TestReadGrass(t *testing.T) {
	for typed, want := range map[string]string{
		"tall_fescue": "tall_fescue", "Tall Fescue": "tall_fescue", " kentucky  bluegrass ": "kentucky_bluegrass",
		"St. Augustinegrass": "st_augustinegrass", "common bermudagrass": "bermudagrass_common", "ALL TURF": AllTurf,
		"tall fescew": "", "": "", "fescue": "",
	} {
		if got, ok := ReadGrass(typed); got != want || ok != (want != "") {
			t.Errorf("%q is read as %q, not %q", typed, got, want)
		}
	}
}

func TestNearest(t *testing.T) {
	known := []string{"area_sqft", "price_usd", "zone", "Mesotrione 4 SC"}
	for word, want := range map[string]string{
		"Area sqf": "area_sqft", "area": "area_sqft", "usd": "price_usd", "zones": "zone", "mesotrion 4sc": "Mesotrione 4 SC",
		"qqqqqqqqqq": "", "": "",
	} {
		if got := Nearest(word, known); got != want {
			t.Errorf("%q is near %q, not %q", word, got, want)
		}
	}
	if got := Nearest("zone", nil); got != "" {
		t.Errorf("%q where nothing is known", got)
	}
}

func TestListsAndWords(t *testing.T) {
	e := Entry{Grasses: []string{"zoysiagrass"}, Actives: []Active{{Name: "iron"}, {Name: "dicamba"}}}
	if !e.Lists("zoysiagrass") || e.Lists("tall_fescue") || !(Entry{Grasses: []string{AllTurf}}).Lists("tall_fescue") {
		t.Error("a label entry lists what it names, and all turf all")
	}
	if (Entry{}).Lists("tall_fescue") {
		t.Error("an entry without grasses lists none")
	}
	if e.Words() != "iron + dicamba" || (Entry{}).Words() != "" {
		t.Errorf("words are %q", e.Words())
	}
	if GrassWords("tall_fescue") == "tall_fescue" || GrassWords("x") != "x" || GrassWords(AllTurf) != "all turf" {
		t.Errorf("tall fescue is written %q", GrassWords("tall_fescue"))
	}
}
