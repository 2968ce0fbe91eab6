//go:build linux && (amd64 || arm64)

package store

import (
	"os"
	"syscall"
)

// dropCache asks the kernel to forget its copy of the file, so that the next
// read shows what the disk holds and not what a failed sync left in memory.
func dropCache(f *os.File) {
	const dontNeed = 4
	_, _, _ = syscall.Syscall6(syscall.SYS_FADVISE64, f.Fd(), 0, 0, dontNeed, 0, 0)
}
