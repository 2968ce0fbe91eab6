package tui

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/grid"
)

// labelChanged is what a later label of Example Warm has otherwise.
const labelChanged = `
{"fact":"product","name":"Example Warm","form":"liquid","kind":"herbicide","actives":[{"name":"metsulfuron-methyl","percent_by_weight":60}],"registration":"00000-1","grasses":["bermudagrass_common","centipedegrass"],"rate_low_fl_oz_per_1000_sqft":1,"rate_high_fl_oz_per_1000_sqft":1.4,"wind_max_mph":10,"days_between":42,"none":["temp_min"]}`

// cautions are notes of the operator's own.
const cautions = `
{"fact":"cautioned","product":"Example Cool","grass":"kentucky_bluegrass","weight":"ask","says":"turned it white on Birch Row in 2025"}`

// manyProducts is a load of many products with long names, several of which begin alike.
var manyProducts = func() string {
	names := []string{
		"Example Broadleaf Three-Way Selective Herbicide", "Example Broadleaf Three-Way Selective Herbicide Plus", "Example Sedge 75", "Example Preemergence Granulate With Fertiliser",
		"Example Long Name Without Any End To It At All", "Example Iron Extra", "Example Grub", "Examplewithoutaspaceanywhereinitsname",
	}
	var lines, parts []string
	for i, n := range names {
		active := []string{"2,4-D", "dicamba", "halosulfuron-methyl", "prodiamine", "quinclorac", "iron", "imidacloprid", "no such active"}[i]
		kind := "herbicide"
		if active == "iron" {
			kind = "iron"
		}
		lines = append(lines, fmt.Sprintf(`{"fact":"product","name":%q,"form":"liquid","kind":%q,"actives":[{"name":%q,"lb_per_gal":2}],"registration":"00000-%d","grasses":["bermudagrass_common","zoysiagrass","tall_fescue"],"rate_low_fl_oz_per_1000_sqft":0.5,"rate_high_fl_oz_per_1000_sqft":1}`, n, kind, active, 20+i))
		parts = append(parts, fmt.Sprintf(`{"product":%q,"amount_fl_oz":40}`, n))
	}
	return strings.Join(lines, "\n") + "\n" + `{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["418 Alder Court"]}
{"fact":"loaded","into":"a","volume_gal":100,"parts":[` + strings.Join(parts, ",") + `]}`
}()

// lastWeeks is a day on which a lawn was treated, and a later one on which it is called at again.
const lastWeeks = `{"fact":"product","name":"Example Food","form":"dry","kind":"fertiliser","grasses":["all_turf"],"rate_low_lb_per_1000_sqft":3,"rate_high_lb_per_1000_sqft":5,"nitrogen_pct":20,"quick_nitrogen_pct":50,"days_between":30}
{"fact":"product","name":"Example Fine","form":"dry","kind":"herbicide","actives":[{"name":"metsulfuron-methyl","percent_by_weight":60}],"registration":"00000-1","grasses":["bermudagrass_hybrid","zoysiagrass"],"rate_low_oz_per_1000_sqft":0.01,"rate_high_oz_per_1000_sqft":0.03,"wind_max_mph":10,"most_year_oz_per_1000_sqft":0.05,"most_times":2,"days_between":42}
{"fact":"mix","name":"fine","parts":[{"product":"Example Fine","rate_oz_per_1000_sqft":0.02}]}
{"fact":"lawn","name":"418 Alder Court","customer":"B. Example","known_since":"2026-03-01","zones":[{"name":"front","grass":"bermudagrass_hybrid","area_sqft":4000,"growth":"growing","growth_since":"2026-05-02","cultivar":"Tifway","sites":[{"kind":"water","feet":40},{"kind":"roots"}]}]}
{"fact":"day_opened","date":"2026-05-04","operator":"R. Example","route":["418 Alder Court"]}
{"fact":"loaded","into":"a","volume_gal":100,"mix":"fine","for":"gun"}
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"a","volume_gal":3.5}
{"fact":"visit_begun","lawn":"418 Alder Court"}
{"fact":"sprayed","lawn":"418 Alder Court","applicator":"gun","by":"area"}
{"fact":"spread","lawn":"418 Alder Court","applicator":"spreader","product":"Example Food","amount_lb":16}
{"fact":"visit_done","lawn":"418 Alder Court"}
{"fact":"day_closed"}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["418 Alder Court"]}`

// emptyRig is a book with a rig and nothing else.
func emptyRig(t testing.TB) *cab { return inRig(t, strings.SplitN(truck(t), "\n", 2)[0]) }

func TestGrassesCellByCell(t *testing.T) {
	c := climbIn(t, atAlder).press("g", "k").sees("Grasses", "front, common bermudagr", "N not listed", "L listed: Example Warm on common bermudagrass")
	c.press("right").sees("N not listed, stop: Example Cool on common bermudagrass", "does not list common", "a stop, whatever the reference says", "open Example Cool")
	c.goesTo("grass/tall_fescue", "down").sees("Example Cool on tall fescue").press("enter").sees("One product", "Example Cool", "HRAC 4")
	c.press("esc").sees("Example Cool on tall fescue").press("w").sees("Why", "Example Cool on tall fescue", "judged at", "0.150 fl oz per 1,000 sq ft, as in fescue, bluegrass")
	c.press("esc").press("left", "left", "left").sees("N not listed, stop: Example Warm on tall fescue")
	c.press("right", "right", "right", "right").sees("Example Iron on tall fescue")
	if c.facts() != "" {
		t.Errorf("logged: %s", c.facts())
	}
}

