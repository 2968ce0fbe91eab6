package store

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
)

// TestDamageIsNeverSilent damages copies of a file and opens, reads, checks and
// writes them. It runs in this process, so a death would end the test. Allowed:
// an error; the right contents; the contents before the last action, with a
// warning. Never: other contents, or a commit that makes readable records
// unreadable. An old page in the place of a new one can hide an action from Find, or rows from EachKey
// (it bears the right number and fits where it hangs); there Check must see it.
func TestDamageIsNeverSilent(t *testing.T) {
	good, want := sample(t, 90)
	pages := usedPages(t, good)
	for _, d := range []struct {
		name   string
		n      int
		damage func(b []byte, r *rand.Rand) string
		stale  bool // the damage can put an old page in the place of a new one
	}{
		{"bit anywhere", rounds(900, 10_000), func(b []byte, r *rand.Rand) string {
			return flipBit(b, r.IntN(pages*pageSize), r)
		}, false},
		{"bit in a page's beginning", rounds(900, 10_000), func(b []byte, r *rand.Rand) string {
			return flipBit(b, r.IntN(pages)*pageSize+r.IntN(96), r)
		}, false},
		{"bit in a head or the free list", rounds(200, 4_000), func(b []byte, r *rand.Rand) string {
			p := r.IntN(2)
			if r.IntN(2) == 0 {
				m, errs, _ := readMetas(sliceFile(b))
				newest, _, _ := choose("", m, errs)
				p = int(newest.freelist)
			}
			return flipBit(b, p*pageSize+r.IntN(100), r)
		}, false},
		{"page zeroed", rounds(100, 2_000), func(b []byte, r *rand.Rand) string {
			p := r.IntN(pages)
			clear(b[p*pageSize : (p+1)*pageSize])
			return fmt.Sprint("page ", p)
		}, false},
		{"page over another", rounds(100, 4_000), func(b []byte, r *rand.Rand) string {
			p, q := r.IntN(pages), r.IntN(pages)
			copy(b[p*pageSize:(p+1)*pageSize], b[q*pageSize:])
			if r.IntN(2) == 0 && p > 1 {
				order.PutUint64(b[p*pageSize:], uint64(p))
			}
			return fmt.Sprint("page ", q, " over ", p)
		}, true},
		{"child led elsewhere", rounds(100, 4_000), func(b []byte, r *rand.Rand) string {
			return leadElsewhere(b, pages, r)
		}, true},
		{"sector garbled", rounds(100, 4_000), func(b []byte, r *rand.Rand) string {
			at := r.IntN(pages*pageSize/512) * 512
			for i := range 512 {
				b[at+i] = byte(r.Uint32())
			}
			return fmt.Sprint("sector at ", at)
		}, false},
		{"word changed", rounds(100, 4_000), func(b []byte, r *rand.Rand) string {
			at := r.IntN(pages*pageSize/4) * 4
			order.PutUint32(b[at:], r.Uint32N(200))
			return fmt.Sprint("word at ", at)
		}, true},
	} {
		t.Run(d.name, func(t *testing.T) {
			t.Parallel()
			path := filepath.Join(quickDir(t), "f")
			var tally [5]int
			for i := range d.n {
				r := rand.New(rand.NewPCG(uint64(i), 4))
				b := append([]byte{}, good...)
				what := d.damage(b, r)
				if err := os.WriteFile(path, b, 0o600); err != nil {
					t.Fatal(err)
				}
				got, err := verdict(path, want, d.stale)
				if err != nil {
					t.Errorf("trial %d, %s: %v", i, what, err)
				}
				tally[got]++
			}
			t.Logf("%d trials: %d refused at open, %d at reading, %d lost the last action with a warning, %d unharmed, %d wrong",
				d.n, tally[atOpen], tally[atRead], tally[lostLast], tally[unharmed], tally[wrong])
		})
	}
}

// What became of a damaged file.
const (
	atOpen = iota
	atRead
	lostLast
	unharmed
	wrong
)

func verdict(path string, want contents, stale bool) (int, error) {
	s, err := Open(path, Options{})
	if err != nil {
		return atOpen, sentence(err)
	}
	defer func() { _ = s.Close() }()
	got, err := read(s)
	result := unharmed
	n := len(want.Records)
	switch {
	case err != nil:
		result = atRead
		if err := sentence(err); err != nil {
			return wrong, err
		}
	case s.Warning() != "" && reflect.DeepEqual(got.Records, want.Records[:n-2]):
		result = lostLast
	case !got.HasSnap && reflect.DeepEqual(got.Records, want.Records) && reflect.DeepEqual(got.Keys, want.Keys):
		// a snapshot that does not fit is allowed to be missing
	case !same(got, want):
		return wrong, errors.New("other contents, and not a word")
	}
	if result == lostLast {
		want.Records, want.Keys = want.Records[:n-2], got.Keys
	}
	if err := finds(s, want); err != nil && !(stale && s.Check() != nil) {
		return wrong, err
	}
	var before map[uint64]string
	if result == atRead {
		before = readable(s)
	}
	if _, err := s.Append("one more", []Item{item("more", "more", "k5")}); err != nil {
		return result, sentence(err)
	}
	if result != atRead {
		i := 0
		err := s.Each(1, func(r Record) error {
			if i < len(want.Records) && !reflect.DeepEqual(r, want.Records[i]) {
				return fmt.Errorf("record %d is now %q", r.Number, r.Body)
			}
			i++
			return nil
		})
		if err != nil || i != len(want.Records)+1 {
			return wrong, fmt.Errorf("a commit spoiled the file: %d records, %w", i, err)
		}
	} else if after := readable(s); !covers(after, before) {
		return wrong, fmt.Errorf("a commit made records unreadable: %d before, %d after", len(before), len(after))
	}
	return result, nil
}

