//go:build unix

package endtoend

import (
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/creack/pty"
)

// terminal is a pseudo-terminal that outlives the program on it, so that what the program leaves can be looked at.
type terminal struct {
	*cab
	slave *os.File
	first string // its settings before
}

// on runs a command on a terminal of its own.
func on(t *testing.T, s size, cmd *exec.Cmd) *terminal {
	t.Helper()
	return onAs(t, s, cmd, &syscall.SysProcAttr{Setsid: true, Setctty: true})
}

func onAs(t *testing.T, s size, cmd *exec.Cmd, who *syscall.SysProcAttr) *terminal {
	t.Helper()
	master, slave, err := pty.Open()
	if err != nil {
		t.Fatal(err)
	}
	if err := pty.Setsize(master, &pty.Winsize{Cols: s.cols, Rows: s.rows}); err != nil {
		t.Fatal(err)
	}
	c := &terminal{cab: &cab{t: t, cmd: cmd, tty: master, em: emulator(s), done: make(chan error, 1)}, slave: slave}
	c.first = c.settings()
	cmd.Stdin, cmd.Stdout, cmd.Stderr = slave, slave, slave
	cmd.SysProcAttr = who
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	go func() { c.done <- cmd.Wait() }()
	go c.listen()
	go c.drain()
	t.Cleanup(func() {
		_ = cmd.Process.Kill()
		_ = slave.Close()
		_ = master.Close()
	})
	return c
}

// onTerminal runs tintline.
func onTerminal(t *testing.T, s size, args ...string) *terminal {
	t.Helper()
	cmd := exec.Command(binary, args...)
	cmd.Env = environment(t)
	return on(t, s, cmd)
}

func (c *terminal) listen() {
	buf := make([]byte, 1<<16)
	for {
		n, err := c.tty.Read(buf)
		c.mu.Lock()
		c.raw.Write(buf[:n])
		_, _ = c.em.Write(buf[:n])
		c.mu.Unlock()
		if err != nil {
			return
		}
	}
}

// settings are those of the terminal, as stty -g tells them.
func (c *terminal) settings() string {
	c.t.Helper()
	cmd := exec.Command("stty", "-g")
	cmd.Stdin = c.slave
	out, err := cmd.CombinedOutput()
	if err != nil {
		c.t.Fatalf("stty: %v %s", err, out)
	}
	return strings.TrimSpace(string(out))
}

// asItWas checks what a program leaves that has ended: the settings, the first screen, a cursor that is seen, and no
// mouse, paste or focus reports.
func (c *terminal) asItWas() {
	c.t.Helper()
	if now := c.settings(); now != c.first {
		c.t.Errorf("the terminal was %s and is %s", c.first, now)
	}
	time.Sleep(50 * time.Millisecond) // the last bytes
	if c.altScreen() {
		c.t.Error("the terminal stands on the alternate screen")
	}
	raw := c.bytes()
	for _, mode := range []string{"?1049", "?1002", "?1003", "?1006", "?2004", "?1004"} {
		if on, off := strings.LastIndex(raw, "\x1b["+mode+"h"), strings.LastIndex(raw, "\x1b["+mode+"l"); on > off {
			c.t.Errorf("mode %s was left on", mode)
		}
	}
	if hidden, shown := strings.LastIndex(raw, "\x1b[?25l"), strings.LastIndex(raw, "\x1b[?25h"); hidden > shown {
		c.t.Error("the cursor was left hidden")
	}
}

func (c *terminal) altScreen() bool {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.em.IsAltScreen()
}

