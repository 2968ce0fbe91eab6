package store

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"testing"
)

// damagedFile is one way to damage a file: what was done, and the bytes that came of it.
type damagedFile struct {
	what  string
	bytes []byte
	stale bool // an old page may stand in the place of a new one
}

// TestEveryPageDamaged goes through a file page by page instead of by chance: cut at each border of a page and a byte to
// each side, each page emptied, each sector filled with rubbish, each byte of both heads, heads exchanged, pages
// exchanged, and each page as it was some commits before. Each file is looked at by a reader and by one who could write,
// neither of whom may change a byte of it, and is then judged as by TestDamageIsNeverSilent.
func TestEveryPageDamaged(t *testing.T) {
	images, want := inStages(t)
	good := images[len(images)-1]
	for _, d := range []struct {
		name  string
		files []damagedFile
	}{
		{"cut at a page", cutAtPages(t, good)},
		{"heads", headsDamaged(good)},
		{"bits in each page", bitsInPages(t, good)},
		{"page emptied", pagesEmptied(t, good)},
		{"sector of rubbish", sectorsOfRubbish(t, good)},
		{"pages exchanged", pagesExchanged(t, good)},
		{"old page", oldPages(t, images)},
	} {
		t.Run(d.name, func(t *testing.T) {
			t.Parallel()
			path := filepath.Join(quickDir(t), "f")
			var tally [5]int
			for _, one := range d.files {
				if err := os.WriteFile(path, one.bytes, 0o600); err != nil {
					t.Fatal(err)
				}
				if err := lookedAt(path, one.bytes); err != nil {
					t.Errorf("%s: %v", one.what, err)
				}
				got, err := verdict(path, want, one.stale)
				if err != nil {
					t.Errorf("%s: %v", one.what, err)
				}
				tally[got]++
			}
			t.Logf("%d files: %d refused at open, %d at reading, %d lost the last action with a warning, %d unharmed, %d wrong",
				len(d.files), tally[atOpen], tally[atRead], tally[lostLast], tally[unharmed], tally[wrong])
			if len(d.files) < 20 || tally[atOpen]+tally[atRead]+tally[lostLast] == 0 {
				t.Error("nothing was damaged")
			}
		})
	}
}

// inStages is the sample with some commits more: the bytes after each of them, the newest last.
func inStages(t testing.TB) (images [][]byte, want contents) {
	t.Helper()
	first, _ := sample(t, 60)
	path := filepath.Join(quickDir(t), "grown")
	if err := os.WriteFile(path, first, 0o600); err != nil {
		t.Fatal(err)
	}
	images = append(images, first)
	for i := range 6 {
		s, err := Open(path, Options{})
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case i == 3:
			if err := s.PutSnapshot(uint64(20+i), bytes.Repeat([]byte("shot"), 3000)); err != nil {
				t.Fatal(err)
			}
		default:
			put(t, s, fmt.Sprint("grown ", i), item("w", "k3", fmt.Sprint("k", i)), item("v", "k16"))
		}
		want = mustRead(t, s)
		shutDown(t, s)
		b, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		images = append(images, b)
	}
	return images, want
}

// lookedAt opens a file for reading and for writing, reads all of it and closes it: not a byte may change.
func lookedAt(path string, was []byte) error {
	for _, o := range []Options{{ReadOnly: true}, {}} {
		s, err := Open(path, o)
		if err == nil {
			_, err = read(s)
			if err == nil {
				err = s.Check()
			}
			if e := s.Close(); e != nil {
				return fmt.Errorf("close: %w", e)
			}
		}
		if err != nil {
			if err := sentence(err); err != nil {
				return err
			}
		}
		now, err := os.ReadFile(path)
		if err != nil || !bytes.Equal(now, was) {
			return fmt.Errorf("the look changed the file (%v)", err)
		}
	}
	return nil
}

func cutAtPages(t testing.TB, good []byte) (out []damagedFile) {
	for p := range usedPages(t, good) + 1 {
		for by := -1; by <= 1; by++ {
			if n := p*pageSize + by; n > 0 && n <= len(good) {
				out = append(out, damagedFile{what: fmt.Sprintf("cut to %d bytes", n), bytes: bytes.Clone(good[:n])})
			}
		}
	}
	return out
}

func headsDamaged(good []byte) (out []damagedFile) {
	add := func(what string, f func(b []byte)) {
		b := bytes.Clone(good)
		f(b)
		out = append(out, damagedFile{what: what, bytes: b})
	}
	head := func(b []byte, p int) []byte { return b[p*pageSize : (p+1)*pageSize] }
	for p := range 2 {
		add(fmt.Sprint("head ", p, " emptied"), func(b []byte) { clear(head(b, p)) })
		add(fmt.Sprint("head ", p, " over the other"), func(b []byte) { copy(head(b, 1-p), head(b, p)) })
		for i := range pageHeader + metaSize {
			add(fmt.Sprintf("byte %d of head %d", i, p), func(b []byte) { head(b, p)[i] ^= 1 << (i % 8) })
			if i%4 == 0 {
				add(fmt.Sprintf("byte %d of both heads", i), func(b []byte) { b[i] ^= 0x40; b[pageSize+i] ^= 0x40 })
			}
		}
	}
	add("both heads emptied", func(b []byte) { clear(b[:2*pageSize]) })
	add("heads exchanged", func(b []byte) {
		one := bytes.Clone(head(b, 0))
		copy(head(b, 0), head(b, 1))
		copy(head(b, 1), one)
	})
	for p := range 2 { // a head whose checksum fits and whose words do not
		for at, v := range map[int]uint32{16: 3, 32: 5, 40: 1 << 20, 48: 77} {
			add(fmt.Sprintf("word %d of head %d", at, p), func(b []byte) { copy(head(b, p), head(relabel(good, at, v), p)) })
		}
	}
	return out
}

