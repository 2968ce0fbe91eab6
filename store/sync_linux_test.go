package store

import (
	"os"
	"syscall"
)

func dataSync(f *os.File) error { return syscall.Fdatasync(int(f.Fd())) }
