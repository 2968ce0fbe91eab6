package main

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// demoBook opens a book of the demo that can be written.
func demoBook(t *testing.T) *keptBook {
	t.Helper()
	path := filepath.Join(t.TempDir(), "book.db")
	if code, _, err := call(t, "", "demo", "--make", path); code != 0 {
		t.Fatal(err)
	}
	k, err := openBook(path, false)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = k.Close() })
	return k
}

func (k *keptBook) noted(t *testing.T, action, text string) []core.Entry {
	t.Helper()
	es, err := k.book.Prepare(action, k.book.LastAt(), &core.Noted{Lawn: k.book.Lawns()[0].LawnName, Text: text})
	if err != nil {
		t.Fatal(err)
	}
	return es
}

// TestTriedAgainWhenTheFileIsBack: while the file is away or another one stands in its place nothing is written; when it
// is back the same action is kept, once.
func TestTriedAgainWhenTheFileIsBack(t *testing.T) {
	for name, instead := range map[string]func(path, copied string) error{
		"away":            func(string, string) error { return nil },
		"an older copy":   func(path, copied string) error { return os.Rename(copied, path) },
		"an empty file":   func(path, _ string) error { return os.WriteFile(path, nil, 0o600) },
		"another's file":  func(path, _ string) error { return os.WriteFile(path, []byte("shopping list\n"), 0o600) },
		"a folder of it":  func(path, _ string) error { return os.Mkdir(path, 0o755) },
		"the demo's book": func(path, _ string) error { _, _, err := call(t, "", "demo", "--make", path); return asError(err) },
	} {
		t.Run(name, func(t *testing.T) {
			k := demoBook(t)
			copied, moved := k.path+".copied", k.path+".moved"
			b, err := os.ReadFile(k.path)
			if err == nil {
				err = os.WriteFile(copied, b, 0o600)
			}
			if err != nil {
				t.Fatal(err)
			}
			if err := k.write("first", k.noted(t, "first", "a")); err != nil {
				t.Fatal(err)
			}
			if err := errors.Join(os.Rename(k.path, moved), instead(k.path, copied)); err != nil {
				t.Fatal(err)
			}
			es := k.noted(t, "second", "b")
			for range 3 {
				if err := k.Append("second", es); !errors.Is(err, store.ErrGone) {
					t.Fatalf("kept, or refused as %v", err)
				}
			}
			if err := errors.Join(os.RemoveAll(k.path), os.Rename(moved, k.path)); err != nil {
				t.Fatal(err)
			}
			for range 2 {
				if err := k.Append("second", es); err != nil {
					t.Fatal(err)
				}
			}
			if last, err := k.file().Last(); last != es[0].Seq || err != nil {
				t.Errorf("the last entry is %d, not %d; %v", last, es[0].Seq, err)
			}
		})
	}
}

func asError(text string) error {
	if text == "" {
		return nil
	}
	return errors.New(text)
}

// TestAnotherBookIsKnown: a file that is whole and of the same make is not taken for this book.
func TestAnotherBookIsKnown(t *testing.T) {
	k := demoBook(t)
	if err := k.stillThisBook(k.file()); err != nil {
		t.Errorf("the book itself: %v", err)
	}
	ahead := keptBook{path: k.path, id: k.id, book: k.book}
	ahead.held.put(k.file())
	ahead.book = k.book.Clone()
	if err := ahead.book.Apply(k.noted(t, "x", "y")[0]); err != nil {
		t.Fatal(err)
	}
	other := keptBook{path: k.path, id: k.id, book: k.book}
	other.held.put(k.file())
	other.id = "another"
	for name, k := range map[string]*keptBook{"an older copy": &ahead, "another book": &other} {
		if err := k.stillThisBook(k.file()); err == nil || !strings.Contains(err.Error(), "is not the book that was open") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
