package sheet

import (
	"bytes"
	"encoding/csv"
	"maps"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// entry draws a whole label entry that a book admits.
func (d drawn) entry() label.Entry {
	e := label.Entry{Kind: d.text("kind"), Registration: d.text("registration"), Reentry: d.text("reentry"), FirstAid: d.text("first aid"), Emergency: d.text("emergency"), MixingClass: d.text("class")}
	if d.yes("dry") {
		e.Form = measure.Dry
	}
	e.MixingOrder = rapid.SampledFrom([]string{"", "first", "before ec: add to the half full tank", "with WG"}).Draw(d.T, "order")
	e.Sites, e.Grasses = d.list("sites"), d.grasses()
	e.Signal = rapid.SampledFrom(append(label.Signals(), "")).Draw(d.T, "signal")
	for _, p := range []*string{&e.Restricted, &e.NoInversion, &e.NoBloom} {
		*p = rapid.SampledFrom([]string{"", label.Yes, label.No}).Draw(d.T, "answer")
	}
	// Rates rise from one to the next, as admission wants them.
	rates := rapid.SliceOfN(rapid.Int64Range(1, 1<<40), 4, 4).Draw(d.T, "rates")
	slices.Sort(rates)
	rate := func(i int) core.Maybe[measure.Rate] {
		if d.yes("known") {
			return core.Known(measure.Rate{V: float64(rates[i]) / (1 << 20), Kind: e.Form})
		}
		return core.Maybe[measure.Rate]{}
	}
	low, high := rate(0), rate(1)
	e.RateLow, e.HasRateLow, e.RateHigh, e.HasRateHigh = low.V, low.Known, high.V, high.Known
	e.Most, e.MostYear = rate(2), rate(3)
	for _, g := range e.Grasses {
		r := label.GrassRates{Grasses: []string{g}, Low: rate(0), High: rate(1)}
		if g != label.AllTurf && (r.Low.Known || r.High.Known) {
			e.Rates = append(e.Rates, r)
		}
	}
	names := rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"iron", "2,4-D", "potassium salt of 2-(x)"}), 0, 2, rapid.ID[string]).Draw(d.T, "actives")
	for _, n := range names {
		a := label.Active{Name: n, PercentByWeight: float64(d.int("content", 0, 50))}
		if d.yes("most of it") {
			a.MostYear = core.Known(measure.Rate{V: float64(d.int("most", 1, 1<<30)) / 1024, Kind: measure.Dry})
		}
		e.Actives = append(e.Actives, a)
	}
	d.figures(&e)
	d.none(&e)
	return e
}

func (d drawn) figures(e *label.Entry) {
	for _, x := range []struct {
		p         *core.Maybe[float64]
		low, high int64
	}{
		{&e.MostTimes, 1, core.MostTimes},
		{&e.YearDays, 1, core.LongestDays},
		{&e.DaysBetween, 0, core.LongestDays},
		{&e.TempMin, core.ColdestF, 40},
		{&e.TempMax, 40, core.HottestF},
		{&e.RainFree, 0, core.LongestHours},
		{&e.ReseedDays, 0, core.LongestDays},
		{&e.NewTurfDays, 0, core.LongestDays},
		{&e.WaterFeet, 0, core.FurthestFeet},
		{&e.Nitrogen, 0, 40},
		{&e.Phosphate, 0, 30},
		{&e.Potash, 0, 30},
		{&e.QuickNitrogen, 0, 100},
		{&e.Density, 1, core.MostPoundsPerGallon},
	} {
		if d.yes("figure") {
			*x.p = core.Known(float64(d.int("quarters", 4*x.low, 4*x.high)) / 4)
		}
	}
	e.MostTimes.V = math.Trunc(e.MostTimes.V) // times are whole
	if e.HasWindMax = d.yes("wind"); e.HasWindMax {
		e.WindMax = measure.Speed(d.int("wind", 0, int64(core.StrongestWind)))
	}
	if d.yes("price") {
		e.Price = core.Known(measure.Money(d.int("price", 0, int64(core.HighestPrice))))
	}
	e.Package.Kind = e.Form
	if e.Package.N = d.int("package", 0, int64(core.LargestHopper)); e.Package.N == 0 {
		e.Package.Kind = measure.Liquid
	}
	if !core.PackageFits(e.Package) {
		e.Package = measure.Amount{N: 1, Kind: e.Form}
	}
}

