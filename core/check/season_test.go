package check

import (
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// twoZones is a lawn of two zones of 4,000 sq ft, a product with limits, and a spreader.
func twoZones(t testing.TB, known string, e label.Entry) acreBook {
	t.Helper()
	e.Form = measure.Dry
	b := newAcre(t, "tall_fescue", []core.Product{{ProductName: "P", Label: e}})
	log(t, b.Book, &core.Lawn{LawnName: "Two", KnownSince: known, Zones: []core.Zone{
		{Name: "front", Grass: "tall_fescue", Area: 4 * measure.ThousandSquareFeet}, {Name: "back", Grass: "tall_fescue", Area: 4 * measure.ThousandSquareFeet},
	}})
	return b
}

// pounds is a spreading of so many pounds for each 1,000 sq ft on zones of Two.
func (b acreBook) pounds(lb float64, share float64, zones ...string) *core.Spread {
	area := measure.Area(share * 4 * float64(measure.ThousandSquareFeet) * float64(len(zones)))
	return &core.Spread{
		Lawn: "Two", Zones: zones, Applicator: "spreader", Product: "P", By: core.ByWeight,
		Amount: rateIn(b.t, lb, lbThou).Over(area), Area: core.Known(area),
	}
}

func (b acreBook) asks(f *core.Spread) Report {
	b.t.Helper()
	return before(b.t, b.Book, Intent{Lawn: f.Lawn, Zones: f.Zones, With: "spreader", Product: "P", Amount: core.Known(measure.Mass(f.Amount.N)), Area: f.Area})
}

func limits(t testing.TB) label.Entry {
	return label.Entry{
		Kind: "herbicide", HasRateLow: true, RateLow: rateIn(t, 1, lbThou), HasRateHigh: true, RateHigh: rateIn(t, 3, lbThou),
		MostYear: core.Known(rateIn(t, 6, lbThou)), DaysBetween: core.Known(30.0), Actives: []label.Active{active("other", 0, 1)},
	}
}

// Rows of what was laid in one visit; the sums are arithmetic. The label's most is 3 at once and 6 a year, 30 days between.
func TestWhatCountsAsOneDose(t *testing.T) {
	for _, row := range []struct {
		name  string
		kind  string
		first float64 // of the front zone, laid in the same visit
		share float64 // of it that was treated
		now   float64
		part  float64
		rule  string
		says  string
	}{
		{"the other half", core.Round, 3, 0.5, 3, 0.5, "", ""},
		{"all of it again", core.Round, 2, 1, 2, 1, "dose", "1.3 times the label's most, on 4,000 sq ft. With the 2.00 lb per 1,000 sq ft that went down there in this visit it is one dose."},
		{"the rest, and some of it again", core.Round, 2, 0.8, 2, 0.5, "dose", "it is one dose"},
		{"a crossing pass at half", core.Round, 1.5, 1, 1.5, 1, "", ""},
		{"two spots", core.Spot, 3, 0.05, 3, 0.05, "", ""},
	} {
		t.Run(row.name, func(t *testing.T) {
			b := twoZones(t, "2020-01-01", limits(t))
			b.open("2026-05-01")
			log(t, b.Book, &core.VisitBegun{Lawn: "Two", Type: row.kind}, b.pounds(row.first, row.share, "front"))
			r := b.asks(b.pounds(row.now, row.part, "front"))
			for _, rule := range []string{"dose", "interval"} {
				f := find(r, rule)
				switch {
				case rule != row.rule && f != nil:
					t.Errorf("%s: %+v", rule, f)
				case rule == row.rule && (f == nil || f.Weight != Stop || !strings.Contains(f.Says, row.says)):
					t.Errorf("%s: %+v", rule, f)
				}
			}
		})
	}
}

// What is left of a zone and done on another day is the same round: neither too soon nor twice the dose. All of it is.
func TestTheRestOnAnotherDay(t *testing.T) {
	for _, share := range []float64{0.5, 1} {
		b := twoZones(t, "2020-01-01", limits(t))
		b.open("2026-05-01")
		log(t, b.Book, &core.VisitBegun{Lawn: "Two"}, b.pounds(2, 0.5, "front"), &core.CarriedOver{Lawn: "Two", Reason: "rain"}, &core.VisitDone{Lawn: "Two"})
		b.open("2026-05-06")
		log(t, b.Book, &core.VisitBegun{Lawn: "Two"})
		f := find(b.asks(b.pounds(2, share, "front")), "interval")
		if (share == 0.5) != (f == nil) {
			t.Errorf("%g of the zone: %+v", share, f)
		}
		if f != nil && (f.Figured.V != 5 || f.Limit.V != 30 || f.Do != "Wait: it may go down again on 2026-05-31.") {
			t.Errorf("%+v", f)
		}
	}
}

// How long it is since the last time is known even where the weight is not.
func TestTooSoonWithoutAWeight(t *testing.T) {
	b := twoZones(t, "2020-01-01", limits(t))
	b.open("2026-05-01")
	log(t, b.Book, b.pounds(2, 1, "front"))
	b.open("2026-05-11")
	r := before(t, b.Book, Intent{Lawn: "Two", With: "spreader", Product: "P"})
	if f := find(r, "interval"); f == nil || f.Weight != Stop || f.Figured.V != 10 || strings.Join(f.Zones, " ") != "front" {
		t.Errorf("%+v", f)
	}
}

// Of two zones only the one that had some is too soon and too much, and a reason for it opens that one.
func TestZonesAreJudgedByThemselves(t *testing.T) {
	b := twoZones(t, "2020-01-01", limits(t))
	b.open("2026-03-01")
	log(t, b.Book, b.pounds(3, 1, "front"))
	b.open("2026-04-15")
	log(t, b.Book, b.pounds(2, 1, "front"))
	b.open("2026-05-01")
	log(t, b.Book, &core.VisitBegun{Lawn: "Two"})
	both := b.pounds(2, 1, "front", "back")
	r := b.asks(both)
	season, soon := find(r, "season"), find(r, "interval")
	if season == nil || season.Weight != Stop || strings.Join(season.Zones, " ") != "front" || !strings.Contains(season.Says, "front: other: 5 of 6 lb per 1,000 sq ft this year, this would make 7.") {
		t.Errorf("%+v", season)
	}
	if soon == nil || soon.Weight != Stop || strings.Join(soon.Zones, " ") != "front" || !strings.Contains(soon.Says, "front: other went down 16 days ago") {
		t.Errorf("%+v", soon)
	}
	log(t, b.Book, GoOn(*season, "Two", "asked for by the owner")...)
	r = b.asks(both)
	if f := find(r, "season"); f == nil || f.Reason == "" {
		t.Errorf("the reason does not hold: %+v", f)
	}
	if f := find(r, "interval"); f == nil || f.Reason != "" {
		t.Errorf("one reason opened two stops: %+v", f)
	}
}

// What was laid before the book knows is unknown, and that is said once, where a limit by the year is entered.
func TestUnknownBefore(t *testing.T) {
	for _, row := range []struct {
		known string
		year  bool
		want  int
	}{{"2026-02-15", true, 1}, {"2026-02-15", false, 0}, {"2026-01-01", true, 0}} {
		e := limits(t)
		if !row.year {
			e.MostYear = core.Maybe[measure.Rate]{}
		}
		b := twoZones(t, row.known, e)
		b.open("2026-05-01")
		n := 0
		for _, f := range b.asks(b.pounds(2, 1, "front", "back")).Findings {
			if strings.Contains(f.Says, "What was laid on Two before 2026-02-15 is not in the book") {
				n++
				if f.Weight != Note {
					t.Errorf("%+v", f)
				}
			}
		}
		if n != row.want {
			t.Errorf("known since %s, most of a year entered %v: said %d times", row.known, row.year, n)
		}
	}
}

// What is blank is named with how many products it is of; what the label has none of is not.
func TestNotCheckedNamesTheBlanks(t *testing.T) {
	ask := func(e label.Entry) string {
		b := twoZones(t, "2020-01-01", e)
		b.open("2026-05-01")
		return strings.Join(b.asks(b.pounds(2, 1, "front")).NotChecked, "; ")
	}
	blank := ask(label.Entry{Kind: "fertiliser"})
	if want := "highest rate, most in a year, times a year, days between, nitrogen content"; !strings.Contains(blank, want) || !strings.Contains(blank, ": 1 of 1 product (label entry is blank)") {
		t.Errorf("what is blank: %s", blank)
	}
	said := ask(label.Entry{Kind: "herbicide", None: none()})
	for _, what := range []string{"highest rate", "most in a year", "times a year", "days between", "nitrogen content"} {
		if strings.Contains(said, what) {
			t.Errorf("%s: the label has none, and it is called blank: %s", what, said)
		}
	}
	full := limits(t)
	full.MostTimes = core.Known(4.0)
	if got := ask(full); strings.Contains(got, "year") || strings.Contains(got, "between") || strings.Contains(got, "rate") {
		t.Errorf("all is entered: %s", got)
	}
}

// The tail of a changeover counts: residue of a mix that has had its year's most is asked about, not stopped, because the
// rule of traces judges it.
func TestATraceOverTheYearsMostIsAsked(t *testing.T) {
	e := limits(t)
	e.Form = measure.Liquid
	e.HasRateLow, e.RateLow, e.HasRateHigh, e.RateHigh = true, rateIn(t, 1, flThou), true, rateIn(t, 3, flThou)
	e.MostYear = core.Known(rateIn(t, 3, flThou))
	b := newAcre(t, "tall_fescue", []core.Product{{ProductName: "P", Label: e}})
	b.lay(laying{"2026-03-01", "P", 3, flThou})
	r, err := Before(b.Book, b.ready(laying{"2026-05-01", "P", 0.05, flThou}))
	if err != nil {
		t.Fatal(err)
	}
	if f := find(r, "season"); f == nil || f.Weight != Ask || f.Ground != GroundLabel {
		t.Errorf("%+v", f)
	}
}

// Each parcel is judged at its own strength over its own area: the hose holds the mix that has had its year's most, and
// covers 1.72 of the 11.84 gal on 7,400 sq ft, 1,075 sq ft, and what the dead volume holds (arithmetic).
func TestOnlyTheTailIsOverTheYearsMost(t *testing.T) {
	limited := strings.Replace(loadedLines, `"name":"W1","form":"liquid"`, `"name":"W1","form":"liquid","most_year_fl_oz_per_1000_sqft":2`, 1)
	b := play(t, limited+hoseOf("a")+`{"fact":"sprayed","lawn":"Alder","applicator":"gun"}
{"fact":"day_closed","overnight":"left in"}
{"fact":"day_opened","date":"2026-07-28","operator":"R. Example"}
{"fact":"lined_up","supply":["c"],"return":"c"}`)
	f := find(before(t, b, Intent{Lawn: "Alder"}), "season")
	if f == nil || f.Weight != Stop || f.Product != "W1" || strings.Join(f.Zones, " ") != "front" {
		t.Fatalf("%+v", f)
	}
	if a := f.Area.SquareFeet(); a < 1075 || a > 1075+200 {
		t.Errorf("%g sq ft", a)
	}
	t.Log(f.Says)
}
