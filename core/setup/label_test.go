package setup

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/sheet"
)

// TestTheLabelFormAsksEveryColumn: nothing of a label entry can only be imported.
func TestTheLabelFormAsksEveryColumn(t *testing.T) {
	f, ok := For(Label, "iron", withDay(t))
	if !ok {
		t.Fatal("no form")
	}
	for _, c := range sheet.Columns(sheet.Products) {
		if d, _ := f.Field(c.Name); d == nil && c.Name != "name" && c.Name != "form" {
			t.Errorf("the form does not ask %s", c.Name)
		}
	}
}

// TestALabelInFull: every column's example is taken, and stands there when the form is opened again.
func TestALabelInFull(t *testing.T) {
	b := withDay(t)
	said := Answers{}
	for _, c := range sheet.Columns(sheet.Products) {
		if c.Name != "name" && c.Name != "form" {
			said[c.Name] = c.Example
		}
	}
	said["grasses"] = "tall_fescue; kentucky_bluegrass"
	facts, err := answer(t, Label, "iron", b, said)
	enter(t, b, facts, err)
	if h := b.Products()[0]; len(h.Versions) != 2 || h.Versions[0].Label.MostYear.Known || !h.Versions[1].Label.MostYear.Known {
		t.Errorf("%+v", h)
	}
	f, _ := For(Label, "iron", b)
	start := f.Start()
	for k, v := range said {
		if k != "rates" && start[k] != v { // the names of its grasses stand in other words
			t.Errorf("%s stands as %q after %q", k, start[k], v)
		}
	}
	if again, err := sheet.Change(b.Product("iron"), map[string]string{"actives": start["actives"], "most_year": start["most_year"], "rates": start["rates"]}); err != nil ||
		again.Label.MostYear != b.Product("iron").Label.MostYear || again.Label.Actives[0] != b.Product("iron").Label.Actives[0] {
		t.Errorf("%+v (%v)", again, err)
	}
	if facts, err := answer(t, Label, "iron", b, nil); err != nil || len(facts) != 0 {
		t.Errorf("nothing was changed: %v (%v)", facts, err)
	}
	facts, err = answer(t, Label, "iron", b, Answers{"grasses": "kentucky_bluegrass; tall_fescue"})
	if err != nil || len(facts) != 0 {
		t.Errorf("the same ticks in another order: %v (%v)", facts, err)
	}
	facts, err = answer(t, Label, "iron", b, Answers{"temp_max_f": "none", "signal": ""})
	enter(t, b, facts, err)
	if e := b.Product("iron").Label; e.TempMax.Known || !e.NoneOnLabel(label.LimitTempMax) || e.Signal != "" || !e.TempMin.Known || len(e.Rates) != 1 {
		t.Errorf("%+v", e)
	}
}

// TestWhatIsWrongInALabel: the field is named, by what is typed and by what the book refuses.
func TestWhatIsWrongInALabel(t *testing.T) {
	b := withDay(t)
	for _, r := range []struct{ key, said, field, what, do string }{
		{"rate_high", "4 lb/acre", "rate_high", "is a weight", "both units"},
		{"rate_high", "4", "rate_high", "has no unit", "both units"},
		{"temp_max_f", "200", "temp_max_f", "out of range", "-20 to 130 (F), or none"},
		{"rates", "tall fescue: 4 lb per acre", "rates", "is a weight", "a colon and their rates"},
		{"package", "5 lb", "package", "is a weight", "2.5 gal"},
		{"signal", "poison", "signal", "cannot be chosen", ""},
		{"actives", "irom 5%", "actives", "no active that the reference knows", "nearest known: ferrous sulfate (iron)"},
	} {
		_, err := answer(t, Label, "iron", b, Answers{r.key: r.said})
		var w *Wrong
		if !errors.As(err, &w) || w.Field != r.field || !strings.Contains(w.What, r.what) || !strings.Contains(w.Do, r.do) {
			t.Errorf("%s %q: %+v (%v)", r.key, r.said, w, err)
		}
	}
	_, err := answer(t, Label, "iron", b, Answers{"rate_high": "4 fl oz per acre", "rate_low": "8 fl oz per acre"})
	var p *core.Problem
	if !errors.As(err, &p) || !strings.Contains(p.What, "is above the highest") {
		t.Errorf("%v", err)
	}
}

