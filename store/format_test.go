package store

import (
	"bytes"
	"testing"

	"pgregory.net/rapid"
)

func TestOrderedKeysKeepOrder(t *testing.T) {
	keys := rapid.SliceOfN(rapid.ByteRange(0, 3), 0, 6)
	rapid.Check(t, func(t *rapid.T) {
		a, b := keys.Draw(t, "a"), keys.Draw(t, "b")
		if rapid.Bool().Draw(t, "high") {
			a = append(a, 0xFF)
		}
		n, m := rapid.Uint64Min(1).Draw(t, "n"), rapid.Uint64Min(1).Draw(t, "m")
		x, y := orderedKey(a, n), orderedKey(b, m)
		want := bytes.Compare(a, b)
		if want == 0 {
			want = map[bool]int{true: -1, false: 1}[n < m]
			if n == m {
				want = 0
			}
		}
		if got := bytes.Compare(x, y); got != want {
			t.Fatalf("%q %d against %q %d: %d, want %d", a, n, b, m, got, want)
		}
		if k, i, err := parseOrderedKey(x); err != nil || i != n || !bytes.Equal(k, a) {
			t.Fatalf("%x gives %q %d %v", x, k, i, err)
		}
	})
}

func FuzzParseOrderedKey(f *testing.F) {
	f.Add(orderedKey([]byte("a\x00b"), 300))
	f.Fuzz(func(t *testing.T, b []byte) {
		if k, n, err := parseOrderedKey(b); err == nil && !bytes.Equal(orderedKey(k, n), b) {
			t.Errorf("%x is read as %q %d, which is written as %x", b, k, n, orderedKey(k, n))
		}
	})
}

func FuzzParseRecord(f *testing.F) {
	k := numberKey(7)
	f.Add(appendRecord(nil, k, 0, 3, "action", item("body", "a", "b"), [MaxKeys]keyRef{}))
	f.Add(appendRecord(nil, k, 0, 3, "00ff", item("body", "a", "b"), [MaxKeys]keyRef{{}, {3, 1}}))
	f.Add(appendRecord(nil, k, 2, 0, "", item(""), [MaxKeys]keyRef{}))
	f.Add([]byte("\x01\x00\x02\x03act\x01\x03keybody1234"))
	f.Fuzz(func(t *testing.T, b []byte) {
		if len(b) < 4 {
			return
		}
		b = seal(k, bytes.Clone(b[:len(b)-4])) // get past the seal
		r, err := parseRecord(k, b, nil)
		if err != nil {
			return
		}
		again := appendRecord(nil, k, r.back, r.span, string(r.action), Item{Body: r.body, Keys: r.keys}, r.refs)
		r2, err := parseRecord(k, again, nil)
		if err != nil || !bytes.Equal(r.body, r2.body) || len(r.keys) != len(r2.keys) || r.back != r2.back ||
			!bytes.Equal(r.action, r2.action) || r.refs != r2.refs {
			t.Errorf("%x is read differently when written anew", b)
		}
	})
}

// The stored forms of both formats. They never change: files that hold them exist.
// The seals were worked out bit by bit by another program.
func TestStoredForms(t *testing.T) {
	for name, c := range map[string]struct{ got, want []byte }{
		"first record": {
			appendRecord(nil, numberKey(1), 0, 2, "act", item("body", "key"), [MaxKeys]keyRef{}),
			[]byte("\x02\x00\x02\x06act\x01\x00\x03keybody"),
		},
		"hex name": {
			appendRecord(nil, numberKey(1), 0, 2, "00ffa0", item("b"), [MaxKeys]keyRef{}),
			[]byte("\x02\x00\x02\x07\x00\xff\xa0\x00b"),
		},
		"next record": {
			appendRecord(nil, numberKey(2), 1, 0, "", item("b", "x", "y"), [MaxKeys]keyRef{{1, 0}, {300, 2}}),
			[]byte("\x02\x01\x02\x04\xb2\x09b"),
		},
		"head": {
			head{commit: 9, last: 258, running: 0x01020304, actions: 5, keys: 6, rows: 7, rowSum: 8}.value(),
			[]byte("\x02\x00\x00\x00\x00\x00\x00\x00\x09\x00\x00\x00\x00\x00\x00\x01\x02\x01\x02\x03\x04" +
				"\x00\x00\x00\x00\x00\x00\x00\x05\x00\x00\x00\x00\x00\x00\x00\x06" +
				"\x00\x00\x00\x00\x00\x00\x00\x07\x00\x00\x00\x00\x00\x00\x00\x08"),
		},
	} {
		if !bytes.Equal(c.got[:len(c.got)-4], c.want) {
			t.Errorf("%s: %q, want %q", name, c.got, c.want)
		}
	}
	r, err := parseRecord(numberKey(1), []byte("\x01\x00\x02\x03act\x01\x03keybody\x36\x31\x94\xa6"), nil)
	if err != nil || string(r.action) != "act" || string(r.keys[0]) != "key" || string(r.body) != "body" || r.span != 2 {
		t.Errorf("first record of format 1: %+v, %v", r, err)
	}
	r, err = parseRecord(numberKey(2), []byte("\x01\x01\x00b\xa3\xbb\xb1\x56"), nil)
	if err != nil || r.back != 1 || string(r.body) != "b" {
		t.Errorf("next record of format 1: %+v, %v", r, err)
	}
	if first, last, err := parseAction([]byte("act"), []byte("\x01\x01\xac\x02\xa6\xea\xb7\xea")); first != 1 || last != 300 || err != nil {
		t.Errorf("action of format 1: %d to %d, %v", first, last, err)
	}
	h, err := parseHead(1, []byte("\x01\x00\x00\x00\x00\x00\x00\x00\x09\x00\x00\x00\x00\x00\x00\x01\x02\x01\x02\x03\x04"+
		"\x00\x00\x00\x00\x00\x00\x00\x05\x00\x00\x00\x00\x00\x00\x00\x06\x9a\x4e\x75\x56"))
	if err != nil || h != (head{commit: 9, last: 258, running: 0x01020304, actions: 5, keys: 6}) {
		t.Errorf("head of format 1: %+v, %v", h, err)
	}
	if _, err := parseHead(1, h.value()); err == nil {
		t.Error("a head of format 2 speaks for a file of format 1")
	}
	if got, want := orderedKey([]byte("a\x00b"), 300), "a\x00\xffb\x00\x02\x01\x2c"; string(got) != want {
		t.Errorf("ordered key %q, want %q", got, want)
	}
	var a actionBlock
	block, rest := actionPlace("act") // its SHA-256 begins f8 3f 07 be 16
	a.add(rest, 300)
	a.add([actionRest]byte{1, 2, 3}, 302)
	if block != 0xf83 || string(a.b) != "\x05\xac\x02\xf0\x7b\xe1\x02\x01\x02\x03" {
		t.Errorf("block %x of actions: %x", block, a.b)
	}
}
