package main

import (
	"os"
	"syscall"
)

// shellBehind tells whether a shell with job control started the program: one in the same session that gave it a
// process group of its own. Without one nothing would bring it back, so it must not be suspended.
func shellBehind() bool {
	parent := os.Getppid()
	group, err := syscall.Getpgid(parent)
	return err == nil && group != syscall.Getpgrp() && session(parent) == session(0)
}

func session(pid int) int {
	id, _, failed := syscall.RawSyscall(syscall.SYS_GETSID, uintptr(pid), 0, 0)
	if failed != 0 {
		return -1
	}
	return int(id)
}
