//go:build unix

package endtoend

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"
)

// fifteen is a day of fifteen visits as the operator works it: keys, and what must stand on the screen then. "\r" is
// Enter; what is typed goes letter by letter; ↓ and ⎋ are Down and Esc.
var fifteen = []struct{ keys, see string }{
	{"\rA. Sample\r", "15 lawns on the route"},
	// load: three mixes and the hopper
	{"g", "All pages"},
	{"o", "Load the truck"},
	{"l", "a: _"},
	{"150 gal warm mix for gun\r", "booked loaded 150.0 gal of warm mix into a"},
	{"↓", "► b"},
	{"l", "b: _"},
	{"120 gal cool mix for gun\r", "booked loaded 120.0 gal of cool mix into b"},
	{"↓", "► c"},
	{"l", "c: _"},
	{"60 gal iron mix for gun\r", "booked loaded 60.0 gal of iron mix into c"},
	{"↓↓↓", "► spreader"},
	{"\r", "hopper of spreader: _"},
	{"50 lb food\r", "booked loaded the hopper of spreader"},
	{"⎋", "Drive to 1 Acorn Row"},
	// 1: the hose's water goes into the backpack; a round
	{"a", "Set the valves: 1 open"},
	{"p1.5 backpack\r", "booked filled backpack with 1.50 gal"},
	{"i5 S 66 50% 8h\r", "booked weather"},
	{"\r", "Spray 12.0 gal on all"},
	{"\r", "booked sprayed 1 Acorn Row"},
	{"\r", "booked left 1 Acorn Row"},
	// 2: gallons typed for one zone
	{"\r", "booked arrived at 2 Acorn Row"},
	{"lfront 6.2\r", "Spray 3.00 gal on back"},
	{"\r", "booked sprayed 2 Acorn Row back"},
	{"\r", "booked left 2 Acorn Row"},
	// 3: skipped
	{"k2\r", "booked skipped 3 Acorn Row: dog"},
	// 4: changeover to b
	{"\r", "turn supply and return to b"},
	{"\r", "push 1.50 gal into a"},
	{"\r", "Spray 7.80 gal on all"},
	{"\r", "booked sprayed 4 Birch Row"},
	{"\r", "booked left 4 Birch Row"},
	// 5: the ride-on, filled through the hose; its weak dose is asked about
	{"\r", "booked arrived at 5 Birch Row"},
	{"p3 ride-on\r", "booked filled ride-on with 3.00 gal"},
	{"h", "y yes, go on: dose"},
	{"y", "Spray 1.80 gal on all with ride-on"},
	{"\r", "booked sprayed 5 Birch Row"},
	{"\r", "booked left 5 Birch Row"},
	// 6: a call-back, a part of it
	{"g", "All pages"},
	{"v", "Visits of the day"},
	{"k", "5 look only"},
	{"2\r", "call-back at 6 Birch Row for"},
	{"missed strip\r", "call-back: missed strip"},
	{"⎋", "Spray 6.00 gal on all with gun"},
	{"l500 sqft\r", "booked sprayed 6 Birch Row"},
	{"\r", "booked left 6 Birch Row"},
	// 7: a part now, the rest carried over
	{"\r", "booked arrived at 7 Cedar Row"},
	{"l6000 sqft\r", "4,000 sq ft of all is left at 7 Cedar Row"},
	{"v1\r", "booked carried over: 7 Cedar Row"},
	// 8: on hold for the wind, then on
	{"\r", "booked arrived at 8 Cedar Row"},
	{"w1\r", "ON HOLD for wind"},
	{"i6 S 67 50% 8h\r", "booked weather"},
	{"\r", "Spray 6.00 gal on all"},
	{"\r", "booked sprayed 8 Cedar Row"},
	{"\r", "booked left 8 Cedar Row"},
	// 9: a look only
	{"g", "All pages"},
	{"v", "Visits of the day"},
	{"k", "5 look only"},
	{"5\r", "booked arrived at 9 Cedar Row"},
	{"⎋", "leave 9 Cedar Row"},
	{"\r", "booked left 9 Cedar Row"},
	// 10: dry product by weight
	{"\r", "booked arrived at 10 Dogwood Row"},
	{"h", "with ride-on"},
	{"h", "with backpack"},
	{"h", "spread 20.0 lb"},
	{"\r", "booked spread 10 Dogwood Row all: 20.0 lb"},
	{"\r", "booked left 10 Dogwood Row"},
	// 11: two applicators on one lawn
	{"\r", "booked arrived at 11 Dogwood Row"},
	{"lfront 4.5\r", "on back with gun"},
	{"h", "y yes, go on: dose"},
	{"y", "y yes, go on: enough"},
	{"y", "Spray 1.20 gal on back with ride-on"},
	{"\r", "booked sprayed 11 Dogwood Row back"},
	{"\r", "booked left 11 Dogwood Row"},
	// 12: a first visit; what was logged is put right
	{"g", "All pages"},
	{"v", "Visits of the day"},
	{"k", "5 look only"},
	{"3\r", "first visit"},
	{"⎋", "Spray 10.5 gal on all"},
	{"\r", "booked sprayed 12 Dogwood Row"},
	{"g", "All pages"},
	{"j", "newest first"},
	{"o", "Enter sprayed on all"},
	{"10 gal\r", "instead: sprayed 12 Dogwood Row all: 10.0 gal"},
	{"⎋", "leave 12 Dogwood Row"},
	{"\r", "booked left 12 Dogwood Row"},
	// 13: the operator takes iron where a would do as well
	{"\r", "booked arrived at 13 Elm Row"},
	{"c", "push 1.50 gal into b"},
	{"\r", "Spray 3.00 gal on all with gun, from c"},
	{"\r", "booked sprayed 13 Elm Row"},
	{"\r", "booked left 13 Elm Row"},
	// 14: the same with another tip
	{"\r", "booked arrived at 14 Elm Row"},
	{"c", "Spray 4.50 gal on all with gun, from c"},
	{"r", "y yes, go on: dose, Iron Sample"},
	{"y", "Spray 6.00 gal on all with gun, from c"},
	{"\r", "booked sprayed 14 Elm Row"},
	{"\r", "booked left 14 Elm Row"},
	// 15: refused; a gauge, and the day is closed
	{"k5\r", "booked skipped 15 Elm Row: refused"},
	{"ob 77.95\r", "booked gauge of b: 78.0 gal"},
	{"y", "close all the same because"},
	{"1\r", "booked closed the day"},
}

