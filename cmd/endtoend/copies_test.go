//go:build unix

package endtoend

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// TestOneAtATime: while the screen has the book, each command that would open it is told so in a sentence, under exit 5,
// and nothing is entered.
func TestOneAtATime(t *testing.T) {
	book := filepath.Join(t.TempDir(), "book.db")
	must(t, "", "demo", "--make", book)
	entries := status(t, book)["entries"]
	c := start(t, small, nil, "--book", book)
	c.see("visit 4 of 15")
	lawns := filepath.Join(t.TempDir(), "lawns.csv")
	if err := os.WriteFile(lawns, []byte("lawn,zone,grass,area_sqft\nx,y,tall fescue,5000\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{
		{"status"}, {"check", "--lawn", "77 Fir"}, {"grasses"}, {"tally"}, {"journal"}, {"enter", "-"}, {"import", "lawns", lawns}, {"setup", "lawn"},
	} {
		_, said, code := program(t, `{"fact":"setting","name":"theme","value":"sun"}`+"\n", append(args, "--book", book)...)
		if lines := strings.Split(strings.TrimSpace(said), "\n"); code != 5 || len(lines) != 2 || !strings.Contains(lines[0], "open in another copy") {
			t.Errorf("%v: exit %d, %q", args, code, said)
		}
	}
	_, said, code := program(t, "", "demo", "--make", book)
	if code != 1 || !strings.Contains(said, "already a file") {
		t.Errorf("demo --make over the open book: exit %d, %s", code, said)
	}
	c.press("q")
	c.ended()
	if now := status(t, book)["entries"]; now != entries {
		t.Errorf("%v entries, then %v", entries, now)
	}
}

// TestStartedAtTheSameTime: of screens that are started at once on one book exactly one runs; the others end with exit 5.
func TestStartedAtTheSameTime(t *testing.T) {
	book := filepath.Join(t.TempDir(), "book.db")
	must(t, "", "demo", "--make", book)
	for range 3 {
		var all []*terminal
		for range 4 {
			all = append(all, onTerminal(t, size{200, 30}, "--book", book))
		}
		var running []*terminal
		for _, c := range all {
			if c.settled() {
				running = append(running, c)
				continue
			}
			if code := c.ended(); code != 5 {
				t.Errorf("exit %d, %q", code, c.bytes())
			}
			c.see("another copy")
			c.asItWas()
		}
		if len(running) != 1 {
			t.Fatalf("%d of %d screens run on one book", len(running), len(all))
		}
		running[0].press("q")
		if code := running[0].ended(); code != 0 {
			t.Errorf("exit %d", code)
		}
	}
}

// settled waits until the screen stands (true) or the program has ended.
func (c *terminal) settled() bool {
	c.t.Helper()
	for end := time.Now().Add(patience); ; time.Sleep(5 * time.Millisecond) {
		if strings.Contains(c.words(), "q quit") {
			return true
		}
		if len(c.done) > 0 {
			return false
		}
		if time.Now().After(end) {
			c.t.Fatalf("the screen neither comes nor ends:\n%s", c.screen())
		}
	}
}

// TestEnteredAtTheSameTime: programs that enter into one book at once, one that is there or one that none has made yet,
// each say that it is in use or have all that they confirmed in it, in one chain.
func TestEnteredAtTheSameTime(t *testing.T) {
	for _, there := range []bool{true, false} {
		book := filepath.Join(t.TempDir(), "book.db")
		if there {
			must(t, `{"fact":"setting","name":"theme","value":"night"}`, "enter", "-", "--book", book)
		}
		var mu sync.Mutex
		var confirmed, busy int
		var all sync.WaitGroup
		for n := range 6 {
			all.Add(1)
			go func() {
				defer all.Done()
				line := fmt.Sprintf(`{"fact":"setting","name":"wind_ask_mph","value":"%d"}`+"\n", n+3)
				out, said, code := program(t, strings.Repeat(line, 4), "enter", "-", "--book", book)
				mu.Lock()
				defer mu.Unlock()
				confirmed += strings.Count(out, `"seq"`)
				switch {
				case code == 5 && strings.Contains(strings.ToLower(said), "another copy"): // in use, or written to since it was read
					busy++
				case code == 1 && !there && strings.Contains(said, "begun by another copy"): // two began the book; one of them did
					busy++
				case code != 0:
					t.Errorf("exit %d: %s", code, said)
				}
			}()
		}
		all.Wait()
		want := float64(confirmed)
		if there {
			want++
		}
		if got := status(t, book)["entries"]; got != want || confirmed == 0 {
			t.Errorf("book there %v: %v entries, %v confirmed", there, got, want)
		}
		must(t, must(t, "", "journal", "--json", "--book", book), "replay", "-", "--book", book+".again")
		t.Logf("book there %v: %d entries confirmed, %d of 6 programs told that it is in use", there, confirmed, busy)
	}
}
