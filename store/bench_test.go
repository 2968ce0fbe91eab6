package store

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"sync/atomic"
	"testing"
	"time"
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

// BenchmarkAppend gives the ratio to appending 200 bytes to a plain file and
// syncing it, taken in turns; the median of all rounds. There is no bound here:
// disks differ from hour to hour.
func BenchmarkAppend(b *testing.B) {
	for _, n := range []int{0, 550_000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			s := grown(b, n)
			raw, err := os.OpenFile(filepath.Join(b.TempDir(), "raw"), os.O_CREATE|os.O_WRONLY|os.O_APPEND, 0o600)
			if err != nil {
				b.Fatal(err)
			}
			defer func() { _ = raw.Close() }()
			line := make([]byte, 200)
			var ratios []float64
			for b.Loop() {
				t0 := time.Now()
				if _, err := raw.Write(line); err != nil {
					b.Fatal(err)
				}
				if err := dataSync(raw); err != nil {
					b.Fatal(err)
				}
				t1 := time.Now()
				i := int(unique.Add(1))
				if _, err := s.Append(benchAction(1<<40+i), []Item{benchItem(i)}); err != nil {
					b.Fatal(err)
				}
				ratios = append(ratios, float64(time.Since(t1))/float64(t1.Sub(t0)))
			}
			slices.Sort(ratios)
			b.ReportMetric(ratios[len(ratios)/2], "x-raw")
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
