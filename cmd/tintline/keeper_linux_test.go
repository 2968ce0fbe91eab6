package main

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"example.com/tintline/store"
)

// TestNoRoomForTheCopy: a copy for which there is no room is told in one sentence with what to do, leaves nothing, and
// neither the copy of before nor the lines go for it.
func TestNoRoomForTheCopy(t *testing.T) {
	dir := t.TempDir()
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, "size=1m"); err != nil {
		t.Skip("a small disk cannot be mounted here:", err)
	}
	t.Cleanup(func() { _ = syscall.Unmount(dir, 0) })
	own := ownBook(t, 40)
	path := filepath.Join(dir, "truck.db")
	if err := store.Backup(own, path); err != nil {
		t.Fatal(err)
	}
	k := keptAt(t, path, "2026-06-01")
	k.wantDaily("Copy of 1 Jun made and checked: 40 entries.")
	k.note()
	ballast := filepath.Join(dir, "ballast")
	room := make([]byte, 1<<20)
	if err := os.WriteFile(ballast, room, 0o600); !errors.Is(err, syscall.ENOSPC) {
		t.Fatal(err)
	}
	k.on("2026-06-02")
	_, err := k.Daily()
	var said told
	if !errors.As(err, &said) {
		t.Fatalf("%v", err)
	}
	what, do := said.Sentences()
	if !strings.Contains(what, "could not be made: the disk is full") || !strings.Contains(do, "Make room on the disk") {
		t.Errorf("%s %s", what, do)
	}
	k.wantDates("2026-06-01")
	if first, last, ok := linesHold(linesPath(path)); !ok || first != 41 || last != 41 {
		t.Errorf("the lines hold %d to %d", first, last)
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".book-*")); len(left) > 0 {
		t.Errorf("left: %v", left)
	}
	if err := os.Remove(ballast); err != nil {
		t.Fatal(err)
	}
	k.wantDaily("Copy of 2 Jun made and checked: 41 entries.")
	k.wantDates("2026-06-02", "2026-06-01")
	_ = k.keptBook.Close()
}
