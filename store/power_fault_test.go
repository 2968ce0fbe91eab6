package store

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"example.com/tintline/store/disktrace"
)

// A step fails: alone, or with those that follow, as on a disk that stays full
// for a while.
var powerFaults = []struct {
	name  string
	errno syscall.Errno
	steps int
	kinds func(disktrace.Kind) bool
}{
	{"no room once", syscall.ENOSPC, 1, takesRoom},
	{"no room for a while", syscall.ENOSPC, 7, takesRoom},
	{"an error of the disk", syscall.EIO, 1, disktrace.Kind.Changes},
	{"two errors of the disk", syscall.EIO, 2, disktrace.Kind.Changes},
}

// takesRoom tells which steps a full disk can refuse.
func takesRoom(k disktrace.Kind) bool {
	switch k {
	case disktrace.Create, disktrace.Write, disktrace.Truncate, disktrace.Allocate, disktrace.Link, disktrace.Rename, disktrace.Sync:
		return true
	}
	return false
}

// failing makes steps fail from step n on, so many of those that can.
func failing(n, steps int, errno syscall.Errno, can func(disktrace.Kind) bool) func(int, disktrace.Op) disktrace.Fault {
	left := steps
	return func(i int, op disktrace.Op) disktrace.Fault {
		if i < n || left == 0 || !can(op.Kind) {
			return disktrace.Fault{}
		}
		left--
		return disktrace.Fault{Errno: uintptr(errno)}
	}
}

// TestEachStepFailsAndItGoesOn lets every write and every sync of a program fail
// in turn. It tries again, as the operator would; in the end everything is there
// once. From what it wrote meanwhile a power cut loses nothing confirmed.
func TestEachStepFailsAndItGoesOn(t *testing.T) {
	start := quickDir(t)
	powerStart(t, filepath.Join(start, "f"))
	book, err := os.ReadFile(filepath.Join(start, "f"))
	if err != nil {
		t.Fatal(err)
	}
	whole := recorded(t, "go-on", start, nil)
	if whole.Exit != 0 {
		t.Fatalf("exit %d: %s", whole.Exit, whole.Text(disktrace.Complained))
	}
	every := rounds(11, 1)
	runs, hit, unsure, images := 0, 0, 0, 0
	dir := quickDir(t)
	for k, f := range powerFaults {
		for n := 1 + (3*k)%every; n <= whole.Steps; n += every {
			if err := lay(dir, map[string][]byte{"f": book}); err != nil {
				t.Fatal(err)
			}
			l := recorded(t, "go-on", dir, failing(n, f.steps, f.errno, f.kinds))
			runs++
			if l.Faults > 0 {
				hit++
			}
			said := l.Text(disktrace.Said)
			unsure += strings.Count(said, "It is not known")
			if l.Exit != 0 {
				t.Errorf("%s at step %d: exit %d, %s%s", f.name, n, l.Exit, said, l.Text(disktrace.Complained))
				continue
			}
			if err := wholeStore(filepath.Join(dir, "f"), Options{}, allOnce); err != nil {
				t.Errorf("%s at step %d: %v", f.name, n, err)
			}
			r := powerCut(t, l, disktrace.Choice{Seed: uint64(n), Random: 2, Single: 3}, rounds(4, 40), checkGoOn)
			images += r.images
			for _, e := range r.wrong {
				t.Errorf("%s at step %d: power cut %s", f.name, n, e)
			}
		}
	}
	if hit < runs*9/10 || unsure == 0 && every == 1 {
		t.Errorf("%d of %d runs met a fault, %d times it was unsure", hit, runs, unsure)
	}
	t.Logf("%d steps; %d runs, %d with a fault, %d times unsure; %d images of power cuts", whole.Steps, runs, hit, unsure, images)
}

