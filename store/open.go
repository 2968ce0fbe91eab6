package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"sync"
	"time"

	"go.etcd.io/bbolt"
	berrors "go.etcd.io/bbolt/errors"
)

// Options for Create and Open.
type Options struct {
	Program  string        // written into a new file
	Created  string        // written into a new file; empty: now, in UTC
	ReadOnly bool          // Open for reading; several may, while nobody writes
	Wait     time.Duration // how long to wait for another copy; 0: 300 ms
}

func (o Options) wait() time.Duration {
	if o.Wait > 0 {
		return o.Wait
	}
	return 300 * time.Millisecond
}

// Store is one open file.
type Store struct {
	path     string
	readOnly bool
	alone    bool // with readOnly: nobody else may have it meanwhile
	wait     time.Duration
	meta     Meta
	warning  string

	commit sync.Mutex // one commit at a time; also guards the next four
	latch  error      // what stopped writing
	sound  bool       // the free pages have been compared with those in use
	edge   uint64     // the commit of ours after which the last record is known to be whole
	end    carried    // the keys of the last record, if its number is that

	hold  sync.Mutex // guards the rest
	idle  *sync.Cond // users went down to 0
	users int
	shut  bool // no new users
	ended bool // closed by the caller, not by Recheck
	dead  bool // bbolt panicked: its locks may be held for ever
	db    *bbolt.DB
	file  *os.File
	info  os.FileInfo // of file, for comparing with what stands at path

	failCommit func(stage int) error // tests: 0 before the commit, 1 after it
}

var errInUse = errors.New("locked by another")

// Open opens the file at path. It never creates one and does not read it
// through: it examines the heads, the list of free pages, the count and the last
// record.
//
// A file of an older format opens for reading only (ErrOlder): see ReplaceWith.
func Open(path string, o Options) (*Store, error) { return open(path, o, false) }

// open is Open; alone: for reading, while nobody else may have it.
func open(path string, o Options, alone bool) (*Store, error) {
	s := &Store{path: path, readOnly: o.ReadOnly || alone, alone: alone, wait: o.wait()}
	s.idle = sync.NewCond(&s.hold)
	if err := s.open(); err != nil {
		return nil, err
	}
	return s, nil
}

func (s *Store) open() error {
	db, file, warning, err := openDB(s.path, s.readOnly && !s.alone, s.wait)
	if err != nil {
		return err
	}
	s.hold.Lock()
	s.db, s.file, s.warning = db, file, warning
	s.shut, s.dead = false, false
	s.hold.Unlock()
	if s.info, err = file.Stat(); err == nil {
		err = s.firstLook()
	}
	if err != nil {
		_ = s.closeDB()
		return blame(s.path, "opened", err)
	}
	return nil
}

// openDB lets bbolt have the file after it was locked and examined through the
// very handle that bbolt will use.
func openDB(path string, readOnly bool, wait time.Duration) (*bbolt.DB, *os.File, string, error) {
	var (
		file    *os.File
		warning string
		db      *bbolt.DB
	)
	openFile := func(name string, flag int, mode os.FileMode) (f *os.File, err error) {
		if st, err := os.Stat(name); err == nil && !st.Mode().IsRegular() {
			return nil, foreign(path, "it is not an ordinary file")
		}
		if f, err = openLocked(name, flag&^os.O_CREATE, mode, readOnly, wait); err != nil {
			return nil, err
		}
		if warning, err = preflight(path, f); err != nil {
			_ = f.Close()
			return nil, err
		}
		file = f
		return f, nil
	}
	o := &bbolt.Options{
		Timeout:  wait,
		PageSize: pageSize,
		ReadOnly: readOnly,
		OpenFile: openFile,
		// What is not said here is meant: syncs of data, of the free list and of
		// growth stay on, and the map grows as bbolt likes.
	}
	err := guard(path, func() (err error) {
		db, err = bbolt.Open(path, 0o600, o)
		return err
	})
	switch {
	case err == nil:
		return db, file, warning, nil
	case errors.Is(err, errInUse), errors.Is(err, berrors.ErrTimeout):
		err = busy(path, err)
	case errors.Is(err, fs.ErrNotExist):
		err = missing(path, err)
	case errors.Is(err, berrors.ErrInvalid), errors.Is(err, berrors.ErrChecksum):
		t := damaged(path, "%v", err)
		t.Cause = err
		err = t
	}
	var p *panicked
	if errors.As(err, &p) && file != nil {
		unlockFile(file)
		_ = file.Close()
	}
	return nil, nil, "", blame(path, "opened", err)
}

