package past

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/tally"
)

// tenYears are the rows of so many days: each is one of three real ones, with 25 lawns, under another date.
func tenYears(b *testing.B) (*core.Book, *Folded) {
	b.Helper()
	const days, lawns = 2200, 25
	k := newSeason(b)
	for i := range lawns {
		k.must(b, fmt.Sprintf(`{"fact":"lawn","name":"%d Example Lane","zones":[{"name":"front","grass":"tall_fescue","area_sqft":3000},{"name":"back","grass":"tall_fescue","area_sqft":2000}]}`, i))
	}
	for range 3 {
		k.date = k.date.AddDate(0, 0, 1)
		if err := k.open(); err != nil {
			b.Fatal(err)
		}
		k.must(b, `{"fact":"loaded","into":"a","volume_gal":110,"mix":"W","for":"gun"}`)
		for i := range lawns {
			k.must(b, fmt.Sprintf(`{"fact":"sprayed","lawn":"%d Example Lane","applicator":"gun","by":"gallons","volume_gal":5}`, i))
		}
		k.must(b, `{"fact":"day_closed"}`)
	}
	list := [3][]Laid{}
	sums := [3]tally.Tally{}
	for i := range list {
		d := &day{}
		row := k.kept.rows[i]
		r := &reader{b: row.Value, known: texts{}}
		h := r.head(laidPrefix, row.Key)
		r.tables(h, d)
		if err := r.pieces(d); err != nil {
			b.Fatal(err)
		}
		list[i] = d.laid
		row = k.kept.rows[len(k.kept.rows)-3+i]
		r = &reader{b: row.Value, known: texts{}}
		if err := r.sums(r.head(sumsPrefix, row.Key), &sums[i]); err != nil {
			b.Fatal(err)
		}
	}
	out, h := &Folded{}, head{}
	first := time.Date(2016, 1, 1, 0, 0, 0, 0, time.UTC)
	size := 0
	for i := range days {
		h.before, h.beforeDate = h.opened, h.date
		h.opened, h.date = uint64(1+i*250), first.AddDate(0, 0, i/220*365+i%220).Format(time.DateOnly)
		s := encodeSums(h, &sums[i%3])
		out.rows = append(out.rows, Row{SumsKey(h.date, h.opened), s})
		size += len(s)
	}
	sumsSize := size
	h = head{}
	for i := range days {
		h.before, h.beforeDate = h.opened, h.date
		h.opened, h.date = uint64(1+i*250), first.AddDate(0, 0, i/220*365+i%220).Format(time.DateOnly)
		l := encodeLaid(h, "R. Example", list[i%3])
		out.rows = append(out.rows, Row{LaidKey(h.date, h.opened), l})
		size += len(l)
	}
	b.Logf("%d bytes of sums and %d of what was laid a day", sumsSize/days, (size-sumsSize)/days)
	book := core.NewBook(1)
	es, err := book.Prepare("", core.Moment{Unix: 1_990_000_000}, &core.DayOpened{Date: "2030-01-01", Operator: "R. Example"})
	if err != nil {
		b.Fatal(err)
	}
	if err := book.Apply(es[0]); err != nil {
		b.Fatal(err)
	}
	*book.Day() = core.Day{Date: "2030-01-01", Open: true, Seq: h.opened + 250, Before: h.opened, BeforeDate: h.date}
	return book, out
}

// BenchmarkTenYears reads 2,200 days, without the file: what the sums by year, all sums with each lawn, and one lawn cost.
func BenchmarkTenYears(b *testing.B) {
	book, rows := tenYears(b)
	for _, ask := range []struct {
		name string
		f    func() error
	}{
		{"by_year", func() error {
			p, err := By(book, rows.Read, tally.Year, "", "", core.Maybe[core.Moment]{})
			if len(p.List) < 10 {
				b.Fatal(len(p.List), err)
			}
			return err
		}},
		{"sums", func() error {
			_, _, err := Sums(book, rows.Read, "", "", core.Maybe[core.Moment]{})
			return err
		}},
		{"one_lawn", func() error {
			_, err := Find(book, rows.Read, Query{Lawn: "7 Example Lane"})
			return err
		}},
		{"lawn_of_none", func() error {
			_, err := Find(book, rows.Read, Query{Lawn: strings.Repeat("x", 9)})
			return err
		}},
	} {
		b.Run(ask.name, func(b *testing.B) {
			b.ReportAllocs()
			for range b.N {
				if err := ask.f(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
