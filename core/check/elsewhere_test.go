package check

import (
	"slices"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// TestLimitOfAnActiveInAnotherLabel: a label's most of an active in a year holds for what comes after it in another product.
// By hand: 43.56 fl oz per acre of 4 lb per gal are 43.56 / 128 x 4 = 1.36 lb per acre, twice that 2.72; 4.356 are 0.136.
func TestLimitOfAnActiveInAnotherLabel(t *testing.T) {
	for _, row := range []struct {
		name string
		past []laying
		want Weight
		by   string
	}{
		{"its product went down this year", []laying{{"2026-03-02", "limited", 43.56, flAcre}}, Stop, "limited"},
		{"last year", []laying{{"2025-12-02", "limited", 43.56, flAcre}}, None, ""},
		{"it never went down", []laying{{"2026-03-02", "free", 43.56, flAcre}}, None, ""},
		{"only a trace of it did", []laying{{"2026-03-02", "free", 43.56, flAcre}, {"2026-03-03", "limited", 2, flAcre}}, None, ""},
		{"the stricter of two", []laying{{"2026-03-02", "limited", 43.56, flAcre}, {"2026-03-03", "stricter", 43.56, flAcre}}, Stop, "stricter"},
	} {
		t.Run(row.name, func(t *testing.T) {
			entry := func(name string, a label.Active) core.Product {
				return core.Product{ProductName: name, Label: label.Entry{
					Kind: "herbicide", Form: measure.Liquid, Actives: []label.Active{a}, HasRateLow: true, RateLow: rateIn(t, 40, flAcre), HasRateHigh: true, RateHigh: rateIn(t, 90, flAcre),
				}}
			}
			dicamba := active("dicamba", 4, 0)
			b := newAcre(t, "tall_fescue", []core.Product{entry("limited", most(dicamba, t, 2.5)), entry("free", dicamba), entry("stricter", most(dicamba, t, 2))})
			for _, l := range row.past {
				b.lay(l)
			}
			r := before(t, b.Book, b.ready(laying{"2026-05-28", "free", 43.56, flAcre}))
			f := find(r, "season")
			switch {
			case row.want == None:
				if f != nil && f.Weight > Note {
					t.Errorf("%+v", f)
				}
			case f == nil || f.Weight != row.want || f.Source != "label entry of "+row.by || !strings.Contains(f.Says, "by the label entry of "+row.by+", which went down here"):
				t.Errorf("%+v", f)
			}
		})
	}
}

// TestAnActiveListedTwice: 2,4-D as amine and as ester is one active. By hand: 43.56 fl oz per acre of 2 + 1 lb per gal are
// 43.56 / 128 x 3 = 1.02 lb per acre.
func TestAnActiveListedTwice(t *testing.T) {
	e := label.Entry{
		Kind: "herbicide", Form: measure.Liquid, HasRateHigh: true, RateHigh: rateIn(t, 90, flAcre),
		Actives: []label.Active{most(active("2,4-D amine", 2, 0), t, 0.9), active("2,4-D ester", 1, 0)},
	}
	b := newAcre(t, "tall_fescue", []core.Product{{ProductName: "P", Label: e}})
	r := before(t, b.Book, b.ready(laying{"2026-05-28", "P", 43.56, flAcre}))
	f := find(r, "season")
	if f == nil || f.Weight != Stop || f.Figured.V < 1.0209 || f.Figured.V > 1.0210 || strings.Count(f.Says, "this would make") != 1 {
		t.Errorf("%+v", f)
	}
}

// TestMonthsThatAreSpokenAgainst: NC State has no nitrogen on centipedegrass from March to May.
func TestMonthsThatAreSpokenAgainst(t *testing.T) {
	n := core.Product{ProductName: "N", Label: label.Entry{
		Kind: "fertiliser", Form: measure.Dry, Actives: []label.Active{active("nitrogen", 0, 20)}, Nitrogen: core.Known(20.0), HasRateHigh: true, RateHigh: rateIn(t, 2, lbThou),
	}}
	for _, row := range []struct {
		at   core.Moment
		want Weight
	}{{clock, Ask}, {core.Moment{Unix: clock.Unix + 40*86_400}, None}} {
		b := newAcre(t, "centipedegrass", []core.Product{n})
		log(t, b.Book, &core.Setting{SettingName: core.GrowthAskTo, Value: "501"})
		in := b.ready(laying{row.at.Date(), "N", 1, spread + lbThou})
		in.At = row.at
		r, err := Before(b.Book, in)
		if err != nil {
			t.Fatal(err)
		}
		f := find(r, "grass")
		switch {
		case row.want == None && f != nil, row.want != None && (f == nil || f.Weight != row.want || !strings.Contains(f.Do, "until these months are over")):
			t.Errorf("%s: %+v", row.at.Date(), f)
		}
	}
}

// TestWhatIsSaidBesideTheVerdict: signs of an inversion that nobody looked at under a label that forbids it, and a herbicide
// of which all turf is listed, are named.
func TestWhatIsSaidBesideTheVerdict(t *testing.T) {
	e := label.Entry{Kind: "herbicide", Form: measure.Liquid, Actives: []label.Active{active("dicamba", 4, 0)}, NoInversion: label.Yes, HasRateHigh: true, RateHigh: rateIn(t, 90, flAcre)}
	unseen := "signs of an inversion (not looked at; the label entry of P forbids it)"
	all := "P: its label entry lists all turf; the label of a herbicide names its grasses"
	b := newAcre(t, "tall_fescue", []core.Product{{ProductName: "P", Label: e}})
	in := b.ready(laying{"2026-05-28", "P", 43.56, flAcre})
	if r := before(t, b.Book, in); !slices.Contains(r.NotChecked, unseen) || !slices.Contains(r.NotChecked, all) {
		t.Errorf("%q", r.NotChecked)
	}
	e.Grasses = []string{"tall_fescue"}
	log(t, b.Book, &core.Product{ProductName: "P", Label: e}, &core.Weather{Wind: core.Known(measure.MPH(5)), WindFrom: "W", Temp: core.Known(70.0), Inversion: label.No})
	if r := before(t, b.Book, in); slices.Contains(r.NotChecked, unseen) || slices.Contains(r.NotChecked, all) {
		t.Errorf("%q", r.NotChecked)
	}
}

// TestABitOverTheMostIsToldAsMore: 2.02 of 2 fl oz are not 1.0 times the label's most.
func TestABitOverTheMostIsToldAsMore(t *testing.T) {
	e := label.Entry{Kind: "herbicide", Form: measure.Liquid, HasRateHigh: true, RateHigh: rateIn(t, 100, flAcre)}
	b := newAcre(t, "tall_fescue", []core.Product{{ProductName: "P", Label: e}})
	f := find(before(t, b.Book, b.ready(laying{"2026-05-28", "P", 101, flAcre})), "dose")
	if f == nil || f.Weight != Stop || !strings.Contains(f.Says, "1.01 times the label's most") {
		t.Errorf("%+v", f)
	}
}
