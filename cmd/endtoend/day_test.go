//go:build unix

package endtoend

import (
	"encoding/json"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/say"
	"example.com/tintline/testdata/demo"
)

// demoLines parts the demo's journal into what is set up and loaded, which has no keys yet, and the day from
// the first turning of the valves on.
func demoLines(t testing.TB) (setUp, day []string) {
	t.Helper()
	for _, s := range strings.Split(strings.TrimSpace(demo.Journal), "\n") {
		if len(day) == 0 && !strings.Contains(s, `"lined_up"`) {
			setUp = append(setUp, s)
			continue
		}
		day = append(day, s)
	}
	if len(setUp) < 20 || len(day) < 15 {
		t.Fatalf("%d lines set up, %d of the day", len(setUp), len(day))
	}
	return setUp, day
}

// keysFor is how the operator enters a fact at the screen.
func keysFor(t testing.TB, f core.Fact) string {
	t.Helper()
	number := func(format string, args ...any) string { return fmt.Sprintf(format, args...) }
	switch f := f.(type) {
	case *core.LinedUp:
		return string(f.Supply)
	case *core.PushedBack:
		return number("p%.4g %c\r", f.Volume.Gallons(), f.Into)
	case *core.TintSeen:
		return number("ptint %.4g s\r", f.Seconds.V)
	case *core.GaugeRead:
		return number("o%c %.4g\r", f.Compartment, f.Volume.V.Gallons())
	case *core.Weather:
		return number("i%.4g %s %.4g %.4g%% %.4gh high %.4g forecast %s %s inversion %s\r",
			f.Wind.V.MPH(), f.WindFrom, f.Temp.V, f.Humidity.V, f.RainFree.V, f.ForecastHigh.V, f.ForecastSource, f.ForecastAt, f.Inversion)
	case *core.VisitBegun, *core.Sprayed, *core.VisitDone:
		return "\r"
	}
	t.Fatalf("no keys for %s", f.Name())
	return ""
}

// answersAsk answers the ask that stands in the band, if one does: what a compartment holds of another mix is asked about
// once a day and grass.
func (c *cab) answersAsk() bool {
	if !strings.Contains(c.words(), " yes, go on: ") {
		return false
	}
	was := c.screen()
	time.Sleep(800 * time.Millisecond) // longer than the program waits before it takes y for an answer
	c.tap("y")
	c.changed(was)
	return true
}

// The demo's day through replay and the same day by keys give the same state.
func TestDayByKeysIsTheDayByLines(t *testing.T) {
	dir := t.TempDir()
	byLines, byKeys := filepath.Join(dir, "lines.db"), filepath.Join(dir, "keys.db")
	must(t, demo.Journal, "replay", "-", "--book", byLines)
	setUp, day := demoLines(t)
	must(t, strings.Join(setUp, "\n"), "enter", "-", "--book", byKeys)

	c := start(t, small, nil, "--book", byKeys)
	c.see("visit 1 of 15")
	for _, s := range day {
		l, err := core.DecodeLine([]byte(s))
		if err != nil {
			t.Fatal(err)
		}
		words := "booked " + say.Fact(l.Fact)
		if _, turned := l.Fact.(*core.LinedUp); turned {
			words = "Set the valves: " // what to do goes before what happened
		}
		if _, sprays := l.Fact.(*core.Sprayed); sprays {
			c.answersAsk()
		}
		keys, enter := strings.CutSuffix(keysFor(t, l.Fact), "\r")
		c.tap(keys)
		if enter {
			c.enter()
		}
		c.see(words[:min(len(words), 31)])
	}
	c.press("q")
	if code := c.ended(); code != 0 {
		t.Errorf("exit %d", code)
	}
	lines, keys := status(t, byLines), status(t, byKeys)
	if lines["state"] != keys["state"] || lines["state"] == "" {
		t.Errorf("state by lines %v, by keys %v", lines["state"], keys["state"])
	}
	answers := strings.Count(must(t, "", "journal", "--json", "--book", byKeys), `"fact":"overridden"`)
	if n, ok := keys["entries"].(float64); !ok || lines["entries"] != n-float64(answers) {
		t.Errorf("entries by lines %v, by keys %v with %d answers", lines["entries"], keys["entries"], answers)
	}
}

