package store

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"sync/atomic"
	"testing"
	"time"

	"go.etcd.io/bbolt"
)

// grown is a store with n records behind it.
func grown(b *testing.B, n int) *Store {
	b.Helper()
	path := filepath.Join(b.TempDir(), "f")
	err := CreateWith(path, "x", Options{}, func(add func(string, []Item) error) error {
		for i := range n {
			if err := add(benchAction(i), []Item{benchItem(i)}); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		b.Fatal(err)
	}
	s, err := Open(path, Options{})
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { _ = s.Close() })
	return s
}

func benchAction(i int) string { return fmt.Sprintf("01jzk%011x", i) }

func benchItem(i int) Item {
	return Item{Body: make([]byte, 90), Keys: [][]byte{fmt.Appendf(nil, "z/%03d/%02d", i%600, i%5)}}
}

var unique atomic.Int64

// BenchmarkAppend gives two ratios, each to what was done in the same turn, the
// median of all turns: x-raw to appending 200 bytes to a plain file and syncing
// it, x-engine to one bare commit of 200 bytes by bbolt into an empty file. There
// is no bound here: disks differ from hour to hour.
func BenchmarkAppend(b *testing.B) {
	for _, n := range []int{0, 550_000} {
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
					bk.FillPercent = fillOthers
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
	s := grown(b, 550_000)
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
			if err := s.EachKey([]byte("z/100/"), func([]byte, Record) error { return nil }); err != nil {
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
	for _, n := range []int{0, 550_000} {
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
		grown(b, 550_000)
	}
}
