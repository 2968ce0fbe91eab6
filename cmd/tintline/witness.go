package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"

	"example.com/tintline/core"
	"example.com/tintline/core/audit"
	"example.com/tintline/store"
)

// witnesses are the copies and the lines beside a book. Each remembers digests, and the digest of an entry stands for all
// entries before it: whoever makes a whole book anew, with one entry changed and every digest after it, is betrayed by
// them alone.
type witnesses struct {
	copies []looked
	lines  map[uint64]core.Line
	first  uint64 // of the lines that are not in the book; 0: all are
	last   uint64 // of the lines

	other  map[string]bool // copies that hold another entry
	unread []string        // copies that cannot be read
	bad    int             // lines that cannot be read, or say what their digest does not stand for
}

// callWitnesses asks what stands beside the book. It comes before the book is read, so that an entry that is written
// meanwhile is in the book.
func callWitnesses(file *store.Store) *witnesses {
	w := &witnesses{lines: map[uint64]core.Line{}, other: map[string]bool{}}
	for _, c := range copiesOf(file.Path()) {
		at, err := lookAt(c.path)
		switch {
		case err != nil && isBroken(err):
			w.unread = append(w.unread, filepath.Base(c.path))
		case err == nil && at.id == file.Meta().BookID && at.last > 0:
			w.copies = append(w.copies, at)
		}
	}
	whole := wholeLines(linesPath(file.Path())) // before they are read: more may be written meanwhile
	lines, err := readLines(linesPath(file.Path()), 0)
	if err != nil {
		return w
	}
	w.bad = max(whole-len(lines), 0)
	for _, l := range lines {
		w.lines[l.Seq], w.last = l, max(w.last, l.Seq)
	}
	return w
}

// wholeLines counts the lines of a file that end.
func wholeLines(path string) int {
	text, err := os.ReadFile(path)
	if err != nil {
		return 0
	}
	return bytes.Count(text, []byte("\n"))
}

// hear holds an entry of the book against what is remembered of it.
func (w *witnesses) hear(e core.Entry) {
	for _, c := range w.copies {
		if c.last == e.Seq && c.digest != e.Digest {
			w.other[c.path] = true
		}
	}
	l, ok := w.lines[e.Seq]
	switch {
	case !ok:
	case l.Digest != e.Digest && w.first == 0:
		w.first = e.Seq
	case l.Digest == e.Digest && !says(l, e):
		w.bad++
		delete(w.lines, e.Seq)
	}
}

// says tells whether a line is the entry whose digest it bears.
func says(l core.Line, e core.Entry) bool {
	other := core.Entry{Seq: l.Seq, At: l.At.V, Action: l.Action, Truck: l.Truck, What: l.Fact, Digest: l.Digest}
	return l.Action == e.Action && bytes.Equal(other.Encode(), e.Encode())
}

// end says which of them go on where the book ends, and which hold something else. A copy may do so rightly, once an older
// one was brought back, so that it is said and is no finding. The lines are begun anew then, and may not.
func (w *witnesses) end(v *verified, last uint64) {
	v.Lines, v.LinesUnreadable = len(w.lines), w.bad
	v.CopiesUnreadable = append(v.CopiesUnreadable, w.unread...)
	for _, c := range w.copies {
		if w.other[c.path] || c.last > last {
			v.CopiesDiffer = append(v.CopiesDiffer, filepath.Base(c.path))
		} else {
			v.Copies++
		}
	}
	f := foundWrong{}
	switch {
	case w.first > 0:
		f = foundWrong{Entry: &w.first, Kind: string(audit.Changed), Says: fmt.Sprintf(
			"Entry %d of the book is another than in the lines beside it: it, or one before it, was changed in one of the two.", w.first)}
		v.Changed = append(v.Changed, f)
	case w.last > last:
		f = foundWrong{Kind: string(audit.Damaged), Says: fmt.Sprintf(
			"The book ends at entry %d and the lines beside it go on to entry %d: its last entries are missing, and opening it for writing brings them back.", last, w.last)}
		v.Damaged, v.lost = append(v.Damaged, f), true
	}
}

// besideWords says what stands beside the book and agrees with it.
func (v *verified) besideWords() string {
	out := fmt.Sprintf("%s and %s beside the book agree with it", counted(v.Copies, "copy", "copies"), counted(v.Lines, "line", "lines"))
	if v.Copies == 0 && v.Lines == 0 {
		out = "no copy and no lines to compare it with"
	}
	if n := len(v.CopiesDiffer); n > 0 {
		out += fmt.Sprintf("; %s holds others: unless an older copy was brought back, one of the two was changed", v.CopiesDiffer[n-1])
	}
	if n := len(v.CopiesUnreadable); n > 0 {
		out += fmt.Sprintf("; %s is damaged or no book", v.CopiesUnreadable[0])
		if n > 1 {
			out += fmt.Sprintf(", and so are %d more", n-1)
		}
	}
	if n := v.LinesUnreadable; n > 0 {
		out += fmt.Sprintf("; %s damaged or changed", counted(n, "line is", "lines are"))
	}
	return out
}
