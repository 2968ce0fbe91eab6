package season

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// TestSumsAreTheAccounts: what a random year put down, added up by lawn, by product, by grass, by round and by day, is what stands in
// the accounts of the zones, to the last unit.
func TestSumsAreTheAccounts(t *testing.T) {
	pieces := 0
	rapid.Check(t, func(t *rapid.T) {
		b := newBook(t)
		date := time.Date(2026, 2, 1, 0, 0, 0, 0, time.UTC)
		for range rapid.IntRange(1, 6).Draw(t, "days") {
			date = date.AddDate(0, 0, rapid.IntRange(1, 40).Draw(t, "later"))
			b.must(fmt.Sprintf(`{"fact":"day_opened","date":%q,"operator":"R. Example"}`, date.Format(time.DateOnly)))
			for range rapid.IntRange(0, 4).Draw(t, "pieces") {
				lawn := rapid.SampledFrom([]string{"418 Alder", "77 Fir"}).Draw(t, "lawn")
				line := fmt.Sprintf(`{"fact":"sprayed","lawn":%q,"applicator":"gun","by":"gallons","volume_gal":%.3f}`, lawn, rapid.Float64Range(0.01, 15).Draw(t, "gal"))
				if rapid.Bool().Draw(t, "dry") {
					line = fmt.Sprintf(`{"fact":"spread","lawn":%q,"applicator":"spreader","product":"food","amount_lb":%.3f}`, lawn, rapid.Float64Range(0.1, 30).Draw(t, "lb"))
				}
				if b.enter(line) == nil {
					pieces++
				}
			}
		}
		sumsAgree(t, b, b.season("", date.Format(time.DateOnly)))
	})
	if pieces < 100 {
		t.Errorf("only %d pieces; the generator is too poor", pieces)
	}
}

func sumsAgree(t *rapid.T, b *book, s *Season) {
	account := map[string]int64{}
	var gone measure.Volume
	for _, a := range b.Plumbing().Accounts() {
		if kind, _ := a.Place.Split(); kind == "zone" {
			gone += a.Volume
			for _, p := range a.Products {
				account[b.ProductByKey(p.Key).ProductName] += p.N
			}
		}
	}
	lawns, products := map[string]int64{}, map[string]int64{}
	var byLawn, byGrass, byRound, byDay Sums
	for i := range s.Lawns {
		byLawn.add(s.Lawns[i].Sums)
		for _, z := range s.Lawns[i].Zones {
			for _, u := range z.Used {
				lawns[u.Product] += u.Amount.N
			}
		}
	}
	for i := range s.Products {
		if n := s.Products[i].Amount.N; n != 0 {
			products[s.Products[i].Product] = n
		}
	}
	for _, c := range s.Grasses {
		byGrass.add(c.Sums)
	}
	for _, c := range s.Rounds {
		byRound.add(c.Sums)
	}
	for _, d := range s.Days {
		byDay.add(d.Sums)
	}
	if fmt.Sprint(lawns) != fmt.Sprint(account) || fmt.Sprint(products) != fmt.Sprint(account) {
		t.Fatalf("by lawn %v, by product %v, in the accounts %v", lawns, products, account)
	}
	if s.All.Volume != gone {
		t.Fatalf("%d nL sprayed, %d in the accounts", s.All.Volume, gone)
	}
	for _, o := range []Sums{byLawn, byGrass, byRound, byDay} {
		if o != s.All {
			t.Fatalf("%+v, all %+v", o, s.All)
		}
	}
}

