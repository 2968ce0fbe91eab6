package tui

import (
	"strings"
	"testing"
	"time"

	demodata "example.com/tintline/testdata/demo"
)

// TestWhatToDoIsSaidOnce: of two products that one push cures, the first says what to do and each its own figures.
func TestWhatToDoIsSaidOnce(t *testing.T) {
	all := onceToDo([]said{
		{word: "STOP", do: "Push.", says: "One is not for it.", stop: true, keeps: true},
		{word: "STOP", do: "Push.", says: "Another is not for it.", stop: true, keeps: true},
		{word: "ASK", do: "Push.", keeps: true},
	})
	if all[0].do != "Push." || all[0].says != "One is not for it." || all[1].do != "Another is not for it." || all[1].says != "" || all[2].do != "Push." {
		t.Errorf("%+v", all)
	}
}

// TestTheFirstLineIsWhatToDo works the demo's day on as the screen proposes: on every screen what comes first is to be
// done, a note stands below it, and no sentence about what to do is there twice.
func TestTheFirstLineIsWhatToDo(t *testing.T) {
	c := inRig(t, demodata.Journal, demo)
	c.at = c.opts.Book.LastAt().Time()
	for range 60 {
		c.wait(1e9)
		first := ""
		seen := map[string]bool{}
		m := c.model()
		for _, s := range m.sayings() {
			if first == "" {
				first = s.word
			}
			if seen[s.do] {
				t.Errorf("twice: %q\n%s", s.do, c.screen())
			}
			seen[s.do] = true
		}
		if first == "NOTE" || first == "went" {
			t.Fatalf("%s comes first:\n%s", first, c.screen())
		}
		if strings.Contains(c.screen(), "close the day") {
			return
		}
		key := "enter"
		if strings.Contains(c.screen(), "▌ y ") {
			key = "y"
		}
		was := c.screen()
		if c.press(key); c.screen() == was {
			t.Fatalf("%s changes nothing:\n%s", key, was)
		}
	}
	t.Errorf("the day does not end:\n%s", c.screen())
}

// TestTheSmallestScreenSendsNobodyWhereNothingStands: what has no row of its own at 40x16 is named with the key that opens it.
func TestTheSmallestScreenSendsNobodyWhereNothingStands(t *testing.T) {
	c := climbIn(t, morning).size(40, 16).press("enter").wait(41*time.Minute).size(40, 16).sees("Enter look at the weather", "j: same ")
	c.press("j").sees("what was not checked").seesNot("stands b")
	c.press("z").sees("here: 0 found, ", "checks found nothing")
}
