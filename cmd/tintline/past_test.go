package main

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
	"example.com/tintline/core/tally"
	"example.com/tintline/store"
)

var pastSetUp = `
{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"warm","capacity_gal":300,"heel_gal":2},{"letter":"b","name":"cool","capacity_gal":160,"heel_gal":2}],"cell_gal":0.2,"return_line_gal":0.1,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.5,"flow_gpm":2.5},{"name":"spreader","kind":"spreader","hopper_lb":50}]}
{"fact":"product","name":"weed","form":"liquid","kind":"herbicide","grasses":["tall_fescue"]}
{"fact":"product","name":"food","form":"dry","grasses":["all_turf"],"rate_low_lb_per_1000_sqft":3,"rate_high_lb_per_1000_sqft":3}
{"fact":"mix","name":"W","parts":[{"product":"weed","rate_fl_oz_per_1000_sqft":1.2}]}
{"fact":"mix","name":"F","parts":[{"product":"food","rate_lb_per_1000_sqft":3}]}
{"fact":"lawn","name":"L1","zones":[{"name":"front","grass":"tall_fescue","area_sqft":4000},{"name":"back","grass":"tall_fescue","area_sqft":3401}]}
{"fact":"lawn","name":"L2","zones":[{"name":"all","grass":"tall_fescue","area_sqft":5203}]}
{"fact":"lawn","name":"L3","zones":[{"name":"all","grass":"tall_fescue","area_sqft":203}]}
{"fact":"loaded","into":"a","volume_gal":250,"mix":"W","for":"gun"}
{"fact":"lined_up","supply":["a"],"return":"a"}
`

// pastBook is a book in a file, written by chance: days left open, openings struck, days ended twice, work after a close,
// strikes of that from within the next day, many lawns in one strike, a clock set back.
func pastBook(t *testing.T, seed int64) *keptBook {
	t.Helper()
	r := rand.New(rand.NewSource(seed))
	k := &keptBook{path: filepath.Join(t.TempDir(), "truck.db"), book: core.NewBook(1)}
	clock := int64(1_780_000_000)
	enter := func(line string) bool {
		l, err := core.DecodeLine([]byte(line))
		if err != nil {
			t.Fatalf("%s: %v", line, err)
		}
		clock += int64(r.Intn(900))
		es, err := k.book.Prepare("", core.Moment{Unix: clock}, l.Fact)
		if err != nil {
			return false
		}
		if err := k.write(fmt.Sprint("action ", es[0].Seq), es); err != nil {
			t.Fatal(err)
		}
		return true
	}
	for _, line := range strings.Split(strings.TrimSpace(pastSetUp), "\n") {
		if !enter(line) {
			t.Fatal(line)
		}
	}
	date := time.Date(2025, 11, 1, 0, 0, 0, 0, time.UTC)
	some := func() {
		lawn := fmt.Sprint("L", 1+r.Intn(3))
		switch last := k.book.Seq(); r.Intn(9) {
		case 0:
			enter(fmt.Sprintf(`{"fact":"spread","lawn":%q,"applicator":"spreader","product":"food","amount_lb":%d}`, lawn, 1+r.Intn(5)))
		case 1, 2:
			enter(fmt.Sprintf(`{"fact":"struck","of":%d}`, last-uint64(r.Intn(4))))
		case 3:
			if since := k.book.Since(); len(since) > 4 {
				n := since[len(since)-5:]
				enter(fmt.Sprintf(`{"fact":"struck","of":%d,"also":[%d,%d,%d,%d]}`, n[0].Seq, n[1].Seq, n[2].Seq, n[3].Seq, n[4].Seq))
			}
		case 4:
			enter(fmt.Sprintf(`{"fact":"struck","of":%d,"instead":{"fact":"sprayed","lawn":%q,"applicator":"gun","by":"gallons","volume_gal":0.7}}`, last-uint64(r.Intn(2)), lawn))
		case 5:
			enter(fmt.Sprintf(`{"fact":"noted","lawn":%q,"text":"gate"}`, lawn))
		default:
			enter(fmt.Sprintf(`{"fact":"sprayed","lawn":%q,"applicator":"gun","by":"gallons","volume_gal":%d.25}`, lawn, 1+r.Intn(4)))
		}
	}
	for range 8 {
		clock += 40_000
		if r.Intn(4) == 0 {
			clock -= 300_000
		}
		date = date.AddDate(0, 0, 1+r.Intn(20))
		enter(fmt.Sprintf(`{"fact":"day_opened","date":%q,"operator":"R. Example"}`, date.Format(time.DateOnly)))
		if r.Intn(4) == 0 {
			enter(fmt.Sprintf(`{"fact":"struck","of":%d}`, k.book.Seq()))
		}
		for range r.Intn(9) {
			some()
		}
		if r.Intn(3) > 0 {
			enter(`{"fact":"day_closed"}`)
			for range r.Intn(4) {
				some()
			}
		}
	}
	return k
}

