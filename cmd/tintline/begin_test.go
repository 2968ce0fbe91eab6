package main

import (
	"errors"
	"path/filepath"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// TestBegunByTwo: two screens stand open where there is no book yet. The first action makes it; the other screen books
// nothing into it, neither while the first one runs nor after it has ended, and says that there is a file.
func TestBegunByTwo(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new", "book.db")
	open := func() *keptBook {
		k, err := openOrNew(path, nil)
		if err != nil {
			t.Fatal(err)
		}
		return k
	}
	entries := func(k *keptBook) []core.Entry {
		es, err := k.book.Prepare("begin", core.Moment{Unix: 1_790_000_000}, &core.Setting{SettingName: core.Theme, Value: "sun"})
		if err != nil {
			t.Fatal(err)
		}
		return es
	}
	one, other := open(), open()
	if err := one.write("one", entries(one)); err != nil {
		t.Fatal(err)
	}
	for _, code := range []int{exitBusy, exitCannot} { // while the first one runs, and after it
		err := screenJournal{other}.Append("other", entries(other))
		f := explain(err)
		if err == nil || !errors.Is(err, store.ErrExists) || f.code != code || !strings.Contains(f.what, "begun by another copy") {
			t.Errorf("the other one: %v, %+v", err, f)
		}
		if err := one.Close(); err != nil {
			t.Fatal(err)
		}
	}
	if k, err := openBook(path, true); err != nil || k.book.Seq() != 1 {
		t.Errorf("%v", err)
	} else {
		_ = k.Close()
	}
}

// TestWrittenToMeanwhile: who made the file and opens it a moment later may find entries of another copy in it; nothing is
// written on top of them.
func TestWrittenToMeanwhile(t *testing.T) {
	k := demoBook(t)
	stale := k.book.Clone()
	if err := k.write("first", k.noted(t, "first", "a")); err != nil {
		t.Fatal(err)
	}
	k.book = stale
	err := k.Append("second", k.noted(t, "second", "b"))
	if f := explain(err); err == nil || f.code != exitBusy || !strings.Contains(f.what, "wrote to the book") {
		t.Errorf("kept, or refused as %v", err)
	}
	if last, err := k.file().Last(); err != nil || last != stale.Seq()+1 {
		t.Errorf("%d entries, %v", last, err)
	}
}
