//go:build unix

package store

import (
	"errors"
	"os"
	"syscall"
	"time"
)

// fullErrnos mean that there is no room: on the disk, in the quota, under the
// process's own limit.
var fullErrnos = []error{syscall.ENOSPC, syscall.EDQUOT, syscall.EFBIG}

// lockFile takes the lock that bbolt will ask for, so that the file can be
// examined under it. Asking twice through one open file is granted.
func lockFile(f *os.File, shared bool, wait time.Duration) error {
	how := syscall.LOCK_EX | syscall.LOCK_NB
	if shared {
		how = syscall.LOCK_SH | syscall.LOCK_NB
	}
	for end := time.Now().Add(wait); ; {
		err := syscall.Flock(int(f.Fd()), how)
		switch {
		case err == nil:
			return nil
		case errors.Is(err, syscall.EINTR):
			continue
		case !errors.Is(err, syscall.EWOULDBLOCK):
			return err
		case time.Now().After(end):
			return errInUse
		}
		time.Sleep(10 * time.Millisecond)
	}
}

// unlockFile gives the lock back although a map of the file is left behind.
func unlockFile(f *os.File) { _ = syscall.Flock(int(f.Fd()), syscall.LOCK_UN) }

// syncFolder makes a new name in a folder durable.
func syncFolder(dir string) error {
	f, err := os.Open(dir)
	if err != nil {
		return err
	}
	defer func() { _ = f.Close() }()
	// Some network and user-space file systems cannot sync a folder and say so.
	if err = f.Sync(); errors.Is(err, syscall.EINVAL) || errors.Is(err, syscall.ENOTSUP) {
		err = nil
	}
	return err
}
