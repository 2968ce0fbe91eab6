package store

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
)

// An action is found by the first bytes of its name's SHA-256. Its row is these
// and the number of its first record, the value is a seal over the row; the name
// itself stands in that record. Names with the same bytes have rows one behind
// the other.
const actionHash = 5

func hashOf(action string) []byte {
	h := sha256.Sum256([]byte(action))
	return h[:actionHash]
}

func actionRow(action string, first uint64) pair {
	k := hashOf(action)
	var num [8]byte
	binary.BigEndian.PutUint64(num[:], first)
	k = append(k, bytes.TrimLeft(num[:], "\x00")...)
	return pair{k, seal(k, nil)}
}

func parseActionRow(k, val []byte) (first uint64, err error) {
	if len(val) != 4 || binary.BigEndian.Uint32(val) != sum(k, nil) {
		return 0, errSeal
	}
	n := len(k) - actionHash
	if n < 1 || n > 8 || k[actionHash] == 0 {
		return 0, errForm
	}
	for _, c := range k[actionHash:] {
		first = first<<8 | uint64(c)
	}
	return first, nil
}

// action looks an action up by its name. The rows on both sides of a place where
// nothing is found must be whole: one of them might be ours, damaged.
func (v *view) action(id string) (Answer, bool, error) {
	if v.format == 1 {
		return v.action1(id)
	}
	h := hashOf(id)
	w := walker{v: v, keep: true}
	k, val, ok, err := w.seek(v.dir[string(bucketActions)], h)
	if err == nil && w.before[0] != nil {
		if _, err := parseActionRow(w.before[0], w.before[1]); err != nil {
			return Answer{}, false, damaged(v.path, "an action is unreadable (%v)", err)
		}
	}
	for ; ok && err == nil; k, val, ok, err = w.next() {
		first, err := parseActionRow(k, val)
		if err != nil {
			return Answer{}, false, damaged(v.path, "an action is unreadable (%v)", err)
		}
		if !bytes.HasPrefix(k, h) {
			return Answer{}, false, nil
		}
		r, err := v.record(first)
		if err != nil {
			return Answer{}, false, err
		}
		if r.back != 0 || !bytes.Equal(hashOf(string(r.action)), h) {
			return Answer{}, false, damaged(v.path, "an action leads to record %d, which is not its first", first)
		}
		if string(r.action) == id {
			return Answer{Action: id, First: first, Last: first + r.span - 1}, true, nil
		}
	}
	return Answer{}, false, err
}

// action1 is action in a file of format 1.
func (v *view) action1(id string) (Answer, bool, error) {
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
