package store

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strconv"
	"strings"
	"testing"
)

// long turns the thorough variants on.
var long = os.Getenv("TINTLINE_LONG") != ""

// rounds picks how often a trial runs.
func rounds(ordinary, thorough int) int {
	if long {
		return thorough
	}
	return ordinary
}

func TestMain(m *testing.M) {
	if job := os.Getenv("STORE_CHILD"); job != "" {
		os.Exit(child(job))
	}
	if !long {
		_ = flag.Set("rapid.checks", "40") // the command line may still say otherwise
	}
	os.Exit(m.Run())
}

// quickDir is a folder in memory if there is one: most trials are about
// contents, not about the disk.
func quickDir(t testing.TB) string {
	t.Helper()
	dir, err := os.MkdirTemp("/dev/shm", "store-test-")
	if err != nil {
		return t.TempDir()
	}
	t.Cleanup(func() { _ = os.RemoveAll(dir) })
	return dir
}

func newPath(t testing.TB) string { return filepath.Join(quickDir(t), "a.book") }

// made returns a new store that is walked and checked when the test ends.
func made(t testing.TB) *Store {
	t.Helper()
	s, err := Create(newPath(t), "id-1", Options{Program: "test 1"})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { shutDown(t, s) })
	return s
}

func opened(t testing.TB, path string, o Options) *Store {
	t.Helper()
	s, err := Open(path, o)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { shutDown(t, s) })
	return s
}

// shutDown walks a store and closes it; one that is closed already is left.
func shutDown(t testing.TB, s *Store) {
	t.Helper()
	s.hold.Lock()
	ended := s.ended
	s.hold.Unlock()
	if ended {
		return
	}
	if err := s.Each(1, func(Record) error { return nil }); err != nil {
		t.Errorf("walk at close: %v", err)
	}
	if err := s.Check(); err != nil {
		t.Errorf("check at close: %v", err)
	}
	if err := s.Close(); err != nil {
		t.Errorf("close: %v", err)
	}
}

func item(body string, keys ...string) Item {
	it := Item{Body: []byte(body)}
	for _, k := range keys {
		it.Keys = append(it.Keys, []byte(k))
	}
	return it
}

func put(t testing.TB, s *Store, action string, items ...Item) Answer {
	t.Helper()
	a, err := s.Append(action, items)
	if err != nil {
		t.Fatalf("append %s: %v", action, err)
	}
	return a
}

// wantKind checks the kind of an error and that it is fit for a person.
func wantKind(t testing.TB, err, kind error) {
	t.Helper()
	if !errors.Is(err, kind) {
		t.Fatalf("error is %v, want %v", err, kind)
	}
	var tr *Trouble
	if !errors.As(err, &tr) {
		t.Fatalf("error is %T, want *Trouble", err)
	}
	for _, s := range []string{tr.What, tr.Do} {
		if !strings.HasSuffix(s, ".") || strings.Contains(s, "\n") || len(s) < 10 {
			t.Errorf("not a sentence: %q", s)
		}
	}
}

// contents is all that a store says.
type contents struct {
	Records []Record
	Keys    []string
	At      uint64
	Snap    []byte
	HasSnap bool
	Rows    []string
}

func read(s *Store) (c contents, err error) {
	err = s.Each(1, func(r Record) error {
		r.Body = bytes.Clone(r.Body)
		c.Records = append(c.Records, r)
		return nil
	})
	if err != nil {
		return c, err
	}
	err = s.EachKey(nil, func(k []byte, r Record) error {
		c.Keys = append(c.Keys, row(k, r))
		return nil
	})
	if err != nil {
		return c, err
	}
	err = s.Rows(nil, nil, func(k, v []byte) error {
		c.Rows = append(c.Rows, string(k)+"\x00"+string(v))
		return nil
	})
	if err != nil && !errors.Is(err, ErrNoRows) {
		return c, err
	}
	c.At, c.Snap, c.HasSnap, err = s.Snapshot()
	return c, err
}

func row(key []byte, r Record) string {
	return string(key) + "\x00" + strconv.FormatUint(r.Number, 10) + "\x00" + r.Action + "\x00" + string(r.Body)
}

func mustRead(t testing.TB, s *Store) contents {
	t.Helper()
	c, err := read(s)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func same(a, b contents) bool { return reflect.DeepEqual(a, b) }

// noLeftovers checks that a folder holds exactly these names.
func noLeftovers(t testing.TB, dir string, want ...string) {
	t.Helper()
	list, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, e := range list {
		got = append(got, e.Name())
	}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("folder holds %v, want %v", got, want)
	}
}
