package store

import (
	"errors"
	"os"

	"go.etcd.io/bbolt"
)

// view is the file as it stood after one commit. The transaction inside it is
// only held, never read through: it keeps bbolt from using the pages of that
// commit for something else.
type view struct {
	path string
	file *os.File
	tx   *bbolt.Tx // nil while the file is being examined and nobody can write
	m    metaPage
	dir  map[string]tree
	kept [256]*page // pages asked for again and again, by the last bits of their number
}

// view begins a view; close it soon.
func (s *Store) view() (*view, error) {
	db, file, err := s.acquire()
	if err != nil {
		return nil, err
	}
	v := &view{path: s.path, file: file}
	for try := 0; ; try++ {
		if err = s.pin(v, db, try > 0); err == nil || try == 2 {
			break
		}
	}
	if err == nil {
		err = v.readDir()
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

// pin holds the newest commit and reads its head. alone keeps writers out, which
// is needed only when they were quicker than we.
func (s *Store) pin(v *view, db *bbolt.DB, alone bool) error {
	if alone {
		s.commit.Lock()
		defer s.commit.Unlock()
	}
	if err := s.intact(v.file); err != nil {
		return err
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
			return nil
		}
	}
	tx := v.tx
	v.tx = nil
	if err := s.guard(tx.Rollback); err != nil {
		return err
	}
	return &Trouble{
		What:  damaged(s.path, "its heads do not agree").What,
		Do:    doRestore,
		Kind:  ErrDamaged,
		Cause: errRace,
	}
}

// intact finds out before the map is touched that the file has become shorter
// than its two heads.
func (s *Store) intact(f *os.File) error {
	st, err := f.Stat()
	if err != nil {
		return blame(s.path, "read", err)
	}
	if st.Size() < minPages*pageSize {
		return short(s.path, st.Size(), minPages*pageSize)
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
	for _, name := range allBuckets {
		if _, ok := v.dir[string(name)]; !ok {
			return damaged(v.path, "its part %q is missing", name)
		}
	}
	return nil
}

func (v *view) page(id uint64, keep bool) (*page, error) {
	slot := &v.kept[id%uint64(len(v.kept))]
	if p := *slot; p != nil && p.id == id {
		return p, nil
	}
	p, err := loadPage(v.file, id, v.m.pages)
	if err != nil {
		return nil, v.bad(err)
	}
	if keep {
		*slot = p
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
	h, err := parseHead(val)
	if err != nil {
		return head{}, damaged(v.path, "the count of its records is unreadable (%v)", err)
	}
	return h, nil
}
