package store

import (
	"bytes"
	"encoding/binary"
	"errors"
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
	var own []byte // room for keys that go on from record to record
	return v.walk(from, func(n uint64, r stored, act actionOf) error {
		out := Record{Number: n, Action: act.id, Body: r.body, Keys: r.keys}
		if r.form != form1 && len(r.keys) > 0 {
			out.Keys = make([][]byte, len(r.keys))
			for i, k := range r.keys {
				if own = own[len(own):]; cap(own) < len(k) {
					own = make([]byte, 0, 4096+len(k))
				}
				own = append(own, k...)
				out.Keys[i] = own[:len(k):len(k)]
			}
		}
		return f(out)
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
		on      carried
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
		if err := on.follow(v, n, &r); err != nil {
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

// record reads one record by its number. Keys that stand elsewhere are nil.
func (v *view) record(n uint64) (stored, error) {
	w := walker{v: v, keep: true}
	r, ok, err := v.numbered(&w, n)
	if err == nil && !ok {
		err = damaged(v.path, "record %d is missing", n)
	}
	return r, err
}

// whole is record with the action's name and the keys found and the bytes copied.
func (v *view) whole(n uint64) (Record, error) {
	r, err := v.record(n)
	if err != nil {
		return Record{}, err
	}
	var act actionOf
	var on carried
	if err := errors.Join(act.follow(v, n, r), on.follow(v, n, &r)); err != nil {
		return Record{}, err
	}
	return r.copied(n, act.id), nil
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