// TestGrassesSayOwnNotesAndMemory: a note of the operator's own raises what is said, and what was recalled says so.
func TestGrassesSayOwnNotesAndMemory(t *testing.T) {
	c := climbIn(t, atAlder+cautions).size(120, 40).press("g", "k", "right").goesTo("grass/kentucky_bluegrass", "down")
	c.sees("! ", "own note", "turned it white on Birch Row in 2025", "ask")
	c.press("up", "up").seesNot("turned it white")
	memory := false
	g := grid.OfBook(c.book(), core.At(c.at))
	for i := range g.Rows {
		for _, ground := range g.Cell(i, 0).Grounds {
			memory = memory || strings.Contains(ground.Sentence(), "recalled, not read")
		}
	}
	if !memory {
		t.Error("no row of the reference says that it was recalled")
	}
}

// TestGrassesAtEverySize: at every size the cell chosen stands with its letter and word, the page says how many products it
// does not show, and nothing lies over another thing.
func TestGrassesAtEverySize(t *testing.T) {
	for name, c := range map[string]*cab{
		"many products": climbIn(t, manyProducts).press("g", "k", "right", "right", "right", "right"),
		"three":         climbIn(t, atAlder+cautions).press("g", "k").goesTo("grass/zoysiagrass", "down"),
		"no product":    emptyRig(t).press("g", "k", "right", "down"),
		"nothing":       climbIn(t, "").press("g", "k", "right"),
	} {
		for _, s := range sizesDrawn() {
			next, _ := c.m.Update(tea.WindowSizeMsg{Width: s[0], Height: s[1]})
			m := next.(Model)
			view := m.View()
			lines := strings.Split(view, "\n")
			if len(lines) != s[1] {
				t.Fatalf("%s %v: %d lines\n%s", name, s, len(lines), view)
			}
			for i, l := range lines {
				if cells(l) != s[0] {
					t.Fatalf("%s %v: line %d is %d cells\n%s", name, s, i+1, cells(l), view)
				}
			}
			g := m.grasses()
			at := m.cellChosen(g)
			j := gridColumn(g, at.column)
			i, _ := gridRow(g, at.row)
			cell, look := g.Cell(i, j), m.lookAt(g, j)
			if want := string(m.g.supply) + strings.TrimRight(cell.Signs(), " "); !strings.Contains(view, want) {
				t.Fatalf("%s %v: the cell chosen does not say %q\n%s", name, s, want, view)
			}
			if shown := look.to - look.from; shown < len(g.Columns) && !strings.Contains(view, fmt.Sprintf("%d of %d", look.to, len(g.Columns))) {
				t.Fatalf("%s %v: %d of %d products, and the page does not say so\n%s", name, s, shown, len(g.Columns), view)
			}
			if wrong := spotsApart(m); wrong != "" {
				t.Fatalf("%s %v: %s\n%s", name, s, wrong, view)
			}
		}
	}
}

func TestLawnPageSaysTheYear(t *testing.T) {
	c := climbIn(t, spreading(t)[1:]+"\n"+lastWeeks).size(120, 60).press("g", "l").sees(
		"growing since 2026-05-02; cultivar Tifway; water 40 ft off; tree roots",
		"this year, as of 2026-05-28", "0.0197 of at most 0.0500 oz per 1,000 sq ft, 0.0303 left", "once of 2", "last 2026-05-04, 24 days ago",
		"again from 2026-06-15, 42 days between", "what may go on it", "0.80 lb per 1,000 sq ft",
	)
	c.sees("3 to 5 lb in TX", "no region is set among the settings")
	c.goesTo("may/front", "down").press("enter").sees("Grasses", "cultivar Tifway", "Example Fine on hybrid bermudagrass")
	c.press("esc").sees("this year")
}

// What went down this year is added up once while the book says the same, and anew when it does not.
func TestYearIsAddedUpOnce(t *testing.T) {
	c := climbIn(t, atAlder).press("g", "l")
	years := func(m *Model) [][]grid.Told { return m.yearsOf(m.book.Lawn(m.subject.lawn), m.book.Day().Date) }
	m := c.model()
	if n := testing.AllocsPerRun(10, func() { years(&m) }); n != 0 {
		t.Errorf("%v allocations for a page on which nothing changed", n)
	}
	before := years(&m)
	c.old = append(c.old, enterLines(t, c.book(), startTime, `{"fact":"sprayed","lawn":"418 Alder Court","applicator":"gun","by":"area"}`)...)
	m = c.model()
	if after := years(&m); reflect.DeepEqual(before, after) {
		t.Errorf("sprayed, and the year still says %v", after)
	}
	for _, lawn := range []string{"77 Fir Lane", "418 Alder Court"} {
		m.subject.lawn = lawn
		l := m.book.Lawn(lawn)
		if got, want := years(&m)[0], grid.Year(m.book, lawn, l.Zones[0], m.book.Day().Date); !reflect.DeepEqual(got, want) {
			t.Errorf("%s: got %v, want %v", lawn, got, want)
		}
	}
}
