package tui

import (
	"fmt"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
)

func TestOrdinaryVisitIsThreePresses(t *testing.T) {
	c := climbIn(t, morning)
	c.press("enter").sees("booked", "arrived at 77 Fir Lane", "sprayed 7.80 gal on all")
	c.press("enter").sees("leave 77 Fir Lane")
	c.press("enter").sees("visit 2 of 9", "arrived at 418 Alder Court")
	if got := c.facts(); got != "visit_begun sprayed visit_done" {
		t.Errorf("logged: %s", got)
	}
}

// TestDayByKeys is a morning of four visits by keys; the book must say the same as after the facts by lines.
func TestDayByKeys(t *testing.T) {
	c := climbIn(t, "")
	c.press("enter").sees("who works today").type_("R. Example").sees("booked", "opened the day")
	enterLines(t, c.book(), c.at, strings.Join(strings.Split(morning, "\n")[1:4], "\n"))
	c.press("b").sees("Set the valves: 1 shut, 2 open")
	c.press("p").type_("3.5")
	c.press("i").type_("6 SW 64")
	c.press("enter", "enter", "enter") // 77 Fir Lane, as planned
	c.press("enter", "enter", "enter") // 418 Alder Court: arrived, turn to a, push back
	c.press("l").type_("front 6.2").press("enter", "enter")
	c.press("k").type_("2")
	c.press("n", "h", "p").type_("5 ride-on").press("h")
	c.press("l").type_("strip gauge 151 149.5").press("l").type_("front 3100 sqft").press("n")
	c.press("o").type_("b 99").sees("94.1 gal").sure()

	b := core.NewBook(1)
	enterLines(t, b, startTime, truck(t))
	enterLines(t, b, startTime, `{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["77 Fir Lane","418 Alder Court","12 Fir Lane","9 Oak Street","31 Maple Drive","5 Birch Row","60 Elm Street","2 Willow Way","14 Cedar Court"]}`)
	enterLines(t, b, startTime, strings.Join(strings.Split(morning, "\n")[1:], "\n"))
	enterLines(t, b, startTime, strings.Replace(`{"fact":"visit_begun","lawn":"77 Fir Lane"}
{"fact":"sprayed","lawn":"77 Fir Lane","zones":["all"],"applicator":"gun","by":"area"}
{"fact":"visit_done","lawn":"77 Fir Lane"}
{"fact":"visit_begun","lawn":"418 Alder Court"}
{"fact":"lined_up","supply":["a"],"return":"a"}
PUSHES
{"fact":"sprayed","lawn":"418 Alder Court","zones":["front"],"applicator":"gun","by":"gallons","volume_gal":6.2}
{"fact":"sprayed","lawn":"418 Alder Court","zones":["back"],"applicator":"gun","by":"area"}
{"fact":"visit_done","lawn":"418 Alder Court"}
{"fact":"visit_skipped","lawn":"12 Fir Lane","reason":"dog"}
{"fact":"visit_begun","lawn":"9 Oak Street"}
{"fact":"filled","applicator":"ride-on","volume_gal":5}
{"fact":"sprayed","lawn":"9 Oak Street","zones":["strip"],"applicator":"gun","by":"gauge","before_gal":151,"after_gal":149.5}
{"fact":"sprayed","lawn":"9 Oak Street","zones":["front"],"applicator":"gun","by":"area","area_sqft":3100}
{"fact":"visit_done","lawn":"9 Oak Street"}
{"fact":"gauge_read","compartment":"b","volume_gal":99}`, "PUSHES", c.pushes(), 1))
	if got, want := c.book().StateDigest(), b.StateDigest(); got != want {
		t.Errorf("by keys %s, by lines %s; logged: %s\n%s", got, want, c.facts(), c.screen())
	}
}

// pushes are the last push-backs that the screen logged in one action, as lines: how they are parted is the
// check's business.
func (c *cab) pushes() string {
	var out []string
	action := ""
	for i := len(c.disk.entries) - 1; i >= 0; i-- {
		f, ok := c.disk.entries[i].What.(*core.PushedBack)
		if ok && (action == "" || action == c.disk.entries[i].Action) {
			action = c.disk.entries[i].Action
			out = append([]string{fmt.Sprintf(`{"fact":"pushed_back","into":%q,"volume_nl":%d}`, string(rune(f.Into)), f.Volume)}, out...)
		}
	}
	return strings.Join(out, "\n")
}

func TestEnterDoesNotAnswer(t *testing.T) {
	c := climbIn(t, morning).press("enter", "i").type_("9 SW 64").sees("ASK")
	before := c.facts()
	c.press("enter").sees("y goes on in spite of it, k skips.")
	if c.facts() != before {
		t.Errorf("Enter logged something: %s", c.facts())
	}
	c.press("y").sees("went  on in spite of wind")
	if got := c.disk.entries[len(c.disk.entries)-1].What.(*core.Overridden); got.Rule != "weather" || got.Weight != "ask" || got.Said == "" {
		t.Errorf("logged %+v", got)
	}
	c.press("enter").sees("leave 77 Fir Lane")
}