func bitsInPages(t testing.TB, good []byte) (out []damagedFile) {
	dice := rand.New(rand.NewPCG(5, 5))
	for p := range usedPages(t, good) {
		for range rounds(3, 60) {
			b := bytes.Clone(good)
			what := flipBit(b, p*pageSize+dice.IntN(pageSize), dice)
			out = append(out, damagedFile{what: what, bytes: b})
		}
	}
	return out
}

func pagesEmptied(t testing.TB, good []byte) (out []damagedFile) {
	for p := range usedPages(t, good) {
		for _, n := range []int{pageHeader, pageSize / 2, pageSize} {
			b := bytes.Clone(good)
			clear(b[p*pageSize : p*pageSize+n])
			out = append(out, damagedFile{what: fmt.Sprintf("%d bytes of page %d emptied", n, p), bytes: b})
		}
	}
	return out
}

func sectorsOfRubbish(t testing.TB, good []byte) (out []damagedFile) {
	dice := rand.New(rand.NewPCG(512, 1))
	for at := 0; at < usedPages(t, good)*pageSize; at += 512 * rounds(4, 1) {
		for range rounds(1, 3) {
			b := bytes.Clone(good)
			for i := range 512 {
				b[at+i] = byte(dice.Uint32())
			}
			out = append(out, damagedFile{what: fmt.Sprint("rubbish at ", at), bytes: b})
		}
	}
	return out
}

func pagesExchanged(t testing.TB, good []byte) (out []damagedFile) {
	dice := rand.New(rand.NewPCG(2, 2))
	pages := usedPages(t, good)
	for n := range rounds(90, 1500) {
		p, q := dice.IntN(pages), dice.IntN(pages)
		if p == q {
			q = (p + 1) % pages
		}
		b := bytes.Clone(good)
		copy(b[p*pageSize:(p+1)*pageSize], good[q*pageSize:])
		copy(b[q*pageSize:(q+1)*pageSize], good[p*pageSize:(p+1)*pageSize])
		if n%2 == 0 && min(p, q) > 1 { // each with the number of its new place
			order.PutUint64(b[p*pageSize:], uint64(p))
			order.PutUint64(b[q*pageSize:], uint64(q))
		}
		out = append(out, damagedFile{what: fmt.Sprintf("pages %d and %d exchanged", p, q), bytes: b, stale: true})
	}
	return out
}

// TestOldHeadIsTheFileBefore: where the disk confirmed the newest head and kept the one before it, nothing in the file can
// tell. What it holds then is whole: all but the last commit. The lines beside the book are there for this.
func TestOldHeadIsTheFileBefore(t *testing.T) {
	images, want := inStages(t)
	b, before := bytes.Clone(images[len(images)-1]), images[len(images)-3]
	m, _, _ := readMetas(bytes.NewReader(b))
	p := 0
	if m[1].txid > m[0].txid {
		p = 1
	}
	copy(b[p*pageSize:(p+1)*pageSize], before[p*pageSize:])
	path := newPath(t)
	if err := os.WriteFile(path, b, 0o600); err != nil {
		t.Fatal(err)
	}
	s := opened(t, path, Options{})
	if got := mustRead(t, s); s.Warning() != "" || !reflect.DeepEqual(got.Records, want.Records[:len(want.Records)-2]) {
		t.Errorf("%d records of %d, %q", len(got.Records), len(want.Records), s.Warning())
	}
}

// oldPages puts each page that has changed back to what it was some commits before, by itself and with its neighbour.
// Not the newest head: the head before it is then the newest, and the file is what it was one commit ago, which nothing
// inside it can tell. What stands beside the file can.
func oldPages(t testing.TB, images [][]byte) (out []damagedFile) {
	good := images[len(images)-1]
	m, errs, _ := readMetas(bytes.NewReader(good))
	newest, _, err := choose("", m, errs)
	if err != nil {
		t.Fatal(err)
	}
	for back, old := range images[:len(images)-1] {
		for p := range min(usedPages(t, good), len(old)/pageSize) {
			at := p * pageSize
			if bytes.Equal(old[at:at+pageSize], good[at:at+pageSize]) || p < 2 && m[p] == newest {
				continue
			}
			b := bytes.Clone(good)
			copy(b[at:at+pageSize], old[at:])
			what := fmt.Sprintf("page %d of %d commits before", p, len(images)-1-back)
			out = append(out, damagedFile{what: what, bytes: b, stale: true})
			if at += pageSize; p > 1 && at+pageSize <= min(len(old), len(good)) {
				b = bytes.Clone(b)
				copy(b[at:at+pageSize], old[at:])
				out = append(out, damagedFile{what: what + " and the next", bytes: b, stale: true})
			}
		}
	}
	return out
}
