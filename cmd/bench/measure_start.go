//go:build linux

package main

import (
	"errors"
	"time"
)

const milli = 1e3

// starts compares the start with ten years and without: the first screen on a terminal, and ready, which is the whole
// process of tintline tally on the last day.
func (t *bed) starts() ([]line, error) {
	var out []line
	ready := func(book string) error { return t.run(t.evening, t.program, "tally", "--book", book) }
	first := func(book string) (float64, error) {
		return firstScreen(true, environment(t.evening), t.program, "--book", book)
	}
	for _, c := range []struct {
		what      string
		ten, none string
	}{{"last day closed", t.ten, t.none}, {"open day of 25 visits", t.tenOpen, t.noneOpen}} {
		for _, chill := range []bool{false, true} {
			cache := ", warm"
			if chill {
				cache = ", cold cache"
			}
			colder := func(f func(string) (float64, error), book string) func() (float64, error) {
				return func() (float64, error) {
					if chill {
						if err := cold(book, t.program); err != nil {
							return 0, err
						}
					}
					return f(book)
				}
			}
			whole := func(book string) (float64, error) { return timed(func() error { return ready(book) })() }
			for _, way := range []struct {
				name string
				f    func(string) (float64, error)
				most float64
			}{{"ready", whole, 1.3}, {"first screen", first, 1.15}} {
				most := way.most
				if chill && way.name == "first screen" {
					most = 0 // the target speaks of ready with a cold cache
				}
				l, err := compare(t.rounds, "start to "+way.name+", ten years against no history, "+c.what+cache, most, milli, "ms", colder(way.f, c.ten), colder(way.f, c.none))
				if err != nil {
					return out, err
				}
				out = append(out, l)
			}
		}
	}
	status := func(book string) func() (float64, error) {
		return timed(func() error { return t.run(t.evening, t.program, "status", "--book", book) })
	}
	l, err := compare(t.rounds, "tintline status, whole process, ten years against no history, last day closed", 0, milli, "ms", status(t.ten), status(t.none))
	if err != nil {
		return out, err
	}
	out = append(out, l)
	l, err = compare(t.rounds, "first screen, terminal that answers nothing against one that answers", 1.3, milli, "ms",
		func() (float64, error) { return firstScreen(false, environment(t.evening), t.program, "--book", t.ten) },
		func() (float64, error) { return first(t.ten) })
	return append(out, l), err
}

// frame is the length of one at 60 a second.
const frame = time.Second / 60

// presses opens a program on a terminal and measures n keys, two in turn, at moments that have nothing to do with frames.
// Between two keys it rests until an entry that the one before wrote is on the disk.
func (t *bed) presses(n int, rest time.Duration, before, one, two string, name string, args ...string) ([]float64, error) {
	s, err := onScreen(true, environment(t.evening), name, args...)
	if err != nil {
		return nil, err
	}
	defer s.close()
	if _, err := s.drawn(600); err != nil {
		return nil, err
	}
	time.Sleep(3 * time.Second) // the daily copy is made and checked at the start
	if before != "" {
		s.quiet()
		if _, err := s.key(before); err != nil {
			return nil, err
		}
	}
	var out []float64
	missed := 0
	for i := range n {
		time.Sleep(rest)
		s.quiet()
		time.Sleep(time.Duration(i*7919%1000) * frame / 1000)
		k := one
		if i%2 == 1 {
			k = two
		}
		d, err := s.key(k)
		if errors.Is(err, errNothing) && missed < n/10+1 {
			missed++ // an entry was on its way, and the key was not free
			continue
		}
		if err != nil {
			return nil, err
		}
		out = append(out, d/frame.Seconds())
	}
	return out, nil
}
