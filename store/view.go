package store

import (
	"errors"
	"os"
	"time"

	"go.etcd.io/bbolt"
)

// view is the file as it stood after one commit. The transaction inside it is
// only held, never read through: it keeps bbolt from using the pages of that
// commit for something else.
type view struct {
	path string
	file *os.File
	// format is that of the file, 0 at the first look.
	format uint32
	tx     *bbolt.Tx // nil while the file is being examined and nobody can write
	m      metaPage
	dir    map[string]tree
	kept   map[uint64]*page // pages of this view that were asked for
	run    block
}

// view begins a view; close it soon. Nothing else is locked by it.
func (s *Store) view() (v *view, err error) {
	for try := range 100 {
		if v, err = s.begin(); !errors.Is(err, errRace) {
			break
		}
		time.Sleep(time.Duration(try) * 100 * time.Microsecond)
	}
	return v, err
}

// begin is one try, enough for those who hold the commit lock.
func (s *Store) begin() (*view, error) {
	db, file, err := s.acquire()
	if err != nil {
		return nil, err
	}
	v := &view{path: s.path, file: file, format: s.Meta().Format}
	if err = s.pin(v, db); err == nil {
		err = v.readDir()
	}
	if err == nil && v.format != 0 {
		err = v.ours()
	}
	if err != nil {
		s.done(v)
		return nil, err
	}
	return v, nil
}

// done ends a view.
func (s *Store) done(v *view) {
	if v.tx != nil {
		_ = s.guard(v.tx.Rollback) // a panic is remembered there
		v.tx = nil
	}
	s.release()
}

// errRace: two commits passed between the two steps of pin.
var errRace = errors.New("the file changed while its heads were read")

// pin holds the newest commit and reads its head.
func (s *Store) pin(v *view, db *bbolt.DB) error {
	if err := s.longEnough(v.file, minPages); err != nil {
		return err // before the map of it is touched
	}
	err := s.guard(func() (err error) {
		v.tx, err = db.Begin(false)
		return err
	})
	if err != nil {
		return blame(s.path, "read", err)
	}
	m, errs, err := readMetas(v.file)
	if err != nil {
		return v.bad(err)
	}
	for i := range m {
		if errs[i] == nil && m[i].txid == uint64(v.tx.ID()) {
			v.m = m[i]
			return s.longEnough(v.file, v.m.pages)
		}
	}
	t := damaged(s.path, "its heads do not agree")
	t.Cause = errRace
	return t
}

func (s *Store) longEnough(f *os.File, pages uint64) error {
	st, err := f.Stat()
	if err != nil {
		return blame(s.path, "read", err)
	}
	if st.Size() < int64(pages)*pageSize {
		return short(s.path, st.Size(), int64(pages)*pageSize)
	}
	return nil
}

// readDir reads the bucket of buckets.
func (v *view) readDir() error {
	v.dir = make(map[string]tree, len(allBuckets))
	w := walker{v: v, keep: true}
	k, val, ok, err := w.seek(tree{root: v.m.root}, nil)
	for ; ok && err == nil; k, val, ok, err = w.next() {
		f := w.stack[len(w.stack)-1]
		if !f.p.bucket(f.i) {
			return foreign(v.path, "it holds something else")
		}
		t, err := parseTree(val)
		if err != nil {
			return v.bad(err)
		}
		v.dir[string(k)] = t
	}
	return err
}

// ours checks that the buckets are there; missing ones are damage once meta has
// been read, since Create makes all of them in one commit.
func (v *view) ours() error {
	for _, name := range bucketsOf(v.format) {
		if _, ok := v.dir[string(name)]; !ok {
			return damaged(v.path, "its part %q is missing", name)
		}
	}
	return nil
}

// block is a run of pages that a long walk reads at once. Its bytes are given
// out and never used again.
type block struct {
	last  uint64 // the page asked for before
	start uint64
	b     []byte
}

const blockPages = 16

// ahead returns the bytes of a page that a walk has come to, if reading a block
// is worth it: the last page asked for lay close before this one.
func (v *view) ahead(id uint64, keep bool) []byte {
	if keep {
		return nil
	}
	r := &v.run
	near := id > r.last && id-r.last < blockPages/2
	r.last = id
	n := uint64(len(r.b)) / pageSize
	if id < r.start || id >= r.start+n {
		if !near || id < 2 || id+blockPages > v.m.pages {
			return nil
		}
		b := make([]byte, blockPages*pageSize)
		if _, err := v.file.ReadAt(b, int64(id)*pageSize); err != nil {
			return nil // the page by itself will tell
		}
		r.start, r.b = id, b
	}
	at := (id - r.start) * pageSize
	return r.b[at : at+pageSize : at+pageSize]
}

// keptPages bounds what a view keeps, so that a walk over all keys does not end
// with the whole file in memory.
const keptPages = 512

// page reads a page. keep: it may be asked for again.
func (v *view) page(id uint64, keep bool) (*page, error) {
	if p := v.kept[id]; p != nil {
		return p, nil
	}
	var p *page
	var err error
	if b := v.ahead(id, keep); b != nil {
		p, err = loadRest(v.file, id, v.m.pages, b)
	} else {
		p, err = loadPage(v.file, id, v.m.pages)
	}
	if err != nil {
		return nil, v.bad(err)
	}
	if keep {
		if v.kept == nil || len(v.kept) >= keptPages {
			v.kept = make(map[uint64]*page, 16)
		}
		v.kept[id] = p
	}
	return p, nil
}

// bad says which file an error of reading belongs to. What the system itself
// refused is a fault of the disk; all else is damage.
func (v *view) bad(err error) error {
	var t *Trouble
	if errors.As(err, &t) {
		return err
	}
	var pe *os.PathError
	if errors.As(err, &pe) {
		t = damaged(v.path, "the disk cannot read it (%v)", bare(err))
	} else {
		t = damaged(v.path, "%v", err)
	}
	t.Cause = err
	return t
}

func (v *view) head() (head, error) {
	val, ok, err := v.get(v.dir[string(bucketHead)], keyHead)
	if err != nil {
		return head{}, err
	}
	if !ok {
		return head{}, damaged(v.path, "the count of its records is missing")
	}
	h, err := parseHead(v.format, val)
	if err != nil {
		return head{}, damaged(v.path, "the count of its records is unreadable (%v)", err)
	}
	// An old page of buckets in the place of the new one would be whole in itself.
	// A copy made by bbolt has the same commit under two numbers, one apart.
	if h.commit != v.m.txid && h.commit != v.m.txid+1 {
		return head{}, damaged(v.path, "the count of its records is of commit %d, not %d", h.commit, v.m.txid)
	}
	return h, nil
}
