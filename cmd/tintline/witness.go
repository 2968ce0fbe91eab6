package main

import (
	"fmt"
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
	lines  map[uint64]core.Digest
	first  uint64 // of the lines that are not in the book; 0: all are
	last   uint64 // of the lines

	other map[string]bool // copies that hold another entry
}

// callWitnesses asks what stands beside the book. It comes before the book is read, so that an entry that is written
// meanwhile is in the book.
func callWitnesses(file *store.Store) *witnesses {
	w := &witnesses{lines: map[uint64]core.Digest{}, other: map[string]bool{}}
	for _, c := range copiesOf(file.Path()) {
		at, err := lookAt(c.path)
		if err == nil && at.id == file.Meta().BookID && at.last > 0 {
			w.copies = append(w.copies, at) // one that cannot be read is verified by itself, with --book
		}
	}
	lines, err := readLines(linesPath(file.Path()), 0)
	if err != nil {
		return w
	}
	for _, l := range lines {
		w.lines[l.Seq], w.last = l.Digest, max(w.last, l.Seq)
	}
	return w
}

// hear holds an entry of the book against what is remembered of it.
func (w *witnesses) hear(e core.Entry) {
	for _, c := range w.copies {
		if c.last == e.Seq && c.digest != e.Digest {
			w.other[c.path] = true
		}
	}
	if d, ok := w.lines[e.Seq]; ok && d != e.Digest && w.first == 0 {
		w.first = e.Seq
	}
}

// end says which of them go on where the book ends, and which hold something else. A copy may do so rightly, once an older
// one was brought back, so that it is said and is no finding. The lines are begun anew then, and may not.
func (w *witnesses) end(v *verified, last uint64) {
	v.Lines = len(w.lines)
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
	out := fmt.Sprintf("%s and %s beside the book hold the same entries", counted(v.Copies, "copy", "copies"), counted(v.Lines, "line", "lines"))
	if v.Copies == 0 && v.Lines == 0 {
		out = "no copy and no lines to compare it with"
	}
	if n := len(v.CopiesDiffer); n > 0 {
		out += fmt.Sprintf("; %s holds others: unless an older copy was brought back, one of the two was changed", v.CopiesDiffer[n-1])
	}
	return out
}
