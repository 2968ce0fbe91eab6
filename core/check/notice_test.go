package check

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

const nextDoor = `{"fact":"neighbour","lawn":"Alder","name":"Next Door","phone":"555-0117","hours_least":12,"hours_most":72,"calls":2,"register":"state_register"}
`

// hoursAgo enters facts as of some hours before the clock of the tests.
func hoursAgo(t *testing.T, b *core.Book, hours float64, facts ...core.Fact) {
	t.Helper()
	at := core.Moment{Unix: clock.Unix - int64(hours*3600)}
	es, err := b.Prepare("ago", at, facts...)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range es {
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
}

func call(result string) *core.Told {
	return &core.Told{Lawn: "Alder", Whom: core.ToldNeighbour, Person: "Next Door", How: core.ByPhone, Result: result}
}

func doorNote() *core.Told {
	return &core.Told{Lawn: "Alder", Whom: core.ToldNeighbour, Person: "Next Door", How: core.ByDoorNote}
}

// TestNeighbourToBeTold holds the hours and attempts of 7 Pa. Code 128.112: 12 to 72 hours before, two failed calls and then
// a note on the door.
func TestNeighbourToBeTold(t *testing.T) {
	type told struct {
		hours float64
		f     *core.Told
	}
	for _, row := range []struct {
		name string
		told []told
		says string // empty: no finding
	}{
		{"nobody called", nil, "Next Door is to be told before this lawn is treated, 12 to 72 h ahead; was not told."},
		{"reached 12 hours before", []told{{12, call(core.ToldReached)}}, ""},
		{"reached 72 hours before", []told{{72, call(core.ToldReached)}}, ""},
		{"reached 11.5 hours before", []told{{11.5, call(core.ToldReached)}}, "was told only 11.5 h ahead."},
		{"reached 73 hours before", []told{{73, call(core.ToldReached)}}, "was told 73 h ahead, which is too long before."},
		{"one call failed", []told{{20, call(core.ToldFailed)}}, "1 call failed."},
		{"two calls failed", []told{{20, call(core.ToldFailed)}, {19, call(core.ToldFailed)}}, "2 calls failed."},
		{"a note after one call", []told{{20, call(core.ToldFailed)}, {19, doorNote()}}, "1 call failed, a note on the door counts after 2 failed calls."},
		{"a note after two calls", []told{{20, call(core.ToldFailed)}, {19, call(core.ToldFailed)}, {18, doorNote()}}, ""},
	} {
		b := play(t, loadedLines+hoseOf("a")+nextDoor)
		for _, one := range row.told {
			hoursAgo(t, b, one.hours, one.f)
		}
		f := find(before(t, b, Intent{Lawn: "Alder"}), "notice")
		switch {
		case row.says == "" && f != nil:
			t.Errorf("%s: %+v", row.name, f)
		case row.says != "" && (f == nil || f.Weight != Stop || !strings.Contains(f.Says, row.says) || f.About != "Next Door" || f.Unlawful() == ""):
			t.Errorf("%s: %+v, not %s", row.name, f, row.says)
		}
	}
}

// TestNeighbourElsewhere: another lawn, another date and one whose time has ended are not asked about; an own request is told
// by a call at any hour; a reason opens the stop of one neighbour alone.
func TestNeighbourElsewhere(t *testing.T) {
	b := play(t, loadedLines+hoseOf("a")+nextDoor+`{"fact":"neighbour","lawn":"Alder","name":"Long Ago","until":"2026-05-27","register":"own_request"}
{"fact":"neighbour","lawn":"Alder","name":"Over the Way","phone":"555-0118","register":"own_request"}`)
	if f := find(before(t, b, Intent{Lawn: "Gum"}), "notice"); f != nil {
		t.Errorf("at another lawn: %+v", f)
	}
	stops := func() (out []string) {
		for _, f := range before(t, b, Intent{Lawn: "Alder"}).Findings {
			if f.Rule == "notice" && f.Reason == "" {
				out = append(out, f.About)
			}
		}
		return out
	}
	if got := stops(); len(got) != 2 {
		t.Fatalf("stops %q", got)
	}
	other := call(core.ToldReached)
	other.For = "2026-05-29"
	log(t, b, other)
	if got := stops(); len(got) != 2 {
		t.Errorf("told of another date: %q", got)
	}
	log(t, b, &core.Told{Lawn: "Alder", Whom: core.ToldNeighbour, Person: "Over the Way", How: core.ByPhone})
	if got := stops(); len(got) != 1 || got[0] != "Next Door" {
		t.Errorf("after a call: %q", got)
	}
	log(t, b, &core.Overridden{Rule: "notice", Lawn: "Alder", About: "Next Door", Weight: "stop", Said: "x", Reason: "he said it is all right"})
	if got := stops(); len(got) != 0 {
		t.Errorf("after a reason: %q", got)
	}
	log(t, b, &core.Neighbour{Lawn: "Alder", NeighbourName: "Next Door", Gone: "yes"})
	if f := find(before(t, b, Intent{Lawn: "Alder"}), "notice"); f != nil {
		t.Errorf("nobody is to be told any more: %+v", f)
	}
}
