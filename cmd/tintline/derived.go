package main

import (
	"bytes"
	"crypto/sha256"
	"errors"

	"example.com/tintline/core"
	"example.com/tintline/core/audit"
	"example.com/tintline/core/past"
	"example.com/tintline/store"
)

// derived holds what a file keeps beside its entries, the rows of past days and the snapshot, against what the entries
// come to.
type derived struct {
	file *store.Store
	a    *audit.Audit

	rows map[string][sha256.Size]byte // of each row that the entries end

	at       uint64 // the entry that the snapshot stands at; 0: there is none
	snapshot []byte
	other    bool // it was made by another version, and is made anew when it is needed
	met      bool // the entries came to a close there
	fits     bool
}

func newDerived(file *store.Store, a *audit.Audit) (*derived, error) {
	b := &derived{file: file, a: a, rows: map[string][sha256.Size]byte{}}
	a.Apply = b.apply
	at, body, ok, err := file.Snapshot()
	if err != nil || !ok {
		return b, err
	}
	b.at, b.snapshot = at, body
	_, err = core.Resume(body)
	b.other = errors.Is(err, core.ErrNewer)
	return b, nil
}

// apply adds an entry to the book, and notes the rows that it ends.
func (b *derived) apply(book *core.Book, e core.Entry) error {
	rows, err := past.Apply(book, e)
	for _, r := range rows {
		b.rows[string(r.Key)] = sha256.Sum256(r.Value)
	}
	if err == nil && b.at != 0 && !b.met {
		if c := book.LastClose(); c.Seq() == b.at {
			b.met, b.fits = true, bytes.Equal(c.Keep(), b.snapshot)
		}
	}
	return err
}

// end compares, once all entries were added up, and says what came out.
func (b *derived) end(v *verified) {
	if !b.a.Whole() {
		return
	}
	v.Snapshot, v.Rows = derivedFits, derivedFits
	switch {
	case b.at == 0, b.other:
		v.Snapshot = derivedNone
	case !b.met || !b.fits:
		v.Snapshot = derivedWrong
		v.wrong("The snapshot, which stands at entry %d, is not the book that the entries come to there. Nothing rests on it: the entries are believed.", b.at)
	}
	b.compareRows(v)
}

// mostRows is how many rows that do not fit are findings of their own; the others are counted.
const mostRows = 6

func (b *derived) compareRows(v *verified) {
	if old, err := past.Outdated(b.file.Rows); err == nil && old {
		v.Rows = derivedOlder
		return
	}
	left := len(b.rows)
	wrong := 0
	err := b.file.Rows(nil, nil, func(key, value []byte) error {
		want, ok := b.rows[string(key)]
		if ok {
			left--
		}
		if ok && want == sha256.Sum256(value) {
			return nil
		}
		switch wrong++; {
		case wrong > mostRows:
		case ok:
			v.wrong("The row %q is not what the entries come to.", key)
		default:
			v.wrong("The row %q is of no day that was ended.", key)
		}
		return nil
	})
	if wrong > mostRows {
		v.wrong("Of the rows %d more do not fit.", wrong-mostRows)
	}
	switch {
	case errors.Is(err, store.ErrNoRows):
		v.Rows = derivedNone
		return
	case err != nil:
		v.wrong("%s", err.Error())
		wrong++
	case left > 0:
		v.wrong("%d of the %d rows that the entries end are missing.", left, len(b.rows))
		wrong++
	}
	if wrong > 0 {
		v.Rows = derivedWrong
	}
}
