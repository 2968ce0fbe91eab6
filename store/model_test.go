package store

import (
	"bytes"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestAgainstModel compares a store with a slice and a map over random actions.
func TestAgainstModel(t *testing.T) {
	dir := quickDir(t)
	run := 0
	rapid.Check(t, func(t *rapid.T) {
		run++
		path := filepath.Join(dir, fmt.Sprint(run))
		s, err := Create(path, "m", Options{})
		if err != nil {
			t.Fatal(err)
		}
		defer func() { _ = s.Close() }()
		m := model{answers: map[string]Answer{}}
		t.Repeat(map[string]func(*rapid.T){
			"append":   func(t *rapid.T) { m.append(t, s) },
			"snapshot": func(t *rapid.T) { m.snapshot(t, s) },
			"reopen": func(t *rapid.T) {
				if err := s.Close(); err != nil {
					t.Fatal(err)
				}
				if s, err = Open(path, Options{}); err != nil {
					t.Fatal(err)
				}
			},
			"recheck": func(t *rapid.T) {
				a := fmt.Sprint("a", rapid.IntRange(0, 40).Draw(t, "action"))
				_, want := m.answers[a]
				if there, err := s.Recheck(a); err != nil || there != want {
					t.Fatalf("recheck %s: %v %v", a, there, err)
				}
			},
			"": func(t *rapid.T) { m.compare(t, s) },
		})
	})
}

type model struct {
	records []Record
	answers map[string]Answer
	at      uint64
	snap    []byte
	has     bool
	rows    map[string]string
}

func (m *model) append(t *rapid.T, s *Store) {
	action := fmt.Sprint("a", rapid.IntRange(0, 40).Draw(t, "action"))
	keys := rapid.SliceOfN(rapid.StringOfN(rapid.RuneFrom([]rune("ab\x00")), 0, 3, -1), 0, 3)
	var items []Item
	for range rapid.IntRange(1, 4).Draw(t, "items") {
		body := strings.Repeat("b", rapid.SampledFrom([]int{0, 1, 50, 900, 5000}).Draw(t, "body"))
		it := item(body, keys.Draw(t, "keys")...)
		for range rapid.IntRange(0, 2).Draw(t, "rows") {
			it.Rows = append(it.Rows, Row{
				[]byte(rapid.StringOfN(rapid.RuneFrom([]rune("rs")), 1, 3, -1).Draw(t, "row")),
				bytes.Repeat([]byte{byte(len(m.records))}, rapid.SampledFrom([]int{0, 9, 3000}).Draw(t, "long")),
			})
		}
		items = append(items, it)
	}
	got, err := s.Append(action, items)
	if err != nil {
		t.Fatal(err)
	}
	want, repeated := m.answers[action]
	if !repeated {
		n := uint64(len(m.records))
		want = Answer{Action: action, First: n + 1, Last: n + uint64(len(items))}
		m.answers[action] = want
		for i, it := range items {
			m.records = append(m.records, Record{n + 1 + uint64(i), action, it.Body, it.Keys})
			for _, r := range it.Rows {
				if m.rows == nil {
					m.rows = map[string]string{}
				}
				m.rows[string(r.Key)] = string(r.Value)
			}
		}
	}
	want.Repeated = repeated
	if got != want {
		t.Fatalf("answer %+v, want %+v", got, want)
	}
}

func (m *model) snapshot(t *rapid.T, s *Store) {
	var err error
	if m.has = rapid.IntRange(0, 3).Draw(t, "keep") > 0; m.has {
		m.at = uint64(rapid.IntRange(0, len(m.records)).Draw(t, "at"))
		m.snap = bytes.Repeat([]byte{7}, rapid.SampledFrom([]int{0, 10, 3000, 30_000}).Draw(t, "size"))
		err = s.PutSnapshot(m.at, m.snap)
	} else {
		err = s.DropSnapshot()
	}
	if err != nil {
		t.Fatal(err)
	}
}

func (m *model) compare(t *rapid.T, s *Store) {
	if err := s.Check(); err != nil {
		t.Fatal(err)
	}
	c, err := read(s)
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Records) != len(m.records) {
		t.Fatalf("%d records, want %d", len(c.Records), len(m.records))
	}
	type pair struct {
		key []byte
		r   Record
	}
	var rows []pair
	for i, r := range m.records {
		got := c.Records[i]
		if got.Number != r.Number || got.Action != r.Action || !bytes.Equal(got.Body, r.Body) || fmt.Sprintf("%q", got.Keys) != fmt.Sprintf("%q", r.Keys) {
			t.Fatalf("record %d: %+v, want %+v", i+1, got, r)
		}
		for j, k := range r.Keys {
			if !hasKey(r.Keys[:j], k) {
				rows = append(rows, pair{k, r})
			}
		}
	}
	slices.SortStableFunc(rows, func(a, b pair) int { return bytes.Compare(a.key, b.key) })
	var want []string
	for _, x := range rows {
		want = append(want, row(x.key, x.r))
	}
	if !slices.Equal(c.Keys, want) {
		t.Fatalf("keys %v\nwant %v", c.Keys, want)
	}
	var all []string
	for k, v := range m.rows {
		all = append(all, k+"\x00"+v)
	}
	slices.Sort(all)
	if !slices.Equal(c.Rows, all) {
		t.Fatalf("rows %q, want %q", c.Rows, all)
	}
	if c.HasSnap != m.has || m.has && (c.At != m.at || !bytes.Equal(c.Snap, m.snap)) {
		t.Fatalf("snapshot %v at %d, want %v at %d", c.HasSnap, c.At, m.has, m.at)
	}
}
