package glance

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/testdata/demo"
)

func demoBook(t *testing.T) *core.Book {
	t.Helper()
	b := core.NewBook(1)
	for _, line := range strings.Split(strings.TrimSpace(demo.Journal), "\n") {
		l, err := core.DecodeLine([]byte(line))
		if err != nil {
			t.Fatal(err)
		}
		entries, err := b.Prepare("demo", l.At.V, l.Fact)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			if err := b.Apply(e); err != nil {
				t.Fatal(err)
			}
		}
	}
	return b
}

func TestEmptyBookHasNoNullLists(t *testing.T) {
	text, err := json.Marshal(Of(core.NewBook(1), core.Moment{}, core.Maybe[core.Moment]{}))
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"compartments", "hose", "applicators", "supply", "loads", "still_to_enter", "off_record", "dried_on"} {
		if !strings.Contains(string(text), `"`+key+`":[]`) {
			t.Errorf("%s is no empty list in %s", key, text)
		}
	}
	if page := Text(core.NewBook(1), core.Moment{}, core.Maybe[core.Moment]{}); !strings.Contains(page, "no day yet") {
		t.Errorf("the page of an empty book is\n%s", page)
	}
}

func TestDemoAtAGlance(t *testing.T) {
	b := demoBook(t)
	d := Of(b, b.LastAt(), core.Maybe[core.Moment]{})
	if d.Changeover == nil || d.Changeover.PushBack == nil || *d.Changeover.PushBack.Into != "b" {
		t.Errorf("the hose holds b, but the changeover is %+v", d.Changeover)
	}
	inHose := 0.0
	for _, p := range d.Hose {
		inHose += p.Volume + p.Air
		of := 0.0
		for _, v := range p.Origins {
			of = max(of, v)
		}
		if of > p.Volume {
			t.Errorf("%g gal of one origin in a parcel of %g", of, p.Volume)
		}
	}
	if size := b.Plumbing().Hoses[0].Size.Gallons(); math.Abs(inHose-size) > 1e-9 {
		t.Errorf("the parcels are %g gal, the hose is %g", inHose, size)
	}
	page := Text(b, b.LastAt(), core.Maybe[core.Moment]{})
	for _, want := range []string{"visit 4 of 15", "a to the pump, return to a", "push back", "traces of", d.State, d.Journal} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q in\n%s", want, page)
		}
	}
}

func TestHoldAndWhatIsOwedAreSeenAtAGlance(t *testing.T) {
	b := demoBook(t)
	lawn := b.Day().Next()[1].Lawn
	for _, f := range []core.Fact{
		&core.CarriedOver{Lawn: lawn, Reason: "too wet", Until: "2099-01-01"}, &core.Held{Cause: "wind"},
	} {
		es, err := b.Prepare("", b.LastAt(), f)
		if err != nil {
			t.Fatal(err)
		}
		if err := b.Apply(es[0]); err != nil {
			t.Fatal(err)
		}
	}
	d := Of(b, b.LastAt(), core.Maybe[core.Moment]{})
	if d.Hold == nil || d.Hold.Cause != "wind" || len(d.Owed) != 1 || d.Owed[0].Lawn != lawn || *d.Owed[0].Until != "2099-01-01" || len(d.Owed[0].Zones) != len(b.Lawn(lawn).Zones) {
		t.Errorf("%+v %+v", d.Hold, d.Owed)
	}
	page := Text(b, b.LastAt(), core.Maybe[core.Moment]{})
	for _, want := range []string{"on hold     for wind since ", "owed        " + lawn + ", ", "; too wet, since ", ", for 2099-01-01"} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q in\n%s", want, page)
		}
	}
}

// TestWhatIsNotEntered: what is still to enter and what stays off the record are in document and text.
func TestWhatIsNotEntered(t *testing.T) {
	b := demoBook(t)
	h := b.Products()[0]
	p := *h.Now()
	p.Label.Registration, p.Label.Kind = "", "herbicide"
	entries, err := b.Prepare("x", b.LastAt(), &p)
	if err != nil {
		t.Fatal(err)
	}
	if err := b.Apply(entries[0]); err != nil {
		t.Fatal(err)
	}
	d := Of(b, b.LastAt(), core.Maybe[core.Moment]{})
	page := Text(b, b.LastAt(), core.Maybe[core.Moment]{})
	if len(d.OffRecord) != 1 || d.OffRecord[0] != h.Name || !strings.Contains(page, "off record  no registration number, so the record stays incomplete: "+h.Name) {
		t.Errorf("%v\n%s", d.OffRecord, page)
	}
	found := false
	for _, m := range d.StillToEnter {
		found = found || m.Product != nil && *m.Product == h.Name && m.Field == "registration" && m.Lawn == nil && m.Why != ""
	}
	if !found || !strings.Contains(page, "still to enter for today's") {
		t.Errorf("%+v\n%s", d.StillToEnter, page)
	}
}

