package store

import (
	"errors"
	"fmt"
	"os"
)

// Recheck closes the file, examines it as Open does, opens it again and tells
// whether the action is there. If the file is whole, writing may go on. On
// systems that can, what is kept in memory of it is dropped first, so that the
// answer comes from the disk. If the file cannot be opened, the store stays as
// it is, closed to reading and writing, and Recheck may be called again.
func (s *Store) Recheck(action string) (there bool, err error) {
	s.commit.Lock()
	defer s.commit.Unlock()
	if err := s.settle(); err != nil {
		return false, err
	}
	if err := s.closeDB(); err != nil {
		return false, blame(s.path, "closed", err)
	}
	if err := s.forget(); err != nil {
		return false, err
	}
	if err := s.open(); err != nil {
		return false, err
	}
	v, err := s.begin()
	if err != nil {
		return false, err
	}
	defer s.done(v)
	if _, there, err = v.action(action); err == nil {
		s.latch, s.sound, s.edge, s.end = nil, false, 0, carried{}
	}
	return there, err
}

// settle refuses to close a file that has lost its place: the handle is the last
// hold on what is in it.
func (s *Store) settle() error {
	s.hold.Lock()
	file, ended := s.file, s.ended
	s.hold.Unlock()
	if ended {
		return closed(s.path)
	}
	if file == nil {
		return nil // an earlier Recheck could not open it again
	}
	err := s.inPlace()
	if errors.Is(err, ErrGone) {
		s.latch = err
		return err
	}
	return nil
}

// forget syncs what can still be synced and drops the cache.
func (s *Store) forget() error {
	if s.readOnly {
		return nil
	}
	f, err := os.OpenFile(s.path, os.O_RDWR, 0)
	if err != nil {
		return blame(s.path, "opened", err)
	}
	defer func() { _ = f.Close() }()
	if err := f.Sync(); err != nil {
		t := &Trouble{
			What:  fmt.Sprintf("The disk still does not confirm what was written to %s: %v.", s.path, bare(err)),
			Do:    "Check the disk, then let the program look again.",
			Kind:  ErrSync,
			Cause: err,
		}
		if isFull(err) {
			t.Kind = ErrFull
		}
		return t
	}
	dropCache(f)
	return nil
}