// TestTerminalIsAsItWas: whatever ends the program, stty -g says the same before and after.
func TestTerminalIsAsItWas(t *testing.T) {
	signal := func(s syscall.Signal) func(c *terminal) {
		return func(c *terminal) {
			if err := c.cmd.Process.Signal(s); err != nil {
				c.t.Fatal(err)
			}
		}
	}
	for _, one := range []struct {
		name string
		end  func(c *terminal)
		code int
	}{
		{"q", func(c *terminal) { c.press("q") }, 0},
		{"ctrl+c", func(c *terminal) { c.press("\x03") }, 0},
		{"ctrl+c in a line of text", func(c *terminal) { c.tap("o"); c.see("gauge reads"); c.press("\x03") }, 0},
		{"SIGTERM", signal(syscall.SIGTERM), 0},
		{"SIGINT", signal(syscall.SIGINT), 0},
		{"SIGHUP", signal(syscall.SIGHUP), 0},
		{"q with an entry on its way", func(c *terminal) { c.press("b"); c.press("q") }, 0},
	} {
		t.Run(one.name, func(t *testing.T) {
			c := onTerminal(t, small, "demo")
			c.see("DEMO BOOK")
			if c.settings() == c.first {
				t.Error("the screen runs without raw mode: the test looks at the wrong terminal")
			}
			one.end(c)
			if code := c.ended(); code != one.code {
				t.Errorf("exit %d", code)
			}
			c.asItWas()
		})
	}
}

func TestTerminalAfterSecondCopy(t *testing.T) {
	book := filepath.Join(t.TempDir(), "book.db")
	must(t, "", "demo", "--make", book)
	c := onTerminal(t, small, "--book", book)
	c.see("visit 4 of 15")
	second := onTerminal(t, small, "--book", book)
	if code := second.ended(); code != 5 {
		t.Errorf("the second copy exits %d", code)
	}
	second.asItWas()
	if said := second.bytes(); !strings.Contains(said, "another") && !strings.Contains(said, "copy") {
		t.Errorf("the second copy says %q", said)
	}
	c.see("visit 4 of 15")
	c.press("q")
	c.ended()
	c.asItWas()
}

// TestTerminalAfterPanic: a fault in the screen, and one in a command beside it.
func TestTerminalAfterPanic(t *testing.T) {
	breaks := filepath.Join(t.TempDir(), "breaks")
	if out, err := exec.Command("go", "build", "-o", breaks, "./testdata/breaks").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	truck, err := filepath.Abs("../../tui/testdata/truck.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	for _, one := range []struct{ where, key, says string }{
		{"update", "x", "a fault in the screen"},
		{"journal", "\r", "a fault beside the screen"},
	} {
		t.Run(one.where, func(t *testing.T) {
			cmd := exec.Command(breaks, one.where, truck)
			cmd.Env = environment(t)
			c := on(t, small, cmd)
			c.see("Enter")
			c.press(one.key)
			if one.where == "journal" { // Enter asks who works
				c.see("who works")
				c.tap("R. Example")
				c.enter()
			}
			if code := c.ended(); code != 7 {
				t.Errorf("exit %d", code)
			}
			c.asItWas()
			// on the screen that is left, not on the one that is gone
			if _, left, _ := strings.Cut(c.bytes(), "\x1b[?1049l"); !strings.Contains(strings.Join(strings.Fields(left), " "), one.says) {
				t.Errorf("what went wrong is not said: %q", left)
			}
		})
	}
}

// TestSuspendAndResume runs the program under a shell with job control: ctrl+z gives the shell a sane terminal, fg brings
// the screen back, and the mouse with it.
func TestSuspendAndResume(t *testing.T) {
	shell := exec.Command("/bin/sh", "-i")
	shell.Env = append(environment(t), "PS1=ready> ", "ENV=", "HISTFILE=")
	c := on(t, small, shell)
	c.see("ready>")
	ask := func() string { // stty as the shell's user sees it
		c.t.Helper()
		was := strings.Count(c.bytes(), "=end")
		c.press("echo settings=$(stty -g)=end\r")
		for end := time.Now().Add(patience); strings.Count(c.bytes(), "=end") < was+2; time.Sleep(5 * time.Millisecond) {
			if time.Now().After(end) {
				t.Fatalf("the shell does not answer:\n%s", c.screen())
			}
		}
		all := c.bytes()
		from := strings.LastIndex(all, "settings=")
		return all[from:strings.LastIndex(all, "=end")]
	}
	before := ask()
	c.press(binary + " demo\r")
	c.see("DEMO BOOK", "q quit")
	mouse := strings.Count(c.bytes(), "\x1b[?1002h")
	c.press("\x1a")
	c.see("topped") // "Stopped" or "[1] + Stopped"
	if c.altScreen() {
		t.Error("the shell stands on the alternate screen")
	}
	if now := ask(); now != before {
		t.Errorf("suspended, the terminal is %s, not %s", now, before)
	}
	c.press("fg\r")
	c.see("DEMO BOOK", "q quit")
	c.tap("?")
	c.see("Keys")
	if again := strings.Count(c.bytes(), "\x1b[?1002h"); again <= mouse {
		t.Error("the mouse is not on again")
	}
	c.press("\x1b")
	time.Sleep(100 * time.Millisecond)
	c.see("DEMO BOOK", "q quit")
	c.press("q")
	for end := time.Now().Add(patience); !strings.HasSuffix(c.bytes(), "ready> "); time.Sleep(5 * time.Millisecond) {
		if time.Now().After(end) {
			t.Fatalf("the shell does not come back:\n%s", c.screen())
		}
	}
	if now := ask(); now != before {
		t.Errorf("at the end the terminal is %s, not %s", now, before)
	}
	c.press("exit\r")
	c.ended()
}

