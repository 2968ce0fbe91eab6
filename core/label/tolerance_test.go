package label

import (
	"slices"
	"strings"
	"testing"

	"example.com/tintline/core/measure"
	"pgregory.net/rapid"
)

// perAcre is a rate of so many pounds of active to the acre.
func perAcre(t testing.TB, pounds float64) measure.Maybe[measure.Rate] {
	t.Helper()
	r, err := measure.RateUnit(pounds, "lb_per_acre")
	if err != nil {
		t.Fatal(err)
	}
	return measure.Known(r)
}

// perHectare is a rate of so many grams of active to the hectare.
func perHectare(t testing.TB, grams float64) measure.Maybe[measure.Rate] {
	t.Helper()
	r, err := measure.RateUnit(grams, "g_per_ha")
	if err != nil {
		t.Fatal(err)
	}
	return measure.Known(r)
}

// TestVerdicts: a rule a line, each on rows of the reference as they stand. What is expected is read off the publications by
// hand, not off the code.
func TestVerdicts(t *testing.T) {
	hot := measure.Known(95.0)
	for _, row := range []struct {
		rule, active, grass string
		c                   Circumstances
		rating              Rating
		recalled, disagree  bool
		first               string // source of the row that decides
	}{
		{"a trial that was read decides", "sethoxydim", "tall_fescue", Circumstances{}, NotTolerant, false, false, "J-JOHN87"},
		{"cleared by trials and a column, which stands last", "sethoxydim", "centipedegrass", Circumstances{}, Tolerant, false, false, "UGA-BERM"},
		{"sources differ: the stricter one", "2,4-D", "centipedegrass", Circumstances{}, NotTolerant, false, true, "LBL-24D-B"},
		{"recalled alone clears nothing", "bifenthrin", "tall_fescue", Circumstances{}, RatingUnknown, true, false, "memory"},
		{"recalled alone warns", "metsulfuron-methyl", "tall_fescue", Circumstances{}, NotTolerant, true, false, "memory"},
		{"nothing found is not a verdict", "oxadiazon", "bahiagrass", Circumstances{}, RatingUnknown, false, false, "not_found"},
		{"contradicted by what was read", "triclopyr", "zoysiagrass", Circumstances{}, Tolerant, false, false, "UT-ZOY"},

		{"unknown growth counts as established", "quinclorac", "st_augustinegrass", Circumstances{}, NotTolerant, false, false, "VT-SA23"},
		{"stressed counts as established", "quinclorac", "st_augustinegrass", Circumstances{Growth: Stressed}, NotTolerant, false, false, "VT-SA23"},
		{"sod has rows of its own", "prodiamine", "st_augustinegrass", Circumstances{Growth: Sodded}, Moderate, false, false, "J-WILB22"},
		{"sod takes the warnings of established turf", "sethoxydim", "tall_fescue", Circumstances{Growth: Sodded}, NotTolerant, false, false, "J-JOHN87"},
		{"and not what clears it", "prodiamine", "tall_fescue", Circumstances{Growth: Sodded}, RatingUnknown, false, false, ""},
		{"seedlings have rows of their own", "prodiamine", "tall_fescue", Circumstances{Growth: Seeded}, NotTolerant, false, false, "PU-SPR11"},
		{"which say nothing of established turf", "prodiamine", "tall_fescue", Circumstances{Growth: Growing}, Tolerant, false, false, "J-JOHN94"},
		{"green-up has rows of its own", "atrazine", "centipedegrass", Circumstances{Growth: GreeningUp}, Moderate, false, false, "VT-CENTQ"},
		{"else those of established turf", "atrazine", "buffalograss", Circumstances{Growth: GreeningUp}, NotTolerant, false, false, "J-DOTR"},

		{"dormant only, and it is", "glyphosate", "bermudagrass_common", Circumstances{Growth: Dormant}, Tolerant, false, false, "J-TOLE07"},
		{"dormant only, and it grows", "oxadiazon", "bermudagrass_common", Circumstances{Growth: Growing}, OnlyDormant, false, false, "UT-PRE15"},
		{"dormant only, recalled: established turf answers", "glyphosate", "bahiagrass", Circumstances{Growth: Dormant}, NotTolerant, false, false, "J-GLYBA"},
		{"never dormant in full", "glyphosate", "st_augustinegrass", Circumstances{Growth: Dormant}, NotTolerant, false, false, "UARK-DORM12"},
		{"growing turf only is spared when dormant", "2,4-D + mecoprop-p + dicamba", "bermudagrass_common", Circumstances{Growth: Dormant}, Tolerant, false, false, "MSU-WELLS"},
		{"and not when growing", "2,4-D + mecoprop-p + dicamba", "bermudagrass_common", Circumstances{Growth: Growing}, Moderate, false, true, "J-JOHN83"},
		{"of spray only, and it is spread", "oxadiazon", "bermudagrass_common", Circumstances{Form: FormGranule}, RatingUnknown, true, false, "memory"},

		{"up to a rate, at the rate", "chlorsulfuron", "kentucky_bluegrass", Circumstances{Rate: perHectare(t, 282)}, Tolerant, false, false, "J-CHLO"},
		{"no more than the source allows", "fluazifop-P-butyl", "tall_fescue", Circumstances{Rate: perAcre(t, 0.09)}, Moderate, false, true, "PNW-NUT"},
		{"more than the source allows", "fluazifop-P-butyl", "tall_fescue", Circumstances{Rate: perAcre(t, 0.2)}, NotTolerant, false, false, "PNW-NUT"},
		{"dormant, no more than the source allows", "glyphosate", "bermudagrass_common", Circumstances{Growth: Dormant, Rate: perAcre(t, 0.375)}, Tolerant, false, false, "J-TOLE07"},
		{"dormant, more than the source allows", "glyphosate", "bermudagrass_common", Circumstances{Growth: Dormant, Rate: perAcre(t, 0.75)}, NotTolerant, false, true, "UARK-DORM12"},
		{"injury from a rate on, below it", "sulfentrazone", "tall_fescue", Circumstances{Rate: perAcre(t, 0.125)}, Moderate, false, false, "DE-NUT"},

		{"hotter than what clears", "atrazine", "st_augustinegrass", Circumstances{TempF: measure.Known(89.0), Month: 7, Cultivar: "Palmetto"}, Tolerant, false, false, "UGA-PENNY"},
		{"hotter than a warning says", "sulfentrazone", "tall_fescue", Circumstances{TempF: hot}, NotTolerant, false, true, "DE-NUT"},
		{"in the months of a warning", "urea", "centipedegrass", Circumstances{Month: 4}, Moderate, false, false, "NCSU-CENT"},
		{"outside of them", "urea", "centipedegrass", Circumstances{Month: 6}, RatingUnknown, false, false, ""},

		{"the cultivar that is controlled", "metsulfuron-methyl", "bahiagrass", Circumstances{Cultivar: "Pensacola"}, NotTolerant, false, false, "UF-AG243"},
		{"a cultivar that a warning does not name, and one that names all", "metsulfuron-methyl", "bahiagrass", Circumstances{Cultivar: "Argentine"}, NotTolerant, false, false, "GA-AUG12"},
		{"a cultivar that was tried", "fluroxypyr", "zoysiagrass", Circumstances{Cultivar: "Meyer"}, Tolerant, false, false, "UT-ZOY"},
		{"another cultivar than was tried", "fluroxypyr", "zoysiagrass", Circumstances{Cultivar: "Empire"}, RatingUnknown, false, false, ""},
	} {
		v := Tolerance(row.active, row.grass, row.c)
		first := ""
		if len(v.Rows) > 0 {
			first = v.Rows[0].Source
		}
		if v.Rating != row.rating || v.Recalled != row.recalled || v.Disagree != row.disagree || first != row.first {
			t.Errorf("%s: %s on %s is %s, recalled %v, disagree %v, first %q of %d", row.rule, row.active, row.grass, v.Rating, v.Recalled, v.Disagree, first, len(v.Rows))
			for _, r := range v.Rows {
				t.Logf("    %s", r.says())
			}
		}
	}
}

