package tui

import (
	"strings"
	"testing"
	"time"

	"example.com/tintline/core"
)

// oddLineUps is the truck with two line-ups more: one with two supplies, one with the return elsewhere. Valve 5 is
// named in the last one alone.
func oddLineUps(t testing.TB) string {
	rig := strings.Split(truck(t), "\n")[0]
	const last = `"supply":["b"],"return":"b"}]`
	if !strings.Contains(rig, last) {
		t.Fatal("the truck has changed")
	}
	return "\n" + strings.Replace(rig, last, last[:len(last)-1]+
		`,{"name":"level a and b","valves":{"1":"open","2":"open","3":"shut","4":"to a"},"supply":["a","b"],"return":"a"}`+
		`,{"name":"a over into b","valves":{"1":"open","2":"shut","3":"shut","4":"to b","5":"open"},"supply":["a"],"return":"b"}]`, 1)
}

func TestLineUpsNameTheValvesThatStandWrong(t *testing.T) {
	c := climbIn(t, morning).press("g", "u").sees("stands now  from b: b to the pump, return to b")
	c.sees("valve 1: shut -> open, valve 2: open -> shut, valve 4: to b -> to a, 1 stay", "1 shut, 2 open, 3 shut, 4 to b", "from c", "its valves are not named in the rig")
	c.press("a").sees("turn the valves: a to the pump, return to a").press("enter").sees("stands now  from a", "Set the valves: 1 open, 2 shut", "valve 1: open -> shut")
	if c.facts() != "lined_up" {
		t.Errorf("logged: %s", c.facts())
	}
}

func TestWhereTheValvesAreNotKnown(t *testing.T) {
	c := climbIn(t, morning).press("c", "g", "u").sees("stands now  c to the pump, return to c", "valve 1: open, valve 2: shut, valve 3: shut, valve 4: to a")
	c.press("c").sees("It stands so by the book.")
}

func TestOddLineUpsAreShownAndAsked(t *testing.T) {
	c := climbIn(t, morning+oddLineUps(t)).size(120, 40).press("g", "u").sees(
		"level a and b", "2 supplies are open", "The return leads to b while a feeds the pump", "not said: valve 5",
	)
	for !strings.Contains(c.screen(), "Enter  turn the valves: a and b") {
		c.press("down")
	}
	c.press("enter").sees("turn the valves all the same: a and b to the pump, return to a")
	if c.facts() != "" {
		t.Errorf("logged before the answer: %s", c.facts())
	}
	c.wait(time.Second).press("y").sees("stands now  level a and b", "STOP", "Close all supplies but a.")
	c.press("l").type_("none").sees("stands now  no supply open, return to none", "would run dry")
}

func TestLineUpLine(t *testing.T) {
	for said, want := range map[string]string{
		"a": "a/a", "A": "a/a", "a+b": "ab/-", "a+b return c": "ab/c", "b return to a": "b/a", "c return none": "c/-", "none": "/-",
	} {
		c := climbIn(t, morning).press("g", "u", "l").type_(said)
		if len(c.disk.entries) != 1 {
			t.Errorf("%q logged %q", said, c.facts())
			continue
		}
		f := c.disk.entries[0].What.(*core.LinedUp)
		back := "-"
		if f.Return != 0 {
			back = string(f.Return)
		}
		if got := string(f.Supply) + "/" + back; got != want {
			t.Errorf("%q is %s, want %s", said, got, want)
		}
	}
	for said, want := range map[string]string{"": "Nothing is typed", "x": `"x" is no compartment.`, "a return f": `"f" is no compartment.`, "a+a": "a+a"} {
		c := climbIn(t, morning).press("g", "u", "l").type_(said).sees(want)
		if c.facts() != "" || !c.model().open {
			t.Errorf("%q logged %q", said, c.facts())
		}
	}
}

func TestWhatIfLogsNothing(t *testing.T) {
	c := climbIn(t, atAlder).press("g", "u", "c", "w").sees("if you turned supply and return to c", "push   ").press("pgdown").sees("gets")
	c.press("esc").sees("stands now  from a")
	if c.facts() != "" {
		t.Errorf("logged: %s", c.facts())
	}
}

func TestLineUpByTapsAlone(t *testing.T) {
	c := climbIn(t, morning).tapOn("g pages").tapOn("Line-ups").tapOn("from a").tapOn("w what if").sees("if you turned supply and return to a")
	c.tapOn("Esc back").tapOn("Enter  turn the valves: a").sees("stands now  from a").tapOn("Esc back").sees("a ► pump")
	if c.facts() != "lined_up" {
		t.Errorf("logged: %s", c.facts())
	}
}