// none says of some of what is blank that the label has none.
func (d drawn) none(e *label.Entry) {
	for _, f := range entryFields {
		if f.limit != "" && f.text(e) == "" && d.yes("none") {
			e.None = append(e.None, f.limit)
		}
	}
}

// TestWholeLabelsComeBack: what is written of a label entry is read as that entry, to the last digit.
func TestWholeLabelsComeBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		d, w := drawn{rt}, &written{kind: Products}
		var want []core.Fact
		for _, n := range distinct(d, "products") {
			f := &core.Product{ProductName: n, Label: d.entry()}
			w.rows, want = append(w.rows, Cells(f)), append(want, f)
		}
		same(rt, w, want, nil)
	})
}

// TestOneCellChanges: writing one cell anew changes what it says and nothing else, and writing it back restores all.
func TestOneCellChanges(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		d := drawn{rt}
		a := &core.Product{ProductName: "p", Label: d.entry()}
		b := &core.Product{ProductName: "p", Label: d.entry()}
		otherForm := b.Label.Form != a.Label.Form
		b.Label.Form = a.Label.Form
		from, to := Cells(a), Cells(b)
		name := rapid.SampledFrom(slices.Sorted(maps.Keys(from))).Draw(rt, "column")
		if name == "name" || name == "form" {
			return
		}
		if otherForm && strings.Contains(to[name], "oz") {
			return // an ounce that is typed is one of the product's own form
		}
		changed, err := Change(a, map[string]string{name: to[name]})
		if err != nil {
			return // amounts of the other form
		}
		now := Cells(changed)
		for k := range from {
			want := from[k]
			if k == name {
				want = to[k]
			}
			if now[k] != want {
				rt.Fatalf("%s was changed to %q, and %s from %q to %q", name, to[name], k, want, now[k])
			}
		}
		back, err := Change(changed, map[string]string{name: from[name]})
		if err != nil {
			rt.Fatal(err)
		}
		slices.Sort(back.Label.None)
		slices.Sort(a.Label.None)
		if !bytes.Equal(stored([]core.Fact{back}), stored([]core.Fact{a})) {
			rt.Fatalf("%s back and forth: %+v, not %+v", name, back.Label, a.Label)
		}
	})
}

// TestAnOldFileStillReads: a file with the columns that there were before says the same as it did.
func TestAnOldFileStillReads(t *testing.T) {
	f := take(t, core.NewBook(1), Products, prodHead+"p,liquid,herbicide,mesotrione 4 lb/gal,00000-91,tall fescue,4 fl oz per acre,8 fl oz per acre,9\n")[0].(*core.Product)
	want := label.Entry{
		Kind: "herbicide", Actives: []label.Active{{Name: "mesotrione", PoundsPerGallon: 4}}, Registration: "00000-91", Grasses: []string{"tall_fescue"},
		HasRateLow: true, HasRateHigh: true, HasWindMax: true, WindMax: 9 * measure.MilePerHour,
	}
	want.RateLow, _ = measure.ReadRate("4", "fl_oz_per_acre", measure.Liquid)
	want.RateHigh, _ = measure.ReadRate("8", "fl_oz_per_acre", measure.Liquid)
	if !reflect.DeepEqual(f.Label, want) {
		t.Errorf("%+v\n%+v", f.Label, want)
	}
	take(t, core.NewBook(1), Lawns, lawnHead+"x,,,front,tall fescue,5,,\n")
	take(t, filledBook(t), Mixes, mixHead+"m,example iron 5,4 fl oz per 1000 sqft\n")
}