// TestNoShellNoSuspend: where nothing would bring it back, ctrl+z does nothing.
func TestNoShellNoSuspend(t *testing.T) {
	c := onTerminal(t, small, "demo")
	c.see("DEMO BOOK")
	c.press("\x1a")
	c.tap("?")
	c.see("Keys")
	c.press("q")
	c.ended()
	c.asItWas()
}

// TestTerminalClosed: the cab's screen is unplugged between keys. The program ends, and what it had confirmed is in the
// journal, which is whole.
func TestTerminalClosed(t *testing.T) {
	book := filepath.Join(t.TempDir(), "book.db")
	must(t, "", "demo", "--make", book)
	for n := range 5 {
		c := start(t, small, nil, "--book", book)
		c.see("visit 4 of 15")
		words := []string{"75.1", "75.2", "75.3", "75.4", "75.5"}[n] // near what the book has, so that nothing is asked
		c.tap("oc " + words)
		c.enter()
		c.see("booked gauge of c: " + words + " gal")
		c.press("oc 7") // a line stands open, and an entry may be on its way
		c.press("b")
		if err := c.tty.Close(); err != nil {
			t.Fatal(err)
		}
		select {
		case <-c.done:
		case <-time.After(patience):
			t.Fatal("the program lives on without its terminal")
		}
		if out := must(t, "", "journal", "--book", book); !strings.Contains(out, "gauge of c: "+words+" gal") {
			t.Errorf("what was confirmed is not in the journal: %s", words)
		}
	}
	must(t, "", "status", "--book", book)
}

// TestResizeStorm: sizes follow each other at any time, among them none and one cell, with keys between; in the end the
// screen is the one of a fresh start.
func TestResizeStorm(t *testing.T) {
	c := start(t, small, nil, "demo")
	c.see("DEMO BOOK", "q quit")
	fresh := c.screen()
	dice := rand.New(rand.NewPCG(40, 16))
	sizes := []size{{0, 0}, {1, 1}, {40, 16}, {300, 100}, {39, 16}, {40, 15}, {80, 24}, {120, 40}, {0, 24}, {80, 0}, {200, 60}, {2, 100}, {300, 1}}
	for n := range 150 {
		s := sizes[n%len(sizes)]
		if n >= len(sizes) {
			s = sizes[dice.IntN(len(sizes))]
		}
		if s.cols > 0 && s.rows > 0 {
			c.resize(s)
		} else if err := pty.Setsize(c.tty, &pty.Winsize{Cols: s.cols, Rows: s.rows}); err != nil {
			t.Fatal(err)
		}
		if n%5 == 0 {
			c.press([]string{"?", "\x1b", "["}[dice.IntN(3)])
		}
		time.Sleep(time.Duration(dice.IntN(8)) * time.Millisecond)
	}
	time.Sleep(100 * time.Millisecond)
	c.press("\x1b")
	time.Sleep(100 * time.Millisecond)
	c.resize(size{81, 25})
	time.Sleep(50 * time.Millisecond)
	c.resize(small)
	for end := time.Now().Add(patience); ; time.Sleep(5 * time.Millisecond) {
		if c.screen() == fresh {
			break
		}
		if time.Now().After(end) {
			t.Fatalf("after the storm:\n%s\nfresh:\n%s", c.screen(), fresh)
		}
	}
	c.press("q")
	if code := c.ended(); code != 0 {
		t.Errorf("exit %d", code)
	}
}
