//go:build unix

package endtoend

import (
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

const (
	pageDown = "\x1b[6~"
	right    = "\x1b[C"
)

// TestFirstRun sets an empty book up on a terminal, key by key, up to the first spraying, in no more presses than are
// allowed.
func TestFirstRun(t *testing.T) {
	const allowed = 60
	book := filepath.Join(t.TempDir(), "book.db")
	c := start(t, small, nil, "--book", book)
	n := 0
	says := func(text string) { n += len(text); c.tap(text) }
	key := func(k string) {
		n++
		time.Sleep(160 * time.Millisecond) // as in enter
		c.press(k)
	}
	c.see("This book is empty")
	key("\r")
	c.see("compartments, gal")
	says("300 160 90")
	key(pageDown)
	c.see("gun, gal/1,000 sq ft * 1.5")
	key(pageDown)
	c.see("Enter the first product")
	says("iron 5")
	key("\r")
	key(right)
	key("\r")
	says("2")
	key(pageDown)
	c.see("[ ] all turf")
	key(" ")
	c.see("[x] all turf")
	key("\r")
	c.see("Enter the first lawn")
	says("12 Elm")
	key("\r")
	says("6200")
	key(pageDown)
	c.see("none chosen yet")
	says("ta")
	c.see("tall fescue")
	key("\r")
	c.see("Open the first day")
	says("Jo")
	key("\r")
	says("90")
	key(pageDown)
	c.see("arrived at 12 Elm")
	key("\r")
	c.see("turn supply and return to a")
	key("\r")
	c.see("push 2.67 gal into a")
	key("\r")
	c.see("look at the weather")
	key("\r")
	c.see("weather now")
	says("6 SW 64")
	key("\r")
	c.see("sprayed 9.30 gal on all")
	key("\r")
	c.see("leave 12 Elm")
	c.press("q")
	if code := c.ended(); code != 0 {
		t.Errorf("exit %d", code)
	}
	if n > allowed {
		t.Errorf("%d presses", n)
	}
	if got := status(t, book)["today"].(map[string]any)["area_sqft"]; got != 6200.0 {
		t.Errorf("sprayed on %v sq ft", got)
	}
}

// TestSetupInPlainLines: where no screen can be drawn or read, an empty book is set up by questions in plain lines.
func TestSetupInPlainLines(t *testing.T) {
	for _, env := range []string{"TERM=dumb", "ACCESSIBLE=1"} {
		book := filepath.Join(t.TempDir(), "book.db")
		cmd := exec.Command(binary, "--book", book)
		cmd.Env = append(environment(t), env)
		c := on(t, small, cmd)
		if code := c.ended(); code == 0 {
			t.Errorf("%s: exit 0", env)
		}
		c.see("tintline setup")
		cmd = exec.Command(binary, "setup", "--book", book)
		cmd.Env = append(environment(t), env)
		c = on(t, small, cmd)
		c.see("compartments, gal:")
		c.tap("200 100\r")
		c.see("heel of each, gal [2]:")
		c.press("\x04") // the answers end
		if code := c.ended(); code != 1 {
			t.Errorf("%s: exit %d", env, code)
		}
		if strings.Contains(c.bytes(), "\x1b") {
			t.Errorf("%s: escape codes in %q", env, c.bytes())
		}
	}
}
