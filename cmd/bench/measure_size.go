//go:build linux

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"time"
)

// memory is what the running screen holds, in MiB: the most that was resident, what is, and what of it is anonymous.
func (t *bed) memory(book string) (peak, resident, anonymous float64, err error) {
	s, err := onScreen(true, environment(t.evening), t.program, "--book", book)
	if err != nil {
		return 0, 0, 0, err
	}
	defer s.close()
	if _, err := s.drawn(600); err != nil {
		return 0, 0, 0, err
	}
	for _, k := range []string{"?", "\x1b", "g", "\x1b"} {
		s.quiet()
		if _, err := s.key(k); err != nil {
			return 0, 0, 0, err
		}
	}
	time.Sleep(300 * time.Millisecond)
	dir := filepath.Join("/proc", strconv.Itoa(s.cmd.Process.Pid))
	status, err := os.ReadFile(filepath.Join(dir, "status"))
	if err != nil {
		return 0, 0, 0, err
	}
	maps, err := os.ReadFile(filepath.Join(dir, "smaps_rollup"))
	return kilobytes(status, "VmHWM"), kilobytes(status, "VmRSS"), kilobytes(maps, "Anonymous"), err
}

func kilobytes(text []byte, name string) float64 {
	m := regexp.MustCompile(`(?m)^` + name + `:\s+(\d+) kB`).FindSubmatch(text)
	if m == nil {
		return 0
	}
	n, _ := strconv.ParseFloat(string(m[1]), 64)
	return n / 1024
}

func (t *bed) memories() ([]line, error) {
	var out []line
	for _, c := range []struct{ what, ten, none string }{{"last day closed", t.ten, t.none}, {"open day", t.tenOpen, t.noneOpen}} {
		peak, resident, anonymous, err := t.memory(c.ten)
		if err != nil {
			return nil, err
		}
		peak0, resident0, anonymous0, err := t.memory(c.none)
		if err != nil {
			return nil, err
		}
		l := line{
			what: "anonymous memory of the screen, ten years and 600 lawns against no history, " + c.what, ours: fmt.Sprintf("%.1f MiB", anonymous),
			theirs: fmt.Sprintf("%.1f MiB", anonymous0), ratio: fmt.Sprintf("%.2f", anonymous/anonymous0),
		}
		l.judge(anonymous, 32)
		l.target += " MiB"
		out = append(out, l, line{
			what: "resident memory, highest and now", ours: fmt.Sprintf("%.1f, %.1f MiB", peak, resident), theirs: fmt.Sprintf("%.1f, %.1f MiB", peak0, resident0), ratio: fmt.Sprintf("%.2f", peak/peak0),
		})
	}
	return out, nil
}

// sizes are those of the file, of a copy and of the program.
func (t *bed) sizes() ([]line, error) {
	to := filepath.Join(t.dir, "copy.db")
	if err := t.run(t.morning, t.program, "backup", to, "--book", t.ten); err != nil {
		return nil, err
	}
	n := float64(t.entries)
	each := fmt.Sprintf("%.0f bytes an entry in the journal", float64(t.bodies)/n)
	ratio := func(path string) float64 { return float64(size(path)) / float64(t.bodies) }
	disk := line{what: "size on disk, rows, keys and snapshot included", ours: fmt.Sprintf("%.0f bytes an entry", float64(size(t.ten))/n), theirs: each, ratio: fmt.Sprintf("%.2f", ratio(t.ten))}
	copied := line{what: "a backup copy, all included, against the entries' bytes", ours: fmt.Sprintf("%.1f MB", float64(size(to))/1e6), theirs: fmt.Sprintf("%.1f MB", float64(t.bodies)/1e6), ratio: fmt.Sprintf("%.2f", ratio(to))}
	copied.judge(ratio(to), 1.8)
	both := [2]int64{size(t.program), size(t.alone)}
	binary := line{
		what: "stripped binary against one with bubbletea and bbolt alone", ours: fmt.Sprintf("%.2f MB", float64(both[0])/1e6), theirs: fmt.Sprintf("%.2f MB", float64(both[1])/1e6),
		ratio: fmt.Sprintf("%.2f", float64(both[0])/float64(both[1])),
	}
	return []line{disk, copied, binary}, nil
}
