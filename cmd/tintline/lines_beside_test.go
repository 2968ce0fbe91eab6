package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/tintline/store"
)

// ownBook is a book of so many notes that is not the demo's, with the lines beside it.
func ownBook(t *testing.T, entries int) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "truck.db")
	code, journal, said := call(t, "", "demo", "--make", path+".demo")
	if code == 0 {
		code, journal, said = call(t, "", "journal", "--json", "--book", path+".demo")
	}
	if code == 0 {
		code, _, said = call(t, firstLines(journal, entries), "enter", "-", "--book", path)
	}
	if code != 0 {
		t.Fatal(said)
	}
	if err := os.Remove(path + ".demo"); err != nil {
		t.Fatal(err)
	}
	return path
}

func firstLines(text string, n int) string {
	lines := strings.SplitAfter(text, "\n")
	return strings.Join(lines[:min(n, len(lines))], "")
}

// journalOf is what a book prints as its lines.
func journalOf(t *testing.T, path string) string {
	t.Helper()
	code, out, said := call(t, "", "journal", "--json", "--book", path)
	if code != 0 {
		t.Fatal(said)
	}
	return out
}

func wantLines(t *testing.T, path, want string) {
	t.Helper()
	b, err := os.ReadFile(linesPath(path))
	if err != nil || string(b) != want {
		t.Errorf("the lines are\n%s\nnot\n%s(%v)", b, want, err)
	}
}

func reopened(t *testing.T, path string) *keptBook {
	t.Helper()
	k, err := openBook(path, false)
	if err != nil {
		t.Fatal(err)
	}
	return k
}