// whole reads the journal from end to end, as if there were no keys: all strikes first, then the entries.
func (k *keptBook) whole(t *testing.T, w wanted) string {
	t.Helper()
	struck := map[uint64]uint64{}
	var all []core.Entry
	var keys [][][]byte
	err := k.file().Each(1, func(r store.Record) error {
		e, err := core.Decode(r.Number, r.Action, r.Body)
		if f, ok := e.What.(*core.Struck); ok {
			for _, n := range append([]int64{f.Of}, f.Also...) {
				if struck[uint64(n)] == 0 {
					struck[uint64(n)] = e.Seq
				}
			}
		}
		all, keys = append(all, e), append(keys, r.Keys)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	printed := map[uint64]bool{}
	for i, e := range all {
		inDays, onLawn := w.from == "" && w.to == "", w.lawn == ""
		for _, key := range keys[i] {
			if d, ok := strings.CutPrefix(string(key), "day/"); ok && (w.from == "" || d >= w.from) && (w.to == "" || d <= w.to) {
				inDays = true
			}
			onLawn = onLawn || string(key) == "lawn/"+w.lawn
		}
		strikesOne := false
		if f, ok := e.What.(*core.Struck); ok && w.lawn != "" {
			for _, n := range append([]int64{f.Of}, f.Also...) {
				strikesOne = strikesOne || printed[uint64(n)]
			}
		}
		if e.Seq >= w.since && (inDays && onLawn || strikesOne) {
			printed[e.Seq] = true
			out.WriteString(entryLine(e, struck[e.Seq]))
		}
	}
	return out.String()
}

func TestJournalByKeysIsTheWholeJournal(t *testing.T) {
	marked, many, across := 0, 0, 0
	for seed := range int64(8) {
		k := pastBook(t, seed)
		dates, dayOf := map[string]bool{}, map[int64]string{}
		_ = k.file().Each(1, func(r store.Record) error {
			for _, key := range r.Keys {
				if d, ok := bytes.CutPrefix(key, []byte("day/")); ok {
					dates[string(d)], dayOf[int64(r.Number)] = true, string(d)
					e, _ := core.Decode(r.Number, r.Action, r.Body)
					if f, strike := e.What.(*core.Struck); strike && dayOf[f.Of] != string(d) {
						across++
					}
				}
				if bytes.Equal(key, core.ManyLawnsKey()) {
					many++
				}
			}
			return nil
		})
		asks := []wanted{{}, {since: 14}, {from: "2025-11-10", to: "2025-12-05"}, {from: "2025-11-20"}, {to: "2025-12-24"}}
		for d := range dates {
			asks = append(asks, wanted{from: d, to: d}, wanted{from: d, to: d, since: 30})
		}
		for _, l := range []string{"L1", "L2", "L3", "none"} {
			asks = append(asks, wanted{lawn: l}, wanted{lawn: l, from: "2025-11-20"}, wanted{lawn: l, since: 40})
		}
		for _, w := range asks {
			var got strings.Builder
			if err := k.marked(w, func(e core.Entry, by uint64) error { got.WriteString(entryLine(e, by)); return nil }); err != nil {
				t.Fatal(err)
			}
			want := k.whole(t, w)
			if got.String() != want {
				t.Fatalf("seed %d, %+v: by keys\n%s\nread whole\n%s", seed, w, got.String(), want)
			}
			marked += strings.Count(want, "[struck by")
		}
		if err := k.Close(); err != nil {
			t.Fatal(err)
		}
	}
	if marked < 100 || many == 0 || across == 0 {
		t.Errorf("%d struck entries were printed, %d strikes were of many lawns, %d stand under another day than what they strike; the books are too poor", marked, many, across)
	}
}

func TestPastDaysOfAFileAreThoseOfAFold(t *testing.T) {
	for seed := range int64(3) {
		k := pastBook(t, seed)
		all, err := k.foldRows()
		if err != nil {
			t.Fatal(err)
		}
		var kept, made strings.Builder
		_ = k.file().Rows(nil, nil, func(key, value []byte) error { fmt.Fprintf(&kept, "%q %x\n", key, value); return nil })
		_ = all.Each(func(r past.Row) error { fmt.Fprintf(&made, "%q %x\n", r.Key, r.Value); return nil })
		if kept.String() != made.String() || kept.Len() == 0 {
			t.Fatalf("the file keeps\n%s\nthe entries come to\n%s", kept.String(), made.String())
		}
		for _, span := range [][2]string{{"", ""}, {"2025-11-05", ""}, {"2025-11-10", "2025-12-10"}, {"", "2025-12-01"}, {"2026-01-01", "2026-12-31"}} {
			s := tally.Span{From: span[0], To: span[1]}
			b := core.NewBook(1)
			_ = k.file().Each(1, func(r store.Record) error {
				e, _ := core.Decode(r.Number, r.Action, r.Body)
				s.Before(b, e)
				_ = b.Apply(e)
				s.After(b, e)
				return nil
			})
			want, has := s.Sum(b)
			got, ok, err := past.Sums(k.book, k.file().Rows, span[0], span[1], core.Maybe[core.Moment]{})
			if err != nil || ok != has || (ok && got.Text() != want.Text()) {
				t.Fatalf("%v: %v, rows give\n%s\na fold gives\n%s", span, err, got.Text(), want.Text())
			}
		}
		if err := k.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

// TestRowsThatDoNotFitAreSaid: a file whose rows are missing gives the same sums, by its entries, and says so.
func TestRowsThatDoNotFitAreSaid(t *testing.T) {
	k := pastBook(t, 1)
	bare := filepath.Join(t.TempDir(), "bare.db")
	err := store.CreateWith(bare, "bare", storeOptions(false), func(add func(string, []store.Item) error) error {
		return k.file().Each(1, func(r store.Record) error {
			return add(r.Action, []store.Item{{Body: r.Body, Keys: r.Keys}})
		})
	})
	if err := errors.Join(err, k.Close()); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"tally", "--from", "2025-01-01"}, {"tally", "--by", "month"}, {"laid"}, {"laid", "--lawn", "L1", "--json"}} {
		code, want, said := call(t, "", append(args, "--book", k.path)...)
		if code != 0 || said != "" || want == "" {
			t.Fatalf("%v: %d, %s", args, code, said)
		}
		code, got, said := call(t, "", append(args, "--book", bare)...)
		if code != 0 || got != want {
			t.Errorf("%v without rows: %d, %s\n%s\nwant\n%s", args, code, said, got, want)
		}
		if quiet := args[len(args)-1] == "--json"; quiet == strings.Contains(said, "they were worked out from the entries instead") {
			t.Errorf("%v without rows says %q", args, said)
		}
	}
}

// TestEarlierBooksAreAskedByTheirEntries: a file of the first format keeps no rows; its sums are those of its entries.
func TestEarlierBooksAreAskedByTheirEntries(t *testing.T) {
	for _, name := range earlier {
		book := earlierBook(t, name)
		code, all, said := call(t, "", "tally", "--from", "2000-01-01", "--book", book)
		if code != 0 || said != "" || !strings.Contains(all, "gal") {
			t.Errorf("%s: %d, %s%s", book, code, all, said)
		}
		if code, by, said := call(t, "", "tally", "--by", "year", "--book", book); code != 0 || said != "" || !strings.Contains(by, "year") {
			t.Errorf("%s: %d, %s%s", book, code, by, said)
		}
	}
}
