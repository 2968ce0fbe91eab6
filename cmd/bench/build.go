package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"runtime/debug"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// plan is how large a book is made.
type plan struct {
	years, days, visits, lawns int
	changeovers                int // a day
	seed                       uint64
	open                       bool // the last day is not closed
}

// made is what a book came to.
type made struct {
	book   *core.Book
	bodies int64 // bytes
	rows   int64 // bytes
	calls  int   // visits
	opened int   // days
	kinds  map[string]int
}

func buildCommand(args []string, out io.Writer) error {
	var p plan
	f := flag.NewFlagSet("build", flag.ContinueOnError)
	f.IntVar(&p.years, "years", 10, "years; 0 is one day")
	f.IntVar(&p.days, "days", 220, "days a year")
	f.IntVar(&p.visits, "visits", 25, "visits a day")
	f.IntVar(&p.changeovers, "changeovers", 4, "changeovers a day, about; most of the building is spent on them")
	f.IntVar(&p.lawns, "lawns", 600, "lawns in the book")
	f.Uint64Var(&p.seed, "seed", 1, "the same seed gives the same book")
	f.BoolVar(&p.open, "open", false, "leave the last day open")
	path, err := oneFile(f, args)
	if err != nil {
		return err
	}
	began := time.Now()
	m, err := build(path, p)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(out, "entries %d\nvisits %d\ndays %d\nbodies %d bytes\nrows %d bytes\nstate %s\njournal %s\nmade in %.1f s\n",
		m.book.Seq(), m.calls, m.opened, m.bodies, m.rows, m.book.StateDigest(), m.book.Digest(), time.Since(began).Seconds())
	return err
}

// build makes a book at path, which must not exist.
func build(path string, p plan) (made, error) {
	switch {
	case p.years < 0 || p.days < 1 || p.days > 300:
		return made{}, fmt.Errorf("%d years of %d days cannot be built; give 0 years or more, of 1 to 300 days", p.years, p.days)
	case p.visits < 1 || p.lawns < p.visits:
		return made{}, fmt.Errorf("%d visits a day on %d lawns cannot be built; give at least as many lawns as visits", p.visits, p.lawns)
	}
	// A round of the pump leaves much garbage and little behind: collecting it less often halves the time.
	defer debug.SetGCPercent(debug.SetGCPercent(800))
	w := newWriter(p)
	o := store.Options{Program: "bench", Created: "2015-01-01T00:00:00Z"}
	err := store.CreateWith(path, fmt.Sprintf("bench-%d", p.seed), o, func(add func(string, []store.Item) error) error {
		w.add = add
		w.all()
		return w.err
	})
	if err != nil {
		return made{}, err
	}
	return w.made, snapshot(path, o, w.book)
}

// snapshot puts beside the entries what the program would have put there when the last day was closed.
func snapshot(path string, o store.Options, b *core.Book) error {
	kept, err := core.Resume(b.Keep())
	if err != nil {
		return err
	}
	s, err := store.Open(path, o)
	if err != nil {
		return err
	}
	return errors.Join(s.PutSnapshot(kept.Seq(), b.Keep()), s.Close())
}
