package label

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/tintline/core/measure"
)

// listing is a label entry that lists all turf, of a liquid with its actives in pounds to the gallon, or of a dry product
// in per cent.
func listing(form measure.Kind, class string, names ...string) Entry {
	e := Entry{Form: form, MixingClass: class, Grasses: []string{AllTurf}}
	for _, n := range names {
		e.Actives = append(e.Actives, Active{Name: n})
	}
	return e
}

func rateIn(t *testing.T, f float64, unit string) measure.Maybe[measure.Rate] {
	t.Helper()
	r, err := measure.RateUnit(f, unit)
	if err != nil {
		t.Fatal(err)
	}
	return measure.Known(r)
}

func TestMay(t *testing.T) {
	spray := func(names ...string) Entry { return listing(measure.Liquid, "sl", names...) }
	for _, row := range []struct {
		rule           string
		e              Entry
		grass          string
		c              Circumstances
		kind           LeaveKind
		active, letter string
	}{
		{"listed and cleared", spray("prodiamine"), "tall_fescue", Circumstances{}, Listed, "prodiamine", "L"},
		{"listed and injured", spray("sethoxydim"), "tall_fescue", Circumstances{}, Injures, "sethoxydim", "I"},
		{"listed, by recalled rows alone", spray("bifenthrin"), "tall_fescue", Circumstances{}, Listed, "bifenthrin", "?"},
		{"listed, of an active that is not known", spray("dihydrogen"), "tall_fescue", Circumstances{}, Listed, "", "?"},
		{"listed, no active entered", spray(), "tall_fescue", Circumstances{}, Listed, "", "?"},
		{"plant food asks for no source", spray("ammonium sulfate", "iron"), "tall_fescue", Circumstances{}, Listed, "ferrous sulfate (iron)", "L"},
		{"and takes none from a herbicide", spray("urea", "bifenthrin"), "tall_fescue", Circumstances{}, Listed, "bifenthrin", "?"},
		{"nor hides what clears one", spray("urea", "prodiamine"), "tall_fescue", Circumstances{}, Listed, "prodiamine", "L"},
		{"reduced", spray("sulfosulfuron"), "kentucky_bluegrass", Circumstances{}, Reduced, "sulfosulfuron", "R"},
		{"dormant only, and it grows", spray("glyphosate"), "bermudagrass_common", Circumstances{Growth: Growing}, WrongState, "glyphosate", "D"},
		{"dormant only, and nobody said", spray("glyphosate"), "bermudagrass_common", Circumstances{}, WrongState, "glyphosate", "D"},
		{"dormant only, and it is", spray("glyphosate"), "bermudagrass_common", Circumstances{Growth: Dormant}, Listed, "glyphosate", "L"},
		{"dormant only as a spray, and it is spread", listing(measure.Dry, "g", "oxadiazon"), "bermudagrass_common", Circumstances{}, Listed, "oxadiazon", "?"},
		{"and it is mixed with water", listing(measure.Dry, "wp", "oxadiazon"), "bermudagrass_common", Circumstances{}, WrongState, "oxadiazon", "D"},
		{"the heaviest of several", spray("prodiamine", "sulfosulfuron", "2,4-D"), "kentucky_bluegrass", Circumstances{}, Reduced, "sulfosulfuron", "R"},
		{"a mixture is judged as one too", spray("2,4-D", "MCPP", "dicamba"), "buffalograss", Circumstances{}, Reduced, "dicamba", "R"},
		{"a mixture backs its parts", spray("MCPP", "dicamba", "2,4-D"), "tall_fescue", Circumstances{}, Listed, "2,4-D", "L"},
		{"two of three are no mixture", spray("MCPP", "dicamba"), "tall_fescue", Circumstances{}, Listed, "mecoprop-p", "?"},
		{"a mixture that the label of one product allows", spray("iodosulfuron-methyl-sodium", "thiencarbazone", "dicamba"), "zoysiagrass", Circumstances{}, Listed, "thiencarbazone-methyl + iodosulfuron + dicamba", "L"},
	} {
		l := May(row.e, row.grass, row.c, row.e.Most)
		if l.Kind != row.kind || l.Active != row.active || l.Letter() != row.letter {
			t.Errorf("%s: %s (%q) by %q: %s", row.rule, l.Letter(), l.Word(), l.Active, l.Words())
		}
		e := row.e
		e.Grasses = []string{"seashore_paspalum"}
		if l = May(e, row.grass, row.c, e.Most); l.Kind != Unlisted || l.Letter() != "N" || l.Active != "" {
			t.Errorf("%s: not on the label, and %q", row.rule, l.Letter())
		}
	}
}