// TestFifteenVisitsByKeys works the day on a terminal and compares its tally with testdata/handmade/fifteen_tally.json,
// which was worked out by hand. The rig's pump has no dead volume, so that every figure is plain arithmetic: gallons
// are area times delivery rate (or as typed), an amount is gallons times the mix's rate over the delivery rate it was
// loaded for (1, 0.8 and 3 fl oz per 1,000 sq ft at 1.5 gal), dry product is area times rate. Each changeover pushes
// the hose's 1.5 gal back where they came from, and 0.05 gal more of the new liquid into its own compartment, because the
// volume of a hose that was never timed is taken 3 per cent larger; the first water goes into the backpack.
func TestFifteenVisitsByKeys(t *testing.T) {
	book := filepath.Join(t.TempDir(), "fifteen.db")
	must(t, "", "replay", "../../testdata/handmade/fifteen.jsonl", "--book", book)
	c := start(t, small, []string{"TINTLINE_AT=2026-06-02T06:45:00-05:00"}, "--book", book)
	c.see("Open the day")
	for _, step := range fifteen {
		c.work(step.keys)
		c.see(step.see)
	}
	c.press("q")
	c.ended()

	var got, want any
	if err := json.Unmarshal([]byte(must(t, "", "tally", "--json", "--book", book)), &got); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile("../../testdata/handmade/fifteen_tally.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &want); err != nil {
		t.Fatal(err)
	}
	for _, wrong := range differences("tally", want, got) {
		t.Error(wrong)
	}
}

// work presses keys as a hand does: with a pause before Enter, around Esc, and before an answer to what was just asked.
func (c *cab) work(keys string) {
	c.t.Helper()
	for _, k := range keys {
		switch k {
		case '\r':
			c.enter()
		case '↓':
			c.press("\x1b[B")
			time.Sleep(20 * time.Millisecond)
		case '⎋':
			time.Sleep(150 * time.Millisecond)
			c.press("\x1b")
			time.Sleep(150 * time.Millisecond)
		case 'y':
			time.Sleep(750 * time.Millisecond) // settled, and no second press
			c.press("y")
		default:
			c.tap(string(k))
		}
	}
}

// differences lists where a document says something else than is wanted; what it says beyond that is left alone. Figures
// are equal to seven digits: each amount was rounded to its unit, a nanolitre or a nanogram.
func differences(at string, want, got any) []string {
	var out []string
	switch w := want.(type) {
	case map[string]any:
		g, _ := got.(map[string]any)
		for k, v := range w {
			out = append(out, differences(at+"."+k, v, g[k])...)
		}
	case []any:
		g, _ := got.([]any)
		if len(g) != len(w) {
			return []string{fmt.Sprintf("%s has %d rows, not %d", at, len(g), len(w))}
		}
		for i := range w {
			out = append(out, differences(fmt.Sprintf("%s[%d]", at, i), w[i], g[i])...)
		}
	case float64:
		if g, ok := got.(float64); !ok || math.Abs(g-w) > 1e-7*math.Abs(w) {
			out = append(out, fmt.Sprintf("%s is %v, not %v", at, got, want))
		}
	default:
		if got != want {
			out = append(out, fmt.Sprintf("%s is %v, not %v", at, got, want))
		}
	}
	return out
}