func TestRateAboveWhatWasTriedClearsNothing(t *testing.T) {
	// Fine fescue and fluazifop: 0.56 kg/ha on creeping red fescue, 420 g/ha three times.
	for _, row := range []struct {
		grams float64
		want  Rating
		rows  int
	}{{100, Tolerant, 2}, {420, Tolerant, 2}, {500, Tolerant, 1}, {560, Tolerant, 1}, {600, RatingUnknown, 0}} {
		v := Tolerance("fluazifop-P-butyl", "fine_fescue", Circumstances{Rate: perHectare(t, row.grams)})
		if v.Rating != row.want || len(v.Rows) != row.rows {
			t.Errorf("at %g g/ha: %s by %d rows", row.grams, v.Rating, len(v.Rows))
		}
	}
}

func TestWeakSourcesStandLastAmongEquals(t *testing.T) {
	v := Tolerance("sethoxydim", "centipedegrass", Circumstances{})
	if n := len(v.Rows); n != 5 || v.Rows[n-1].Source != "GA-AUG07" {
		t.Errorf("%d rows, the last by %s", n, v.Rows[n-1].Source)
	}
	row := func(source, basis string) Row {
		return Row{Rating: NotTolerant, Basis: basis, Source: source, When: Conditions{Stage: StageEstablished}}
	}
	v = verdictOf([]Row{row("memory", BasisRecalled), row("GA-AUG07", BasisExtension), row("J-JOHN87", BasisTrial)}, &Circumstances{})
	if v.Rows[0].Source != "J-JOHN87" || v.Rows[1].Source != "GA-AUG07" || v.Rows[2].Source != "memory" || v.Recalled {
		t.Errorf("%s, %s, %s", v.Rows[0].Source, v.Rows[1].Source, v.Rows[2].Source)
	}
}