func TestStopNeedsReason(t *testing.T) {
	c := climbIn(t, atAlder).press("y").sees("A reason does not make it lawful.").press("enter").sees("Nothing is typed.")
	c.type_("2").sees("supervisor decided")
	f := c.disk.entries[0].What.(*core.Overridden)
	if f.Rule != "grass" || f.Weight != "stop" || f.Reason != "supervisor decided" || f.Product != "Example Cool" || f.Said == "" {
		t.Errorf("logged %+v", f)
	}
}

func TestClosingTheDayNeedsAnAnswer(t *testing.T) {
	c := climbIn(t, morning)
	for range 9 {
		c.press("k").type_("dog at large")
	}
	c.press("enter").sees("Close the day", "gauges of a b c read")
	if strings.Contains(c.facts(), "day_closed") {
		t.Fatal("Enter closed the day")
	}
	c.typed("200 100 40").press("enter", "n").sees("close the day").press("enter").sees("cannot be opened again")
	if strings.Contains(c.facts(), "day_closed") {
		t.Fatal("a second Enter closed the day")
	}
	c.press("y", "esc", "esc").sees("no day open")
}

func TestHeldYesAnswersNothingUnseen(t *testing.T) {
	c := climbIn(t, atAlder)
	c.press("u")
	for range 30 { // held down from the start
		c.wait(30 * time.Millisecond).send(stroke("y"))
	}
	if len(c.disk.entries) != 0 {
		t.Fatalf("a held y struck: %s", c.facts())
	}
	c.press("y").sees("struck entry")
}

func TestBouncingEnterIsOnePress(t *testing.T) {
	c := climbIn(t, morning)
	c.press("enter").wait(100 * time.Millisecond).send(stroke("enter")).wait(140 * time.Millisecond).send(stroke("enter"))
	if got := c.facts(); got != "visit_begun" {
		t.Errorf("logged: %s", got)
	}
}

func TestStrike(t *testing.T) {
	c := climbIn(t, morning).press("enter", "u").sees("strike 09:42 arrived at 77 Fir Lane").press("esc").seesNot("strike 09:42")
	c.press("u", "y").sees("struck entry")
	if c.book().Day().Visiting() != nil {
		t.Error("the visit is still begun")
	}
	c.sees("arrived at 77 Fir Lane") // proposed again
}

func TestRefusedLeavesAllAsItWas(t *testing.T) {
	c := climbIn(t, morning).press("enter")
	before, seq := c.book().StateDigest(), c.book().Seq()
	c.press("l").type_("900 gal").sees("900 gal", "Read the gauge of b and log it first.").press("esc") // what was typed stays
	c.press("o").type_("a 301").sees("a 301", "Give 0 to 300.0 gal.").press("esc")
	if c.book().StateDigest() != before || c.book().Seq() != seq || len(c.disk.entries) != 1 {
		t.Errorf("the book changed: %s", c.facts())
	}
}

func TestSlowDisk(t *testing.T) {
	c := climbIn(t, atAlder)
	c.slow = true
	c.press("enter").sees("writing pushed back", "wait: the disk is writing").seesNot("booked")
	c.press("enter", "y").sees("writing ") // neither works while the act to come is not known
	c.press("b", "c").sees("2 more wait")
	c.press("?").sees("turn supply and return").press("esc").press("l").type_("1 gal").sees("3 more wait")
	if len(c.held) != 1 {
		t.Fatalf("%d writes at once", len(c.held))
	}
	for range 4 {
		c.catchUp()
	}
	c.sees("booked")
	if got := c.facts(); !strings.HasPrefix(got, "pushed_back") || !strings.HasSuffix(got, "pushed_back lined_up lined_up sprayed") {
		t.Errorf("order on the disk: %s", got)
	}
}

func TestBookChangesAfterTheDisk(t *testing.T) {
	c := climbIn(t, atAlder)
	before := c.book().StateDigest()
	c.slow = true
	c.press("enter")
	if c.book().StateDigest() != before {
		t.Error("the book changed before the disk had it")
	}
	c.catchUp()
	if c.book().StateDigest() == before {
		t.Error("the book did not change")
	}
}

