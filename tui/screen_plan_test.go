package tui

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"example.com/tintline/core"
)

// The situations of the plan of a day.
var planSituations = []struct {
	name string
	cab  func(t *testing.T) *cab
}{
	{"plan_of_a_day", func(t *testing.T) *cab { return climbIn(t, emptyTruck).press("g", "y", "p") }},
	{"plan_no_mix", func(t *testing.T) *cab {
		return climbIn(t, `{"fact":"lawn","name":"7 Ash Close","customer":"D. Example","zones":[{"name":"all","grass":"centipedegrass","area_sqft":3300},{"name":"bank","grass":"zoysiagrass","area_sqft":900}]}
{"fact":"lawn","name":"8 Ash Close","zones":[{"name":"all","grass":"bahiagrass","area_sqft":3300,"mix":"bermuda, zoysia"}]}
{"fact":"cautioned","product":"Example Iron","lawn":"8 Ash Close","weight":"stop","says":"it stained the walk"}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["7 Ash Close","77 Fir Lane","8 Ash Close","418 Alder Court","12 Fir Lane"]}`).press("g", "y", "p")
	}},
	{"plan_accepted", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "y", "p", "enter") }},
	{"plan_not_possible", func(t *testing.T) *cab {
		return climbIn(t, `{"fact":"day_opened","date":"2026-05-28","operator":"R. Example"}`).press("g", "y", "p")
	}},
}

func TestPlanScreens(t *testing.T) {
	for _, s := range planSituations {
		for _, size := range [][2]int{{80, 24}, {120, 40}} {
			t.Run(fmt.Sprintf("%s_%dx%d", s.name, size[0], size[1]), func(t *testing.T) {
				golden.RequireEqual(t, []byte(s.cab(t).size(size[0], size[1]).screen()))
			})
		}
	}
}

// Enter keeps the plan as it is shown, in one action: the plan, its order where it is another one, and its loads.
func TestThePlanIsAccepted(t *testing.T) {
	c := climbIn(t, emptyTruck).press("g", "y", "p").sees("Plan of the day", "to load now", "accept the order given")
	c.press("enter").sees("this plan is accepted")
	if got := c.facts(); !strings.HasPrefix(got, "day_planned") || !strings.Contains(got, "load_planned") || c.book().Planned() == nil {
		t.Fatalf("logged: %s", got)
	}
	for _, e := range c.disk.entries {
		if e.Action != c.disk.entries[0].Action {
			t.Error("it is more than one action")
		}
	}
	loads := len(c.book().LoadPlans())
	c.press("esc", "esc", "g", "o").sees("to load: ")
	if loads == 0 {
		t.Error("nothing is to be loaded")
	}
	c.press("esc", "g", "y", "p").sees("accept the order given").press("esc", "esc")
}

// A plan that the book has left behind is made anew before it can be accepted.
func TestAStalePlanIsNotAccepted(t *testing.T) {
	c := climbIn(t, emptyTruck).press("g", "y", "p")
	was := c.model().planning.turn
	enterLines(t, c.book(), c.at, `{"fact":"noted","lawn":"77 Fir Lane","text":"dog"}`)
	c.press("down").sees("the book has changed since").press("enter").sees("accept the order given")
	if c.facts() != "" || c.model().planning.turn == was {
		t.Errorf("logged: %s", c.facts())
	}
}

// What comes late, of a search that is not waited for any more, is forgotten.
func TestALateSearchIsForgotten(t *testing.T) {
	c := climbIn(t, emptyTruck).press("g", "y", "p")
	c.send(dayFound{turn: 99, err: core.ErrRefused}).sees("accept the order given")
}
