package store

import (
	"bytes"
	"encoding/binary"
)

// Record is one sealed record. Its bytes are the caller's; they may share memory
// with those of the records around it, so copy what is kept for long.
type Record struct {
	Number uint64
	Action string
	Body   []byte
	Keys   [][]byte
}

// readAhead is the size from which a file is read through before a full walk.
const readAhead = 8 << 20

func lastSeal(value []byte) uint32 { return binary.BigEndian.Uint32(value[len(value)-4:]) }

// Each calls f for each record from a number on, in order, with seals checked
// and numbers without a gap. A walk from 1 also checks that all records together
// are those that the head counts; if they are not, the error comes after the
// last call. An error of f ends the walk and is returned.
func (s *Store) Each(from uint64, f func(Record) error) error {
	v, err := s.view()
	if err != nil {
		return err
	}
	defer s.done(v)
	if from <= 1 && v.m.pages*pageSize > readAhead {
		if err := readThrough(v.file, v.m.pages); err != nil {
			return v.bad(err)
		}
	}
	return v.walk(from, func(n uint64, r stored, act actionOf) error {
		return f(Record{Number: n, Action: act.id, Body: r.body, Keys: r.keys})
	})
}

func (v *view) walk(from uint64, f func(n uint64, r stored, act actionOf) error) error {
	h, err := v.head()
	if err != nil {
		return err
	}
	var (
		running uint32
		act     actionOf
		room    [][]byte // for the keys of the records to come
	)
	from = max(from, 1)
	n := from
	w := walker{v: v}
	k, val, ok, err := w.seek(v.dir[string(bucketRecords)], numberKey(from))
	for ; ok; k, val, ok, err = w.next() {
		if len(k) != 8 || binary.BigEndian.Uint64(k) != n {
			return damaged(v.path, "record %d is missing", n)
		}
		if len(room) < MaxKeys {
			room = make([][]byte, 512)
		}
		r, err := parseRecord(k, val, room[:0])
		if err != nil {
			return damaged(v.path, "record %d is unreadable (%v)", n, err)
		}
		used := len(r.keys)
		r.keys, room = r.keys[:used:used], room[used:]
		if used == 0 {
			r.keys = nil
		}
		if err := act.follow(v, n, r); err != nil {
			return err
		}
		running = run(running, r.seal)
		if err := f(n, r, act); err != nil {
			return err
		}
		n++
	}
	if err != nil {
		return err
	}
	if n-1 != h.last && from <= h.last+1 {
		return damaged(v.path, "it holds %d records and should hold %d", n-1, h.last)
	}
	if from == 1 && running != h.running {
		return damaged(v.path, "its records together do not fit its head")
	}
	return nil
}

// actionOf keeps the action of the record before, since only the first record of
// each carries the name.
type actionOf struct {
	id    string
	first uint64
	last  uint64
}

func (a *actionOf) follow(v *view, n uint64, r stored) error {
	if r.back == 0 {
		if a.first != 0 && a.last != n-1 {
			return damaged(v.path, "record %d begins an action before the last one is complete", n)
		}
		*a = actionOf{string(r.action), n, n + r.span - 1}
		return nil
	}
	if a.first == 0 && r.back < n { // the walk began inside an action
		first, err := v.record(n - r.back)
		if err != nil {
			return err
		}
		*a = actionOf{string(first.action), n - r.back, n - r.back + first.span - 1}
	}
	if r.back >= n || n-r.back != a.first || n > a.last || a.id == "" {
		return damaged(v.path, "record %d does not belong to the action around it", n)
	}
	return nil
}

// record reads one record by its number.
func (v *view) record(n uint64) (stored, error) {
	k := numberKey(n)
	val, ok, err := v.get(v.dir[string(bucketRecords)], k)
	if err != nil {
		return stored{}, err
	}
	if !ok {
		return stored{}, damaged(v.path, "record %d is missing", n)
	}
	r, err := parseRecord(k, val, nil)
	if err != nil {
		return stored{}, damaged(v.path, "record %d is unreadable (%v)", n, err)
	}
	return r, nil
}

// whole is record with the action's name found and the bytes copied.
func (v *view) whole(n uint64) (Record, error) {
	r, err := v.record(n)
	if err != nil {
		return Record{}, err
	}
	var act actionOf
	if err := act.follow(v, n, r); err != nil {
		return Record{}, err
	}
	out := Record{Number: n, Action: act.id, Body: append([]byte{}, r.body...)}
	for _, k := range r.keys {
		out.Keys = append(out.Keys, append([]byte{}, k...))
	}
	return out, nil
}

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
	if err == nil && w.before[0] != nil {
		_, _, err = v.keyed(w.before[0]) // it might be one of ours, damaged
	}
	for ; ok && err == nil; k, _, ok, err = w.next() {
		key, r, err := v.keyed(k)
		if err != nil {
			return err
		}
		if !bytes.HasPrefix(key, prefix) {
			return nil
		}
		count++
		if err := f(key, r); err != nil {
			return err
		}
	}
	if err == nil && len(prefix) == 0 && count != h.keys {
		return damaged(v.path, "it holds %d keys and should hold %d", count, h.keys)
	}
	return err
}

// keyed reads the record to which an ordered key leads.
func (v *view) keyed(k []byte) ([]byte, Record, error) {
	key, n, err := parseOrderedKey(k)
	if err != nil {
		return nil, Record{}, damaged(v.path, "a key is unreadable (%v)", err)
	}
	r, err := v.whole(n)
	if err == nil && !hasKey(r.Keys, key) {
		err = damaged(v.path, "a key leads to record %d, which was not written with it", n)
	}
	return key, r, err
}

func hasKey(keys [][]byte, key []byte) bool {
	for _, k := range keys {
		if bytes.Equal(k, key) {
			return true
		}
	}
	return false
}

// Find looks an action up by its name.
func (s *Store) Find(action string) (Answer, bool, error) {
	v, err := s.view()
	if err != nil {
		return Answer{}, false, err
	}
	defer s.done(v)
	return v.action(action)
}

func (v *view) action(id string) (Answer, bool, error) {
	w := walker{v: v, keep: true}
	k, val, ok, err := w.seek(v.dir[string(bucketActions)], []byte(id))
	if err != nil {
		return Answer{}, false, err
	}
	if ok {
		first, last, err := parseAction(k, val)
		if err != nil {
			return Answer{}, false, damaged(v.path, "action %q is unreadable (%v)", k, err)
		}
		if string(k) == id {
			return Answer{Action: id, First: first, Last: last}, true, nil
		}
	}
	if w.before[0] != nil {
		if _, _, err := parseAction(w.before[0], w.before[1]); err != nil {
			return Answer{}, false, damaged(v.path, "action %q is unreadable (%v)", w.before[0], err)
		}
	}
	return Answer{}, false, nil
}

// Last is the number of the newest record, 0 if there is none.
func (s *Store) Last() (uint64, error) {
	v, err := s.view()
	if err != nil {
		return 0, err
	}
	defer s.done(v)
	h, err := v.head()
	return h.last, err
}
