package store

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"sort"
)

// Salvaged is a record found in a file that is not to be trusted otherwise: its
// own seal fits, and nothing else is known of it. The caller must know by the
// contents whether it belongs, and what its keys are.
type Salvaged struct {
	Number uint64
	Action string
	Body   []byte
	// Back is how far before it the first record of its action is. Action is empty
	// if that one was not found.
	Back uint64
	// Held tells that the newest head that can be read leads to it. What no head
	// leads to is of an older commit, or of one that was never confirmed.
	Held bool
}

// Salvage looks at every page of the file at path, whatever the state of its
// heads and branches, and returns all sealed records with numbers above a given
// one, by number; of equal numbers with different contents those first that the
// newest head holds. It needs no lock and changes nothing. No file at all, or one
// in which nothing is found, gives an empty list.
func Salvage(path string, above uint64) ([]Salvaged, error) {
	st, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) || err == nil && !st.Mode().IsRegular() {
		return nil, nil
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, blame(path, "read", err)
	}
	defer func() { _ = f.Close() }()
	s := &salvor{f: f, size: st.Size(), above: above, seen: map[foundKey]int{}, names: map[uint64]string{}}
	s.held = heldPages(f, path)
	for at := int64(0); at < s.size; at += pageSize {
		s.page(at)
	}
	s.nameAll()
	sort.SliceStable(s.out, func(i, j int) bool {
		a, b := &s.out[i], &s.out[j]
		if a.Number != b.Number {
			return a.Number < b.Number
		}
		return a.Held && !b.Held
	})
	return s.out, nil
}

type foundKey struct {
	number uint64
	seal   uint32
}

type salvor struct {
	f     *os.File
	size  int64
	above uint64
	held  map[uint64]bool
	seen  map[foundKey]int
	names map[uint64]string // action of its first record
	out   []Salvaged
}

// page takes what is sealed out of a page. Its header and count are not believed:
// each element stands for itself.
func (s *salvor) page(at int64) {
	b := make([]byte, min(pageSize, s.size-at))
	n, err := s.f.ReadAt(b, at)
	if err != nil && !errors.Is(err, io.EOF) {
		return // the disk does not give it back
	}
	s.elements(b[:n], at, true)
}

func (s *salvor) elements(b []byte, at int64, whole bool) {
	for e := pageHeader; e+element <= len(b); e += element {
		mark := order.Uint32(b[e:])
		pos, klen, vlen := int64(order.Uint32(b[e+4:])), int64(order.Uint32(b[e+8:])), int64(order.Uint32(b[e+12:]))
		start := int64(e) + pos
		end := start + klen + vlen
		switch {
		case mark > 1 || pos < element || klen > MaxKey || vlen > maxSealed || vlen < 6:
		case mark == 1 && whole && end <= int64(len(b)):
			// A bucket that is small stands in its place as a page, behind 16 bytes.
			if in := start + klen + 16; in < end {
				s.elements(b[in:end], at, false)
			}
		case klen != 8:
		case end <= int64(len(b)):
			s.take(uint64(at/pageSize), b[start:start+8:start+8], b[start+8:end:end])
		case whole && at+end <= s.size: // it goes on in the pages behind
			kv := make([]byte, klen+vlen)
			if _, err := s.f.ReadAt(kv, at+start); err == nil {
				s.take(uint64(at/pageSize), kv[:8:8], kv[8:])
			}
		}
	}
}

// mostRecords is beyond what any file can hold. Eight letters, which are a key of
// another bucket, come to more.
const mostRecords = 1 << 48

// maxSealed bounds the value of a record.
const maxSealed = MaxBody + MaxKeys*(MaxKey+8) + MaxAction + 64

func (s *salvor) take(page uint64, key, value []byte) {
	n := numberFrom(key)
	if n == 0 || n > mostRecords {
		return
	}
	r, err := parseRecord(key, value, nil)
	if err != nil || r.back >= n {
		return
	}
	if r.back == 0 {
		if _, ok := s.names[n]; !ok || s.held[page] {
			s.names[n] = string(r.action)
		}
	}
	if n <= s.above {
		return
	}
	k := foundKey{n, r.seal}
	if i, ok := s.seen[k]; ok {
		s.out[i].Held = s.out[i].Held || s.held[page]
		return
	}
	s.seen[k] = len(s.out)
	s.out = append(s.out, Salvaged{
		Number: n, Action: string(r.action), Body: r.body, Back: r.back, Held: s.held[page],
	})
}

func numberFrom(key []byte) (n uint64) {
	for _, c := range key {
		n = n<<8 | uint64(c)
	}
	return n
}

// nameAll gives the records of an action the name that its first one carries.
func (s *salvor) nameAll() {
	for i := range s.out {
		if r := &s.out[i]; r.Back > 0 {
			r.Action = s.names[r.Number-r.Back]
		}
	}
}

// heldPages are the pages of records to which the newest head leads, as far as
// the way can be read.
func heldPages(f *os.File, path string) map[uint64]bool {
	out := map[uint64]bool{}
	h, err := readHeads(f)
	if err != nil {
		return out
	}
	i := 0
	if h.errs[0] != nil || h.errs[1] == nil && h.m[1].txid > h.m[0].txid {
		i = 1
	}
	if h.errs[i] != nil {
		return out
	}
	v := &view{path: path, file: f, m: h.m[i]}
	_ = v.readDir() // what it found before an error is there
	t, ok := v.dir[string(bucketRecords)]
	if !ok || t.root == 0 {
		out[v.m.root] = true // a small one stands inside the page of buckets
		return out
	}
	below := []uint64{t.root}
	for depth := 0; depth < maxDepth && len(below) > 0; depth++ {
		var next []uint64
		for _, id := range below {
			if out[id] {
				continue
			}
			out[id] = true
			p, err := loadPage(f, id, v.m.pages)
			if err != nil || !p.branch {
				continue
			}
			for i := range p.count {
				next = append(next, p.child(i))
			}
		}
		below = next
	}
	return out
}
