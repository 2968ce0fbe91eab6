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
	"time"

	"example.com/tintline/core"
	"example.com/tintline/store"
	"example.com/tintline/store/disktrace"
)

// story is the journal with every kind of fact, line by line.
type story struct {
	lines  []string
	read   []core.Line
	starts []int // the first line of each action, and the end
}

func theStory(t testing.TB) *story {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "story", "every_fact.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	s := &story{lines: strings.SplitAfter(strings.TrimSpace(string(text)), "\n")}
	s.lines[len(s.lines)-1] += "\n"
	for i, l := range s.lines {
		line, err := core.DecodeLine([]byte(strings.TrimSpace(l)))
		if err != nil {
			t.Fatal(err)
		}
		if i == 0 || line.Action != s.read[i-1].Action {
			s.starts = append(s.starts, i)
		}
		s.read = append(s.read, line)
	}
	s.starts = append(s.starts, len(s.lines))
	return s
}

// from is the text of the lines from a place to another.
func (s *story) from(a, b int) string { return strings.Join(s.lines[a:b], "") }

// wholeActions tells whether so many entries are whole actions.
func (s *story) wholeActions(n int) bool { return slices.Contains(s.starts, n) }

// errConfirmed: what was confirmed is not in the book.
var errConfirmed = errors.New("confirmed, and not there")

// holds reads a book through as verify does, and compares it with the beginning of the story. An empty path of a book that
// nothing was confirmed of is right too.
func (s *story) holds(path string, confirmed int) (entries int, err error) {
	file, err := store.Open(path, storeOptions(true))
	if errors.Is(err, store.ErrMissing) {
		if confirmed > 0 {
			return 0, fmt.Errorf("%w: %w", errConfirmed, err)
		}
		return 0, nil
	}
	if err != nil {
		return 0, err
	}
	v := verifyFile(file, nil)
	if err := file.Close(); err != nil {
		return 0, err
	}
	n := int(v.Entries)
	switch {
	case !v.OK:
		return n, fmt.Errorf("verify says %+v %+v", v.Changed, v.Damaged)
	case n < confirmed:
		return n, fmt.Errorf("%w: %d entries of %d", errConfirmed, n, confirmed)
	case n > len(s.lines) || !s.wholeActions(n):
		return n, fmt.Errorf("%d entries are not whole actions", n)
	case n > 0 && *v.Journal != s.read[n-1].Digest.String():
		return n, fmt.Errorf("entry %d is not that of the story", n)
	}
	return n, nil
}

// linesAreTrue: whatever lines stand beside a book, each that can be read is one of the story.
func (s *story) linesAreTrue(path string) error {
	found, err := readLines(linesPath(path), 0)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		return err
	}
	for _, l := range found {
		if int(l.Seq) > len(s.read) || l.Digest != s.read[l.Seq-1].Digest {
			return fmt.Errorf("a line beside the book says %d with another digest", l.Seq)
		}
	}
	return nil
}

// confirmed is the number of the last entry that the program said is on the disk.
func confirmed(said string) (n int) {
	for _, l := range strings.Split(said, "\n") {
		var seq int
		if _, err := fmt.Sscanf(l, `{"seq":%d,`, &seq); err == nil && strings.HasSuffix(l, "}") {
			n = max(n, seq)
		}
	}
	return n
}

// recorded runs the program in a folder under the recorder.
func recorded(t testing.TB, dir, stdin string, fault func(int, disktrace.Op) disktrace.Fault, args ...string) *disktrace.Log {
	t.Helper()
	exe, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	return disktrace.Run{
		Path: exe, Args: append([]string{"tintline"}, args...), Dir: dir, Stdin: []byte(stdin), Fault: fault,
		Env: []string{"HOME=" + dir, "TINTLINE_AT=2026-05-28T12:00:00-05:00", "TMPDIR=" + os.TempDir()},
	}.Must(t)
}

// quickDir is a folder in memory, if there is one.
func quickDir(t testing.TB) string {
	t.Helper()
	dir, err := os.MkdirTemp("/dev/shm", "tintline-test-")
	if err != nil {
		return t.TempDir()
	}
	t.Cleanup(func() { _ = os.RemoveAll(dir) })
	return dir
}

// lay puts these files into a folder, and no others.
func lay(t testing.TB, dir string, files map[string][]byte) {
	t.Helper()
	list, err := os.ReadDir(dir)
	for _, e := range list {
		err = errors.Join(err, os.RemoveAll(filepath.Join(dir, e.Name())))
	}
	for name, b := range files {
		err = errors.Join(err, os.WriteFile(filepath.Join(dir, name), b, 0o600))
	}
	if err != nil {
		t.Fatal(err)
	}
}

// thorough picks how much of a trial is done.
func thorough(ordinary, long int) int {
	if os.Getenv("TINTLINE_LONG") != "" {
		return long
	}
	return ordinary
}

// images is how many folders a case of a power cut makes about: TINTLINE_IMAGES says otherwise.
func images(ordinary, long int) int {
	n := thorough(ordinary, long)
	_, _ = fmt.Sscan(os.Getenv("TINTLINE_IMAGES"), &n)
	return n
}

// run does a command in this process.
func run(stdin string, args ...string) (code int, stdout, stderr string) {
	var out, complaint bytes.Buffer
	a := &app{
		stdin: strings.NewReader(stdin), stdout: &out, stderr: &complaint,
		getenv: func(string) string { return "" },
		now:    func() time.Time { return time.Date(2026, 5, 28, 17, 0, 0, 0, time.UTC) },
	}
	code = a.run(args)
	return code, out.String(), complaint.String()
}