// TestLimitsThatTheLabelHasNot: none is a value, blank is none.
func TestLimitsThatTheLabelHasNot(t *testing.T) {
	var columns, cells []string
	for _, f := range entryFields {
		if f.limit != "" {
			columns, cells = append(columns, f.Name), append(cells, "None on the label")
		}
	}
	var out bytes.Buffer
	c := csv.NewWriter(&out)
	_ = c.Write(append([]string{"name", "form"}, columns...))
	_ = c.Write(append([]string{"p", "dry"}, cells...))
	_ = c.Write(append([]string{"q", "dry"}, strings.Split(strings.Repeat(",", len(columns)-1), ",")...))
	c.Flush()
	facts := take(t, core.NewBook(1), Products, out.String())
	got := facts[0].(*core.Product).Label
	if len(got.None) != len(label.Limits()) {
		t.Errorf("%v", got.None)
	}
	for _, l := range label.Limits() {
		if !got.NoneOnLabel(l) {
			t.Errorf("%s is not said to be none", l)
		}
	}
	if blank := facts[1].(*core.Product).Label; len(blank.None) != 0 || got.HasRateHigh || got.MostYear.Known {
		t.Errorf("%v", blank.None)
	}
}

// TestCellsAsPeopleWriteThem reads some cells in the ways in which they are written.
func TestCellsAsPeopleWriteThem(t *testing.T) {
	for _, r := range []struct{ column, cell, back string }{
		{"rates", "Tall Fescue, kentucky bluegrass: 4 to 8 fl oz per acre; zoysiagrass: up to 4 fl_oz_per_acre", "tall fescue, Kentucky bluegrass: 4 fl oz per acre to 8 fl oz per acre; zoysiagrass: up to 4 fl oz per acre"},
		{"rates", "tall fescue: 1 1/2 pt/acre to 2 pt/acre", "tall fescue: 24 fl oz per acre to 32 fl oz per acre"},
		{"rates", "tall fescue: 2 pt/acre; fine fescue: at least 1 pt per acre", "tall fescue: up to 32 fl oz per acre; fine fescue: at least 16 fl oz per acre"},
		{"actives", "2,4-D 3.8 lb/gal most 3 lb per acre per year", "2,4-D 3.8 lb/gal most 3 lb per acre per year"},
		{"actives", "2,4-D 3.8 lb/gal most 3 lb/acre a year; iron 5%", "2,4-D 3.8 lb/gal most 3 lb per acre per year; iron 5%"},
		{"actives", "dicamba most 1 lb/acre", "dicamba most 1 lb per acre per year"},
		{"temp_max_f", "85 °F", "85"},
		{"temp_min_f", "-5", "-5"},
		{"days_between", "21 days", "21"},
		{"rain_free_h", "0.5 hours", "0.5"},
		{"water_ft", "1,000 feet", "1000"},
		{"nitrogen_pct", "2.5 %", "2.5"},
		{"price_usd", "$120", "120"},
		{"package", "2 1/2 gal", "2.5 gal"},
		{"package", "15 fl oz", "15 fl oz"},
		{"signal", "CAUTION", "caution"},
		{"restricted", "Yes", "yes"},
		{"most_year", "None", "none"},
		{"wind_max_mph", "4 m/s", "4000000 um/s"},
	} {
		f, err := Row(Products, map[string]string{"name": "p", "form": "liquid", r.column: r.cell}, nil)
		if err != nil {
			t.Errorf("%s %q: %v", r.column, r.cell, err)
			continue
		}
		if got := Cells(f.(*core.Product))[r.column]; got != r.back {
			t.Errorf("%s %q: %q, not %q", r.column, r.cell, got, r.back)
		}
	}
}

func TestSitesAsPeopleWriteThem(t *testing.T) {
	f, err := Row(Lawns, map[string]string{"lawn": "x", "zone": "front", "grass": "tall fescue", "area_sqft": "5", "sites": "Water 20 ft; well; seeding planned 2026-09-10; bloom and bees 1,000; tree roots 3 feet 2026-05-01"}, nil)
	want := []core.Site{
		{Kind: label.SiteWater, Feet: core.Known(20.0)},
		{Kind: label.SiteWell},
		{Kind: label.SiteSeeding, Date: "2026-09-10"},
		{Kind: label.SiteBloom, Feet: core.Known(1000.0)},
		{Kind: label.SiteRoots, Feet: core.Known(3.0), Date: "2026-05-01"},
	}
	if err != nil || !reflect.DeepEqual(f.(*core.Lawn).Zones[0].Sites, want) {
		t.Errorf("%+v (%v)", f, err)
	}
}

