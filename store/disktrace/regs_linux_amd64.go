package disktrace

import "syscall"

// The numbers of calls that only this processor has, and of those that the
// standard library does not name.
var calls = map[uint64]call{
	syscall.SYS_OPEN:   {kind: callOpen, path: 0, flags: 1, from: here},
	syscall.SYS_CREAT:  {kind: callOpen, path: 0, flags: -1, from: here},
	syscall.SYS_RENAME: {kind: callRename, from: here, path: 0, to: here, path2: 1},
	syscall.SYS_LINK:   {kind: callLink, from: here, path: 0, to: here, path2: 1},
	syscall.SYS_UNLINK: {kind: callUnlink, from: here, path: 0},
	syscall.SYS_DUP2:   {kind: callDup},
	326:                {kind: callCopy, out: 2, at: -1},
	316:                {kind: callRename, from: 0, path: 1, to: 2, path2: 3},
	328:                {kind: callWritev, at: 3},
}

// skip lets the call that a thread has begun do nothing.
func skip(tid int) error {
	var r syscall.PtraceRegs
	if err := syscall.PtraceGetRegs(tid, &r); err != nil {
		return err
	}
	r.Orig_rax = ^uint64(0)
	return syscall.PtraceSetRegs(tid, &r)
}

// answer lets a call that has ended return an error.
func answer(tid int, errno uintptr) error {
	var r syscall.PtraceRegs
	if err := syscall.PtraceGetRegs(tid, &r); err != nil {
		return err
	}
	r.Rax = uint64(-int64(errno))
	return syscall.PtraceSetRegs(tid, &r)
}
