package store

import (
	"bytes"
	"encoding/binary"
	"hash/maphash"
)

// Check reads everything there is and compares all of it: each page is in use
// once or free, each record is whole and in its place, and actions and keys are
// exactly those that the records name, rows those that the head counts. It writes
// nothing.
func (s *Store) Check() error {
	v, err := s.view()
	if err != nil {
		return err
	}
	defer s.done(v)
	if v.m.pages*pageSize > readAhead {
		if err := readThrough(v.file, v.m.pages); err != nil {
			return v.bad(err)
		}
	}
	if err := v.checkPages(); err != nil {
		return err
	}
	h, err := v.head()
	if err != nil {
		return err
	}
	var actions, keys bag
	blocks := make([]actionBlock, actionBlocks)
	seed := maphash.MakeSeed()
	err = v.walk(1, func(n uint64, r stored, act actionOf) error {
		if r.back == 0 && v.format == 1 {
			actions.put(seed, []byte(act.id), actionValue(act.id, act.first, act.last))
		} else if r.back == 0 {
			actions.count++
			block, rest := actionPlace(act.id)
			blocks[block].add(rest, act.first)
		}
		for i, k := range r.keys {
			if r.refs[i].back == 0 && !hasKey(r.keys[:i], k) {
				keys.put(seed, orderedKey(k, n), nil)
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	if v.format == 1 {
		err = v.compare("actions", bucketActions, seed, actions, h.actions)
	} else if err = v.compareBlocks(blocks); err == nil && actions.count != h.actions {
		err = damaged(v.path, "it holds %d actions and should hold %d", actions.count, h.actions)
	}
	if err != nil {
		return err
	}
	if err := v.compare("keys", bucketKeys, seed, keys, h.keys); err != nil || v.format == 1 {
		return err
	}
	return v.eachRow(nil, nil, func(_, _ []byte) error { return nil })
}

// bag stands for a set of pairs whatever their order.
type bag struct{ count, sum uint64 }

func (b *bag) put(seed maphash.Seed, k, v []byte) {
	var h maphash.Hash
	h.SetSeed(seed)
	_, _ = h.Write(k)
	_ = h.WriteByte(0)
	_, _ = h.Write(v)
	b.count++
	b.sum += h.Sum64()
}

func (v *view) compare(what string, bucket []byte, seed maphash.Seed, want bag, counted uint64) error {
	var got bag
	w := walker{v: v}
	k, val, ok, err := w.first(v.dir[string(bucket)])
	for ; ok; k, val, ok, err = w.next() {
		got.put(seed, k, val)
	}
	if err != nil {
		return err
	}
	if got.count != counted {
		return damaged(v.path, "it holds %d %s and should hold %d", got.count, what, counted)
	}
	if got != want {
		return damaged(v.path, "its %s do not fit its records", what)
	}
	return nil
}

// compareBlocks compares the blocks of actions with those that the records make.
func (v *view) compareBlocks(want []actionBlock) error {
	w := walker{v: v}
	k, val, ok, err := w.first(v.dir[string(bucketActions)])
	for ; ok; k, val, ok, err = w.next() {
		if len(k) != 2 || int(binary.BigEndian.Uint16(k)) >= len(want) {
			return damaged(v.path, "its actions do not fit its records")
		}
		a := &want[binary.BigEndian.Uint16(k)]
		if !bytes.Equal(val, a.sealed(k)) {
			return damaged(v.path, "its actions do not fit its records")
		}
		a.b = nil
	}
	for i := range want {
		if want[i].b != nil && err == nil {
			err = damaged(v.path, "its actions do not fit its records")
		}
	}
	return err
}
