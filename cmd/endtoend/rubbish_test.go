//go:build unix

package endtoend

import (
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/creack/pty"
)

// rubbish is what a broken cable, a cat or another program may send, without a letter, a sign or an Enter that a person
// could have meant alone.
func rubbish(dice *rand.Rand) string {
	switch dice.IntN(8) {
	case 0: // a paste of many lines in brackets, often larger than what is read at once
		return "\x1b[200~" + strings.Repeat("oc 70\r\ry\nabq\x03", 1+dice.IntN(60)) + "\x1b[201~"
	case 1: // sequences that break off or that nobody knows
		return fmt.Sprintf("\x1b[%d;%d;%d~", dice.IntN(100), dice.IntN(999), dice.IntN(9))
	case 2: // answers about colours and places that nobody asked for
		return "\x1b]11;rgb:1e1e/2e2e/3e3e\x1b\\\x1b]10;rgb:ffff/0000/1111\x07\x1b[24;80R\x1b[?62;22c"
	case 3: // a flood of the mouse, beside the keys
		var b strings.Builder
		for range 50 {
			fmt.Fprintf(&b, "\x1b[<%d;%d;%d%c", 35+dice.IntN(30), 1+dice.IntN(600), 1+dice.IntN(300), "Mm"[dice.IntN(2)])
		}
		return b.String()
	case 4: // halves of letters
		return []string{"\xe2\x82", "\xf0\x9f", "\xc3", "\xff\xfe\xfd", "\x80\x81\x82"}[dice.IntN(5)]
	case 5: // what a serial line makes of a break
		return strings.Repeat("\x00", 1+dice.IntN(64))
	case 6: // long strings of a device
		return "\x1bP" + strings.Repeat("0;", dice.IntN(300)) + "\x1b\\"
	}
	b := make([]byte, 1+dice.IntN(40))
	for i := range b {
		b[i] = byte(0x80 + dice.IntN(0x80))
	}
	return string(b)
}

// TestRubbishLogsNothing: a terminal sends rubbish between resizes. The program lives, the book is whole and has no entry
// more, and the terminal is as it was.
func TestRubbishLogsNothing(t *testing.T) {
	book := filepath.Join(t.TempDir(), "book.db")
	must(t, "", "demo", "--make", book)
	entries := status(t, book)["entries"]
	dice := rand.New(rand.NewPCG(22, 11))
	c := onTerminal(t, small, "--book", book)
	c.see("visit 4 of 15")
	const rounds = 150
	for n := range rounds {
		c.press(rubbish(dice))
		if n%5 == 0 {
			s := pty.Winsize{Cols: uint16(1 + dice.IntN(500)), Rows: uint16(1 + dice.IntN(200))}
			if err := pty.Setsize(c.tty, &s); err != nil {
				t.Fatal(err)
			}
		}
		time.Sleep(time.Duration(dice.IntN(12)) * time.Millisecond)
	}
	if err := pty.Setsize(c.tty, &pty.Winsize{Cols: small.cols, Rows: small.rows}); err != nil {
		t.Fatal(err)
	}
	for range 4 { // out of whatever stands open
		time.Sleep(150 * time.Millisecond)
		c.press("\x1b")
	}
	time.Sleep(300 * time.Millisecond)
	c.press("\x03")
	if code := c.ended(); code != 0 {
		t.Errorf("exit %d", code)
	}
	c.asItWas()
	if now := status(t, book)["entries"]; now != entries {
		t.Errorf("%v entries, then %v", entries, now)
	}
	must(t, "", "verify", "--book", book)
}

// TestTornPasteIsNoKeys: what begins a paste comes in two pieces, as a slow line brings it; none of the paste is a key.
func TestTornPasteIsNoKeys(t *testing.T) {
	book := filepath.Join(t.TempDir(), "book.db")
	must(t, "", "demo", "--make", book)
	entries := status(t, book)["entries"]
	c := onTerminal(t, small, "--book", book)
	c.see("visit 4 of 15")
	for _, at := range []int{2, 3, 4, 5} {
		const begin = "\x1b[200~"
		c.press(begin[:at])
		time.Sleep(50 * time.Millisecond)
		c.press(begin[at:] + strings.Repeat("oc 70\r\ry\n", 80) + "\x1b[201~")
		time.Sleep(50 * time.Millisecond)
	}
	c.see("visit 4 of 15")
	c.press("q")
	if code := c.ended(); code != 0 {
		t.Errorf("exit %d", code)
	}
	if now := status(t, book)["entries"]; now != entries {
		t.Errorf("%v entries, then %v", entries, now)
	}
}
