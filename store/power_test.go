package store

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/tintline/store/disktrace"
)

// errMissing: something that was confirmed is not there.
var errMissing = errors.New("confirmed, and not there")

// powerCases are the things that a program does with files, and what must be true
// of the folder whenever the power fails meanwhile.
var powerCases = []struct {
	name, job string
	start     func(t testing.TB, path string)
	check     func(path, said string) error
}{
	{"actions and snapshots", "append", powerStart, checkPowerAppend},
	{"a new file", "create", nil, func(path, said string) error { return newOrNothing(path, said, 0) }},
	{"a new file with entries", "create-with", nil, func(path, said string) error { return newOrNothing(path, said, 6) }},
	{"one of format 1 written anew", "replace", powerOld, oldOrNew},
	{"a file replaced", "replace", powerStart, oldOrNew},
	{"a copy", "copy", powerStart, copyOrNothing},
	{"a copy in place of another", "copy-over", powerStartCopied, copyOrEarlier},
}

func powerStart(t testing.TB, path string) {
	t.Helper()
	s, err := Create(path, "old", Options{})
	if err != nil {
		t.Fatal(err)
	}
	for i := range 3 {
		put(t, s, fmt.Sprint("old-", i), powerItems(i)...)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
}

func powerOld(t testing.TB, path string) {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("testdata", "format1.book"))
	if err == nil {
		err = os.WriteFile(path, b, 0o600)
	}
	if err != nil {
		t.Fatal(err)
	}
}

func powerStartCopied(t testing.TB, path string) {
	t.Helper()
	powerStart(t, path)
	if err := Backup(path, path+".copy"); err != nil {
		t.Fatal(err)
	}
	s := opened(t, path, Options{})
	put(t, s, "act-0", powerItems(0)...)
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
}

// recorded runs a job under the recorder.
func recorded(t testing.TB, job, dir string, fault func(int, disktrace.Op) disktrace.Fault) *disktrace.Log {
	t.Helper()
	cmd := childCommand(t, job, filepath.Join(dir, "f"), "power")
	return disktrace.Run{Path: cmd.Path, Args: cmd.Args, Env: cmd.Env, Dir: dir, Fault: fault}.Must(t)
}

// TestPowerCut records what a program does to its files, makes the files that a
// power cut may leave at any moment of it, and opens them all. The control does
// the same as if no sync had done anything, and must find faults: else the test
// would prove nothing.
func TestPowerCut(t *testing.T) {
	total := 0
	for _, c := range powerCases {
		t.Run(c.name, func(t *testing.T) {
			dir := quickDir(t)
			if c.start != nil {
				c.start(t, filepath.Join(dir, "f"))
			}
			l := recorded(t, c.job, dir, nil)
			if l.Exit != 0 {
				t.Fatalf("exit %d: %s", l.Exit, l.Text(disktrace.Complained))
			}
			r := powerCut(t, l, disktrace.Choice{Seed: 1, Random: rounds(4, 250)}, images(70, 1<<30), c.check)
			total += r.images
			for _, e := range r.wrong {
				t.Error(e)
			}
			control := powerCut(t, l, disktrace.Choice{Seed: 2, Random: 4, Single: 4, NoSync: true}, images(70, 1500), c.check)
			if control.faulty == 0 || control.missing == 0 {
				t.Errorf("the control finds %d faulty images and %d with something missing: it must find both kinds", control.faulty, control.missing)
			}
			t.Logf("%d steps, %d syncs; %d images, %d faulty, %d with something confirmed missing; control without syncs: %d images, %d faulty, %d missing",
				l.Steps, l.Count(disktrace.Sync)+l.Count(disktrace.SyncFolder), r.images, r.faulty, r.missing,
				control.images, control.faulty, control.missing)
		})
	}
	t.Logf("%d images in all", total)
	if long && os.Getenv("TINTLINE_IMAGES") == "" && total < 5000 {
		t.Errorf("%d images are too few", total)
	}
}

// images is how many images a case makes about: TINTLINE_IMAGES says otherwise.
func images(ordinary, thorough int) int {
	n := rounds(ordinary, thorough)
	_, _ = fmt.Sscan(os.Getenv("TINTLINE_IMAGES"), &n)
	return n
}

// powerTally is what the images of one run came to.
type powerTally struct {
	images, faulty, missing int
	wrong                   []string // the first few
}

