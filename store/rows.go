package store

import (
	"bytes"
	"fmt"
)

// Row is a value that the caller derives from the records: Append puts it, in
// the commit of the item that brings it, in place of the one with the same key.
type Row struct{ Key, Value []byte }

// checkRows tells what cannot be stored of the rows of item n.
func checkRows(n int, rows []Row) error {
	if len(rows) > MaxRows {
		return refused("Entry %d of the action has %d rows, more than %d.", n, len(rows), MaxRows)
	}
	for _, r := range rows {
		if len(r.Key) == 0 || len(r.Key) > MaxKey {
			return refused("A row's key has 1 to %d bytes, one of entry %d has %d.", MaxKey, n, len(r.Key))
		}
		if len(r.Value) > MaxRow {
			return refused("Entry %d of the action has a row of %d bytes, more than %d.", n, len(r.Value), MaxRow)
		}
	}
	return nil
}

// addRows seals rows; of those with the same key the last one stays.
func (b *batch) addRows(rows []Row) {
	for _, r := range rows {
		v := make([]byte, 0, len(r.Value)+5)
		p := pair{bytes.Clone(r.Key), seal(r.Key, append(append(v, formRow), r.Value...))}
		if i, ok := b.at[string(r.Key)]; ok {
			b.rows[i] = p
			continue
		}
		if b.at == nil {
			b.at = map[string]int{}
		}
		b.at[string(r.Key)] = len(b.rows)
		b.rows = append(b.rows, p)
	}
}

// countRows corrects the head by the rows of the batch and those that they replace.
func (b *batch) countRows(old func(key []byte) (value []byte, ok bool, err error)) error {
	for _, p := range b.rows {
		was, ok, err := old(p.k)
		if err != nil {
			return err
		}
		if ok {
			b.h.rowSum -= mark(lastSeal(was))
		} else {
			b.h.rows++
		}
		b.h.rowSum += mark(lastSeal(p.v))
	}
	return nil
}

// mark spreads a seal, so that marks can be added up and taken off again.
func mark(seal uint32) uint64 {
	x := uint64(seal) + 0x9E3779B97F4A7C15
	x = (x ^ x>>30) * 0xBF58476D1CE4E5B9
	x = (x ^ x>>27) * 0x94D049BB133111EB
	return x ^ x>>31
}

// oldRow reads the row that another one will replace.
func (v *view) oldRow(key []byte) ([]byte, bool, error) {
	val, ok, err := v.get(v.dir[string(bucketRows)], key)
	if err == nil && ok {
		_, err = v.row(key, val)
	}
	return val, ok, err
}

func (v *view) row(k, val []byte) ([]byte, error) {
	b, err := unsealForm(formRow, k, val)
	if err != nil {
		return nil, damaged(v.path, "row %q is unreadable (%v)", k, err)
	}
	return b, nil
}

// Rows calls f for each row from a key on, in order, up to another that is not
// among them (nil: to the end). Each is compared with its seal; that none is left
// out or out of date is checked, after the last call, when all are asked for (and
// by Check). A file of format 1 has none: ErrNoRows. An error of f ends the walk
// and is returned. The bytes are the caller's.
func (s *Store) Rows(from, to []byte, f func(key, value []byte) error) error {
	v, err := s.view()
	if err != nil {
		return err
	}
	defer s.done(v)
	if v.format == 1 {
		return &Trouble{
			What: fmt.Sprintf("The book %s is of format 1, which keeps no rows.", v.path),
			Do:   "Work them out from its entries, or write it anew in the present format.",
			Kind: ErrNoRows,
		}
	}
	return v.eachRow(from, to, f)
}

func (v *view) eachRow(from, to []byte, f func(key, value []byte) error) error {
	h, err := v.head()
	if err != nil {
		return err
	}
	var count, total uint64
	w := walker{v: v}
	k, val, ok, err := w.seek(v.dir[string(bucketRows)], from)
	if err == nil && w.before[0] != nil { // it might be one of ours, damaged
		_, err = v.row(w.before[0], w.before[1])
	}
	for ; ok && err == nil; k, val, ok, err = w.next() {
		b, err := v.row(k, val)
		if err != nil {
			return err
		}
		if to != nil && bytes.Compare(k, to) >= 0 {
			return nil
		}
		count++
		total += mark(lastSeal(val))
		if err := f(k, b); err != nil {
			return err
		}
	}
	if err == nil && len(from) == 0 && to == nil && (count != h.rows || total != h.rowSum) {
		return damaged(v.path, "its %d rows are not the %d that its head counts", count, h.rows)
	}
	return err
}
