package past

import (
	"bytes"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/tally"
)

func TestRowsAnswerLikeTheWholeJournal(t *testing.T) {
	days, struck, laid := 0, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		k := anySeason(t)
		for range 3 {
			from, to := k.dates(t)
			now := core.Maybe[core.Moment]{V: core.Moment{Unix: k.clock + 500}, Known: rapid.Bool().Draw(t, "now")}
			k.sumsAgree(t, from, to, now)
			q := Query{From: from, To: to}
			if rapid.Bool().Draw(t, "lawn") {
				q.Lawn = rapid.SampledFrom(lawnNames).Draw(t, "of lawn")
			}
			if rapid.Bool().Draw(t, "product") {
				q.Product = rapid.SampledFrom(productNames).Draw(t, "of product")
			}
			k.laidAgree(t, q)
			k.recordsAgree(t, q)
			k.moneyAgrees(t, from, to, now)
		}
		all, _ := Find(k.b, k.kept.Read, Query{})
		days, laid = days+len(k.kept.rows)/4, laid+len(all)
		for _, e := range k.log {
			if f, strike := e.What.(*core.Struck); strike && k.opened(f.Of) {
				struck++
			}
		}
	})
	if days < 50 || struck < 5 || laid < 100 {
		t.Errorf("only %d days, %d struck openings and %d pieces laid; the generator is too poor", days, struck, laid)
	}
}

func (k *season) opened(seq int64) bool {
	if seq < 1 || seq > int64(len(k.log)) {
		return false
	}
	_, yes := k.log[seq-1].What.(*core.DayOpened)
	return yes
}

func (k *season) sumsAgree(t *rapid.T, from, to string, now core.Maybe[core.Moment]) {
	want, has := folded(t, k.log, from, to, now)
	got, ok, err := Sums(k.b, k.kept.Read, from, to, now)
	if err != nil || ok != has {
		t.Fatalf("%s to %s: %v, %v; a fold says %v", from, to, err, ok, has)
	}
	same(t, "sums", got, want)
	worksOut(t, got)
	for _, by := range []tally.By{tally.Year, tally.Month} {
		list, err := By(k.b, k.kept.Read, by, from, to, now)
		if err != nil {
			t.Fatal(err)
		}
		var sum tally.Tally
		for i, p := range list.List {
			low, high := max(p.Name+"-01-01"[:10-len(p.Name)], from), p.Name+"-99"
			if to != "" {
				high = min(high, to)
			}
			one, _ := folded(t, k.log, low, high, now)
			one.Lawns, one.With, one.In = nil, nil, nil
			same(t, "sums of "+p.Name, p.Sum, one)
			sum.Volume += p.Sum.Volume
			if i > 0 && list.List[i-1].Name >= p.Name {
				t.Fatalf("%s comes after %s", p.Name, list.List[i-1].Name)
			}
		}
		if all := list.All(); all.Sum.Volume != want.Volume || sum.Volume != want.Volume || all.Sum.Seconds != want.Seconds {
			t.Fatalf("by %s: %d, %d, all %d", by, sum.Volume, all.Sum.Volume, want.Volume)
		}
	}
}

// worksOut holds what each applicator and each hour laid against what was laid in all, to the last unit.
func worksOut(t *rapid.T, sum tally.Tally) {
	var with, in tally.Worked
	for _, w := range sum.With {
		with.Volume, with.Mass, with.Area = with.Volume+w.Volume, with.Mass+w.Mass, with.Area+w.Area
	}
	for _, w := range sum.In {
		in.Volume, in.Mass, in.Area = in.Volume+w.Volume, in.Mass+w.Mass, in.Area+w.Area
	}
	if all := (tally.Worked{Volume: sum.Volume, Mass: sum.Mass, Area: sum.Area}); with != all || in != all {
		t.Fatalf("laid in all %+v, by applicator %+v, by hour %+v", all, with, in)
	}
}

