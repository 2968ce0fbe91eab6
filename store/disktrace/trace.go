//go:build linux && (amd64 || arm64)

package disktrace

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"syscall"
	"unsafe"
)

// What of ptrace the standard library does not name.
const (
	callStop      = syscall.SIGTRAP | 0x80 // with traceSysGood
	getCallInfo   = 0x420e
	exitKill      = 0x100000
	waitAll       = 0x40000000 // __WALL: threads too
	waitMine      = 0x20000000 // __WNOTHREAD: of this thread only
	optionsOfHold = syscall.PTRACE_O_TRACESYSGOOD | syscall.PTRACE_O_TRACECLONE | syscall.PTRACE_O_TRACEFORK |
		syscall.PTRACE_O_TRACEVFORK | syscall.PTRACE_O_TRACEEXEC | exitKill
)

// tracer follows one program. Only the system thread that started it may.
type tracer struct {
	run     Run
	dir     string
	log     *Log
	pid     int
	mem     *os.File
	names   map[string]int
	nextID  int
	fds     map[int]open
	threads map[int]*begun
	err     error
}

// open is what a descriptor of the program leads to.
type open struct {
	file   int    // 0: not one of ours
	folder string // if it is one
	path   string
}

// begun is the call in which a thread is.
type begun struct {
	inside bool
	c      *call
	args   [6]uint64
	op     Op
	fault  Fault
}

// Trace runs a program to its end. It does not return while a thread of the
// program is there.
func (r Run) Trace() (*Log, error) {
	type result struct {
		log *Log
		err error
	}
	done := make(chan result, 1)
	go func() {
		defer func() {
			if p := recover(); p != nil {
				done <- result{nil, fmt.Errorf("the recorder broke down: %v", p)}
			}
		}()
		// Not unlocked: the thread ends with the goroutine, and with it all hold
		// on the program.
		runtime.LockOSThread()
		t := &tracer{run: r}
		err := t.trace()
		done <- result{t.log, err}
	}()
	res := <-done
	return res.log, res.err
}

func (t *tracer) trace() error {
	if err := t.look(); err != nil {
		return err
	}
	if err := t.start(); err != nil {
		return err
	}
	defer func() { _ = t.mem.Close() }()
	for {
		var ws syscall.WaitStatus
		tid, err := syscall.Wait4(-1, &ws, waitAll|waitMine, nil)
		switch {
		case errors.Is(err, syscall.EINTR):
			continue
		case errors.Is(err, syscall.ECHILD):
			return t.err
		case err != nil:
			return errors.Join(t.err, err)
		}
		t.stopped(tid, ws)
	}
}

// look takes down the folder as it is before.
func (t *tracer) look() error {
	dir, err := filepath.EvalSymlinks(t.run.Dir)
	if err != nil {
		return err
	}
	t.dir = dir
	t.log = &Log{Start: map[string][]byte{}, IDs: map[string]int{}, Exit: -1}
	t.names, t.fds, t.threads = map[string]int{}, map[int]open{}, map[int]*begun{}
	list, err := os.ReadDir(dir)
	if err != nil {
		return err
	}
	for _, e := range list {
		if !e.Type().IsRegular() {
			continue
		}
		b, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			return err
		}
		t.nextID++
		t.log.Start[e.Name()], t.log.IDs[e.Name()], t.names[e.Name()] = b, t.nextID, t.nextID
	}
	return nil
}

func (t *tracer) start() error {
	in, err := os.CreateTemp("", "disktrace-in-")
	if err != nil {
		return err
	}
	defer func() { _ = in.Close() }()
	_ = os.Remove(in.Name())
	if _, err = in.Write(t.run.Stdin); err == nil {
		_, err = in.Seek(0, 0)
	}
	if err != nil {
		return err
	}
	null, err := os.OpenFile(os.DevNull, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	defer func() { _ = null.Close() }()
	pid, err := syscall.ForkExec(t.run.Path, t.run.Args, &syscall.ProcAttr{
		Dir: t.dir, Env: t.run.Env, Sys: &syscall.SysProcAttr{Ptrace: true},
		Files: []uintptr{in.Fd(), null.Fd(), null.Fd()},
	})
	if err != nil {
		return fmt.Errorf("%w: %w", ErrNoTrace, err)
	}
	t.pid = pid
	var ws syscall.WaitStatus
	if _, err = syscall.Wait4(pid, &ws, waitAll, nil); err == nil && !ws.Stopped() {
		err = fmt.Errorf("%w: the program did not stop", ErrNoTrace)
	}
	if err == nil {
		if err = syscall.PtraceSetOptions(pid, optionsOfHold); err != nil {
			err = fmt.Errorf("%w: %w", ErrNoTrace, err)
		}
	}
	if err == nil {
		err = t.openMemory()
	}
	if err == nil {
		err = syscall.PtraceSyscall(pid, 0)
	}
	if err != nil {
		_ = syscall.Kill(pid, syscall.SIGKILL)
		_, _ = syscall.Wait4(pid, &ws, waitAll, nil)
	}
	return err
}

func (t *tracer) openMemory() (err error) {
	t.mem, err = os.Open(fmt.Sprintf("/proc/%d/mem", t.pid))
	return err
}

// stopped deals with a thread that has stopped or ended.
func (t *tracer) stopped(tid int, ws syscall.WaitStatus) {
	if !ws.Stopped() {
		delete(t.threads, tid)
		if tid == t.pid && ws.Exited() {
			t.log.Exit = ws.ExitStatus()
		}
		return
	}
	th := t.threads[tid]
	fresh := th == nil
	if fresh {
		th = &begun{}
		t.threads[tid] = th
	}
	signal := 0
	switch s := ws.StopSignal(); {
	case s == callStop:
		if err := t.call(tid, th); err != nil && !errors.Is(err, syscall.ESRCH) && t.err == nil {
			t.err = err
			_ = syscall.Kill(t.pid, syscall.SIGKILL)
		}
	case s == syscall.SIGTRAP: // a new thread, or a new program, whose memory is another one
		if ws.TrapCause() == syscall.PTRACE_EVENT_EXEC {
			_ = t.mem.Close()
			t.err = errors.Join(t.err, t.openMemory())
		}
	case s == syscall.SIGSTOP && fresh: // how a new thread begins
	default:
		signal = int(s)
	}
	_ = syscall.PtraceSyscall(tid, signal) // ESRCH: it was ended meanwhile
}

// info is struct ptrace_syscall_info.
type info struct {
	op   uint8
	_    [3]uint8
	arch uint32
	ip   uint64
	sp   uint64
	// entering: the number and six arguments; leaving: the result, and whether
	// it is an error
	v [8]uint64
}

// call is one stop at the beginning or the end of a call.
func (t *tracer) call(tid int, th *begun) error {
	var i info
	_, _, e := syscall.Syscall6(syscall.SYS_PTRACE, getCallInfo, uintptr(tid), unsafe.Sizeof(i), uintptr(unsafe.Pointer(&i)), 0, 0)
	if e != 0 {
		return fmt.Errorf("the kernel tells nothing of a call: %w", e)
	}
	switch i.op {
	case 1:
		*th = begun{inside: true}
		if c, ok := calls[i.v[0]]; ok {
			th.c = &c
			copy(th.args[:], i.v[1:7])
			return t.enter(tid, th)
		}
	case 2:
		if th.c != nil {
			err := t.leave(tid, th, int64(i.v[0]))
			th.c = nil
			return err
		}
	}
	return nil
}