// TestWhatIsLeftGoesWithoutAStop: the verdict of the rule turns at what the season says the label still allows, whichever limit it comes
// from: most of the product, most of an active, or times.
func TestWhatIsLeftGoesWithoutAStop(t *testing.T) {
	turned, full := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		b := newBook(t)
		most, active := rapid.Float64Range(0.6, 4).Draw(t, "most"), rapid.Float64Range(0.5, 6).Draw(t, "active")
		label := `{"fact":"product","name":"warm weed","form":"liquid","kind":"herbicide","grasses":["all_turf"],"rate_low_fl_oz_per_1000_sqft":0.01`
		if rapid.Bool().Draw(t, "most known") {
			label += fmt.Sprintf(`,"most_year_fl_oz_per_1000_sqft":%.3f`, most)
		}
		label += fmt.Sprintf(`,"actives":[{"name":"prodiamine","lb_per_gal":4,"most_year_lb_per_acre":%.3f}]`, active)
		if rapid.Bool().Draw(t, "times known") {
			label += fmt.Sprintf(`,"most_times":%d`, rapid.IntRange(1, 4).Draw(t, "times"))
		}
		b.must(label + "}")
		date := time.Date(2026, 2, 1, 0, 0, 0, 0, time.UTC)
		for range rapid.IntRange(0, 3).Draw(t, "days") {
			date = date.AddDate(0, 0, rapid.IntRange(1, 40).Draw(t, "later"))
			b.on(date.Format(time.DateOnly), fmt.Sprintf(`{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"gallons","volume_gal":%.2f}`, rapid.Float64Range(0.5, 9).Draw(t, "gal")))
		}
		date = date.AddDate(0, 0, 1)
		b.must(fmt.Sprintf(`{"fact":"day_opened","date":%q,"operator":"R. Example"}`, date.Format(time.DateOnly)))
		k, _ := b.ProductKey("warm weed")
		left, by := b.Season("77 Fir", "all", date.Format(time.DateOnly), nil).MostMore(k)
		if !left.Known || by == "" {
			t.Fatalf("left %+v of %q", left, by)
		}
		oz, _ := left.V.In("fl_oz_per_1000_sqft")
		if oz < 0.02 {
			full++
			if w := b.verdict(t, 0.05); w != check.Stop {
				t.Fatalf("nothing is left, and the verdict is %v", w)
			}
			return
		}
		turned++
		if w := b.verdict(t, oz*0.999); w == check.Stop {
			t.Fatalf("%.4f fl oz are left, and a little less is a stop", oz)
		}
		// The rule allows for the rounding of rates: half a per cent of the limit.
		limit := oz + float64(spent(b, k, date.Format(time.DateOnly)))
		if w := b.verdict(t, oz+float64(0.012*limit)); w != check.Stop {
			t.Fatalf("%.4f of %.4f fl oz are left, and a little more is no stop: %v", oz, limit, w)
		}
	})
	if turned < 20 || full < 2 {
		t.Errorf("turned %d times, full %d: the generator is too poor", turned, full)
	}
}

// spent is what went down in the year, in fl oz per 1,000 sq ft.
func spent(b *book, k int32, date string) float64 {
	f, err := b.Season("77 Fir", "all", date, nil).Product(k).AtLeast.In("fl_oz_per_1000_sqft")
	if err != nil {
		return math.NaN()
	}
	return f
}

// verdict is how heavy the season's rule is on a rate.
func (b *book) verdict(t *rapid.T, oz float64) check.Weight {
	b.must(fmt.Sprintf(`{"fact":"mix","name":"try","parts":[{"product":"warm weed","rate_fl_oz_per_1000_sqft":%.6f}]}`, oz))
	r, err := check.MixOn(b.Book, "try", check.Intent{Lawn: "77 Fir", With: "gun", At: core.Moment{Unix: b.clock}})
	if err != nil {
		t.Fatal(err)
	}
	w := check.None
	for _, f := range r.Findings {
		if f.Rule == "season" {
			w = max(w, f.Weight)
		}
	}
	return w
}

