package store

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"hash/fnv"
	"io"
	"os"
	"sync"
)

// The layout of bbolt's pages, version 2, in the byte order of the machine.
// Nothing in a page is believed: each figure is compared with the one that
// bbolt would have written.
const (
	pageSize   = 4096
	pageHeader = 16
	element    = 16
	metaSize   = 64
	minPages   = 4

	magic         = 0xED0CDAED
	layoutVersion = 2

	kindBranch   = 0x01
	kindLeaf     = 0x02
	kindFreelist = 0x10
)

var order = binary.NativeEndian

// errPage is damage in a page; the sentence around it names the file.
type errPage struct {
	id  uint64
	why string
}

func (e *errPage) Error() string { return fmt.Sprintf("page %d: %s", e.id, e.why) }

// metaPage is one of the two heads that bbolt writes in turn.
type metaPage struct {
	root     uint64 // page of the bucket of buckets
	freelist uint64
	pages    uint64 // high-water mark: pages in use or free, the file is at least so long
	txid     uint64
}

var (
	errMagic   = errors.New("no magic number")
	errVersion = errors.New("another layout version")
	errSum     = errors.New("checksum")
)

// parseMeta reads a head from its page. With errVersion the version is returned
// in txid, since nothing else can be read.
func parseMeta(p []byte) (metaPage, error) {
	if len(p) < pageHeader+metaSize {
		return metaPage{}, errMagic
	}
	b := p[pageHeader : pageHeader+metaSize]
	if order.Uint32(b) != magic {
		return metaPage{}, errMagic
	}
	h := fnv.New64a()
	_, _ = h.Write(b[:metaSize-8])
	if h.Sum64() != order.Uint64(b[metaSize-8:]) {
		return metaPage{}, errSum
	}
	if v := order.Uint32(b[4:]); v != layoutVersion || order.Uint32(b[8:]) != pageSize {
		return metaPage{txid: uint64(v)}, errVersion
	}
	return metaPage{
		root:     order.Uint64(b[16:]),
		freelist: order.Uint64(b[32:]),
		pages:    order.Uint64(b[40:]),
		txid:     order.Uint64(b[48:]),
	}, nil
}

// scratch holds buffers that reach from the first head to the end of the second.
var scratch = sync.Pool{New: func() any { return new([pageSize + pageHeader + metaSize]byte) }}

// readMetas reads both heads.
func readMetas(f io.ReaderAt) (m [2]metaPage, errs [2]error, err error) {
	buf := scratch.Get().(*[pageSize + pageHeader + metaSize]byte)
	defer scratch.Put(buf)
	if _, err = f.ReadAt(buf[:], 0); err != nil {
		return m, errs, err
	}
	m[0], errs[0] = parseMeta(buf[:pageSize])
	m[1], errs[1] = parseMeta(buf[pageSize:])
	return m, errs, nil
}

// page is a branch or a leaf whose form has been checked. Its bytes are its own
// and are never changed or used again.
type page struct {
	id     uint64
	branch bool
	count  int
	extent uint64 // pages it takes
	b      []byte // from the header to the end of the last value
}

func (p *page) key(i int) []byte {
	e := p.b[pageHeader+element*i:]
	var pos, n int
	if p.branch {
		pos, n = int(order.Uint32(e)), int(order.Uint32(e[4:]))
	} else {
		pos, n = int(order.Uint32(e[4:])), int(order.Uint32(e[8:]))
	}
	at := pageHeader + element*i + pos
	return p.b[at : at+n : at+n]
}

func (p *page) child(i int) uint64 { return order.Uint64(p.b[pageHeader+element*i+8:]) }

func (p *page) value(i int) []byte {
	e := p.b[pageHeader+element*i:]
	at := pageHeader + element*i + int(order.Uint32(e[4:])) + int(order.Uint32(e[8:]))
	n := int(order.Uint32(e[12:]))
	return p.b[at : at+n : at+n]
}

// bucket tells whether element i of a leaf holds a bucket.
func (p *page) bucket(i int) bool { return order.Uint32(p.b[pageHeader+element*i:])&1 != 0 }

// find returns the place of the first key that is not below key.
func (p *page) find(key []byte) int {
	lo, hi := 0, p.count
	for lo < hi {
		if m := int(uint(lo+hi) >> 1); bytes.Compare(p.key(m), key) < 0 {
			lo = m + 1
		} else {
			hi = m
		}
	}
	return lo
}

// loadPage reads a page and checks its form. limit is the high-water mark.
func loadPage(f io.ReaderAt, id, limit uint64) (*page, error) {
	if id < 2 || id >= limit {
		return nil, &errPage{id, "it lies outside the file"}
	}
	b := make([]byte, pageSize)
	if _, err := f.ReadAt(b, int64(id)*pageSize); err != nil {
		return nil, readError(id, err)
	}
	return loadRest(f, id, limit, b)
}

