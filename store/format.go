package store

import (
	"encoding/binary"
	"errors"
	"hash/crc32"
)

// Format is the number of the file layout that this package writes.
const Format = 2

// What one request may hold.
const (
	MaxItems    = 5000
	MaxKeys     = 3
	MaxRows     = 32 // of one item
	MaxRow      = 1 << 20
	MaxKey      = 512
	MaxAction   = 256
	MaxBody     = 1 << 20
	MaxSnapshot = 256 << 20
)

// How full a page is left when it splits. Records only ever come at the end, so
// their pages are filled; the other trees grow anywhere, and halves of a page fill up
// again. bbolt does not keep this
// in the file: it has to be set in every transaction.
const (
	fillRecords = 1.0
	fillOthers  = 0.5
	fillMany    = 0.9 // when very many come at once
)

var (
	bucketMeta     = []byte("meta")
	bucketRecords  = []byte("records")
	bucketActions  = []byte("actions")
	bucketKeys     = []byte("keys")
	bucketHead     = []byte("head")
	bucketSnapshot = []byte("snapshot")
	bucketRows     = []byte("rows")
	allBuckets     = [][]byte{bucketActions, bucketHead, bucketKeys, bucketMeta, bucketRecords, bucketSnapshot, bucketRows}

	keyHead     = []byte("head")
	keySnapshot = []byte("snapshot")
)

// The first byte of every value but those of meta: in format 1
// always the same, in format 2 by what it is.
const (
	form1        = 1
	formRecord   = 2
	formRow      = 3
	formSnapshot = 4
	formActions  = 5
)

// bucketsOf are the buckets that a file of a format has.
func bucketsOf(format uint32) [][]byte {
	if format == 1 {
		return allBuckets[:len(allBuckets)-1] // all but the rows
	}
	return allBuckets
}

var (
	castagnoli = crc32.MakeTable(crc32.Castagnoli)

	errSeal = errors.New("its seal does not fit")
	errForm = errors.New("it is not in the form that this program writes")
)

// seal appends the checksum over key and value.
func seal(key, value []byte) []byte {
	return binary.BigEndian.AppendUint32(value, sum(key, value))
}

func sum(key, value []byte) uint32 {
	return crc32.Update(crc32.Checksum(key, castagnoli), castagnoli, value)
}

// unseal returns the value without form byte and seal, and the form.
func unseal(key, value []byte) (b []byte, form byte, err error) {
	n := len(value) - 4
	if n < 1 {
		return nil, 0, errForm
	}
	if sum(key, value[:n]) != binary.BigEndian.Uint32(value[n:]) {
		return nil, 0, errSeal
	}
	return value[1:n:n], value[0], nil
}

// unsealForm is unseal where one form is right.
func unsealForm(want byte, key, value []byte) ([]byte, error) {
	b, form, err := unseal(key, value)
	if err == nil && form != want {
		err = errForm
	}
	return b, err
}

func numberKey(n uint64) []byte { return binary.BigEndian.AppendUint64(nil, n) }

func cutUvarint(b []byte) (uint64, []byte, bool) {
	v, n := binary.Uvarint(b)
	if n <= 0 {
		return 0, nil, false
	}
	return v, b[n:], true
}

func cutBytes(b []byte) ([]byte, []byte, bool) {
	n, b, ok := cutUvarint(b)
	if !ok || n > uint64(len(b)) {
		return nil, nil, false
	}
	return b[:n:n], b[n:], true
}

// run carries the running checksum on by one seal. Each step can be undone, so
// one seal that differs makes the end differ.
func run(running, seal uint32) uint32 { return (running ^ seal) * 16777619 }
