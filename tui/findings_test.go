package tui

import (
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
)

// TestEachOfManyStopsIsNamed: five stops and eight asks, with long sentences, on the smallest screen and on larger ones, with
// nothing else to say, with a line open, and with a question that waits.
func TestEachOfManyStopsIsNamed(t *testing.T) {
	var found []check.Finding
	for _, rule := range []string{"grass", "dose", "season", "interval", "trace"} {
		found = append(found, check.Finding{
			Rule: rule, Weight: check.Stop, Product: "Example Long Name", Zones: []string{"front"}, Ground: check.GroundLabel,
			Do: "Do this about " + rule + " first, then look again at all the rest.", Says: strings.Repeat("Figures of "+rule+". ", 6),
		})
	}
	for i := range 8 {
		found = append(found, check.Finding{Rule: "site", Weight: check.Ask, Product: fmt.Sprint("Example ", i), Do: "Look there.", Says: "Water is near."})
	}
	for _, size := range [][2]int{{40, 16}, {49, 16}, {60, 20}, {80, 24}, {120, 40}, {200, 60}} {
		for _, key := range []string{"", "y", "u"} {
			c := inRig(t, rigOf(6, 3)).size(size[0], size[1])
			if key != "" {
				c.press(key)
			}
			m := c.model()
			m.got.report.Findings, m.got.report.Verdict = found, check.Stop
			s := &scene{w: m.w}
			said := ""
			for _, l := range m.says(m.rects[bandVerdict], s) {
				if n := spanCells(l.left) + spanCells(l.right); n > m.w {
					t.Errorf("%v %q: %d cells wide", size, key, n)
				}
				for _, w := range append(l.left, l.right...) {
					said += w.s
				}
				said += "\n"
			}
			for i, name := range []string{"grass", "dose", "too much this year", "too soon", "residue"} {
				if !strings.Contains(strings.Join(strings.Fields(said), " "), name) && !strings.Contains(said, "about "+found[i].Rule) {
					t.Errorf("%v, %q: the stop %s has no name:\n%s", size, key, name, said)
				}
			}
			opens := false
			for _, sp := range s.spots {
				opens = opens || sp.act == actFindings && sp.y < m.rects[bandVerdict].h+1
			}
			if !strings.Contains(said, " more: z") || !opens {
				t.Errorf("%v, %q: no key opens the rest, tap %v:\n%s", size, key, opens, said)
			}
		}
	}
}

func TestFindingsAreAnsweredOnTheirPage(t *testing.T) {
	c := climbIn(t, atAlder).press("i").type_("14 W 70 40%").press("z").sees("Findings", "ground: label entry of Example Cool, 00000-2", "figured 14 mph, limit 10 mph")
	c.size(80, 40).sees("not checked").size(80, 24).down("wind, Example Warm").press("enter").sees("go on in spite of wind, Example Warm because").type_("sheltered").sees("went  wind, Example Warm", "gone on with, because: sheltered. A reason does not make it lawful.")
	c.press("esc").sees("STOP  Push")
	if last := lastOverride(c.book()); last.Rule != "weather" || last.Product != "Example Warm" || last.Reason != "sheltered" || last.Weight != "stop" {
		t.Errorf("%+v", last)
	}
	n := len(c.book().Written())
	c.press("z", "y").sees("go on in spite of grass, Example Cool because").press("esc", "esc")
	if len(c.book().Written()) != n {
		t.Error("a reason that was left is booked")
	}
}

// TestNoEnterAnswersAnAsk: on the page of findings it asks once more.
func TestNoEnterAnswersAnAsk(t *testing.T) {
	c := climbIn(t, atAlder).press("i").type_("9 W 70 40%").press("z").down("ASK")
	n := len(c.book().Written())
	c.press("enter").sees("yes, go on: wind").press("enter", "enter", "enter")
	if len(c.book().Written()) != n {
		t.Fatal("Enter answered an ask")
	}
	c.press("esc", "esc").press("z").down("ASK").press("enter", "y")
	if last := lastOverride(c.book()); last == nil || last.Rule != "weather" || last.Weight != "ask" {
		t.Fatalf("%+v", last)
	}
	c = climbIn(t, atAlder).press("i").type_("9 W 70 40%").press("z").down("ASK").press("y")
	if last := lastOverride(c.book()); last == nil || last.Weight != "ask" {
		t.Errorf("y: %+v", last)
	}
}

func TestFindingsOnTheRoadAreNotAnswered(t *testing.T) {
	c := inRig(t, strings.TrimSuffix(rigOf(2, 0), `{"fact":"visit_begun","lawn":"The Old Button Works"}`)).press("z").sees("ahead:", "STOP", "It is answered at the lawn")
	n := len(c.book().Written())
	c.press("enter", "y").seesNot("because")
	if len(c.book().Written()) != n {
		t.Error("something was booked")
	}
}

// TestWhatIsMergedStandsWhole: on the page of findings each has its own sentence and ground.
func TestWhatIsMergedStandsWhole(t *testing.T) {
	c := climbIn(t, atAlder)
	m := c.model()
	rows := m.findingRows(0, &check.Finding{
		Rule: "season", Weight: check.Stop, Product: "Example Warm", Zones: []string{"front"}, Ground: check.GroundLabel, Source: "label", Says: "Too much.", Do: "Skip it.",
		Also: []check.Finding{{Weight: check.Ask, Product: "Example Warm", Ground: check.GroundRecalled, Source: "memory", Says: "Nearly too much.", Do: "Lay less.", Reason: "asked for", Zones: []string{"front"}}},
	})
	text := ""
	for _, r := range rows {
		for _, s := range r.left {
			text += s.s
		}
		text += "\n"
	}
	for _, want := range []string{"STOP  too much this year, Example Warm: front", "Skip it.", "Too much.", "ground: label", "also", "went, too much this year", "Nearly too much.", "ground: recalled, not read, memory", "gone on with, because: asked for"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q does not stand:\n%s", want, text)
		}
	}
}

func lastOverride(b *core.Book) *core.Overridden {
	all := b.Written()
	for i := len(all) - 1; i >= 0; i-- {
		if f, ok := all[i].What.(*core.Overridden); ok {
			return f
		}
	}
	return nil
}

// TestHowTheGrassGrowsIsAnsweredOnTheCab: where it is asked, Enter, a figure and Enter answer it.
func TestHowTheGrassGrowsIsAnsweredOnTheCab(t *testing.T) {
	c := climbIn(t, atAlder+"\n"+`{"fact":"setting","name":"growth_ask_to","value":630}`)
	for i := 0; i < 4 && c.model().got.next.Act != check.ActGrowth; i++ {
		c.press("enter")
	}
	c.size(80, 30).sees("ASK", "say how the grass grows on front").size(40, 16).sees("say how")
	c.size(80, 24).press("z").sees("growth: front").press("esc")
	c.press("enter").sees("1 growing", "6 newly seeded").press("1", "enter").sees("booked 418 Alder Court", "growing since 2026-05-28").seesNot("say how the grass grows")
	for _, z := range c.book().Lawn("418 Alder Court").Zones {
		if z.Growth != "growing" || z.GrowthSince != "2026-05-28" {
			t.Errorf("%+v", z)
		}
	}
	if f := lastOverride(c.book()); f != nil {
		t.Errorf("it was gone on with: %+v", f)
	}
}
