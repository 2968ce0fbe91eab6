package store

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// oldBook copies a real file of format 1 to a folder of its own.
func oldBook(t testing.TB, name string) string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	path := newPath(t)
	if err := os.WriteFile(path, b, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestFormat1IsReadAsBefore(t *testing.T) {
	for name, n := range map[string]int{"format1.book": 22, "format1-large.book": 249} {
		path := oldBook(t, name)
		before, _ := os.ReadFile(path)
		_, err := Open(path, Options{})
		wantKind(t, err, ErrOlder)
		s := opened(t, path, Options{ReadOnly: true})
		if m := s.Meta(); m.Format != 1 || m.BookID != "format-1" {
			t.Errorf("meta %+v", m)
		}
		wantKind(t, s.Rows(nil, nil, nil), ErrNoRows)
		c := mustRead(t, s)
		if len(c.Records) != n || c.At != 10 || string(c.Snap) != "snapshot" {
			t.Errorf("%d records, snapshot %q at %d", len(c.Records), c.Snap, c.At)
		}
		first, last := c.Records[0], c.Records[n-1]
		if string(first.Body) != "body 0" || first.Action != strings.Repeat("0", 32) || string(first.Keys[1]) != "lawn/0" {
			t.Errorf("first record %+v", first)
		}
		if a, ok, err := s.Find("last"); !ok || err != nil || a.First != last.Number {
			t.Errorf("Find: %+v, %v, %v", a, ok, err)
		}
		if _, ok, err := s.Find("none"); ok || err != nil {
			t.Errorf("Find: %v, %v", ok, err)
		}
		if !strings.HasPrefix(c.Keys[0], "a\x00b\x00") || len(c.Keys) < n {
			t.Errorf("%d rows of keys, first %q", len(c.Keys), c.Keys[0])
		}
		if err := s.Check(); err != nil {
			t.Error(err)
		}
		_ = s.Close()
		if after, _ := os.ReadFile(path); string(after) != string(before) {
			t.Error("reading changed the file")
		}
	}
}

// copyOf appends what the old file holds.
func copyOf(old *Store, add func(string, []Item) error) error {
	var items []Item
	action := ""
	flush := func() error {
		if action == "" {
			return nil
		}
		return add(action, items)
	}
	err := old.Each(1, func(r Record) error {
		if r.Action != action {
			if err := flush(); err != nil {
				return err
			}
			action, items = r.Action, nil
		}
		items = append(items, withRows(Item{Body: r.Body, Keys: r.Keys}, "row", string(r.Body)))
		return nil
	})
	return errors.Join(err, flush())
}

func TestReplaceBringsFormat1ToThePresent(t *testing.T) {
	for _, name := range []string{"format1.book", "format1-large.book"} {
		path := oldBook(t, name)
		before, _ := os.ReadFile(path)
		was := opened(t, path, Options{ReadOnly: true})
		old := mustRead(t, was)
		_ = was.Close()
		keep := path + ".format-1"
		err := ReplaceWith(path, keep, "same", Options{}, func(old *Store, add func(string, []Item) error) error {
			for _, o := range []Options{{}, {ReadOnly: true}} {
				_, err := Open(path, o)
				wantKind(t, err, ErrBusy)
			}
			return copyOf(old, add)
		})
		if err != nil {
			t.Fatal(err)
		}
		noLeftovers(t, filepath.Dir(path), filepath.Base(path), filepath.Base(keep))
		if kept, _ := os.ReadFile(keep); string(kept) != string(before) {
			t.Error("the old file was changed")
		}
		s := opened(t, path, Options{})
		c := mustRead(t, s)
		old.At, old.Snap, old.HasSnap, old.Rows = 0, nil, false, c.Rows
		if !same(c, old) {
			t.Error("contents differ")
		}
		if a := put(t, s, "last", item("again")); !a.Repeated {
			t.Error("an old action is not recognised")
		}
		put(t, s, "new", item("x", "zz"))
	}
}

func TestReplaceOverwritesNothing(t *testing.T) {
	path := oldBook(t, "format1.book")
	before, _ := os.ReadFile(path)
	keep := path + ".keep"
	if err := os.WriteFile(keep, []byte("someone else's"), 0o600); err != nil {
		t.Fatal(err)
	}
	fill := func(old *Store, add func(string, []Item) error) error { return copyOf(old, add) }
	wantKind(t, ReplaceWith(path, keep, "x", Options{}, fill), ErrExists)
	_ = os.Remove(keep)
	wantKind(t, ReplaceWith(path, keep, "x", Options{}, func(old *Store, add func(string, []Item) error) error {
		return errors.Join(copyOf(old, add), os.WriteFile(keep, []byte("someone else's"), 0o600))
	}), ErrExists)
	if b, _ := os.ReadFile(keep); string(b) != "someone else's" {
		t.Errorf("the other file is now %q", b)
	}
	_ = os.Remove(keep)
	mine := errors.New("mine")
	if err := ReplaceWith(path, keep, "x", Options{}, func(*Store, func(string, []Item) error) error { return mine }); !errors.Is(err, mine) {
		t.Errorf("error %v", err)
	}
	if b, _ := os.ReadFile(path); string(b) != string(before) {
		t.Error("the file at the path was changed")
	}
	noLeftovers(t, filepath.Dir(path), filepath.Base(path))

	s := made(t)
	wantKind(t, ReplaceWith(s.Path(), s.Path()+".k", "x", Options{}, fill), ErrBusy)
}

func TestReplaceWhatCannotBeRead(t *testing.T) {
	for name, spoil := range map[string]func(path string) error{
		"missing": os.Remove,
		"empty":   func(p string) error { return os.Truncate(p, 0) },
		"cut":     func(p string) error { return os.Truncate(p, 5*pageSize) },
		"letters": func(p string) error { return os.WriteFile(p, []byte("letters"), 0o600) },
	} {
		path := oldBook(t, "format1.book")
		if err := spoil(path); err != nil {
			t.Fatal(err)
		}
		before, _ := os.ReadFile(path)
		keep := path + ".keep"
		if err := ReplaceWith(path, keep, "x", Options{}, func(old *Store, add func(string, []Item) error) error {
			if old != nil {
				t.Errorf("%s: it can be read", name)
			}
			return add("a", []Item{item("x")})
		}); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if kept, err := os.ReadFile(keep); name != "missing" && (err != nil || string(kept) != string(before)) {
			t.Errorf("%s: what was there is now %q, %v", name, kept, err)
		}
		opened(t, path, Options{})
	}
}

func TestReplaceWithoutLinks(t *testing.T) {
	dir := quickDir(t)
	a, b := filepath.Join(dir, "a"), filepath.Join(dir, "b")
	if err := os.WriteFile(a, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := copyNew(a, b); err != nil {
		t.Fatal(err)
	}
	wantKind(t, copyNew(a, b), ErrExists)
	if got, _ := os.ReadFile(b); string(got) != "old" {
		t.Errorf("the copy holds %q", got)
	}
}

// TestReplaceTidiesUpAfterOneThatWasKilled: what it was building is removed by the next one.
func TestReplaceTidiesUpAfterOneThatWasKilled(t *testing.T) {
	path := oldBook(t, "format1.book")
	left := temporaryOf(path, true)
	if err := os.WriteFile(left, []byte("half a file"), 0o600); err != nil {
		t.Fatal(err)
	}
	keep := path + ".format-1"
	fill := func(old *Store, add func(string, []Item) error) error { return copyOf(old, add) }
	if err := ReplaceWith(path, keep, "same", Options{}, fill); err != nil {
		t.Fatal(err)
	}
	noLeftovers(t, filepath.Dir(path), filepath.Base(path), filepath.Base(keep))
}
