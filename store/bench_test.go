package store

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"sync/atomic"
	"testing"
	"time"

	"go.etcd.io/bbolt"
)

// grown is a store with n records behind it.
func grown(b testing.TB, n int) *Store {
	b.Helper()
	path := filepath.Join(b.TempDir(), "f")
	if err := CreateWith(path, "x", Options{}, func(add func(string, []Item) error) error {
		return years(n, add)
	}); err != nil {
		b.Fatal(err)
	}
	s, err := Open(path, Options{})
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { _ = s.Close() })
	return s
}

// What a real book is like: days of 250 records, ten for each visit, an action for
// each of them. One key goes on over the day, the other over most of a visit. The
// last record of a day brings two rows.
const (
	perDay    = 250
	perVisit  = 10
	daysAYear = 220
	tenYears  = 10 * daysAYear * perDay
)

// years gives n records of that kind.
func years(n int, add func(string, []Item) error) error {
	for i := range n {
		if err := add(benchAction(i), []Item{benchItem(i)}); err != nil {
			return err
		}
	}
	return nil
}

// benchAction is a name like those that programs make: 16 bytes in hex, by chance.
func benchAction(i int) string {
	h := sha256.Sum256(fmt.Append(nil, "action ", i))
	return hex.EncodeToString(h[:16])
}

func benchDay(i int) string {
	d := i / perDay
	first := time.Date(2026+d/daysAYear, 3, 1, 0, 0, 0, 0, time.UTC)
	return first.AddDate(0, 0, d%daysAYear).Format(time.DateOnly)
}

func benchItem(i int) Item {
	r := rand.New(rand.NewPCG(uint64(i), 1))
	body := make([]byte, 80+r.IntN(40))
	for j := range body {
		body[j] = byte(r.Uint32())
	}
	day := benchDay(i)
	it := Item{Body: body, Keys: [][]byte{[]byte("day/" + day)}}
	if at := i % perVisit; at != 2 && at != 6 {
		it.Keys = append(it.Keys, fmt.Appendf(nil, "lawn/lawn %03d", i/perVisit*7%600))
	}
	if i%perDay == perDay-1 {
		it.Rows = []Row{
			{[]byte("sums/" + day), make([]byte, 400)},
			{[]byte("laid/" + day), make([]byte, 3000)},
		}
	}
	return it
}

var unique atomic.Int64

// BenchmarkAppend does five things in turn and gives medians of ratios within a turn:
// x-raw, one action with ten years behind it to appending 200 bytes to a plain file
// and syncing it; x-empty, to the same action in a book that was empty; x-engine, to
// a bare commit of 200 bytes by bbolt into an empty file; x-floor, to nine page writes
// with two syncs into a file that has its room. floor-x-raw says what two syncs cost on this
// disk. There is no bound here: disks differ from hour to hour.
func BenchmarkAppend(b *testing.B) {
	dir := b.TempDir()
	raw, err1 := os.OpenFile(filepath.Join(dir, "raw"), os.O_CREATE|os.O_WRONLY|os.O_APPEND, 0o600)
	bare, err2 := os.OpenFile(filepath.Join(dir, "bare"), os.O_CREATE|os.O_RDWR, 0o600)
	engine, err3 := bbolt.Open(filepath.Join(dir, "engine"), 0o600, nil)
	if err := errors.Join(err1, err2, err3); err != nil {
		b.Fatal(err)
	}
	defer func() { _ = errors.Join(raw.Close(), bare.Close(), engine.Close()) }()
	room := make([]byte, 4<<20)
	if _, err := bare.Write(room); err != nil {
		b.Fatal(err)
	}
	empty, full := grown(b, 0), grown(b, tenYears)
	line := make([]byte, 200)
	append1 := func(s *Store) func(int) error {
		return func(i int) error {
			_, err := s.Append(benchAction(1<<30+i), []Item{benchItem(tenYears + i)})
			return err
		}
	}
	steps := []func(i int) error{
		func(int) error { _, err := raw.Write(line); return errors.Join(err, dataSync(raw)) },
		func(i int) error { return twoSyncs(bare, i) },
		func(i int) error {
			return engine.Update(func(tx *bbolt.Tx) error {
				bk, err := tx.CreateBucketIfNotExists([]byte("b"))
				if err != nil {
					return err
				}
				bk.FillPercent = fillRecords
				return bk.Put(numberKey(uint64(i)), line)
			})
		},
		append1(empty),
		append1(full),
	}
	ratios := map[string][]float64{}
	for b.Loop() {
		i := int(unique.Add(1))
		var took [5]float64
		for j := range steps {
			at := (i + j) % len(steps) // each is first in turn
			t0 := time.Now()
			if err := steps[at](i); err != nil {
				b.Fatal(err)
			}
			took[at] = float64(time.Since(t0))
		}
		for name, r := range map[string]float64{
			"x-raw": took[4] / took[0], "x-floor": took[4] / took[1], "x-engine": took[4] / took[2],
			"x-empty": took[4] / took[3], "floor-x-raw": took[1] / took[0],
		} {
			ratios[name] = append(ratios[name], r)
		}
	}
	for name, r := range ratios {
		slices.Sort(r)
		b.ReportMetric(r[len(r)/2], name)
	}
}

// twoSyncs writes pages as a commit does: eight apart, a sync, one head, a sync.
func twoSyncs(f *os.File, i int) error {
	var page [pageSize]byte
	var err error
	for j := range 8 {
		_, e := f.WriteAt(page[:], int64((i*8+j)*37%1000+2)*pageSize)
		err = errors.Join(err, e)
	}
	err = errors.Join(err, dataSync(f))
	_, e := f.WriteAt(page[:], int64(i%2)*pageSize)
	return errors.Join(err, e, dataSync(f))
}

func BenchmarkRead(b *testing.B) {
	s := grown(b, tenYears)
	b.Run("each", func(b *testing.B) {
		for b.Loop() {
			if err := s.Each(1, func(Record) error { return nil }); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("day", func(b *testing.B) {
		for b.Loop() {
			if err := s.Each(549_750, func(Record) error { return nil }); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("key", func(b *testing.B) {
		for b.Loop() {
			if err := s.EachKey([]byte("lawn/lawn 100"), func([]byte, Record) error { return nil }); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("check", func(b *testing.B) {
		for b.Loop() {
			if err := s.Check(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("find", func(b *testing.B) {
		for b.Loop() {
			if _, ok, err := s.Find(benchAction(99)); !ok || err != nil {
				b.Fatal(err)
			}
		}
	})
}

func BenchmarkOpen(b *testing.B) {
	for _, n := range []int{0, tenYears} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			s := grown(b, n)
			_ = s.Close()
			st, _ := os.Stat(s.Path())
			for b.Loop() {
				o, err := Open(s.Path(), Options{})
				if err != nil {
					b.Fatal(err)
				}
				_ = o.Close()
			}
			b.ReportMetric(float64(st.Size()), "bytes")
		})
	}
}

// BenchmarkCreateWith makes ten years in one go.
func BenchmarkCreateWith(b *testing.B) {
	for b.Loop() {
		grown(b, tenYears)
	}
}
