//go:build unix

package endtoend

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// storyLine is what a line of the journal with every kind of fact says of itself.
type storyLine struct {
	text           string
	Action, Digest string
}

func readStory(t testing.TB) (out []storyLine) {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("..", "..", "testdata", "story", "every_fact.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	for _, text := range strings.Split(strings.TrimSpace(string(b)), "\n") {
		l := storyLine{text: text}
		if err := json.Unmarshal([]byte(text), &l); err != nil {
			t.Fatal(err)
		}
		out = append(out, l)
	}
	return out
}

func storyText(lines []storyLine) string {
	var b strings.Builder
	for _, l := range lines {
		b.WriteString(l.text + "\n")
	}
	return b.String()
}

// checkedBook is what verify says of a book; entries is 0 where there is none.
type checkedBook struct {
	OK       bool
	Entries  int
	Journal  *string
	Rows     string
	Snapshot string
}

// checkBook wants a book, if there is one, to be whole and the beginning of the story.
func checkBook(t testing.TB, story []storyLine, book string, confirmed int) (c checkedBook) {
	t.Helper()
	if _, err := os.Stat(book); os.IsNotExist(err) && confirmed == 0 {
		return c
	}
	out, complaint, code := program(t, "", "verify", "--json", "--book", book)
	if err := json.Unmarshal([]byte(out), &c); err != nil || code != 0 || !c.OK {
		t.Fatalf("verify: exit %d, %s%s", code, out, complaint)
	}
	if c.Entries < confirmed {
		t.Fatalf("%d entries, %d were confirmed", c.Entries, confirmed)
	}
	if c.Entries > len(story) || *c.Journal != story[c.Entries-1].Digest {
		t.Fatalf("the first %d entries are not those of the story", c.Entries)
	}
	if c.Entries < len(story) && story[c.Entries].Action == story[c.Entries-1].Action {
		t.Fatalf("%d entries: half an action", c.Entries)
	}
	return c
}

// killedAfter runs the program, feeds it and ends it as kill -9 does. It answers with what it had said, and whether it was
// done before.
func killedAfter(t testing.TB, stdin string, after time.Duration, args ...string) (said string, done bool) {
	t.Helper()
	c := exec.Command(binary, args...)
	c.Env = environment(t)
	in, err1 := c.StdinPipe()
	out, err2 := c.StdoutPipe()
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	var complaint bytes.Buffer
	c.Stderr = &complaint
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	time.AfterFunc(after, func() { _ = c.Process.Kill() })
	go func() {
		_, _ = io.WriteString(in, stdin)
		_ = in.Close()
	}()
	var b strings.Builder
	r := bufio.NewReader(out)
	for {
		line, err := r.ReadString('\n')
		if err != nil {
			break // a torn line confirms nothing
		}
		b.WriteString(line)
	}
	err := c.Wait()
	if code := c.ProcessState.ExitCode(); code > 0 {
		t.Fatalf("%v: exit %d, %s", args, code, complaint.String())
	}
	return b.String(), err == nil
}

// lastConfirmed is the number of the last entry that was said to be on the disk.
func lastConfirmed(said string) (n int) {
	for _, l := range strings.Split(said, "\n") {
		var seq int
		if _, err := fmt.Sscanf(l, `{"seq":%d,`, &seq); err == nil {
			n = max(n, seq)
		}
	}
	return n
}

// how long a command takes here, so that kills fall all over it.
func took(t testing.TB, stdin string, args ...string) time.Duration {
	t.Helper()
	began := time.Now()
	must(t, stdin, args...)
	return time.Since(began)
}

// instant is a moment in a run of that length, or a little after it.
func instant(dice *rand.Rand, of time.Duration) time.Duration {
	return time.Duration(dice.Int64N(int64(of*11/10) + 1))
}

// Killed at any moment while lines of every kind of fact are entered, days are opened and closed among them, the book is
// whole and holds what was confirmed. The actions are repeated from the last confirmed one on, until the book is that of
// the story, bit for bit.
func TestKilledWhileEntering(t *testing.T) {
	story := readStory(t)
	dir := t.TempDir()
	dice := rand.New(rand.NewPCG(20261128, 1))
	whole := took(t, storyText(story), "enter", "-", "--book", filepath.Join(dir, "first.db"))
	books, confirmed, more := 0, 0, 0
	book, from := "", 0
	for n, killed := 0, 0; killed < kills(); n++ {
		if book == "" {
			book, from = filepath.Join(dir, fmt.Sprint(n, ".db")), 0
		}
		after := instant(dice, whole/4)
		if n%5 == 0 {
			after = instant(dice, whole)
		}
		said, done := killedAfter(t, storyText(story[from:]), after, "enter", "-", "--book", book)
		last := max(lastConfirmed(said), from)
		confirmed += last - from
		c := checkBook(t, story, book, last)
		if c.Entries > last {
			more++
		}
		if from = last; from > 0 { // the last action that was confirmed is entered again
			for from > 0 && story[from-1].Action == story[last-1].Action {
				from--
			}
		}
		if done {
			if c.Entries != len(story) {
				t.Fatalf("done, with %d entries", c.Entries)
			}
			books++
			book = ""
			continue
		}
		killed++
	}
	t.Logf("%d kills; %d books finished, %d entries confirmed, none missing; %d times an action was there that was not confirmed yet", kills(), books, confirmed, more)
}

