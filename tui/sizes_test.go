package tui

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/exp/golden"

	"example.com/tintline/core"
	demodata "example.com/tintline/testdata/demo"
)

// rigOf is a set-up with so many compartments, a gun, and so many applicators with a tank of their own. Compartment a
// and every second one after it holds what is not for the lawn ahead.
func rigOf(compartments, tanks int) string {
	var parts, guns, loads []string
	for i := range compartments {
		l := string(rune('a' + i))
		mix := []string{"warm", "cool"}[i%2]
		parts = append(parts, fmt.Sprintf(`{"letter":%q,"name":"part %s","capacity_gal":%d}`, l, l, 300-40*i))
		loads = append(loads, fmt.Sprintf(`{"fact":"loaded","into":%q,"volume_gal":%d,"mix":%q,"for":"gun"}`, l, 20+7*i, mix))
	}
	guns = append(guns, `{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.5,"flow_gpm":2.5}`)
	for i := range tanks {
		name := []string{"ride-on", "backpack", "second ride-on"}[i]
		guns = append(guns, fmt.Sprintf(`{"name":%q,"kind":"ride_on","hose":"reel","delivery_gal_per_1000_sqft":0.3,"tank_gal":%d}`, name, 14-i))
	}
	return `{"fact":"rig","name":"truck","compartments":[` + strings.Join(parts, ",") + `],"cell_gal":0.2,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[` + strings.Join(guns, ",") + `]}
{"fact":"product","name":"Example Warm","form":"liquid","kind":"herbicide","actives":[{"name":"metsulfuron-methyl","percent_by_weight":60}],"registration":"00000-1","grasses":["bermudagrass_common"],"rate_low_fl_oz_per_1000_sqft":1,"rate_high_fl_oz_per_1000_sqft":1.5}
{"fact":"product","name":"Example Cool","form":"liquid","kind":"herbicide","actives":[{"name":"triclopyr","lb_per_gal":4}],"registration":"00000-2","grasses":["tall_fescue"],"rate_low_fl_oz_per_1000_sqft":0.1,"rate_high_fl_oz_per_1000_sqft":0.2,"wind_max_mph":9}
{"fact":"mix","name":"warm","parts":[{"product":"Example Warm","rate_fl_oz_per_1000_sqft":1.2}]}
{"fact":"mix","name":"cool","parts":[{"product":"Example Cool","rate_fl_oz_per_1000_sqft":0.15}]}
{"fact":"lawn","name":"The Old Button Works","zones":[{"name":"front","grass":"tall_fescue","area_sqft":8200,"hazards":["gate"]},{"name":"back","grass":"tall_fescue","area_sqft":3000,"hazards":["dog"]}]}
{"fact":"lawn","name":"9 Oak Street","zones":[{"name":"all","grass":"bermudagrass_common","area_sqft":3800}]}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["The Old Button Works","9 Oak Street"]}
` + strings.Join(loads, "\n") + `
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"a","volume_gal":3.5}
{"fact":"weather","wind_mph":14,"wind_from":"SW","temp_f":64}
{"fact":"visit_begun","lawn":"The Old Button Works"}`
}

// inRig opens the screen on a book of its own.
func inRig(t testing.TB, lines string, change ...func(*Options)) *cab {
	t.Helper()
	return climbIn(t, noBook, append(change, func(o *Options) {
		b := core.NewBook(1)
		enterLines(t, b, startTime.Add(-1), lines)
		o.Book = b
	})...)
}

// sizesDrawn are the sizes that are drawn for each rig: the borders of every layout and a grid between; with
// TINTLINE_LONG all of them.
func sizesDrawn() [][2]int {
	var out [][2]int
	long := os.Getenv("TINTLINE_LONG") != ""
	for w := leastWidth; w <= 200; w++ {
		for h := leastHeight; h <= 60; h++ {
			wide := w == 40 || w == 49 || w == 50 || w == 59 || w == 60 || w == 75 || w == 76 || w == 80 || w == 96 || w == 200
			high := h == 16 || h == 17 || h == 20 || h == 24 || h == 40 || h == 60
			if long || (wide && high) || (w%40 == 0 && h%3 == 0) || (h == 16 && w%5 == 0) {
				out = append(out, [2]int{w, h})
			}
		}
	}
	return out
}

