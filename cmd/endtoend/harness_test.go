//go:build unix

package endtoend

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
)

// patience is how long a test waits for what must come; it bounds a hang and judges no speed.
const patience = 30 * time.Second

var binary string

func TestMain(m *testing.M) { os.Exit(run(m)) }

func run(m *testing.M) int {
	dir, err := os.MkdirTemp("", "tintline-e2e-")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	defer os.RemoveAll(dir)
	binary = filepath.Join(dir, "tintline")
	if out, err := exec.Command("go", "build", "-o", binary, "../tintline").CombinedOutput(); err != nil {
		fmt.Fprintf(os.Stderr, "%s%v\n", out, err)
		return 1
	}
	return m.Run()
}

// environment is the environment of every run: a fixed clock on the day of the demo, no book of the user's.
func environment(t testing.TB, more ...string) []string {
	env := []string{
		"PATH=" + os.Getenv("PATH"), "HOME=" + t.TempDir(), "TERM=xterm-256color", "LANG=C.UTF-8",
		"TINTLINE_AT=2026-05-28T09:42:00-05:00",
	}
	return append(env, more...)
}

// program runs the command line and returns what it printed and its exit code.
func program(t testing.TB, stdin string, args ...string) (out, complaint string, code int) {
	t.Helper()
	c := exec.Command(binary, args...)
	c.Env = environment(t)
	c.Stdin = strings.NewReader(stdin)
	var o, e bytes.Buffer
	c.Stdout, c.Stderr = &o, &e
	err := c.Run()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	return o.String(), e.String(), c.ProcessState.ExitCode()
}

// must is program that has to end well.
func must(t testing.TB, stdin string, args ...string) string {
	t.Helper()
	out, complaint, code := program(t, stdin, args...)
	if code != 0 {
		t.Fatalf("tintline %s: exit %d\n%s%s", strings.Join(args, " "), code, out, complaint)
	}
	return out
}

// status is status --json as a map.
func status(t testing.TB, book string) map[string]any {
	t.Helper()
	var m map[string]any
	if err := json.Unmarshal([]byte(must(t, "", "status", "--json", "--book", book)), &m); err != nil {
		t.Fatal(err)
	}
	return m
}

// cab is the program on a pseudo-terminal.
type cab struct {
	t    testing.TB
	cmd  *exec.Cmd
	tty  *os.File
	mu   sync.Mutex
	em   *vt.Emulator
	raw  bytes.Buffer
	done chan error
}

// size is that of a terminal, in cells.
type size struct{ cols, rows uint16 }

var small, large = size{80, 24}, size{120, 40}

func emulator(s size) *vt.Emulator { return vt.NewEmulator(int(s.cols), int(s.rows)) }

// start runs the program on a terminal. A silent one answers no question.
func start(t testing.TB, s size, env []string, args ...string) *cab {
	t.Helper()
	c := &cab{t: t, cmd: exec.Command(binary, args...), em: emulator(s), done: make(chan error, 1)}
	c.cmd.Env = environment(t, env...)
	tty, err := pty.StartWithSize(c.cmd, &pty.Winsize{Cols: s.cols, Rows: s.rows})
	if err != nil {
		t.Fatal(err)
	}
	c.tty = tty
	go c.read()
	go c.drain()
	t.Cleanup(func() {
		_ = c.cmd.Process.Kill()
		_ = tty.Close()
	})
	return c
}

// read feeds the emulator; it alone writes to it.
func (c *cab) read() {
	buf := make([]byte, 1<<16)
	for {
		n, err := c.tty.Read(buf)
		c.mu.Lock()
		c.raw.Write(buf[:n])
		_, _ = c.em.Write(buf[:n])
		c.mu.Unlock()
		if err != nil {
			c.done <- c.cmd.Wait()
			return
		}
	}
}

// drain throws the emulator's answers away, so that the terminal is a silent one.
func (c *cab) drain() {
	buf := make([]byte, 4096)
	for {
		if _, err := c.em.Read(buf); err != nil {
			return
		}
	}
}

// screen is what stands on the terminal now.
func (c *cab) screen() string {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.em.String()
}

// bytes is all that the program wrote.
func (c *cab) bytes() string {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.raw.String()
}

// tap types keys one by one, as fingers do.
func (c *cab) tap(keys string) {
	c.t.Helper()
	for _, k := range keys {
		c.press(string(k))
		time.Sleep(4 * time.Millisecond)
	}
}

// enter presses Enter, not so soon after the last one that it would count as one press.
func (c *cab) enter() {
	c.t.Helper()
	time.Sleep(160 * time.Millisecond)
	c.press("\r")
}

func (c *cab) press(keys string) {
	c.t.Helper()
	if _, err := c.tty.WriteString(keys); err != nil {
		c.t.Fatalf("press %q: %v\n%s", keys, err, c.screen())
	}
}

// words is the screen with all white space and line breaks as one space each.
func (c *cab) words() string { return strings.Join(strings.Fields(c.screen()), " ") }

// see waits until all texts stand on the screen, white space apart.
func (c *cab) see(texts ...string) string {
	c.t.Helper()
	for end := time.Now().Add(patience); ; time.Sleep(2 * time.Millisecond) {
		s := c.words()
		missing := ""
		for _, x := range texts {
			if !strings.Contains(s, x) {
				missing = x
			}
		}
		if missing == "" {
			return s
		}
		if time.Now().After(end) {
			c.t.Fatalf("%q does not come:\n%s", missing, c.screen())
		}
	}
}

// ended waits for the program to end and returns its exit code.
func (c *cab) ended() int {
	c.t.Helper()
	select {
	case <-c.done:
		return c.cmd.ProcessState.ExitCode()
	case <-time.After(patience):
		c.t.Fatalf("does not end:\n%s", c.screen())
		return -1
	}
}

func (c *cab) resize(s size) {
	c.t.Helper()
	c.mu.Lock()
	c.em.Resize(int(s.cols), int(s.rows))
	c.mu.Unlock()
	if err := pty.Setsize(c.tty, &pty.Winsize{Cols: s.cols, Rows: s.rows}); err != nil {
		c.t.Fatal(err)
	}
}

// kill ends it as a power cut to the process does.
func (c *cab) kill() {
	c.t.Helper()
	if err := c.cmd.Process.Signal(syscall.SIGKILL); err != nil {
		c.t.Fatal(err)
	}
	<-c.done
}

// changed waits until the screen is not what it was, and has come to rest.
func (c *cab) changed(was string) {
	c.t.Helper()
	end := time.Now().Add(patience)
	for last := was; ; {
		time.Sleep(40 * time.Millisecond)
		now := c.screen()
		if now != was && now == last {
			return
		}
		last = now
		if time.Now().After(end) {
			c.t.Fatalf("nothing changes:\n%s", now)
		}
	}
}
