//go:build unix

package endtoend

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
)

const pageOfFile = 4096

// damages is how many damaged files are shown to the program.
func damages() int {
	n := 16
	if os.Getenv("TINTLINE_LONG") != "" {
		n = 200
	}
	_, _ = fmt.Sscan(os.Getenv("TINTLINE_DAMAGES"), &n)
	return n
}

// damaged is the n-th damaged copy of a book.
func damaged(good []byte, n int) (what string, b []byte) {
	dice := rand.New(rand.NewPCG(uint64(n), 6))
	pages := len(good) / pageOfFile
	b = bytes.Clone(good)
	used := pages
	for used > 4 && len(bytes.Trim(good[(used-1)*pageOfFile:used*pageOfFile], "\x00")) == 0 {
		used-- // room to grow
	}
	p := dice.IntN(used)
	at := p * pageOfFile
	switch n % 8 {
	case 0:
		size := max(1, at+dice.IntN(3)-1)
		return fmt.Sprintf("cut to %d bytes", size), b[:size]
	case 1, 2:
		i := at + dice.IntN(pageOfFile)
		b[i] ^= 1 << dice.IntN(8)
		return fmt.Sprintf("a bit of byte %d", i), b
	case 3:
		clear(b[at : at+pageOfFile])
		return fmt.Sprintf("page %d emptied", p), b
	case 4:
		at += 512 * dice.IntN(8)
		for i := range 512 {
			b[at+i] = byte(dice.Uint32())
		}
		return fmt.Sprintf("rubbish at %d", at), b
	case 5:
		q := dice.IntN(used) * pageOfFile
		copy(b[at:at+pageOfFile], good[q:q+pageOfFile])
		return fmt.Sprintf("page %d over page %d", q/pageOfFile, p), b
	case 6:
		head := dice.IntN(2)
		b[head*pageOfFile+16+dice.IntN(64)] ^= 1 << dice.IntN(8)
		return fmt.Sprintf("head %d", head), b
	}
	i := at + dice.IntN(96)
	b[i] ^= 1 << dice.IntN(8)
	return fmt.Sprintf("a bit of byte %d", i), b
}

// seen is what a command says of a book: out on standard output, said on the other.
type seen struct {
	out, said string
	code      int
}

const headDamaged = "One of the two heads"

// TestDamageThroughTheProgram: whatever is damaged, each command and the screen show what is right, or end with exit 6,
// one sentence and what to do; where the last action may be gone, they say so. No reader changes a byte.
func TestDamageThroughTheProgram(t *testing.T) {
	dir := t.TempDir()
	book := filepath.Join(dir, "book.db")
	must(t, "", "demo", "--make", book)
	var lines strings.Builder
	for i := range 60 { // so that its trees have more than one level
		fmt.Fprintf(&lines, `{"fact":"gauge_read","compartment":"c","volume_gal":%d.%d}`+"\n", 75-i/10, i%10)
	}
	must(t, lines.String(), "enter", "-", "--book", book)
	good, err := os.ReadFile(book)
	if err != nil {
		t.Fatal(err)
	}
	commands := [][]string{{"status"}, {"check", "--lawn", "77 Fir"}, {"journal"}}
	if _, _, code := program(t, "", "verify", "--help"); code == 0 {
		commands = append(commands, []string{"verify"})
	}
	beside, err := os.ReadFile(book + ".lines")
	if err != nil {
		t.Fatal(err)
	}
	right := map[string]seen{}
	for _, args := range commands {
		right[args[0]] = look(t, book, args)
	}
	screen := onBook(t, book)
	var refused, shown, lost int
	for n := range damages() {
		what, b := damaged(good, n)
		others, err := filepath.Glob(book + "?*")
		for _, o := range others { // the screen before may have set lines aside or made a copy
			err = errors.Join(err, os.Remove(o))
		}
		if err = errors.Join(err, os.WriteFile(book, b, 0o600), os.WriteFile(book+".lines", beside, 0o600)); err != nil {
			t.Fatal(err)
		}
		said := false // of one head
		for _, args := range commands {
			got := look(t, book, args)
			said = said || strings.Contains(got.said, headDamaged)
			judge(t, what, args[0], got, right[args[0]])
		}
		if now, err := os.ReadFile(book); err != nil || !bytes.Equal(now, b) {
			t.Errorf("%s: the readers changed the file (%v)", what, err)
		}
		switch got := onBook(t, book); {
		case got.code == 6:
			refused++
			// What the start does not need is found when the copy of the day reads all; it is said when the screen is left.
			if i := strings.LastIndex(got.said, "\x1b[?1049l"); i >= 0 {
				got.said = ansi.Strip(got.said[i:])
			}
			oneSentence(t, what, "the screen", got)
			if now, err := os.ReadFile(book); err != nil || !bytes.Equal(now, b) {
				t.Errorf("%s: the screen refused the file and changed it (%v)", what, err)
			}
		case got.code != 0:
			t.Errorf("%s: the screen ends with %d: %q", what, got.code, got.out)
		case strings.Contains(got.out, headDamaged):
			lost++
		case said:
			t.Errorf("%s: the screen does not say that a head is damaged:\n%s", what, got.out)
		case got.out != screen.out:
			t.Errorf("%s: the screen shows\n%s\nnot\n%s", what, got.out, screen.out)
		default:
			shown++
		}
		beside, _ := filepath.Glob(book + ".*") // copies that the screen made
		for _, name := range beside {
			_ = os.Remove(name)
		}
	}
	t.Logf("%d files: %d refused, %d with a word about a head, %d as if whole", damages(), refused, lost, shown)
	if refused == 0 || lost == 0 && damages() > 15 {
		t.Error("nothing was damaged")
	}
}

