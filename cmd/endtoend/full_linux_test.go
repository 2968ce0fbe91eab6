package endtoend

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// smallDisk is a folder on a disk of its own with little room.
func smallDisk(t testing.TB, size string) string {
	t.Helper()
	dir := t.TempDir()
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, "size="+size); err != nil {
		t.Skip("a small disk cannot be mounted here:", err)
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(dir, syscall.MNT_DETACH); err != nil {
			t.Errorf("unmount: %v", err)
		}
	})
	return dir
}

// fill takes all room of a disk.
func fill(t testing.TB, dir string) (ballast string) {
	t.Helper()
	ballast = filepath.Join(dir, "ballast")
	if err := os.WriteFile(ballast, make([]byte, 64<<20), 0o600); !errors.Is(err, syscall.ENOSPC) {
		t.Fatalf("the disk is not full: %v", err)
	}
	return ballast
}

// TestDiskFullUnderTheScreen: the screen says in a sentence that the disk is full and what to do; with room made, Enter
// keeps the action that waited, once, and the day goes on.
func TestDiskFullUnderTheScreen(t *testing.T) {
	dir := smallDisk(t, "2m")
	book := filepath.Join(dir, "book.db")
	must(t, "", "demo", "--make", book)
	ballast := fill(t, dir)
	// What free pages the file has is used up first.
	reading := `{"fact":"gauge_read","compartment":"c","volume_gal":74.6}` + "\n"
	if out, complaint, code := program(t, strings.Repeat(reading, 2000), "enter", "-", "--book", book); code != 8 {
		t.Fatalf("exit %d, %s%s", code, out, complaint)
	}
	c := start(t, small, nil, "--book", book)
	c.see("visit 4 of 15")
	confirmed := map[string]bool{}
	for _, text := range []string{"74.3", "74.2", "74.1", "74.0", "73.9", "73.8", "73.7", "73.6", "73.5", "73.4"} {
		c.tap("oc " + text)
		c.enter()
		confirmed[text] = true
		s := c.seeEither("booked gauge of c: "+text, "disk is full")
		if s == 1 {
			c.see("The last action was not saved", "disk is full", "Make room on the disk", "Enter")
			c.enter() // without room
			c.see("disk is full")
			if err := os.Remove(ballast); err != nil {
				t.Fatal(err)
			}
			c.enter()
			c.see("booked gauge of c: " + text)
			c.tap("oc 73.3")
			c.enter()
			c.see("booked gauge of c: 73.3")
			confirmed["73.3"] = true
			c.kill()
			if missing := readingsMissing(t, book, confirmed); len(missing) > 0 {
				t.Errorf("missing: %v", missing)
			}
			must(t, "", "verify", "--book", book)
			return
		}
	}
	t.Fatal("the disk was never full")
}

// TestDiskFullUnderACommand: exit code 8, what was confirmed is there, and the same lines go on with room.
func TestDiskFullUnderACommand(t *testing.T) {
	story := readStory(t)
	dir := smallDisk(t, "1m")
	book := filepath.Join(dir, "b.db")
	must(t, storyText(story[:19]), "enter", "-", "--book", book)
	ballast := fill(t, dir)
	out, complaint, code := program(t, storyText(story), "enter", "-", "--book", book)
	if code != 8 {
		t.Fatalf("exit %d, %s%s", code, out, complaint)
	}
	checkBook(t, story, book, lastConfirmed(out))
	if err := os.Remove(ballast); err != nil {
		t.Fatal(err)
	}
	must(t, storyText(story), "enter", "-", "--book", book)
	if c := checkBook(t, story, book, len(story)); c.Entries != len(story) {
		t.Errorf("%d entries", c.Entries)
	}
}

// seeEither waits until one of the texts stands on the screen, and says which.
func (c *cab) seeEither(texts ...string) int {
	c.t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(2 * time.Millisecond) {
		for i, x := range texts {
			if strings.Contains(c.words(), x) {
				return i
			}
		}
	}
	c.t.Fatalf("none of %q on\n%s", texts, c.screen())
	return -1
}