// allOnce: every action is there, and nothing else but what was there before.
func allOnce(s *Store) error {
	n := uint64(0)
	for i := range goOnActions {
		if _, err := hasAction(s, i, true); err != nil {
			return err
		}
		n += uint64(len(powerItems(i)))
	}
	for i := range 3 {
		n += uint64(len(powerItems(i)))
	}
	if last, err := s.Last(); err != nil || last != n {
		return fmt.Errorf("%d entries, should be %d: %w", last, n, err)
	}
	return nil
}

func checkGoOn(path, said string) error {
	confirmed := strings.Count(said, "done ")
	return wholeStore(path, Options{}, func(s *Store) error {
		for i := range confirmed {
			if _, err := hasAction(s, i, true); err != nil {
				return err
			}
		}
		return nil
	})
}

// TestEachStepFailsWhileMaking: nothing is left where a file could not be made,
// and what stood there is as it was.
func TestEachStepFailsWhileMaking(t *testing.T) {
	runs := 0
	for _, c := range powerCases[1:] {
		start := quickDir(t)
		if c.start != nil {
			c.start(t, filepath.Join(start, "f"))
		}
		whole := recorded(t, c.job, start, nil)
		before := whole.Start
		dir := quickDir(t)
		for n := 1; n <= whole.Steps; n += rounds(5, 1) {
			for _, errno := range []syscall.Errno{syscall.ENOSPC, syscall.EIO} {
				if err := lay(dir, before); err != nil {
					t.Fatal(err)
				}
				fault := failing(n, 1, errno, disktrace.Kind.Changes)
				l := recorded(t, c.job, dir, fault)
				runs++
				if err := madeOrAsBefore(c.check, l, filepath.Join(dir, "f")); err != nil {
					t.Errorf("%s, %v at step %d: %v", c.name, errno, n, err)
				}
			}
		}
	}
	t.Logf("%d runs", runs)
}

// madeOrAsBefore: what could not be made leaves everything as it was, with one
// sentence; what was made is whole.
func madeOrAsBefore(check func(path, said string) error, l *disktrace.Log, path string) error {
	said, complained := l.Text(disktrace.Said), l.Text(disktrace.Complained)
	if err := check(path, said); err != nil {
		return err
	}
	if l.Exit == 0 {
		return nil
	}
	if l.Exit != 8 || strings.Count(strings.TrimSpace(complained), "\n") > 0 || complained == "" {
		return fmt.Errorf("exit %d: %q", l.Exit, complained)
	}
	for name, b := range l.Start {
		if strings.Contains(complained, "is whole, but the disk does not confirm its name") {
			continue // an earlier copy cannot be had back
		}
		if now, err := os.ReadFile(filepath.Join(filepath.Dir(path), name)); err != nil || string(now) != string(b) {
			return errors.Join(fmt.Errorf("%s is not as it was", name), err)
		}
	}
	return nil
}

// TestEndedBeforeEachStep ends the program, as kill -9 does, before each of its
// steps.
func TestEndedBeforeEachStep(t *testing.T) {
	runs := 0
	for _, c := range powerCases {
		start := quickDir(t)
		if c.start != nil {
			c.start(t, filepath.Join(start, "f"))
		}
		whole := recorded(t, c.job, start, nil)
		dir := quickDir(t)
		for n := 1; n <= whole.Steps; n += max(1, whole.Steps/rounds(5, 1000)) {
			if err := lay(dir, whole.Start); err != nil {
				t.Fatal(err)
			}
			l := recorded(t, c.job, dir, func(i int, _ disktrace.Op) disktrace.Fault { return disktrace.Fault{Kill: i == n} })
			runs++
			if l.Exit != -1 {
				t.Errorf("%s: not ended at step %d: exit %d", c.name, n, l.Exit)
			}
			if err := c.check(filepath.Join(dir, "f"), l.Text(disktrace.Said)); err != nil {
				t.Errorf("%s, ended before step %d: %v", c.name, n, err)
			}
		}
	}
	t.Logf("%d programs ended", runs)
}