// powerCut checks about so many images, spread over the run.
func powerCut(t testing.TB, l *disktrace.Log, c disktrace.Choice, most int, check func(path, said string) error) (r powerTally) {
	t.Helper()
	dir := quickDir(t)
	err := l.Images(c.About(l, most), func(i disktrace.Image) error {
		r.images++
		if err := lay(dir, i.Files); err != nil {
			return err
		}
		err := check(filepath.Join(dir, "f"), i.Said)
		if err == nil {
			return nil
		}
		if errors.Is(err, errMissing) {
			r.missing++
		} else {
			r.faulty++
		}
		if len(r.wrong) < 5 {
			r.wrong = append(r.wrong, fmt.Sprintf("after %d steps with %s: %v", i.At, i.How, err))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// lay puts these files into a folder, and no others.
func lay(dir string, files map[string][]byte) error {
	list, err := os.ReadDir(dir)
	for _, e := range list {
		err = errors.Join(err, os.Remove(filepath.Join(dir, e.Name())))
	}
	for name, b := range files {
		err = errors.Join(err, os.WriteFile(filepath.Join(dir, name), b, 0o600))
	}
	return err
}

// wholeStore opens a file, checks it through and lets see look into it.
func wholeStore(path string, o Options, see func(*Store) error) error {
	s, err := Open(path, o)
	if err != nil {
		return err
	}
	if err = s.Check(); err == nil && see != nil {
		err = see(s)
	}
	return errors.Join(err, s.Close())
}

// hasAction compares an action of powerItems with what is in the file.
func hasAction(s *Store, i int, must bool) (there bool, err error) {
	name := fmt.Sprint("act-", i)
	a, there, err := s.Find(name)
	switch {
	case err != nil:
		return false, err
	case !there && must:
		return false, fmt.Errorf("action %s: %w", name, errMissing)
	case !there:
		return false, nil
	}
	want, n := powerItems(i), 0
	err = s.Each(a.First, func(r Record) error {
		if r.Number > a.Last {
			return nil
		}
		if !bytes.Equal(r.Body, want[n].Body) || r.Action != name {
			return fmt.Errorf("record %d is not what was written", r.Number)
		}
		n++
		return nil
	})
	if err == nil && n != len(want) {
		err = fmt.Errorf("action %s has %d entries of %d", name, n, len(want))
	}
	return true, err
}

func checkPowerAppend(path, said string) error {
	confirmed := strings.Count(said, "done ")
	return wholeStore(path, Options{}, func(s *Store) error {
		after := false
		for i := range powerActions {
			there, err := hasAction(s, i, i < confirmed)
			if err != nil {
				return err
			}
			if there && (after || i > confirmed) {
				return fmt.Errorf("action %d is there, and %d are confirmed", i, confirmed)
			}
			after = !there
		}
		if err := snapshotFits(s); err != nil {
			return err
		}
		// Repeated, the action that was under way is there once, and it goes on.
		for i := confirmed; i < min(confirmed+2, powerActions); i++ {
			if _, err := s.Append(fmt.Sprint("act-", i), powerItems(i)); err != nil {
				return err
			}
			if _, err := hasAction(s, i, true); err != nil {
				return err
			}
		}
		return s.Check()
	})
}

// snapshotFits: there is one or none, and what it says is what was put.
func snapshotFits(s *Store) error {
	at, body, ok, err := s.Snapshot()
	if err != nil || !ok {
		return err
	}
	var a Answer
	for i := 3; i < powerActions && a.Last != at; i += 5 {
		if a, _, err = s.Find(fmt.Sprint("act-", i)); err != nil {
			return err
		}
		if a.Last == at && len(body) == 400*i {
			return nil
		}
	}
	return fmt.Errorf("a snapshot of %d bytes at %d", len(body), at)
}

// newOrNothing: the file is whole with all its actions, or not there.
func newOrNothing(path, said string, actions int) error {
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		if said != "" {
			return errMissing
		}
		return nil
	}
	return wholeStore(path, Options{}, func(s *Store) error {
		for i := range actions {
			if _, err := hasAction(s, i, true); err != nil {
				return err
			}
		}
		return nil
	})
}

// oldOrNew: at path stands the old file or the new one, whole, and the old one
// stands beside the new.
func oldOrNew(path, said string) error {
	look := func(path string) (m Meta, n uint64, err error) {
		err = wholeStore(path, Options{ReadOnly: true}, func(s *Store) error {
			m = s.Meta()
			n, err = s.Last()
			return err
		})
		if errors.Is(err, ErrMissing) {
			err = errors.Join(errMissing, err)
		}
		return m, n, err
	}
	m, n, err := look(path)
	if err != nil {
		return err
	}
	if m.BookID != "new" {
		if said != "" {
			return fmt.Errorf("the new file: %w", errMissing)
		}
		return nil
	}
	kept, before, err := look(path + ".kept")
	if err != nil || kept.BookID == "new" {
		return fmt.Errorf("the old file: %w", errors.Join(errMissing, err))
	}
	more := 0
	for i := range 6 {
		more += len(powerItems(i))
	}
	if n != before+uint64(more) {
		return fmt.Errorf("the new file holds %d entries, the old one %d", n, before)
	}
	return nil
}

func copyOrNothing(path, said string) error {
	if err := wholeStore(path, Options{}, nil); err != nil {
		return err
	}
	return newOrNothing(path+".copy", said, 0)
}

// copyOrEarlier: there is always a whole copy; the new one once it is confirmed.
func copyOrEarlier(path, said string) error {
	if err := wholeStore(path, Options{}, nil); err != nil {
		return err
	}
	return wholeStore(path+".copy", Options{ReadOnly: true}, func(s *Store) error {
		_, err := hasAction(s, 0, said != "")
		return err
	})
}
