package main

import (
	"fmt"
	"path/filepath"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// What came after a copy is looked for in three places, the surest first. An entry is taken if it chains: its digest
// follows from the one before it, so that nothing false gets in, wherever it was found.
const (
	fromLines = iota
	fromOldBook
	fromCopies
)

// rebuilt is a book that is brought back.
type rebuilt struct {
	copy   *store.Store
	copied uint64     // entries of the copy
	book   *core.Book // grows by what is found
	later  []core.Entry
	took   [3]int

	found map[uint64][]candidate
	known uint64 // the highest number of which anything is known
}

type candidate struct {
	e    core.Entry
	from int
}

// gather adds what was booked after the copy. A later copy is looked through only if it may hold more: each is as large
// as the book.
func (r *rebuilt) gather(path, from string) {
	r.found = map[uint64][]candidate{}
	r.fromLines(linesPath(path))
	r.fromFile(path, fromOldBook, true)
	r.chain()
	for _, c := range copiesOf(path) {
		at, err := lookAt(c.path)
		if filepath.Clean(c.path) == filepath.Clean(from) || err == nil && at.last <= r.book.Seq() {
			continue
		}
		r.fromFile(c.path, fromCopies, err != nil)
		r.chain()
	}
}

func (r *rebuilt) put(e core.Entry, from int, sure bool) {
	if sure {
		r.known = max(r.known, e.Seq)
	}
	r.found[e.Seq] = append(r.found[e.Seq], candidate{e, from})
}

// fromLines reads the lines beside the book. One that is not there, or torn, gives nothing.
func (r *rebuilt) fromLines(path string) {
	lines, _ := readLines(path, r.book.Seq()) // what was read before an error counts
	for _, l := range lines {
		r.put(core.Entry{Seq: l.Seq, At: l.At.V, Action: l.Action, Truck: l.Truck, What: l.Fact, Digest: l.Digest}, fromLines, true)
	}
}

// fromFile looks through a file page by page. A later copy that can be opened follows, or is of a branch that was left:
// then its numbers are not sure to have been.
func (r *rebuilt) fromFile(path string, from int, sure bool) {
	list, _ := store.Salvage(path, r.book.Seq()) // a file that cannot be read gives nothing
	held := false
	for i := range list {
		held = held || list[i].Held
	}
	for _, s := range list {
		action := s.Action
		if action == "" { // its first entry, which names it, was not found
			action = fmt.Sprintf("found-%d", s.Number-s.Back)
		}
		if e, err := core.Decode(s.Number, action, s.Body); err == nil {
			r.put(e, from, sure && (s.Held || !held))
		}
	}
}

// chain takes entries as long as one follows on the last.
func (r *rebuilt) chain() {
	for r.next() {
	}
}

func (r *rebuilt) next() bool {
	seq := r.book.Seq() + 1
	for _, c := range r.found[seq] {
		c.e.Keys = r.book.Keys(c.e.What, c.e.At)
		if r.book.Apply(c.e) == nil {
			r.later = append(r.later, c.e)
			r.took[c.from]++
			delete(r.found, seq)
			return true
		}
	}
	return false
}

// missing is how many entries are known to have been and were not found in order.
func (r *rebuilt) missing() uint64 { return r.known - min(r.known, r.book.Seq()) }

// holds tells whether an entry is among those of the book.
func (r *rebuilt) holds(seq uint64, digest core.Digest) bool {
	switch {
	case seq == 0:
		return true
	case seq <= r.copied:
		return sameEntry(r.copy, seq, digest)
	case seq <= r.book.Seq():
		return r.later[seq-r.copied-1].Digest == digest
	}
	return false
}
