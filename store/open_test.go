package store

import (
	"bytes"
	"errors"
	"fmt"
	"hash/fnv"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"go.etcd.io/bbolt"
)

// sample makes a closed file with trees of several levels, a snapshot and free
// pages, and returns its bytes and contents.
func sample(t testing.TB, actions int) ([]byte, contents) {
	t.Helper()
	path := filepath.Join(quickDir(t), "sample")
	err := CreateWith(path, "sample", Options{Program: "test"}, func(add func(string, []Item) error) error {
		for i := range actions {
			var items []Item
			for j := range i%3 + 1 {
				items = append(items, item(fmt.Sprintf("body %d %d %s", i, j, strings.Repeat("b", i%90)),
					fmt.Sprintf("k%d", i%17), strings.Repeat(string(rune('a'+i%26)), 200+i%300)))
			}
			if i%100 == 50 {
				items[0].Body = bytes.Repeat([]byte("large"), 2000)
			}
			if i%3 == 0 {
				items[0] = withRows(items[0], fmt.Sprintf("row/%02d", i%40), strings.Repeat("r", i*5))
			}
			if err := add(fmt.Sprintf("action-%06x", i*7919%99991), items); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	s, err := Open(path, Options{})
	if err != nil {
		t.Fatal(err)
	}
	put(t, s, "late 1", item("x", "late"))
	if err := s.PutSnapshot(9, bytes.Repeat([]byte("snap"), 4000)); err != nil {
		t.Fatal(err)
	}
	put(t, s, "late 2", item("y", "late"), item("z", "k3"))
	c := mustRead(t, s)
	shutDown(t, s)
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return b, c
}

func TestOpenNeverCreates(t *testing.T) {
	dir := quickDir(t)
	for _, o := range []Options{{}, {ReadOnly: true}} {
		_, err := Open(filepath.Join(dir, "none"), o)
		wantKind(t, err, ErrMissing)
		_, err = Open(filepath.Join(dir, "no", "folder"), o)
		wantKind(t, err, ErrMissing)
		_, err = Open(dir, o)
		wantKind(t, err, ErrForeign)
	}
	noLeftovers(t, dir)
}

func TestOpenLeavesOtherFilesAlone(t *testing.T) {
	good, _ := sample(t, 40)
	otherBolt := filepath.Join(quickDir(t), "bolt")
	db, err := bbolt.Open(otherBolt, 0o600, &bbolt.Options{PageSize: pageSize})
	if err != nil {
		t.Fatal(err)
	}
	if err := db.Update(func(tx *bbolt.Tx) error {
		b, err := tx.CreateBucket([]byte("things"))
		return errors.Join(err, b.Put([]byte("a"), []byte("b")))
	}); err != nil {
		t.Fatal(err)
	}
	_ = db.Close()
	bolt, _ := os.ReadFile(otherBolt)

	for _, c := range []struct {
		name string
		b    []byte
		kind error
	}{
		{"empty", nil, ErrEmpty},
		{"one byte", []byte{1}, ErrForeign},
		{"text", []byte("a letter to a friend\n"), ErrForeign},
		{"long text", bytes.Repeat([]byte("a letter to a friend\n"), 5000), ErrForeign},
		{"zeros", make([]byte, 64<<10), ErrForeign},
		{"picture", append([]byte("\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR"), make([]byte, 40_000)...), ErrForeign},
		{"database", append([]byte("SQLite format 3\x00"), make([]byte, 40_000)...), ErrForeign},
		{"bolt of another kind", bolt, ErrForeign},
		{"newer page layout", relabel(good, 4, 3), ErrNewer},
		{"older page layout", relabel(good, 4, 1), ErrForeign},
		{"other page size", relabel(good, 8, 16384), ErrForeign},
		{"both heads bad", flipped(flipped(good, 60), pageSize+60), ErrDamaged},
		{"head beyond the file", relabel(good, 40, 1<<30), ErrShort},
		{"head counts absurdly", relabel(good, 43, 0xFFFFFFFF), ErrDamaged},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := filepath.Join(quickDir(t), "f")
			if err := os.WriteFile(path, c.b, 0o600); err != nil {
				t.Fatal(err)
			}
			for _, o := range []Options{{}, {ReadOnly: true}} {
				_, err := Open(path, o)
				wantKind(t, err, c.kind)
			}
			if got, _ := os.ReadFile(path); !bytes.Equal(got, c.b) {
				t.Error("the file was changed")
			}
			_, err := Create(path, "x", Options{})
			wantKind(t, err, ErrExists)
			noLeftovers(t, filepath.Dir(path), "f")
		})
	}
}

// relabel changes four bytes of both heads and makes their checksums fit.
func relabel(good []byte, at int, v uint32) []byte {
	b := bytes.Clone(good)
	for p := range 2 {
		m := b[p*pageSize+pageHeader:][:metaSize]
		order.PutUint32(m[at:], v)
		h := fnv.New64a()
		_, _ = h.Write(m[:metaSize-8])
		order.PutUint64(m[metaSize-8:], h.Sum64())
	}
	return b
}

func flipped(good []byte, bits ...int) []byte {
	b := bytes.Clone(good)
	for _, at := range bits {
		b[at] ^= 0x10
	}
	return b
}

func TestEveryPrefixIsRefused(t *testing.T) {
	good, _ := sample(t, 60)
	m, errs, err := readMetas(bytes.NewReader(good))
	if err != nil {
		t.Fatal(err)
	}
	newest, _, err := choose("", m, errs)
	if err != nil {
		t.Fatal(err)
	}
	need := int(newest.pages) * pageSize
	path := filepath.Join(quickDir(t), "cut")
	tried := 0
	for n := 1; n < len(good); n++ {
		if n%512 > 1 && n%512 < 511 && n > 100 {
			continue // each 512 bytes, and one to each side
		}
		tried++
		if err := os.WriteFile(path, good[:n], 0o600); err != nil {
			t.Fatal(err)
		}
		s, err := Open(path, Options{})
		if n >= need {
			if err != nil { // only room for growth is missing
				t.Fatalf("%d bytes of %d: %v", n, need, err)
			}
			shutDown(t, s)
			continue
		}
		if err == nil {
			t.Fatalf("%d bytes of %d: opened", n, need)
		}
		wantKind(t, err, ErrShort)
	}
	t.Logf("%d lengths of a file of %d bytes, %d of them needed", tried, len(good), need)
}

func TestNewerFormat(t *testing.T) {
	s := made(t)
	put(t, s, "a", item("1"))
	_ = s.Close()
	m := s.Meta()
	m.Format = Format + 1
	rewriteMeta(t, s.Path(), m, true)
	for _, o := range []Options{{}, {ReadOnly: true}} {
		_, err := Open(s.Path(), o)
		wantKind(t, err, ErrNewer)
	}
	rewriteMeta(t, s.Path(), m, false)
	_, err := Open(s.Path(), Options{})
	wantKind(t, err, ErrDamaged)
}

// rewriteMeta goes behind the store's back.
func rewriteMeta(t *testing.T, path string, m Meta, sealed bool) {
	t.Helper()
	db, err := bbolt.Open(path, 0o600, &bbolt.Options{PageSize: pageSize})
	if err != nil {
		t.Fatal(err)
	}
	err = db.Update(func(tx *bbolt.Tx) error {
		b := tx.Bucket(bucketMeta)
		for _, p := range m.pairs() {
			if err := b.Put(p[0], p[1]); err != nil {
				return err
			}
		}
		if !sealed {
			return b.Put(metaSeal, []byte("none"))
		}
		return b.Put(metaSeal, sealPairs(m.pairs()))
	})
	if err := errors.Join(err, db.Close()); err != nil {
		t.Fatal(err)
	}
}

func TestBusy(t *testing.T) {
	s := made(t)
	put(t, s, "a", item("1"))
	for _, o := range []Options{{}, {ReadOnly: true}, {Wait: time.Millisecond}} {
		_, err := Open(s.Path(), o)
		wantKind(t, err, ErrBusy)
	}
	_ = s.Close()

	r1 := opened(t, s.Path(), Options{ReadOnly: true})
	r2 := opened(t, s.Path(), Options{ReadOnly: true})
	if !same(mustRead(t, r1), mustRead(t, r2)) {
		t.Error("two readers differ")
	}
	_, err := Open(s.Path(), Options{})
	wantKind(t, err, ErrBusy)
	_, err = r1.Append("b", []Item{item("2")})
	wantKind(t, err, ErrReadOnly)
	wantKind(t, r1.PutSnapshot(1, nil), ErrReadOnly)
	wantKind(t, r1.DropSnapshot(), ErrReadOnly)
}

func TestWaitForTheOtherCopy(t *testing.T) {
	s := made(t)
	go func() {
		time.Sleep(100 * time.Millisecond)
		_ = s.Close()
	}()
	opened(t, s.Path(), Options{Wait: 20 * time.Second})
}

func TestOneHeadBadIsSaid(t *testing.T) {
	good, want := sample(t, 60)
	before := want
	before.Records = want.Records[:len(want.Records)-2]
	for p := range 2 {
		path := filepath.Join(quickDir(t), "f")
		if err := os.WriteFile(path, flipped(good, p*pageSize+60), 0o600); err != nil {
			t.Fatal(err)
		}
		s := opened(t, path, Options{})
		if !strings.HasSuffix(s.Warning(), "may be missing.") {
			t.Errorf("warning %q", s.Warning())
		}
		c := mustRead(t, s)
		if n := len(c.Records); n != len(want.Records) && n != len(before.Records) {
			t.Errorf("%d records of %d", n, len(want.Records))
		}
		put(t, s, "late 2", item("y", "late"), item("z", "k3")) // there, or done again
		if !same(mustRead(t, s), want) {
			t.Error("the repeated action does not restore the contents")
		}
		shutDown(t, s)
		_ = s.Close()
		if s := opened(t, path, Options{}); s.Warning() != "" && len(c.Records) == len(before.Records) {
			t.Errorf("the next commit has renewed the bad head, but: %s", s.Warning())
		}
	}
}

// A backup is such a copy. Its heads stand in fixed places and bear two numbers
// for one commit.
func TestCopyMadeByTheEngine(t *testing.T) {
	s := made(t)
	for i := range 5 { // an odd and an even number of commits
		put(t, s, fmt.Sprint("a", i), item("body", "k"))
		path := newPath(t)
		f, err := os.Create(path)
		if err != nil {
			t.Fatal(err)
		}
		err = s.db.View(func(tx *bbolt.Tx) error { _, err := tx.WriteTo(f); return err })
		if err = errors.Join(err, f.Close()); err != nil {
			t.Fatal(err)
		}
		good, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for bad := -1; bad < 2; bad++ {
			b := good
			if bad >= 0 {
				b = flipped(good, bad*pageSize+60)
			}
			if err := os.WriteFile(path, b, 0o600); err != nil {
				t.Fatal(err)
			}
			c := opened(t, path, Options{})
			if (c.Warning() != "") != (bad >= 0) {
				t.Errorf("warning %q", c.Warning())
			}
			if !same(mustRead(t, c), mustRead(t, s)) {
				t.Error("contents differ")
			}
			for j := range 3 {
				put(t, c, fmt.Sprint("more", j), item("more"))
			}
			shutDown(t, c)
			_ = c.Close()
			shutDown(t, opened(t, path, Options{}))
		}
	}
}
