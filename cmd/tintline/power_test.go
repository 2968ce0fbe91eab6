package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.com/tintline/store/disktrace"
)

// powerCase is what the program does while the power may fail.
type powerCase struct {
	name, stdin string
	args        []string
	start       func(t testing.TB, s *story, dir string)
	check       func(s *story, path, said string) error
}

var powerCases = []powerCase{
	{"every kind of fact into a new book", "all", []string{"enter", "-", "--book", "b"}, nil, goesOn},
	{"facts after a copy, with lines", "rest", []string{"enter", "-", "--book", "b"}, startWithCopy, comesBack},
	{"a copy", "", []string{"backup", "c", "--book", "b"}, startWithCopy, copyIsWhole},
	{"the copy of the day", "", []string{"backup", "--book", "b"}, startWithCopy, dayCopyIsWhole},
	{"a restore", "", []string{"restore", "kept", "--book", "b"}, startDamaged, oldOrRestored},
	{"a restore from lines with a gap", "", []string{"restore", "kept", "--book", "b"}, startGap, restoredToGap},
	{"a book of an earlier format made ready", oneFact, []string{"enter", "-", "--book", "b"}, startOlder, oldOrReady},
}

// part is the share of the story that a case enters.
func (s *story) part(which string) string {
	switch which {
	case "all":
		return s.from(0, thorough(s.starts[25], len(s.lines)))
	case "rest":
		return s.from(s.starts[len(s.starts)-30], len(s.lines))
	}
	return which
}

// oneFact goes into any book.
const oneFact = `{"fact":"gauge_read","at":"2026-05-29T11:00:00-05:00","action":"one","compartment":"a","volume_gal":5}` + "\n"

func startWithCopy(t testing.TB, s *story, dir string) {
	t.Helper()
	book := filepath.Join(dir, "b")
	half := s.starts[len(s.starts)-40]
	for _, c := range [][]string{
		{s.from(0, half), "enter", "-", "--book", book},
		{"", "backup", "--book", book},
		{"", "backup", filepath.Join(dir, "kept"), "--book", book},
		{s.from(half, s.starts[len(s.starts)-30]), "enter", "-", "--book", book},
	} {
		if code, out, complaint := run(c[0], c[1:]...); code != 0 {
			t.Fatalf("%v: exit %d, %s%s", c[1:], code, out, complaint)
		}
	}
}

// startDamaged has a book whose pages are gone, but not its lines.
func startDamaged(t testing.TB, s *story, dir string) {
	t.Helper()
	startWithCopy(t, s, dir)
	b, err := os.ReadFile(filepath.Join(dir, "b"))
	if err != nil {
		t.Fatal(err)
	}
	clear(b[:3*4096])
	if err := os.WriteFile(filepath.Join(dir, "b"), b, 0o600); err != nil {
		t.Fatal(err)
	}
}

// gap is the line, counted from the end, that startGap tears.
const gap = 5

// startGap has a damaged book, nothing of whose entries can be read, and lines of which one is torn.
func startGap(t testing.TB, s *story, dir string) {
	t.Helper()
	startWithCopy(t, s, dir)
	copied, _ := filepath.Glob(filepath.Join(dir, "b.*.copy"))
	for _, name := range copied {
		_ = os.Remove(name)
	}
	text, err := os.ReadFile(filepath.Join(dir, "b.lines"))
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.SplitAfter(string(text), "\n")
	lines[len(lines)-1-gap] = "{torn\n"
	err = os.WriteFile(filepath.Join(dir, "b.lines"), []byte(strings.Join(lines, "")), 0o600)
	if err == nil {
		err = os.WriteFile(filepath.Join(dir, "b"), []byte("rubbish"), 0o600)
	}
	if err != nil {
		t.Fatal(err)
	}
}

