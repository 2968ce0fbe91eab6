package past

import (
	"bytes"
	"errors"
	"fmt"

	"example.com/tintline/core"
)

// errEnough ends a walk that has seen all it wants.
var errEnough = errors.New("enough")

// walk reads the rows of the days from one date to another, oldest first, except that of the book's own day, which may be
// the one of a day whose end was struck. It fails with ErrFit where a day is missing: between two rows, before the first or
// behind the last.
type walk struct {
	own      *core.Day
	from, to string // both inclusive; empty: no bound
	prefix   string
	known    texts
	last     uint64 // the entry that opened the day of the last row
	closed   bool   // a row behind the last date was seen, and fits
}

func newWalk(own *core.Day, prefix, from, to string) *walk {
	return &walk{own: own, from: from, to: to, prefix: prefix, known: texts{}}
}

// days calls f with each row, its head read already.
func (w *walk) days(read Reader, f func(h head, r *reader) error) error {
	if w.own.Seq == 0 {
		return nil
	}
	low, high := span(w.prefix, w.from)
	r := &reader{known: w.known}
	err := read(low, high, func(key, value []byte) error {
		r.b, r.err = value, nil
		h := r.head(w.prefix, key)
		if r.err != nil {
			return r.err
		}
		if h.opened >= w.own.Seq {
			return errEnough
		}
		if err := w.follows(h.before, h.beforeDate); err != nil {
			return err
		}
		if w.to != "" && h.date > w.to {
			w.closed = true
			return errEnough
		}
		w.last = h.opened
		return f(h, r)
	})
	if err != nil && !errors.Is(err, errEnough) {
		return err
	}
	if w.closed {
		return nil
	}
	return w.follows(w.own.Before, w.own.BeforeDate)
}

// follows tells whether the last row is that of the day before.
func (w *walk) follows(before uint64, beforeDate string) error {
	switch {
	case w.last != before && w.last != 0:
		return fmt.Errorf("%w: after the day opened by entry %d comes the one before which entry %d opened a day", ErrFit, w.last, before)
	case w.last == 0 && before != 0 && beforeDate >= w.from:
		return fmt.Errorf("%w: the day opened by entry %d is missing", ErrFit, before)
	}
	return nil
}

// has tells whether the book's own day is in the span.
func (w *walk) has(d *core.Day) bool {
	return d.Seq != 0 && (w.from == "" || d.Date >= w.from) && (w.to == "" || d.Date <= w.to)
}

// Folded holds rows in memory, for a file that has none or whose rows do not fit.
type Folded struct{ rows []Row }

// Put keeps rows; those with the same key take the place of the ones before.
func (m *Folded) Put(rows []Row) {
	for _, r := range rows {
		at := len(m.rows) // rows mostly come in order of their days, those of one day together
		for at > 0 && bytes.Compare(m.rows[at-1].Key, r.Key) >= 0 {
			at--
		}
		if at < len(m.rows) && bytes.Equal(m.rows[at].Key, r.Key) {
			m.rows[at] = r
			continue
		}
		m.rows = append(m.rows, Row{})
		copy(m.rows[at+1:], m.rows[at:])
		m.rows[at] = r
	}
}

// Apply adds an entry to the book and keeps the rows that it gives.
func (m *Folded) Apply(b *core.Book, e core.Entry) error {
	rows, err := Apply(b, e)
	m.Put(rows)
	return err
}

// Each walks all rows in the order of their keys.
func (m *Folded) Each(f func(Row) error) error {
	for _, r := range m.rows {
		if err := f(r); err != nil {
			return err
		}
	}
	return nil
}

// Read is a Reader.
func (m *Folded) Read(from, to []byte, f func(key, value []byte) error) error {
	for _, r := range m.rows {
		if bytes.Compare(r.Key, from) < 0 || (to != nil && bytes.Compare(r.Key, to) >= 0) {
			continue
		}
		if err := f(r.Key, r.Value); err != nil {
			return err
		}
	}
	return nil
}