// TestLinesAreMended: whatever is missing at the end of the lines is there after the next start.
func TestLinesAreMended(t *testing.T) {
	path := ownBook(t, 40)
	all := journalOf(t, path)
	wantLines(t, path, all)
	for name, text := range map[string]string{
		"whole":              all,
		"a gap":              firstLines(all, 33),
		"torn":               all[:len(all)-40],
		"torn in the middle": all[:len(firstLines(all, 20))+10],
		"no newline":         all[:len(all)-1],
		"one line":           firstLines(all, 1),
		"half a line":        all[:30],
		"nothing":            "",
	} {
		t.Run(name, func(t *testing.T) {
			if err := os.WriteFile(linesPath(path), []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
			k := reopened(t, path)
			wantLines(t, path, all)
			if says := k.attendant.says(); len(says) > 0 {
				t.Errorf("it says %q", says)
			}
			_ = k.Close()
		})
	}
	t.Run("none", func(t *testing.T) {
		_ = os.Remove(linesPath(path))
		_ = reopened(t, path).Close()
		wantLines(t, path, all)
	})
}

// TestLinesGiveBack: entries that the book has lost, as a damaged head loses the last action, come back from the lines.
func TestLinesGiveBack(t *testing.T) {
	path := ownBook(t, 40)
	all := journalOf(t, path)
	short := filepath.Join(t.TempDir(), "truck.db")
	if code, _, said := call(t, firstLines(all, 37), "replay", "-", "--book", short); code != 0 {
		t.Fatal(said)
	}
	if err := os.WriteFile(linesPath(short), []byte(all+`{"seq":41,"fact":"torn`), 0o600); err != nil {
		t.Fatal(err)
	}
	k := reopened(t, short)
	if says := fmt.Sprint(k.attendant.says()); !strings.Contains(says, "The file had lost its last 3 entries; they were taken back") {
		t.Errorf("it says %s", says)
	}
	if k.book.Seq() != 40 {
		t.Errorf("the book has %d entries", k.book.Seq())
	}
	_ = k.Close()
	if got := journalOf(t, short); got != all {
		t.Error("the journal is another one")
	}
	wantLines(t, short, all)
}

// TestLinesOfAnotherBook are set aside and kept.
func TestLinesOfAnotherBook(t *testing.T) {
	path := ownBook(t, 12)
	all := journalOf(t, path)
	other := filepath.Join(t.TempDir(), "other.db")
	if code, _, said := call(t, `{"fact":"setting","name":"wind_ask_mph","value":"7"}`+"\n", "enter", "-", "--book", other); code != 0 {
		t.Fatal(said)
	}
	foreign := journalOf(t, other)
	for name, text := range map[string]string{
		"as long":       firstLines(foreign, 1),
		"longer":        strings.Replace(all, `"seq":12,`, `"seq":13,`, 1),
		"no lines":      "shopping list\n",
		"lines of none": `{"fact":"gauge_read","compartment":"a","volume_gal":3}` + "\n",
	} {
		t.Run(name, func(t *testing.T) {
			if err := os.WriteFile(linesPath(path), []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
			k := reopened(t, path)
			says := k.attendant.says()
			_ = k.Close()
			if len(says) != 1 || !strings.Contains(says[0], "did not belong to it") {
				t.Fatalf("it says %q", says)
			}
			wantLines(t, path, all)
			_, aside, _ := strings.Cut(says[0], "they stand in ")
			aside = strings.TrimSuffix(aside, " now.")
			if b, err := os.ReadFile(aside); err != nil || string(b) != text {
				t.Errorf("%s holds %q, %v", aside, b, err)
			}
			if journalOf(t, path) != all {
				t.Error("the book has changed")
			}
		})
	}
}

// TestLinesThatCannotBeWritten hold up nothing, are said, and are made good when they can be.
func TestLinesThatCannotBeWritten(t *testing.T) {
	path := ownBook(t, 40)
	lines := linesPath(path)
	was, err := os.ReadFile(lines)
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(os.Remove(lines), os.Symlink("/no/such/folder/lines", lines)); err != nil {
		t.Fatal(err)
	}
	k := reopened(t, path)
	for i := range 3 {
		id := fmt.Sprint("n", i)
		if err := k.write(id, k.noted(t, id, "x")); err != nil {
			t.Fatal(err)
		}
	}
	says := k.attendant.says()
	if len(says) != 1 || !strings.Contains(says[0], "could not be written") {
		t.Errorf("it says %q", says)
	}
	if err := errors.Join(os.Remove(lines), os.WriteFile(lines, was, 0o600)); err != nil {
		t.Fatal(err)
	}
	_ = k.Close()
	k = reopened(t, path)
	if err := k.write("last", k.noted(t, "last", "y")); err != nil {
		t.Fatal(err)
	}
	_ = k.Close()
	wantLines(t, path, journalOf(t, path))
}

// TestRescued: a book that has lost its name while it is open is saved beside it, once; brought back from there, the same
// action is kept.
func TestRescued(t *testing.T) {
	for name, instead := range map[string]func(path string) error{
		"deleted":        func(string) error { return nil },
		"another's file": func(path string) error { return os.WriteFile(path, []byte("shopping list\n"), 0o600) },
	} {
		t.Run(name, func(t *testing.T) {
			path := ownBook(t, 40)
			k := reopened(t, path)
			if err := k.write("first", k.noted(t, "first", "a")); err != nil {
				t.Fatal(err)
			}
			if err := errors.Join(os.Remove(path), instead(path)); err != nil {
				t.Fatal(err)
			}
			es := k.noted(t, "second", "b")
			var saved string
			for range 3 {
				err := k.Append("second", es)
				if !errors.Is(err, store.ErrGone) {
					t.Fatalf("kept, or refused as %v", err)
				}
				f := explain(err)
				list, _ := filepath.Glob(path + ".*.saved")
				if len(list) != 1 || !strings.Contains(f.what, list[0]) || !strings.Contains(f.do, restoreCommand(list[0], path)) {
					t.Fatalf("%v; %s %s", list, f.what, f.do)
				}
				saved = list[0]
			}
			if code, out, said := call(t, "", "restore", saved, "--book", path); code != 0 {
				t.Fatal(out, said)
			}
			for range 2 {
				if err := k.Append("second", es); err != nil {
					t.Fatal(err)
				}
			}
			if err := k.book.Apply(es[0]); err != nil {
				t.Fatal(err)
			}
			_ = k.Close()
			wantLines(t, path, journalOf(t, path))
			if k := reopened(t, path); k.book.Digest() != es[0].Digest {
				t.Error("the last entry is another one")
			} else {
				_ = k.Close()
			}
		})
	}
}

// TestSavedNowhere: where nothing can be saved either, that is said too.
func TestSavedNowhere(t *testing.T) {
	k := reopened(t, ownBook(t, 40))
	if err := os.RemoveAll(filepath.Dir(k.path)); err != nil {
		t.Fatal(err)
	}
	err := k.Append("x", k.noted(t, "x", "y"))
	if f := explain(err); !errors.Is(err, store.ErrGone) || !strings.Contains(f.what, "could not be saved beside it") {
		t.Errorf("%v", err)
	}
	_ = k.file().Close()
}

// TestOldLinesStay: lines that cannot be begun anew after a copy stay as they are, and go on.
func TestOldLinesStay(t *testing.T) {
	path := ownBook(t, 40)
	all := journalOf(t, path)
	k := reopened(t, path)
	inTheWay := linesPath(path) + ".new"
	if err := os.MkdirAll(filepath.Join(inTheWay, "x"), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := k.attendant.lines.renew(k.file(), 30); err == nil || k.attendant.lines.trouble() == nil {
		t.Fatal("nothing is said")
	}
	wantLines(t, path, all)
	if err := k.write("next", k.noted(t, "next", "a")); err != nil {
		t.Fatal(err)
	}
	all = string(mustBytes(t, linesPath(path)))
	if err := os.RemoveAll(inTheWay); err != nil {
		t.Fatal(err)
	}
	if err := k.attendant.lines.renew(k.file(), 30); err != nil || k.attendant.lines.trouble() != nil {
		t.Fatal(err)
	}
	wantLines(t, path, strings.TrimPrefix(all, firstLines(all, 30)))
	if n := k.attendant.lines.count(); n != 11 {
		t.Errorf("%d lines", n)
	}
	if err := k.attendant.lines.renew(k.file(), 41); err != nil || k.attendant.lines.count() != 0 || k.attendant.lines.begins() != 42 {
		t.Error(err, k.attendant.lines.count(), k.attendant.lines.begins())
	}
	wantLines(t, path, "")
	if err := k.Close(); err != nil {
		t.Fatal(err)
	}
	if all != journalOf(t, path) {
		t.Error("what was booked meanwhile is not among them")
	}
}

// TestShellWord: a command that is shown can be typed as it stands.
func TestShellWord(t *testing.T) {
	for in, want := range map[string]string{
		"/a/b.db": "/a/b.db", "my truck.db": "'my truck.db'", "it's": `'it'\''s'`, "": "''", "$x": "'$x'", "~": "'~'",
	} {
		if got := shellWord(in); got != want {
			t.Errorf("%s becomes %s, not %s", in, got, want)
		}
	}
}
