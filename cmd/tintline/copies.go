package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// A daily copy stands beside its book as BOOK.DATE.copy. Nothing but files of exactly this name is ever taken for a copy,
// and nothing but a copy of this very book is ever removed or replaced.

// besideCopy is a file with the name of a daily copy.
type besideCopy struct {
	date, path string
	bytes      int64
}

const copyTail = ".copy"

func copyPath(book, date string) string { return book + "." + date + copyTail }

// copiesOf lists the copies beside a book, newest date first. A folder that cannot be read has none to show.
func copiesOf(book string) []besideCopy {
	list, err := os.ReadDir(filepath.Dir(book))
	if err != nil {
		return nil
	}
	var out []besideCopy
	for _, e := range list {
		date, ok1 := strings.CutPrefix(e.Name(), filepath.Base(book)+".")
		date, ok2 := strings.CutSuffix(date, copyTail)
		if !ok1 || !ok2 || !isDate(date) {
			continue
		}
		if st, err := e.Info(); err == nil && st.Mode().IsRegular() {
			out = append(out, besideCopy{date, filepath.Join(filepath.Dir(book), e.Name()), st.Size()})
		}
	}
	slices.SortFunc(out, func(a, b besideCopy) int { return strings.Compare(b.date, a.date) })
	return out
}

func isDate(s string) bool {
	t, err := time.Parse(time.DateOnly, s)
	return err == nil && t.Format(time.DateOnly) == s
}

// looked is what a first look at a copy shows, without reading it through.
type looked struct {
	path   string
	id     string
	last   uint64
	digest core.Digest // of its last entry
}

func lookAt(path string) (at looked, err error) {
	s, err := store.Open(path, storeOptions(true))
	if err != nil {
		return at, err
	}
	at.path, at.id = path, s.Meta().BookID
	if at.last, err = s.Last(); err == nil && at.last > 0 {
		err = s.Each(at.last, func(r store.Record) error {
			e, err := core.Decode(r.Number, r.Action, r.Body)
			at.digest = e.Digest
			return err
		})
	}
	return at, errors.Join(err, s.Close())
}

// furthest is the copy beside a book that holds the most entries; of those that hold the same the newest. of says which
// count.
func furthest(book string, of func(looked) bool) (c besideCopy, holds looked, ok bool) {
	for _, one := range copiesOf(book) {
		at, err := lookAt(one.path)
		if err != nil || !of(at) {
			continue
		}
		if !ok || at.last > holds.last {
			c, holds, ok = one, at, true
		}
	}
	return c, holds, ok
}

func anyCopy(looked) bool { return true }

// copyOf tells whether a copy holds the beginning of this very book: not of another, nor of a branch that was left when an
// older copy was brought back.
func copyOf(file *store.Store) func(looked) bool {
	id := file.Meta().BookID
	return func(at looked) bool {
		last, err := file.Last()
		return err == nil && at.id == id && at.last > 0 && at.last <= last && sameEntry(file, at.last, at.digest)
	}
}

// pruneCopies removes the copies of a book that are older than so many days. The newest two stay whatever their age: a
// clock that ran ahead for an hour must not cost what is older.
func pruneCopies(book, id, today string, days int) error {
	t, err := time.Parse(time.DateOnly, today)
	if err != nil {
		return err
	}
	oldest := t.AddDate(0, 0, -days).Format(time.DateOnly)
	kept := 0
	var failed error
	for _, c := range copiesOf(book) {
		at, err := lookAt(c.path)
		if err != nil || at.id != id {
			continue // what it is cannot be told: it is left alone
		}
		if kept++; kept <= 2 || c.date >= oldest {
			continue
		}
		if err := os.Remove(c.path); err != nil && failed == nil {
			failed = &failure{
				what: fmt.Sprintf("The old copy %s could not be removed: %v.", c.path, bareError(err)),
				do:   "Remove it by hand if the disk is short of room; the new copy is made.", code: exitWrite, err: err,
			}
		}
	}
	return failed
}

