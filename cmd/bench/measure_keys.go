//go:build linux

package main

import (
	"fmt"
	"os/exec"
	"path/filepath"
	"time"
)

// keyPresses measures key to bytes on the terminal. Help opens and shuts; the theme is an entry each time, so that the
// disk is in the way.
func (t *bed) keyPresses() ([]line, error) {
	type way struct {
		what             string
		before, one, two string
		name             string
		args             []string
		judged           bool
		rest             time.Duration
	}
	help := func(what, book string, judged bool) way {
		return way{what, "", "?", "\x1b", t.program, []string{"--book", book}, judged, 0}
	}
	slow := filepath.Join(t.dir, "slow.db")
	if err := copyFile(slow, t.tenOpen); err != nil {
		return nil, err
	}
	ways := []way{
		help("key to screen, ten years", t.tenOpen, true),
		help("key to screen, no history", t.noneOpen, false),
		{"key to screen, a program with bubbletea alone", "", "x", "x", t.alone, nil, false, 0},
		{"key that writes an entry to screen, ten years", "g", "z", "z", t.program, []string{"--book", slow}, true, 100 * time.Millisecond},
	}
	if strace, err := exec.LookPath("strace"); err == nil {
		args := []string{"-f", "--seccomp-bpf", "-o", "/dev/null", "-e", "trace=fdatasync", "-e", "inject=fdatasync:delay_exit=100000", t.program, "--book", slow}
		ways = append(ways, way{"the same with each fdatasync slowed to 100 ms", "g", "z", "z", strace, args, true, 500 * time.Millisecond})
	}
	var out []line
	for _, w := range ways {
		list, err := t.presses(t.keys, w.rest, w.before, w.one, w.two, w.name, w.args...)
		if err != nil {
			return out, fmt.Errorf("%s: %w", w.what, err)
		}
		p50, p99 := median(list), quantile(list, 0.99)
		l := line{what: w.what, ours: fmt.Sprintf("p50 %.2f, p99 %.2f frames", p50, p99), theirs: "a frame interval, 16.7 ms", ratio: fmt.Sprintf("%.2f", p50)}
		if w.judged {
			l.target, l.met = "p50 at most 0.6, p99 at most 1.25", "met"
			if p50 > 0.6 || p99 > 1.25 {
				l.met = "not met"
			}
		}
		out = append(out, l)
	}
	return out, nil
}
