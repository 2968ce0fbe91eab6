package store

import (
	"bytes"
	"encoding/binary"
	"encoding/hex"
)

// stored is a record as it stands in its value. back is how far before it the
// first record of its action is; only that one (back 0) carries the action's
// name and span. A key that the record before it carries too is not written
// again: refs says where it stands, and keys has nil there until follow.
type stored struct {
	form   byte
	back   uint64
	span   uint64
	action []byte
	keys   [][]byte
	refs   [MaxKeys]keyRef
	body   []byte
	seal   uint32
}

// keyRef: the key is the one in that slot of the record so far before this one;
// back 0: it is written here.
type keyRef struct {
	back uint64
	slot int
}

// slotBits make room for the slot beside the distance.
const slotBits = 2

// appendRecord writes: form, back, [span, name], keys, body, seal. A name's
// length is doubled, and one more if it is lower-case hex, which is kept as
// bytes. A key is 0, length and bytes, or its distance and slot.
func appendRecord(dst []byte, key []byte, back, span uint64, action string, it Item, refs [MaxKeys]keyRef) []byte {
	start := len(dst)
	dst = append(dst, formRecord)
	dst = binary.AppendUvarint(dst, back)
	if back == 0 {
		dst = binary.AppendUvarint(dst, span)
		dst = appendName(dst, action)
	}
	dst = binary.AppendUvarint(dst, uint64(len(it.Keys)))
	for i, k := range it.Keys {
		if r := refs[i]; r.back > 0 {
			dst = binary.AppendUvarint(dst, r.back<<slotBits|uint64(r.slot))
			continue
		}
		dst = append(dst, 0)
		dst = binary.AppendUvarint(dst, uint64(len(k)))
		dst = append(dst, k...)
	}
	dst = append(dst, it.Body...)
	return binary.BigEndian.AppendUint32(dst, sum(key, dst[start:]))
}

func appendName(dst []byte, action string) []byte {
	if b, err := hex.DecodeString(action); err == nil && hex.EncodeToString(b) == action {
		dst = binary.AppendUvarint(dst, uint64(len(b))<<1|1)
		return append(dst, b...)
	}
	dst = binary.AppendUvarint(dst, uint64(len(action))<<1)
	return append(dst, action...)
}

func cutName(b []byte) (name, rest []byte, ok bool) {
	n, b, ok := cutUvarint(b)
	if !ok || n>>1 > uint64(len(b)) {
		return nil, nil, false
	}
	name, rest = b[:n>>1:n>>1], b[n>>1:]
	if n&1 != 0 {
		name = hex.AppendEncode(nil, name)
	}
	return name, rest, true
}

// parseRecord returns views into value; keys is room to put them in.
func parseRecord(key, value []byte, keys [][]byte) (stored, error) {
	b, form, err := unseal(key, value)
	if err != nil {
		return stored{}, err
	}
	if form != form1 && form != formRecord {
		return stored{}, errForm
	}
	r := stored{form: form, seal: lastSeal(value)}
	ok := true
	if r.back, b, ok = cutUvarint(b); !ok {
		return r, errForm
	}
	if r.back == 0 {
		if r.span, b, ok = cutUvarint(b); !ok || r.span == 0 {
			return r, errForm
		}
		if form == form1 {
			r.action, b, ok = cutBytes(b)
		} else {
			r.action, b, ok = cutName(b)
		}
		if !ok {
			return r, errForm
		}
	}
	r.keys = keys
	if r.body, ok = r.cutKeys(b); !ok {
		return r, errForm
	}
	return r, nil
}

// cutKeys takes the keys off and returns the rest.
func (r *stored) cutKeys(b []byte) ([]byte, bool) {
	n, b, ok := cutUvarint(b)
	if !ok || n > MaxKeys {
		return nil, false
	}
	for i := range n {
		if r.form != form1 {
			var at uint64
			if at, b, ok = cutUvarint(b); !ok {
				return nil, false
			}
			if at > 0 {
				r.refs[i] = keyRef{at >> slotBits, int(at & (1<<slotBits - 1))}
				if r.refs[i].back == 0 || r.refs[i].slot >= MaxKeys {
					return nil, false
				}
				r.keys = append(r.keys, nil)
				continue
			}
		}
		var k []byte
		if k, b, ok = cutBytes(b); !ok {
			return nil, false
		}
		r.keys = append(r.keys, k)
	}
	return b, true
}

// carried are the keys of one record and where each stands written. A key that
// goes on from record to record has one row in its bucket, at the first of them.
type carried struct {
	n     uint64 // the record's number, 0: none yet
	keys  [][]byte
	first [MaxKeys]place
}

type place struct {
	n    uint64
	slot int
}

// refs tells which of the keys of record n the record before it carries.
func (c *carried) refs(n uint64, keys [][]byte) (refs [MaxKeys]keyRef) {
	if c.n == 0 || c.n != n-1 {
		return refs
	}
	for i, k := range keys {
		for j := range c.keys {
			if bytes.Equal(c.keys[j], k) {
				refs[i] = keyRef{n - c.first[j].n, c.first[j].slot}
				break
			}
		}
	}
	return refs
}

// follow puts the keys of record n that stand elsewhere into r. The record
// before it must carry them too; at the beginning of a walk they are read.
func (c *carried) follow(v *view, n uint64, r *stored) error {
	var next [MaxKeys]place
	for i := range r.keys {
		ref := r.refs[i]
		next[i] = place{n - ref.back, ref.slot}
		if ref.back == 0 {
			next[i].slot = i
			continue
		}
		if ref.back >= n {
			return damaged(v.path, "record %d has a key that is written nowhere", n)
		}
		k, err := c.key(v, n, next[i])
		if err != nil {
			return err
		}
		r.keys[i] = k
	}
	c.n, c.keys, c.first = n, r.keys, next
	return nil
}

func (c *carried) key(v *view, n uint64, p place) ([]byte, error) {
	if c.n != 0 && c.n == n-1 {
		for j, k := range c.keys {
			if c.first[j] == p {
				return k, nil
			}
		}
		return nil, damaged(v.path, "record %d has a key that the record before it does not carry", n)
	}
	r, err := v.record(p.n)
	if err != nil {
		return nil, err
	}
	if p.slot >= len(r.keys) || r.refs[p.slot].back != 0 {
		return nil, damaged(v.path, "record %d has a key that record %d does not carry", n, p.n)
	}
	return r.keys[p.slot], nil
}

// endOf are the keys of the last record.
func (v *view) endOf(last uint64) (c carried, err error) {
	if last == 0 {
		return c, nil
	}
	r, err := v.record(last)
	if err == nil {
		err = c.follow(v, last, &r)
	}
	return c, err
}

// clone is for keeping: the keys are the caller's or lie in a page.
func (c carried) clone() carried {
	keys := make([][]byte, len(c.keys))
	for i, k := range c.keys {
		keys[i] = bytes.Clone(k)
	}
	c.keys = keys
	return c
}
