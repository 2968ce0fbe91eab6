package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// tenYearBook is a file of 2,200 days in ten years, three visits each.
func tenYearBook(b *testing.B) string {
	b.Helper()
	path, on, n := filepath.Join(b.TempDir(), "long.db"), &applying{b: core.NewBook(1)}, 0
	at := core.Moment{Unix: 1_451_900_000}
	err := store.CreateWith(path, "long", storeOptions(false), func(add func(string, []store.Item) error) error {
		enter := func(line string) error {
			l, err := core.DecodeLine([]byte(line))
			if err != nil {
				return err
			}
			at.Unix += 600
			es, err := on.b.Prepare(fmt.Sprint(n), at, l.Fact)
			if err != nil {
				return fmt.Errorf("%s: %w", line, err)
			}
			on.rows, n = nil, n+1
			if err := on.apply(es[0]); err != nil {
				return err
			}
			return add(es[0].Action, on.items(es))
		}
		for _, line := range strings.Split(strings.TrimSpace(pastSetUp), "\n") {
			if err := enter(line); err != nil {
				return err
			}
		}
		for i := range 2200 {
			date := time.Date(2016+i/220, 3, 1+i%220, 0, 0, 0, 0, time.UTC).Format(time.DateOnly)
			lines := []string{fmt.Sprintf(`{"fact":"day_opened","date":%q,"operator":"R. Example"}`, date)}
			for j := range 3 {
				lines = append(lines, fmt.Sprintf(`{"fact":"sprayed","lawn":"L%d","applicator":"gun","by":"gallons","volume_gal":4}`, 1+j))
			}
			for _, line := range append(lines, `{"fact":"loaded","into":"a","volume_gal":12,"mix":"W","for":"gun"}`, `{"fact":"day_closed"}`) {
				if err := enter(line); err != nil {
					return err
				}
			}
		}
		return nil
	})
	if err != nil {
		b.Fatal(err)
	}
	k, err := openBook(path, false)
	if err == nil { // the last entry closed a day
		err = errors.Join(k.file().PutSnapshot(k.book.Seq(), k.book.Keep()), k.Close())
	}
	if err != nil {
		b.Fatal(err)
	}
	return path
}

// BenchmarkPastOfTenYears asks a file as a command does, from opening it to the last line.
func BenchmarkPastOfTenYears(b *testing.B) {
	path := tenYearBook(b)
	for _, args := range [][]string{
		{"status"},
		{"tally", "--by", "year"},
		{"tally", "--from", "2016-01-01"},
		{"laid", "--lawn", "L1"},
		{"journal", "--date", "2020-05-01"},
		{"journal", "--lawn", "L1", "--from", "2025-01-01"},
	} {
		b.Run(strings.Join(args, "_"), func(b *testing.B) {
			for range b.N {
				if code, _, said := call(b, "", append(args, "--book", path)...); code != 0 {
					b.Fatal(said)
				}
			}
		})
	}
}
