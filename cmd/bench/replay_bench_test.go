//go:build linux

package main

import (
	"database/sql"
	"path/filepath"
	"testing"
)

// BenchmarkReplay folds a book and sets it against SQL sums by year over the same rows.
func BenchmarkReplay(b *testing.B) {
	p := plan{years: 1, days: 10, visits: 25, lawns: 60, changeovers: 4, seed: 1}
	path, m := builtBook(b, p)
	t := &bed{ten: path, entries: m.book.Seq()}
	rows := filepath.Join(b.TempDir(), "rows.sqlite")
	if err := sqlBook(rows, path, t.entries, false); err != nil {
		b.Fatal(err)
	}
	db, err := sql.Open("sqlite", rows)
	if err != nil {
		b.Fatal(err)
	}
	defer db.Close()
	var ours, theirs, reads []float64
	for b.Loop() {
		decoded, folded, err := t.fold(t.entries)
		if err != nil {
			b.Fatal(err)
		}
		sums, err := timed(func() error { _, err := db.Exec(questions["years"]); return err })()
		if err != nil {
			b.Fatal(err)
		}
		ours, theirs, reads = append(ours, (decoded+folded).Seconds()), append(theirs, sums), append(reads, decoded.Seconds())
	}
	b.ReportMetric(median(ours)/float64(t.entries)*1e9, "ns/entry")
	b.ReportMetric(median(reads)/median(ours), "read/rebuild")
	b.ReportMetric(median(ours)/median(theirs), "rebuild/sql")
}
