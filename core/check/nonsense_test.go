package check_test

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/grid"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

const nonsenseRig = `{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"a","capacity_gal":300,"heel_gal":2},{"letter":"b","name":"b","capacity_gal":160,"heel_gal":2}],"cell_gal":0.2,"return_line_gal":0.1,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.6,"flow_gpm":2.5},{"name":"spreader","kind":"spreader","hopper_lb":80}]}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":[]}`

// taken enters a fact if the book takes it: what is refused is no matter of the check.
func taken(b *core.Book, at core.Moment, f core.Fact) bool {
	es, err := b.Prepare("x", at, f)
	if err != nil {
		return false
	}
	for _, e := range es {
		if err := b.Apply(e); err != nil {
			panic(err)
		}
	}
	return true
}

// odd draws a figure from the edges of what is allowed, now and then one beyond them.
func odd(r *rapid.T, name string, low, high float64) float64 {
	switch rapid.IntRange(0, 40).Draw(r, name+" how") {
	case 0:
		return rapid.SampledFrom([]float64{math.Copysign(0, -1), -1, 1e15, 1e300, -1e308, math.MaxFloat64}).Draw(r, name)
	case 1, 2, 3, 4, 5:
		return min(max(rapid.SampledFrom([]float64{5e-324, 1e-310, 1e-12, 1e-9, 1e-6, 1e-3}).Draw(r, name), low), high)
	case 6, 7, 8, 9, 10:
		return rapid.SampledFrom([]float64{low, high, math.Nextafter(high, low)}).Draw(r, name)
	}
	return min(max(rapid.SampledFrom([]float64{0, 0.5, 1, 2, 7, 10, 28.5, 30, 60, 85, 99.999, 365, 366}).Draw(r, name), low), high)
}

func oddMaybe(r *rapid.T, name string, low, high float64) core.Maybe[float64] {
	if rapid.Bool().Draw(r, name+" known") {
		return core.Known(odd(r, name, low, high))
	}
	return core.Maybe[float64]{}
}

// oddRates draws so many rates, each at least as high as the one before, some of them unknown.
func oddRates(r *rapid.T, kind measure.Kind, n int) []core.Maybe[measure.Rate] {
	out := make([]core.Maybe[measure.Rate], n)
	least := core.LowestRate
	for i := range out {
		if rapid.Bool().Draw(r, "rate known") {
			v := rapid.SampledFrom([]float64{core.LowestRate, 1e-6, 0.01, 0.3, 3, 40, 1e4, 1e8, core.HighestRate, 5e-324, 0}).Draw(r, "rate")
			if v >= core.LowestRate {
				least = max(least, v)
				v = least
			}
			out[i] = core.Known(measure.Rate{V: v, Kind: kind})
		}
	}
	return out
}

func oddDate(r *rapid.T, name string) string {
	return rapid.SampledFrom([]string{"", "2026-05-28", "2026-05-01", "2026-02-30", "0000-00-00", "0000-01-01", "0001-01-01", "9999-12-31", "2024-02-29", "2026-12-31", "x", "2026-5-1"}).Draw(r, name)
}

var someGrasses = []string{"tall_fescue", "zoysiagrass", "centipedegrass"}