func TestWhatIsShownAndDecidesNothing(t *testing.T) {
	v := Tolerance("triclopyr", "zoysiagrass", Circumstances{})
	last := v.Rows[len(v.Rows)-1]
	if last.Contradicted != "J-FLES11" || !last.Recalled() || last.Rating != Moderate {
		t.Errorf("the row that is contradicted does not stand last: %+v", last)
	}
	if v = Tolerance("glyphosphate", "zoysiagrass", Circumstances{}); v.Rating != RatingUnknown || v.Rows != nil {
		t.Errorf("an active that is not known has a verdict: %+v", v)
	}
}

func TestCountedIsNeverMilderThanWhatWasRead(t *testing.T) {
	for _, row := range []struct {
		active, grass string
		want          Rating
	}{
		{"bifenthrin", "tall_fescue", NotTolerant},
		{"metsulfuron-methyl", "fine_fescue", NotTolerant},
		{"sulfosulfuron", "kentucky_bluegrass", Moderate},
		{"prodiamine", "tall_fescue", Tolerant},
		{"foo", "tall_fescue", NotTolerant},
	} {
		if got := Tolerance(row.active, row.grass, Circumstances{}).Counted(); got != row.want {
			t.Errorf("%s on %s counts as %s", row.active, row.grass, got)
		}
	}
}

