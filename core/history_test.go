package core

import (
	"fmt"
	"math"
	"reflect"
	"testing"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
	"pgregory.net/rapid"
)

// remembers holds the history of each zone against what the zone's account got since the first of January of last year,
// product by product, and against that of a book which never had what was struck.
func (r *rest) remembers(t *rapid.T) {
	never := NewBook(3)
	type opened struct {
		date string
		had  fluid.Accounts
	}
	var days []opened
	for _, e := range r.entries {
		f := r.stands[e.Seq]
		if f == nil {
			continue
		}
		if d, ok := f.(*DayOpened); ok {
			days = append(days, opened{d.Date, never.clone().plumbing.Outside})
		}
		err := asWritten(never, e.At, f)
		if err != nil {
			t.Fatal(err)
		}
	}
	start := fluid.Accounts{}
	for _, d := range days {
		if d.date >= keptFrom(never.day.Date) {
			start = d.had
			break
		}
	}
	for _, l := range never.Lawns() {
		for _, z := range []string{"front", "back"} {
			place, got := fluid.ZonePlace(l.LawnName, z), fluid.Parts{}
			for _, w := range r.book.History(l.LawnName, z) {
				got = got.Plus(fluid.Parts{{Key: w.Product, N: w.Amount}})
			}
			want := never.plumbing.Outside[place].Holds.Minus(start[place].Holds).Minus(amendedOfOlder(never, place))
			if fmt.Sprint(got) != fmt.Sprint(want) {
				t.Fatalf("%s on %s: the history has %v, the account got %v", place, never.day.Date, got, want)
			}
			if a, b := unnumbered(r.book.History(l.LawnName, z)), unnumbered(never.History(l.LawnName, z)); !reflect.DeepEqual(a, b) {
				t.Fatalf("%s: with strikes %+v, without what was struck %+v", place, a, b)
			}
		}
	}
	if len(start[fluid.ZonePlace("L1", "front")].Holds) > 0 {
		r.counts[forgot]++
	}
}

// amendedOfOlder is what amendments since the kept years began changed on a zone of records that are older than these: it is in the account,
// and the history has forgotten it.
func amendedOfOlder(b *Book, place fluid.Place) fluid.Parts {
	out, from := fluid.Parts{}, keptFrom(b.day.Date)
	for _, a := range b.Amendments() {
		f := &a.What
		if fluid.ZonePlace(f.Lawn, f.Zone) != place || f.Date >= from || a.Day < from {
			continue
		}
		for _, m := range f.More {
			if k, ok := b.productAt[m.Product]; ok && m.Amount.N != 0 {
				out = out.Plus(fluid.Parts{{Key: int32(k), N: m.Amount.N}})
			}
		}
	}
	return out
}

// forgot counts the journals in which a zone has a past that is no longer kept.
const forgot = "older years"

func unnumbered(list []Went) []Went {
	for i := range list {
		list[i].Seq, list[i].after = 0, 0
	}
	return list
}

// treated enters facts and gives the rounds and peaks of what went of the product "weed" on L's zone "front", of 4,000 sq ft.
func treated(t *testing.T, facts ...Fact) (rounds []int32, peaks []string) {
	t.Helper()
	b := NewBook(1)
	at := Moment{Unix: 1_767_260_000}
	log := func(f Fact) {
		at.Unix += 60
		es, err := b.Prepare("a", at, f)
		if err == nil {
			err = b.Apply(es[0])
		}
		if err != nil {
			t.Fatalf("%+v: %v", f, err)
		}
	}
	for _, f := range append([]Fact{
		twoTanks(), &Product{ProductName: "weed"}, &Product{ProductName: "other"},
		&Mix{MixName: "W", Parts: []MixPart{{Product: "weed", Rate: measure.Rate{V: 0.4}}}},
		&Mix{MixName: "O", Parts: []MixPart{{Product: "other", Rate: measure.Rate{V: 0.4}}}},
		&Lawn{LawnName: "L", Zones: []Zone{{Name: "front", Grass: "tall_fescue", Area: 4 * measure.ThousandSquareFeet}}},
		&DayOpened{Date: "2026-05-01", Operator: "R. Example"},
		&Loaded{Into: "a", Volume: measure.Gallons(50), Mix: "W", For: "gun"}, &Loaded{Into: "b", Volume: measure.Gallons(50), Mix: "O", For: "gun"},
		&LinedUp{Supply: []byte("a"), Return: 'a'}, &PushedBack{Into: 'a', Volume: measure.Gallons(6)},
	}, facts...) {
		log(f)
	}
	for _, w := range b.History("L", "front") {
		if b.Products()[w.Product].Name == "weed" {
			rounds = append(rounds, w.Round)
			p := w.Dose(measure.Liquid)
			peaks = append(peaks, fmt.Sprintf("%.2f", p.V/0.4))
		}
	}
	return rounds, peaks
}