// restoredToGap: once more, the book comes back up to the gap, whenever the first restore was cut off.
func restoredToGap(s *story, path, said string) error {
	b, err := os.ReadFile(path)
	if err != nil {
		return fmt.Errorf("%w: %w", errConfirmed, err)
	}
	if string(b) == "rubbish" {
		if said != "" {
			return errConfirmed
		}
		if code, _, complaint := run("", "restore", filepath.Join(filepath.Dir(path), "kept"), "--book", path); code != 0 {
			return fmt.Errorf("restored again: exit %d, %s", code, complaint)
		}
	}
	_ = os.Remove(linesPath(path)) // those beyond the gap, if they are there still
	n, err := s.holdsPrefix(path)
	if end := s.starts[len(s.starts)-30] - gap; err == nil && n < end {
		err = fmt.Errorf("%w: %d entries of %d", errConfirmed, n, end)
	}
	return err
}

// goesOn: the book holds what was confirmed, opens for writing, and the rest of the story goes into it. It is then the
// book of the story bit for bit.
func goesOn(s *story, path, said string) error {
	n, err := s.holds(path, confirmed(said))
	if err == nil {
		err = s.linesAreTrue(path)
	}
	if err != nil {
		return err
	}
	// From the last action that was confirmed on: it is there, and so may be the next.
	next := 0
	for _, at := range s.starts {
		if at < confirmed(said) {
			next = at
		}
	}
	end := len(s.lines)
	if n+20 < end {
		end = s.starts[slices.IndexFunc(s.starts, func(at int) bool { return at > n+3 })]
	}
	code, _, complaint := run(s.from(next, end), "enter", "-", "--book", path)
	if code != 0 {
		return fmt.Errorf("going on after %d entries: exit %d, %s", n, code, complaint)
	}
	got, err := s.holds(path, end)
	if err == nil && got != end {
		err = fmt.Errorf("%d entries after the actions were repeated, should be %d", got, end)
	}
	if err == nil {
		err = s.linesAreTrue(path)
	}
	return err
}

// comesBack: as goesOn, and a book that is lost afterwards comes back from the copy and the lines as far as they reach.
func comesBack(s *story, path, said string) error {
	n, err := s.holds(path, confirmed(said))
	if err == nil {
		err = s.linesAreTrue(path)
	}
	if err != nil {
		return err
	}
	lost := path + "-lost"
	if b, err := os.ReadFile(linesPath(path)); err == nil {
		if err := os.WriteFile(linesPath(lost), b, 0o600); err != nil {
			return err
		}
	}
	if code, _, complaint := run("", "restore", filepath.Join(filepath.Dir(path), "kept"), "--book", lost); code != 0 {
		return fmt.Errorf("restore: exit %d, %s", code, complaint)
	}
	got, err := s.holdsPrefix(lost)
	if err != nil || got > n {
		return fmt.Errorf("restored %d entries of %d: %w", got, n, err)
	}
	return goesOn(s, path, said)
}

// holdsPrefix is holds for a book that may end within an action, as the lines do.
func (s *story) holdsPrefix(path string) (int, error) {
	n, err := s.holds(path, 0)
	if err != nil && strings.Contains(err.Error(), "whole actions") && n <= len(s.lines) {
		err = nil
	}
	return n, err
}

// whole: the book is whole and nothing that the case began with is gone.
func (s *story) whole(path string) error {
	n, err := s.holds(path, s.starts[len(s.starts)-30])
	if err == nil {
		err = s.linesAreTrue(path)
	}
	if err != nil {
		return fmt.Errorf("the book with %d entries: %w", n, err)
	}
	return nil
}

// copyIsWhole: the copy is whole, or there is none yet.
func copyIsWhole(s *story, path, said string) error {
	if err := s.whole(path); err != nil {
		return err
	}
	want := 0
	if said != "" {
		want = s.starts[len(s.starts)-30]
	}
	_, err := s.holds(filepath.Join(filepath.Dir(path), "c"), want)
	return err
}

