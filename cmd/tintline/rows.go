package main

import (
	"errors"
	"fmt"
	"slices"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
	"example.com/tintline/store"
)

// storeRows are rows as the file keeps them.
func storeRows(rows []past.Row) []store.Row {
	out := make([]store.Row, len(rows))
	for i, r := range rows {
		out[i] = store.Row{Key: r.Key, Value: r.Value}
	}
	return out
}

// endsDay tells whether an action may end a day: then it brings rows and a close to be kept.
func endsDay(entries []core.Entry) bool {
	return slices.ContainsFunc(entries, func(e core.Entry) bool { return past.Ends(e.What) })
}

// rowsWith gives the items the rows that their entries end, on a book of its own: this one changes only when they are on
// the disk. Most actions end no day and cost nothing here.
func (k *keptBook) rowsWith(entries []core.Entry, out []store.Item) ([]store.Item, error) {
	if !endsDay(entries) {
		return out, nil
	}
	b := k.book.Clone()
	for i := range entries {
		rows, err := past.Apply(b, entries[i])
		if err != nil {
			return nil, k.unreadable(err)
		}
		out[i].Rows = storeRows(rows)
	}
	return out, nil
}

// applying adds entries to a book that is made anew, and gathers the rows that each of them ends.
type applying struct {
	b    *core.Book
	rows [][]past.Row
}

func (a *applying) apply(e core.Entry) error {
	rows, err := past.Apply(a.b, e)
	a.rows = append(a.rows, rows)
	return err
}

// items are the entries applied, as the file keeps them.
func (a *applying) items(entries []core.Entry) []store.Item {
	out := items(entries)
	for i := range out {
		out[i].Rows = storeRows(a.rows[i])
	}
	return out
}

// pastDays asks the file's rows of past days. Where it has none, or where they do not fit, it adds up the whole journal
// instead and says so.
func (a *app) pastDays(k *keptBook, ask func(past.Reader) error) error {
	err := ask(k.file().Rows)
	switch {
	case err == nil:
		return nil
	case errors.Is(err, store.ErrNoRows): // a book of before: each question is a reading
	case errors.Is(err, past.ErrFit), errors.Is(err, past.ErrForm):
		if old, _ := past.Outdated(k.file().Rows); !old && !a.flags.json {
			_, _ = fmt.Fprintf(a.stderr, "The sums kept beside the entries of %s do not fit them (%v); they were worked out from the entries instead.\n", k.path, err)
		}
	default:
		return err
	}
	all, err := k.foldRows()
	if err != nil {
		return err
	}
	return ask(all.Read)
}

// foldRows makes the rows from the entries.
func (k *keptBook) foldRows() (*past.Folded, error) {
	all, b := &past.Folded{}, core.NewBook(newBookTruck)
	err := k.file().Each(1, func(r store.Record) error {
		e, err := core.Decode(r.Number, r.Action, r.Body)
		if err == nil {
			err = all.Apply(b, e)
		}
		if err != nil {
			return k.unreadable(err)
		}
		return nil
	})
	return all, err
}

// Years adds up what went down in past years, for the screen. It reads the file alone: the book goes on meanwhile.
func (j screenJournal) Years(own core.Day, q past.Query) ([]past.Year, error) {
	file := j.file()
	if file == nil {
		return nil, nil
	}
	var list []past.Laid
	err := j.Days(func(read past.Reader) (err error) {
		list, err = past.Earlier(own, read, q)
		return err
	})
	return q.Years(list), err
}

// Days hands the rows of ended days to a question of the screen, beside it. Rows that do not fit are made anew from the entries, which takes
// seconds and holds nothing up; the question is asked again then.
func (j screenJournal) Days(ask func(past.Reader) error) error {
	file := j.file()
	if file == nil { // no action was written yet
		return ask((&past.Folded{}).Read)
	}
	err := ask(file.Rows)
	if errors.Is(err, store.ErrNoRows) || errors.Is(err, past.ErrFit) || errors.Is(err, past.ErrForm) {
		var all *past.Folded
		if all, err = j.foldRows(); err == nil {
			err = ask(all.Read)
		}
	}
	if err != nil {
		return told{explain(err)}
	}
	return nil
}