func look(t *testing.T, book string, args []string) seen {
	t.Helper()
	out, said, code := program(t, "", append(args, "--book", book)...)
	return seen{out, said, code}
}

// judge compares what a command says of a damaged book with what it says of the whole one.
// withoutSnapshot leaves out whether there is one that fits: what verify says of a damaged one is that there is none.
func withoutSnapshot(out string) string {
	var kept []string
	for _, l := range strings.Split(out, "\n") {
		if !strings.HasPrefix(l, "snapshot ") {
			kept = append(kept, l)
		}
	}
	return strings.Join(kept, "\n")
}

func judge(t *testing.T, what, command string, got, right seen) {
	t.Helper()
	switch {
	case got.code == 6:
		oneSentence(t, what, command, got)
	case strings.Contains(got.said, headDamaged):
	case got.code != right.code || withoutSnapshot(got.out) != withoutSnapshot(right.out):
		t.Errorf("%s: %s ends with %d and says, without a word of damage:\n%s%s", what, command, got.code, got.out, got.said)
	}
}

// oneSentence wants what is wrong, naming the book, and what to do, each on one line.
func oneSentence(t *testing.T, what, command string, got seen) {
	t.Helper()
	lines := strings.Split(strings.TrimSpace(strings.ReplaceAll(got.said, "\r", "")), "\n")
	if len(lines) == 3 && strings.Contains(lines[0], headDamaged) {
		lines = lines[1:]
	}
	if command != "verify" && (len(lines) != 2 || !strings.Contains(lines[0], "book.db") || !strings.HasSuffix(lines[0], ".") || !strings.HasSuffix(lines[1], ".")) {
		t.Errorf("%s: %s says %q", what, command, got.said)
	}
}

// onBook opens the screen, waits until it stands or has ended, and ends it. The terminal has to be as it was.
func onBook(t *testing.T, book string) seen {
	t.Helper()
	wide := size{200, 30} // each sentence on one line
	c := onTerminal(t, wide, "--book", book)
	defer func() {
		_ = c.slave.Close()
		_ = c.tty.Close()
	}()
	var got seen
	for end := time.Now().Add(patience); ; time.Sleep(2 * time.Millisecond) {
		if s := c.screen(); strings.Contains(s, "q quit") {
			time.Sleep(30 * time.Millisecond)
			got.out = c.screen()
			c.press("q")
			break
		}
		if len(c.done) > 0 {
			break
		}
		if time.Now().After(end) {
			t.Fatalf("the screen neither comes nor ends:\n%s", c.screen())
		}
	}
	got.code = c.ended()
	c.asItWas()
	got.said = c.bytes()
	return got
}
