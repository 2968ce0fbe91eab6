package check

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

// tintsOf says of the rig's compartments a, b and c how they are tinted.
func tintsOf(t *testing.T, b *core.Book, tints ...string) {
	t.Helper()
	r := *b.Rig()
	r.Compartments = append([]core.RigCompartment(nil), r.Compartments...)
	for i, tint := range tints {
		r.Compartments[i].Tint = tint
	}
	log(t, b, &r)
}

// TestStepsSayWhatTheEyeWillSee: no tint is promised where none tells the two apart, and towards the clear one it is the
// last of the colour that counts.
func TestStepsSayWhatTheEyeWillSee(t *testing.T) {
	for _, row := range []struct {
		name       string
		tintA      string
		tintB      string
		way        string
		says       string
		not        string
		from, gone bool // whether there are bounds, and a last of the colour
	}{
		{"not said", "", "", "", "The tint comes at", "No tint", true, false},
		{"towards the tint", "blue", core.NoTint, core.TowardsTint, "The tint comes at", "fade", true, false},
		{"two colours", "blue", "red", core.TowardsTint, "The tint comes at", "fade", true, false},
		{"towards the clear one", core.NoTint, "blue", core.TowardsClear, "the last of it goes at about", "The tint comes", true, true},
		{"alike", core.NoTint, core.NoTint, core.BetweenAlike, "No tint tells them apart: go by gallons.", "The tint comes", false, false},
		{"alike in blue", "blue", "blue", core.BetweenAlike, "No tint tells them apart: go by gallons.", "look at the valves", false, false},
	} {
		b := play(t, loadedLines+hoseOf("b")+`{"fact":"visit_begun","lawn":"Alder"}`)
		tintsOf(t, b, row.tintA, row.tintB)
		in := Intent{Lawn: "Alder", From: 'a', At: clock}
		c := ToClean(b, in)
		if c == nil {
			t.Fatalf("%s: no changeover", row.name)
		}
		if c.Tint != row.way || (c.TintFrom > 0 && c.TintBy > 0) != row.from || (c.TintGone > 0) != row.gone {
			t.Errorf("%s: %q, %s to %s, gone at %s", row.name, c.Tint, c.TintFrom.Text(), c.TintBy.Text(), c.TintGone.Text())
		}
		if row.gone && c.TintGone <= c.Half {
			t.Errorf("%s: the last of the colour goes at %s, half at %s", row.name, c.TintGone.Text(), c.Half.Text())
		}
		var text string
		for _, s := range Steps(b, in, 'a') {
			if s.Kind == StepTint {
				text = s.Text
			}
		}
		if !strings.Contains(text, row.says) || strings.Contains(text, row.not) {
			t.Errorf("%s: %s", row.name, text)
		}
	}
}

// TestAMissedTintBetweenAlikeOnesIsNoStop: nothing was to be seen.
func TestAMissedTintBetweenAlikeOnesIsNoStop(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b"))
	tintsOf(t, b, core.NoTint, core.NoTint)
	more(t, b, changing+`{"fact":"tint_seen","volume_gal":2.9,"missed":"yes"}`)
	if f := find(before(t, b, Intent{Lawn: "Alder"}), "line_up"); f == nil || f.Weight != Note || !strings.Contains(f.Says, "no tint tells them apart") {
		t.Errorf("%+v", f)
	}
}

// TestLearningNarrowsTheBoundsOfTheTint: what was timed is known better than what the bore says.
func TestLearningNarrowsTheBoundsOfTheTint(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b"))
	tintsOf(t, b, "blue", core.NoTint)
	log(t, b, &core.LinedUp{Supply: []byte{'a'}, Return: 'a'})
	first := ToClean(b, Intent{Lawn: "Alder", At: clock})
	if first == nil || first.Learned || first.Advised <= first.Clean {
		t.Fatalf("before: %+v", first)
	}
	// The hose holds 1.75 gal and the cell 0.25 gal; the flow is 2.5 gpm: 42.0, 46.2 and 55.8 s (arithmetic).
	more(t, b, `{"fact":"tint_seen","seconds":42,"half_seconds":46.2,"full_seconds":55.8}
{"fact":"pushed_back","into":"a","volume_gal":4}
{"fact":"lined_up","supply":["b"],"return":"b"}
{"fact":"pushed_back","into":"b","volume_gal":4}
{"fact":"lined_up","supply":["a"],"return":"a"}`)
	second := ToClean(b, Intent{Lawn: "Alder", At: clock})
	if second == nil || !second.Learned || second.Advised != second.Clean {
		t.Fatalf("after: %+v", second)
	}
	if was, is := first.TintBy-first.TintFrom, second.TintBy-second.TintFrom; float64(is) > 0.75*float64(was) {
		t.Errorf("the bounds were %s apart and are %s", was.Text(), is.Text())
	}
	if second.Band >= first.Band {
		t.Errorf("the band was %s and is %s", first.Band.Text(), second.Band.Text())
	}
	if second.Arrives <= first.Arrives {
		t.Errorf("a larger hose, and the new liquid comes at %s after %s", second.Arrives.Text(), first.Arrives.Text())
	}
}

// TestDoubtAboutATintThatTeachesNothing: what is too far off is asked about before it is booked, and a tint between two
// that none tells apart.
func TestDoubtAboutATintThatTeachesNothing(t *testing.T) {
	for _, row := range []struct{ tintA, line, says string }{
		{"blue", `{"fact":"tint_seen","seconds":42}`, ""},
		{"blue", `{"fact":"tint_seen","seconds":90}`, "standard deviations from what is known of the hose, 1.72 gal ± 0.17, and of the cell, 0.20 gal ± 0.10; more than 4"},
		{core.NoTint, `{"fact":"tint_seen","seconds":42}`, "No tint tells them apart"},
	} {
		b := play(t, loadedLines+hoseOf("b"))
		tintsOf(t, b, row.tintA, core.NoTint)
		log(t, b, &core.LinedUp{Supply: []byte{'a'}, Return: 'a'})
		l, err := core.DecodeLine([]byte(row.line))
		if err != nil {
			t.Fatal(err)
		}
		words, do, doubtful := Doubt(b, clock, l.Fact)
		if doubtful != (row.says != "") || !strings.Contains(words, row.says) || doubtful && do == "" {
			t.Errorf("%s with %s: %q", row.line, row.tintA, words)
		}
	}
}
