package check

import (
	"reflect"
	"regexp"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// pumpedLines is a rig with a pump flow and two hoses; the second has water in it yet.
func pumpedLines(t testing.TB) string {
	const cell, hose = `"cell_gal":0.2`, `"hoses":[`
	rig := strings.Split(strings.TrimSpace(loadedLines), "\n")
	if !strings.Contains(rig[0], cell) || !strings.Contains(rig[0], hose) {
		t.Fatal("the rig has changed: ", rig[0])
	}
	rig[0] = strings.Replace(rig[0], cell, cell+`,"pump_flow_gpm":8`, 1)
	return strings.Join(rig, "\n") + "\n"
}

// TestLineAfterIsTheLedger: what is drawn while a push-back runs is what the book holds once it is logged, and drawing it
// leaves the book as it is.
func TestLineAfterIsTheLedger(t *testing.T) {
	for _, lines := range []string{loadedLines, pumpedLines(t)} {
		for _, way := range []string{WayNew, WayOld, WayPail} {
			b := play(t, lines+hoseOf("b")+`{"fact":"visit_begun","lawn":"Alder"}`)
			turn, err := WhatIf(b, Intent{Lawn: "Alder", At: clock, Way: way}, 'a')
			if err != nil {
				t.Fatal(err)
			}
			c := turn.Changeover
			if w := c.Way(); w == nil || w.Name != way {
				t.Fatalf("the way is %+v and should be %s", w, way)
			}
			before := b.StateDigest()
			for _, gone := range []measure.Volume{0, measure.Gallons(0.4), c.Arrives, c.Half + 1, c.PushBack, c.PushBack + measure.Gallons(0.3)} {
				drawn := LineAfter(b, c, gone)
				if b.StateDigest() != before {
					t.Fatal("drawing changed the book")
				}
				then := b.Clone()
				for _, f := range append([]core.Fact{&core.LinedUp{Supply: []byte{'a'}, Return: 'a'}}, Pushed(c, gone)...) {
					es, err := then.Prepare("push", clock, f)
					if err != nil {
						t.Fatal(err)
					}
					if err := then.Apply(es[0]); err != nil {
						t.Fatal(err)
					}
				}
				if p := then.Plumbing(); !reflect.DeepEqual(drawn.Hose.Charge, p.Hose("").Charge) || !reflect.DeepEqual(drawn.Cell, p.Cell) {
					t.Errorf("%s after %s gal: drawn %+v, booked %+v", way, gone.Text(), drawn.Runs(), LineNow(then, "").Runs())
				}
			}
		}
	}
}

// TestRunsLeaveNothingOut: the runs are as long as the hose, of what is no sliver none is left out, and they stand in order.
func TestRunsLeaveNothingOut(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b")+`{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"b","volume_gal":0.9}
{"fact":"lined_up","supply":["b"],"return":"b"}
{"fact":"pushed_back","into":"b","volume_gal":0.6}`)
	l := LineNow(b, "")
	var sum measure.Volume
	letters := ""
	for _, r := range l.Runs() {
		sum += r.Volume
		letters += string(rune(b.Origin(r.Key).Letter))
	}
	if sum != l.Hose.Size || letters != "bab" {
		t.Errorf("%s in all, hose %s: %s", sum.Text(), l.Hose.Size.Text(), letters)
	}
}

func TestWayIsFollowed(t *testing.T) {
	b := play(t, pumpedLines(t)+hoseOf("b")+`{"fact":"visit_begun","lawn":"Alder"}`)
	for _, tc := range []struct{ way, says string }{
		{WayNew, "over to the lid of a"}, {WayOld, "into b."}, {WayPail, "a pail"}, {WaySwept, "leave the return on b"},
	} {
		in := Intent{Lawn: "Alder", At: clock, Way: tc.way}
		turn, err := WhatIf(b, in, 'a')
		if err != nil {
			t.Fatal(err)
		}
		var words string
		for _, s := range Steps(b, in, 'a') {
			words += s.Text + "\n"
		}
		if w := turn.Changeover.Way(); w == nil || w.Name != tc.way || len(turn.Changeover.Ways) != 4 || !strings.Contains(words, tc.says) {
			t.Errorf("%s: %+v\n%s", tc.way, turn.Changeover.Ways, words)
		}
		if turn.Cannot != nil || turn.Pushed == nil || turn.Pushed.Verdict == Stop {
			t.Errorf("%s: after it %+v, %v", tc.way, turn.Pushed, turn.Cannot)
		}
	}
	if turn, _ := WhatIf(b, Intent{Lawn: "Alder", At: clock, Way: "nonsense"}, 'a'); turn.Changeover.Way() == nil {
		t.Error("a way that is none takes the choice away")
	}
}

// TestLineSwept: the bypass washes the cell and leaves the hose as it is.
func TestLineSwept(t *testing.T) {
	b := play(t, pumpedLines(t)+hoseOf("b")+`{"fact":"visit_begun","lawn":"Alder"}`)
	turn, err := WhatIf(b, Intent{Lawn: "Alder", At: clock, Way: WaySwept}, 'a')
	if err != nil {
		t.Fatal(err)
	}
	now, then := LineNow(b, ""), LineSwept(b, turn.Changeover, turn.Changeover.Way().RunS)
	old := 0.0
	for _, f := range then.Cell.Liquid.From {
		if b.Origin(f.Key).Letter == 'b' {
			old += float64(f.N) / float64(then.Cell.Liquid.Volume)
		}
	}
	// three cells and the return line's volume: e^-3 and less is left
	if !reflect.DeepEqual(now.Hose.Charge, then.Hose.Charge) || old > 0.0498 || old == 0 {
		t.Errorf("%v of b is left in the cell", old)
	}
}

func TestWhatIfWithNoLawnAhead(t *testing.T) {
	with := play(t, loadedLines+hoseOf("b"))
	turn, err := WhatIf(with, Intent{At: clock}, 'a')
	if err != nil || turn.Instead == "" || turn.ByStrength || turn.Changeover == nil || turn.Report.Verdict != Stop {
		t.Fatalf("%+v %v", turn, err)
	}
	at, err := WhatIf(with, Intent{At: clock, Lawn: turn.Instead}, 'a')
	if err != nil || at.Changeover.PushBack != turn.Changeover.PushBack {
		t.Errorf("at %s: %v", turn.Instead, err)
	}
	if len(Steps(with, Intent{At: clock}, 'a')) == 0 {
		t.Error("no steps")
	}
	var none []string
	for _, l := range strings.Split(strings.TrimSpace(loadedLines+hoseOf("b")), "\n") {
		if !strings.Contains(l, `"fact":"lawn"`) {
			none = append(none, routeOff.ReplaceAllString(l, `"route":[]`))
		}
	}
	without := play(t, strings.Join(none, "\n"))
	turn, err = WhatIf(without, Intent{At: clock}, 'a')
	// nothing is forbidden on no grass, and the strength has to be within 5 per cent (setting strength_band_pct)
	if c := turn.Changeover; err != nil || !turn.ByStrength || c == nil || !near(c.Share, 0.95) || len(turn.Report.Findings) > 0 || turn.Pushed != nil {
		t.Errorf("%+v %+v %v", turn.Changeover, turn, err)
	}
	if len(Steps(without, Intent{At: clock}, 'a')) == 0 {
		t.Error("no steps")
	}
}

var routeOff = regexp.MustCompile(`"route":\[[^]]*\]`)

func BenchmarkLineAfter(b *testing.B) {
	book := play(b, pumpedLines(b)+hoseOf("b")+`{"fact":"visit_begun","lawn":"Alder"}`)
	turn, err := WhatIf(book, Intent{Lawn: "Alder", At: clock}, 'a')
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		LineAfter(book, turn.Changeover, turn.Changeover.PushBack)
	}
}