// finds looks each action up: a right answer or an error.
func finds(s *Store, want contents) error {
	v, err := s.view()
	if err != nil {
		return err
	}
	defer s.done(v)
	for _, k := range []string{"k3", "k16", "late"} {
		var all, got []string
		for _, line := range want.Keys {
			if strings.HasPrefix(line, k) {
				all = append(all, line)
			}
		}
		err := s.EachKey([]byte(k), func(k []byte, r Record) error {
			got = append(got, row(k, r))
			return nil
		})
		if err == nil && !reflect.DeepEqual(got, all) {
			return fmt.Errorf("%d rows with key %s, want %d", len(got), k, len(all))
		}
	}
	for i, r := range want.Records {
		if i > 0 && want.Records[i-1].Action == r.Action {
			continue
		}
		if a, ok, err := v.action(r.Action); err == nil && (!ok || a.First != r.Number) {
			return fmt.Errorf("action %s is answered with %+v, %v", r.Action, a, ok)
		}
	}
	return nil
}

// sentence complains about an error that is not fit for a person, or of a kind
// that damage should not give.
func sentence(err error) error {
	var tr *Trouble
	if !errors.As(err, &tr) || tr.What == "" || tr.Do == "" {
		return fmt.Errorf("not in words: %w", err)
	}
	for _, k := range []error{ErrDamaged, ErrShort, ErrForeign, ErrNewer} {
		if errors.Is(err, k) {
			return nil
		}
	}
	return fmt.Errorf("odd kind %w: %w", tr.Kind, err)
}

// readable asks for each record by its number and compares nothing.
func readable(s *Store) map[uint64]string {
	out := map[uint64]string{}
	v, err := s.view()
	if err != nil {
		return out
	}
	defer s.done(v)
	for n := uint64(1); n < 200; n++ {
		if r, err := v.record(n); err == nil {
			out[n] = string(r.body)
		}
	}
	return out
}

func covers(a, b map[uint64]string) bool {
	for n, body := range b {
		if a[n] != body {
			return false
		}
	}
	return true
}

func usedPages(t testing.TB, b []byte) int {
	t.Helper()
	m, errs, err := readMetas(sliceFile(b))
	if err != nil {
		t.Fatal(err)
	}
	newest, _, err := choose("", m, errs)
	if err != nil {
		t.Fatal(err)
	}
	return int(newest.pages)
}

func flipBit(b []byte, at int, r *rand.Rand) string {
	bit := r.IntN(8)
	b[at] ^= 1 << bit
	return fmt.Sprintf("bit %d of byte %d of page %d", bit, at%pageSize, at/pageSize)
}

// leadElsewhere makes a branch point to a random page, often to itself or to one
// above it: the circle that a checksum of values does not see.
func leadElsewhere(b []byte, pages int, r *rand.Rand) string {
	for {
		p := 2 + r.IntN(pages-2)
		h := b[p*pageSize:]
		n := int(order.Uint16(h[10:]))
		if order.Uint16(h[8:]) != kindBranch || n == 0 {
			continue
		}
		i, to := r.IntN(n), p
		if r.IntN(2) == 0 {
			to = r.IntN(pages)
		}
		order.PutUint64(h[pageHeader+element*i+8:], uint64(to))
		return fmt.Sprintf("twig %d of page %d leads to %d", i, p, to)
	}
}

type sliceFile []byte

func (s sliceFile) ReadAt(p []byte, off int64) (int, error) {
	n := copy(p, s[min(int(off), len(s)):])
	if n < len(p) {
		return n, errors.New("short")
	}
	return n, nil
}

// FuzzOpen writes arbitrary changes into a good file.
func FuzzOpen(f *testing.F) {
	good, want := sample(f, 30)
	f.Add(uint32(0), []byte("x"), false)
	f.Add(uint32(pageSize*2+8), []byte{1, 0, 0xFF, 0xFF}, true)
	f.Add(uint32(pageSize*3+16), []byte{0, 0, 0, 1, 0, 0, 0, 1}, false)
	dir := quickDir(f)
	f.Fuzz(func(t *testing.T, at uint32, change []byte, cut bool) {
		b := append([]byte{}, good...)
		from := int(at) % len(b)
		copy(b[from:], change)
		if cut {
			b = b[:from]
		}
		path := filepath.Join(dir, fmt.Sprint("fuzz", os.Getpid()))
		if err := os.WriteFile(path, b, 0o600); err != nil {
			t.Fatal(err)
		}
		s, err := Open(path, Options{})
		if err != nil {
			if errors.Is(err, ErrEmpty) && len(b) == 0 {
				return
			}
			if err := sentence(err); err != nil {
				t.Error(err)
			}
			return
		}
		_ = s.Close()
		// A change that was made to fit the seals is not damage.
		if _, err := verdict(path, want, true); err != nil && len(change) < 64 {
			t.Error(err)
		}
	})
}