func twoTanks() *Rig {
	return &Rig{
		RigName: "truck", Cell: measure.Gallons(0.2), ReturnLine: measure.Gallons(0.1),
		Compartments: []RigCompartment{{Letter: 'a', Capacity: measure.Gallons(100)}, {Letter: 'b', Capacity: measure.Gallons(100)}},
		Hoses:        []RigHose{{Name: "reel", Volume: measure.Gallons(1.7)}},
		Applicators:  []Applicator{{Name: "gun", Type: Gun, Hose: "reel", Delivery: perThousand(1.6)}, {Name: "spreader", Type: Spreader}},
	}
}

// sprayedOn is a spraying of so many thousand square feet at so many times the delivery.
func sprayedOn(thousands, times float64) Fact {
	area := measure.Area(thousands * float64(measure.ThousandSquareFeet))
	return &Sprayed{Lawn: "L", Applicator: "gun", Area: Known(area), Volume: Known(measure.Volume(times * float64(measure.GalPer1000(1.6).Volume(area))))}
}

// Which sprayings are parts of one round: common practice, no source.
func TestRounds(t *testing.T) {
	part, rest, all := sprayedOn(3, 1), sprayedOn(1, 1), sprayedOn(4, 1)
	later := func(date string) []Fact {
		return []Fact{&VisitDone{Lawn: "L"}, &DayClosed{Overnight: "left in"}, &DayOpened{Date: date, Operator: "R. Example"}}
	}
	join := func(lists ...[]Fact) (out []Fact) {
		for _, l := range lists {
			out = append(out, l...)
		}
		return out
	}
	visit, carry := []Fact{&VisitBegun{Lawn: "L"}}, []Fact{&CarriedOver{Lawn: "L", Reason: "rain"}}
	toOther := []Fact{&LinedUp{Supply: []byte("b"), Return: 'b'}, &PushedBack{Into: 'b', Volume: measure.Gallons(20)}}
	back := []Fact{&LinedUp{Supply: []byte("a"), Return: 'a'}, &PushedBack{Into: 'a', Volume: measure.Gallons(6)}}
	for _, row := range []struct {
		name  string
		facts []Fact
		want  []int32
	}{
		{"one after the other in a visit", join(visit, []Fact{part, rest}), []int32{1, 1}},
		{"three parts", join(visit, []Fact{sprayedOn(1, 1), sprayedOn(1, 1), sprayedOn(2, 1)}), []int32{1, 1, 1}},
		{"more than the zone", join(visit, []Fact{part, part}), []int32{1, 2}},
		{"twice all of it", join(visit, []Fact{all, all}), []int32{1, 2}},
		{"without a visit begun", []Fact{part, rest}, []int32{1, 1}},
		{"a call later on the same day", join(visit, []Fact{part, &VisitDone{Lawn: "L"}, &VisitBegun{Lawn: "L"}, rest}), []int32{1, 2}},
		{"spots", join([]Fact{&VisitBegun{Lawn: "L", Type: Spot}}, []Fact{rest, rest}), []int32{1, 2}},
		{"the rest on another day", join(visit, []Fact{part}, carry, later("2026-05-04"), visit, []Fact{rest}), []int32{1, 1}},
		{"a spot on another day while a rest is owed", join(visit, []Fact{part}, carry, later("2026-05-04"), []Fact{&VisitBegun{Lawn: "L", Type: Spot}}, []Fact{rest}), []int32{1, 2}},
		{"all of it on another day, though a rest is owed", join(visit, []Fact{part}, carry, later("2026-05-04"), visit, []Fact{all}), []int32{1, 2}},
		{"another visit", join(visit, []Fact{part}, later("2026-06-20"), visit, []Fact{rest}), []int32{1, 2}},
		{"another product first", join(visit, []Fact{part}, later("2026-06-20"), visit, toOther, []Fact{sprayedOn(2, 1)}, back, []Fact{rest}), []int32{1, 2, 2}}, // the hose leaves a trace of it with the other
	} {
		if got, _ := treated(t, row.facts...); !reflect.DeepEqual(got, row.want) {
			t.Errorf("%s: rounds %v, want %v", row.name, got, row.want)
		}
	}
}