// 68 F and 50 per cent: 20 - 13.7 C (Stull 2011).
func TestWeatherAtAGlance(t *testing.T) {
	b := demoBook(t)
	high, seen := 88.0, &core.Weather{Temp: core.Known(68.0), Humidity: core.Known(50.0), ForecastSource: "county airport", ForecastAt: "00:00", Inversion: "no"}
	seen.ForecastHigh = core.Known(high)
	es, err := b.Prepare("", b.LastAt(), seen)
	if err != nil {
		t.Fatal(err)
	}
	if err := b.Apply(es[0]); err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(Of(b, b.LastAt(), core.Maybe[core.Moment]{}).Weather)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"forecast_high_f":88`, `"forecast_source":"county airport"`, `"forecast_at":"00:00"`, `"inversion":"no"`, `"delta_t_c":6.3`, `"wind_mph":null`} {
		if !strings.Contains(string(text), want) {
			t.Errorf("no %s in %s", want, text)
		}
	}
	if page := Text(b, b.LastAt(), core.Maybe[core.Moment]{}); !strings.Contains(page, "wet-bulb depression 6.3 C") || !strings.Contains(page, "forecast high 88 F by county airport at 00:00") {
		t.Errorf("the page says\n%s", page)
	}
}

// TestAgitationAtAGlance: null where the rig does not say how, 0 of a paddle while the day is open, else since the last entry
// that moved it.
func TestAgitationAtAGlance(t *testing.T) {
	b := demoBook(t)
	for _, c := range Of(b, b.LastAt(), core.Maybe[core.Moment]{}).Compartments {
		if set := b.RigCompartment(c.Letter[0]); set.Agitation == "" && c.Agitated != nil {
			t.Errorf("%s: %v", c.Letter, *c.Agitated)
		}
	}
	rig := *b.Rig()
	rig.Compartments = append([]core.RigCompartment(nil), rig.Compartments...)
	rig.Compartments[0].Agitation, rig.Compartments[1].Agitation = core.Jet, core.Paddle
	es, err := b.Prepare("", b.LastAt(), &rig)
	if err != nil {
		t.Fatal(err)
	}
	if err := b.Apply(es[0]); err != nil {
		t.Fatal(err)
	}
	at := b.LastAt()
	moved, ok := b.AgitatedAt('a', at)
	if !ok {
		t.Fatal("the demo loads a")
	}
	got := Of(b, at, core.Maybe[core.Moment]{}).Compartments
	if *got[0].Agitated != at.MinutesSince(moved) || *got[0].Agitated < 1 || *got[1].Agitated != 0 {
		t.Errorf("%v %v", *got[0].Agitated, *got[1].Agitated)
	}
	page := Text(b, at, core.Maybe[core.Moment]{})
	if strings.Count(page, "last agitated") != 1 || !strings.Contains(page, "; last agitated "+strconv.FormatFloat(at.MinutesSince(moved), 'f', 0, 64)+" min ago") {
		t.Error(page)
	}
}

// TestDriedOnAtAGlance: it stands until the strainers are opened and three rinses are entered.
func TestDriedOnAtAGlance(t *testing.T) {
	b := demoBook(t)
	var triclopyr *DriedOn
	list := Of(b, b.LastAt(), core.Maybe[core.Moment]{}).DriedOn
	for i := range list {
		if strings.HasPrefix(list[i].Product, "triclopyr") {
			triclopyr = &list[i]
		}
	}
	if triclopyr == nil || triclopyr.Opened || triclopyr.Rinses["b"] != 0 || len(triclopyr.Rinses) != 1 || triclopyr.Since == "" {
		t.Fatalf("%+v", list)
	}
	if page := Text(b, b.LastAt(), core.Maybe[core.Moment]{}); !strings.Contains(page, "triclopyr 4 EC, demo label: the strainers were not opened since 09:27, b has had 0 of 3 rinses\n") || !strings.Contains(page, "\ndried on    ") {
		t.Error(page)
	}
	enter := func(f core.Fact) {
		es, err := b.Prepare("", b.LastAt(), f)
		if err == nil {
			err = b.Apply(es[0])
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	for range 3 {
		for _, letter := range []byte("abc") {
			enter(&core.Rinsed{Compartment: letter, Water: measure.Gallons(10), To: "waste/field"})
		}
	}
	enter(&core.Cleaned{What: core.Strainers})
	if list := Of(b, b.LastAt(), core.Maybe[core.Moment]{}).DriedOn; len(list) != 0 {
		t.Errorf("%+v", list)
	}
	if page := Text(b, b.LastAt(), core.Maybe[core.Moment]{}); strings.Contains(page, "dried on") {
		t.Error(page)
	}
}
