package store

import (
	"encoding/binary"
	"hash/crc32"
)

// Meta is what the file says about itself. It is written once, when the file is
// made.
type Meta struct {
	Format  uint32
	Program string // what made the file
	BookID  string // the id given to Create
	Created string // RFC 3339
}

var (
	metaFormat  = []byte("format")
	metaProgram = []byte("program")
	metaID      = []byte("id")
	metaCreated = []byte("created")
	metaSeal    = []byte("seal")
)

// pairs lists the keys in the order in which the seal goes over them. The names
// format and seal, and how the seal is made, stay the same in every format:
// they are how an older program knows a newer file from a damaged one.
func (m Meta) pairs() [][2][]byte {
	return [][2][]byte{
		{metaCreated, []byte(m.Created)},
		{metaFormat, binary.BigEndian.AppendUint32(nil, m.Format)},
		{metaID, []byte(m.BookID)},
		{metaProgram, []byte(m.Program)},
	}
}

// sealPairs is the checksum over all keys and values in key order.
func sealPairs(pairs [][2][]byte) []byte {
	var s uint32
	for _, p := range pairs {
		for _, b := range p {
			s = crc32.Update(s, castagnoli, binary.BigEndian.AppendUint32(nil, uint32(len(b))))
			s = crc32.Update(s, castagnoli, b)
		}
	}
	return binary.BigEndian.AppendUint32(nil, s)
}

// readMeta reads the bucket and refuses what is not ours, newer or damaged.
func readMeta(v *view) (Meta, error) {
	var m Meta
	t, ok := v.dir[string(bucketMeta)]
	if !ok {
		return m, foreign(v.path, "it holds something else")
	}
	var pairs [][2][]byte
	var sealed []byte
	w := walker{v: v}
	for k, val, ok, err := w.first(t); ; k, val, ok, err = w.next() {
		if err != nil {
			return m, err
		}
		if !ok {
			break
		}
		if string(k) == string(metaSeal) {
			sealed = val
			continue
		}
		pairs = append(pairs, [2][]byte{k, val})
		switch string(k) {
		case string(metaFormat):
			if len(val) == 4 {
				m.Format = binary.BigEndian.Uint32(val)
			}
		case string(metaProgram):
			m.Program = string(val)
		case string(metaID):
			m.BookID = string(val)
		case string(metaCreated):
			m.Created = string(val)
		}
	}
	if sealed == nil && m.Format == 0 {
		return m, foreign(v.path, "it holds something else")
	}
	if string(sealed) != string(sealPairs(pairs)) {
		return m, damaged(v.path, "what it says about itself does not fit its seal")
	}
	if m.Format > Format {
		return m, newer(v.path, "format", m.Format, Format)
	}
	if m.Format == 0 {
		return m, damaged(v.path, "it has no format number")
	}
	return m, nil
}