// TestEverySizeForEveryRig: from 40x16 to 200x60, for two to six compartments (admission wants two) and up to three tanks besides, nothing is
// lost that must stand, and every place to tap lies on the screen and is no other one's.
func TestEverySizeForEveryRig(t *testing.T) {
	for compartments := 2; compartments <= 6; compartments++ {
		for tanks := range 4 {
			if os.Getenv("TINTLINE_LONG") == "" && tanks != 3 && tanks != compartments%3 {
				continue
			}
			t.Run(fmt.Sprintf("%d_and_%d", compartments, tanks), func(t *testing.T) {
				c := inRig(t, rigOf(compartments, tanks))
				for _, what := range []struct {
					key string
					act act // what the band must do
				}{{"", actNone}, {"y", actSend}, {"esc", actNone}} {
					if what.key != "" {
						c.press(what.key)
					}
					for _, s := range sizesDrawn() {
						m, _ := c.model().Update(tea.WindowSizeMsg{Width: s[0], Height: s[1]})
						if wrong := standing(m.(Model), what.act); wrong != "" {
							t.Fatalf("%dx%d: %s\n%s", s[0], s[1], wrong, m.View())
						}
					}
				}
			})
		}
	}
}

// standing says what is missing on a screen that must say stop, what Enter does, and what the nozzle gives; empty if
// nothing is.
func standing(m Model, offered act) string {
	lines := strings.Split(m.View(), "\n")
	if len(lines) != m.h {
		return fmt.Sprintf("%d lines", len(lines))
	}
	for i, l := range lines {
		if cells(l) != m.w {
			return fmt.Sprintf("line %d is %d cells", i+1, cells(l))
		}
	}
	of := func(b band) string {
		r := m.rects[b]
		return strings.Join(lines[r.y:r.y+r.h], "\n")
	}
	stops := 0
	for _, f := range m.got.report.Findings {
		if f.Weight.String() == "stop" && f.Reason == "" {
			stops++
		}
	}
	verdict := of(bandVerdict)
	if said := strings.Count(verdict, "STOP "); said < stops && !strings.Contains(verdict, "STOP  also ") {
		return fmt.Sprintf("not each of %d stops stands", stops)
	}
	if !strings.Contains(verdict, "STOP ") || stops == 0 {
		return "no stop stands"
	}
	o := m.offer()
	words := o.words
	for _, s := range o.spans {
		words += s.s
	}
	if first := words[:min(len(words), 12)]; !strings.Contains(of(bandAct), first) || first == "" {
		return fmt.Sprintf("the band does not say %q", words)
	}
	if !strings.Contains(of(bandPipe), " A ") {
		return "the nozzle's letter is missing"
	}
	if m.rects[bandFoot].h > 2 && m.h <= 20 && m.w < leastLabelled {
		return "the keys take more than two rows"
	}
	return tappable(m, lines, offered)
}

// spotsApart says which place to tap lies off the screen or on another one; empty if none does.
func spotsApart(m Model) string {
	for i, a := range m.scene.spots {
		if a.x < 0 || a.y < 0 || a.w <= 0 || a.h <= 0 || a.x+a.w > m.w || a.y+a.h > m.h {
			return fmt.Sprintf("the place %+v lies off the screen", a)
		}
		for _, b := range m.scene.spots[i+1:] {
			if a.x < b.x+b.w && b.x < a.x+a.w && a.y < b.y+b.h && b.y < a.y+a.h {
				return fmt.Sprintf("%+v and %+v overlap", a, b)
			}
		}
	}
	return ""
}

// tappable says what cannot be tapped that should be, or is tapped for two things.
func tappable(m Model, lines []string, want act) string {
	if wrong := spotsApart(m); wrong != "" {
		return wrong
	}
	has := map[tapTarget]bool{}
	for _, a := range m.scene.spots {
		has[a.tapTarget] = true
	}
	if want != actNone && !has[tapTarget{act: want}] {
		return "the band cannot be tapped"
	}
	for i := range m.line.choices {
		if m.open && !has[tapTarget{act: actChoose, letter: byte(i)}] {
			return fmt.Sprintf("answer %d cannot be tapped", i+1)
		}
	}
	for _, b := range m.keys {
		if !b.Enabled() || worth(b) > worth(binding{act: actHelp}) {
			continue
		}
		readable := false
		for _, l := range lines[m.rects[bandFoot].y:] {
			readable = readable || strings.Contains(l, b.Help().Key)
		}
		if !has[b.target()] || !readable {
			return fmt.Sprintf("the key %q has no place", b.Help().Key)
		}
	}
	return ""
}