// bareError drops the operation and the path that the system's error repeats.
func bareError(err error) error {
	var p *os.PathError
	var l *os.LinkError
	switch {
	case errors.As(err, &p):
		return p.Err
	case errors.As(err, &l):
		return l.Err
	}
	return err
}

// freeName is a name that nobody has, made of a path, a time and a tail.
func freeName(path string, at time.Time, tail string) string {
	stem := path + "." + at.Format("2006-01-02-150405")
	name := stem + tail
	for n := 2; ; n++ {
		if _, err := os.Lstat(name); errors.Is(err, os.ErrNotExist) {
			return name
		}
		name = fmt.Sprintf("%s-%d%s", stem, n, tail)
	}
}

// wayBack adds to an error about the file of a book how to get the book back: the copy that reaches furthest, and the
// command, as it has to be typed.
func wayBack(path string, err error) error {
	gone := errors.Is(err, store.ErrMissing)
	if !gone && !isBroken(err) {
		return err
	}
	do, found := copyBack(path)
	if !found {
		do, found = linesBack(path, gone)
	}
	if !found {
		if !errors.Is(err, store.ErrDamaged) && !errors.Is(err, store.ErrShort) {
			return err
		}
		do = fromElsewhere(path)
	}
	f := *explain(err)
	f.do, f.err = do, err
	if gone {
		f.what = fmt.Sprintf("There is no book at %s, but what is left of one stands beside it.", path)
		f.do = strings.TrimSuffix(f.do, ".") + "; for a new book choose another name."
	}
	return &f
}

// isBroken tells whether a file is one that a copy can take the place of.
func isBroken(err error) bool {
	for _, kind := range []error{store.ErrDamaged, store.ErrShort, store.ErrEmpty, store.ErrForeign} {
		if errors.Is(err, kind) {
			return true
		}
	}
	var f *failure
	return errors.As(err, &f) && f.code == exitDamaged
}

// doBringBack is what to do about a book that cannot be used as it is.
func doBringBack(path string) string {
	if do, found := copyBack(path); found {
		return do
	}
	return fromElsewhere(path)
}

func fromElsewhere(path string) string {
	return fmt.Sprintf("Leave the file as it is; no copy of it stands beside it, and tintline restore COPY --book %s brings it back from one kept elsewhere, with what can still be read of this file.", shellWord(path))
}

// copyBack names the copy of a book that reaches furthest and the command that makes a book of it.
func copyBack(path string) (do string, found bool) {
	c, holds, ok := furthest(path, anyCopy)
	if !ok {
		return "", false
	}
	return fmt.Sprintf("Run %s to bring it back from the copy of %s (%d entries) with what was booked later as far as it can be read; nothing is overwritten.",
		restoreCommand(c.path, path), shortDate(c.date), holds.last), true
}

// linesBack does the same for a book that has no copy yet, whose lines begin with its first entry.
func linesBack(path string, gone bool) (do string, found bool) {
	first, last, ok := linesHold(linesPath(path))
	if !ok || first != 1 {
		return "", false
	}
	to := path
	if !gone {
		to += ".new"
	}
	return fmt.Sprintf("Run tintline replay %s --book %s to make a book of the lines beside it, entries 1 to %d; there is no copy yet.",
		shellWord(linesPath(path)), shellWord(to), last), true
}

func restoreCommand(from, book string) string {
	return fmt.Sprintf("tintline restore %s --book %s", shellWord(from), shellWord(book))
}

// shellWord writes a path so that a shell takes it as one word.
func shellWord(s string) string {
	plain := func(r rune) bool {
		return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || strings.ContainsRune("/._-+:@%", r)
	}
	if strings.HasPrefix(s, "-") { // or it would be read as flags
		s = "./" + s
	}
	if s != "" && strings.IndexFunc(s, func(r rune) bool { return !plain(r) }) < 0 {
		return s
	}
	return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'"
}

// shortDate is a date as a sentence has it: 28 Nov.
func shortDate(date string) string {
	t, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return date
	}
	return t.Format("2 Jan")
}
