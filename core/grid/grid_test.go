package grid

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/label"
)

const rig = `{"fact":"rig","name":"truck","compartments":[{"letter":"a","capacity_gal":300},{"letter":"b","capacity_gal":160}],"cell_gal":0.2,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.5,"flow_gpm":2.5},{"name":"ride-on","kind":"ride_on","hose":"reel","delivery_gal_per_1000_sqft":0.3,"tank_gal":14},{"name":"spreader","kind":"spreader","hopper_lb":50}]}`

const loads = rig + `
{"fact":"product","name":"warm","form":"liquid","kind":"herbicide","actives":[{"name":"atrazine","lb_per_gal":4}],"registration":"00000-1","grasses":["bermudagrass_common","st_augustinegrass","centipedegrass"],"rate_low_fl_oz_per_1000_sqft":0.5,"rate_high_fl_oz_per_1000_sqft":0.75}
{"fact":"product","name":"cool","form":"liquid","kind":"herbicide","actives":[{"name":"triclopyr","lb_per_gal":4}],"grasses":["tall_fescue","kentucky_bluegrass"],"rate_low_fl_oz_per_1000_sqft":0.3,"rate_high_fl_oz_per_1000_sqft":0.6}
{"fact":"product","name":"food","form":"dry","kind":"fertiliser","grasses":["all_turf"],"rate_low_lb_per_1000_sqft":3,"rate_high_lb_per_1000_sqft":5,"nitrogen_pct":20}
{"fact":"product","name":"at home","form":"dry","kind":"lime","grasses":["all_turf"]}
{"fact":"mix","name":"warm mix","parts":[{"product":"warm","rate_fl_oz_per_1000_sqft":0.6}]}
{"fact":"mix","name":"cool mix","parts":[{"product":"cool","rate_fl_oz_per_1000_sqft":0.4}]}
{"fact":"lawn","name":"12 Elm Road","zones":[{"name":"front","grass":"bermudagrass_common","area_sqft":4000,"growth":"dormant","growth_since":"2026-01-10"},{"name":"back","grass":"bermudagrass_common","area_sqft":4000,"growth":"growing","growth_since":"2026-05-10"}]}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["12 Elm Road"]}
{"fact":"loaded","into":"a","volume_gal":100,"mix":"warm mix","for":"gun"}
{"fact":"loaded","into":"spreader","parts":[{"product":"food","amount_lb":30}]}
{"fact":"load_planned","into":"b","volume_gal":50,"mix":"cool mix","parts":[{"product":"cool","amount_fl_oz":14}]}`

func bookOf(t testing.TB, lines string) *core.Book {
	t.Helper()
	b := core.NewBook(1)
	for i, line := range strings.Split(strings.TrimSpace(lines), "\n") {
		l, err := core.DecodeLine([]byte(line))
		if err != nil {
			t.Fatal(line, err)
		}
		at, err := core.ParseMoment(fmt.Sprintf("2026-05-28T08:%02d:00-05:00", i))
		if err != nil {
			t.Fatal(err)
		}
		entries, err := b.Prepare(fmt.Sprint("a", i), at, l.Fact)
		if err != nil {
			t.Fatal(line, err)
		}
		for _, e := range entries {
			if err := b.Apply(e); err != nil {
				t.Fatal(err)
			}
		}
	}
	return b
}

// cellOf is the cell of a row and a column by their names.
func cellOf(t testing.TB, g *Grid, row, column string) Cell {
	t.Helper()
	for i := range g.Rows {
		for j := range g.Columns {
			if g.Rows[i].Name() == row && g.Columns[j].Name() == column {
				return g.Cell(i, j)
			}
		}
	}
	t.Fatalf("there is no cell %s, %s", row, column)
	return Cell{}
}

// TestColumnsAreTheCurrentLoads: what stands in a tank, in a hopper or is to be loaded, with its place and the rate of its
// mix; what stands at home is none.
func TestColumnsAreTheCurrentLoads(t *testing.T) {
	g := OfBook(bookOf(t, loads), core.Moment{})
	var got []string
	for i := range g.Columns {
		c := &g.Columns[i]
		got = append(got, c.Name()+": "+c.WhereWords()+" "+c.RateOf)
	}
	want := "warm: compartment a warm mix|cool: to load in b cool mix|food: hopper of spreader "
	if strings.Join(got, "|") != want || g.Of != OfLoads {
		t.Errorf("%s: %q", g.Of, got)
	}
	if len(g.Rows) != len(label.Grasses()) {
		t.Errorf("%d rows", len(g.Rows))
	}
}

// TestResidueIsNoLoad: what was pushed back into another mix stands last, and is said to be residue.
func TestResidueIsNoLoad(t *testing.T) {
	b := bookOf(t, loads+`
{"fact":"loaded","into":"b","volume_gal":50,"mix":"cool mix","for":"gun"}
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"a","volume_gal":4}
{"fact":"lined_up","supply":["b"],"return":"b"}
{"fact":"pushed_back","into":"b","volume_gal":4}
{"fact":"dumped","from":"compartment/a","volume_gal":100,"to":"waste/yard"}`)
	g := OfBook(b, core.Moment{})
	last := &g.Columns[len(g.Columns)-1]
	if last.Product != "warm" || !last.Residue || !strings.Contains(last.WhereWords(), "residue") {
		a := b.Plumbing().Compartment('a')
		t.Errorf("%+v; a holds %v", g.Columns, a.Liquid)
	}
}

