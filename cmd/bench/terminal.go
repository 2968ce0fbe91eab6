//go:build linux

package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"sync"
	"syscall"
	"time"

	"github.com/creack/pty"
)

// patience bounds a hang; it judges no speed.
const patience = 60 * time.Second

var errNothing = errors.New("nothing was drawn")

// screen is a program on a pseudo-terminal.
type screen struct {
	cmd     *exec.Cmd
	tty     *os.File
	began   time.Time
	answers bool // whether the terminal answers what it is asked

	mu   sync.Mutex
	raw  bytes.Buffer
	last time.Time // of the last bytes
	news chan struct{}
}

func environment(at string) []string {
	return []string{"PATH=" + os.Getenv("PATH"), "HOME=" + os.TempDir(), "TERM=xterm-256color", "LANG=C.UTF-8", "TINTLINE_AT=" + at}
}

func onScreen(answers bool, env []string, name string, args ...string) (*screen, error) {
	s := &screen{cmd: exec.Command(name, args...), answers: answers, news: make(chan struct{}, 1), began: time.Now()}
	s.cmd.Env = env
	tty, err := pty.StartWithSize(s.cmd, &pty.Winsize{Cols: 100, Rows: 30})
	if err != nil {
		return nil, err
	}
	s.tty = tty
	go s.read()
	return s, nil
}

func (s *screen) read() {
	buf := make([]byte, 1<<16)
	for {
		n, err := s.tty.Read(buf)
		s.mu.Lock()
		s.raw.Write(buf[:n])
		s.last = time.Now()
		s.mu.Unlock()
		if s.answers {
			s.answer(buf[:n])
		}
		select {
		case s.news <- struct{}{}:
		default:
		}
		if err != nil {
			return
		}
	}
}

// answer is what a terminal says to the two questions that programs ask at their start.
func (s *screen) answer(asked []byte) {
	if bytes.Contains(asked, []byte("\x1b]11;?")) {
		_, _ = s.tty.WriteString("\x1b]11;rgb:0000/0000/0000\x1b\\")
	}
	if bytes.Contains(asked, []byte("\x1b[6n")) {
		_, _ = s.tty.WriteString("\x1b[1;1R")
	}
}

// drawn waits until so many bytes were drawn, and tells when the last of them came.
func (s *screen) drawn(n int) (time.Time, error) { return s.drawnWithin(n, patience) }

func (s *screen) drawnWithin(n int, limit time.Duration) (time.Time, error) {
	end := time.After(limit)
	for {
		s.mu.Lock()
		have, last := s.raw.Len(), s.last
		s.mu.Unlock()
		if have >= n {
			return last, nil
		}
		select {
		case <-s.news:
		case <-end:
			return last, fmt.Errorf("%w: %q", errNothing, s.text())
		}
	}
}

func (s *screen) text() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return strings.ToValidUTF8(s.raw.String(), "?")
}

// quiet waits until nothing more is drawn, and throws away what was.
func (s *screen) quiet() {
	for {
		s.mu.Lock()
		since := time.Since(s.last)
		if since > 60*time.Millisecond {
			s.raw.Reset()
			s.mu.Unlock()
			return
		}
		s.mu.Unlock()
		time.Sleep(10 * time.Millisecond)
	}
}

// key presses a key and tells how many seconds it takes until something is drawn; nothing else is being drawn then.
func (s *screen) key(k string) (float64, error) {
	began := time.Now()
	if _, err := s.tty.WriteString(k); err != nil {
		return 0, err
	}
	at, err := s.drawnWithin(1, 2*time.Second)
	return at.Sub(began).Seconds(), err
}

// close ends the program by its own key, or else by force.
func (s *screen) close() {
	_, _ = s.tty.WriteString("\x1b")
	time.Sleep(20 * time.Millisecond)
	_, _ = s.tty.WriteString("\x03")
	done := make(chan struct{})
	go func() { _ = s.cmd.Wait(); close(done) }()
	select {
	case <-done:
	case <-time.After(5 * time.Second):
		_ = s.cmd.Process.Signal(syscall.SIGKILL)
		<-done
	}
	_ = s.tty.Close()
}

// firstScreen is how many seconds a program needs until a whole screen is drawn.
func firstScreen(answers bool, env []string, name string, args ...string) (float64, error) {
	s, err := onScreen(answers, env, name, args...)
	if err != nil {
		return 0, err
	}
	defer s.close()
	const aScreen = 600 // bytes: more than what the terminal is set up with
	at, err := s.drawn(aScreen)
	return at.Sub(s.began).Seconds(), err
}
