package store

import (
	"encoding/binary"
	"errors"
	"hash/crc32"

	"go.etcd.io/bbolt"
)

// Format is the number of the file layout that this package writes.
const Format = 1

// What one request may hold.
const (
	MaxItems    = 5000
	MaxKeys     = 3
	MaxKey      = 512
	MaxAction   = 256
	MaxBody     = 1 << 20
	MaxSnapshot = 256 << 20
)

// fill leaves a tenth of a page free when it splits. bbolt does not keep this
// in the file: it has to be set in every transaction.
const fill = 0.9

var (
	bucketMeta     = []byte("meta")
	bucketRecords  = []byte("records")
	bucketActions  = []byte("actions")
	bucketKeys     = []byte("keys")
	bucketHead     = []byte("head")
	bucketSnapshot = []byte("snapshot")
	allBuckets     = [][]byte{bucketActions, bucketHead, bucketKeys, bucketMeta, bucketRecords, bucketSnapshot}

	keyHead     = []byte("head")
	keySnapshot = []byte("snapshot")
)

// valueForm is the first byte of every value but those of meta.
const valueForm = 1

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

// unseal returns the value without form byte and seal, and the seal.
func unseal(key, value []byte) ([]byte, uint32, error) {
	n := len(value) - 4
	if n < 1 {
		return nil, 0, errForm
	}
	s := binary.BigEndian.Uint32(value[n:])
	if sum(key, value[:n]) != s {
		return nil, 0, errSeal
	}
	if value[0] != valueForm {
		return nil, 0, errForm
	}
	return value[1:n:n], s, nil
}

func numberKey(n uint64) []byte { return binary.BigEndian.AppendUint64(nil, n) }

// stored is a record as it stands in its value. back is how far before it the
// first record of its action is; only that one (back 0) carries the action's
// name and span.
type stored struct {
	back   uint64
	span   uint64
	action []byte
	keys   [][]byte
	body   []byte
	seal   uint32
}

// appendRecord writes: form, back, [span, name], keys, body, seal.
func appendRecord(dst []byte, key []byte, back, span uint64, action string, it Item) []byte {
	start := len(dst)
	dst = append(dst, valueForm)
	dst = binary.AppendUvarint(dst, back)
	if back == 0 {
		dst = binary.AppendUvarint(dst, span)
		dst = binary.AppendUvarint(dst, uint64(len(action)))
		dst = append(dst, action...)
	}
	dst = binary.AppendUvarint(dst, uint64(len(it.Keys)))
	for _, k := range it.Keys {
		dst = binary.AppendUvarint(dst, uint64(len(k)))
		dst = append(dst, k...)
	}
	dst = append(dst, it.Body...)
	return binary.BigEndian.AppendUint32(dst, sum(key, dst[start:]))
}

// parseRecord returns views into value; keys is room to put them in.
func parseRecord(key, value []byte, keys [][]byte) (stored, error) {
	b, s, err := unseal(key, value)
	if err != nil {
		return stored{}, err
	}
	r := stored{seal: s}
	ok := true
	if r.back, b, ok = cutUvarint(b); !ok {
		return r, errForm
	}
	if r.back == 0 {
		if r.span, b, ok = cutUvarint(b); !ok || r.span == 0 {
			return r, errForm
		}
		if r.action, b, ok = cutBytes(b); !ok {
			return r, errForm
		}
	}
	var n uint64
	if n, b, ok = cutUvarint(b); !ok || n > MaxKeys {
		return r, errForm
	}
	r.keys = keys
	for range n {
		var k []byte
		if k, b, ok = cutBytes(b); !ok {
			return r, errForm
		}
		r.keys = append(r.keys, k)
	}
	r.body = b
	return r, nil
}

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

// An action's value: form, first, last, seal.
func actionValue(id string, first, last uint64) []byte {
	v := binary.AppendUvarint([]byte{valueForm}, first)
	return seal([]byte(id), binary.AppendUvarint(v, last))
}

func parseAction(id, value []byte) (first, last uint64, err error) {
	b, _, err := unseal(id, value)
	if err != nil {
		return 0, 0, err
	}
	first, b, ok1 := cutUvarint(b)
	last, b, ok2 := cutUvarint(b)
	if !ok1 || !ok2 || len(b) != 0 || first == 0 || last < first {
		return 0, 0, errForm
	}
	return first, last, nil
}

// head says what the file must hold. It is written in each commit.
type head struct {
	commit  uint64 // number of that commit, which is also in bbolt's own head
	last    uint64 // number of the last record, which is also their count
	running uint32 // checksum over the seals of all records, in order
	actions uint64 // count
	keys    uint64 // count
}

// write puts the head into the transaction that makes it true.
func (h head) write(tx *bbolt.Tx) error {
	h.commit = uint64(tx.ID())
	return tx.Bucket(bucketHead).Put(keyHead, h.value())
}

func (h head) value() []byte {
	v := []byte{valueForm}
	v = binary.BigEndian.AppendUint64(v, h.commit)
	v = binary.BigEndian.AppendUint64(v, h.last)
	v = binary.BigEndian.AppendUint32(v, h.running)
	v = binary.BigEndian.AppendUint64(v, h.actions)
	v = binary.BigEndian.AppendUint64(v, h.keys)
	return seal(keyHead, v)
}

func parseHead(value []byte) (head, error) {
	b, _, err := unseal(keyHead, value)
	if err != nil {
		return head{}, err
	}
	if len(b) != 36 {
		return head{}, errForm
	}
	return head{
		commit:  binary.BigEndian.Uint64(b),
		last:    binary.BigEndian.Uint64(b[8:]),
		running: binary.BigEndian.Uint32(b[16:]),
		actions: binary.BigEndian.Uint64(b[20:]),
		keys:    binary.BigEndian.Uint64(b[28:]),
	}, nil
}

// run carries the running checksum on by one seal. Each step can be undone, so
// one seal that differs makes the end differ.
func run(running, seal uint32) uint32 { return (running ^ seal) * 16777619 }

// An ordered key stands in its bucket as: the key with 00 written as 00 FF, then
// 00, then the length of the number, then the number without leading zeros. So
// keys sort by themselves, equal ones by number, and none is the start of another.
func orderedKey(key []byte, n uint64) []byte {
	dst := escapeKey(make([]byte, 0, len(key)+10), key)
	var num [8]byte
	binary.BigEndian.PutUint64(num[:], n)
	i := 0
	for i < 7 && num[i] == 0 {
		i++
	}
	dst = append(dst, 0, byte(8-i))
	return append(dst, num[i:]...)
}

func escapeKey(dst, key []byte) []byte {
	for _, c := range key {
		if dst = append(dst, c); c == 0 {
			dst = append(dst, 0xFF)
		}
	}
	return dst
}

func parseOrderedKey(b []byte) (key []byte, n uint64, err error) {
	key = make([]byte, 0, len(b))
	for i := 0; i < len(b); i++ {
		if b[i] != 0 {
			key = append(key, b[i])
			continue
		}
		if i+1 < len(b) && b[i+1] == 0xFF {
			key = append(key, 0)
			i++
			continue
		}
		rest := b[i+1:]
		if len(rest) < 2 || int(rest[0]) != len(rest)-1 || len(rest) > 9 || rest[1] == 0 {
			return nil, 0, errForm
		}
		for _, c := range rest[1:] {
			n = n<<8 | uint64(c)
		}
		return key, n, nil
	}
	return nil, 0, errForm
}
