package core

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"fmt"
)

// Digest is the last 16 bytes of an entry: SHA-256 over the digest before it, number, truck and body, cut.
type Digest [16]byte

func (d Digest) String() string { return hex.EncodeToString(d[:]) }

// ParseDigest reads 32 hexadecimal digits.
func ParseDigest(s string) (Digest, error) {
	var d Digest
	b, err := hex.DecodeString(s)
	if err != nil || len(b) != len(d) {
		return d, &Problem{What: fmt.Sprintf("%q is not a digest.", s), Do: "A digest is 32 hexadecimal digits; leave the key out to enter the line as if typed.", Err: ErrCode}
	}
	copy(d[:], b)
	return d, nil
}

// Entry is a numbered and dated fact. Action is the id of what was written together with it.
type Entry struct {
	Seq    uint64
	At     Moment
	Action string
	Truck  uint32
	What   Fact
	// Keys are those of a new entry, for the store; an entry read back has none.
	Keys   [][]byte
	Digest Digest
}

// formatVersion is the first byte of every stored entry.
const formatVersion = 1

// body is the entry's stored form without its digest.
func (e *Entry) body() []byte {
	w := &binaryWriter{b: make([]byte, 0, 96)}
	w.b = append(w.b, formatVersion)
	w.count(int(e.Truck))
	w.int(e.At.Unix)
	w.int(int64(e.At.Offset))
	w.count(int(e.What.Kind()))
	w.factFields(e.What)
	return w.b
}

// chain is the digest that an entry must carry after the one before it.
func chain(before Digest, seq uint64, truck uint32, body []byte) Digest {
	h := sha256.New()
	h.Write(before[:])
	var n [12]byte
	binary.BigEndian.PutUint64(n[:], seq)
	binary.BigEndian.PutUint32(n[8:], truck)
	h.Write(n[:])
	h.Write(body)
	var d Digest
	copy(d[:], h.Sum(nil))
	return d
}

// Follows tells whether the entry carries the digest that it must carry after one with the digest before.
func (e *Entry) Follows(before Digest) bool {
	return e.What != nil && chain(before, e.Seq, e.Truck, e.body()) == e.Digest
}

// Sealed is the entry with the digest that it must carry after one with the digest before.
func (e Entry) Sealed(before Digest) Entry {
	e.Digest = chain(before, e.Seq, e.Truck, e.body())
	return e
}

// Encode is the stored form of an entry: body and digest. Number and action are the store's.
func (e *Entry) Encode() []byte { return append(e.body(), e.Digest[:]...) }

// Decode reads an entry's stored form. The error wraps ErrCode or ErrNewer.
func Decode(seq uint64, action string, b []byte) (Entry, error) {
	e := Entry{Seq: seq, Action: action}
	if len(b) < 1+len(e.Digest) {
		return e, fmt.Errorf("entry %d: %w: %d bytes", seq, ErrCode, len(b))
	}
	if b[0] != formatVersion {
		return e, fmt.Errorf("entry %d: %w: form %d", seq, ErrNewer, b[0])
	}
	body, tail := b[1:len(b)-len(e.Digest)], b[len(b)-len(e.Digest):]
	copy(e.Digest[:], tail)
	r := &binaryReader{b: body}
	truck := r.uint()
	e.At.Unix = r.int()
	off := r.int()
	e.Truck, e.At.Offset = uint32(truck), int32(off)
	if truck > 1<<31 || int64(e.At.Offset) != off || !e.At.sound() {
		r.fail("truck or clock out of range")
	}
	e.What = r.readFact()
	if r.err == nil && len(r.b) != 0 {
		r.fail("%d bytes too many", len(r.b))
	}
	if r.err != nil {
		return e, fmt.Errorf("entry %d: %w", seq, r.err)
	}
	return e, nil
}
