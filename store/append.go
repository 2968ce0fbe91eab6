package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"go.etcd.io/bbolt"
)

// Item is a record to be written: an opaque body, up to MaxKeys opaque keys, by
// which EachKey finds it in order, and up to MaxRows rows that change with it.
type Item struct {
	Body []byte
	Keys [][]byte
	Rows []Row
}

// Answer tells which numbers an action got. Repeated: it was there already.
type Answer struct {
	Action   string
	First    uint64
	Last     uint64
	Repeated bool
}

// Append writes 1 to MaxItems records in one commit. Nil means durable. If the
// action is there already, its first answer is returned and nothing is written.
//
// On an error nothing was written, unless it is ErrUnsure. After an error of the
// commit the store is latched: see Recheck.
func (s *Store) Append(action string, items []Item) (Answer, error) {
	if err := checkAction(action, items); err != nil {
		return Answer{}, err
	}
	s.commit.Lock()
	defer s.commit.Unlock()
	if err := s.mayWrite(); err != nil {
		return Answer{}, err
	}
	b, a, err := s.prepare(action, items)
	if err != nil || a.Repeated {
		return a, err
	}
	if err := s.write(b.write); err != nil {
		return Answer{}, err
	}
	s.end = b.end
	return a, nil
}

// prepare numbers the items and reads every page that the commit will touch.
func (s *Store) prepare(action string, items []Item) (*batch, Answer, error) {
	v, err := s.begin()
	if err != nil {
		return nil, Answer{}, err
	}
	defer s.done(v)
	a, ok, err := v.action(action)
	if err != nil || ok {
		a.Repeated = ok
		return nil, a, err
	}
	h, err := v.head()
	if err != nil {
		return nil, Answer{}, err
	}
	if err := s.checkSound(v); err != nil {
		return nil, Answer{}, err
	}
	if v.m.txid != s.edge {
		if err := v.checkEnd(h); err != nil {
			return nil, Answer{}, err
		}
	}
	b := &batch{h: h, end: s.end}
	if b.end.n != h.last {
		if b.end, err = v.endOf(h.last); err != nil {
			return nil, Answer{}, err
		}
	}
	a = b.add(action, items)
	b.sort()
	if err := b.settle(v.block, v.oldRow); err != nil {
		return nil, Answer{}, err
	}
	w := walker{v: v, keep: true}
	for _, k := range b.keys {
		if _, _, _, err := w.seek(v.dir[string(bucketKeys)], k); err != nil {
			return nil, Answer{}, err
		}
	}
	return b, a, nil
}

// mayWrite: not latched, not read-only, and the file still stands at its path.
func (s *Store) mayWrite() error {
	if s.latch != nil {
		return latched(s.path, s.latch)
	}
	if s.readOnly {
		return &Trouble{
			What: fmt.Sprintf("The book %s was opened for reading only.", s.path),
			Do:   "Open it for writing.",
			Kind: ErrReadOnly,
		}
	}
	if _, _, err := s.acquire(); err != nil {
		return err
	}
	defer s.release()
	err := s.inPlace()
	if errors.Is(err, ErrGone) {
		s.latch = err
	}
	return err
}

// inPlace compares the open file with the path: commits into a file that has
// lost its name would succeed and be lost.
func (s *Store) inPlace() error {
	now, err := os.Stat(s.path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return gone(s.path, "was deleted or moved", err)
	case err != nil:
		return blame(s.path, "written", err)
	case !os.SameFile(now, s.info):
		return gone(s.path, "was replaced by another file", nil)
	}
	return nil
}

// write runs one commit. Its first error latches the store.
func (s *Store) write(f func(*bbolt.Tx) error) error {
	db, file, err := s.acquire()
	if err != nil {
		return err
	}
	defer s.release()
	var txid uint64
	committing := false
	err = s.guard(func() error {
		tx, err := db.Begin(true)
		if err != nil {
			return err
		}
		// After a panic the transaction is left alone: bbolt is not to be trusted
		// with it, and the file is given back without it.
		txid = uint64(tx.ID())
		if err = f(tx); err != nil {
			return errors.Join(err, tx.Rollback())
		}
		committing = true
		if s.failCommit != nil {
			if err = s.failCommit(0); err != nil {
				return errors.Join(err, tx.Rollback())
			}
		}
		if err = tx.Commit(); err == nil && s.failCommit != nil {
			err = s.failCommit(1)
		}
		return err
	})
	if err == nil {
		s.edge = txid
		return nil
	}
	err = s.failed(err, committing, committing && !unwritten(file, txid))
	s.latch = err
	return err
}

// unwritten tells whether it is certain that commit txid did not reach the
// file's heads: then nothing of it will ever be seen.
func unwritten(f *os.File, txid uint64) bool {
	m, errs, err := readMetas(f)
	if err != nil || errs[0] != nil || errs[1] != nil {
		return false
	}
	return m[0].txid < txid && m[1].txid < txid
}

// failed puts an error of a commit into words.
func (s *Store) failed(err error, committing, unsure bool) error {
	var t *Trouble
	kind, why := ErrIO, fmt.Sprint(bare(err))
	if committing {
		kind = ErrSync
	}
	switch {
	case errors.As(err, &t):
		kind, why = t.Kind, "the file is damaged"
	case isFull(err):
		kind, why = ErrFull, "the disk is full"
	case kindOf(err) == ErrReadOnly:
		kind, why = ErrReadOnly, "the file or disk does not allow it"
	}
	if unsure {
		return &Trouble{
			What:  fmt.Sprintf("It is not known whether the last action was saved in %s: %s.", s.path, why),
			Do:    "Check the disk, then let the program look whether the action is there.",
			Kind:  ErrUnsure,
			Cause: fmt.Errorf("%w: %w", kind, err),
		}
	}
	t = &Trouble{
		What:  fmt.Sprintf("The last action was not saved in %s: %s.", s.path, why),
		Do:    "Check the disk, then try again.",
		Kind:  kind,
		Cause: err,
	}
	if kind == ErrFull {
		t.Do = "Make room on the disk, then try again."
	}
	return t
}

func latched(path string, first error) error {
	return &Trouble{
		What:  fmt.Sprintf("Nothing more is written to %s since an earlier action could not be saved.", path),
		Do:    "Let the program look at the file again, or close it and open it again.",
		Kind:  ErrLatched,
		Cause: first,
	}
}