// TestMayReckonsTheRateOfTheActive: by the label rate of 5 to 6 fl oz of a product of 2 lb to the gallon for tall fescue
// (Pacific Northwest Handbooks): 6 fl oz are 6/128 gal, or 0.094 lb of active to the acre.
func TestMayReckonsTheRateOfTheActive(t *testing.T) {
	e := listing(measure.Liquid, "ec", "fluazifop-P-butyl")
	for _, row := range []struct {
		pounds, fluidOunces float64
		want                LeaveKind
	}{{2, 6, Reduced}, {2, 6.3, Injures}, {2, 24, Injures}, {0.5, 24, Reduced}, {0, 24, Reduced}} {
		e.Actives[0].PoundsPerGallon = row.pounds
		l := May(e, "tall_fescue", Circumstances{}, rateIn(t, row.fluidOunces, "fl_oz_per_acre"))
		if l.Kind != row.want {
			t.Errorf("%g lb/gal at %g fl oz/A: %s", row.pounds, row.fluidOunces, l.Word())
		}
	}
	// A mixture goes down at the sum of its parts: 380 g/ha were tried on seashore paspalum (Unruh et al. 2006).
	e = listing(measure.Dry, "wg", "2,4-D", "mecoprop-p", "dicamba")
	for i := range e.Actives {
		e.Actives[i].PercentByWeight = 10
	}
	under, over := e.parts(rateIn(t, 1200, "g_per_ha")), e.parts(rateIn(t, 1400, "g_per_ha"))
	for _, row := range []struct {
		parts []part
		want  float64
	}{{under, 360}, {over, 420}} {
		m := row.parts[len(row.parts)-1]
		if got, err := m.rate.V.In("g_per_ha"); m.of == nil || err != nil || math.Abs(got-row.want) > 1e-9 {
			t.Errorf("%s goes down at %g g/ha, not %g", m.name, got, row.want)
		}
	}
}

func TestActiveRate(t *testing.T) {
	for _, row := range []struct {
		what string
		e    Entry
		a    Active
		rate measure.Maybe[measure.Rate]
		want float64 // lb of active to the acre; below 0: not known
	}{
		{"2 pt of 4 lb/gal", Entry{}, Active{PoundsPerGallon: 4}, rateIn(t, 2, "pt_per_acre"), 1},
		{"1 oz of 60 per cent", Entry{Form: measure.Dry}, Active{PercentByWeight: 60}, rateIn(t, 1, "oz_per_acre"), 0.0375},
		{"0.367 oz to 1,000 sq ft of 75 per cent", Entry{Form: measure.Dry}, Active{PercentByWeight: 75}, rateIn(t, 0.367, "oz_per_1000_sqft"), 0.749368},
		{"1 gal of 10 lb with 20 per cent", Entry{Density: measure.Known(10.0)}, Active{PercentByWeight: 20}, rateIn(t, 1, "gal_per_acre"), 2},
		{"per cent of a liquid whose density nobody entered", Entry{}, Active{PercentByWeight: 20}, rateIn(t, 1, "gal_per_acre"), -1},
		{"no content", Entry{}, Active{}, rateIn(t, 1, "gal_per_acre"), -1},
		{"no rate", Entry{}, Active{PoundsPerGallon: 4}, measure.Maybe[measure.Rate]{}, -1},
		{"a rate of the other kind", Entry{Form: measure.Dry}, Active{PercentByWeight: 75}, rateIn(t, 1, "gal_per_acre"), -1},
	} {
		got := row.e.ActiveRate(row.a, row.rate)
		pounds, err := got.V.In("lb_per_acre")
		if got.Known != (row.want >= 0) || got.Known && (err != nil || math.Abs(pounds-row.want) > 5e-5) {
			t.Errorf("%s: %g lb/A, known %v", row.what, pounds, got.Known)
		}
	}
}

