package store

import (
	"encoding/binary"

	"go.etcd.io/bbolt"
)

// head says what the file must hold. It is written in each commit.
type head struct {
	commit  uint64 // number of that commit, which is also in bbolt's own head
	last    uint64 // number of the last record, which is also their count
	running uint32 // checksum over the seals of all records, in order
	actions uint64 // count
	keys    uint64 // count of the rows in their bucket
	rows    uint64 // count
	rowSum  uint64 // sum over the marks of all rows, in any order
}

// write puts the head into the transaction that makes it true.
func (h head) write(tx *bbolt.Tx) error {
	h.commit = uint64(tx.ID())
	return tx.Bucket(bucketHead).Put(keyHead, h.value())
}

func (h head) value() []byte {
	v := []byte{Format}
	v = binary.BigEndian.AppendUint64(v, h.commit)
	v = binary.BigEndian.AppendUint64(v, h.last)
	v = binary.BigEndian.AppendUint32(v, h.running)
	v = binary.BigEndian.AppendUint64(v, h.actions)
	v = binary.BigEndian.AppendUint64(v, h.keys)
	v = binary.BigEndian.AppendUint64(v, h.rows)
	v = binary.BigEndian.AppendUint64(v, h.rowSum)
	return seal(keyHead, v)
}

// parseHead reads the head of a file of the format given: its form is that
// number, so that a head never speaks for a file of the other one.
func parseHead(format uint32, value []byte) (head, error) {
	b, err := unsealForm(byte(format), keyHead, value)
	if err != nil {
		return head{}, err
	}
	if want := map[uint32]int{1: 36, 2: 52}[format]; len(b) != want {
		return head{}, errForm
	}
	h := head{
		commit:  binary.BigEndian.Uint64(b),
		last:    binary.BigEndian.Uint64(b[8:]),
		running: binary.BigEndian.Uint32(b[16:]),
		actions: binary.BigEndian.Uint64(b[20:]),
		keys:    binary.BigEndian.Uint64(b[28:]),
	}
	if format > 1 {
		h.rows, h.rowSum = binary.BigEndian.Uint64(b[36:]), binary.BigEndian.Uint64(b[44:])
	}
	return h, nil
}
