package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
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

// linesSpan is what a file of lines reaches over.
type linesSpan struct {
	first, last uint64      // numbers; 0: there is not one whole line
	digest      core.Digest // of the last
	end         int64       // of the last whole line
}

func spanOf(path string) (s linesSpan, err error) {
	f, err := os.Open(path)
	if err != nil {
		return s, err
	}
	defer func() { _ = f.Close() }()
	st, err := f.Stat()
	if err != nil {
		return s, err
	}
	head, err := bufio.NewReader(io.LimitReader(f, longestLine)).ReadBytes('\n')
	if errors.Is(err, io.EOF) {
		return s, nil // not one whole line
	}
	if err != nil {
		return s, err
	}
	l, err := core.DecodeLine(bytes.TrimSpace(head))
	if err != nil || !l.HasDigest || l.Seq == 0 {
		return s, errNotLines
	}
	s.first = l.Seq
	text, end, err := lastLine(f, st.Size())
	if err != nil {
		return s, err
	}
	if l, err = core.DecodeLine(text); err != nil || !l.HasDigest || l.Seq < s.first {
		return s, errNotLines
	}
	s.last, s.digest, s.end = l.Seq, l.Digest, end
	return s, nil
}

var errNotLines = errors.New("they are not lines of a journal")

// lastLine reads the last line that ends in a newline, and says where it ends.
func lastLine(f *os.File, size int64) (text []byte, end int64, err error) {
	for n := int64(1 << 16); ; n *= 8 {
		from := max(size-n, 0)
		b := make([]byte, size-from)
		if _, err := f.ReadAt(b, from); err != nil && !errors.Is(err, io.EOF) {
			return nil, 0, err
		}
		stop := bytes.LastIndexByte(b, '\n')
		start := bytes.LastIndexByte(b[:max(stop, 0)], '\n')
		if stop >= 0 && (start >= 0 || from == 0) {
			return b[start+1 : stop], from + int64(stop) + 1, nil
		}
		if from == 0 || n > longestLine {
			return nil, 0, errNotLines
		}
	}
}

// linesHold tells which entries a file of lines reaches over.
func linesHold(path string) (first, last uint64, ok bool) {
	s, err := spanOf(path)
	return s.first, s.last, err == nil && s.first > 0
}

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
	last, err := file.Last()
	if err != nil || l.last >= last {
		return err
	}
	var text []byte
	err = file.Each(l.last+1, func(r store.Record) error {
		e, err := core.Decode(r.Number, r.Action, r.Body)
		if err != nil {
			return err
		}
		text = append(append(text, core.EncodeLine(e, 0)...), '\n')
		return nil
	})
	if err != nil {
		return err
	}
	return l.put(text, l.last+1, last)
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
	if l.f != nil {
		_ = l.f.Close() // it was never more than handed over
		l.f = nil
	}
	path := linesPath(l.book)
	next := path + ".new"
	if err := os.WriteFile(next, nil, 0o600); err != nil {
		return l.failed(err)
	}
	if err := os.Rename(next, path); err != nil {
		return l.failed(err)
	}
	l.first, l.last = 0, copied
	return l.mend(file)
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
	if l.f != nil {
		_ = l.f.Close()
		l.f = nil
	}
}

// readLines reads the whole lines after an entry. One that cannot be read, the torn last one above all, is passed over.
func readLines(path string, above uint64) ([]core.Line, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer func() { _ = f.Close() }()
	var out []core.Line
	in := bufio.NewReaderSize(f, 1<<16)
	for {
		text, err := in.ReadBytes('\n')
		if len(text) > 0 {
			l, bad := core.DecodeLine(bytes.TrimSpace(text))
			if bad == nil && l.HasDigest && l.At.Known && l.Seq > above {
				out = append(out, l)
			}
		}
		if errors.Is(err, io.EOF) {
			return out, nil
		}
		if err != nil {
			return out, err
		}
	}
}

// setAside gives the lines another name and begins new ones.
func (l *linesBeside) setAside(file *store.Store, to string) (note string, err error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.moveAway(file, to)
}

func (l *linesBeside) moveAway(file *store.Store, to string) (note string, err error) {
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
