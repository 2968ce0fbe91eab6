package store

import (
	"bytes"
	"fmt"
	"path/filepath"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// TestKeysThatGoOn: keys that stay over many records, come and go and come twice on
// one record are found exactly as by a scan, whatever the prefix.
func TestKeysThatGoOn(t *testing.T) {
	dir := quickDir(t)
	run := 0
	rapid.Check(t, func(t *rapid.T) {
		run++
		s, err := Create(filepath.Join(dir, fmt.Sprint(run)), "k", Options{})
		if err != nil {
			t.Fatal(err)
		}
		defer func() { _ = s.Close() }()
		names := []string{"", "a", "a\x00", "ab", "b", "day/1"}
		key := rapid.SampledFrom(names)
		keys := rapid.SliceOfN(key, 0, MaxKeys).Draw(t, "keys")
		var want []keyAt
		n := uint64(0)
		for a := range rapid.IntRange(1, 12).Draw(t, "actions") {
			var items []Item
			for range rapid.IntRange(1, 9).Draw(t, "items") {
				if rapid.IntRange(0, 3).Draw(t, "other") == 0 {
					keys = rapid.SliceOfN(key, 0, MaxKeys).Draw(t, "keys")
				}
				n++
				items = append(items, item(fmt.Sprint(n), keys...))
				for i, k := range keys {
					if !slices.Contains(keys[:i], k) {
						want = append(want, keyAt{k, n})
					}
				}
			}
			if _, err := s.Append(fmt.Sprint(a), items); err != nil {
				t.Fatal(err)
			}
			if rapid.IntRange(0, 4).Draw(t, "again") == 0 {
				if _, err := s.Recheck("0"); err != nil {
					t.Fatal(err)
				}
			}
		}
		slices.SortStableFunc(want, func(x, y keyAt) int { return bytes.Compare([]byte(x.key), []byte(y.key)) })
		for _, prefix := range append(names, "c", "day") {
			compareKeys(t, s, prefix, want)
		}
		for from := range n {
			compareWalk(t, s, from+1, want)
		}
		if err := s.Check(); err != nil {
			t.Fatal(err)
		}
	})
}

type keyAt struct {
	key string
	n   uint64
}

// compareKeys holds EachKey to the list of all keys.
func compareKeys(t *rapid.T, s *Store, prefix string, want []keyAt) {
	var all, got []keyAt
	for _, h := range want {
		if bytes.HasPrefix([]byte(h.key), []byte(prefix)) {
			all = append(all, h)
		}
	}
	if err := s.EachKey([]byte(prefix), func(k []byte, r Record) error {
		got = append(got, keyAt{string(k), r.Number})
		if !hasKey(r.Keys, k) || string(r.Body) != fmt.Sprint(r.Number) {
			return fmt.Errorf("key %q with %+v", k, r)
		}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(got, all) {
		t.Fatalf("prefix %q: %v, want %v", prefix, got, all)
	}
}

// compareWalk begins anywhere, also where keys are written before that place.
func compareWalk(t *rapid.T, s *Store, from uint64, want []keyAt) {
	count := 0
	if err := s.Each(from, func(r Record) error {
		for i, k := range r.Keys {
			if !slices.Contains(want, keyAt{string(k), r.Number}) {
				return fmt.Errorf("record %d has key %q", r.Number, k)
			}
			if !hasKey(r.Keys[:i], k) {
				count++
			}
		}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	for _, h := range want {
		if h.n >= from {
			count--
		}
	}
	if count != 0 {
		t.Fatalf("from %d: %d keys too many", from, count)
	}
}

// TestNamesThatAgree: two actions whose names have the same place are two actions.
func TestNamesThatAgree(t *testing.T) {
	type at struct {
		block uint16
		rest  [actionRest]byte
	}
	seen := map[at]string{}
	var a, b string
	for i := 0; b == ""; i++ {
		name := fmt.Sprint("n", i)
		block, rest := actionPlace(name)
		if other, ok := seen[at{block, rest}]; ok {
			a, b = other, name
		}
		seen[at{block, rest}] = name
	}
	s := made(t)
	put(t, s, a, item("1"))
	if _, ok, err := s.Find(b); ok || err != nil {
		t.Fatalf("%s is taken for %s: %v", b, a, err)
	}
	put(t, s, "between", item("2"))
	if x := put(t, s, b, item("3"), item("4")); x.Repeated || x.First != 3 {
		t.Errorf("answer %+v", x)
	}
	for name, first := range map[string]uint64{a: 1, b: 3} {
		if x := put(t, s, name, item("again")); !x.Repeated || x.First != first {
			t.Errorf("answer to %s: %+v", name, x)
		}
	}
	path := newPath(t)
	if err := CreateWith(path, "x", Options{}, func(add func(string, []Item) error) error {
		if err := add(a, []Item{item("1")}); err != nil {
			return err
		}
		return add(b, []Item{item("2")})
	}); err != nil {
		t.Fatal(err)
	}
	opened(t, path, Options{})
}