// loadRest goes on from the first bytes of a page, which are given away to it.
func loadRest(f io.ReaderAt, id, limit uint64, b []byte) (*page, error) {
	bad := func(why string) error { return &errPage{id, why} }
	if got := order.Uint64(b); got != id {
		return nil, bad("it bears another number")
	}
	extent := uint64(order.Uint32(b[12:])) + 1
	if extent > limit-id {
		return nil, bad("it reaches beyond the file")
	}
	if extent > 1 {
		first := b
		b = make([]byte, extent*pageSize)
		copy(b, first)
		if _, err := f.ReadAt(b[pageSize:], int64(id+1)*pageSize); err != nil {
			return nil, readError(id, err)
		}
	}
	return parsePage(id, extent, b)
}

func readError(id uint64, err error) error {
	if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		return &errPage{id, "it lies beyond the end of the file"}
	}
	return fmt.Errorf("page %d: %w", id, err)
}

// parsePage checks that the elements lie one behind the other without a gap, as
// bbolt writes them, with keys in order: so a count, length or position that has
// changed does not fit its neighbours.
func parsePage(id, extent uint64, b []byte) (*page, error) {
	bad := func(why string) (*page, error) { return nil, &errPage{id, why} }
	if len(b) < pageHeader {
		return bad("it is too short")
	}
	kind := order.Uint16(b[8:])
	if kind != kindBranch && kind != kindLeaf {
		return bad("it is of the wrong kind")
	}
	p := &page{id: id, branch: kind == kindBranch, count: int(order.Uint16(b[10:])), extent: extent}
	end := pageHeader + element*p.count
	if end > len(b) {
		return bad("it counts too many elements")
	}
	if p.branch && p.count == 0 {
		return bad("it is a branch without a twig")
	}
	var last []byte
	for i := range p.count {
		at := pageHeader + element*i
		e := b[at : at+element]
		var pos, klen, vlen int
		if p.branch {
			pos, klen = int(order.Uint32(e)), int(order.Uint32(e[4:]))
		} else {
			pos, klen, vlen = int(order.Uint32(e[4:])), int(order.Uint32(e[8:])), int(order.Uint32(e[12:]))
			if order.Uint32(e) > 1 {
				return bad("an element has an unknown mark")
			}
		}
		if at+pos != end || klen <= 0 || klen > len(b)-end || vlen < 0 || vlen > len(b)-end-klen {
			return bad("its elements do not lie one behind the other")
		}
		key := b[end : end+klen]
		if i > 0 && bytes.Compare(last, key) >= 0 {
			return bad("its keys are not in order")
		}
		last, end = key, end+klen+vlen
	}
	if want := max(uint64(end+pageSize-1)/pageSize, 1); extent != 0 && want != extent {
		return bad("its length does not fit its contents")
	}
	p.b = b[:end:end]
	return p, nil
}

// loadFreelist reads the list of free pages and its own extent.
func loadFreelist(f io.ReaderAt, m metaPage) (ids []uint64, extent uint64, err error) {
	id := m.freelist
	bad := func(why string) ([]uint64, uint64, error) { return nil, 0, &errPage{id, why} }
	if id < 2 || id >= m.pages {
		return bad("the list of free pages lies outside the file")
	}
	b := make([]byte, pageSize)
	if _, err = f.ReadAt(b, int64(id)*pageSize); err != nil {
		return nil, 0, readError(id, err)
	}
	extent = uint64(order.Uint32(b[12:])) + 1
	if order.Uint64(b) != id || order.Uint16(b[8:]) != kindFreelist || extent > m.pages-id {
		return bad("it should hold the list of free pages")
	}
	if extent > 1 {
		b = make([]byte, extent*pageSize)
		if _, err = f.ReadAt(b, int64(id)*pageSize); err != nil {
			return nil, 0, readError(id, err)
		}
	}
	n, list := uint64(order.Uint16(b[10:])), b[pageHeader:]
	if n == 0xFFFF {
		n, list = order.Uint64(list), list[8:]
	}
	if n > uint64(len(list)/8) {
		return bad("the list of free pages is longer than its page")
	}
	ids = make([]uint64, n)
	for i := range ids {
		ids[i] = order.Uint64(list[8*i:])
		if ids[i] < 2 || ids[i] >= m.pages || i > 0 && ids[i] <= ids[i-1] {
			return bad("the list of free pages is not in order")
		}
	}
	return ids, extent, nil
}

// readThrough reads the pages once from end to end. A walk takes them in the
// order of the tree, which a cold disk answers an order of magnitude slower.
func readThrough(f *os.File, pages uint64) error {
	_, err := io.CopyBuffer(struct{ io.Writer }{io.Discard},
		io.NewSectionReader(f, 0, int64(pages)*pageSize), make([]byte, 1<<20))
	return err
}
