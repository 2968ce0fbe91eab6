package core

import (
	"bytes"
	"fmt"
	"reflect"
	"testing"

	"pgregory.net/rapid"
)

// differs finds the first place in which two values differ, unexported fields too. A list without elements is one that
// is not there. The history of a zone is compared as it reads.
func differs(a, b reflect.Value, at string) string {
	if z, ok := histories(a, b); ok {
		return z
	}
	switch a.Kind() {
	case reflect.Pointer:
		if a.IsNil() || b.IsNil() {
			if a.IsNil() != b.IsNil() {
				return at
			}
			return ""
		}
		return differs(a.Elem(), b.Elem(), at)
	case reflect.Struct:
		for i := range a.NumField() {
			if d := differs(a.Field(i), b.Field(i), at+"."+a.Type().Field(i).Name); d != "" {
				return d
			}
		}
	case reflect.Slice, reflect.Array:
		if a.Len() != b.Len() {
			return fmt.Sprintf("%s: %d and %d", at, a.Len(), b.Len())
		}
		for i := range a.Len() {
			if d := differs(a.Index(i), b.Index(i), fmt.Sprintf("%s[%d]", at, i)); d != "" {
				return d
			}
		}
	case reflect.Map:
		if a.Len() != b.Len() {
			return at
		}
		for _, k := range a.MapKeys() {
			if v := b.MapIndex(k); !v.IsValid() {
				return fmt.Sprintf("%s[%v]", at, k)
			} else if d := differs(a.MapIndex(k), v, fmt.Sprintf("%s[%v]", at, k)); d != "" {
				return d
			}
		}
	default:
		if !a.Equal(b) {
			return fmt.Sprintf("%s: %v and %v", at, a, b)
		}
	}
	return ""
}

func histories(a, b reflect.Value) (string, bool) {
	if a.Type() != reflect.TypeFor[zoneHistory]() {
		return "", false
	}
	x, y := (*zoneHistory)(a.Addr().UnsafePointer()), (*zoneHistory)(b.Addr().UnsafePointer())
	var one, other [][]Went
	for laid := range x.newest() {
		one = append(one, laid)
	}
	for laid := range y.newest() {
		other = append(other, laid)
	}
	if x.zone != y.zone || x.from != y.from || !reflect.DeepEqual(one, other) {
		return fmt.Sprintf("%s: %v and %v", x.zone, one, other), true
	}
	return "", true
}

func sameState(t rapid.TB, what string, a, b *state) {
	t.Helper()
	if d := differs(reflect.ValueOf(a), reflect.ValueOf(b), "state"); d != "" {
		t.Fatalf("%s: they differ in %s", what, d)
	}
	if x, y := a.StateDigest(), b.StateDigest(); x != y {
		t.Fatalf("%s: the digests are %s and %s", what, x, y)
	}
}

// resumed takes a book up again from its snapshot.
func resumed(t rapid.TB, b *Book) *Book {
	t.Helper()
	kept := b.Keep()
	back, err := Resume(kept)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(back.Keep(), kept) || !bytes.Equal(b.Keep(), kept) {
		t.Fatal("the same book is kept in two ways")
	}
	at := b.LastClose()
	if back.mark != at.mark || back.LastClose().mark != at.mark || len(back.since) != 0 {
		t.Fatalf("it was closed at %+v and goes on at %+v", at.mark, back.mark)
	}
	sameState(t, "at the close", at.state, &back.state)
	sameState(t, "to strike from", at.state, back.base.state)
	return back
}

// TestResumedBookIsTheFoldedOne: at every close a book is taken up from its snapshot, and goes on beside the folded one.
func TestResumedBookIsTheFoldedOne(t *testing.T) {
	closes, strikes := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		r := anyJournal(t, facts())
		whole, back := NewBook(1), NewBook(1)
		every := rapid.IntRange(1, 4).Draw(t, "every")
		for n, e := range r.entries {
			if n%25 == 0 {
				if answers, more := answersOf(whole), answersOf(back); answers != more {
					t.Fatalf("before entry %d the folded book answers\n%s\nand the resumed one\n%s", e.Seq, answers, more)
				}
			}
			was := whole.LastClose().Seq()
			if _, strike := e.What.(*Struck); strike {
				strikes++
			}
			for _, b := range []*Book{whole, back} {
				if err := b.Apply(e); err != nil {
					t.Fatalf("entry %d: %v", e.Seq, err)
				}
			}
			if whole.mark != back.mark || whole.StateDigest() != back.StateDigest() {
				t.Fatalf("after entry %d (%s) the resumed book says something else", e.Seq, e.What.Name())
			}
			if whole.LastClose().Seq() != was {
				closes++
				if closes%every == 0 {
					back = resumed(t, whole)
					tail(t, back, whole, r.entries[:n+1])
				}
			}
		}
		sameState(t, "at the end", &whole.state, &back.state)
		sameState(t, "to strike from", whole.base.state, back.base.state)
		if !bytes.Equal(whole.Keep(), back.Keep()) {
			t.Fatal("the resumed book is kept in another way")
		}
	})
	if closes < 100 || strikes < 100 {
		t.Errorf("only %d closes and %d strikes", closes, strikes)
	}
}

// tail brings a resumed book to where the folded one is.
func tail(t rapid.TB, back, whole *Book, entries []Entry) {
	t.Helper()
	for _, e := range entries[back.Seq():] {
		if err := back.Apply(e); err != nil {
			t.Fatalf("entry %d: %v", e.Seq, err)
		}
	}
	if back.mark != whole.mark {
		t.Fatal("the tail does not lead to the same entry")
	}
}

// answersOf is what a book says when it is asked to enter this and that.
func answersOf(b *Book) string {
	out := ""
	at := Moment{Unix: b.LastAt().Unix + 60}
	for _, f := range []Fact{
		&DayOpened{Date: "2031-01-01", Operator: "R. Example"}, &DayClosed{Overnight: "left in"}, &Sprayed{Lawn: "L1", Applicator: "gun"},
		&Struck{Of: int64(b.Seq()), Reason: "slip"}, &Struck{Of: int64(b.LastClose().Seq()), Reason: "slip"}, &VisitBegun{Lawn: "L2"},
		&Loaded{Into: "b", Volume: 1e9, Mix: "W", For: "gun"}, &Fitted{Applicator: "gun", Tip: "blue"}, &TintSeen{},
	} {
		es, err := b.Prepare("a", at, f)
		if err != nil {
			out += err.Error() + "\n"
			continue
		}
		out += es[0].Digest.String() + fmt.Sprintf(" %q\n", es[0].Keys)
	}
	for _, l := range b.Lawns() {
		for _, z := range l.Zones {
			out += fmt.Sprintln(l.LawnName, z.Name, b.History(l.LawnName, z.Name), b.ZoneKnownSince(l.LawnName, z.Name))
		}
	}
	return out
}