func TestWithoutLoadsAllProductsAndWithoutThoseTheReference(t *testing.T) {
	lines := strings.Split(loads, "\n")
	if g := OfBook(bookOf(t, strings.Join(lines[:5], "\n")), core.Moment{}); g.Of != OfProducts || len(g.Columns) != 4 {
		t.Errorf("%s with %d columns", g.Of, len(g.Columns))
	}
	for _, b := range []*core.Book{bookOf(t, rig), core.NewBook(1)} {
		g := OfBook(b, core.Moment{})
		if g.Of != OfReference || len(g.Columns) != len(label.RatedActives()) {
			t.Errorf("%s with %d columns", g.Of, len(g.Columns))
		}
	}
}

// TestCellsSayWhatCheckSays: a cell weighs what the gate's judge says of the same product on the same grass, and a grass that
// the label does not list is a stop whatever the reference says.
func TestCellsSayWhatCheckSays(t *testing.T) {
	b := bookOf(t, loads)
	g := WithLawn(b, "12 Elm Road", core.Moment{})
	for _, want := range []struct {
		row, column, letter string
		weight              check.Weight
	}{
		{"tall fescue", "warm", "N", check.Stop},
		{"zoysiagrass", "cool", "N", check.Stop},
		// Dormant common bermudagrass may have atrazine, growing it may not: Univ. of Georgia, Pennywort (dollarweed), publication 71.
		{"back, common bermudagrass", "warm", "D", check.Ask},
		{"front, common bermudagrass", "warm", "L", check.None},
		{"common bermudagrass", "warm", "D", check.Ask},
	} {
		c := cellOf(t, g, want.row, want.column)
		if c.Letter != want.letter || c.Weight != want.weight || c.Word == "" {
			t.Errorf("%s, %s: %s %s, %v; %s", want.row, want.column, c.Letter, c.Word, c.Weight, c.Says)
		}
	}
}

// TestOwnNoteRaisesACell: a note of the operator's own makes a cell heavier and never lighter.
func TestOwnNoteRaisesACell(t *testing.T) {
	b := bookOf(t, loads+`
{"fact":"cautioned","product":"cool","grass":"tall_fescue","weight":"stop","says":"scorched it"}
{"fact":"cautioned","product":"cool","grass":"zoysiagrass","weight":"note","says":"is tender"}`)
	g := OfBook(b, core.Moment{})
	if c := cellOf(t, g, "tall fescue", "cool"); c.Weight != check.Stop || c.Ruled == check.Stop || !strings.Contains(c.Signs(), "!") {
		t.Errorf("%+v", c)
	}
	if c := cellOf(t, g, "zoysiagrass", "cool"); c.Weight != check.Stop || len(c.Notes) != 1 {
		t.Errorf("%+v", c)
	}
}

// TestTextFitsThePaper: 80 columns for any book, and every product stands in it.
func TestTextFitsThePaper(t *testing.T) {
	for name, lines := range map[string]string{"loads": loads, "rig": rig, "no loads": strings.Join(strings.Split(loads, "\n")[:5], "\n")} {
		g := OfBook(bookOf(t, lines), core.Moment{})
		text := g.Text() + ReferenceText(Reference(Asked{Grass: "zoysiagrass"}), Asked{Grass: "zoysiagrass"})
		for _, l := range strings.Split(text, "\n") {
			if utf8.RuneCountInString(l) > paper {
				t.Errorf("%s: %q", name, l)
			}
		}
		if n := strings.Count(text, "\nbahiagrass "); n < 1 {
			t.Errorf("%s: no row of bahiagrass", name)
		}
	}
}

func TestDocumentHasNoNullLists(t *testing.T) {
	for name, b := range map[string]*core.Book{"loads": bookOf(t, loads), "empty": core.NewBook(1)} {
		g := OfBook(b, core.Moment{})
		g.Narrow(Asked{Grass: "zoysiagrass"})
		text, err := json.Marshal(g.Document(nil))
		if err != nil {
			t.Fatal(err)
		}
		for _, key := range []string{"grasses", "products", "cells", "rows", "sources", "actives", "where", "notes"} {
			if strings.Contains(string(text), `"`+key+`":null`) {
				t.Errorf("%s: %s is null", name, key)
			}
		}
	}
}

// TestEveryRowOfTheReferenceIsToBeFound: each row is printed with its source by the filters of its grass and active.
func TestEveryRowOfTheReferenceIsToBeFound(t *testing.T) {
	n := 0
	for _, grass := range label.Grasses() {
		n += len(Reference(Asked{Grass: grass.Name}))
	}
	if all := len(label.Tolerances()); n != all {
		t.Errorf("%d rows by grass, %d in the table", n, all)
	}
	for _, r := range label.Tolerances() {
		g := GroundOf(&r)
		if g.Cite == "" || g.Sentence() == "" || (r.Recalled() && !strings.Contains(g.Sentence(), "recalled, not read")) {
			t.Errorf("%+v", g)
		}
	}
}

// TestSourcesThatDifferAreBothShown: the stricter one first, and it is said.
func TestSourcesThatDifferAreBothShown(t *testing.T) {
	b := bookOf(t, rig)
	g := OfBook(b, core.Moment{})
	found := false
	for i := range g.Rows {
		for j := range g.Columns {
			v := label.Tolerance(g.Columns[j].Active, g.Rows[i].Grass.Name, label.Circumstances{})
			if !v.Disagree {
				continue
			}
			found = true
			told := fmt.Sprint(g.Tell(i, j))
			if !strings.Contains(told, "the stricter one decides") || !strings.Contains(told, "decides") {
				t.Errorf("%s on %s: %s", g.Columns[j].Active, g.Rows[i].Grass.Name, told)
			}
		}
	}
	if !found {
		t.Error("no two sources differ")
	}
}
