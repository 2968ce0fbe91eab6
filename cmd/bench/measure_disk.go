//go:build linux

package main

import (
	"bufio"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"

	"golang.org/x/sys/unix"

	"example.com/tintline/store"
)

// sample is an entry as the book has it.
func sample(path string) (store.Item, error) {
	s, err := store.Open(path, store.Options{ReadOnly: true})
	if err != nil {
		return store.Item{}, err
	}
	last, err := s.Last()
	if err != nil {
		return store.Item{}, err
	}
	var it store.Item
	err = s.Each(last, func(r store.Record) error {
		it.Body = append([]byte(nil), r.Body...)
		return nil
	})
	it.Keys = [][]byte{[]byte("day/2025-11-20"), []byte("lawn/1 Thimble Lane")}
	return it, errors.Join(err, s.Close())
}

// appends writes n actions of one entry into a book: bench append FILE N.
func appends(path string, n int) error {
	it, err := sample(path)
	if err != nil {
		return err
	}
	s, err := store.Open(path, store.Options{Program: "bench"})
	if err != nil {
		return err
	}
	for i := range n {
		if _, err := s.Append(fmt.Sprintf("%032x", i), []store.Item{it}); err != nil {
			return errors.Join(err, s.Close())
		}
	}
	return s.Close()
}

// writer of the same bytes, as plainly as it can be made durable.
type rawFile struct {
	*os.File
	body []byte
}

func (f rawFile) write() error {
	if _, err := f.Write(f.body); err != nil {
		return err
	}
	return unix.Fdatasync(int(f.Fd()))
}

// actions compares a durable action with the bare system, and with the same action in an empty book.
func (t *bed) actions() ([]line, error) {
	ten, none := filepath.Join(t.dir, "write-ten.db"), filepath.Join(t.dir, "write-none.db")
	if err := errors.Join(copyFile(ten, t.tenOpen), copyFile(none, t.noneOpen)); err != nil {
		return nil, err
	}
	it, err := sample(ten)
	if err != nil {
		return nil, err
	}
	f, err := os.Create(filepath.Join(t.dir, "raw"))
	if err != nil {
		return nil, err
	}
	defer f.Close()
	raw := timed(rawFile{f, it.Body}.write)
	n, stores := 0, map[string]*store.Store{}
	into := func(path string) func() (float64, error) {
		return timed(func() error {
			n++
			_, err := stores[path].Append(fmt.Sprintf("%032d", n), []store.Item{it})
			return err
		})
	}
	for _, p := range []string{ten, none} {
		s, err := store.Open(p, store.Options{Program: "bench"})
		if err != nil {
			return nil, err
		}
		defer s.Close()
		stores[p] = s
	}
	var out []line
	for _, c := range []struct {
		what         string
		most         float64
		ours, theirs func() (float64, error)
	}{
		{"one durable action, ten years, against append and fdatasync of the same bytes", 2.0, into(ten), raw},
		{"one durable action, no history, against append and fdatasync of the same bytes", 0, into(none), raw},
		{"one durable action, ten years against no history", 1.25, into(ten), into(none)},
	} {
		l, err := compare(20*t.rounds, c.what, c.most, milli, "ms", c.ours, c.theirs)
		if err != nil {
			return nil, err
		}
		out = append(out, l)
	}
	return out, nil
}

// counts are what strace sees of one action: the difference between n of them and none.
func (t *bed) counts() (line, error) {
	l := line{what: "one durable action, ten years: syncs, page writes, bytes written"}
	strace, err := exec.LookPath("strace")
	if err != nil {
		l.ours, l.met = "there is no strace here", "not measured"
		return l, nil
	}
	const n = 50
	var syncs, writes, bytes [2]int
	for i, many := range []int{0, n} {
		book, log := filepath.Join(t.dir, fmt.Sprint("counted-", i, ".db")), filepath.Join(t.dir, fmt.Sprint("counted-", i))
		if err := copyFile(book, t.tenOpen); err != nil {
			return l, err
		}
		if said, err := exec.Command(strace, "-f", "-o", log, "-e", "trace=fdatasync,fsync,pwrite64", t.self, "append", book, strconv.Itoa(many)).CombinedOutput(); err != nil {
			return l, fmt.Errorf("%w: %s", err, said)
		}
		if syncs[i], writes[i], bytes[i], err = counted(log); err != nil {
			return l, err
		}
	}
	per := func(a [2]int) float64 { return float64(a[1]-a[0]) / n }
	l.ours = fmt.Sprintf("%.2f syncs, %.2f writes, %.0f bytes", per(syncs), per(writes), per(bytes))
	l.target, l.met = "exactly 2 syncs", "met"
	if syncs[1]-syncs[0] != 2*n {
		l.met = "not met"
	}
	return l, nil
}

func counted(log string) (syncs, writes, bytes int, err error) {
	f, err := os.Open(log)
	if err != nil {
		return 0, 0, 0, err
	}
	defer f.Close()
	for s := bufio.NewScanner(f); s.Scan(); {
		switch text := s.Text(); {
		case strings.Contains(text, "pwrite64") && !strings.Contains(text, "resumed"):
			writes++
		case strings.Contains(text, "sync(") && !strings.Contains(text, "resumed"):
			syncs++
		}
		if _, n, ok := strings.Cut(s.Text(), ") = "); ok && strings.Contains(s.Text(), "pwrite64") {
			v, _ := strconv.Atoi(strings.Fields(n)[0])
			bytes += v
		}
	}
	return syncs, writes, bytes, nil
}
