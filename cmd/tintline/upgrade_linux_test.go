package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// upgradeDisk is a file system of its own with room for so many bytes.
func upgradeDisk(t *testing.T, size string) string {
	t.Helper()
	dir := t.TempDir()
	if err := syscall.Mount("tintline-test", dir, "tmpfs", 0, "size="+size); err != nil {
		t.Skip("a small disk cannot be mounted here: ", err)
	}
	t.Cleanup(func() { _ = syscall.Unmount(dir, syscall.MNT_DETACH) })
	return dir
}

// TestAnUpgradeWithoutRoom: on a full disk, and on one that may only be read, the book stays as it is; one sentence says it.
func TestAnUpgradeWithoutRoom(t *testing.T) {
	was := mustBytes(t, earlierBook(t, "cab"))
	for name, c := range map[string]struct {
		size     string
		readOnly bool
		says     string
	}{
		"no room at all":       {"128k", false, "the disk is full"},
		"room for a part":      {"180k", false, "the disk is full"},
		"a disk that is fixed": {"2m", true, "does not allow it"},
	} {
		dir := upgradeDisk(t, c.size)
		path := filepath.Join(dir, "book.db")
		if err := os.WriteFile(path, was, 0o600); err != nil {
			t.Fatal(err)
		}
		if c.readOnly {
			if err := syscall.Mount("", dir, "", syscall.MS_REMOUNT|syscall.MS_RDONLY, ""); err != nil {
				t.Skip(err)
			}
		}
		code, out, err := call(t, reading, "enter", "-", "--book", path)
		if code != exitWrite || out != "" || strings.Count(err, "\n") != 2 || !strings.Contains(err, c.says) {
			t.Errorf("%s: code %d, %q, %q", name, code, out, err)
		}
		if !bytes.Equal(was, mustBytes(t, path)) || namesIn(t, dir) != "book.db" {
			t.Errorf("%s: it was changed; there are %s", name, namesIn(t, dir))
		}
		if code, _, err := call(t, "", "status", "--book", path); code != 0 {
			t.Errorf("%s: it cannot be read: %s", name, err)
		}
	}
}