func TestOtherSpellingsHaveTheSameVerdict(t *testing.T) {
	for typed, name := range map[string]string{
		"2,4-d amine": "2,4-D", "MCPP": "mecoprop-p", "Metsulfuron Methyl": "metsulfuron-methyl", "s-metolachlor": "S-metolachlor", "iron": "ferrous sulfate (iron)",
		"IMAZAQUIN": "imazaquin", "fluazifop-p": "fluazifop-P-butyl", "Triclopyr BEE": "triclopyr",
	} {
		if got, ok := ReadActive(typed); !ok || got != name {
			t.Errorf("%q is read as %q", typed, got)
		}
		for _, g := range Grasses() {
			if a, b := Tolerance(typed, g.Name, Circumstances{}), Tolerance(name, g.Name, Circumstances{}); a.Rating != b.Rating || len(a.Rows) != len(b.Rows) {
				t.Errorf("%q on %s: %s and %s", typed, g.Name, a.Rating, b.Rating)
			}
		}
	}
	if _, ok := ReadActive("metsulfuronn"); ok {
		t.Error("a slip of the pen is an active")
	}
	if got := NearestActives("metsulfron"); len(got) != 3 || got[0] != "metsulfuron-methyl" {
		t.Errorf("nearest are %v", got)
	}
	if got := NearestActives("trichlopyr"); len(got) != 3 || got[0] != "triclopyr" {
		t.Errorf("nearest are %v", got)
	}
}

// anyRow draws a row of one active on one grass.
func anyRow(rt *rapid.T, name string, bases ...string) Row {
	draw := func(of []string, what string) string { return rapid.SampledFrom(of).Draw(rt, name+what) }
	r := Row{
		Active: "x", Grass: "y", Basis: draw(bases, " basis"), Words: "words",
		Rating: rapid.SampledFrom([]Rating{Tolerant, Moderate, OnlyDormant, NotTolerant}).Draw(rt, name+" rating"),
		Source: draw([]string{"J-JOHN87", "GA-AUG07", "UT-PRE15"}, " source"),
	}
	if r.Basis == BasisRecalled {
		r.Source = "memory"
	}
	w := &r.When
	w.Stage = draw([]string{StageEstablished, StageEstablishing, StageSeedling, StageDormant, StageGreenUp}, " stage")
	w.Cultivar = draw([]string{"", "", "Floratam"}, " cultivar")
	w.NotIn = split(draw([]string{"", "", GreeningUp, Dormant}, " not in"), ",")
	w.Form = draw([]string{"", "", FormSpray}, " form")
	if rapid.Bool().Draw(rt, name+" has rate") {
		w.MostRate, w.MostIsLimit = measure.Known(measure.Rate{V: 100, Kind: measure.Dry}), rapid.Bool().Draw(rt, name+" limit")
	}
	if rapid.Bool().Draw(rt, name+" has temperature") {
		w.TempMax = measure.Known(85.0)
	}
	if rapid.Bool().Draw(rt, name+" has months") {
		w.Months = []int{3, 4}
	}
	return r
}

func anyCircumstances(rt *rapid.T) Circumstances {
	c := Circumstances{
		Growth:   rapid.SampledFrom(append(Growths(), "")).Draw(rt, "growth"),
		Cultivar: rapid.SampledFrom([]string{"", "Floratam", "Raleigh"}).Draw(rt, "cultivar"),
		Month:    rapid.SampledFrom([]int{0, 4, 8}).Draw(rt, "month"),
		Form:     rapid.SampledFrom([]string{"", FormSpray, FormGranule}).Draw(rt, "form"),
	}
	if rapid.Bool().Draw(rt, "rate known") {
		c.Rate = measure.Known(measure.Rate{V: rapid.Float64Range(1, 200).Draw(rt, "rate"), Kind: measure.Dry})
	}
	if rapid.Bool().Draw(rt, "temperature known") {
		c.TempF = measure.Known(rapid.Float64Range(40, 110).Draw(rt, "temperature"))
	}
	return c
}

