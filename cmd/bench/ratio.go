//go:build linux

package main

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"time"
)

// line is a line of the table. The ratio is that of ours to theirs within one round; the figures are medians.
type line struct {
	what         string
	ours, theirs string
	ratio        string
	target, met  string
}

// rounds runs both variants in turn, the order turned round each time.
func rounds(n int, ours, theirs func() (float64, error)) (a, b, ratio []float64, err error) {
	for i := range n {
		var x, y float64
		both := []func() error{
			func() (err error) { x, err = ours(); return },
			func() (err error) { y, err = theirs(); return },
		}
		if i%2 == 1 {
			slices.Reverse(both)
		}
		for _, f := range both {
			if err := f(); err != nil {
				return nil, nil, nil, err
			}
		}
		a, b, ratio = append(a, x), append(b, y), append(ratio, x/y)
	}
	return a, b, ratio, nil
}

// quantile of a list; it is sorted on the way.
func quantile(list []float64, q float64) float64 {
	if len(list) == 0 {
		return 0
	}
	s := slices.Sorted(slices.Values(list))
	return s[min(int(q*float64(len(s))), len(s)-1)]
}

func median(list []float64) float64 { return quantile(list, 0.5) }

func quartiles(list []float64) string {
	return fmt.Sprintf("%.2f (%.2f to %.2f)", median(list), quantile(list, 0.25), quantile(list, 0.75))
}

// compare measures two ways in rounds and makes a line of it; at most is the target, 0 if there is none.
func compare(n int, what string, atMost float64, unit float64, name string, ours, theirs func() (float64, error)) (line, error) {
	a, b, r, err := rounds(n, ours, theirs)
	if err != nil {
		return line{}, fmt.Errorf("%s: %w", what, err)
	}
	l := line{
		what: what, ours: fmt.Sprintf("%.3g %s", median(a)*unit, name), theirs: fmt.Sprintf("%.3g %s", median(b)*unit, name), ratio: quartiles(r),
	}
	l.judge(median(r), atMost)
	return l, nil
}

func (l *line) judge(have, atMost float64) {
	if atMost == 0 {
		return
	}
	l.target, l.met = fmt.Sprintf("at most %.3g", atMost), "met"
	if have > atMost {
		l.met = "not met"
	}
}

// timed is how long f takes, in seconds.
func timed(f func() error) func() (float64, error) {
	return func() (float64, error) {
		began := time.Now()
		err := f()
		return time.Since(began).Seconds(), err
	}
}

func printTable(w io.Writer, lines []line) error {
	var b strings.Builder
	b.WriteString("| what | ours | against | ratio, quartiles | target | |\n|---|---|---|---|---|---|\n")
	for _, l := range lines {
		fmt.Fprintf(&b, "| %s |\n", strings.Join([]string{l.what, l.ours, l.theirs, l.ratio, l.target, l.met}, " | "))
	}
	_, err := io.WriteString(w, b.String())
	return err
}
