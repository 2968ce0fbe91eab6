package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"example.com/tintline/store/disktrace"
)

// A disk that fails: from one step on and for good, as a full one does, or once.
var diskFaults = []struct {
	name  string
	errno syscall.Errno
	once  bool
}{
	{"full", syscall.ENOSPC, false},
	{"full for a moment", syscall.ENOSPC, true},
	{"failing once", syscall.EIO, true},
	{"failing for good", syscall.EIO, false},
}

// TestDiskFailsUnderTheProgram lets each write and each sync fail in turn, and all that follow. The program ends with code
// 8 and says in a sentence what is wrong and in another what to do; nothing that it confirmed is lost; repeated on a disk that works,
// the same command does the rest, and nothing is there twice.
func TestDiskFailsUnderTheProgram(t *testing.T) {
	s := theStory(t)
	for _, c := range powerCases {
		t.Run(c.name, func(t *testing.T) {
			dir := quickDir(t)
			if c.start != nil {
				c.start(t, s, dir)
			}
			stdin := s.part(c.stdin)
			if c.stdin == "all" { // what makes a new book is in the first action
				stdin = s.from(0, s.starts[8])
			}
			whole := recorded(t, dir, stdin, nil, c.args...)
			codes := map[int]int{}
			every := thorough(whole.Steps, max(1, whole.Steps/120))
			for k, f := range diskFaults {
				for n := 1 + k*every/len(diskFaults); n <= whole.Steps; n += every {
					code, err := s.onFailingDisk(t, c, whole, dir, stdin, n, uintptr(f.errno), f.once)
					codes[code]++
					if err != nil {
						t.Errorf("%s from step %d: exit %d: %v", f.name, n, code, err)
					}
				}
			}
			if codes[exitWrite] == 0 {
				t.Error("the program never ended with code 8")
			}
			t.Logf("%d steps; runs by exit code: %v", whole.Steps, codes)
		})
	}
}

func (s *story) onFailingDisk(t *testing.T, c powerCase, whole *disktrace.Log, dir, stdin string, n int, errno uintptr, once bool) (int, error) {
	t.Helper()
	lay(t, dir, whole.Start)
	l := recorded(t, dir, stdin, func(i int, op disktrace.Op) disktrace.Fault {
		// A disk without room still takes names away.
		if i < n || once && i > n || op.Kind == disktrace.Unlink && errno == uintptr(syscall.ENOSPC) {
			return disktrace.Fault{}
		}
		return disktrace.Fault{Errno: errno}
	}, c.args...)
	path := filepath.Join(dir, "b")
	said, complained := l.Text(disktrace.Said), l.Text(disktrace.Complained)
	if l.Exit != 0 && l.Exit != exitWrite {
		return l.Exit, fmt.Errorf("it says %q", complained)
	}
	if err := inTwoSentences(complained, l.Exit); err != nil {
		return l.Exit, err
	}
	if c.args[0] != "enter" || c.stdin == oneFact {
		if l.Exit == exitWrite {
			said = ""
		}
		if err := c.check(s, path, said); err != nil {
			return l.Exit, err
		}
		return l.Exit, s.andAgain(c, dir)
	}
	got, err := s.holds(path, confirmed(said))
	if err == nil {
		err = s.linesAreTrue(path)
	}
	if err != nil {
		return l.Exit, err
	}
	if code, _, complaint := run(stdin, "enter", "-", "--book", path); code != 0 {
		return l.Exit, fmt.Errorf("with room again, after %d entries: exit %d, %s", got, code, complaint)
	}
	end := len(s.lines)
	if c.stdin == "all" {
		end = s.starts[8]
	}
	if got, err = s.holds(path, end); err == nil && got != end {
		err = fmt.Errorf("%d entries after all was repeated", got)
	}
	if err == nil {
		err = s.linesAreTrue(path)
	}
	return l.Exit, err
}

// andAgain does a command anew on a disk that works.
func (s *story) andAgain(c powerCase, dir string) error {
	var args []string
	for _, a := range c.args {
		if a == "b" || a == "c" || a == "kept" {
			a = filepath.Join(dir, a)
		}
		args = append(args, a)
	}
	_ = os.Remove(filepath.Join(dir, "c"))
	stdin := ""
	if c.stdin == oneFact {
		stdin = oneFact
	}
	code, _, complaint := run(stdin, args...)
	if code == 0 || c.args[0] == "restore" && code == exitCannot && strings.Contains(complaint, "is whole and holds") {
		return nil // a restore was done already when its last step failed
	}
	return fmt.Errorf("with room again: exit %d, %s", code, complaint)
}

// inTwoSentences: what is wrong, and what to do about it.
func inTwoSentences(complained string, exit int) error {
	if exit == 0 {
		return nil
	}
	lines := strings.Split(strings.TrimSpace(complained), "\n")
	for len(lines) > 2 && (strings.HasPrefix(lines[0], "The book was made ready ") || strings.HasPrefix(lines[0], "The lines beside the book")) {
		lines = lines[1:] // said beside what ended it
	}
	if len(lines) != 2 || !strings.HasSuffix(lines[0], ".") || !strings.HasSuffix(lines[1], ".") {
		return fmt.Errorf("not two sentences: %q", complained)
	}
	return nil
}

// TestEndedBeforeEachStepOfTheProgram ends the program, as kill -9 does, before each of its steps in turn.
func TestEndedBeforeEachStepOfTheProgram(t *testing.T) {
	s := theStory(t)
	runs := 0
	for _, c := range powerCases {
		dir := quickDir(t)
		if c.start != nil {
			c.start(t, s, dir)
		}
		stdin := s.part(c.stdin)
		whole := recorded(t, dir, stdin, nil, c.args...)
		for n := 1; n <= whole.Steps; n += max(1, whole.Steps/thorough(2, 120)) {
			lay(t, dir, whole.Start)
			l := recorded(t, dir, stdin, func(i int, _ disktrace.Op) disktrace.Fault { return disktrace.Fault{Kill: i == n} }, c.args...)
			runs++
			if l.Exit != -1 {
				t.Errorf("%s: not ended at step %d: exit %d", c.name, n, l.Exit)
			}
			if err := c.check(s, filepath.Join(dir, "b"), l.Text(disktrace.Said)); err != nil {
				t.Errorf("%s, ended before step %d: %v", c.name, n, err)
			}
		}
	}
	t.Logf("%d programs ended", runs)
}

// TestHalfAnActionIsNotConfirmed: a book may end within an action when it was brought back from lines that had lost their
// tail. The lines of the whole action are refused then; an entry that is not there is never said to be.
func TestHalfAnActionIsNotConfirmed(t *testing.T) {
	s := theStory(t)
	path := filepath.Join(t.TempDir(), "b")
	half := 0
	for i := 1; i < len(s.lines) && half == 0; i++ {
		if !s.wholeActions(i) {
			half = i
		}
	}
	if code, _, complaint := run(s.from(0, half), "enter", "-", "--book", path); code != 0 {
		t.Fatal(complaint)
	}
	code, said, complaint := run(s.from(0, len(s.lines)), "enter", "-", "--book", path)
	if code != exitUsage || confirmed(said) >= half || !strings.Contains(complaint, "has 1 of its entries in the book, and the lines give it 2") {
		t.Errorf("exit %d, confirmed %d of %d: %s", code, confirmed(said), half, complaint)
	}
}
