package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// TestABookMadeAnewIsBetrayedByWhatStandsBesideIt: a forger who knows the form changes an entry and makes every digest
// after it fit. The file is whole and its chain holds; its copy and its lines remember.
func TestABookMadeAnewIsBetrayedByWhatStandsBesideIt(t *testing.T) {
	path := workedBook(t)
	copied := copyPath(path, "2026-05-28")
	if code, _, err := call(t, "", "backup", copied, "--book", path); code != 0 {
		t.Fatal(err)
	}
	if code, v := verifyJSON(t, path); code != 0 || v.Copies != 1 || v.Lines == 0 {
		t.Fatalf("code %d, %+v", code, v)
	}
	_, entries := recordsOf(t, path)
	s, err := store.Open(path, storeOptions(true))
	if err != nil {
		t.Fatal(err)
	}
	id := s.Meta().BookID
	if err := errors.Join(s.Close(), os.Remove(path)); err != nil {
		t.Fatal(err)
	}
	b, before := core.NewBook(newBookTruck), core.Digest{}
	err = store.CreateWith(path, id, storeOptions(false), func(add func(string, []store.Item) error) error {
		for i, e := range entries {
			if e.Seq == 75 {
				f := *e.What.(*core.Sprayed)
				f.Volume.V /= 2
				e.What = &f
			}
			e = e.Sealed(before)
			before = e.Digest
			if c, ok := e.What.(*core.DayClosed); ok && e.Seq > 75 {
				f := *c
				f.Accounts = b.AccountsDigest().String()
				e.What = &f
				e = e.Sealed(b.Digest())
				before = e.Digest
			}
			on := &applying{b: b}
			e.Keys = b.Keys(e.What, e.At)
			if err := on.apply(e); err != nil {
				return err
			}
			if err := add(fmt.Sprint("action ", i), on.items([]core.Entry{e})); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	code, v := verifyJSON(t, path)
	if code != exitDamaged || len(v.Changed) != 1 || len(v.Damaged) != 0 || !strings.Contains(v.Changed[0].Says, "another than in the lines beside it") || len(v.CopiesDiffer) != 1 {
		t.Fatalf("code %d, %+v", code, v)
	}
	if err := os.Remove(linesPath(path)); err != nil {
		t.Fatal(err)
	}
	if code, out, _ := call(t, "", "verify", "--book", path); code != 0 || !strings.Contains(out, "book.db.2026-05-28.copy holds others") {
		t.Fatalf("code %d\n%s", code, out)
	}
}

// TestALostLastEntryIsMissedByTheLines: a damaged head takes the last action with it, and the lines know of it.
func TestALostLastEntryIsMissedByTheLines(t *testing.T) {
	path := workedBook(t)
	was, lines := mustBytes(t, path), []byte(nil)
	if code, _, err := call(t, reading, "enter", "-", "--book", path); code != 0 {
		t.Fatal(err)
	}
	lines = mustBytes(t, linesPath(path))
	for p, b := range map[string][]byte{path: was, linesPath(path): lines} {
		if err := os.WriteFile(p, b, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	code, v := verifyJSON(t, path)
	if code != exitDamaged || len(v.Damaged) != 1 || !strings.Contains(v.Damaged[0].Says, "The book ends at entry 87 and the lines beside it go on to entry 88") {
		t.Fatalf("code %d, %+v", code, v)
	}
}

// buildOther makes a book of what another holds, with two rows spoilt or with so many rows that no day has.
func buildOther(t *testing.T, other string, all everything, spoil bool, more int, snapshot []byte) {
	t.Helper()
	_ = os.Remove(other)
	err := store.CreateWith(other, "other", storeOptions(false), func(add func(string, []store.Item) error) error {
		for i, r := range all.Records {
			it := store.Item{Body: r.Body, Keys: r.Keys}
			if i == len(all.Records)-1 {
				for n, row := range all.Rows {
					value := []byte(row[1])
					if spoil && n == 0 {
						value = append(value, 0)
					}
					if spoil && n == 1 {
						continue
					}
					it.Rows = append(it.Rows, store.Row{Key: []byte(row[0]), Value: value})
				}
			}
			for n := 0; n < more && i == len(all.Records)-1; n++ {
				it.Rows = append(it.Rows, store.Row{Key: fmt.Appendf(nil, "sums/2020-01-%02d/1", n+1), Value: []byte{1}})
			}
			if err := add(fmt.Sprint("action ", i), []store.Item{it}); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	s, err := store.Open(other, storeOptions(false))
	if err == nil && snapshot != nil {
		err = s.PutSnapshot(all.At, snapshot)
	}
	if err = errors.Join(err, s.Close()); err != nil {
		t.Fatal(err)
	}
}

// TestRowsAndSnapshotThatDoNotFitAreFound: what is kept beside the entries is sealed and still wrong.
func TestRowsAndSnapshotThatDoNotFitAreFound(t *testing.T) {
	path := workedBook(t)
	all := allOf(t, path)
	other := filepath.Join(t.TempDir(), "other.db")
	build := func(spoil bool, more int, snapshot []byte) {
		t.Helper()
		buildOther(t, other, all, spoil, more, snapshot)
	}
	build(false, 0, []byte(all.Snapshot))
	if code, v := verifyJSON(t, other); code != 0 || v.Rows != derivedFits || v.Snapshot != derivedFits {
		t.Errorf("as it should be: code %d, %+v", code, v)
	}
	build(true, 0, []byte(all.Snapshot))
	if code, v := verifyJSON(t, other); code != exitDamaged || v.Rows != derivedWrong || len(v.Damaged) != 2 || v.Snapshot != derivedFits {
		t.Errorf("rows: code %d, %+v", code, v)
	}
	build(false, mostRows+3, []byte(all.Snapshot))
	if code, v := verifyJSON(t, other); code != exitDamaged || v.Rows != derivedWrong || len(v.Damaged) != mostRows+1 || v.Damaged[mostRows].Says != "Of the rows 3 more do not fit." {
		t.Errorf("many rows: code %d, %+v", code, v)
	}
	spoilt := []byte(all.Snapshot)
	spoilt[len(spoilt)-3] ^= 1
	build(false, 0, spoilt)
	if code, v := verifyJSON(t, other); code != exitDamaged || v.Rows != derivedFits || v.Snapshot != derivedWrong || len(v.Damaged) != 1 {
		t.Errorf("snapshot: code %d, %+v", code, v)
	}
	if _, out, _ := call(t, "", "verify", "--book", other); !strings.Contains(out, "The entries are whole: tintline journal --json and tintline replay") {
		t.Errorf("it is not said how to put it right:\n%s", out)
	}
}
