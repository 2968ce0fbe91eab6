package store

import "encoding/binary"

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
