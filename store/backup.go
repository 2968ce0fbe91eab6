package store

import (
	"errors"
	"fmt"
	"hash/fnv"
	"io"
	"io/fs"
	"os"
	"time"
)

// A copy is the pages of one commit, byte for byte, behind two heads that both
// lead to it. It is read back from the disk and checked whole before it gets its
// name, so that what bears the name of a copy is one.

// Backup makes a new file at to that holds what the store holds at this moment.
// Commits go on meanwhile. It works also when the file of the store has lost its
// name. What stands at to already is never touched, and an error leaves nothing.
func (s *Store) Backup(to string) error { return s.backup(to, false) }

// BackupOver is Backup in the place of an earlier copy of the same book, which
// stays until the new one is whole.
func (s *Store) BackupOver(to string) error { return s.backup(to, true) }

func (s *Store) backup(to string, over bool) error {
	return makeCopy(s.path, to, over, s.Check, func(out *os.File) error {
		v, h, i, err := s.pinnedHead()
		if err != nil {
			return err
		}
		defer s.done(v)
		return copyPages(v.file, out, s.path, h, i)
	})
}

// pinnedHead begins a view and reads the head that it was pinned by, before two more commits write over that. Where they
// follow each other too fast it waits for its turn like a commit, in which none can pass.
func (s *Store) pinnedHead() (v *view, h heads, i int, err error) {
	for range 50 {
		if v, err = s.view(); err != nil {
			return nil, h, 0, err
		}
		if h, i, err = v.pinnedBy(); err == nil {
			return v, h, i, nil
		}
		s.done(v)
	}
	s.commit.Lock()
	defer s.commit.Unlock()
	if v, err = s.begin(); err != nil {
		return nil, h, 0, err
	}
	if h, i, err = v.pinnedBy(); err != nil {
		s.done(v)
		return nil, h, 0, err
	}
	return v, h, i, nil
}

// pinnedBy finds the head of a view in the file.
func (v *view) pinnedBy() (h heads, i int, err error) {
	if h, err = readHeads(v.file); err != nil {
		return h, 0, v.bad(err)
	}
	for i := range h.m {
		if h.errs[i] == nil && h.m[i] == v.m {
			return h, i, nil
		}
	}
	return h, 0, v.bad(errRace)
}

// Backup copies the file at path although another program may have it open and
// write to it. A copy is only taken if the newest head was the same before and
// after its pages were read: a page of one commit is not used again before the
// next one but one. It gives up, as for a file in use, when no moment of rest
// comes.
func Backup(path, to string) error { return backupFile(path, to, false) }

// BackupOver is Backup in the place of an earlier copy of the same book, which
// stays until the new one is whole.
func BackupOver(path, to string) error { return backupFile(path, to, true) }

func backupFile(path, to string, over bool) error {
	st, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return missing(path, err)
	case err != nil:
		return blame(path, "opened", err)
	case !st.Mode().IsRegular():
		return foreign(path, "it is not an ordinary file")
	}
	f, err := os.Open(path)
	if err != nil {
		return blame(path, "opened", err)
	}
	defer func() { _ = f.Close() }()
	return makeCopy(path, to, over, nil, func(out *os.File) error { return copyAtRest(f, out, path) })
}

// What a copy beside another writer may take: of the memory, so that small files
// are read in one stroke, and of the time.
const (
	oneStroke   = 16 << 20
	longestWait = 20 * time.Second
	// believed is how often the same heads must show the same fault before it is
	// a fault of the file, and not of a page that is being written.
	believed = 3
)

// copyAtRest repeats copying until nothing was written meanwhile.
func copyAtRest(f, out *os.File, path string) error {
	var last error
	same := 0
	end := time.Now().Add(longestWait)
	for try := 0; ; try++ {
		before, err := readHeads(f)
		headless := err != nil
		if headless { // too short for them
			if _, why := preflight(path, f); why != nil {
				err = why
			}
		} else {
			err = copyOnce(f, out, path, before)
		}
		after, err2 := readHeads(f)
		still := headless == (err2 != nil) && before.raw == after.raw
		if err == nil && still {
			return nil
		}
		if err != nil && (still || errors.Is(err, errTarget)) {
			if same++; same >= believed || errors.Is(err, errTarget) {
				return err
			}
		} else {
			same = 0
		}
		if last = err; time.Now().After(end) {
			break
		}
		// The pause differs, so that it does not keep step with the writer.
		time.Sleep(time.Duration(try%7) * 150 * time.Microsecond)
	}
	return &Trouble{
		What:  fmt.Sprintf("The book %s is written to without a pause; in %.0f seconds it could not be copied.", path, longestWait.Seconds()),
		Do:    "Try again when the other copy of the program rests.",
		Kind:  ErrBusy,
		Cause: last,
	}
}

func copyOnce(f, out *os.File, path string, h heads) error {
	// Everything that a first look finds wrong is said as when a file is opened.
	if _, err := preflight(path, f); err != nil {
		return err
	}
	i := 0
	if h.errs[0] != nil || h.errs[1] == nil && h.m[1].txid > h.m[0].txid {
		i = 1
	}
	if h.errs[i] != nil {
		return damaged(path, "both of its heads are unreadable")
	}
	return copyPages(f, out, path, h, i)
}

// heads are the first two pages as they stood at one moment.
type heads struct {
	raw  [2 * pageSize]byte
	m    [2]metaPage
	errs [2]error
}

func readHeads(f io.ReaderAt) (h heads, err error) {
	if _, err = f.ReadAt(h.raw[:], 0); err != nil {
		return h, err
	}
	h.m[0], h.errs[0] = parseMeta(h.raw[:pageSize])
	h.m[1], h.errs[1] = parseMeta(h.raw[pageSize:])
	return h, nil
}

// lead makes a head page out of another one, for its place and commit.
func lead(page []byte, place, txid uint64) []byte {
	b := make([]byte, pageSize)
	copy(b, page)
	order.PutUint64(b, place)
	meta := b[pageHeader : pageHeader+metaSize]
	order.PutUint64(meta[48:], txid)
	h := fnv.New64a()
	_, _ = h.Write(meta[:metaSize-8])
	order.PutUint64(meta[metaSize-8:], h.Sum64())
	return b
}

// errTarget marks trouble with the file that is written.
var errTarget = errors.New("the copy cannot be written")

// copyPages writes the commit to which head i leads.
func copyPages(f, out *os.File, path string, h heads, i int) error {
	m := h.m[i]
	bad := (&view{path: path}).bad
	if m.pages < minPages || m.txid == 0 {
		return damaged(path, "its head counts %d pages", m.pages)
	}
	size := int64(m.pages) * pageSize
	buf := make([]byte, min(size, oneStroke))
	for at := int64(0); at < size; {
		n := min(size-at, int64(len(buf)))
		got, err := f.ReadAt(buf[:n], at)
		if err != nil {
			if errors.Is(err, io.EOF) {
				return short(path, at+int64(got), size)
			}
			return bad(err)
		}
		if at == 0 {
			page := h.raw[i*pageSize : (i+1)*pageSize]
			newest := m.txid % 2
			copy(buf[newest*pageSize:], lead(page, newest, m.txid))
			copy(buf[(1-newest)*pageSize:], lead(page, 1-newest, m.txid-1))
		}
		if _, err := out.WriteAt(buf[:n], at); err != nil {
			return errors.Join(errTarget, err)
		}
		at += n
	}
	if err := out.Truncate(size); err != nil { // an earlier try may have been longer
		return errors.Join(errTarget, err)
	}
	return nil
}