// TestNitrogenAsTheHandbookReckons: 21.42 lb of 28-3-6 on 6,000 sq ft are 1 lb of nitrogen per 1,000 sq ft (University of Nebraska-Lincoln,
// Lawn Fertilizer Calculations; the page rounds 3.5714 to 3.57). What is left is by the table of the region: for tall fescue in Illinois
// the highest figure that was read.
func TestNitrogenAsTheHandbookReckons(t *testing.T) {
	b := newBook(t)
	b.must(`{"fact":"setting","name":"nitrogen_region","value":"IL"}`)
	b.on("2026-05-01", `{"fact":"spread","lawn":"77 Fir","applicator":"spreader","product":"food","amount_lb":21.42}`)
	s := b.season("", "2026-05-01")
	z := &s.lawn("77 Fir").Zones[0]
	lb, err := z.Nitrogen.Rate.V.In("lb_per_1000_sqft")
	if err != nil || math.Abs(lb-1) > 0.0005 {
		t.Errorf("%.5f lb of nitrogen per 1,000 sq ft, %v; the handbook has 1", lb, err)
	}
	if p := z.Phosphate.Mass.Pounds(); math.Abs(p-21.42*0.03) > 1e-6 { // 3 per cent P2O5 of 21.42 lb, by hand
		t.Errorf("%.5f lb of P2O5", p)
	}
	if m := s.Months; len(m) != 1 || m[0].Month != "2026-05" || math.Abs(m[0].Mass.Pounds()-21.42*0.28) > 1e-6 {
		t.Errorf("by month: %+v", m)
	}
	rows := check.NitrogenYear(b.Book, "tall_fescue")
	if len(rows) == 0 {
		t.Fatal("the table has no row for tall fescue in Illinois")
	}
	want := fmt.Sprintf("up to %g lb per 1,000 sq ft (%s", rows[0].High.V, rows[0].Region)
	if got := strings.Join(z.left(), "\n"); !strings.Contains(got, want) || !strings.Contains(got, fmt.Sprintf("%.2f left", rows[0].High.V-lb)) {
		t.Errorf("left: %s", got)
	}
}

// TestRoundsAndDue: a round of 30 days of its own; what comes within 15 days of a round's first day belongs to it.
func TestRoundsAndDue(t *testing.T) {
	b := newBook(t)
	b.must(`{"fact":"mix","name":"W plus","base":"W","for":"once_a_year","parts":[{"product":"warm weed","rate_fl_oz_per_1000_sqft":1.2},{"product":"food","rate_lb_per_1000_sqft":1}]}`)
	spray := `{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"gallons","volume_gal":3}`
	for _, d := range []string{"2026-03-01", "2026-03-15", "2026-03-16", "2026-04-20"} {
		b.on(d, spray)
	}
	s := b.season("", "2026-04-21")
	l := s.lawn("77 Fir")
	if l.Rounds != 3 || len(s.Rounds) != 3 || s.Rounds[0].Upto != "2026-03-15" || s.Rounds[1].From != "2026-03-16" {
		t.Errorf("%d rounds: %+v", l.Rounds, s.Rounds)
	}
	if l.Due.Date != "2026-05-20" || !l.Due.Own || l.Due.Last != "2026-04-20" || fmt.Sprint(l.Due.Once) != "[W plus]" {
		t.Errorf("due %+v", l.Due)
	}
	if o := s.lawn("418 Alder"); o.Due.Date != "" || o.Due.Days != 42 || o.Due.When() != "not known" || fmt.Sprint(o.Due.Once) != "[W plus]" {
		t.Errorf("never treated: %+v", o.Due)
	}
	if s.Lawns[0].Lawn != "77 Fir" {
		t.Errorf("what is due first is %s", s.Lawns[0].Lawn)
	}
	b.must(`{"fact":"carried_over","lawn":"418 Alder","zones":[{"zone":"back","area_sqft":1000}],"reason":"rain"}`)
	if s = b.season("", "2026-04-21"); s.Lawns[0].Lawn != "418 Alder" || s.Lawns[0].Due.When() != "rest owed" {
		t.Errorf("a rest is not due first: %+v", s.Lawns[0].Due)
	}
}

