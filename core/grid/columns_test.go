package grid

import (
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// TestStrongestLoadIsJudged: of two mixes with the same product the higher rate decides, whichever was loaded first.
func TestStrongestLoadIsJudged(t *testing.T) {
	const mixes = loads + `
{"fact":"mix","name":"strong","parts":[{"product":"warm","rate_fl_oz_per_1000_sqft":0.75}]}
{"fact":"mix","name":"weak","parts":[{"product":"warm","rate_fl_oz_per_1000_sqft":0.5}]}
{"fact":"loaded","into":"ride-on","volume_gal":5,"mix":"%s","for":"ride-on"}`
	for mix, want := range map[string]string{"strong": "strong", "weak": "warm mix"} {
		g := OfBook(bookOf(t, fmt.Sprintf(mixes, mix)), core.Moment{})
		c := g.Columns[0]
		if c.Product != "warm" || c.RateOf != want || strings.Join(c.Where, ", ") != "compartment a, tank of ride-on" {
			t.Errorf("%s: %+v", mix, c)
		}
	}
}

// TestFormFollowsFromThePlace: what is in a tank is sprayed, what is in a hopper, or is to go there, is spread; of what is in
// both it is not known.
func TestFormFollowsFromThePlace(t *testing.T) {
	forms := func(lines string) map[string]string {
		out := map[string]string{}
		for _, c := range OfBook(bookOf(t, lines), core.Moment{}).Columns {
			out[c.Product] = c.form
		}
		return out
	}
	got := forms(loads)
	if got["warm"] != label.FormSpray || got["cool"] != label.FormSpray || got["food"] != label.FormGranule {
		t.Errorf("%v", got)
	}
	got = forms(loads + `
{"fact":"load_planned","into":"b","volume_gal":50,"parts":[{"product":"food","amount_lb":5}]}`)
	if got["food"] != "" {
		t.Errorf("%v", got)
	}
}

// TestRecalledAloneIsNoTolerance: of an active that only memory calls tolerant the letter is the one of what is not known,
// and the word says why.
func TestRecalledAloneIsNoTolerance(t *testing.T) {
	recalled := 0
	for _, a := range label.RatedActives() {
		for _, grass := range label.Grasses() {
			v := label.Tolerance(a, grass.Name, label.Circumstances{})
			letter, word := VerdictSigns(v, "")
			if (letter == "T") != (v.Rating == label.Tolerant && v.Read() && v.Kind("") == label.Listed) {
				t.Errorf("%s on %s: %s %s of %v", a, grass.Name, letter, word, v.Rating)
			}
			if word == "recalled" {
				recalled++
				if v.Read() && v.Rating != label.RatingUnknown || !v.Recalled {
					t.Errorf("%s on %s: %+v", a, grass.Name, v)
				}
			}
		}
	}
	if recalled == 0 {
		t.Error("nothing was recalled alone")
	}
}

func TestNarrowLeavesWhatIsAskedAbout(t *testing.T) {
	b := bookOf(t, loads)
	for _, c := range []struct {
		asked         Asked
		of            string
		rows, columns int
	}{
		{Asked{}, OfLoads, 13, 3},
		{Asked{Grass: "zoysiagrass"}, OfLoads, 1, 3},
		{Asked{Active: "atrazine"}, OfLoads, 13, 1},
		{Asked{Grass: "zoysiagrass", Active: "mesotrione"}, OfReference, 1, 1},
	} {
		g := OfBook(b, core.Moment{})
		g.Narrow(c.asked)
		if g.Of != c.of || len(g.Rows) != c.rows || len(g.Columns) != c.columns {
			t.Errorf("%+v: %s, %d rows, %d columns", c.asked, g.Of, len(g.Rows), len(g.Columns))
		}
	}
}

// TestYearOfAZone: what came as a trace is named and not counted, and what the book does not have is said.
func TestYearOfAZone(t *testing.T) {
	b := bookOf(t, loads+`
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"a","volume_gal":4}
{"fact":"visit_begun","lawn":"12 Elm Road"}
{"fact":"sprayed","lawn":"12 Elm Road","zones":["front"],"applicator":"gun","by":"area"}
{"fact":"loaded","into":"b","volume_gal":50,"mix":"cool mix","for":"gun"}
{"fact":"lined_up","supply":["b"],"return":"b"}
{"fact":"pushed_back","into":"b","volume_gal":4}
{"fact":"sprayed","lawn":"12 Elm Road","zones":["back"],"applicator":"gun","by":"area"}`)
	l := b.Lawn("12 Elm Road")
	front, back := fmt.Sprint(Year(b, "12 Elm Road", l.Zones[0], "2026-05-28")), fmt.Sprint(Year(b, "12 Elm Road", l.Zones[1], "2026-05-28"))
	if !strings.Contains(front, "{warm ") || strings.Contains(front, "traces") {
		t.Errorf("front: %s", front)
	}
	if !strings.Contains(back, "{cool ") || !strings.Contains(back, "{traces of warm}") {
		t.Errorf("back: %s", back)
	}
	if !strings.Contains(front, "what was laid before 2026-05-28 is not in the book") {
		t.Errorf("front: %s", front)
	}
	if none := fmt.Sprint(Year(b, "12 Elm Road", core.Zone{Name: "side"}, "2026-05-28")); !strings.Contains(none, "nothing is in the book of this year") {
		t.Errorf("side: %s", none)
	}
}
