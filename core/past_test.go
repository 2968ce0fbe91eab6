package core_test

import (
	"fmt"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
	"example.com/tintline/core/tally"
)

// TestRowsOfAnyJournal: over journals by chance what is asked of the rows is what a reading of all entries gives.
func TestRowsOfAnyJournal(t *testing.T) {
	days := 0
	rapid.Check(t, func(t *rapid.T) {
		log := core.AnyJournal(t, 150)
		date := func(what string) string {
			if rapid.Bool().Draw(t, what) {
				return ""
			}
			return time.Date(2026, 1, 1+rapid.IntRange(0, 2000).Draw(t, what), 0, 0, 0, 0, time.UTC).Format(time.DateOnly)
		}
		from, to := date("from"), date("to")
		if to != "" && from > to {
			from, to = to, from
		}
		span := tally.Span{From: from, To: to}
		whole, b, kept := core.NewBook(3), core.NewBook(3), &past.Folded{}
		for _, e := range log {
			span.Before(whole, e)
			if err := whole.Apply(e); err != nil {
				t.Fatal(err)
			}
			span.After(whole, e)
			if err := kept.Apply(b, e); err != nil {
				t.Fatal(err)
			}
		}
		want, has := span.Sum(whole)
		got, ok, err := past.Sums(b, kept.Read, from, to, core.Maybe[core.Moment]{})
		if err != nil || ok != has || fmt.Sprintf("%+v", got) != fmt.Sprintf("%+v", want) || got.Text() != want.Text() {
			t.Fatalf("%s to %s: %v, rows give\n%s\na fold gives\n%s", from, to, err, got.Text(), want.Text())
		}
		_ = kept.Each(func(past.Row) error { days++; return nil })
	})
	if days < 200 {
		t.Errorf("only %d rows were kept; the journals are too short", days)
	}
}
