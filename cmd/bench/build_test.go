package main

import (
	"path/filepath"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

var small = plan{years: 2, days: 8, visits: 6, lawns: 20, changeovers: 4, seed: 3}

func builtBook(t testing.TB, p plan) (string, made) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "book.db")
	m, err := build(path, p)
	if err != nil {
		t.Fatal(err)
	}
	return path, m
}

// TestBuild: what was written folds from the file to the same book, every drop is somewhere, and each kind of entry
// that a day has is there.
func TestBuild(t *testing.T) {
	path, m := builtBook(t, small)
	if want := small.years * small.days; m.opened != want || m.calls != want*small.visits || int(m.book.Seq()) < 8*m.calls {
		t.Errorf("%d entries, %d days, %d visits", m.book.Seq(), m.opened, m.calls)
	}
	s, err := store.Open(path, store.Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	b := core.NewBook(1)
	if err := s.Each(1, func(r store.Record) error {
		e, err := core.Decode(r.Number, r.Action, r.Body)
		if err != nil {
			return err
		}
		return b.Apply(e)
	}); err != nil {
		t.Fatal(err)
	}
	if b.StateDigest() != m.book.StateDigest() || b.Digest() != m.book.Digest() {
		t.Errorf("folded: state %s, journal %s; built: %s, %s", b.StateDigest(), b.Digest(), m.book.StateDigest(), m.book.Digest())
	}
	if sum := b.Plumbing().Sum(); !sum.Empty() {
		t.Errorf("the sum over all places is %v", sum)
	}
	for _, kind := range []string{
		"rig", "product", "mix", "lawn", "day_opened", "load_planned", "ticked", "loaded", "lined_up", "pushed_back", "tint_seen",
		"visit_begun", "sprayed", "visit_done", "weather", "gauge_read", "noted", "ran", "spread", "day_closed",
	} {
		if m.kinds[kind] == 0 {
			t.Errorf("no %s in %v", kind, m.kinds)
		}
	}
}

// TestBuildAgain: the same seed gives the same book, another one another.
func TestBuildAgain(t *testing.T) {
	p := small
	p.years, p.days, p.open = 0, 1, true
	_, one := builtBook(t, p)
	_, two := builtBook(t, p)
	p.seed++
	_, other := builtBook(t, p)
	if one.book.Digest() != two.book.Digest() {
		t.Error("the same seed gave two books")
	}
	if one.book.Digest() == other.book.Digest() {
		t.Error("two seeds gave the same book")
	}
	if !one.book.Day().Open {
		t.Error("the last day is not open")
	}
}
