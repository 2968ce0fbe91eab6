package main

import (
	"fmt"
	"path/filepath"
	"testing"

	"example.com/tintline/core"
)

// TestHistoryIsReadFromTheFile: the last entries, those before a number, and those about a lawn with the strikes that
// are about it, newest first.
func TestHistoryIsReadFromTheFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.db")
	if code, _, err := call(t, "", "demo", "--make", path); code != 0 {
		t.Fatal(err)
	}
	k, err := openBook(path, false)
	if err != nil {
		t.Fatal(err)
	}
	defer func() {
		if err := k.Close(); err != nil {
			t.Error(err)
		}
	}()
	j, at := screenJournal{k}, k.book.LastAt()
	log := func(f core.Fact) int64 {
		t.Helper()
		es, err := k.book.Prepare(fmt.Sprint("act", k.book.Seq()), at, f)
		if err == nil {
			err = j.Append(es[0].Action, es)
		}
		if err == nil {
			err = k.book.Apply(es[0])
		}
		if err != nil {
			t.Fatal(err)
		}
		return int64(es[0].Seq)
	}
	lawns := k.book.Lawns()
	one, two, three := lawns[0].LawnName, lawns[1].LawnName, lawns[2].LawnName
	note := log(&core.Noted{Lawn: one, Text: "a"})
	moved := log(&core.Struck{Of: note, Reason: "slip", Instead: &core.Noted{Lawn: two, Text: "a"}})
	also := []int64{log(&core.Noted{Lawn: one, Text: "b"}), log(&core.Noted{Lawn: three, Text: "c"})}
	many := log(&core.Struck{Of: moved, Also: also, Reason: "slip"})

	last, err := j.Last(0, 3)
	if err != nil || len(last) != 3 || int64(last[0].Seq) != many || int64(last[2].Seq) != also[0] {
		t.Errorf("the last three: %v, %v", numbers(last), err)
	}
	before, err := j.Last(3, 10)
	if err != nil || fmt.Sprint(numbers(before)) != "[2 1]" {
		t.Errorf("before the third: %v, %v", numbers(before), err)
	}
	of, err := j.OfLawn(one, 4)
	if want := []int64{many, also[0], moved, note}; err != nil || fmt.Sprint(numbers(of)) != fmt.Sprint(want) {
		t.Errorf("of %s: %v, not %v; %v", one, numbers(of), want, err)
	}
	marks := core.StruckIn(of)
	if marks[uint64(note)] != uint64(moved) || marks[uint64(also[0])] != uint64(many) {
		t.Errorf("struck: %v", marks)
	}
}

func numbers(list []core.Entry) []uint64 {
	var out []uint64
	for _, e := range list {
		out = append(out, e.Seq)
	}
	return out
}