func oddProduct(r *rapid.T, name string, form measure.Kind) *core.Product {
	e := label.Entry{Form: form, Kind: rapid.SampledFrom([]string{"herbicide", "fertiliser", "iron"}).Draw(r, "kind"), Grasses: []string{label.AllTurf}}
	for _, a := range rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"dicamba", "metsulfuron-methyl", "urea (nitrogen)", "own active"}), 0, 2, rapid.ID).Draw(r, "actives") {
		e.Actives = append(e.Actives, label.Active{Name: a, PoundsPerGallon: odd(r, "lb", 0, core.MostPoundsPerGallon), PercentByWeight: odd(r, "pct", 0, 100), MostYear: oddRates(r, measure.Dry, 1)[0]})
	}
	rates := oddRates(r, form, 5)
	e.HasRateLow, e.RateLow, e.HasRateHigh, e.RateHigh = rates[0].Known, rates[0].V, rates[2].Known, rates[2].V
	if rates[1].Known {
		e.Rates = []label.GrassRates{{Grasses: someGrasses[:1], High: rates[1]}}
	}
	e.Most, e.MostYear, e.MostTimes = rates[3], rates[4], oddMaybe(r, "times", 1, core.MostTimes)
	e.YearDays, e.DaysBetween = oddMaybe(r, "year days", 1, core.LongestDays), oddMaybe(r, "between", 0, core.LongestDays)
	e.TempMax, e.TempMin, e.RainFree = oddMaybe(r, "max", 60, core.HottestF), oddMaybe(r, "min", core.ColdestF, 60), oddMaybe(r, "rain", 0, core.LongestHours)
	e.ReseedDays, e.NewTurfDays, e.WaterFeet = oddMaybe(r, "reseed", 0, core.LongestDays), oddMaybe(r, "new", 0, core.LongestDays), oddMaybe(r, "water", 0, core.FurthestFeet)
	e.Nitrogen, e.QuickNitrogen, e.Density = oddMaybe(r, "n", 0, 100), oddMaybe(r, "quick", 0, 100), oddMaybe(r, "density", 0, core.MostPoundsPerGallon)
	return &core.Product{ProductName: name, Label: e}
}

func oddLawn(r *rapid.T) *core.Lawn {
	l := &core.Lawn{LawnName: "L", KnownSince: oddDate(r, "known")}
	for i, g := range someGrasses {
		z := core.Zone{Name: fmt.Sprint("z", i), Grass: g, Area: rapid.SampledFrom([]measure.Area{0, 1, 1000, 4 * measure.ThousandSquareFeet, measure.Area(4e12), math.MaxInt64}).Draw(r, "area")}
		z.Growth, z.GrowthSince = rapid.SampledFrom(append(label.Growths(), "")).Draw(r, "growth"), oddDate(r, "since")
		for _, kind := range rapid.SliceOfN(rapid.SampledFrom(label.SiteKinds()), 0, 2).Draw(r, "sites") {
			z.Sites = append(z.Sites, core.Site{Kind: kind, Feet: oddMaybe(r, "feet", 0, core.FurthestFeet), Date: oddDate(r, "date")})
		}
		l.Zones = append(l.Zones, z)
	}
	return l
}

// until draws until the book takes one; a plain one is entered where it takes none.
func until(b *core.Book, at core.Moment, draw func() core.Fact, plain core.Fact) bool {
	for range 6 {
		if taken(b, at, draw()) {
			return true
		}
	}
	taken(b, at, plain)
	return false
}

// Whatever figures and dates the book lets in, the check, the page of grasses and the sums of the year answer with figures
// that are figures, and in words that never say that all is well.
func TestNothingOddIsAnswered(t *testing.T) {
	odds := 0
	rapid.Check(t, func(r *rapid.T) {
		at := core.Moment{Unix: 1_779_980_000}
		b := core.NewBook(1)
		for _, s := range strings.Split(nonsenseRig, "\n") {
			l, err := core.DecodeLine([]byte(s))
			if err != nil || !taken(b, at, l.Fact) {
				r.Fatalf("%s: %v", s, err)
			}
		}
		for _, p := range []struct {
			name string
			form measure.Kind
		}{{"wet", measure.Liquid}, {"powder", measure.Dry}, {"grains", measure.Dry}} {
			if until(b, at, func() core.Fact { return oddProduct(r, p.name, p.form) }, &core.Product{ProductName: p.name, Label: label.Entry{Form: p.form, Grasses: []string{label.AllTurf}}}) {
				odds++
			}
		}
		until(b, at, func() core.Fact { return oddLawn(r) }, &core.Lawn{LawnName: "L", Zones: []core.Zone{{Name: "z0", Grass: "tall_fescue", Area: 4 * measure.ThousandSquareFeet}}})
		taken(b, at, &core.Setting{SettingName: core.RestrictedDates, Value: rapid.SampledFrom([]string{"01-01 to 12-31", "02-29 phosphorus", "2026-05-28", "0000-00-00", "x"}).Draw(r, "dates")})
		for range rapid.IntRange(1, 3).Draw(r, "loads") {
			taken(b, at, oddLoad(r))
		}
		taken(b, at, &core.LinedUp{Supply: []byte("a"), Return: 'a'})
		taken(b, at, &core.PushedBack{Into: 'b', Volume: measure.Gallons(4)})
		taken(b, at, &core.Weather{Wind: core.Known(measure.MPH(rapid.Float64Range(0, 100).Draw(r, "wind"))), Temp: oddMaybe(r, "temp", -60, 140), Humidity: oddMaybe(r, "humid", 0, 100), RainFree: oddMaybe(r, "rain h", 0, 1000), ForecastHigh: oddMaybe(r, "high", -60, 140)})
		taken(b, at, &core.VisitBegun{Lawn: "L"})
		for range rapid.IntRange(0, 2).Draw(r, "layings") {
			taken(b, at, &core.Sprayed{Lawn: "L", Applicator: "gun", Volume: core.Maybe[measure.Volume]{V: measure.Gallons(rapid.Float64Range(0.001, 100).Draw(r, "gal")), Known: rapid.Bool().Draw(r, "gal known")}})
			taken(b, at, &core.Spread{Lawn: "L", Applicator: "spreader", Product: "grains", By: core.ByWeight, Amount: measure.Amount{N: rapid.Int64Range(1, 1e14).Draw(r, "lb"), Kind: measure.Dry}})
		}
		answers(r, b, at)
	})
	if odds < 100 {
		t.Errorf("only %d odd labels were taken", odds)
	}
}