// The dose is that on the part that got most: arithmetic.
func TestPeakIsOnThePartThatGotMost(t *testing.T) {
	_, got := treated(t, sprayedOn(4, 1))
	const pushed = "0.96" // the water of a new rig was pushed back: 50 of 51.9 gal
	if !reflect.DeepEqual(got, []string{pushed}) {
		t.Errorf("all the same: %v times the mix", got)
	}
	// The hose holds the weed mix, the compartment lined up now does not: a third of the zone gets all of it.
	_, got = treated(t, &LinedUp{Supply: []byte("b"), Return: 'b'}, sprayedOn(4, 1))
	if !reflect.DeepEqual(got, []string{pushed}) {
		t.Errorf("the tail of a changeover: %v times the mix on the part that got it", got)
	}
	one, two := measure.Gallons(1), measure.Gallons(2)
	liquid := func(v measure.Volume, n int64) fluid.Liquid {
		return fluid.Liquid{Volume: v, Holds: fluid.Parts{{Key: 0, N: n * 1e9}}}
	}
	whole := Laid{Volume: measure.Gallons(4), Area: 4 * measure.SquareMetre}
	for _, row := range []struct {
		name    string
		parcels []fluid.Liquid
		want    float64
	}{
		{"one", []fluid.Liquid{liquid(one+one+two, 400)}, 100},
		{"old first", []fluid.Liquid{liquid(one, 400), liquid(one+two, 0)}, 400},
		{"old last", []fluid.Liquid{liquid(one+two, 0), liquid(one, 400)}, 400},
		{"a drop", []fluid.Liquid{liquid(one, 100), liquid(measure.Gallons(0.002), 100), liquid(one+two-measure.Gallons(0.002), 200)}, (100 + 100*0.038) / 0.04},
	} {
		var n int64
		for _, p := range row.parcels {
			n += p.Holds.Of(0)
		}
		if got := peak(whole, 0, n, row.parcels); math.Abs(float64(got)/1e11-row.want) > row.want*1e-8 {
			t.Errorf("%s: %d per 100 square metres, want %g", row.name, got, row.want*1e11)
		}
	}
}

// However finely the parcels are cut, the peak is the same but for the last units.
func TestPeakDoesNotDependOnCutting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var parcels, cut []fluid.Liquid
		l := Laid{Area: measure.ThousandSquareFeet}
		var n int64
		for range rapid.IntRange(1, 12).Draw(t, "parcels") {
			p := fluid.Liquid{Volume: measure.Volume(rapid.Int64Range(1e6, 4e9).Draw(t, "volume")), Holds: fluid.Parts{{Key: 0, N: rapid.Int64Range(1, 1e8).Draw(t, "holds")}}}
			parcels = append(parcels, p)
			l.Volume += p.Volume
			n += p.Holds.Of(0)
			for p.Volume > 4 {
				var piece fluid.Liquid
				piece, p = p.Split(max(p.Volume/3, 1))
				cut = append(cut, piece)
			}
			cut = append(cut, p)
		}
		a, b := peak(l, 0, n, parcels), peak(l, 0, n, cut)
		if d := float64(a - b); max(d, -d) > 600+float64(a)/500 {
			t.Fatalf("peak %d, cut finer %d", a, b)
		}
	})
}

func TestTwoYearsAreKept(t *testing.T) {
	b := NewBook(1)
	at := Moment{Unix: 1_767_260_000}
	for _, f := range []Fact{
		twoTanks(), &Product{ProductName: "food", Label: label.Entry{Form: measure.Dry, HasRateLow: true, RateLow: dryRate(3)}},
		&Lawn{LawnName: "L", Zones: []Zone{{Name: "front", Grass: "tall_fescue", Area: 4 * measure.ThousandSquareFeet}}},
	} {
		applyNow(t, b, at, f)
	}
	for _, row := range []struct {
		date string
		want []string
	}{
		{"2025-12-31", nil},
		{"2026-01-01", []string{"2025-12-31"}},
		{"2026-12-31", []string{"2025-12-31", "2026-01-01"}},
		{"2027-01-01", []string{"2026-01-01", "2026-12-31"}},
		{"2029-03-01", nil},
	} {
		applyNow(t, b, at, &DayOpened{Date: row.date, Operator: "R. Example"})
		var got []string
		for _, w := range b.History("L", "front") {
			got = append(got, w.Date)
		}
		if !reflect.DeepEqual(got, row.want) {
			t.Errorf("on %s the book keeps what was laid on %v, want %v", row.date, got, row.want)
		}
		applyNow(t, b, at, &Spread{Lawn: "L", Applicator: "spreader", Product: "food", By: ByWeight, Amount: measure.DryAmount(measure.Pounds(12))})
		applyNow(t, b, at, &DayClosed{Overnight: "left in"})
	}
}

func applyNow(t *testing.T, b *Book, at Moment, f Fact) {
	t.Helper()
	es, err := b.Prepare("a", at, f)
	if err == nil {
		err = b.Apply(es[0])
	}
	if err != nil {
		t.Fatalf("%+v: %v", f, err)
	}
}
