package core

import (
	"fmt"
	"math"
	"testing"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// yearBook is a book of one zone of 4,000 sq ft in which things are spread day by day.
type yearBook struct {
	*Book
	t *testing.T
}

func newYear(t *testing.T, known string, products ...*Product) yearBook {
	b := yearBook{NewBook(1), t}
	b.log(twoTanks())
	for _, p := range products {
		p.Label.Form = measure.Dry
		b.log(p)
	}
	b.log(&Lawn{LawnName: "L", KnownSince: known, Zones: []Zone{{Name: "front", Grass: "tall_fescue", Area: 4 * measure.ThousandSquareFeet}}})
	return b
}

func (b yearBook) log(f Fact) { applyNow(b.t, b.Book, Moment{Unix: 1_767_260_000}, f) }

// on spreads so many pounds for each acre on a date, on so much of the zone.
func (b yearBook) on(date, product string, pounds, share float64) {
	if b.day.Date != date {
		b.log(&DayOpened{Date: date, Operator: "R. Example"})
	}
	area := measure.Area(share * 4 * float64(measure.ThousandSquareFeet))
	b.log(&Spread{Lawn: "L", Applicator: "spreader", Product: product, By: ByWeight, Amount: perAcre(pounds).Over(area), Area: Known(area)})
}

func perAcre(pounds float64) measure.Rate {
	r, err := measure.RateUnit(pounds, "lb_per_acre")
	if err != nil {
		panic(err)
	}
	return r
}

func inPounds(r measure.Rate) string {
	lb, err := r.In("lb_per_acre")
	if err != nil {
		return err.Error()
	}
	return fmt.Sprintf("%.3f", lb)
}

func (b yearBook) line(at, of, name string) SeasonLine {
	for _, l := range b.SeasonOf("L", "front", at) {
		if l.Of == of && l.Name == name {
			return l
		}
	}
	b.t.Fatalf("no line of %s %s on %s: %+v", of, name, at, b.SeasonOf("L", "front", at))
	return SeasonLine{}
}

func TestSeasonOfAProduct(t *testing.T) {
	b := newYear(t, "2020-01-01", &Product{ProductName: "P", Label: label.Entry{
		HasRateLow: true, RateLow: perAcre(100), MostYear: Known(perAcre(400)), MostTimes: Known(4.0), DaysBetween: Known(30.0),
	}})
	b.on("2025-11-01", "P", 300, 1)
	b.on("2026-03-01", "P", 150, 1)
	b.on("2026-05-01", "P", 100, 0.5) // two halves in one call: one application
	b.on("2026-05-01", "P", 120, 0.5)
	b.on("2026-06-15", "P", 5, 1) // a trace: less than a tenth of 100
	for _, row := range []struct {
		at, sum, left, last, again, fits string
		times, days                      int
	}{
		{"2025-12-31", "300.000", "100.000", "2025-11-01", "2025-12-31", "2025-12-31", 1, 60},
		{"2026-02-28", "0.000", "400.000", "2025-11-01", "2026-02-28", "2026-02-28", 0, 119},
		{"2026-03-10", "150.000", "250.000", "2026-03-01", "2026-03-31", "2026-03-10", 1, 9},
		{"2026-05-31", "270.000", "130.000", "2026-05-01", "2026-05-31", "2026-05-31", 2, 30},
		{"2026-06-15", "275.000", "125.000", "2026-05-01", "2026-06-15", "2026-06-15", 2, 45},
	} {
		l := b.line(row.at, OfProduct, "P")
		got := []any{inPounds(l.Sum.V), inPounds(l.Left.V), l.Last, l.Again, l.Fits, l.Times, l.DaysSince.V}
		want := []any{row.sum, row.left, row.last, row.again, row.fits, row.times, row.days}
		if fmt.Sprint(got) != fmt.Sprint(want) || !l.Sum.Known || l.UnknownBefore != "" || l.LimitOf != "P" {
			t.Errorf("on %s: %v, want %v (%+v)", row.at, got, want, l)
		}
	}
	b.on("2026-07-20", "P", 100, 1)
	l := b.line("2026-07-21", OfProduct, "P") // 275 + 100 = 375; 100 more are over 400
	if l.Fits != "2027-01-01" || l.Next != "2027-01-01" || math.Abs(l.Share.V-0.9375) > 1e-6 {
		t.Errorf("full for this year: %+v", l)
	}
}

func TestSeasonByTheLabelsOwnPeriod(t *testing.T) {
	b := newYear(t, "2020-01-01", &Product{ProductName: "P", Label: label.Entry{
		HasRateLow: true, RateLow: perAcre(100), MostYear: Known(perAcre(200)), YearDays: Known(365.0),
	}})
	b.on("2025-09-10", "P", 100, 1)
	b.on("2026-04-01", "P", 100, 1)
	for _, row := range []struct{ at, sum, from, fits string }{
		{"2026-04-01", "200.000", "2025-04-02", "2026-09-10"},
		{"2026-09-09", "200.000", "2025-09-10", "2026-09-10"}, // the 365th day is the last that holds the first
		{"2026-09-10", "100.000", "2025-09-11", "2026-09-10"},
	} {
		l := b.line(row.at, OfProduct, "P")
		if got := [3]string{inPounds(l.Sum.V), l.From, l.Fits}; got != [3]string{row.sum, row.from, row.fits} {
			t.Errorf("on %s: %v, want %+v", row.at, got, row)
		}
	}
}

// The content is that of the label version in force when it was laid.
func TestSeasonOfAnActive(t *testing.T) {
	most := Known(perAcre(1.5))
	one := func(percent float64) *Product {
		return &Product{ProductName: "P", Label: label.Entry{HasRateLow: true, RateLow: perAcre(100), Actives: []label.Active{{Name: "Prodiamine", PercentByWeight: percent, MostYear: most}}}}
	}
	b := newYear(
		t, "2020-01-01", one(0.5),
		&Product{ProductName: "Q", Label: label.Entry{Actives: []label.Active{{Name: "prodiamine", PercentByWeight: 0.2}}}},
		&Product{ProductName: "R", Label: label.Entry{Actives: []label.Active{{Name: "prodiamine"}}}},
	)
	b.on("2026-03-01", "P", 100, 1) // 0.5 lb
	p := one(0.4)
	p.Label.Form = measure.Dry
	b.log(p)
	b.on("2026-04-20", "P", 100, 1) // 0.4 lb
	b.on("2026-04-20", "Q", 100, 1) // 0.2 lb
	l := b.line("2026-05-01", OfActive, "prodiamine")
	if inPounds(l.Sum.V) != "1.100" || !l.Sum.Known || inPounds(l.Left.V) != "0.400" || l.LimitOf != "P" || l.Fits != "2026-05-01" {
		t.Errorf("%+v", l)
	}
	b.on("2026-05-02", "R", 100, 1)
	l = b.line("2026-05-02", OfActive, "prodiamine")
	if l.Sum.Known || inPounds(l.AtLeast) != "1.100" || fmt.Sprint(l.Unknown) != "[R]" {
		t.Errorf("a content that is blank is unknown, not nothing: %+v", l)
	}
}

func TestSeasonKnowsWhatItDoesNotKnow(t *testing.T) {
	entry := label.Entry{HasRateLow: true, RateLow: perAcre(100), MostYear: Known(perAcre(400))}
	for _, row := range []struct{ known, at, want string }{
		{"", "2026-05-31", ""}, // from the first entry of the lawn on, on 2026-01-01
		{"2026-02-15", "2026-05-31", "2026-02-15"},
		{"2025-12-31", "2026-05-31", ""},
		{"2026-01-01", "2026-05-31", ""},
		{"2026-02-15", "2027-03-01", ""},
	} {
		b := newYear(t, row.known, &Product{ProductName: "P", Label: entry})
		b.on("2026-05-01", "P", 100, 1)
		if got := b.line(row.at, OfProduct, "P").UnknownBefore; got != row.want {
			t.Errorf("known since %q, on %s: unknown before %q, want %q", row.known, row.at, got, row.want)
		}
	}
}

// A zone that a lawn was parted into later: what went on it under another name is unknown, not nothing.
func TestAZoneAddedLaterIsKnownFromThen(t *testing.T) {
	b := newYear(t, "2020-01-01", &Product{ProductName: "P", Label: label.Entry{MostYear: Known(perAcre(400))}})
	b.on("2026-05-01", "P", 300, 1)
	at := Moment{Unix: 1_780_000_000} // 2026-05-28
	applyNow(t, b.Book, at, &Lawn{LawnName: "L", Zones: []Zone{
		{Name: "front", Grass: "tall_fescue", Area: 2 * measure.ThousandSquareFeet}, {Name: "side", Grass: "tall_fescue", Area: 2 * measure.ThousandSquareFeet},
	}})
	for zone, want := range map[string]string{"front": "", "side": "2026-05-28"} {
		line := b.Season("L", zone, "2026-06-01", []Went{b.Would("2026-06-01", "L", zone, 0, perAcre(100), measure.ThousandSquareFeet)}).Product(0)
		if line.UnknownBefore != want {
			t.Errorf("%s is unknown before %q, want %q", zone, line.UnknownBefore, want)
		}
	}
}

// Nitrogen of a bag: 16-4-8 at 6.25 lb for each 1,000 sq ft is 1 lb of nitrogen (arithmetic: 0.16 x 6.25 = 1.0).
func TestSeasonOfNitrogen(t *testing.T) {
	b := newYear(
		t, "2020-01-01",
		&Product{ProductName: "16-4-8", Label: label.Entry{Kind: "fertiliser", Nitrogen: Known(16.0), QuickNitrogen: Known(70.0)}},
		&Product{ProductName: "iron", Label: label.Entry{Kind: "iron"}},
		&Product{ProductName: "blank", Label: label.Entry{Kind: "fertiliser", Actives: []label.Active{{Name: "urea", PercentByWeight: 46}}}},
		&Product{ProductName: "plain", Label: label.Entry{Actives: []label.Active{{Name: "Nitrogen", PercentByWeight: 20}}}},
	)
	thousands := func(r measure.Rate) string {
		lb, _ := r.In("lb_per_1000_sqft")
		return fmt.Sprintf("%.3f", lb)
	}
	b.on("2026-05-01", "16-4-8", 6.25*43.56, 1)
	b.on("2026-05-01", "iron", 40, 1)
	l := b.line("2026-05-01", OfNitrogen, "nitrogen")
	if thousands(l.Sum.V) != "1.000" || thousands(l.Quick.V) != "0.700" || !l.Quick.Known || !l.Sum.Known {
		t.Errorf("%+v", l)
	}
	b.on("2026-05-01", "plain", 43.56, 1)
	l = b.line("2026-05-01", OfNitrogen, "nitrogen")
	if thousands(l.Sum.V) != "1.200" || l.Quick.Known {
		t.Errorf("an active that is nitrogen itself: %+v", l)
	}
	b.on("2026-06-01", "blank", 43.56, 1)
	l = b.line("2026-06-01", OfNitrogen, "nitrogen")
	if l.Sum.Known || thousands(l.AtLeast) != "1.200" || fmt.Sprint(l.Unknown) != "[blank]" {
		t.Errorf("of urea it is not plain how much is nitrogen: %+v", l)
	}
}

// A plan is judged with the round that it goes on with.
func TestSeasonWithAPlan(t *testing.T) {
	b := newYear(t, "2020-01-01", &Product{ProductName: "P", Label: label.Entry{
		HasRateLow: true, RateLow: perAcre(100), MostYear: Known(perAcre(250)), MostTimes: Known(2.0), DaysBetween: Known(30.0),
	}})
	b.on("2026-03-01", "P", 100, 1)
	b.on("2026-05-01", "P", 100, 0.5)
	plan := func(date string, pounds, share float64) SeasonLine {
		area := measure.Area(share * 4 * float64(measure.ThousandSquareFeet))
		return b.Season("L", "front", date, []Went{b.Would(date, "L", "front", 0, perAcre(pounds), area)}).Product(0)
	}
	l := plan("2026-05-01", 150, 0.5) // the other half: the larger of 100 and 150 counts
	if inPounds(l.With.V) != "250.000" || inPounds(l.Room.V) != "150.000" || l.TimesWith != 2 || l.Last != "2026-03-01" || l.Again != "2026-05-01" || l.Fits != "2026-05-01" {
		t.Errorf("the other half: %+v", l)
	}
	l = plan("2026-05-01", 100, 1) // all of it again, in the same call: one application, twice the dose on a half
	if inPounds(l.With.V) != "300.000" || l.TimesWith != 2 || l.Fits != "2027-01-01" || l.Last != "2026-03-01" {
		t.Errorf("all of it again: %+v", l)
	}
	l = plan("2026-05-20", 40, 1)
	if l.TimesWith != 3 || l.Last != "2026-05-01" || l.Again != "2026-05-31" || l.Fits != "2027-01-01" || l.DaysSince.V != 19 {
		t.Errorf("another day: %+v", l)
	}
	l = plan("2026-05-20", 300, 1)
	if l.Fits != "" || l.Next != "" {
		t.Errorf("more than fits into any year: %+v", l)
	}
}