// TestTheReferenceOffersTicks: what is offered is what sources that were read back; it stands until something else is
// answered, and goes when the actives do.
func TestTheReferenceOffersTicks(t *testing.T) {
	f, _ := For(Product, "", withDay(t))
	a := f.Start()
	f.Arrive(1, a)
	if a["grasses"] != "" {
		t.Errorf("without an active: %q", a["grasses"])
	}
	a["actives"] = "mesotrione 4 lb/gal"
	f.Arrive(1, a)
	offered := label.PrefillGrasses([]string{"mesotrione"})
	if a["grasses"] != strings.Join(offered, Joint) || len(offered) == 0 {
		t.Errorf("%q, offered %v", a["grasses"], offered)
	}
	d, _ := f.Field("grasses")
	for i, o := range d.Options {
		if marked := strings.HasSuffix(o.Words, ", reference"); marked != slices.Contains(offered, o.Value) || marked != (i > 0 && i <= len(offered)) {
			t.Errorf("option %d is %q", i, o.Words)
		}
	}
	a["actives"] = "mesotrione 4 lb/gal; own: x 5%"
	f.Arrive(1, a)
	if a["grasses"] != "" {
		t.Errorf("with an active that the reference does not have: %q", a["grasses"])
	}
	a["grasses"] = "tall_fescue"
	a["actives"] = "mesotrione 4 lb/gal"
	f.Arrive(1, a)
	if a["grasses"] != "tall_fescue" {
		t.Errorf("what was ticked by hand became %q", a["grasses"])
	}
	// A row that was recalled offers nothing.
	for _, info := range label.Actives() {
		for _, g := range label.PrefillGrasses([]string{info.Name}) {
			if v := label.Tolerance(info.Name, g, label.Circumstances{}); v.Recalled || v.Rating != label.Tolerant {
				t.Errorf("%s is offered for %s: %+v", g, info.Name, v)
			}
		}
	}
}

func TestTheTargetOfAMix(t *testing.T) {
	b := withDay(t)
	facts, err := answer(t, Recipe, "iron", b, Answers{"target_0": "moss"})
	enter(t, b, facts, err)
	if p := b.Mix("iron").Parts[0]; p.Target != "moss" || p.Rate.Text() != "2.00 fl oz per 1,000 sq ft" {
		t.Errorf("%+v", p)
	}
	if facts, err := answer(t, Recipe, "iron", b, nil); err != nil || len(facts) != 0 {
		t.Errorf("%v (%v)", facts, err)
	}
	facts, err = answer(t, Mix, "", b, Answers{"mix": "two", "product_1": "iron", "rate_1": "1 pt/acre", "target_1": "moss, in shade"})
	enter(t, b, facts, err)
	if p := b.Mix("two").Parts[0]; p.Target != "moss, in shade" {
		t.Errorf("%+v", p)
	}
}

// TestAChangeOfAnotherFigureTicksNothing: a label entry that lists no grass lists none after its form was gone through.
func TestAChangeOfAnotherFigureTicksNothing(t *testing.T) {
	b := withDay(t)
	p := *b.Product("iron")
	p.Label.Grasses, p.Label.Actives = nil, []label.Active{{Name: "mesotrione", PoundsPerGallon: 4}, {Name: "dicamba 0.5"}}
	enter(t, b, []core.Fact{&p}, nil)
	f, _ := For(Label, "iron", b)
	a := f.Start()
	for i := range f.Pages {
		f.Arrive(i, a)
	}
	a["days_between"] = "7"
	facts, err := f.Facts(b, at, a)
	enter(t, b, facts, err)
	if e := b.Product("iron").Label; len(e.Grasses) != 0 || e.DaysBetween.V != 7 || len(e.Actives) != 2 || e.Actives[1].Name != "dicamba 0.5" {
		t.Errorf("%+v", e)
	}
}