// openLocked opens a file and locks it. While one waits for the lock, another file
// may get the name.
func openLocked(name string, flag int, mode os.FileMode, shared bool, wait time.Duration) (*os.File, error) {
	for try := 0; ; try++ {
		f, err := os.OpenFile(name, flag, mode)
		if err != nil {
			return nil, err
		}
		err = lockFile(f, shared, wait)
		if err == nil {
			mine, err1 := f.Stat()
			now, err2 := os.Stat(name)
			if err1 == nil && err2 == nil && os.SameFile(mine, now) {
				return f, nil
			}
			if err = errors.Join(err1, err2); err == nil && try > 9 {
				err = errInUse
			}
		}
		_ = f.Close()
		if err != nil {
			return nil, err
		}
	}
}

// firstLook reads what must be right before anything else is believed.
func (s *Store) firstLook() error {
	v, err := s.begin()
	if err != nil {
		return err
	}
	defer s.done(v)
	m, err := readMeta(v)
	if err != nil {
		return err
	}
	if m.Format < Format && !s.readOnly {
		return older(s.path, m.Format)
	}
	v.format = m.Format
	if err = v.ours(); err != nil {
		return err
	}
	s.hold.Lock()
	s.meta = m
	s.hold.Unlock()
	h, err := v.head()
	if err != nil {
		return err
	}
	return v.checkEnd(h)
}

// checkEnd compares the head with the last record: it is there, it is whole, and
// nothing comes after it.
func (v *view) checkEnd(h head) error {
	w := walker{v: v, keep: true}
	k, val, ok, err := w.seek(v.dir[string(bucketRecords)], numberKey(max(h.last, 1)))
	if err != nil {
		return err
	}
	if h.last == 0 {
		if ok {
			return damaged(v.path, "it holds records that its head does not count")
		}
		return nil
	}
	if !ok || string(k) != string(numberKey(h.last)) {
		return damaged(v.path, "record %d, the last one, is missing", h.last)
	}
	if _, err := parseRecord(k, val, nil); err != nil {
		return damaged(v.path, "record %d is unreadable (%v)", h.last, err)
	}
	if _, _, ok, err = w.next(); err != nil {
		return err
	}
	if ok {
		return damaged(v.path, "it holds records that its head does not count")
	}
	return nil
}

// acquire keeps the file open until release.
func (s *Store) acquire() (*bbolt.DB, *os.File, error) {
	s.hold.Lock()
	defer s.hold.Unlock()
	if s.ended {
		return nil, nil, closed(s.path)
	}
	if s.shut || s.db == nil {
		return nil, nil, shut(s.path)
	}
	if s.dead {
		t := damaged(s.path, "reading it went wrong before")
		t.Do = "Close the program and open the book again."
		return nil, nil, t
	}
	s.users++
	return s.db, s.file, nil
}

func (s *Store) release() {
	s.hold.Lock()
	defer s.hold.Unlock()
	if s.users--; s.users == 0 {
		s.idle.Broadcast()
	}
}

// closeDB waits for the users and closes the file. A broken bbolt is left behind
// with its map; only the lock and the handle are given back.
func (s *Store) closeDB() error {
	s.hold.Lock()
	defer s.hold.Unlock()
	if s.db == nil {
		return nil
	}
	s.shut = true
	for s.users > 0 {
		s.idle.Wait()
	}
	db, file := s.db, s.file
	s.db, s.file = nil, nil
	if !s.dead {
		err := guard(s.path, db.Close)
		var p *panicked
		if !errors.As(err, &p) {
			return err
		}
	}
	unlockFile(file)
	return file.Close()
}

// Close waits for readers and gives the file back. Everything confirmed is on
// the disk already. Closing twice is allowed.
func (s *Store) Close() error {
	s.commit.Lock()
	defer s.commit.Unlock()
	s.hold.Lock()
	s.ended = true
	s.hold.Unlock()
	return blame(s.path, "closed", s.closeDB())
}

// Meta tells what the file says about itself.
func (s *Store) Meta() Meta {
	s.hold.Lock()
	defer s.hold.Unlock()
	return s.meta
}

// Path is the path given to Open or Create.
func (s *Store) Path() string { return s.path }

// Warning is one sentence if the file was opened although one of its two heads
// is damaged, and empty otherwise.
func (s *Store) Warning() string {
	s.hold.Lock()
	defer s.hold.Unlock()
	return s.warning
}

// String is for logs and tests.
func (s *Store) String() string { return fmt.Sprintf("store %s", s.path) }