// TestRecalledRowsNeverMakeAVerdictMilder: neither in what is said of the product, nor where a warning hangs on it.
func TestRecalledRowsNeverMakeAVerdictMilder(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		rows := drawRows(rt, BasisTrial, BasisLabel, BasisRecalled)
		c := anyCircumstances(rt)
		more := slices.Insert(slices.Clone(rows), rapid.IntRange(0, len(rows)).Draw(rt, "at"), anyRow(rt, "recalled", BasisRecalled))
		a, b := verdictOf(rows, &c), verdictOf(more, &c)
		if b.Rating < a.Rating || b.Counted() < a.Counted() || b.Kind(c.Growth) > a.Kind(c.Growth) {
			rt.Fatalf("%s (%s) became %s (%s)", a.Rating, a.Counted(), b.Rating, b.Counted())
		}
		if b.Rating == Tolerant && a.Rating != Tolerant {
			rt.Fatal("a recalled row cleared an active")
		}
	})
}

func drawRows(rt *rapid.T, bases ...string) []Row {
	n := rapid.IntRange(0, 6).Draw(rt, "rows")
	rows := make([]Row, n)
	for i := range rows {
		rows[i] = anyRow(rt, "row", bases...)
	}
	return rows
}

// TestStricterDecidesWhateverTheOrder: the verdict does not hang on the order of the rows, and of the rows that apply the
// strictest decides.
func TestStricterDecidesWhateverTheOrder(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		rows := drawRows(rt, BasisTrial, BasisLabel, BasisExtension, BasisRecalled)
		c := anyCircumstances(rt)
		a := verdictOf(rows, &c)
		b := verdictOf(rapid.Permutation(rows).Draw(rt, "order"), &c)
		if a.Rating != b.Rating || a.Recalled != b.Recalled || a.Disagree != b.Disagree || len(a.Rows) != len(b.Rows) {
			rt.Fatalf("%+v and %+v", a, b)
		}
		for i := range a.Rows {
			if rating, counts := judge(&a.Rows[i], &c); counts && a.Rows[i].read() && rating > a.Rating {
				rt.Fatalf("%s, and a row that applies says %s", a.Rating, rating)
			}
		}
	})
}

// TestAnotherReadRowNeverMakesEstablishedTurfMilder: on turf that is established each further source can only add.
func TestAnotherReadRowNeverMakesEstablishedTurfMilder(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		rows := drawRows(rt, BasisTrial, BasisRecalled)
		c := anyCircumstances(rt)
		c.Growth = rapid.SampledFrom([]string{"", Growing, Stressed}).Draw(rt, "established")
		a, more := verdictOf(rows, &c), append(slices.Clone(rows), anyRow(rt, "more", BasisTrial))
		if b := verdictOf(more, &c); b.Rating < a.Rating {
			rt.Fatalf("%s became %s", a.Rating, b.Rating)
		}
	})
}

func TestVerdictInWords(t *testing.T) {
	for _, row := range []struct {
		active, grass string
		c             Circumstances
		holds         []string
	}{
		{"sethoxydim", "tall_fescue", Circumstances{}, []string{"not tolerant (trial, J-JOHN87: severe injury)"}},
		{"2,4-D", "centipedegrass", Circumstances{}, []string{"not tolerant (label, LBL-24D-B", "sources differ: "}},
		{"bifenthrin", "tall_fescue", Circumstances{}, []string{"recalled, not read", "no source was read"}},
		{"oxadiazon", "bahiagrass", Circumstances{}, []string{"unknown (nothing found)"}},
		{"prodiamine", "tall_fescue", Circumstances{Growth: Sodded}, []string{"nothing known"}},
		{"fluazifop-P-butyl", "tall_fescue", Circumstances{Rate: perAcre(t, 0.2)}, []string{"not tolerant above the limit of a row: moderate (extension, PNW-NUT"}},
	} {
		got := Tolerance(row.active, row.grass, row.c).Words()
		for _, h := range row.holds {
			if !strings.Contains(got, h) {
				t.Errorf("%s on %s: %q lacks %q", row.active, row.grass, got, h)
			}
		}
	}
}
