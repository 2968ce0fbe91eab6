//go:build unix

package endtoend

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// shortHose is a book on the day of the real clock, because a count-down needs one that runs: hose and cell are so small
// that a changeover takes seconds. Hose and cell hold b, the valves stand on b, and the lawn asks for a.
func shortHose(t *testing.T) (book string) {
	t.Helper()
	truck, err := os.ReadFile("../../tui/testdata/truck.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	lines := string(truck)
	for _, r := range [][2]string{
		{`"length_ft":300`, `"length_ft":20`},
		{`"cell_gal":0.2,"return_line_gal":0.1`, `"cell_gal":0.08,"return_line_gal":0,"pump_flow_gpm":3`},
		{`"colour":"yellow"`, `"colour":"yellow","tint":"blue"`},
		{`"colour":"blue"`, `"colour":"blue","tint":"none"`},
	} {
		if !strings.Contains(lines, r[0]) {
			t.Fatal("the truck has changed: ", r[0])
		}
		lines = strings.Replace(lines, r[0], r[1], 1)
	}
	now := time.Now()
	lines += fmt.Sprintf(`
{"fact":"day_opened","date":%q,"operator":"R. Example","route":["418 Alder Court"]}
{"fact":"loaded","into":"a","volume_gal":200,"mix":"bermuda, zoysia","for":"gun"}
{"fact":"loaded","into":"b","volume_gal":100,"mix":"fescue, bluegrass","for":"gun"}
{"fact":"lined_up","supply":["b"],"return":"b"}
{"fact":"pushed_back","into":"b","volume_gal":2}
{"fact":"weather","wind_mph":6,"wind_from":"SW","temp_f":64}
{"fact":"visit_begun","lawn":"418 Alder Court"}
`, now.Format("2006-01-02"))
	book = filepath.Join(t.TempDir(), "book.db")
	must(t, lines, "enter", "-", "--book", book, "--at", now.Add(-time.Minute).Format(time.RFC3339))
	return book
}

// TestChangeoverAtTheLid counts a changeover down on the real clock: another way is chosen, the colour is told three times,
// and what went into a pail stands in the book as gone there.
func TestChangeoverAtTheLid(t *testing.T) {
	book := shortHose(t)
	c := start(t, small, []string{"TINTLINE_AT="}, "--book", book)
	c.see("visit 1 of 1")
	c.tap("ta")
	c.see("if you turned supply and return to a", "ways of the tail", "with 1.25 on the smear")
	for n := 0; !strings.Contains(c.words(), "► tail into a pail"); n++ {
		if n > 4 {
			t.Fatalf("the pail does not come:\n%s", c.screen())
		}
		was := c.screen()
		c.tap("w")
		c.changed(was)
	}
	c.enter()
	c.see("Set the valves: 1 open", "start: the count-down begins")
	c.enter()
	c.see("s until you pull the trigger")
	c.enter()
	c.see("s until clean", "t tint")
	for _, said := range []string{"tint seen after", "half of the colour after", "full colour after"} {
		time.Sleep(1100 * time.Millisecond) // so that the seconds are not 0
		c.tap("t")
		c.see(said)
	}
	c.see("let go of the trigger")
	c.enter()
	c.see("stopped after", "gal into a pail")
	c.enter()
	c.see("booked")
	c.press("q")
	if code := c.ended(); code != 0 {
		t.Errorf("exit %d", code)
	}

	var pail, seen map[string]any
	for _, s := range strings.Split(strings.TrimSpace(must(t, "", "journal", "--json", "--book", book)), "\n") {
		var e map[string]any
		if err := json.Unmarshal([]byte(s), &e); err != nil {
			t.Fatal(err)
		}
		if e["to"] == "waste/pail" {
			pail = e
		}
		if e["fact"] == "tint_seen" {
			seen = e
		}
	}
	if pail == nil || pail["fact"] != "pushed_back" {
		t.Errorf("nothing went into a pail: %v", pail)
	}
	first, _ := seen["seconds"].(float64)
	half, _ := seen["half_seconds"].(float64)
	full, _ := seen["full_seconds"].(float64)
	if !(first > 0 && half > first && full > half) || seen["direction"] != "tint" {
		t.Errorf("the colour is told as %v", seen)
	}
}

// TestEndedInAChangeover ends the program by force, and by a signal, while a push-back is counted down: what the screen had
// not said to be booked is not in the book, what stood there is there once, and the program starts again.
func TestEndedInAChangeover(t *testing.T) {
	book := shortHose(t)
	before := must(t, "", "journal", "--json", "--book", book)
	for _, sig := range []os.Signal{os.Kill, syscall.SIGTERM} {
		c := start(t, small, []string{"TINTLINE_AT="}, "--book", book)
		c.see("visit 1 of 1")
		c.tap("ta")
		c.see("ways of the tail")
		c.enter()
		c.see("start: the count-down begins")
		c.enter()
		c.see("s until you pull the trigger")
		c.enter()
		c.see("s until clean", "t tint")
		time.Sleep(1100 * time.Millisecond)
		c.tap("t")
		c.see("tint seen after")
		if sig == os.Kill {
			c.kill()
		} else {
			_ = c.cmd.Process.Signal(sig)
			c.ended()
		}
		now := must(t, "", "journal", "--json", "--book", book)
		if !strings.HasPrefix(now, before) {
			t.Errorf("%v: what stood in the book is not there", sig)
		}
		if n := strings.Count(now, `"fact":"pushed_back"`); n != 1 || strings.Contains(now, `"tint_seen"`) || strings.Count(now, `"fact":"lined_up"`) != 2 {
			t.Errorf("%v: %d push-backs are in the book, and what else was new is %q", sig, n, strings.TrimPrefix(now, before))
		}
		before = now
	}
}
