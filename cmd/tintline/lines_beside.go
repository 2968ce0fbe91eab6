package main

import (
	"errors"
	"fmt"
	"os"
	"sync"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// The lines beside a book are its entries since the last copy as text, one a line, as the journal prints them. They are
// handed to the system after each commit and not synced: what they give back is the one entry that a damaged head loses,
// and everything since the copy when the book itself cannot be read.

func linesPath(book string) string { return book + ".lines" }

// linesBeside are the lines beside an open book. Their own trouble never holds up an action.
type linesBeside struct {
	book string

	mu    sync.Mutex
	f     *os.File
	first uint64 // number of the first line, 0: there is none
	last  uint64 // of the last line, or of the entry before the first one to come
	fault error  // why the last entry is not among them
}

// mostMended bounds what a start writes of a book that has no copy yet.
const mostMended = 20_000

// begin opens the lines of a book and makes them reach to its last entry. What they hold beyond it is returned: the book
// has lost it. Lines that do not belong to this book are set aside under the name given.
func (l *linesBeside) begin(file *store.Store, aside func() string) (beyond []core.Line, note string, err error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	path := linesPath(l.book)
	last, err := file.Last()
	if err != nil {
		return nil, "", err
	}
	s, err := spanOf(path)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return nil, "", l.anew(file)
	case err == nil && s.first > 0 && s.last > last:
		if beyond, err = readLines(path, last); err == nil {
			return beyond, "", nil
		}
	case err == nil && s.first > 0 && sameEntry(file, s.last, s.digest):
		if err := os.Truncate(path, s.end); err != nil {
			return nil, "", l.failed(err)
		}
		l.first, l.last = s.first, s.last
		return nil, "", l.mend(file)
	case err == nil && s.first == 0: // nothing, or the beginning of a line
		if err := os.Remove(path); err != nil {
			return nil, "", l.failed(err)
		}
		return nil, "", l.anew(file)
	}
	note, err = l.moveAway(file, aside())
	return nil, note, err
}

// sameEntry tells whether the file holds this very entry.
func sameEntry(file *store.Store, seq uint64, digest core.Digest) bool {
	same := false
	_ = file.Each(seq, func(r store.Record) error {
		e, err := core.Decode(r.Number, r.Action, r.Body)
		same = err == nil && e.Seq == seq && e.Digest == digest
		return errEnough
	})
	return same
}

// anew makes the lines that follow on the copy that reaches furthest; without one, all of them if they are not many.
func (l *linesBeside) anew(file *store.Store) error {
	last, err := file.Last()
	if err != nil {
		return err
	}
	from := uint64(0)
	if _, holds, ok := furthest(l.book, copyOf(file)); ok {
		from = holds.last
	}
	if last-from > mostMended {
		from = last
	}
	l.first, l.last = 0, from
	return l.mend(file)
}

// mend writes the lines that are missing.
func (l *linesBeside) mend(file *store.Store) error {
	text, last, err := linesAfter(file, l.last)
	if err != nil || last == l.last {
		return err
	}
	return l.put(text, l.last+1, last)
}

// linesAfter are the entries of a file after one of them as lines, and the number of the last one.
func linesAfter(file *store.Store, seq uint64) (text []byte, last uint64, err error) {
	last = seq
	err = file.Each(seq+1, func(r store.Record) error {
		e, err := core.Decode(r.Number, r.Action, r.Body)
		if err != nil {
			return err
		}
		text, last = append(append(text, core.EncodeLine(e, 0)...), '\n'), e.Seq
		return nil
	})
	return text, last, err
}

// put hands lines to the system.
func (l *linesBeside) put(text []byte, first, last uint64) (err error) {
	if l.f == nil {
		if l.f, err = os.OpenFile(linesPath(l.book), os.O_WRONLY|os.O_APPEND|os.O_CREATE, 0o600); err != nil {
			l.f = nil
			return l.failed(err)
		}
	}
	st, err := l.f.Stat()
	if err == nil {
		if _, err = l.f.Write(text); err != nil {
			_ = l.f.Truncate(st.Size()) // no half line, if it can be helped
		}
	}
	if err != nil {
		return l.failed(err)
	}
	if l.first == 0 {
		l.first = first
	}
	l.last, l.fault = last, nil
	return nil
}

// failed keeps what is to be said about the lines.
func (l *linesBeside) failed(err error) error {
	l.fault = &failure{
		what: fmt.Sprintf("The lines beside the book, %s, could not be written: %v.", linesPath(l.book), bareError(err)),
		do:   "Make room or give yourself the right to write there; the book itself is not touched by it.", code: exitWrite, err: err,
	}
	return l.fault
}

// add writes the entries of an action that is on the disk.
func (l *linesBeside) add(file *store.Store, entries []core.Entry) error {
	l.mu.Lock()
	defer l.mu.Unlock()
	var text []byte
	next := l.last + 1
	for i := range entries {
		if entries[i].Seq < next {
			continue // repeated
		}
		if entries[i].Seq != next {
			return l.mend(file) // an earlier one could not be written
		}
		text = append(append(text, core.EncodeLine(entries[i], 0)...), '\n')
		next++
	}
	if len(text) == 0 {
		return nil
	}
	return l.put(text, l.last+1, next-1)
}

// renew keeps only the lines after an entry that a copy on the disk holds. The old lines stay until the new ones are
// there.
func (l *linesBeside) renew(file *store.Store, copied uint64) error {
	l.mu.Lock()
	defer l.mu.Unlock()
	text, last, err := linesAfter(file, copied)
	if err != nil {
		return err
	}
	l.letGo()
	next := linesPath(l.book) + ".new"
	if err = os.WriteFile(next, text, 0o600); err == nil {
		err = os.Rename(next, linesPath(l.book))
	}
	if err != nil {
		_ = os.Remove(next)
		return l.failed(err)
	}
	l.first, l.last, l.fault = 0, last, nil
	if last > copied {
		l.first = copied + 1
	}
	return nil
}

// letGo closes the file: the next line opens what bears the name then. It was never more than handed over.
func (l *linesBeside) letGo() {
	if l.f != nil {
		_ = l.f.Close()
		l.f = nil
	}
}

func (l *linesBeside) count() int {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.first == 0 {
		return 0
	}
	return int(l.last - l.first + 1)
}

// begins is the number of the first line, or of the one to come.
func (l *linesBeside) begins() uint64 {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.first > 0 {
		return l.first
	}
	return l.last + 1
}

func (l *linesBeside) close() {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.letGo()
}

// setAside gives the lines another name and begins new ones.
func (l *linesBeside) setAside(file *store.Store, to string) (note string, err error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.moveAway(file, to)
}

func (l *linesBeside) moveAway(file *store.Store, to string) (note string, err error) {
	l.letGo()
	if err := os.Rename(linesPath(l.book), to); err != nil {
		return "", l.failed(err)
	}
	note = fmt.Sprintf("The lines beside the book did not belong to it; they stand in %s now.", to)
	return note, l.anew(file)
}

func (l *linesBeside) trouble() error {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.fault
}
