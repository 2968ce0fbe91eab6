//go:build linux

package main

import (
	"database/sql"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// sums compares questions over all years, each side a process of its own.
func (t *bed) sums() ([]line, error) {
	plain, indexed := filepath.Join(t.dir, "rows.sqlite"), filepath.Join(t.dir, "indexed.sqlite")
	if err := errors.Join(sqlBook(plain, t.ten, t.entries, false), sqlBook(indexed, t.ten, t.entries, true)); err != nil {
		return nil, err
	}
	ours := func(args ...string) func() (float64, error) {
		return timed(func() error { return t.run(t.morning, t.program, append(args, "--book", t.ten)...) })
	}
	theirs := func(args ...string) func() (float64, error) {
		return timed(func() error { return t.run(t.morning, t.self, append([]string{"sql"}, args...)...) })
	}
	year := t.last[:4]
	var out []line
	for _, c := range []struct {
		what         string
		most         float64
		ours, theirs func() (float64, error)
	}{
		{"sums of ten years by year, against SQL sums by year over one row an entry", 0.1, ours("tally", "--by", "year"), theirs(plain, "years")},
		{"sums of ten years by product, against SQL over one row a product laid", 0, ours("tally", "--from", t.first, "--to", t.last), theirs(plain, "sums", t.first, t.last)},
		{"sums of one season, against the same with an index on the date", 0, ours("tally", "--from", year+"-01-01", "--to", year+"-12-31"), theirs(indexed, "sums", year+"-01-01", year+"-12-31")},
		{"one lawn's records of ten years, against an SQL scan", 0, ours("laid", "--lawn", t.oneLawn), theirs(plain, "lawn", t.oneLawn)},
		{"one lawn's records of ten years, against SQL with an index on the lawn", 0, ours("laid", "--lawn", t.oneLawn), theirs(indexed, "lawn", t.oneLawn)},
	} {
		l, err := compare(t.rounds, c.what, c.most, milli, "ms", c.ours, c.theirs)
		if err != nil {
			return nil, err
		}
		out = append(out, l)
	}
	return out, nil
}

// replayed is how many entries are folded: a year of them, so that the table does not take the afternoon.
const replayed = 55_000

// replay folds the first year and sets it against the SQL sums over the same rows.
func (t *bed) replay() ([]line, error) {
	n := min(uint64(replayed), t.entries)
	rows := filepath.Join(t.dir, "year.sqlite")
	if err := sqlBook(rows, t.ten, n, false); err != nil {
		return nil, err
	}
	decoded, folded, err := t.fold(n)
	if err != nil {
		return nil, err
	}
	db, err := sql.Open("sqlite", rows)
	if err != nil {
		return nil, err
	}
	defer db.Close()
	var theirs []float64
	for range t.rounds {
		d, err := timed(func() error { _, err := db.Exec(questions["years"]); return err })()
		if err != nil {
			return nil, err
		}
		theirs = append(theirs, d)
	}
	sums := median(theirs)
	each := func(d time.Duration) string { return fmt.Sprintf("%.3g us an entry", d.Seconds()/float64(n)*1e6) }
	out := line{
		what: fmt.Sprintf("full rebuild, measured on %d entries, against SQL sums by year over the same rows", n),
		ours: each(folded + decoded), theirs: fmt.Sprintf("%.3g us a row", sums/float64(n)*1e6), ratio: fmt.Sprintf("%.0f", (decoded+folded).Seconds()/sums),
	}
	out.judge((decoded+folded).Seconds()/sums, 1.5)
	read := line{what: "of that, reading and decoding", ours: each(decoded), theirs: out.theirs, ratio: fmt.Sprintf("%.2f", decoded.Seconds()/sums)}
	return []line{out, read}, nil
}

func (t *bed) fold(n uint64) (decoded, folded time.Duration, err error) {
	s, err := store.Open(t.ten, store.Options{ReadOnly: true})
	if err != nil {
		return 0, 0, err
	}
	b, entries := core.NewBook(1), make([]core.Entry, 0, n)
	began := time.Now()
	err = s.Each(1, func(r store.Record) error {
		if r.Number > n {
			return io.EOF
		}
		e, err := core.Decode(r.Number, r.Action, r.Body)
		entries = append(entries, e)
		return err
	})
	if err != nil && !errors.Is(err, io.EOF) {
		return 0, 0, errors.Join(err, s.Close())
	}
	decoded, began = time.Since(began), time.Now()
	for _, e := range entries {
		if err := b.Apply(e); err != nil {
			return 0, 0, errors.Join(err, s.Close())
		}
	}
	return decoded, time.Since(began), s.Close()
}