func TestQuitWaitsForTheQueue(t *testing.T) {
	for _, how := range []struct {
		name string
		ask  func(*cab)
	}{
		{"key", func(c *cab) { c.press("q") }},
		{"ctrl+c", func(c *cab) { c.press("ctrl+c") }},
		{"SIGTERM", func(c *cab) { c.send(tea.QuitMsg{}) }},
	} {
		t.Run(how.name, func(t *testing.T) {
			c := climbIn(t, atAlder)
			c.slow = true
			c.press("enter", "b")
			how.ask(c)
			if c.quit {
				t.Fatal("it ended with entries waiting")
			}
			c.sees("ending as soon as what waits is written")
			c.slow = false
			c.catchUp()
			if !c.quit || !strings.HasSuffix(c.facts(), "pushed_back lined_up") || c.model().Trouble() != nil {
				t.Errorf("quit %v, logged %s, trouble %v", c.quit, c.facts(), c.model().Trouble())
			}
		})
	}
}

func TestQuitAtOnceWhenNothingWaits(t *testing.T) {
	if c := climbIn(t, atAlder).press("q"); !c.quit {
		t.Error("q did not quit")
	}
	if c := climbIn(t, atAlder).press("l", "ctrl+c"); !c.quit {
		t.Error("ctrl+c did not quit from a line")
	}
}

func TestRefusedWhileEndingIsLeftToSay(t *testing.T) {
	c := climbIn(t, morning)
	c.slow = true
	c.press("a", "o").type_("a 301").press("q")
	c.slow = false
	c.catchUp()
	if c.model().Trouble() == nil || !c.quit {
		t.Errorf("quit %v, left to say: %v", c.quit, c.model().Trouble())
	}
}

func TestWrongLineKeepsWhatWasTyped(t *testing.T) {
	c := climbIn(t, morning).press("enter", "l").type_("11 psi").sees("11 psi", "is a pressure; this field takes a volume")
	c.press("esc").seesNot("11 psi")
	for _, bad := range []struct{ key, line, says string }{
		{"l", "gauge 151", "A gauge needs two readings."},
		{"p", "2.6 x", "this field takes a volume"},
		{"p", "tint soon", "tint 2.1 for gallons"},
		{"o", "b full", "b full"},
		{"i", "breezy", "is no figure and no direction"},
		{"i", "6 SW 64 12", "one figure too many"},
		{"i", "nan", "is no figure"},
		{"k", "", "Nothing is typed."},
	} {
		c.press(bad.key).type_(bad.line).sees(bad.says).press("esc")
	}
	if c.facts() != "visit_begun" {
		t.Errorf("logged: %s", c.facts())
	}
}

func TestLinesRead(t *testing.T) {
	for _, good := range []struct{ key, line, says string }{
		{"p", "62 s", "pushed back 2.58 gal into b"},
		{"p", "2.6 c", "pushed back 2.60 gal into c"},
		{"p", "5 Ride-On", "filled ride-on with 5.00 gal"},
		{"p", "tint 48 s", "tint seen at 48 s"},
		{"p", "tint 2.1", "tint seen at 2.10 gal"},
		{"o", "62", "gauge of b"},
		{"o", "a 62.5 gal", "gauge of a"},
		{"i", "calm 64", "wind 0"},
		{"i", "6 ssw 64 45% 6h", "45% humid"},
		{"j", "", "looked 09:42, just now"},
		{"l", "6200 sqft", "6,200 sq ft"},
		{"l", "7.9", "7.90 gal"},
		{"l", "all 7 gal", "7.00 gal"},
		{"k", "5", "refused"},
	} {
		c := climbIn(t, morning).press("enter")
		c.press(good.key)
		if good.line != "" {
			c.type_(good.line)
		}
		c.sure().sees(good.says).sees("booked")
	}
}

func TestResumeTurnsTheMouseOnAgain(t *testing.T) {
	m := climbIn(t, morning).model()
	if _, cmd := m.Update(tea.ResumeMsg{}); cmd == nil {
		t.Error("nothing turns the mouse on")
	}
	m.mouse = false
	if _, cmd := m.Update(tea.ResumeMsg{}); cmd != nil {
		t.Error("the mouse is turned on although it was not asked for")
	}
}

func TestTickRefreshesAges(t *testing.T) {
	c := climbIn(t, morning).sees("20 min ago").wait(5 * time.Minute)
	turn := c.model().tickTurn
	c.send(ticked{turn + 7}).send(ticked{turn}).sees("25 min ago", "09:47")
	if c.model().tickTurn != turn+1 {
		t.Error("a stray tick began another one")
	}
}

func TestWarningIsShownFirst(t *testing.T) {
	warn := func(o *Options) { o.Warning = "The file was not closed in order; it was checked and is whole." }
	climbIn(t, morning, warn).sees("The file was not closed in order")
	climbIn(t, noBook, warn).sees("The file was not closed in order")
}

func TestLongTextKeepsTheCursorInSight(t *testing.T) {
	c := climbIn(t, morning).press("enter", "k")
	for range 30 {
		for _, r := range "abc " {
			c.send(stroke(string(r)))
		}
	}
	c.sees("abc abc _").size(60, 20).sees("abc _")
}
