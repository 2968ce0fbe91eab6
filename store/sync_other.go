//go:build !unix

package store

import (
	"os"
	"syscall"
	"time"
)

// fullErrnos are, on Windows, "handle disk full" and "disk full".
var fullErrnos = []error{syscall.ENOSPC, syscall.Errno(39), syscall.Errno(112)}

// lockFile leaves locking to bbolt, which takes it after the first look.
func lockFile(*os.File, bool, time.Duration) error { return nil }

// unlockFile has nothing to do: closing the handle gives the lock back.
func unlockFile(*os.File) {}

// syncFolder has nothing to do: a folder cannot be synced here.
func syncFolder(string) error { return nil }
