package setup

import (
	"errors"
	"strings"
	"testing"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

var at = core.At(time.Date(2026, 5, 28, 7, 0, 0, 0, time.UTC))

// answer fills a form: what stands there to begin with, and what is said.
func answer(t *testing.T, name, about string, b *core.Book, said Answers) ([]core.Fact, error) {
	t.Helper()
	f, ok := For(name, about, b)
	if !ok {
		t.Fatalf("no form %s", name)
	}
	a := f.Start()
	for k, v := range said {
		if d, _ := f.Field(k); d == nil {
			t.Fatalf("form %s has no field %q", name, k)
		}
		a[k] = v
	}
	return f.Facts(b, at, a)
}

func enter(t *testing.T, b *core.Book, facts []core.Fact, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	es, err := b.Prepare("x", at, facts...)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range es {
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
}

func withRig(t *testing.T) *core.Book {
	b := core.NewBook(1)
	facts, err := answer(t, Rig, "", b, Answers{"compartments": "200 100"})
	enter(t, b, facts, err)
	return b
}

func withDay(t *testing.T) *core.Book {
	b := withRig(t)
	for _, f := range []struct {
		name string
		said Answers
	}{
		{Product, Answers{"product": "iron", "unit": "fl_oz_per_1000_sqft", "rate": "2", "grasses": "all_turf"}},
		{Lawn, Answers{"lawn": "9 Elm", "area": "6200", "grass": "tall_fescue"}},
		{Day, Answers{"operator": "Jo", "gallons": "90"}},
	} {
		if got := Next(b); got != f.name {
			t.Fatalf("next is %q, not %q", got, f.name)
		}
		facts, err := answer(t, f.name, "", b, f.said)
		enter(t, b, facts, err)
	}
	return b
}

func TestAFirstDay(t *testing.T) {
	b := withDay(t)
	if n := Next(b); n != "" {
		t.Errorf("%q is still needed", n)
	}
	r := b.Rig()
	if len(r.Compartments) != 2 || r.Compartments[1].Capacity.Text() != "100.0" || r.Hoses[0].Volume.Text() != "1.72" || r.Cell.Text() != "0.20" {
		t.Errorf("%+v", r)
	}
	if got := b.Plumbing().Compartments[0].Liquid.Volume.Text(); got != "90.0" {
		t.Errorf("a holds %s gal", got)
	}
	if m := b.Mix("iron"); m == nil || b.MixIn("a") != "iron" || b.Day().Operator != "Jo" || len(b.Day().Visits) != 1 {
		t.Errorf("%+v %q %+v", m, b.MixIn("a"), b.Day())
	}
}

func TestAllApplicators(t *testing.T) {
	b := core.NewBook(1)
	facts, err := answer(t, Rig, "", b, Answers{
		"compartments": "300 gal, 160, 360 qt", "hose": "2 gal", "ride_on_tank": "14", "ride_on_lays": "0.3", "backpack_tank": "4", "backpack_lays": "1", "spreader_hopper": "60",
	})
	enter(t, b, facts, err)
	var got []string
	for _, a := range b.Rig().Applicators {
		got = append(got, a.Name+" "+a.Tank.Text())
	}
	if s := strings.Join(got, ", "); s != "gun 0, ride-on 14.0, backpack 4.00, spreader 0" && s != "gun 0.00, ride-on 14.0, backpack 4.00, spreader 0.00" {
		t.Error(s)
	}
	if c := b.Rig().Compartments[2].Capacity.Text(); c != "90.0" || b.Rig().Hoses[0].Volume.Text() != "2.00" {
		t.Errorf("c %s, hose %s", c, b.Rig().Hoses[0].Volume.Text())
	}
}

// TestWhatIsWrong: each answer that cannot be taken names its field, what is wrong and what is allowed.
func TestWhatIsWrong(t *testing.T) {
	b := withDay(t)
	lawn := Answers{"lawn": "1 Oak", "area": "5000", "grass": "zoysiagrass"}
	product := Answers{"product": "p", "unit": "pt_per_acre", "rate": "1", "grasses": "all_turf"}
	mix := Answers{"mix": "two", "product_1": "iron", "rate_1": "1 pt/acre"}
	for _, r := range []struct {
		form      string
		good      Answers
		key, said string
		field     string
		what, do  string // parts of the two sentences
	}{
		{Rig, nil, "compartments", "", "compartments", "Nothing is typed", "300 160 90"},
		{Rig, nil, "compartments", "550", "compartments", "names 1 of 2 to 6", "300 160 90"},
		{Rig, nil, "compartments", "1 2 3 4 5 6 7", "compartments", "names 7", "300 160 90"},
		{Rig, nil, "compartments", "300 20000", "compartments", "out of range", "up to 10,000 gal"},
		{Rig, nil, "compartments", "300 41 lb", "compartments", "is a weight", "gal"},
		{Rig, nil, "compartments", "300 2", "heel", "heel of compartment b is 2.00 gal", "10,000 gal"},
		{Rig, Answers{"compartments": "300 160"}, "hose", "1.7", "hose", "1.7 gal in the hose, or a bore of 1.7 in?", "Type 1.7 gal, or the bore with the length behind it"},
		{Rig, Answers{"compartments": "300 160"}, "hose", "3/8 x", "hose", "has not both", "3/8 x 300"},
		{Rig, Answers{"compartments": "300 160"}, "hose", "15 x 300", "hose", "out of range", "12 in"},
		{Rig, Answers{"compartments": "300 160"}, "hose", "300 ft", "hose", "is a length", "gal"},
		{Rig, Answers{"compartments": "300 160"}, "gun_lays", "", "gun_lays", "Nothing is typed", "1,000 sq ft"},
		{Rig, Answers{"compartments": "300 160"}, "gun_flow", "501", "gun_flow", "out of range", "500 gpm"},
		{Rig, Answers{"compartments": "300 160"}, "ride_on_tank", "14", "ride_on_lays", "Nothing is typed", "1,000 sq ft"},
		{Rig, Answers{"compartments": "300 160"}, "backpack_lays", "1", "backpack_tank", "Nothing is typed", "10,000 gal"},
		{Rig, Answers{"compartments": "300 160"}, "spreader_hopper", "5 gal", "spreader_hopper", "is a volume", "22,000 lb"},
		{Rig, Answers{"compartments": "300 160"}, "rig", "a/b", "rig", "slash", "without a slash"},
		{Product, product, "unit", "", "unit", "Nothing is chosen", "unit that the label uses"},
		{Product, product, "unit", "furlong", "unit", "cannot be chosen", "unit"},
		{Product, product, "rate", "", "rate", "Nothing is typed", "unit chosen above"},
		{Product, product, "rate", "0", "rate", "is no rate", "more than 0"},
		{Product, product, "rate", "2 lb/acre", "rate", "is a weight", "unit chosen above"},
		{Product, product, "rate_high", "0.5", "rate", "1 is more than the label's highest rate, 0.5", "one of the two"},
		{Product, product, "product", "iron", "product", `The product "iron" is in the book already`, "another name"},
		{Product, product, "mix", "iron", "mix", `The mix "iron" is in the book already`, "another name"},
		{Product, product, "rate_high", "some", "rate_high", "does not begin with a number", "or none"},
		{Product, product, "most_year", "2 lb/acre", "most_year", "is a weight", "or none"},
		{Product, product, "days_between", "-2", "days_between", "out of range", "0 to 1000 (days), or none"},
		{Product, product, "actives", "irom 5%", "actives", "is written as own: irom", "nearest known: ferrous sulfate (iron)"},
		{Product, product, "actives", "iron 101%", "actives", "out of range", "lb/gal"},
		{Product, product, "wind_max", "200", "wind_max", "out of range", "0 to 100 mph"},
		{Product, product, "grasses", "", "grasses", "Nothing is chosen", "at least one"},
		{Lawn, lawn, "area", "0", "area", "out of range", "sq ft"},
		{Lawn, lawn, "area", "41 gal", "area", "is a volume", "sq ft"},
		{Lawn, lawn, "grass", "", "grass", "Nothing is chosen", "one of the list"},
		{Lawn, lawn, "lawn", "9 Elm", "lawn", "in the book already", "another name"},
		{Mix, mix, "rate_1", "2", "rate_1", "2 fl oz per 1,000 sq ft, or 2 pt per acre?", "Type 2 fl oz/1000 sq ft or 2 pt/acre."},
		{Mix, mix, "rate_1", "", "rate_1", "Nothing is typed", "both units"},
		{Mix, mix, "product_1", "", "product_1", "Nothing is chosen", "product of the book"},
		{Mix, mix, "rate_2", "1 pt/acre", "product_2", "Nothing is chosen", "product of the book"},
	} {
		said := Answers{}
		for k, v := range r.good {
			said[k] = v
		}
		said[r.key] = r.said
		_, err := answer(t, r.form, "", b, said)
		var w *Wrong
		if !errors.As(err, &w) {
			t.Errorf("%s %s %q: taken, or refused as %v", r.form, r.key, r.said, err)
			continue
		}
		if w.Field != r.field || !strings.Contains(w.What, r.what) || !strings.Contains(w.Do, r.do) {
			t.Errorf("%s %s %q:\n got %s: %s / %s\nwant %s: %s / %s", r.form, r.key, r.said, w.Field, w.What, w.Do, r.field, r.what, r.do)
		}
	}
}

// TestTheLoadMustFit: what the book refuses of the day is said of the gallons.
func TestTheLoadMustFit(t *testing.T) {
	b := withRig(t)
	for _, f := range []struct {
		name string
		said Answers
	}{
		{Product, Answers{"product": "iron", "unit": "lb_per_acre", "rate": "2", "grasses": "all_turf"}},
		{Lawn, Answers{"lawn": "9 Elm", "area": "6200", "grass": "tall_fescue"}},
	} {
		facts, err := answer(t, f.name, "", b, f.said)
		enter(t, b, facts, err)
	}
	_, err := answer(t, Day, "", b, Answers{"operator": "Jo", "gallons": "250"})
	var w *Wrong
	if !errors.As(err, &w) || w.Field != "gallons" || !strings.Contains(w.What, "do not fit") {
		t.Errorf("%v", err)
	}
	facts, err := answer(t, Day, "", b, Answers{"operator": "Jo"})
	if err != nil || len(facts) != 1 {
		t.Errorf("a day without a load: %d facts (%v)", len(facts), err)
	}
}

func TestAMixOfAnotherMix(t *testing.T) {
	b := withDay(t)
	facts, err := answer(t, Product, "", b, Answers{"product": "weed", "unit": "oz_per_acre", "rate": "3", "grasses": "tall_fescue; zoysiagrass", "rate_high": "4", "registration": "00000-9", "most_year": "12", "days_between": "none"})
	if err != nil || len(facts) != 1 {
		t.Fatalf("a later product makes no mix unless it is named: %d facts (%v)", len(facts), err)
	}
	enter(t, b, facts, err)
	if p := b.Product("weed"); p.Label.Form.String() != "dry" || !p.Label.HasRateHigh || !p.Label.MostYear.Known || !p.Label.NoneOnLabel(label.LimitDaysBetween) || len(p.Label.Grasses) != 2 {
		t.Errorf("%+v", p)
	}
	facts, err = answer(t, Mix, "iron", b, Answers{"mix": "both", "product_1": "weed", "rate_1": "3 oz/acre"})
	enter(t, b, facts, err)
	if m := b.Mix("both"); m.Base != "iron" || len(m.Parts) != 2 || m.Parts[0].Product != "weed" {
		t.Errorf("%+v", m)
	}
}

func TestAZoneMore(t *testing.T) {
	b := withDay(t)
	facts, err := answer(t, Zone, "9 Elm", b, Answers{"zone": "back", "area": "0.1 acre", "grass": "zoysiagrass", "price": "12"})
	enter(t, b, facts, err)
	if l := b.Lawn("9 Elm"); len(l.Zones) != 2 || l.Zones[1].Area.Text() != "4,360" || !l.Zones[1].Price.Known {
		t.Errorf("%+v", l)
	}
	if _, err := answer(t, Zone, "9 Elm", b, Answers{"zone": "back", "area": "5", "grass": "zoysiagrass"}); err == nil {
		t.Error("a zone of the same name was taken")
	}
	if _, ok := For(Zone, "nowhere", b); ok {
		t.Error("a zone of no lawn")
	}
}

// TestFormsAreWhole: every field says what may be answered, every starting value can stand, and a value that is
// a measurement says where it comes from.
func TestFormsAreWhole(t *testing.T) {
	for _, b := range []*core.Book{core.NewBook(1), withDay(t)} {
		for _, name := range []string{Rig, Product, Label, Mix, Recipe, Lawn, Zone, Day} {
			about := map[string]string{Zone: "9 Elm", Label: "iron", Recipe: "iron"}[name]
			f, ok := For(name, about, b)
			if !ok {
				continue
			}
			seen := map[string]bool{}
			for _, p := range f.Pages {
				for _, d := range p.Fields {
					if d.Words == "" || d.Help == "" || d.Allowed == "" || seen[d.Key] || len(d.Words) > 22 {
						t.Errorf("%s: field %q is not whole", name, d.Key)
					}
					seen[d.Key] = true
					if err := d.Check(f.Start()); d.Start != "" && err != nil {
						t.Errorf("%s: %q cannot stand for %s: %v", name, d.Start, d.Key, err)
					}
					if strings.ContainsAny(d.Start, "0123456789") && d.Key != "rig" && d.Source == "" && name != Label && name != Recipe {
						t.Errorf("%s: nothing says where %q of %s comes from", name, d.Start, d.Key)
					}
				}
			}
		}
	}
}
