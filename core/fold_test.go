package core

import (
	"reflect"
	"testing"

	"pgregory.net/rapid"
)

// TestFoldIsApply: a journal that is added with its strikes known before comes to what it comes to entry by entry, at
// any point of it.
func TestFoldIsApply(t *testing.T) {
	strikes, behind := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		r := anyJournal(t, facts())
		one, all := NewBook(1), NewBook(1)
		f := NewFold(all)
		for _, e := range r.entries {
			if _, strike := e.What.(*Struck); strike {
				strikes++
			}
			if err := one.Apply(e); err != nil {
				t.Fatal(err)
			}
			if err := f.Add(e); err != nil {
				t.Fatal(err)
			}
			if rapid.IntRange(0, 40).Draw(t, "look") == 0 {
				f.End()
				sameBook(t, one, all)
			} else if f.strikes {
				behind++
			}
		}
		f.End()
		sameBook(t, one, all)
	})
	if strikes < 100 || behind < 100 {
		t.Errorf("only %d strikes, %d times one waited", strikes, behind)
	}
}

func sameBook(t rapid.TB, a, b *Book) {
	t.Helper()
	sameState(t, "now", &a.state, &b.state)
	sameState(t, "to strike from", a.base.state, b.base.state)
	if a.mark != b.mark || a.base.mark != b.base.mark {
		t.Fatalf("the marks are %+v and %+v, at the close %+v and %+v", a.mark, b.mark, a.base.mark, b.base.mark)
	}
	if d := differs(reflect.ValueOf(a.since), reflect.ValueOf(b.since), "since"); d != "" {
		t.Fatalf("they differ in %s", d)
	}
}

// TestFoldRefusesWhatDoesNotFollow as Apply does, and then has what came before.
func TestFoldRefusesWhatDoesNotFollow(t *testing.T) {
	es := seasonJournal(t, 1, 4)
	b := NewBook(1)
	f := NewFold(b)
	for _, e := range es[:20] {
		if err := f.Add(e); err != nil {
			t.Fatal(err)
		}
	}
	changed := es[20]
	changed.At.Unix++
	for _, e := range []Entry{es[21], changed, {Seq: 21}} {
		if f.Add(e) == nil {
			t.Errorf("entry %d was taken", e.Seq)
		}
	}
	f.End()
	if b.Seq() != 20 || len(b.Since()) != 20 {
		t.Errorf("the book is at %d with %d entries", b.Seq(), len(b.Since()))
	}
}