// dayCopyIsWhole: there is a copy of the day at any moment, the earlier or the new one.
func dayCopyIsWhole(s *story, path, said string) error {
	if err := s.whole(path); err != nil {
		return err
	}
	want := s.starts[len(s.starts)-40]
	if said != "" {
		want = s.starts[len(s.starts)-30]
	}
	list := copiesOf(path)
	if len(list) != 1 {
		return fmt.Errorf("%w: %d copies", errConfirmed, len(list))
	}
	_, err := s.holds(list[0].path, want)
	return err
}

// oldOrRestored: what could not be read any more stands there as it was, or the restored book, with the old file beside it.
func oldOrRestored(s *story, path, said string) error {
	b, err := os.ReadFile(path)
	if err != nil {
		return fmt.Errorf("%w: %w", errConfirmed, err)
	}
	zeros := make([]byte, 4096)
	if len(b) > 4*4096 && bytes.Equal(b[:4096], zeros) && !bytes.Equal(b[3*4096:4*4096], zeros) {
		if said != "" {
			return errConfirmed
		}
		return nil
	}
	aside, _ := filepath.Glob(path + ".*.old")
	if len(aside) != 1 {
		return fmt.Errorf("%w: %d old files beside it", errConfirmed, len(aside))
	}
	old, err := os.ReadFile(aside[0])
	if err != nil || len(old) < 4*4096 || !bytes.Equal(old[:4096], zeros) || bytes.Equal(old[3*4096:4*4096], zeros) {
		return fmt.Errorf("the old file is not as it was: %w", errors.Join(errConfirmed, err))
	}
	// The lines were handed to the system and may lack their tail; without a cut all are there.
	_, err = s.holds(path, s.starts[len(s.starts)-30])
	return err
}

// TestPowerCutOfTheProgram records the program, makes the folders that a power cut may leave at any moment, and reads the
// book in each as verify does. The control does so as if no sync had done anything, and must find faults.
func TestPowerCutOfTheProgram(t *testing.T) {
	s := theStory(t)
	total := 0
	for _, c := range powerCases {
		t.Run(c.name, func(t *testing.T) {
			dir := quickDir(t)
			if c.start != nil {
				c.start(t, s, dir)
			}
			l := recorded(t, dir, s.part(c.stdin), nil, c.args...)
			if l.Exit != 0 {
				t.Fatalf("exit %d: %s", l.Exit, l.Text(disktrace.Complained))
			}
			r := s.powerCut(t, l, disktrace.Choice{Seed: 1, Random: thorough(4, 30), Single: thorough(5, 12)}, images(12, 1500), c.check)
			total += r.images
			for _, e := range r.wrong {
				t.Error(e)
			}
			control := s.powerCut(t, l, disktrace.Choice{Seed: 2, Random: 6, Single: 6, NoSync: true}, images(16, 400), c.check)
			if control.faulty == 0 || control.missing == 0 {
				t.Errorf("the control finds %d faulty folders and %d with something missing: it must find both kinds", control.faulty, control.missing)
			}
			t.Logf("%d steps; %d folders, %d faulty, %d with something confirmed missing; control without syncs: %d, %d faulty, %d missing",
				l.Steps, r.images, r.faulty, r.missing, control.images, control.faulty, control.missing)
		})
	}
	t.Logf("%d folders in all", total)
}

// cuts is what the folders of one case came to.
type cuts struct {
	images, faulty, missing int
	wrong                   []string
}

// powerCut checks about so many folders, spread over the run.
func (s *story) powerCut(t testing.TB, l *disktrace.Log, c disktrace.Choice, most int, check func(s *story, path, said string) error) (r cuts) {
	t.Helper()
	dir := quickDir(t)
	err := l.Images(c.About(l, most), func(i disktrace.Image) error {
		r.images++
		lay(t, dir, i.Files)
		err := check(s, filepath.Join(dir, "b"), i.Said)
		switch {
		case err == nil:
			return nil
		case errors.Is(err, errConfirmed):
			r.missing++
		default:
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
