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

// BenchmarkAppend gives two ratios, each to what was done in the same turn, the
// median of all turns: x-raw to appending 200 bytes to a plain file and syncing
// it, x-engine to one bare commit of 200 bytes by bbolt into an empty file. There
// is no bound here: disks differ from hour to hour.
func BenchmarkAppend(b *testing.B) {
	for _, n := range []int{0, tenYears} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			s := grown(b, n)
			dir := b.TempDir()
			raw, err := os.OpenFile(filepath.Join(dir, "raw"), os.O_CREATE|os.O_WRONLY|os.O_APPEND, 0o600)
			if err != nil {
				b.Fatal(err)
			}
			defer func() { _ = raw.Close() }()
			engine, err := bbolt.Open(filepath.Join(dir, "engine"), 0o600, nil)
			if err != nil {
				b.Fatal(err)
			}
			defer func() { _ = engine.Close() }()
			line := make([]byte, 200)
			var toRaw, toEngine []float64
			for b.Loop() {
				i := int(unique.Add(1))
				t0 := time.Now()
				_, err1 := raw.Write(line)
				err2 := dataSync(raw)
				t1 := time.Now()
				err3 := engine.Update(func(tx *bbolt.Tx) error {
					bk, err := tx.CreateBucketIfNotExists([]byte("b"))
					if err != nil {
						return err
					}
					bk.FillPercent = fillRecords
					return bk.Put(numberKey(uint64(i)), line)
				})
				t2 := time.Now()
				_, err4 := s.Append(benchAction(1<<30+i), []Item{benchItem(i)})
				t3 := time.Now()
				if err := errors.Join(err1, err2, err3, err4); err != nil {
					b.Fatal(err)
				}
				toRaw = append(toRaw, float64(t3.Sub(t2))/float64(t1.Sub(t0)))
				toEngine = append(toEngine, float64(t3.Sub(t2))/float64(t2.Sub(t1)))
			}
			slices.Sort(toRaw)
			slices.Sort(toEngine)
			b.ReportMetric(toRaw[len(toRaw)/2], "x-raw")
			b.ReportMetric(toEngine[len(toEngine)/2], "x-engine")
		})
	}
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
