package store

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"testing"
)

func salvaged(t testing.TB, path string, above uint64) map[uint64][]Salvaged {
	t.Helper()
	list, err := Salvage(path, above)
	if err != nil {
		t.Fatal(err)
	}
	out := map[uint64][]Salvaged{}
	for i, r := range list {
		if r.Number <= above || i > 0 && r.Number < list[i-1].Number {
			t.Fatalf("record %d stands after %d, above %d", r.Number, list[max(i, 1)-1].Number, above)
		}
		out[r.Number] = append(out[r.Number], r)
	}
	return out
}

// A whole file gives all of its records back, of any size of file and record.
func TestSalvageOfAWholeFile(t *testing.T) {
	for _, n := range []int{0, 1, 5, 500} {
		s := made(t)
		for i := range n {
			put(t, s, fmt.Sprint("a", i), childItems("r", i)...)
		}
		if n > 0 {
			if err := s.PutSnapshot(1, []byte("a snapshot")); err != nil {
				t.Fatal(err)
			}
			put(t, s, "large", item("small"), Item{Body: bytes.Repeat([]byte("large "), 5000), Keys: [][]byte{[]byte("k")}}, item("last"))
		}
		want := mustRead(t, s).Records
		got := salvaged(t, s.Path(), 0)
		if len(got) != len(want) {
			t.Fatalf("%d records of %d", len(got), len(want))
		}
		for _, w := range want {
			g := got[w.Number]
			if len(g) != 1 || !g[0].Held || !bytes.Equal(g[0].Body, w.Body) || g[0].Action != w.Action {
				t.Fatalf("record %d: %d found, %+v", w.Number, len(g), g)
			}
		}
		if n == 500 && len(salvaged(t, s.Path(), 1000)) != len(want)-1000 {
			t.Error("records above 1000")
		}
	}
	if list, err := Salvage("/nowhere/at/all", 0); err != nil || len(list) != 0 {
		t.Error(list, err)
	}
}

// Whatever is done to a file, what is given back is what was written, and only
// what the damage itself touched is lost.
func TestSalvageOfDamagedFiles(t *testing.T) {
	s := made(t)
	for i := range 400 {
		put(t, s, fmt.Sprint("a", i), childItems("r", i)...)
	}
	want := mustRead(t, s).Records
	_ = s.Close()
	whole, err := os.ReadFile(s.Path())
	if err != nil {
		t.Fatal(err)
	}
	dice := rand.New(rand.NewPCG(3, 4))
	lost, trials := 0, rounds(60, 2000)
	for trial := range trials {
		b := bytes.Clone(whole)
		switch trial % 5 {
		case 0: // both heads
			clear(b[:2*pageSize])
		case 1:
			b[dice.IntN(len(b))] ^= 1 << dice.IntN(8)
		case 2: // a page of anything
			at := dice.IntN(len(b)/pageSize) * pageSize
			for i := range pageSize {
				b[at+i] = byte(dice.Uint32())
			}
		case 3:
			b = b[:dice.IntN(len(b))]
		case 4: // the headers of all pages
			for at := 0; at < len(b); at += pageSize {
				clear(b[at : at+pageHeader])
			}
		}
		if err := os.WriteFile(s.Path(), b, 0o600); err != nil {
			t.Fatal(err)
		}
		got := salvaged(t, s.Path(), 0)
		for n, g := range got {
			w := want[n-1]
			if len(g) != 1 || !bytes.Equal(g[0].Body, w.Body) || g[0].Action != w.Action && g[0].Action != "" {
				t.Fatalf("trial %d: record %d gives %d, %q", trial, n, len(g), g[0].Body)
			}
		}
		missing := len(want) - len(got)
		if k := trial % 5; (k == 0 || k == 4) && missing != 0 || k == 1 && missing > 1 || k == 2 && missing > 120 {
			t.Errorf("trial %d: %d of %d records are lost", trial, missing, len(want))
		}
		if trial%5 != 3 {
			lost += missing
		}
	}
	t.Logf("%d trials, %d records each; %d lost where the file was not cut", trials, len(want), lost)
}

// What no head leads to any more is found all the same, and told apart.
func TestSalvageOfAnUnconfirmedCommit(t *testing.T) {
	s := made(t)
	for i := range 60 {
		put(t, s, fmt.Sprint("a", i), childItems("r", i)...)
	}
	_ = s.Close()
	before, err := os.ReadFile(s.Path())
	if err != nil {
		t.Fatal(err)
	}
	s = opened(t, s.Path(), Options{})
	lost := put(t, s, "lost", item("lost"))
	_ = s.Close()
	b, err := os.ReadFile(s.Path())
	if err != nil {
		t.Fatal(err)
	}
	copy(b[:2*pageSize], before[:2*pageSize]) // its pages reached the disk, its head did not
	if err := os.WriteFile(s.Path(), b, 0o600); err != nil {
		t.Fatal(err)
	}
	got := salvaged(t, s.Path(), lost.First-1)[lost.First]
	if len(got) != 1 || got[0].Held || string(got[0].Body) != "lost" {
		t.Errorf("found %+v", got)
	}
}
