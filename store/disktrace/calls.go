//go:build linux && (amd64 || arm64)

package disktrace

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"syscall"
)

// call says how to read the arguments of a system call.
type call struct {
	kind       callKind
	from, path int // which argument is the folder and which the name
	to, path2  int
	flags      int // of open
	at         int // which argument is the place in the file; -1: where the descriptor stands
	out        int // which argument is the descriptor that is written to
}

// here stands for the working folder.
const here = -1

type callKind uint8

const (
	callOpen callKind = iota
	callClose
	callWrite
	callWritev
	callCopy
	callTruncate
	callAllocate
	callSync
	callRename
	callLink
	callUnlink
	callDup
	callDupFcntl
	callMap
)

func init() {
	for n, c := range map[uint64]call{
		syscall.SYS_OPENAT:    {kind: callOpen, from: 0, path: 1, flags: 2},
		syscall.SYS_CLOSE:     {kind: callClose},
		syscall.SYS_WRITE:     {kind: callWrite, at: -1},
		syscall.SYS_PWRITE64:  {kind: callWrite, at: 3},
		syscall.SYS_WRITEV:    {kind: callWritev, at: -1},
		syscall.SYS_PWRITEV:   {kind: callWritev, at: 3},
		syscall.SYS_SENDFILE:  {kind: callCopy, out: 0},
		syscall.SYS_SPLICE:    {kind: callCopy, out: 2},
		syscall.SYS_FTRUNCATE: {kind: callTruncate},
		syscall.SYS_FALLOCATE: {kind: callAllocate},
		syscall.SYS_FSYNC:     {kind: callSync},
		syscall.SYS_FDATASYNC: {kind: callSync},
		syscall.SYS_RENAMEAT:  {kind: callRename, from: 0, path: 1, to: 2, path2: 3},
		syscall.SYS_LINKAT:    {kind: callLink, from: 0, path: 1, to: 2, path2: 3},
		syscall.SYS_UNLINKAT:  {kind: callUnlink, from: 0, path: 1},
		syscall.SYS_DUP:       {kind: callDup},
		syscall.SYS_DUP3:      {kind: callDup},
		syscall.SYS_FCNTL:     {kind: callDupFcntl},
		syscall.SYS_MMAP:      {kind: callMap},
	} {
		calls[n] = c
	}
}

// bytesAt reads the program's memory.
func (t *tracer) bytesAt(addr, n uint64) ([]byte, error) {
	b := make([]byte, n)
	got, err := t.mem.ReadAt(b, int64(addr))
	if got == len(b) {
		err = nil
	}
	return b, err
}

func (t *tracer) textAt(addr uint64) (string, error) {
	var out []byte
	for len(out) < 4096 {
		// up to the end of the page at most: the next may not be there
		b, err := t.bytesAt(addr, min(256, 4096-addr%4096))
		if err != nil {
			return "", err
		}
		if i := bytes.IndexByte(b, 0); i >= 0 {
			return string(append(out, b[:i]...)), nil
		}
		out = append(out, b...)
		addr += uint64(len(b))
	}
	return "", errors.New("a name without an end")
}

// within is the name of a path in the folder; the folder itself is a point.
func (t *tracer) within(th *begun, folder, path int) (string, bool, error) {
	p, err := t.textAt(th.args[path])
	if err != nil {
		return "", false, err
	}
	if !filepath.IsAbs(p) {
		base := t.dir
		if fd := int(int32(th.args[max(folder, 0)])); folder != here && fd >= 0 {
			o := t.fds[fd]
			if o.folder == "" {
				return "", false, nil
			}
			base = filepath.Join(t.dir, o.folder)
		}
		p = filepath.Join(base, p)
	}
	rel, err := filepath.Rel(t.dir, filepath.Clean(p))
	if err != nil || rel == ".." || strings.HasPrefix(rel, "../") {
		if real := t.run.Dir; strings.HasPrefix(p, real+"/") || p == real {
			rel, err = filepath.Rel(real, p)
			return rel, err == nil, err
		}
		return "", false, nil
	}
	return rel, true, nil
}

// position is where a descriptor stands in its file.
func (t *tracer) position(fd int) (int64, error) {
	b, err := os.ReadFile(fmt.Sprintf("/proc/%d/fdinfo/%d", t.pid, fd))
	if err != nil {
		return 0, err
	}
	var pos int64
	_, err = fmt.Sscanf(string(b), "pos: %d", &pos)
	return pos, err
}

// readBack reads what a call has put into a file.
func (t *tracer) readBack(fd int, at, n int64) ([]byte, error) {
	f, err := os.Open(fmt.Sprintf("/proc/%d/fd/%d", t.pid, fd))
	if err != nil {
		return nil, err
	}
	defer func() { _ = f.Close() }()
	return io.ReadAll(io.NewSectionReader(f, at, n))
}
