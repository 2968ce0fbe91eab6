package store

import (
	"bytes"
	"encoding/binary"
	"os"
	"path/filepath"
	"testing"
)

// FuzzPage: whatever bytes stand in a page, reading them gives an error or elements that lie within it, in order.
func FuzzPage(f *testing.F) {
	good, _ := sample(f, 30)
	for p := range usedPages(f, good) {
		if p%7 < 3 {
			f.Add(bytes.Clone(good[p*pageSize : (p+1)*pageSize]))
		}
	}
	f.Add([]byte{})
	f.Fuzz(func(t *testing.T, b []byte) {
		checkHead(t, b)
		checkFreelist(t, b)
		// A tree inside another page has no extent of its own.
		_, _ = parseTree(b)
		p, err := parsePage(5, 0, bytes.Clone(b))
		if err != nil {
			return
		}
		var last []byte
		for i := range p.count {
			k := p.key(i)
			if len(k) == 0 || i > 0 && bytes.Compare(last, k) >= 0 {
				t.Fatalf("element %d of %x: key %x after %x", i, b, k, last)
			}
			last = k
			if p.branch {
				_ = p.child(i)
			} else {
				_, _ = p.value(i), p.bucket(i)
			}
			if at := p.find(k); at != i {
				t.Fatalf("key %d of %x is found at %d", i, b, at)
			}
		}
	})
}

// checkHead reads a head and the values that stand under a seal.
func checkHead(t *testing.T, b []byte) {
	t.Helper()
	if m, err := parseMeta(b); err == nil && m.txid == 0 && m.root == 0 && m.pages == 0 {
		t.Fatalf("%x is a head of nothing", b)
	}
	sealed := seal(keyHead, bytes.Clone(b))
	if h, err := parseHead(Format, sealed); err == nil && !bytes.Equal(h.value(), sealed) {
		t.Fatalf("%x is read as %+v, which is written as %x", sealed, h, h.value())
	}
	_, _ = parseHead(1, sealed)
	_, _ = openBlock(keyHead, sealed)
	id := []byte("id")
	sealed = seal(id, bytes.Clone(b))
	if first, last, err := parseAction(id, sealed); err == nil && (first == 0 || last < first) {
		t.Fatalf("%x is an action from %d to %d", sealed, first, last)
	}
}

// checkFreelist puts the bytes where the list of free pages should be.
func checkFreelist(t *testing.T, b []byte) {
	t.Helper()
	const id = 2
	file := append(make([]byte, id*pageSize), b...)
	pages := max(uint64(len(file)/pageSize), id+1)
	ids, extent, err := loadFreelist(bytes.NewReader(file), metaPage{freelist: id, pages: pages})
	if err != nil {
		return
	}
	if extent == 0 || extent > pages {
		t.Fatalf("%x: a list of %d pages", b, extent)
	}
	for i, p := range ids {
		if p < 2 || p >= pages || i > 0 && p <= ids[i-1] {
			t.Fatalf("%x: page %d is free", b, p)
		}
	}
}

// FuzzDeclared lets a page promise more than the file holds: what is taken of the memory stays within the file.
func FuzzDeclared(f *testing.F) {
	f.Add(uint32(1<<31), uint16(kindLeaf), uint16(3), []byte("x"))
	f.Add(uint32(0xFFFFFFFF), uint16(kindFreelist), uint16(0xFFFF), binary.NativeEndian.AppendUint64(nil, 1<<60))
	f.Fuzz(func(t *testing.T, extent uint32, kind, count uint16, rest []byte) {
		const id, pages = 2, 4
		file := make([]byte, pages*pageSize)
		at := file[id*pageSize:]
		order.PutUint64(at, id)
		order.PutUint16(at[8:], kind)
		order.PutUint16(at[10:], count)
		order.PutUint32(at[12:], extent)
		copy(at[pageHeader:], rest)
		r := bytes.NewReader(file)
		if p, err := loadPage(r, id, pages); err == nil && p.extent > pages-id {
			t.Fatalf("a page of %d pages in a file of %d", p.extent, pages)
		}
		if ids, _, err := loadFreelist(r, metaPage{freelist: id, pages: pages}); err == nil && len(ids) > pages {
			t.Fatalf("%d free pages in a file of %d", len(ids), pages)
		}
	})
}

// FuzzSalvage: what is left of a file is taken out whatever state it is in. A record that comes back is one that the file
// held, unless the change bears a seal of its own.
func FuzzSalvage(f *testing.F) {
	good, want := sample(f, 30)
	f.Add(uint32(pageSize*3), []byte{0, 0, 1}, false)
	f.Add(uint32(0), make([]byte, pageSize), true)
	dir := quickDir(f)
	f.Fuzz(func(t *testing.T, at uint32, change []byte, cut bool) {
		b := bytes.Clone(good)
		from := int(at) % len(b)
		copy(b[from:], change)
		if cut {
			b = b[:from]
		}
		path := filepath.Join(dir, "f")
		if err := os.WriteFile(path, b, 0o600); err != nil {
			t.Fatal(err)
		}
		list, err := Salvage(path, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range list {
			if len(change) < 64 && (r.Number == 0 || r.Number > uint64(len(want.Records)) || !bytes.Equal(r.Body, want.Records[r.Number-1].Body)) {
				t.Fatalf("record %d comes back as %q", r.Number, r.Body)
			}
		}
	})
}
