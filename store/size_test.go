package store

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// given counts what a caller gives: bodies, keys, rows, and the name of an action.
type given struct{ bodies, all int64 }

func (g *given) count(action string, items []Item) {
	g.all += int64(len(action))
	for _, it := range items {
		g.bodies += int64(len(it.Body))
		g.all += int64(len(it.Body))
		for _, k := range it.Keys {
			g.all += int64(len(k))
		}
		for _, r := range it.Rows {
			g.all += int64(len(r.Key) + len(r.Value))
		}
	}
}

// TestSize holds the pages of a file, all that a copy of it needs, to 1.8 times what
// was given to Append, also when each action was a commit of its own. The share of
// each part is told in the log.
func TestSize(t *testing.T) {
	n := rounds(6_000, tenYears)
	if v := os.Getenv("STORE_SIZE"); v != "" {
		n, _ = strconv.Atoi(v)
	}
	dir := quickDir(t)
	for _, how := range []string{"made at once", "appended"} {
		path := filepath.Join(dir, how)
		var g given
		var s *Store
		var err error
		fill := func(add func(string, []Item) error) error {
			return years(n, func(action string, items []Item) error {
				g.count(action, items)
				return add(action, items)
			})
		}
		if how == "appended" {
			if s, err = Create(path, "x", Options{}); err == nil {
				err = fill(func(a string, it []Item) error { _, err := s.Append(a, it); return err })
			}
		} else if err = CreateWith(path, "x", Options{}, fill); err == nil {
			s, err = Open(path, Options{})
		}
		if err != nil {
			t.Fatal(err)
		}
		v, err := s.view()
		if err != nil {
			t.Fatal(err)
		}
		size := int64(v.m.pages) * pageSize
		ratio := float64(size) / float64(g.all)
		t.Logf("%d records %s: %d bytes, %.3f times what was given (%d), %.3f times the bodies; %s",
			n, how, size, ratio, g.all, float64(size)/float64(g.bodies), v.shares(t))
		s.done(v)
		if ratio > 1.8 {
			t.Errorf("%s: %.3f times what was given", how, ratio)
		}
		_ = s.Close()
		_ = os.Remove(path)
	}
}

// shares counts the pages of each tree.
func (v *view) shares(t testing.TB) (out string) {
	for _, name := range bucketsOf(v.format) {
		n := uint64(0)
		if tr := v.dir[string(name)]; tr.inline == nil {
			if err := v.markTree(tr, func(_, extent uint64, _ byte) error { n += extent; return nil }); err != nil {
				t.Fatal(err)
			}
		}
		out += fmt.Sprintf("%s %d, ", name, n)
	}
	free, _, err := loadFreelist(v.file, v.m)
	if err != nil {
		t.Fatal(err)
	}
	return out + fmt.Sprintf("free %d of %d pages", len(free), v.m.pages)
}
