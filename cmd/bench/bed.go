//go:build linux

package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"golang.org/x/sys/unix"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// bed is all that is measured: the program, and four books. Each pair has the same last day.
type bed struct {
	dir                          string
	program, alone, self         string
	ten, none, tenOpen, noneOpen string
	morning, evening             string // the clock on a closed day, and at the end of the open one
	entries                      uint64
	bodies                       int64
	rounds, keys                 int
	first, last, oneLawn         string
	only                         string
}

func (t *bed) make(file string) (err error) {
	if t.self, err = os.Executable(); err != nil {
		return err
	}
	t.program, t.alone = filepath.Join(t.dir, "tintline"), filepath.Join(t.dir, "alone")
	for out, from := range map[string]string{t.program: "./cmd/tintline", t.alone: "./cmd/bench/testdata/alone"} {
		if said, err := exec.Command("go", "build", "-trimpath", "-ldflags", "-s -w", "-o", out, from).CombinedOutput(); err != nil {
			return fmt.Errorf("run it where the module stands: %w\n%s", err, said)
		}
	}
	t.ten, t.none = filepath.Join(t.dir, "ten.db"), filepath.Join(t.dir, "none.db")
	t.tenOpen, t.noneOpen = filepath.Join(t.dir, "ten-open.db"), filepath.Join(t.dir, "none-open.db")
	if err := errors.Join(copyFile(t.ten, file), fitting(t.ten)); err != nil {
		return err
	}
	p := plan{days: 220, visits: 25, lawns: 600, changeovers: 4, seed: 1}
	if _, err := build(t.none, p); err != nil {
		return err
	}
	if err := errors.Join(copyFile(t.tenOpen, t.ten), copyFile(t.noneOpen, t.none)); err != nil {
		return err
	}
	for _, path := range []string{t.tenOpen, t.noneOpen} {
		if err := t.openDay(path, p); err != nil {
			return err
		}
	}
	return t.measureBook()
}

// taken is the book as the program opens it: the snapshot and what came since.
func taken(s *store.Store) (*core.Book, error) {
	at, body, ok, err := s.Snapshot()
	if err != nil || !ok {
		return nil, fmt.Errorf("the book has no snapshot: %w", err)
	}
	b, err := core.Resume(body)
	if err != nil {
		return nil, err
	}
	return b, s.Each(at+1, func(r store.Record) error {
		e, err := core.Decode(r.Number, r.Action, r.Body)
		if err != nil {
			return err
		}
		return b.Apply(e)
	})
}

// fitting gives a book that another version built a snapshot of this one, as the program would.
func fitting(path string) error {
	s, err := store.Open(path, store.Options{Program: "bench"})
	if err != nil {
		return err
	}
	if _, err := taken(s); err == nil {
		return s.Close()
	}
	fmt.Fprintln(os.Stderr, "the snapshot is of another version: all entries are added up once")
	b := core.NewBook(1)
	err = s.Each(1, func(r store.Record) error {
		e, err := core.Decode(r.Number, r.Action, r.Body)
		if err != nil {
			return err
		}
		return b.Apply(e)
	})
	if err = errors.Join(err, s.Close()); err != nil {
		return err
	}
	return snapshot(path, store.Options{Program: "bench"}, b)
}

// openDay adds a day that is not closed, through the store, as the program would.
func (t *bed) openDay(path string, p plan) error {
	s, err := store.Open(path, store.Options{Program: "bench"})
	if err != nil {
		return err
	}
	w := newWriter(p)
	if w.book, err = taken(s); err != nil {
		return errors.Join(err, s.Close())
	}
	w.add = func(action string, items []store.Item) error {
		_, err := s.Append(action, items)
		return err
	}
	w.calls = int(w.book.Seq() / 10)
	w.plan.open = true
	d := time.Date(lastYear, 11, 20, 0, 0, 0, 0, time.UTC)
	w.day(d, true)
	w.morning(d, 21) // after the last entry of every book
	t.evening = w.at.String()
	w.morning(d, 5)
	t.morning = w.at.String()
	t.oneLawn = w.book.Lawns()[len(w.book.Lawns())/2].LawnName
	return errors.Join(w.err, s.Close())
}

func (t *bed) measureBook() error {
	s, err := store.Open(t.ten, store.Options{ReadOnly: true})
	if err != nil {
		return err
	}
	err = s.Each(1, func(r store.Record) error {
		t.bodies += int64(len(r.Body))
		e, err := core.Decode(r.Number, r.Action, r.Body)
		if d, opens := e.What.(*core.DayOpened); opens {
			if t.first == "" {
				t.first = d.Date
			}
			t.last = d.Date
		}
		return err
	})
	last, lastErr := s.Last()
	t.entries = last
	return errors.Join(err, lastErr, s.Close())
}

// cold drops the pages of files from the cache: all of them where that is allowed, else of these files.
func cold(paths ...string) error {
	unix.Sync()
	if os.WriteFile("/proc/sys/vm/drop_caches", []byte("1"), 0) == nil {
		return nil
	}
	for _, p := range paths {
		f, err := os.Open(p)
		if err != nil {
			return err
		}
		if err := errors.Join(unix.Fadvise(int(f.Fd()), 0, 0, unix.FADV_DONTNEED), f.Close()); err != nil {
			return err
		}
	}
	return nil
}

// run runs the program on a book to its end.
func (t *bed) run(at, name string, args ...string) error {
	c := exec.Command(name, args...)
	c.Env = environment(at)
	if out, err := c.CombinedOutput(); err != nil {
		return fmt.Errorf("%s: %w\n%s", strings.Join(args, " "), err, out)
	}
	return nil
}

func copyFile(to, from string) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	_, err = io.Copy(out, in)
	return errors.Join(err, out.Sync(), out.Close())
}

func size(path string) int64 {
	i, err := os.Stat(path)
	if err != nil {
		return 0
	}
	return i.Size()
}