func (d drawn) date(what string) string {
	return rapid.SampledFrom([]string{"", "2026-01-01", "2025-11-30"}).Draw(d.T, what)
}

// stands draws how a zone stands and what lies by it.
func (d drawn) stands(z *core.Zone, r map[string]string) {
	z.Growth = rapid.SampledFrom(append(label.Growths(), "")).Draw(d.T, "growth")
	if z.Growth != "" {
		z.GrowthSince = d.date("since")
	}
	z.Cultivar = d.text("cultivar")
	var cells []string
	for range d.int("sites", 0, 3) {
		s := core.Site{Kind: rapid.SampledFrom(label.SiteKinds()).Draw(d.T, "site"), Date: d.date("on")}
		cell := label.SiteWords(s.Kind)
		if d.yes("feet") {
			s.Feet = core.Known(float64(d.int("feet", 0, 4*core.FurthestFeet)) / 4)
			cell += " " + fixed(s.Feet.V) + " ft"
		}
		z.Sites, cells = append(z.Sites, s), append(cells, strings.TrimSpace(cell+" "+s.Date))
	}
	r["growth"], r["growth_since"], r["cultivar"], r["sites"] = strings.ReplaceAll(z.Growth, "_", " "), z.GrowthSince, z.Cultivar, strings.Join(cells, "; ")
}

// TestWhatAFileHasNoColumnForStays: an older file, or one with a few columns, takes nothing away.
func TestWhatAFileHasNoColumnForStays(t *testing.T) {
	b := filledBook(t)
	was, mix, lawn := *b.Product("example mesotrione 4"), *b.Mix("example cool weed mix"), *b.Lawn("1 Sample Street")
	take(t, b, Products, "name,form,days_between,wind_max_mph\nexample mesotrione 4,liquid,28,\n")
	now := b.Product("example mesotrione 4").Label
	if now.DaysBetween.V != 28 || now.HasWindMax {
		t.Errorf("%+v", now)
	}
	now.DaysBetween, now.HasWindMax, now.WindMax = was.Label.DaysBetween, was.Label.HasWindMax, was.Label.WindMax
	if !reflect.DeepEqual(now, was.Label) {
		t.Errorf("it was\n%+v and is\n%+v", was.Label, now)
	}
	take(t, b, Mixes, mixHead+"example cool weed mix,example mesotrione 4,4 fl oz per acre\n")
	if p := b.Mix("example cool weed mix").Parts; len(p) != 1 || p[0].Target != mix.Parts[0].Target || p[0].Target == "" {
		t.Errorf("%+v", p)
	}
	take(t, b, Lawns, "lawn,zone,grass,area_sqft\n1 Sample Street,front,zoysiagrass,7000\n1 Sample Street,back,kentucky bluegrass,1000\n")
	after := *b.Lawn("1 Sample Street")
	if after.Zones[0].Grass != "zoysiagrass" || after.Phone != lawn.Phone || after.KnownSince != lawn.KnownSince || after.Customer != lawn.Customer {
		t.Errorf("%+v", after)
	}
	after.Zones[1].Area = lawn.Zones[1].Area
	if !reflect.DeepEqual(after.Zones[1], lawn.Zones[1]) || after.Zones[0].Cultivar != lawn.Zones[0].Cultivar || after.Zones[0].Price != lawn.Zones[0].Price {
		t.Errorf("it was\n%+v and is\n%+v", lawn.Zones, after.Zones)
	}
	// An empty cell under a column takes away.
	take(t, b, Lawns, "lawn,zone,grass,area_sqft,sites,phone\n1 Sample Street,back,kentucky bluegrass,1000,,\n")
	if l := b.Lawn("1 Sample Street"); len(l.Zones[0].Sites) != 0 || l.Phone != "" {
		t.Errorf("%+v", l)
	}
}

func (d drawn) clock(what, at string) string {
	return rapid.SampledFrom([]string{"", at}).Draw(d.T, what)
}