// The rest of the demo's day as the screen proposes it, in 80x24 and in 120x40: an operator who presses Enter, and y where
// he is asked, gets to the end of the route. The bounds are the presses it takes: arrived, sprayed and left, two more where
// the mix changes, and one for each grass on which there is residue to be asked about; none is pressed twice.
func TestDayByProposals(t *testing.T) {
	most := map[string]int{"4": 4, "5": 3, "6": 3, "7": 6, "8": 4, "9": 3, "10": 5, "11": 3, "12": 5, "13": 5, "14": 5, "15": 3}
	for _, s := range []size{small, large} {
		book := filepath.Join(t.TempDir(), "book.db")
		must(t, "", "demo", "--make", book)
		c := start(t, s, []string{"TINTLINE_AT=2026-05-28T09:42:00-05:00"}, "--book", book)
		c.see("visit 4 of 15", "DEMO")
		presses := map[string]int{}
		for n := 0; n < 60 && !strings.Contains(c.words(), "Enter close the day"); n++ {
			_, visit, _ := strings.Cut(c.words(), "visit ")
			visit, _, _ = strings.Cut(visit, " ")
			presses[visit]++
			c.proposed()
		}
		c.see("Enter close the day")
		for visit, n := range presses {
			if n > most[visit] {
				t.Errorf("%d presses for visit %s, expected %d at most", n, visit, most[visit])
			}
		}
		time.Sleep(500 * time.Millisecond) // y too soon after the question came up is no answer
		c.tap("y")
		c.see("close all the same because")
		c.tap("1")
		c.press("\r")
		c.see("booked closed")
		c.press("q")
		c.ended()
		rightMixEverywhere(t, book)
	}
}

// proposed presses what the screen proposes: y where it asks, j where the weather is to be looked at again and is
// unchanged, else Enter.
func (c *cab) proposed() {
	c.t.Helper()
	if was := c.screen(); !c.answersAsk() {
		if strings.Contains(c.words(), "Enter look at the weather") {
			c.tap("j")
		} else {
			c.enter()
		}
		c.changed(was)
	}
	for strings.Contains(c.words(), "the disk is writing") {
		c.changed(c.screen())
	}
}

// rightMixEverywhere looks at the day's tally: each grass got the mix that the demo makes up for it, none was
// skipped, and weeds were not treated with iron because iron happened to be lined up. The least amount per 1,000 sq ft,
// 10^6 nL or ng, is under a third of what the mixes lay and well above any residue that may reach a lawn.
func rightMixEverywhere(t *testing.T, book string) {
	t.Helper()
	var tally struct {
		All   struct{ Lawns int }
		Lawns []struct {
			Lawn  string
			Zones []struct {
				Grass    string
				Products []struct {
					Product string
					Rate    float64 `json:"per_1000_sqft"`
				}
			}
		}
	}
	if err := json.Unmarshal([]byte(must(t, "", "tally", "--json", "--book", book)), &tally); err != nil {
		t.Fatal(err)
	}
	if tally.All.Lawns != 15 {
		t.Errorf("%d lawns, want 15", tally.All.Lawns)
	}
	meant := map[string]string{
		"bermudagrass_common": "metsulfuron", "zoysiagrass": "metsulfuron", "centipedegrass": "chelated iron",
		"tall_fescue": "triclopyr", "kentucky_bluegrass": "triclopyr",
	}
	for _, l := range tally.Lawns {
		for _, z := range l.Zones {
			want := meant[z.Grass]
			if l.Lawn == "Twin Gables" { // two grasses that no weed mix is for together
				want = "chelated iron"
			}
			rate := 0.0
			for _, p := range z.Products {
				if strings.HasPrefix(p.Product, want) {
					rate = p.Rate
				}
			}
			if rate < 1e6 {
				t.Errorf("%s, %s: %v of %s", l.Lawn, z.Grass, rate, want)
			}
		}
	}
}
