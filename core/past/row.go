package past

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/tally"
)

// Row is what the store keeps under an opaque key.
type Row struct{ Key, Value []byte }

// Reader walks rows in the order of their keys, to exclusive; nil has no bound. An error of f ends it and comes back.
type Reader func(from, to []byte, f func(key, value []byte) error) error

var (
	// ErrForm marks bytes that are no row of this version.
	ErrForm = errors.New("the row cannot be read")
	// ErrFit marks rows that are not those of this book: one is missing, or out of order.
	ErrFit = errors.New("the rows of past days do not fit the book")
)

// The first parts of the keys.
const (
	sumsPrefix = "sums/"
	laidPrefix = "laid/"
)

const dateLength = len(time.DateOnly)

// SumsKey is the key of the sums of a day: rows sort by date, then by the entry that opened the day.
func SumsKey(date string, opened uint64) []byte { return dayKey(sumsPrefix, date, opened) }

// LaidKey is the key of what was laid on a day.
func LaidKey(date string, opened uint64) []byte { return dayKey(laidPrefix, date, opened) }

func dayKey(prefix, date string, opened uint64) []byte {
	return binary.BigEndian.AppendUint64([]byte(prefix+date+"/"), opened)
}

// keyDay reads a key back.
func keyDay(prefix string, key []byte) (date []byte, opened uint64, err error) {
	n := len(prefix) + dateLength
	if len(key) != n+9 || !bytes.HasPrefix(key, []byte(prefix)) || key[n] != '/' || !isDate(key[len(prefix):n]) {
		return nil, 0, fmt.Errorf("%w: the key %q", ErrForm, key)
	}
	return key[len(prefix):n], binary.BigEndian.Uint64(key[n+1:]), nil
}

// isDate tells whether a text can stand in a key. What the calendar says of it is not asked: entries of any version apply.
func isDate(b []byte) bool {
	if len(b) != dateLength || b[4] != '-' || b[7] != '-' {
		return false
	}
	for i, c := range b {
		if i != 4 && i != 7 && (c < '0' || c > '9') {
			return false
		}
	}
	return true
}

// span are the bounds of the rows from one date to another, both inclusive; an empty date has none. It goes on behind the
// last date, so that the first row after it can say whether one is missing before it.
func span(prefix, from string) (low, high []byte) {
	low = []byte(prefix + from)
	high = []byte(prefix)
	high[len(high)-1]++
	return low, high
}

// Apply adds an entry to the book and gives the rows that are to be kept with it; none for most entries.
func Apply(b *core.Book, e core.Entry) ([]Row, error) {
	var rows []Row
	if _, opens := e.What.(*core.DayOpened); opens {
		rows = Rows(b)
	}
	if err := b.Apply(e); err != nil {
		return nil, err
	}
	if _, closes := e.What.(*core.DayClosed); closes {
		rows = Rows(b)
	}
	return rows, nil
}

// Outdated tells whether rows are those of an earlier program, which kept less of a day: the first day has no record, or its row is of
// another form. They are right as far as they go, and the whole is made anew from the entries.
func Outdated(read Reader) (bool, error) {
	var places [2][]byte
	other := false
	for i, prefix := range []string{laidPrefix, recordPrefix} {
		low, high := span(prefix, "")
		err := read(low, high, func(key, value []byte) error {
			places[i] = bytes.Clone(key[len(prefix):])
			other = other || len(value) > 0 && value[0] < form
			return errEnough
		})
		if err != nil && !errors.Is(err, errEnough) {
			return false, err
		}
	}
	return places[0] != nil && (other || !bytes.Equal(places[0], places[1])), nil
}

// Ends tells whether Apply gives rows for such a fact.
func Ends(f core.Fact) bool {
	switch f.(type) {
	case *core.DayOpened, *core.DayClosed:
		return true
	}
	return false
}

// Rows are those of the book's own day as it stands; none before the first day.
func Rows(b *core.Book) []Row {
	d := b.Day()
	if d.Seq == 0 || !isDate([]byte(d.Date)) {
		return nil
	}
	h := head{date: d.Date, opened: d.Seq, before: d.Before, beforeDate: d.BeforeDate}
	t := tally.Close(b, core.Maybe[core.Moment]{})
	return []Row{
		{LaidKey(d.Date, d.Seq), encodeLaid(h, d.Operator, ofDay(b))},
		{MoneyKey(d.Date, d.Seq), encodeEarned(h, tally.EarnedOn(b, core.Maybe[core.Moment]{}))},
		{RecordKey(d.Date, d.Seq), encodeRecords(h, tally.RecordsOf(b))},
		{SumsKey(d.Date, d.Seq), encodeSums(h, &t)},
	}
}
