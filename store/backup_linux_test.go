package store

import (
	"fmt"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// A disk that is full or may not be written leaves no half copy.
func TestBackupToAFullDisk(t *testing.T) {
	s := made(t)
	for i := range 60 {
		put(t, s, fmt.Sprint("a", i), item(strings.Repeat("x", 1000)))
	}
	v, err := s.view()
	if err != nil {
		t.Fatal(err)
	}
	pages := v.m.pages
	s.done(v)
	for _, size := range []string{"4k", "12k", "64k", fmt.Sprint((pages - 1) * pageSize)} {
		dir := smallDisk(t, size)
		for _, err := range []error{s.Backup(filepath.Join(dir, "copy")), Backup(s.Path(), filepath.Join(dir, "copy"))} {
			wantKind(t, err, ErrFull)
			if !strings.Contains(err.Error(), "copy") {
				t.Error(err)
			}
		}
		noLeftovers(t, dir)
	}
	dir := smallDisk(t, "1m")
	to := filepath.Join(dir, "copy")
	if err := s.Backup(to); err != nil {
		t.Fatal(err)
	}
	before := checkedCopy(t, to)
	// No room for a second one: the first stays.
	if err := syscall.Mount("", dir, "", syscall.MS_REMOUNT, fmt.Sprint("size=", pages*pageSize+8*pageSize)); err != nil {
		t.Skip("no remount:", err)
	}
	wantKind(t, s.BackupOver(to), ErrFull)
	noLeftovers(t, dir, "copy")
	if !same(checkedCopy(t, to), before) {
		t.Error("the earlier copy changed")
	}
	if err := syscall.Mount("", dir, "", syscall.MS_REMOUNT|syscall.MS_RDONLY, ""); err != nil {
		t.Skip("no remount:", err)
	}
	wantKind(t, s.Backup(filepath.Join(dir, "more")), ErrReadOnly)
	wantKind(t, s.BackupOver(to), ErrReadOnly)
}
