//go:build linux

package main

import (
	"database/sql"
	"errors"
	"fmt"
	"io"

	_ "modernc.org/sqlite" // the reference; nothing else of the module knows it

	"example.com/tintline/core"
	"example.com/tintline/core/past"
	"example.com/tintline/store"
)

const tables = `CREATE TABLE entries(seq INTEGER PRIMARY KEY, date TEXT, kind TEXT, lawn TEXT, volume INTEGER, area INTEGER);
CREATE TABLE laid(seq INTEGER, date TEXT, lawn TEXT, zone TEXT, product TEXT, amount INTEGER, volume INTEGER, area INTEGER);`

// The questions that are put to both, by the name under which bench sql takes them.
var questions = map[string]string{
	"years": `SELECT substr(date,1,4), sum(volume), sum(area), count(*) FROM entries GROUP BY 1`,
	"sums":  `SELECT product, sum(amount), count(*) FROM laid WHERE date BETWEEN ? AND ? GROUP BY product`,
	"lawn":  `SELECT date, zone, product, amount, volume, area FROM laid WHERE lawn = ? ORDER BY seq`,
}

// sqlBook makes the same rows as the book has: one an entry, and one for each product on each zone. Only rows from one
// entry on, up to another, are taken.
func sqlBook(path, book string, upTo uint64, index bool) error {
	db, err := sql.Open("sqlite", path)
	if err != nil {
		return err
	}
	db.SetMaxOpenConns(1)
	for _, q := range []string{"PRAGMA journal_mode=OFF", "PRAGMA synchronous=OFF", tables} {
		if _, err := db.Exec(q); err != nil {
			return err
		}
	}
	s, err := store.Open(book, store.Options{ReadOnly: true})
	if err != nil {
		return err
	}
	tx, err := db.Begin()
	if err != nil {
		return err
	}
	err = errors.Join(entryRows(tx, s, upTo), laidRows(tx, s), tx.Commit())
	if index && err == nil {
		_, err = db.Exec("CREATE INDEX byLawn ON laid(lawn); CREATE INDEX byDate ON laid(date)")
	}
	return errors.Join(err, s.Close(), db.Close())
}

func entryRows(tx *sql.Tx, s *store.Store, upTo uint64) error {
	insert, err := tx.Prepare("INSERT INTO entries VALUES(?,?,?,?,?,?)")
	if err != nil {
		return err
	}
	date := ""
	err = s.Each(1, func(r store.Record) error {
		if r.Number > upTo {
			return io.EOF
		}
		e, err := core.Decode(r.Number, r.Action, r.Body)
		if err != nil {
			return err
		}
		var volume, area int64
		switch f := e.What.(type) {
		case *core.DayOpened:
			date = f.Date
		case *core.Sprayed:
			volume, area = int64(f.Volume.V), int64(f.Area.V)
		}
		_, err = insert.Exec(int64(e.Seq), date, e.What.Name(), core.LawnOf(e.What), volume, area)
		return err
	})
	if errors.Is(err, io.EOF) {
		err = nil
	}
	return err
}

func laidRows(tx *sql.Tx, s *store.Store) error {
	insert, err := tx.Prepare("INSERT INTO laid VALUES(?,?,?,?,?,?,?,?)")
	if err != nil {
		return err
	}
	b, err := taken(s)
	if err != nil {
		return err
	}
	list, err := past.Find(b, s.Rows, past.Query{})
	if err != nil {
		return err
	}
	for _, l := range list {
		for _, u := range l.Products {
			if _, err := insert.Exec(int64(l.Seq), l.Date, l.Lawn, l.Zone, u.Product, u.Amount.N, int64(l.Volume), int64(l.Area)); err != nil {
				return err
			}
		}
	}
	return nil
}

// sqlCommand asks one question: bench sql FILE QUESTION [VALUE...]. It is a process of its own, as tintline is.
func sqlCommand(args []string, out io.Writer) error {
	if len(args) < 2 || questions[args[1]] == "" {
		return fmt.Errorf("name a file and one of years, sums, lawn")
	}
	db, err := sql.Open("sqlite", args[0])
	if err != nil {
		return err
	}
	defer db.Close()
	var values []any
	for _, v := range args[2:] {
		values = append(values, v)
	}
	rows, err := db.Query(questions[args[1]], values...)
	if err != nil {
		return err
	}
	defer rows.Close()
	names, err := rows.Columns()
	if err != nil {
		return err
	}
	cells, to := make([]any, len(names)), make([]any, len(names))
	for i := range cells {
		to[i] = &cells[i]
	}
	for rows.Next() {
		if err := rows.Scan(to...); err != nil {
			return err
		}
		if _, err := fmt.Fprintln(out, cells...); err != nil {
			return err
		}
	}
	return rows.Err()
}
