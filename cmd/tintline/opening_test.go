package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// closeAndOpen closes the book's day and opens the next, each an action of its own.
func closeAndOpen(t *testing.T, k *keptBook, name string) {
	t.Helper()
	next := core.Moment{Unix: k.book.LastAt().Unix + 86_400, Offset: k.book.LastAt().Offset}
	facts := []core.Fact{&core.DayOpened{Date: next.Date(), Operator: "R. Example"}}
	if k.book.Day().Open {
		facts = append([]core.Fact{&core.DayClosed{Overnight: "left in"}}, facts...)
	}
	for i, f := range facts {
		id := fmt.Sprint(name, i)
		es, err := k.book.Prepare(id, next, f)
		if err == nil {
			err = k.write(id, es)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
}

// opened opens a book for reading, from its snapshot if that fits and whole by the fold, and holds them to be the same.
func opened(t *testing.T, path string) (at uint64) {
	t.Helper()
	k, err := openBook(path, true)
	if err != nil {
		t.Fatal(err)
	}
	at = k.snapshot.at
	a, b := k.book, core.NewBook(newBookTruck)
	err = k.file().Each(1, func(r store.Record) error {
		e, err := core.Decode(r.Number, r.Action, r.Body)
		if err == nil {
			err = b.Apply(e)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if a.Seq() != b.Seq() || a.Digest() != b.Digest() || a.StateDigest() != b.StateDigest() || !bytes.Equal(a.Keep(), b.Keep()) {
		t.Errorf("the book opened from the snapshot at %d is not the folded one", at)
	}
	if err := k.Close(); err != nil {
		t.Fatal(err)
	}
	return at
}

func TestOpensFromTheSnapshotOfTheLastClose(t *testing.T) {
	k := demoBook(t)
	if at := openedCopy(t, k); at != k.book.LastClose().Seq() {
		t.Errorf("the book was made with a close at %d and has a snapshot at %d", k.book.LastClose().Seq(), at)
	}
	for i := range 3 {
		closeAndOpen(t, k, fmt.Sprint("day", i))
		if err := k.write(fmt.Sprint("note", i), k.noted(t, fmt.Sprint("note", i), "shut the gate")); err != nil {
			t.Fatal(err)
		}
		if at := openedCopy(t, k); at != k.book.Seq()-2 {
			t.Errorf("after entry %d the snapshot is at %d", k.book.Seq(), at)
		}
	}
}

// openedCopy opens the file of a book beside it, from a copy: the book itself holds the lock.
func openedCopy(t *testing.T, k *keptBook) uint64 {
	t.Helper()
	b, err := os.ReadFile(k.path)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "copy.db")
	if err := os.WriteFile(path, b, 0o600); err != nil {
		t.Fatal(err)
	}
	return opened(t, path)
}

// TestASnapshotThatDoesNotFitIsThrownAway: what is no snapshot, one of another form, and one of another journal, at
// whatever number they stand.
func TestASnapshotThatDoesNotFitIsThrownAway(t *testing.T) {
	k := demoBook(t)
	other := k.book.Clone()
	closeAndOpen(t, k, "day")
	right := k.book.Keep()
	es, err := other.Prepare("x", other.LastAt(), &core.DayClosed{Overnight: "somewhere else"})
	if err == nil {
		err = other.Apply(es[0])
	}
	if err != nil {
		t.Fatal(err)
	}
	if other.LastClose().Seq() != k.book.LastClose().Seq() {
		t.Fatal("the other book closed at another number")
	}
	at := k.book.LastClose().Seq()
	form, layout := bytes.Clone(right), bytes.Clone(right)
	form[0]++
	layout[3] ^= 1
	for name, row := range map[string]struct {
		at   uint64
		body []byte
		want uint64
	}{
		"right":                {at, right, at},
		"of another journal":   {at, other.Keep(), 0},
		"of another form":      {at, form, 0},
		"of another layout":    {at, layout, 0},
		"cut":                  {at, right[:len(right)/2], 0},
		"nothing":              {at, nil, 0},
		"at the entry before":  {at - 1, right, 0},
		"at the entry after":   {at + 1, right, 0},
		"of an empty book":     {0, core.NewBook(1).Keep(), 0},
		"rubbish":              {at, []byte("shopping list"), 0},
		"with something after": {at, append(bytes.Clone(right), 0), 0},
	} {
		if err := k.file().PutSnapshot(row.at, row.body); err != nil {
			t.Fatal(err)
		}
		if got := openedCopy(t, k); got != row.want {
			t.Errorf("%s: opened from the snapshot at %d, not %d", name, got, row.want)
		}
	}
	closeAndOpen(t, k, "next")
	if got := openedCopy(t, k); got != at+2 {
		t.Errorf("after the next close the snapshot is at %d", got)
	}
}

// TestTheScreenKeepsAClose: the snapshot of a close that the screen has brought is in the file at the latest when it ends.
func TestTheScreenKeepsAClose(t *testing.T) {
	k := demoBook(t)
	path := k.path
	es, err := k.book.Prepare("close", k.book.LastAt(), &core.DayClosed{Overnight: "left in"})
	if err != nil {
		t.Fatal(err)
	}
	if err := (screenJournal{k}).Append("close", es); err != nil {
		t.Fatal(err)
	}
	if k.book.Seq() != es[0].Seq-1 {
		t.Error("the screen's book was changed")
	}
	if err := k.Close(); err != nil {
		t.Fatal(err)
	}
	if at := opened(t, path); at != es[0].Seq {
		t.Errorf("the snapshot is at %d, not %d", at, es[0].Seq)
	}
}

// TestASnapshotThatFailsUndoesNothing: the action that closed the day is there, and the next one is written.
func TestASnapshotThatFailsUndoesNothing(t *testing.T) {
	k := demoBook(t)
	closeAndOpen(t, k, "day")
	if err := os.Rename(k.path, k.path+".away"); err != nil {
		t.Fatal(err)
	}
	k.snapshot.at = 0
	k.keepClose(k.file(), k.book.LastClose())
	if k.snapshot.at != 0 {
		t.Fatal("a snapshot was kept in a file that is away")
	}
	if err := os.Rename(k.path+".away", k.path); err != nil {
		t.Fatal(err)
	}
	if err := k.write("next", k.noted(t, "next", "shut the gate")); err != nil {
		t.Fatal(err)
	}
	last, err := k.file().Last()
	if err != nil || last != k.book.Seq() {
		t.Errorf("the last entry is %d, %v", last, err)
	}
	k.keepClose(k.file(), k.book.LastClose())
	if at := openedCopy(t, k); at != k.book.LastClose().Seq() {
		t.Errorf("the snapshot is at %d", at)
	}
}

// longBook is a book of many entries before its last close, without a snapshot.
func longBook(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "long.db")
	b := core.NewBook(newBookTruck)
	at := core.Moment{Unix: 1_780_000_000}
	facts := []core.Fact{&core.Lawn{LawnName: "77 Fir", Zones: []core.Zone{{Name: "front", Grass: "tall_fescue", Area: 1e9}}}, &core.DayOpened{Date: "2026-05-28", Operator: "R. Example"}}
	for range manyEntries {
		facts = append(facts, &core.Noted{Lawn: "77 Fir", Text: "shut the gate"})
	}
	err := store.CreateWith(path, "long", storeOptions(false), func(add func(string, []store.Item) error) error {
		es, err := b.Prepare("all", at, append(facts, &core.DayClosed{Overnight: "left in"})...)
		if err != nil {
			return err
		}
		return add("all", items(es))
	})
	if err != nil {
		t.Fatal(err)
	}
	return path
}

// TestReadingWritesNothing: a command that only reads adds up all, and the next one again; one that enters something
// keeps what the next start needs.
func TestReadingWritesNothing(t *testing.T) {
	path := longBook(t)
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"status"}, {"tally"}, {"journal"}, {"enter", "-"}} {
		if code, _, problem := call(t, "", append(args, "--book", path)...); code != 0 {
			t.Fatalf("%v: %s", args, problem)
		}
		if after, err := os.ReadFile(path); err != nil || !bytes.Equal(before, after) {
			t.Errorf("%v changed the file: %v", args, err)
		}
	}
	if at := opened(t, path); at != 0 {
		t.Errorf("there is a snapshot at %d", at)
	}
	if code, _, problem := call(t, `{"fact":"noted","lawn":"77 Fir","text":"dog"}`+"\n", "enter", "-", "--book", path); code != 0 {
		t.Fatal(problem)
	}
	if at := opened(t, path); at != manyEntries+3 {
		t.Errorf("the snapshot is at %d", at)
	}
	_, lines, _ := call(t, "", "journal", "--json", "--book", path)
	again := path + ".again"
	if code, _, problem := call(t, lines, "replay", "-", "--book", again); code != 0 {
		t.Fatal(problem)
	}
	if at := opened(t, again); at != manyEntries+3 {
		t.Errorf("the snapshot of a book made of lines is at %d", at)
	}
}

func TestAddingUpIsShownWhereItTakesLong(t *testing.T) {
	path := longBook(t)
	file, err := store.Open(path, storeOptions(true))
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = file.Close() }()
	var out bytes.Buffer
	now := time.Unix(1_780_000_000, 0)
	p := &progress{w: &out, doing: "adding up the book", begun: now, now: func() time.Time {
		now = now.Add(time.Second)
		return now
	}}
	k := &keptBook{path: path}
	k.held.put(file)
	if err := k.load(p); err != nil {
		t.Fatal(err)
	}
	if got := out.String(); !strings.HasPrefix(got, "\radding up the book:  51 %") || !strings.HasSuffix(got, " \r") {
		t.Errorf("shown was %q", got)
	}
	a := &app{stderr: &out}
	if a.flags.json = true; a.adding() != nil {
		t.Error("a program is shown how far it is")
	}
}
