package disktrace

import (
	"syscall"
	"unsafe"
)

// The numbers of calls that the standard library does not name.
var calls = map[uint64]call{
	285: {kind: callCopy, out: 2, at: -1},
	276: {kind: callRename, from: 0, path: 1, to: 2, path2: 3},
	287: {kind: callWritev, at: 3},
}

// The sets of registers that the kernel gives out here.
const (
	setGeneral = 1     // NT_PRSTATUS: 31 registers, sp, pc, state
	setCall    = 0x404 // NT_ARM_SYSTEM_CALL: the number of the call
)

func regset(request, tid int, set uintptr, p unsafe.Pointer, size uintptr) error {
	v := syscall.Iovec{Base: (*byte)(p), Len: uint64(size)}
	_, _, e := syscall.Syscall6(syscall.SYS_PTRACE, uintptr(request), uintptr(tid), set, uintptr(unsafe.Pointer(&v)), 0, 0)
	if e != 0 {
		return e
	}
	return nil
}

const getRegset, setRegset = 0x4204, 0x4205

// skip lets the call that a thread has begun do nothing.
func skip(tid int) error {
	none := int32(-1)
	return regset(setRegset, tid, setCall, unsafe.Pointer(&none), 4)
}

// answer lets a call that has ended return an error.
func answer(tid int, errno uintptr) error {
	var r [34]uint64
	if err := regset(getRegset, tid, setGeneral, unsafe.Pointer(&r), unsafe.Sizeof(r)); err != nil {
		return err
	}
	r[0] = uint64(-int64(errno))
	return regset(setRegset, tid, setGeneral, unsafe.Pointer(&r), unsafe.Sizeof(r))
}
