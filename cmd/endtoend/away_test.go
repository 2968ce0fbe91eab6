//go:build unix

package endtoend

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// TestFileTakenAwayUnderTheScreen: while the screen runs its file is deleted, moved, replaced or cut. The next action is not
// booked, the page says so and why, Enter does not make it so, what was put there is left as it is, and the end says it
// again under an exit code. Where the file comes back, Enter books what waited, once. A whole copy with all entries is the book
// itself, brought back: it is taken, and no case here.
func TestFileTakenAwayUnderTheScreen(t *testing.T) {
	const booked = "booked gauge of c: 74.9 gal"
	for _, one := range []struct {
		name string
		do   func(book, older string) error
		says string
		code int
		back bool // the book's file still exists under another name
	}{
		{"deleted", func(book, _ string) error { return os.Remove(book) }, "was deleted or moved", 8, false},
		{"moved", func(book, _ string) error { return os.Rename(book, book+".moved") }, "was deleted or moved", 8, true},
		{"folder removed", func(book, _ string) error { return os.Rename(filepath.Dir(book), filepath.Dir(book)+".moved") }, "was deleted or moved", 8, false},
		{"another book", func(book, _ string) error {
			must(t, `{"fact":"setting","name":"theme","value":"sun"}`, "enter", "-", "--book", book+".other")
			return aside(book, book+".other")
		}, "was replaced by another file", 8, true},
		{"an older copy", aside, "was replaced by another file", 8, true},
		{"an empty file", func(book, _ string) error {
			return errors.Join(os.WriteFile(book+".empty", nil, 0o600), aside(book, book+".empty"))
		}, "was replaced by another file", 8, true},
		{"a folder", func(book, _ string) error {
			return errors.Join(os.Mkdir(book+".folder", 0o700), aside(book, book+".folder"))
		}, "was replaced by another file", 8, true},
		{"cut to nothing", func(book, _ string) error { return os.Truncate(book, 0) }, "empty", 6, false},
		{"cut to two pages", func(book, _ string) error { return os.Truncate(book, 2*pageOfFile) }, "cut short", 6, false},
		{"cut to six pages", func(book, _ string) error { return os.Truncate(book, 6*pageOfFile) }, "cut short", 6, false},
	} {
		t.Run(one.name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "cab")
			if err := os.Mkdir(dir, 0o700); err != nil {
				t.Fatal(err)
			}
			book, older := filepath.Join(dir, "book.db"), filepath.Join(dir, "older")
			must(t, "", "demo", "--make", book)
			if b, err := os.ReadFile(book); err != nil || os.WriteFile(older, b, 0o600) != nil {
				t.Fatal(err)
			}
			c := onTerminal(t, size{120, 30}, "--book", book)
			c.see("visit 4 of 15")
			c.tap("oc 75.1")
			c.enter()
			c.see("booked gauge of c: 75.1 gal")
			quiet(t, dir) // what is kept beside the book looks at the file's name as well
			if err := one.do(book, older); err != nil {
				t.Fatal(err)
			}
			stands, _ := os.ReadFile(book)
			c.tap("oc 74.9")
			c.enter()
			c.see("The last action is not booked.", "gauge of c: 74.9 gal", "Enter tries again")
			c.enter()
			time.Sleep(time.Second) // the page says the same before it tried again and after
			said := c.see("The last action is not booked.", "Enter tries again")
			if !strings.Contains(said, one.says) && !strings.Contains(c.bytes(), one.says) || strings.Contains(c.bytes(), booked) {
				t.Errorf("the screen says %q", said)
			}
			if now, _ := os.ReadFile(book); !bytes.Equal(now, stands) {
				t.Error("what stands at the path was changed")
			}
			if one.back {
				if info, err := os.Lstat(book + ".moved"); err != nil || info.Size() == 0 {
					t.Fatal(err)
				}
				if err := errors.Join(os.RemoveAll(book), os.Rename(book+".moved", book)); err != nil {
					t.Fatal(err)
				}
				c.enter()
				c.see(booked)
				c.press("q")
				if code := c.ended(); code != 0 {
					t.Errorf("exit %d", code)
				}
				if n := strings.Count(must(t, "", "journal", "--book", book), "gauge of c: 74.9 gal"); n != 1 {
					t.Errorf("the action is in the book %d times", n)
				}
				return
			}
			c.press("q")
			if code := c.ended(); code != one.code {
				t.Errorf("exit %d, not %d", code, one.code)
			}
			c.asItWas()
			if _, left, _ := strings.Cut(c.bytes(), "\x1b[?1049l"); len(strings.Split(strings.TrimSpace(left), "\n")) != 2 {
				t.Errorf("at the end it says %q", left)
			}
		})
	}
}

// quiet waits until nothing has been written in a folder for a while: what the program does beside its actions is done.
func quiet(t *testing.T, dir string) {
	t.Helper()
	last, since := "", time.Now()
	for end := since.Add(20 * time.Second); time.Since(since) < 700*time.Millisecond; time.Sleep(50 * time.Millisecond) {
		files, err := os.ReadDir(dir)
		if err != nil || time.Now().After(end) {
			t.Fatal("the folder does not come to rest: ", err)
		}
		now := ""
		for _, f := range files {
			if info, err := f.Info(); err == nil {
				now += fmt.Sprint(f.Name(), info.Size(), info.ModTime().UnixNano(), " ")
			}
		}
		if now != last {
			last, since = now, time.Now()
		}
	}
}

// aside moves the book and puts another file in its place.
func aside(book, other string) error {
	return errors.Join(os.Rename(book, book+".moved"), os.Rename(other, book))
}

// TestCutUnderTheScreenIsRead: pages that read the journal say what is wrong with a file that was cut, and the screen lives on; the program
// ends with what is wrong.
func TestCutUnderTheScreenIsRead(t *testing.T) {
	book := filepath.Join(t.TempDir(), "book.db")
	must(t, "", "demo", "--make", book)
	c := onTerminal(t, size{120, 30}, "--book", book)
	c.see("visit 4 of 15")
	if err := os.Truncate(book, 3*pageOfFile); err != nil {
		t.Fatal(err)
	}
	c.tap("gj")
	c.see("cut short")
	c.press("\x1b")
	time.Sleep(100 * time.Millisecond) // or the terminal's reader takes Esc and q for one key
	c.press("q")
	if code := c.ended(); code != 6 { // the copy of the day could not be made of it, and the program ends with that
		t.Errorf("exit %d", code)
	}
	c.asItWas()
}
