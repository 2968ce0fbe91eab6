package audit_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/audit"
	"example.com/tintline/testdata/demo"
)

// demoEntries is the demo's journal as entries.
func demoEntries(t testing.TB) []core.Entry {
	t.Helper()
	b := core.NewBook(1)
	var out []core.Entry
	for _, line := range strings.Split(strings.TrimSpace(demo.Journal), "\n") {
		l, err := core.DecodeLine([]byte(line))
		if err != nil {
			t.Fatal(err)
		}
		es, err := b.Prepare("x", l.At.V, l.Fact)
		if err != nil {
			t.Fatal(err)
		}
		if err := b.Apply(es[0]); err != nil {
			t.Fatal(err)
		}
		out = append(out, es[0])
	}
	return out
}

// exported are the entries of a book of an earlier version, from its own export, with the keys of today.
func exported(t testing.TB, name string) []core.Entry {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "books", name+".jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	b := core.NewBook(1)
	var out []core.Entry
	for _, line := range strings.Split(strings.TrimSpace(string(text)), "\n") {
		l, err := core.DecodeLine([]byte(line))
		if err != nil {
			t.Fatal(err)
		}
		e := core.Entry{Seq: l.Seq, At: l.At.V, Action: l.Action, Truck: l.Truck, What: l.Fact, Digest: l.Digest}
		e.Keys = b.Keys(e.What, e.At)
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
		out = append(out, e)
	}
	return out
}

func read(entries []core.Entry) *audit.Audit {
	a := audit.New(1)
	for _, e := range entries {
		a.Add(e, e.Keys)
	}
	return a
}

func TestWhatIsRightHasNoFinding(t *testing.T) {
	for name, entries := range map[string][]core.Entry{
		"demo": demoEntries(t), "spine": exported(t, "spine"), "cab": exported(t, "cab"),
		"grass": exported(t, "grass"), "changeover": exported(t, "changeover"),
	} {
		a := read(entries)
		for _, f := range a.Findings {
			t.Errorf("%s: %s: %s", name, f.Kind, f.Says)
		}
		if !a.Whole() || a.Entries != uint64(len(entries)) || a.Book.Digest() != entries[len(entries)-1].Digest || a.Days == 0 {
			t.Errorf("%s: %d entries, %d days, whole %v", name, a.Entries, a.Days, a.Whole())
		}
	}
}

// TestAChangedEntryIsFound: entries of a book are changed in turn, with its digest kept, and with one that fits.
func TestAChangedEntryIsFound(t *testing.T) {
	good := exported(t, "changeover")
	for i := 0; i < len(good); i += 13 {
		for _, fits := range []bool{false, true} {
			entries := append([]core.Entry(nil), good...)
			entries[i].At.Unix++ // what anybody would change: when it was
			if fits {
				before := core.Digest{}
				if i > 0 {
					before = entries[i-1].Digest
				}
				entries[i] = entries[i].Sealed(before)
			}
			a := read(entries)
			at, believed := uint64(i+1), i-1
			if fits { // it shows at the next, and after the last entry there is none: see the sentence in the help
				at++
				believed++
			}
			if fits && i == len(good)-1 {
				continue
			}
			if len(a.Findings) != 1 || a.Findings[0].Kind != audit.Changed || a.Findings[0].Entry != at || a.Whole() {
				t.Fatalf("entry %d, digest fits %v: %+v", i+1, fits, a.Findings)
			}
			says := a.Findings[0].Says
			if believed > 1 && !strings.Contains(says, "Entries 1 to "+itoa(believed)+" are as they were written.") || !strings.Contains(says, " of 2026-") {
				t.Fatalf("entry %d, digest fits %v: %s", i+1, fits, says)
			}
			if !errors.Is(a.Findings[0].Err, core.ErrChain) {
				t.Fatalf("entry %d: %v", i+1, a.Findings[0].Err)
			}
		}
	}
}

func itoa(n int) string {
	if n < 10 {
		return string(rune('0' + n))
	}
	return itoa(n/10) + itoa(n%10)
}

// TestALeftOutEntryIsFound: one that is missing, and two that changed places.
func TestALeftOutEntryIsFound(t *testing.T) {
	good := demoEntries(t)
	for i := 0; i < len(good)-1; i += 7 {
		without := append(append([]core.Entry(nil), good[:i]...), good[i+1:]...)
		if a := read(without); len(a.Findings) == 0 || a.Findings[0].Entry != good[i+1].Seq || a.Findings[0].Kind != audit.Changed {
			t.Fatalf("without entry %d: %+v", i+1, a.Findings)
		}
	}
}

func TestKeysThatDoNotFollowAreFound(t *testing.T) {
	entries := demoEntries(t)
	entries[40].Keys = [][]byte{[]byte("day/2020-01-01")}
	a := read(entries)
	if len(a.Findings) != 1 || a.Findings[0].Entry != 41 || !strings.Contains(a.Findings[0].Says, "day/2020-01-01") || !a.Whole() {
		t.Fatalf("%+v", a.Findings)
	}
	a = audit.New(1)
	a.OldKeys = true
	for _, e := range entries {
		a.Add(e, e.Keys)
	}
	if len(a.Findings) != 0 || a.Rekeyed != 1 {
		t.Fatalf("%+v, %d", a.Findings, a.Rekeyed)
	}
}

// TestLiquidThatGoesMissingIsFound: the audit does not believe the fold. Here one loses a gallon on the way.
func TestLiquidThatGoesMissingIsFound(t *testing.T) {
	entries := exported(t, "changeover")
	for _, at := range []uint64{50, 60, 75, 110} {
		a := audit.New(1)
		a.Apply = func(b *core.Book, e core.Entry) error {
			err := b.Apply(e)
			if e.Seq == at {
				b.Plumbing().Compartments[0].Liquid.Volume -= 3785411784
			}
			return err
		}
		for _, e := range entries {
			a.Add(e, e.Keys)
		}
		if len(a.Findings) == 0 || a.Findings[0].Kind != audit.Unbalanced || a.Findings[0].Entry != at || !strings.Contains(a.Findings[0].Says, "-3785411784 nL") {
			t.Fatalf("entry %d: %+v", at, a.Findings)
		}
	}
}

// TestAnEntryOfANewerFormIsNoChange, and one that is not in any form is.
func TestUnreadableEntries(t *testing.T) {
	for _, c := range []struct {
		body []byte
		kind audit.Kind
		says string
	}{
		{append([]byte{200}, make([]byte, 40)...), audit.Unreadable, "newer version"},
		{append([]byte{1, 1, 0, 0, 1, 1, 200}, make([]byte, 40)...), audit.Changed, "it was changed"},
	} {
		good := demoEntries(t)
		a := read(good[:40])
		e, err := core.Decode(41, "x", c.body)
		if err == nil {
			t.Fatal("it was read")
		}
		a.Unreadable(e, err)
		for _, later := range good[41:] {
			a.Add(later, later.Keys)
		}
		if f := a.Findings[0]; f.Kind != c.kind || f.Entry != 41 || !strings.Contains(f.Says, c.says) || !strings.Contains(f.Says, "Entries 1 to 40 are as they were written.") {
			t.Errorf("%+v", f)
		}
		if a.Whole() || a.Entries != uint64(len(good)) {
			t.Errorf("whole %v, %d entries", a.Whole(), a.Entries)
		}
	}
}

func BenchmarkAudit(b *testing.B) {
	entries := exported(b, "changeover")
	b.ReportAllocs()
	for b.Loop() {
		if a := read(entries); len(a.Findings) != 0 {
			b.Fatal(a.Findings)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(entries)), "ns/entry")
}