func TestLeaveSaysBothGrounds(t *testing.T) {
	e := listing(measure.Liquid, "sl", "sethoxydim")
	if got, want := May(e, "tall_fescue", Circumstances{}, e.Most).Words(),
		"label entry lists it; reference on sethoxydim: not tolerant (trial, J-JOHN87: severe injury)"; got != want {
		t.Errorf("%q", got)
	}
	e = listing(measure.Liquid, "sl", "atrazine")
	got := May(e, "bermudagrass_common", Circumstances{Growth: Growing}, e.Most).Words()
	for _, h := range []string{"label entry lists it; reference on atrazine: dormant only (extension, UGA-PENNY", "; else not tolerant (extension, UGA-SEM22"} {
		if !strings.Contains(got, h) {
			t.Errorf("%q lacks %q", got, h)
		}
	}
	e.Grasses = nil
	if got := May(e, "tall_fescue", Circumstances{}, e.Most).Words(); got != "label entry does not list it" {
		t.Errorf("%q", got)
	}
	if got := May(listing(measure.Liquid, "sl", "dihydrogen"), "tall_fescue", Circumstances{}, e.Most).Words(); got != "label entry lists it; reference: nothing known" {
		t.Errorf("%q", got)
	}
}

func TestEveryLetterHasItsWords(t *testing.T) {
	keys := LeaveKeys()
	for _, l := range []Leave{{Kind: Unlisted}, {Kind: WrongState}, {Kind: Injures}, {Kind: Reduced}, {Kind: Listed}, {Kind: Listed, Backed: true}} {
		i := slices.IndexFunc(keys, func(k LeaveKey) bool { return k.Letter == l.Letter() })
		if i < 0 || keys[i].Word != l.Word() || keys[i].Words == "" || len(l.Letter()) != 1 {
			t.Errorf("%q, %q", l.Letter(), l.Word())
		}
	}
	if len(keys) != 6 {
		t.Errorf("%d keys", len(keys))
	}
}

// TestPrefill: by hand from the rows that were read; what is only recalled, or rated otherwise by one source, stays out.
func TestPrefill(t *testing.T) {
	for _, row := range []struct {
		actives, want string
	}{
		{"prodiamine", "bermudagrass_common bermudagrass_hybrid buffalograss kentucky_bluegrass perennial_ryegrass seashore_paspalum tall_fescue"},
		{"sethoxydim", "centipedegrass fine_fescue"},
		{"2,4-D|MCPP|dicamba", "bahiagrass tall_fescue zoysiagrass"},
		{"2,4-D|MCPP|dicamba|surfactant", "bahiagrass tall_fescue zoysiagrass"},
		{"prodiamine|quinclorac", "kentucky_bluegrass perennial_ryegrass seashore_paspalum tall_fescue"},
		{"prodiamine|bifenthrin", ""},
		{"bifenthrin", ""},
		{"urea", ""},
		{"dihydrogen", ""},
		{"surfactant", ""},
		{"", ""},
	} {
		if got := strings.Join(PrefillGrasses(split(row.actives, "|")), " "); got != row.want {
			t.Errorf("%s: %s", row.actives, got)
		}
	}
}

// TestPrefillRestsOnWhatWasRead: no grass is offered for an active that a source which was read does not call tolerant when
// established.
func TestPrefillRestsOnWhatWasRead(t *testing.T) {
	offered := 0
	for _, a := range Actives() {
		for _, g := range PrefillGrasses([]string{a.Name}) {
			offered++
			read := false
			for _, r := range Tolerances() {
				if r.Active == a.Name && r.Grass == g && r.When.Stage == StageEstablished && r.Contradicted == "" {
					read = read || r.read() && r.Rating == Tolerant
					if r.Rating != Tolerant {
						t.Errorf("%s offers %s, which %s calls %s", a.Name, g, r.Source, r.Rating)
					}
				}
			}
			if !read {
				t.Errorf("%s offers %s and nobody read it", a.Name, g)
			}
		}
	}
	if offered < 100 {
		t.Errorf("%d offered", offered)
	}
}