// same compares every figure, their order and the page.
func same(t *rapid.T, what string, got, want tally.Tally) {
	if a, b := fmt.Sprintf("%+v", got), fmt.Sprintf("%+v", want); a != b {
		t.Fatalf("%s: rows give\n%s\na fold gives\n%s", what, a, b)
	}
	if got.Text() != want.Text() || text(got.Document()) != text(want.Document()) {
		t.Fatalf("%s: rows give\n%s\na fold gives\n%s", what, got.Text(), want.Text())
	}
}

func (k *season) laidAgree(t *rapid.T, q Query) {
	got, err := Find(k.b, k.kept.Read, q)
	if err != nil {
		t.Fatal(err)
	}
	if want := scanned(t, k.log, q); text(got) != text(want) {
		t.Fatalf("%+v: rows give\n%s\na scan gives\n%s", q, text(got), text(want))
	}
}

// recordsAgree: rows give the records that a reader of the whole journal would have, in every field, and they hold what was laid,
// product by product, lawn by lawn, to the last unit.
func (k *season) recordsAgree(t *rapid.T, q Query) {
	list, err := Records(k.b, k.kept.Read, q)
	if err != nil {
		t.Fatal(err)
	}
	if want := recordsScanned(t, k.log, q); text(list) != text(want) {
		t.Fatalf("%+v: rows give\n%s\na scan gives\n%s", q, text(list), text(want))
	}
	laid, err := Find(k.b, k.kept.Read, q)
	if err != nil {
		t.Fatal(err)
	}
	left := map[[4]string]int64{}
	for i := range laid {
		for _, u := range laid[i].Products {
			if q.Product == "" || u.Product == q.Product {
				left[[4]string{laid[i].Date, laid[i].Lawn, laid[i].Zone, u.Product}] += u.Amount.N
			}
		}
	}
	for i := range list {
		r := &list[i]
		left[[4]string{r.Date, r.Lawn, r.Zone, r.Product}] -= r.Amount.N
	}
	for k, n := range left {
		if n != 0 {
			t.Fatalf("%v: the records are %d off", k, n)
		}
	}
}

// recordsScanned lists the records of all days by reading the whole journal: each day as it stood last, in the order of their dates.
func recordsScanned(t rapid.TB, log []core.Entry, q Query) []tally.Record {
	b := core.NewBook(1)
	var out, held []tally.Record
	var heldDay uint64
	for _, e := range log {
		if _, opens := e.What.(*core.DayOpened); opens {
			out = append(out, held...)
			held, heldDay = tally.RecordsOf(b), b.Day().Seq
		}
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
		if b.Day().Seq == heldDay {
			held = nil
		}
	}
	var some []tally.Record
	for _, r := range append(append(out, held...), tally.RecordsOf(b)...) {
		if q.records(&r) && (q.From == "" || r.Date >= q.From) && (q.To == "" || r.Date <= q.To) {
			some = append(some, r)
		}
	}
	return some
}

// TestAMissingRowIsNoticed: each row taken away, and asked for every span of whole days.
func TestAMissingRowIsNoticed(t *testing.T) {
	noticed := 0
	rapid.Check(t, func(t *rapid.T) {
		k := anySeason(t)
		if len(k.kept.rows) == 0 {
			return
		}
		var of []int // the rows that sums rest on
		for n, r := range k.kept.rows {
			if bytes.HasPrefix(r.Key, []byte(sumsPrefix)) || bytes.HasPrefix(r.Key, []byte(laidPrefix)) {
				of = append(of, n)
			}
		}
		i := rapid.SampledFrom(of).Draw(t, "row")
		gone := k.kept.rows[i]
		less := Folded{append(append([]Row(nil), k.kept.rows[:i]...), k.kept.rows[i+1:]...)}
		from, to := k.dates(t)
		want, has := folded(t, k.log, from, to, core.Maybe[core.Moment]{})
		got, ok, err := Sums(k.b, less.Read, from, to, core.Maybe[core.Moment]{})
		if err == nil {
			if ok != has {
				t.Fatalf("without %q: %v, a fold says %v", gone.Key, ok, has)
			}
			same(t, "sums", got, want)
			return
		}
		noticed++
	})
	if noticed < 10 {
		t.Errorf("noticed %d times", noticed)
	}
}