// TestZonesThatAreGone: zones that became one keep their sums under their old names, with a sentence; of older years the rows answer.
func TestZonesThatAreGone(t *testing.T) {
	b := newBook(t)
	b.on("2024-05-01", `{"fact":"sprayed","lawn":"418 Alder","applicator":"gun","by":"gallons","volume_gal":3}`)
	b.on("2026-05-01", `{"fact":"sprayed","lawn":"418 Alder","zones":["front"],"applicator":"gun","by":"gallons","volume_gal":3}`)
	b.must(`{"fact":"lawn","name":"418 Alder","zones":[{"name":"all","grass":"bermudagrass_common","area_sqft":7401}]}`)
	s := b.season("", "2026-05-02")
	d, err := s.Sheet("418 Alder")
	if err != nil {
		t.Fatal(err)
	}
	if text := d.Text(); !strings.Contains(text, "no zone of this name") || !strings.Contains(text, "front, common bermudagrass") {
		t.Errorf("%s", text)
	}
	old := b.season("2024", "2026-05-02")
	d, err = old.Sheet("418 Alder")
	if err != nil || old.Kept || !strings.Contains(d.Text(), "of 2024 it has what was laid") || !strings.Contains(d.Text(), "3.00 gal sprayed") {
		t.Errorf("%v\n%s", err, d.Text())
	}
	if _, err := s.Sheet("9 Nowhere"); err == nil || !strings.Contains(err.Error(), `no lawn "9 Nowhere"`) {
		t.Errorf("a lawn that is not there: %v", err)
	}
}

// TestColumnsAddUpAsPrinted: the sum below each table is that of what stands above it.
func TestColumnsAddUpAsPrinted(t *testing.T) {
	b := newBook(t)
	b.on("2026-05-01", `{"fact":"sprayed","lawn":"418 Alder","applicator":"gun","by":"gallons","volume_gal":3.333}`)
	b.on("2026-05-02", `{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"gallons","volume_gal":7.77}
{"fact":"spread","lawn":"77 Fir","applicator":"spreader","product":"food","amount_lb":11.11}`)
	s := b.season("", "2026-05-02")
	for _, by := range []string{ByLawn, ByGrass, ByRound} {
		tab := s.Table(by)
		for col := range tab.Columns {
			if tab.Columns[col].Unit == "" {
				continue
			}
			var sum float64
			for _, r := range tab.Rows {
				sum += figure(t, r[col])
			}
			if math.Abs(sum-figure(t, tab.Sum[col])) > 1e-9 {
				t.Errorf("%s, %s: %g above, %s below", by, tab.Columns[col].Head(), sum, tab.Sum[col])
			}
		}
	}
}

func figure(t *testing.T, s string) float64 {
	var f float64
	if _, err := fmt.Sscan(strings.ReplaceAll(s, ",", ""), &f); err != nil {
		t.Fatalf("%q: %v", s, err)
	}
	return f
}

// TestBarsFitAndKeepTheirOrder: a chart fits the width at any width, a longer bar is a larger value, and what is above nothing is seen.
func TestBarsFitAndKeepTheirOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Chart{Unit: "gal", Both: rapid.Bool().Draw(t, "both")}
		low := 0.0
		if c.Both {
			low = -1000
		}
		for i := range rapid.IntRange(1, 6).Draw(t, "bars") {
			v := rapid.Float64Range(low, 1000).Draw(t, "value")
			c.Bars = append(c.Bars, Bar{Name: fmt.Sprint("bar ", i), Value: v, Says: fmt.Sprintf("%.1f", v)})
		}
		width := rapid.IntRange(40, 160).Draw(t, "width")
		lines := c.Lines(width, '#', '-', '|')
		if len(lines) != len(c.Bars)+2 {
			t.Fatalf("%d lines", len(lines))
		}
		for i, l := range lines {
			if len(l) > width+1 {
				t.Fatalf("line %d has %d of %d cells: %s", i, len(l), width, l)
			}
		}
		for i := range c.Bars {
			n := strings.Count(lines[i], "#")
			if (n == 0) != (c.Bars[i].Value == 0) {
				t.Fatalf("%g has %d signs", c.Bars[i].Value, n)
			}
			for j := range c.Bars {
				if math.Abs(c.Bars[i].Value) < math.Abs(c.Bars[j].Value) && n > strings.Count(lines[j], "#") {
					t.Fatalf("%g is longer than %g", c.Bars[i].Value, c.Bars[j].Value)
				}
			}
		}
	})
}
