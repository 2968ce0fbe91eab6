package core

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core/measure"
)

// The story is a journal with every kind of fact, which the tests of faults write while they stop the program. It is drawn
// by the generator of this package; TINTLINE_STORY=1 draws it anew.
var storyPath = filepath.Join("..", "testdata", "story", "every_fact.jsonl")

func TestTheStoryHoldsEveryFact(t *testing.T) {
	if os.Getenv("TINTLINE_STORY") != "" {
		writeStory(t)
	}
	text, err := os.ReadFile(storyPath)
	if err != nil {
		t.Fatal(err)
	}
	b, has := NewBook(3), map[string]bool{}
	for i, line := range bytes.Split(bytes.TrimSpace(text), []byte("\n")) {
		l, err := DecodeLine(line)
		if err == nil {
			err = b.Apply(Entry{Seq: l.Seq, At: l.At.V, Action: l.Action, Truck: l.Truck, What: l.Fact, Digest: l.Digest})
		}
		if err != nil {
			t.Fatalf("line %d: %v", i+1, err)
		}
		has[l.Fact.Name()] = true
	}
	for _, name := range FactNames() {
		if !has[name] {
			t.Errorf("the story has no %s: draw it anew with TINTLINE_STORY=1", name)
		}
	}
}

// storyEnd lists facts that can happen at the end of any journal of the generator; those that none of its entries has are
// entered there, so that the more kinds there are the seed is not the harder to find.
func storyEnd() []Fact {
	const far = "2026-01-02"
	return []Fact{
		&Signed{Lawn: "L1", What: SignsUp, Count: 2, Hours: Known(24.0)},
		&Told{Lawn: "L1", Whom: ToldCustomer, How: ByPaper, Result: ToldReached, For: far},
		&Recorded{Field: "target", Value: "dandelion"}, &Cleaned{What: Strainers}, &Fitted{Applicator: "gun", Tip: "blue"}, &Resumed{"it dropped"},
		&Neighbour{Lawn: "L1", NeighbourName: "Over the Way", Phone: "555-0118", Register: OwnRequest},
		&Paid{What: PaidFuel, Amount: Known(measure.Money(6240)), Fuel: Known(18 * measure.USGallon)},
		&Invested{Thing: "rig", Cost: Known(measure.Money(4_800_000)), Date: far, Earns: EarnsAll},
	}
}

// writeStory takes the first seed whose journal has all kinds. Actions are of one to three entries.
func writeStory(t *testing.T) {
	t.Helper()
	draw := rapid.Custom(func(t *rapid.T) []Entry {
		r := anyJournal(t, 900)
		for _, f := range storyEnd() {
			if r.counts[f.Name()] == 0 {
				at := r.book.LastAt()
				at.Unix += 60
				r.enter(t, f, at)
			}
		}
		return r.entries
	})
	for seed := range 4000 {
		entries := draw.Example(seed)
		has := map[string]bool{}
		for _, e := range entries {
			has[e.What.Name()] = true
		}
		if len(has) < len(FactNames()) {
			continue
		}
		var out []byte
		action := 0
		for i, e := range entries {
			if i%4 != 2 && i%7 != 6 {
				action++
			}
			e.Action = fmt.Sprintf("story-%03d", action)
			out = append(append(out, EncodeLine(e, 0)...), '\n')
		}
		if err := os.MkdirAll(filepath.Dir(storyPath), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(storyPath, out, 0o644); err != nil {
			t.Fatal(err)
		}
		t.Logf("seed %d: %d entries in %d actions", seed, len(entries), action)
		return
	}
	t.Fatal("no seed has every fact")
}