func oddLoad(r *rapid.T) *core.Loaded {
	f := &core.Loaded{Into: rapid.SampledFrom([]string{"a", "b", "spreader"}).Draw(r, "into"), Volume: measure.Gallons(rapid.SampledFrom([]float64{0.001, 1, 50, 100}).Draw(r, "volume"))}
	n := rapid.SampledFrom([]int64{1, 2, 1000, 1e9, 1e12, 4e13}).Draw(r, "amount")
	if f.Into == "spreader" {
		f.Volume = 0
		f.Parts = []core.LoadPart{{Product: "grains", Amount: measure.Amount{N: n, Kind: measure.Dry}}}
		return f
	}
	f.Parts = []core.LoadPart{{Product: "wet", Amount: measure.Amount{N: n, Kind: measure.Liquid}}, {Product: "powder", Amount: measure.Amount{N: n, Kind: measure.Dry}}}
	return f
}

// answers asks all that can be asked, and looks at each figure and each sentence.
func answers(r *rapid.T, b *core.Book, at core.Moment) {
	all := map[string]any{"proposal": check.Propose(b, check.Intent{At: at}), "grid": grid.OfBook(b, at)}
	for _, in := range []check.Intent{{Lawn: "L"}, {Lawn: "L", From: 'a'}, {Lawn: "L", From: 'b'}, {Lawn: "L", With: "spreader"}, {Lawn: "L", With: "spreader", Product: "grains"}} {
		in.At = at
		report, err := check.Before(b, in)
		all[fmt.Sprintf("before %q %c", in.With, in.From)] = []any{report, err}
		all["clean"] = check.ToClean(b, in)
	}
	if l := b.Lawn("L"); l != nil {
		for _, z := range l.Zones {
			for _, date := range []string{"2026-05-28", "2026-12-31", "9999-12-31", "0000-00-00"} {
				all["season "+z.Name+date] = b.SeasonOf("L", z.Name, date)
				all["year "+z.Name+date] = grid.Year(b, "L", z, date)
			}
		}
		all["lawn"] = grid.OfLawn(b, "L", at)
	}
	for what, a := range all {
		if wrong := wrongIn(reflect.ValueOf(a), 0); wrong != "" {
			r.Fatalf("%s: %s", what, wrong)
		}
	}
}

// wrongIn looks for figures that are none and for words that should not be said.
func wrongIn(v reflect.Value, depth int) string {
	if depth > 12 {
		return ""
	}
	switch v.Kind() {
	case reflect.Float64:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			return fmt.Sprint(f)
		}
	case reflect.String:
		for _, s := range []string{"NaN", "Inf", "%!", "safe", "-0 "} {
			if strings.Contains(v.String(), s) {
				return v.String()
			}
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			return wrongIn(v.Elem(), depth+1)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if wrong := wrongIn(v.Index(i), depth+1); wrong != "" {
				return wrong
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if wrong := wrongIn(v.Field(i), depth+1); wrong != "" {
				return v.Type().Field(i).Name + ": " + wrong
			}
		}
	}
	return ""
}
