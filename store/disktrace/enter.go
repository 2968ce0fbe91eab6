//go:build linux && (amd64 || arm64)

package disktrace

import (
	"os"
	"path/filepath"
	"syscall"
)

// enter is the beginning of a call that is of interest.
func (t *tracer) enter(tid int, th *begun) error {
	op, ours, err := t.describe(th)
	if err != nil {
		return err
	}
	if !ours {
		if c := th.c; c != nil && c.kind != callDup && c.kind != callDupFcntl && c.kind != callOpen {
			th.c = nil
		}
		return nil
	}
	op.Since = len(t.log.Ops)
	th.op = op
	if op.Kind == Said || op.Kind == Complained {
		t.log.Ops = append(t.log.Ops, op)
		th.c = nil
		return nil
	}
	if !op.Kind.Changes() {
		return nil
	}
	t.log.Steps++
	if t.run.Fault == nil {
		return nil
	}
	th.fault = t.run.Fault(t.log.Steps, op)
	if th.fault == (Fault{}) {
		return nil
	}
	t.log.Faults++
	err = skip(tid)
	if th.fault.Kill {
		_ = syscall.Kill(t.pid, syscall.SIGKILL)
	}
	return err
}

// describe tells what a call is about to do, as far as it can be known before.
func (t *tracer) describe(th *begun) (op Op, ours bool, err error) {
	fd := int(int32(th.args[0]))
	c := th.c
	switch c.kind {
	case callOpen:
		return t.describeOpen(th)
	case callClose:
		delete(t.fds, fd)
	case callWrite:
		if (fd == 1 || fd == 2) && t.fds[fd] == (open{}) {
			op.Kind = Said
			if fd == 2 {
				op.Kind = Complained
			}
			op.Data, err = t.bytesAt(th.args[1], th.args[2])
			return op, true, err
		}
		if op.File = t.fds[fd].file; op.File > 0 {
			op.Kind = Write
			op.Data, err = t.bytesAt(th.args[1], th.args[2])
		}
	case callWritev:
		op.Kind, op.File = Write, t.fds[fd].file
	case callCopy:
		op.Kind, op.File = Write, t.fds[int(int32(th.args[c.out]))].file
	case callTruncate:
		op.Kind, op.File, op.Size = Truncate, t.fds[fd].file, int64(th.args[1])
	case callAllocate:
		op.Kind, op.File, op.Size = Allocate, t.fds[fd].file, int64(th.args[2]+th.args[3])
	case callSync:
		o := t.fds[fd]
		if o.folder != "" {
			return Op{Kind: SyncFolder, Name: o.folder}, true, nil
		}
		op.Kind, op.File, op.Name = Sync, o.file, o.path
	case callRename, callLink, callUnlink:
		return t.describeName(th)
	case callMap:
		const shared, writable = syscall.MAP_SHARED, syscall.PROT_WRITE
		f := t.fds[int(int32(th.args[4]))].file
		if f > 0 && th.args[2]&writable != 0 && th.args[3]&3 == shared {
			return Op{Kind: Mapped, File: f}, true, nil
		}
	}
	return op, op.File > 0, err
}

// describeOpen: one that makes a file or empties one needs the disk.
func (t *tracer) describeOpen(th *begun) (op Op, ours bool, err error) {
	name, in, err := t.within(th, th.c.from, th.c.path)
	if err != nil || !in {
		th.c = nil
		return op, false, err
	}
	th.op = Op{Name: name}
	flags := uint64(syscall.O_CREAT | syscall.O_TRUNC | syscall.O_WRONLY)
	if th.c.flags >= 0 {
		flags = th.args[th.c.flags]
	}
	id, known := t.names[name]
	switch {
	case !known && flags&syscall.O_CREAT != 0:
		return Op{Kind: Create, Name: name}, true, nil
	case known && flags&syscall.O_TRUNC != 0:
		return Op{Kind: Truncate, Name: name, File: id}, true, nil
	}
	return op, false, nil
}

func (t *tracer) describeName(th *begun) (op Op, ours bool, err error) {
	op.Kind = map[callKind]Kind{callRename: Rename, callLink: Link, callUnlink: Unlink}[th.c.kind]
	if op.Name, ours, err = t.within(th, th.c.from, th.c.path); err != nil || th.c.kind == callUnlink {
		op.File = t.names[op.Name]
		return op, ours && op.File > 0, err
	}
	op.File = t.names[op.Name]
	var into bool
	op.To, into, err = t.within(th, th.c.to, th.c.path2)
	return op, ours && into && op.File > 0, err
}

// leave is the end of a call.
func (t *tracer) leave(tid int, th *begun, result int64) error {
	if th.fault.Errno != 0 {
		return answer(tid, th.fault.Errno)
	}
	if result < 0 {
		return nil
	}
	op := th.op
	switch th.c.kind {
	case callOpen:
		return t.opened(th, int(result))
	case callDup:
		t.fds[int(result)] = t.fds[int(int32(th.args[0]))]
		return nil
	case callDupFcntl:
		if cmd := th.args[1]; cmd == syscall.F_DUPFD || cmd == syscall.F_DUPFD_CLOEXEC {
			t.fds[int(result)] = t.fds[int(int32(th.args[0]))]
		}
		return nil
	case callWrite, callWritev, callCopy:
		if err := t.written(th, &op, result); err != nil || result == 0 {
			return err
		}
	case callRename:
		delete(t.names, op.Name)
		t.names[op.To] = op.File
	case callLink:
		t.names[op.To] = op.File
	case callUnlink:
		delete(t.names, op.Name)
	}
	t.log.Ops = append(t.log.Ops, op)
	return nil
}

// opened notes where a new descriptor leads.
func (t *tracer) opened(th *begun, fd int) error {
	name := th.op.Name
	if st, err := os.Stat(filepath.Join(t.dir, name)); err == nil && st.IsDir() {
		t.fds[fd] = open{folder: name}
		return nil
	}
	op := th.op
	id, known := t.names[name]
	if !known {
		if op.Kind != Create || op.Name == "" {
			return nil
		}
		t.nextID++
		id = t.nextID
		t.names[name] = id
		op.File = id
		t.log.Ops = append(t.log.Ops, op)
	} else if op.Kind == Truncate {
		t.log.Ops = append(t.log.Ops, op)
	}
	t.fds[fd] = open{file: id, path: name}
	return nil
}

// written completes a write: where it went, and how much of it.
func (t *tracer) written(th *begun, op *Op, n int64) error {
	fd := int(int32(th.args[0]))
	if th.c.kind == callCopy {
		fd = int(int32(th.args[th.c.out]))
	}
	if at := th.c.at; at >= 0 && th.c.kind != callCopy {
		op.At = int64(th.args[at])
	} else {
		pos, err := t.position(fd)
		if err != nil {
			return err
		}
		op.At = pos - n
	}
	if th.c.kind == callWrite {
		op.Data = op.Data[:n]
		return nil
	}
	var err error
	op.Data, err = t.readBack(fd, op.At, n)
	return err
}
