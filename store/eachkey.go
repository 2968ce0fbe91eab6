package store

import (
	"bytes"
	"errors"
	"slices"
)

// EachKey calls f for each key that begins with prefix, by key and then by
// number, with the record that was written with it. Each key is compared with
// its record; that none is left out is checked, after the last call, when the
// prefix is empty (and by Check). An error of f ends the walk and is returned.
func (s *Store) EachKey(prefix []byte, f func(key []byte, r Record) error) error {
	v, err := s.view()
	if err != nil {
		return err
	}
	defer s.done(v)
	h, err := v.head()
	if err != nil {
		return err
	}
	start := escapeKey(nil, prefix)
	count := uint64(0)
	w := walker{v: v}
	k, _, ok, err := w.seek(v.dir[string(bucketKeys)], start)
	if err == nil && w.before[0] != nil { // it might be one of ours, damaged
		err = v.eachOfRow(w.before[0], nil, nil)
	}
	for ; ok && err == nil; k, _, ok, err = w.next() {
		past := false
		if err := v.eachOfRow(k, func(key []byte) bool {
			past = !bytes.HasPrefix(key, prefix)
			return !past
		}, f); err != nil {
			return err
		}
		if past {
			return nil
		}
		count++
	}
	if err == nil && len(prefix) == 0 && count != h.keys {
		return damaged(v.path, "it holds %d keys and should hold %d", count, h.keys)
	}
	return err
}

// eachOfRow calls f for the records of one row of the bucket of keys: the one to
// which it leads, and those after it that carry the key on. want may refuse the
// key when the row has been compared with its record; without f that is all.
func (v *view) eachOfRow(row []byte, want func(key []byte) bool, f func([]byte, Record) error) error {
	key, n, err := parseOrderedKey(row)
	if err != nil {
		return damaged(v.path, "a key is unreadable (%v)", err)
	}
	w := walker{v: v, keep: true}
	r, ok, err := v.numbered(&w, n)
	if err == nil && !ok {
		err = damaged(v.path, "record %d is missing", n)
	}
	if err != nil {
		return err
	}
	slot := r.written(key)
	if slot < 0 {
		return damaged(v.path, "a key leads to record %d, which was not written with it", n)
	}
	if f == nil || !want(key) {
		return nil
	}
	var act actionOf
	var on carried
	for m := n; ; {
		if err := errors.Join(act.follow(v, m, r), on.follow(v, m, &r)); err != nil {
			return err
		}
		if err := f(bytes.Clone(key), r.copied(m, act.id)); err != nil {
			return err
		}
		if r.form == form1 {
			return nil
		}
		m++
		if r, ok, err = v.after(&w, m); err != nil || !ok || !r.carries(keyRef{m - n, slot}) {
			return err
		}
	}
}

// numbered seeks record n.
func (v *view) numbered(w *walker, n uint64) (stored, bool, error) {
	num := numberKey(n)
	k, val, ok, err := w.seek(v.dir[string(bucketRecords)], num)
	if err != nil || !ok || !bytes.Equal(k, num) {
		return stored{}, false, err
	}
	return v.parse(n, k, val)
}

// after goes on to record n; not ok at the end.
func (v *view) after(w *walker, n uint64) (stored, bool, error) {
	k, val, ok, err := w.next()
	if err != nil || !ok {
		return stored{}, false, err
	}
	if !bytes.Equal(k, numberKey(n)) {
		return stored{}, false, damaged(v.path, "record %d is missing", n)
	}
	return v.parse(n, k, val)
}

func (v *view) parse(n uint64, k, val []byte) (stored, bool, error) {
	r, err := parseRecord(k, val, nil)
	if err != nil {
		return r, false, damaged(v.path, "record %d is unreadable (%v)", n, err)
	}
	return r, true, nil
}

// written is the slot in which a key stands here, -1 if it does not.
func (r *stored) written(key []byte) int {
	for i, k := range r.keys {
		if r.refs[i].back == 0 && bytes.Equal(k, key) {
			return i
		}
	}
	return -1
}

func (r *stored) carries(ref keyRef) bool {
	return slices.Contains(r.refs[:len(r.keys)], ref)
}

// copied is the record with bytes of its own.
func (r *stored) copied(n uint64, action string) Record {
	out := Record{Number: n, Action: action, Body: append([]byte{}, r.body...)}
	for _, k := range r.keys {
		out.Keys = append(out.Keys, append([]byte{}, k...))
	}
	return out
}
