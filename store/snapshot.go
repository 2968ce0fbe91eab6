package store

import (
	"bytes"
	"encoding/binary"
	"errors"

	"go.etcd.io/bbolt"
)

// A snapshot is a convenience: what the caller made of all records up to a
// number. It stands in its own bucket and is written in its own commit, so a
// large one is not written anew with each record. Its value: form, number, seal
// of that record, body, seal.

// PutSnapshot keeps body as what the records up to number at come to, in place of
// the one before. An error means the same as from Append, but for one: when the
// disk was full and nothing of the snapshot will ever be seen, the store is not
// latched. A smaller action may still find room.
func (s *Store) PutSnapshot(at uint64, body []byte) error {
	if len(body) > MaxSnapshot {
		return refused("The snapshot has %d bytes, more than %d.", len(body), MaxSnapshot)
	}
	s.commit.Lock()
	defer s.commit.Unlock()
	if err := s.mayWrite(); err != nil {
		return err
	}
	h, of, err := s.prepareSnapshot(at)
	if err != nil {
		return err
	}
	value := make([]byte, 0, len(body)+17)
	value = append(value, formSnapshot)
	value = binary.BigEndian.AppendUint64(value, at)
	value = binary.BigEndian.AppendUint32(value, of)
	value = seal(keySnapshot, append(value, body...))
	err = s.write(func(tx *bbolt.Tx) error {
		if err := tx.Bucket(bucketSnapshot).Put(keySnapshot, value); err != nil {
			return err
		}
		return h.write(tx)
	})
	if errors.Is(err, ErrFull) && !errors.Is(err, ErrUnsure) {
		s.latch = nil
		s.sound = false // the list of free pages is looked at once more
	}
	return err
}

// prepareSnapshot reads what the commit will touch and the seal of record at.
func (s *Store) prepareSnapshot(at uint64) (h head, of uint32, err error) {
	v, err := s.begin()
	if err != nil {
		return h, 0, err
	}
	defer s.done(v)
	if h, err = v.head(); err != nil {
		return h, 0, err
	}
	if at > h.last {
		return h, 0, refused("There is no record %d to make a snapshot at, the last one is %d.", at, h.last)
	}
	if err := s.checkSound(v); err != nil {
		return h, 0, err
	}
	if v.m.txid != s.edge {
		if err := v.checkEnd(h); err != nil { // the commit will make it the edge
			return h, 0, err
		}
	}
	if _, _, err := v.get(v.dir[string(bucketSnapshot)], keySnapshot); err != nil {
		return h, 0, err
	}
	of, err = v.sealAt(at)
	return h, of, err
}

func (v *view) sealAt(at uint64) (uint32, error) {
	if at == 0 {
		return 0, nil
	}
	r, err := v.record(at)
	return r.seal, err
}

// Snapshot returns the snapshot if there is one and everything about it is
// right; the error is only for a file that cannot be read at all.
func (s *Store) Snapshot() (at uint64, body []byte, ok bool, err error) {
	v, err := s.view()
	if err != nil {
		return 0, nil, false, err
	}
	defer s.done(v)
	h, err := v.head()
	if err != nil {
		return 0, nil, false, err
	}
	w := walker{v: v}
	k, value, ok, err := w.seek(v.dir[string(bucketSnapshot)], keySnapshot)
	if err != nil || !ok || !bytes.Equal(k, keySnapshot) {
		return 0, nil, false, nil
	}
	form := byte(formSnapshot)
	if v.format == 1 {
		form = form1
	}
	b, err := unsealForm(form, keySnapshot, value)
	if err != nil || len(b) < 12 {
		return 0, nil, false, nil
	}
	at = binary.BigEndian.Uint64(b)
	if at > h.last {
		return 0, nil, false, nil
	}
	if of, err := v.sealAt(at); err != nil || of != binary.BigEndian.Uint32(b[8:]) {
		return 0, nil, false, nil
	}
	return at, b[12:], true, nil
}

// DropSnapshot removes the snapshot; there need not be one.
func (s *Store) DropSnapshot() error {
	s.commit.Lock()
	defer s.commit.Unlock()
	if err := s.mayWrite(); err != nil {
		return err
	}
	h, _, err := s.prepareSnapshot(0)
	if err != nil {
		return err
	}
	return s.write(func(tx *bbolt.Tx) error {
		if err := tx.Bucket(bucketSnapshot).Delete(keySnapshot); err != nil {
			return err
		}
		return h.write(tx)
	})
}