// TestMoreTanksThanRows: those in use are shown, the others are counted, with what they hold.
func TestMoreTanksThanRows(t *testing.T) {
	c := inRig(t, rigOf(6, 3)).size(40, 16)
	for _, letter := range []string{"f", "e"} {
		c.press(letter)
		r := c.model().rects[bandTanks]
		rows := strings.Split(c.screen(), "\n")[r.y : r.y+r.h]
		if !strings.Contains(strings.Join(rows, "\n"), "►◄ "+letter) {
			t.Errorf("%s feeds the pump and is not shown:\n%s", letter, c.screen())
		}
		if last := rows[len(rows)-1]; !strings.Contains(last, "+5") || !strings.Contains(last, "d 41") {
			t.Errorf("the others are not counted: %q", last)
		}
	}
}

// TestDemoAtItsSizes looks at the demo's rig, three compartments with two tanks besides: at 120x40 six visits to come and
// what is in each compartment, with the rate of each product; at 80x24 two visits at least.
func TestDemoAtItsSizes(t *testing.T) {
	c := inRig(t, demodata.Journal, demo, func(o *Options) { o.Now = func() time.Time { return o.Book.LastAt().Time().Add(4 * time.Minute) } })
	for _, one := range []struct{ w, h, visits, rates int }{{40, 16, 0, 0}, {50, 18, 1, 0}, {80, 24, 2, 0}, {120, 40, 6, 8}, {200, 60, 10, 8}} {
		screen := c.size(one.w, one.h).screen()
		t.Run(fmt.Sprintf("%dx%d", one.w, one.h), func(t *testing.T) { golden.RequireEqual(t, []byte(screen)) })
		r, visits, rates := c.model().rects[bandNext], 0, 0
		for i, l := range strings.Split(screen, "\n") {
			if i >= r.y && i < r.y+r.h && strings.TrimSpace(l) != "" {
				visits++
			}
			rates += strings.Count(l, ", demo label")
		}
		if visits < one.visits || rates < one.rates {
			t.Errorf("%dx%d: %d visits to come, %d products with their rates\n%s", one.w, one.h, visits, rates, screen)
		}
	}
}

// TestStatusStandsBesideManyFindings: however much there is to say, what became of the last key is said too, and as many
// stops and asks as there are rows for.
func TestStatusStandsBesideManyFindings(t *testing.T) {
	before, _, _ := strings.Cut(demodata.Journal, `{"fact":"lined_up"`)
	for w := leastWidth; w <= 200; w += 20 {
		for h := leastHeight; h <= 60; h++ {
			c := inRig(t, before).size(w, h).press("a")
			if len(c.model().got.report.Findings) < 3 {
				t.Fatal("there is not much to say")
			}
			r := c.model().rects[bandVerdict]
			if band := strings.Join(strings.Split(c.screen(), "\n")[r.y:r.y+r.h], "\n"); !strings.Contains(band, "booked") && !strings.Contains(band, "lever left") {
				t.Fatalf("%dx%d:\n%s", w, h, c.screen())
			}
			if h > 24 {
				h += 5
			}
		}
	}
}

// TestPagesAtTheLeastSize: on the smallest screen a page still has its title, what Enter does, and the key that goes back.
// Forms have a test of their own.
func TestPagesAtTheLeastSize(t *testing.T) {
	for _, s := range situations {
		c := s.cab(t).size(leastWidth, leastHeight)
		m := c.model()
		p := m.spec()
		if p == nil || m.form != nil {
			continue
		}
		lines := strings.Split(c.screen(), "\n")
		if !strings.Contains(lines[1], m.g.fit(p.title, 12)[:min(len(p.title), 8)]) {
			t.Errorf("%s: no title\n%s", s.name, c.screen())
		}
		back, enter := p.page == pageStart, m.readsOnly()
		for _, spot := range m.scene.spots {
			back = back || spot.act == actBack
			enter = enter || spot.act == m.offer().act && spot.h == m.rects[bandAct].h
		}
		if !back || !m.open && !m.ask.open() && !enter {
			t.Errorf("%s: back %v, Enter %v\n%s", s.name, back, enter, c.screen())
		}
	}
}

// situated is a screen that is looked at, and how one comes there.
type situated struct {
	name string
	cab  func(t *testing.T) *cab
}
