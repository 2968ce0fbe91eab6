package tui

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/say"
)

// down presses the arrow from the first row on until the one with the words is chosen.
func (c *cab) down(words string) *cab {
	c.t.Helper()
	for range 20 {
		c.press("pgup")
	}
	for range 400 {
		for _, l := range strings.Split(c.screen(), "\n") {
			if strings.HasPrefix(l, "►") && strings.Contains(l, words) {
				return c
			}
		}
		c.press("down")
	}
	c.t.Fatalf("no row with %q can be chosen:\n%s", words, c.screen())
	return c
}

func TestJournalStrikesAnyEntry(t *testing.T) {
	c := climbIn(t, atAlder).press("g", "j").sees("Journal", "show entry 28 whole").down("weather").press("u")
	c.sees("strike 23: weather").press("esc").seesNot("strike 23:")
	c.press("u", "y").sees("booked struck entry 23", "struck by 29: weather")
	c.seesNot("u strike  ") // it is struck
	c.press("esc").sees("not looked at yet today")
}

func TestJournalStrikesWhatNeedsIt(t *testing.T) {
	c := climbIn(t, atAlder).press("g", "j").down("valves: b").press("u").sees("strike 21 and 2 later ones that need it", "would go: pushed back")
	before := c.book().StateDigest()
	c.press("esc")
	if c.book().StateDigest() != before {
		t.Error("Esc changed the book")
	}
	c.press("u", "y").sees("booked struck entries 21, 22 and 25", "struck by 29: pushed back")
	if sum := c.book().Plumbing().Sum(); sum.Volume != 0 || len(sum.Holds) != 0 {
		t.Errorf("the places sum to %v", sum)
	}
}

func TestJournalPutsRight(t *testing.T) {
	c := climbIn(t, atAlder+`
{"fact":"visit_skipped","lawn":"418 Alder Court","reason":"gate"}
{"fact":"noted","lawn":"12 Fir Lane","text":"key under the pot"}
{"fact":"gauge_read","compartment":"b","volume_gal":91}
{"fact":"filled","applicator":"ride-on","volume_gal":4}
{"fact":"rinsed","compartment":"c","water_gal":3}
{"fact":"dumped","from":"compartment/c","volume_gal":2,"to":"waste/pad"}`).press("g", "j")
	for _, tc := range []struct{ row, was, typed, says string }{
		{"ran 2.00 gal", "2.00 gal", "2.5", "ran 2.50 gal"},
		{"rinsed", "3.00 gal", "13 qt", "rinsed c with 3.25 gal"},
		{"filled ride-on", "4.00 gal", "4.5", "filled ride-on with 4.50 gal"},
		{"gauge of b", "91.0 gal", "90 gal", "gauge of b: 90.0 gal"},
		{"note on 12 Fir", "key under the pot", "key under the mat", "note on 12 Fir Lane: key under"},
		{"skipped 418", "gate", "dog", "skipped 418 Alder Court: dog"},
		{"sprayed 77 Fir", "5,200 sqft", "7.2", "sprayed 77 Fir Lane all: 7.20 gal"},
		{"sprayed 77 Fir", "5,200 sqft", "4000 sqft", "sprayed 77 Fir Lane all: 6.00 gal"},
		{"weather", "6.0 SW 64f", "7 W 66 45%", "wind 7.0 mph from W, 66 F and humidity 45 %"},
		{"pushed back 3.50", "3.50 gal", "3.6", "pushed back 3.60 gal into b"},
		{"loaded 100.0", "100.0 gal", "110", "loaded 110.0 gal of fescue, bluegrass into b for gun: 11.0 fl oz Example Cool"},
	} {
		one := *c
		one.m, one.disk, one.opts.Book = c.m, &disk{}, c.book().Clone()
		c := climbInBook(t, &one)
		c.press("g", "j").down(tc.row).press("o").sees(tc.was).press("enter").sees("That is what was logged.", tc.was)
		c.type_(tc.typed).sees("booked struck entry", "(put right)")
		if words := say.Fact(c.disk.entries[0].What); !strings.Contains(words, tc.says) {
			t.Errorf("%s, put right with %s: %s", tc.row, tc.typed, words)
		}
		if sum := c.book().Plumbing().Sum(); sum.Volume != 0 {
			t.Errorf("%s: the places sum to %v", tc.row, sum)
		}
	}
}

// climbInBook opens the screen anew on a book as another left it.
func climbInBook(t *testing.T, was *cab) *cab {
	c := *was
	c.opts.Journal = c.disk
	c.opts.Book = was.opts.Book
	c.opts.Now = func() time.Time { return c.at }
	c.opts.Reader = &c
	c.m = New(c.opts)
	c.t = t
	return c.size(80, 24)
}

func TestJournalPutsRightWhatWasPutRight(t *testing.T) {
	c := climbIn(t, atAlder).press("g", "j").down("weather").press("o").type_("5 W 60").sees("booked")
	c.down("instead: weather").press("o").sees("5.0 W 60f").type_("4 W 61").sees("booked", "wind 4.0 mph")
	if w := c.book().Weather(); w.Temp.V != 61 || w.WindFrom != "W" {
		t.Errorf("the weather is %+v", w)
	}
}

func TestJournalAfterTheClose(t *testing.T) {
	c := climbIn(t, atAlder+"\n"+`{"fact":"struck","of":23,"reason":"slip"}`+"\n"+`{"fact":"day_closed"}`)
	c.press("g", "j").sees("closed the day", "only an amendment").down("struck by 29: weather")
	c.press("u", "o")
	if c.model().open || c.model().ask.open() {
		t.Error("an entry before the close can be changed")
	}
	c.press("enter").sees("Entry 23", "struck by entry 29").press("esc").sees("show entry 23 whole")
}

func TestJournalTurnsPages(t *testing.T) {
	lines := morning
	for range 120 {
		lines += "\n" + `{"fact":"weather","wind_mph":6,"wind_from":"SW","temp_f":64}`
	}
	closed := "\n" + `{"fact":"day_closed"}`
	for _, lines := range []string{lines, lines + closed} {
		c := climbIn(t, lines).press("g", "j")
		last := c.book().Seq()
		c.sees("show entry " + fmt.Sprint(last)).press("up").press("up")
		for range 120 {
			c.press("down")
		}
		c.sees("turn to the older entries").press("enter").sees(fmt.Sprint(last-100) + " to 1").seesNot("older entries")
		c.down("newer entries").press("enter").sees("show entry " + fmt.Sprint(last))
	}
}

func TestJournalSaysWhyItCannotBeRead(t *testing.T) {
	c := climbIn(t, atAlder+"\n"+`{"fact":"day_closed"}`)
	c.disk.err = &core.Problem{What: "The file cannot be read.", Do: "Look at the card."}
	c.press("g", "j").sees("The file cannot be read.")
}
