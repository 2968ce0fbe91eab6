package store

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
)

// An action is found by its name's SHA-256. The first 12 bits of it name a block,
// which holds for each of its actions, in the order of their numbers, how far the
// first record lies behind the first one of the action before (varint) and the next
// 24 bits. The name itself stands in the record. Many names share a seal and
// the place that an element takes; names that agree in all 36 bits stand one
// behind the other.
const (
	actionBlocks = 1 << 12
	actionRest   = 3
)

// place of a name: its block and what tells it from the others there.
func actionPlace(action string) (block uint16, rest [actionRest]byte) {
	h := sha256.Sum256([]byte(action))
	block = binary.BigEndian.Uint16(h[:]) >> 4
	bits := binary.BigEndian.Uint64(h[:]) << 12
	return block, [actionRest]byte{byte(bits >> 56), byte(bits >> 48), byte(bits >> 40)}
}

func blockKey(block uint16) []byte { return binary.BigEndian.AppendUint16(nil, block) }

// actionBlock is a block without its seal.
type actionBlock struct {
	b    []byte
	last uint64 // first record of its newest action
}

func (a *actionBlock) add(rest [actionRest]byte, first uint64) {
	if a.b == nil {
		a.b = []byte{formActions}
	}
	a.b = append(binary.AppendUvarint(a.b, first-a.last), rest[:]...)
	a.last = first
}

func (a *actionBlock) sealed(key []byte) []byte { return seal(key, bytes.Clone(a.b)) }

// eachAction calls f for each action in the value of a block, until it returns false.
func eachAction(key, value []byte, f func(rest [actionRest]byte, first uint64) bool) error {
	b, err := unsealForm(formActions, key, value)
	first := uint64(0)
	for len(b) > 0 && err == nil {
		d, after, ok := cutUvarint(b)
		if !ok || d == 0 || len(after) < actionRest {
			return errForm
		}
		first += d
		if !f([actionRest]byte(after), first) {
			return nil
		}
		b = after[actionRest:]
	}
	return err
}

// openBlock makes a block ready to be added to.
func openBlock(key, value []byte) (a actionBlock, err error) {
	if err = eachAction(key, value, func(_ [actionRest]byte, first uint64) bool {
		a.last = first
		return true
	}); err == nil {
		a.b = bytes.Clone(value[:len(value)-4])
	}
	return a, err
}

// action looks an action up by its name.
func (v *view) action(id string) (Answer, bool, error) {
	if v.format == 1 {
		return v.action1(id)
	}
	block, want := actionPlace(id)
	val, ok, err := v.block(blockKey(block))
	if err != nil || !ok {
		return Answer{}, false, err
	}
	var found Answer
	var bad error
	err = eachAction(blockKey(block), val, func(rest [actionRest]byte, first uint64) bool {
		if rest != want {
			return true
		}
		var r stored
		if r, bad = v.record(first); bad == nil {
			if got, rest := actionPlace(string(r.action)); r.back != 0 || got != block || rest != want {
				bad = damaged(v.path, "an action leads to record %d, which is not its first", first)
			} else if string(r.action) == id {
				found = Answer{Action: id, First: first, Last: first + r.span - 1}
			}
		}
		return bad == nil && found.First == 0
	})
	if err != nil {
		bad = damaged(v.path, "its actions are unreadable (%v)", err)
	}
	return found, found.First != 0, bad
}

// block reads a block of actions. The ones on both sides of a place where there is
// none must be whole: one of them might be ours, damaged.
func (v *view) block(key []byte) ([]byte, bool, error) {
	w := walker{v: v, keep: true}
	k, val, ok, err := w.seek(v.dir[string(bucketActions)], key)
	if err != nil {
		return nil, false, err
	}
	for _, near := range [][2][]byte{{k, val}, w.before} {
		if near[0] == nil {
			continue
		}
		if _, err := unsealForm(formActions, near[0], near[1]); err != nil {
			return nil, false, damaged(v.path, "its actions are unreadable (%v)", err)
		}
	}
	if !ok || !bytes.Equal(k, key) {
		return nil, false, nil
	}
	return val, true, nil
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
