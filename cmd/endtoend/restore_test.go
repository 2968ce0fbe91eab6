//go:build unix

package endtoend

import (
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// rescues is how often a book is damaged and brought back: a few times, or as often as TINTLINE_KILLS says.
func rescues() int {
	n := 6
	if os.Getenv("TINTLINE_LONG") != "" {
		n = 60
	}
	_, _ = fmt.Sscan(os.Getenv("TINTLINE_KILLS"), &n)
	return n
}

// hurts are what happens to the file of a book after the program was killed.
var hurts = []struct {
	name string
	do   func(b []byte, dice *rand.Rand) []byte // nil: the file is gone
}{
	{"a page of zeros", func(b []byte, dice *rand.Rand) []byte {
		at := dice.IntN(len(b)/4096) * 4096
		clear(b[at : at+4096])
		return b
	}},
	{"both heads", func(b []byte, _ *rand.Rand) []byte { clear(b[:8192]); return b }},
	{"cut", func(b []byte, dice *rand.Rand) []byte { return b[:dice.IntN(len(b))] }},
	{"garbled", func(b []byte, dice *rand.Rand) []byte {
		at := dice.IntN(len(b) - 600)
		for i := range 600 {
			b[at+i] = byte(dice.Uint32())
		}
		return b
	}},
	{"empty", func([]byte, *rand.Rand) []byte { return []byte{} }},
	{"gone", func([]byte, *rand.Rand) []byte { return nil }},
}

// TestKilledDamagedAndBack: the screen makes its copy, readings are booked, it is killed, the file is damaged; the command
// that the message names brings every confirmed entry back.
func TestKilledDamagedAndBack(t *testing.T) {
	book := filepath.Join(t.TempDir(), "book.db")
	must(t, "", "demo", "--make", book)
	dice := rand.New(rand.NewPCG(20260528, 6))
	confirmed := map[string]bool{}
	reading, noticed := 0, 0
	for round := range rescues() {
		c := start(t, small, nil, "--book", book)
		c.see("visit 4 of 15")
		if round == 0 {
			c.see("Copy of 28 May made and checked: 72 entries.")
		}
		for range 1 + dice.IntN(3) {
			reading++
			text := fmt.Sprintf("%.1f", 75-float64(reading%700)/10)
			c.tap("oc " + text)
			c.enter()
			c.see("booked gauge of c: " + text + " gal")
			confirmed[text] = true
		}
		c.kill()
		how := hurts[round%len(hurts)]
		b, err := os.ReadFile(book)
		if err == nil {
			if b = how.do(b, dice); b == nil {
				err = os.Remove(book)
			} else {
				err = os.WriteFile(book, b, 0o600)
			}
		}
		if err != nil {
			t.Fatal(err)
		}
		if bringBack(t, book, how.name) {
			noticed++
		}
		if missing := readingsMissing(t, book, confirmed); len(missing) > 0 {
			t.Fatalf("round %d, %s: %d of %d confirmed readings are gone: %v", round, how.name, len(missing), len(confirmed), missing)
		}
		must(t, "", "verify", "--book", book)
	}
	t.Logf("%d times killed and damaged, %d noticed and brought back; %d readings confirmed, 0 missing", rescues(), noticed, len(confirmed))
}

// bringBack does what the message says, if one comes: where reading the book is not enough, verify looks at all of it.
func bringBack(t *testing.T, book, how string) bool {
	t.Helper()
	_, complaint, code := program(t, "", "status", "--book", book)
	if code == 0 {
		out := ""
		if out, complaint, code = program(t, "", "verify", "--book", book); code == 0 {
			return false
		}
		complaint += out
	}
	if want := map[bool]int{true: 1, false: 6}[how == "gone"]; code != want {
		t.Fatalf("%s: exit %d, not %d: %s", how, code, want, complaint)
	}
	_, command, ok := strings.Cut(complaint, "Run tintline ")
	command, _, ok2 := strings.Cut(command, " to bring it back")
	if !ok || !ok2 {
		if !strings.Contains(complaint, "tintline restore brings back the newest copy") {
			t.Fatalf("%s: no command is named: %s", how, complaint)
		}
		command = "restore " + book + ".2026-05-28.copy --book " + book
	}
	sh := exec.Command("sh", "-c", binary+" "+command)
	sh.Env = environment(t)
	out, err := sh.CombinedOutput()
	if err != nil || !strings.Contains(string(out), "Nothing that is known of is missing.") {
		t.Fatalf("%s: %s: %v\n%s", how, command, err, out)
	}
	return true
}

// TestBookTakenAway: while the screen is open its file is deleted. What was booked is saved beside it, and when it is back
// by the command that the screen names, the same action goes in.
func TestBookTakenAway(t *testing.T) {
	dir := t.TempDir()
	book := filepath.Join(dir, "book.db")
	must(t, "", "demo", "--make", book)
	c := start(t, large, nil, "--book", book)
	c.see("visit 4 of 15")
	c.tap("oc 74.5")
	c.enter()
	c.see("booked gauge of c: 74.5 gal")
	if err := os.Remove(book); err != nil {
		t.Fatal(err)
	}
	c.tap("oc 74.4")
	c.enter()
	c.see("The last action is not booked", "was deleted or moved", "All that was booked is saved in", "tintline restore")
	saved, _ := filepath.Glob(book + ".*.saved")
	if len(saved) != 1 {
		t.Fatalf("saved: %v", saved)
	}
	must(t, "", "restore", saved[0], "--book", book)
	c.enter()
	c.see("booked gauge of c: 74.4 gal")
	c.press("q")
	if code := c.ended(); code != 0 {
		t.Errorf("exit %d", code)
	}
	if missing := readingsMissing(t, book, map[string]bool{"74.5": true, "74.4": true}); len(missing) > 0 {
		t.Errorf("missing: %v", missing)
	}
}

// TestDayClosedAndLeft: a day that is closed and left in one go is copied before the program ends.
func TestDayClosedAndLeft(t *testing.T) {
	book := filepath.Join(t.TempDir(), "book.db")
	must(t, "", "demo", "--make", book)
	c := start(t, small, nil, "--book", book)
	c.see("Copy of 28 May made and checked: 72 entries.")
	c.press("q")
	c.ended()
	must(t, `{"fact":"day_closed"}`+"\n", "enter", "-", "--book", book)
	c = start(t, small, nil, "--book", book)
	c.see("q quit")
	c.press("q")
	if code := c.ended(); code != 0 {
		t.Errorf("exit %d", code)
	}
	if a, b := status(t, book)["entries"], status(t, book+".2026-05-28.copy")["entries"]; a != b {
		t.Errorf("the book has %v entries, its copy %v", a, b)
	}
}