// otherKills is how often each of the other commands is killed.
func otherKills() int { return max(kills()/5, 3) }

// Killed while a copy is made, the book is whole, and so is the copy, or the one before it.
func TestKilledWhileCopying(t *testing.T) {
	story := readStory(t)
	dir := t.TempDir()
	book := filepath.Join(dir, "b.db")
	must(t, storyText(story[:60]), "enter", "-", "--book", book)
	whole := took(t, "", "backup", "--book", book)
	dice := rand.New(rand.NewPCG(20261128, 2))
	made := 0
	for n, killed := 0, 0; killed < otherKills(); n++ {
		to, args := book+".2026-05-28.copy", []string{"backup", "--book", book}
		if n%2 == 0 {
			to = filepath.Join(dir, fmt.Sprint(n, ".copy"))
			args = []string{"backup", to, "--book", book}
		}
		_, done := killedAfter(t, "", instant(dice, whole), args...)
		c := checkBook(t, story, book, 1)
		switch {
		case done:
			made++
			checkBook(t, story, to, c.Entries)
		case isThere(to):
			killed++
			checkBook(t, story, to, 1)
		case n%2 == 1:
			t.Fatal("the copy of the day is gone")
		default:
			killed++
		}
		if n%2 == 1 && c.Entries < len(story) { // the next copy of the day holds more
			end := c.Entries + 1
			for end < len(story) && story[end].Action == story[end-1].Action {
				end++
			}
			must(t, storyText(story[c.Entries:end]), "enter", "-", "--book", book)
		}
		if n%2 == 0 {
			_ = os.Remove(to)
		}
	}
	t.Logf("%d kills, %d copies were made", otherKills(), made)
}

// Killed while a damaged book is brought back, there is the damaged file or the whole book at its place; brought back again, all is
// there.
func TestKilledWhileRestoring(t *testing.T) {
	story := readStory(t)
	start := t.TempDir()
	book := filepath.Join(start, "b.db")
	must(t, storyText(story[:40]), "enter", "-", "--book", book)
	must(t, "", "backup", filepath.Join(start, "kept"), "--book", book)
	must(t, "", "backup", "--book", book)
	must(t, storyText(story[40:]), "enter", "-", "--book", book)
	damaged, err := os.ReadFile(book)
	if err != nil {
		t.Fatal(err)
	}
	clear(damaged[:3*4096])
	lines, err := os.ReadFile(book + ".lines")
	if err != nil {
		t.Fatal(err)
	}
	kept := filepath.Join(start, "kept")
	dice := rand.New(rand.NewPCG(20261128, 3))
	whole := time.Duration(0)
	back, dir := 0, t.TempDir()
	for n, killed := 0, 0; killed < otherKills(); n++ {
		book := filepath.Join(dir, fmt.Sprint(n), "b.db")
		err := os.Mkdir(filepath.Dir(book), 0o755)
		if err == nil {
			err = os.WriteFile(book, damaged, 0o600)
		}
		if err == nil {
			err = os.WriteFile(book+".lines", lines, 0o600)
		}
		if err != nil {
			t.Fatal(err)
		}
		if n == 0 {
			whole = took(t, "", "restore", kept, "--book", book)
			checkBook(t, story, book, len(story))
			continue
		}
		_, done := killedAfter(t, "", instant(dice, whole), "restore", kept, "--book", book)
		if !done {
			killed++
		}
		now, err := os.ReadFile(book)
		if err != nil {
			t.Fatal(err)
		}
		if bytes.Equal(now, damaged) {
			if done {
				t.Fatal("said to be back, and the damaged file is there")
			}
			must(t, "", "restore", kept, "--book", book)
		} else {
			back++
		}
		checkBook(t, story, book, len(story))
		old, _ := filepath.Glob(book + ".*.old")
		if len(old) == 0 {
			t.Fatal("the damaged file is not beside it")
		}
	}
	t.Logf("%d kills, %d times the book was back", otherKills(), back)
}

func isThere(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}
