package core

import (
	"fmt"
	"math"
	"strings"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

func (s *state) admitProduct(f *Product) error {
	if err := name("product", f.ProductName); err != nil {
		return err
	}
	e := &f.Label
	if e.Form != measure.Liquid && e.Form != measure.Dry {
		return refuse("Write liquid or dry.", "The form of %s is neither liquid nor dry.", f.ProductName)
	}
	if before := s.Product(f.ProductName); before != nil && before.Label.Form != e.Form {
		// The book counts a liquid in nanolitres and a dry product in nanograms, under one name.
		return refuse("Give the new product a name of its own.", "%s is in the book as %s and cannot become %s.", f.ProductName, formWords(before.Label.Form), formWords(e.Form))
	}
	for _, admit := range []func(*Product) error{admitActives, admitListed, admitLabelRates, admitLimits, admitAnswers, admitStuff, admitNone} {
		if err := admit(f); err != nil {
			return err
		}
	}
	return nil
}

func admitActives(f *Product) error {
	var names []string
	percent := 0.0
	for _, a := range f.Label.Actives {
		names, percent = append(names, strings.ToLower(strings.TrimSpace(a.Name))), percent+a.PercentByWeight
		if err := name("active", strings.ReplaceAll(a.Name, "/", " ")); err != nil {
			return err
		}
		if a.PoundsPerGallon < 0 || a.PoundsPerGallon > MostPoundsPerGallon || a.PercentByWeight < 0 || a.PercentByWeight > 100 {
			return refuse("Give 0 to 20 lb per gal, or 0 to 100 per cent.", "The content of %s in %s is %.6g lb per gal and %.6g per cent.", a.Name, f.ProductName, a.PoundsPerGallon, a.PercentByWeight)
		}
		if a.MostYear.Known {
			if a.MostYear.V.Kind != measure.Dry {
				return refuse("Give it by weight, such as 3 lb per acre.", "The most of %s in a year, for %s, is %s and not by weight.", a.Name, f.ProductName, a.MostYear.V.Text())
			}
			if err := rightRate(f.ProductName, "most of "+a.Name+" in a year", a.MostYear.V, measure.Dry); err != nil {
				return err
			}
		}
	}
	if percent > 100 {
		return refuse("Correct one of them.", "The actives of %s are %.6g per cent together.", f.ProductName, percent)
	}
	return unique("active", names)
}

// admitListed admits the grasses that are listed, and those that have rates of their own.
func admitListed(f *Product) error {
	for _, g := range f.Label.Grasses {
		if err := knownGrass(g, true); err != nil {
			return err
		}
	}
	seen := map[string]bool{}
	for _, r := range f.Label.Rates {
		if len(r.Grasses) == 0 || !r.Low.Known && !r.High.Known {
			return refuse("Give both, or leave it out.", "A rate of %s for some grasses has no grass or no rate.", f.ProductName)
		}
		for _, g := range r.Grasses {
			if err := knownGrass(g, false); err != nil {
				return err
			}
			if seen[g] {
				return refuse("Give it one.", "%s has two rates for %s.", f.ProductName, label.GrassWords(g))
			}
			seen[g] = true
			if len(f.Label.Grasses) > 0 && !f.Label.Lists(g) {
				return refuse("List the grass too, if the label does.", "%s has a rate for %s, which its label entry does not list.", f.ProductName, label.GrassWords(g))
			}
		}
	}
	return nil
}

// admitLabelRates admits the rates: each of the product's form, and none above one that it cannot be above.
func admitLabelRates(f *Product) error {
	e := &f.Label
	low, high := Maybe[measure.Rate]{V: e.RateLow, Known: e.HasRateLow}, Maybe[measure.Rate]{V: e.RateHigh, Known: e.HasRateHigh}
	rates := []namedRate{{"lowest rate", low}, {"highest rate", high}, {"most in one application", e.Most}, {"most in a year", e.MostYear}}
	pairs := [][2]namedRate{{rates[0], rates[1]}, {rates[1], rates[2]}, {rates[0], rates[2]}, {rates[2], rates[3]}, {rates[1], rates[3]}}
	for _, r := range e.Rates {
		words := " for " + grassWords(r.Grasses)
		own := []namedRate{{"lowest rate" + words, r.Low}, {"highest rate" + words, r.High}}
		rates = append(rates, own...)
		pairs = append(pairs, [2]namedRate{own[0], own[1]}, [2]namedRate{own[1], rates[2]}, [2]namedRate{own[1], rates[3]})
	}
	for _, r := range rates {
		if r.rate.Known {
			if err := rightRate(f.ProductName, r.what, r.rate.V, e.Form); err != nil {
				return err
			}
		}
	}
	for _, p := range pairs {
		if p[0].rate.Known && p[1].rate.Known && above(p[0].rate.V, p[1].rate.V) {
			return refuse("Change one of them.", "The %s of %s, %s, is above the %s, %s.", p[0].what, f.ProductName, p[0].rate.V.Text(), strings.TrimSuffix(p[1].what, " rate"), p[1].rate.V.Text())
		}
	}
	return nil
}

type namedRate struct {
	what string
	rate Maybe[measure.Rate]
}

func grassWords(grasses []string) string {
	var out []string
	for _, g := range grasses {
		out = append(out, label.GrassWords(g))
	}
	return strings.Join(out, ", ")
}

// figureOf is a figure of a label entry with what it may be.
type figureOf struct {
	what, unit string
	value      Maybe[float64]
	low, high  float64
}

func admitLimits(f *Product) error {
	e := &f.Label
	if e.HasWindMax && (e.WindMax < 0 || e.WindMax > StrongestWind) {
		return refuse("Give 0 to 100 mph.", "The wind limit of %s is %s.", f.ProductName, e.WindMax.Text())
	}
	for _, x := range []figureOf{
		{"number of applications in a year", "times", e.MostTimes, 1, MostTimes},
		{"label's year", "days", e.YearDays, 1, LongestDays},
		{"wait between applications", "days", e.DaysBetween, 0, LongestDays},
		{"highest temperature", "F", e.TempMax, ColdestF, HottestF},
		{"lowest temperature", "F", e.TempMin, ColdestF, HottestF},
		{"time without rain", "hours", e.RainFree, 0, LongestHours},
		{"wait before seeding", "days", e.ReseedDays, 0, LongestDays},
		{"wait on new turf", "days", e.NewTurfDays, 0, LongestDays},
		{"strip along water", "ft", e.WaterFeet, 0, FurthestFeet},
	} {
		if err := x.admit(f.ProductName); err != nil {
			return err
		}
	}
	if e.MostTimes.V != math.Trunc(e.MostTimes.V) {
		return refuse("Give a whole number.", "The number of applications in a year of %s is %g.", f.ProductName, e.MostTimes.V)
	}
	if e.TempMin.Known && e.TempMax.Known && e.TempMin.V > e.TempMax.V {
		return refuse("Change one of them.", "The lowest temperature of %s, %g F, is above the highest, %g F.", f.ProductName, e.TempMin.V, e.TempMax.V)
	}
	return nil
}

func (x figureOf) admit(product string) error {
	if x.value.Known && (x.value.V < x.low || x.value.V > x.high) {
		return refuse(fmt.Sprintf("Give %g to %g %s.", x.low, x.high, x.unit), "The %s of %s is %.6g %s.", x.what, product, x.value.V, x.unit)
	}
	return nil
}

// admitAnswers admits what is one of a few words.
func admitAnswers(f *Product) error {
	e := &f.Label
	answers := []string{label.Yes, label.No}
	for _, x := range []struct {
		what, said string
		words      []string
	}{
		{"signal word", e.Signal, label.Signals()},
		{"answer on restricted use", e.Restricted, answers},
		{"answer on inversions", e.NoInversion, answers},
		{"answer on bloom", e.NoBloom, answers},
	} {
		if x.said != "" && !containsText(x.words, x.said) {
			return refuse("Say one of "+strings.Join(x.words, ", ")+", or leave it blank.", "The %s of %s is %q.", x.what, f.ProductName, x.said)
		}
	}
	return nil
}

// admitStuff admits what the product is made of and what it costs.
func admitStuff(f *Product) error {
	e := &f.Label
	for _, x := range []figureOf{
		{"nitrogen", "per cent", e.Nitrogen, 0, 100},
		{"phosphate", "per cent", e.Phosphate, 0, 100},
		{"potash", "per cent", e.Potash, 0, 100},
		{"quick share of the nitrogen", "per cent", e.QuickNitrogen, 0, 100},
		{"weight of a gallon", "lb", e.Density, 0, MostPoundsPerGallon},
	} {
		if err := x.admit(f.ProductName); err != nil {
			return err
		}
	}
	if sum := e.Nitrogen.Or(0) + e.Phosphate.Or(0) + e.Potash.Or(0); sum > 100 {
		return refuse("Correct one of them.", "Nitrogen, phosphate and potash of %s are %.6g per cent together.", f.ProductName, sum)
	}
	if err := label.CheckMixingOrder(e.MixingOrder); e.MixingOrder != "" && err != nil {
		return troubled(err)
	}
	if e.Price.Known && (e.Price.V < 0 || e.Price.V > HighestPrice) {
		return refuse("Give 0 to 100,000 dollars.", "The price of %s is %s.", f.ProductName, e.Price.V.Text())
	}
	if e.Package.N != 0 && e.Package.Kind != e.Form {
		return refuse("Give it in the other kind of unit.", "The package of %s holds %s, but the product is %s.", f.ProductName, e.Package.Text(), formWords(e.Form))
	}
	if !PackageFits(e.Package) {
		return refuse("Give up to 10,000 gal or 22,000 lb.", "The package of %s holds %s.", f.ProductName, e.Package.Text())
	}
	return nil
}

// admitNone admits what the label is said to have none of: limits that there are, and that are not given.
func admitNone(f *Product) error {
	e := &f.Label
	given := map[string]bool{
		label.LimitRateLow: e.HasRateLow, label.LimitRateHigh: e.HasRateHigh, label.LimitMost: e.Most.Known, label.LimitMostYear: e.MostYear.Known,
		label.LimitMostTimes: e.MostTimes.Known, label.LimitDaysBetween: e.DaysBetween.Known, label.LimitWindMax: e.HasWindMax, label.LimitTempMax: e.TempMax.Known,
		label.LimitTempMin: e.TempMin.Known, label.LimitRainFree: e.RainFree.Known, label.LimitReseed: e.ReseedDays.Known, label.LimitNewTurf: e.NewTurfDays.Known,
		label.LimitWater: e.WaterFeet.Known,
	}
	for _, n := range e.None {
		has, known := given[n]
		switch {
		case !known:
			hint := "It may be one of " + strings.Join(label.Limits(), ", ") + "."
			if near := label.Nearest(n, label.Limits()); near != "" {
				hint = "The nearest is " + near + ". " + hint
			}
			return refuse(hint, "%s is said to have no %q, which is no limit of a label.", f.ProductName, n)
		case has:
			return refuse("Take one of the two back.", "%s has a %s and is said to have none.", f.ProductName, strings.ReplaceAll(n, "_", " "))
		}
	}
	return unique("limit that is none", e.None)
}

func knownGrass(g string, allTurf bool) error {
	if _, ok := label.FindGrass(g); ok || (allTurf && g == label.AllTurf) {
		return nil
	}
	hint := "Nearest known names: " + strings.Join(label.NearestGrasses(g), ", ")
	if allTurf {
		hint += "; or all_turf"
	}
	return refuse(hint+".", "%q is not a known grass.", g)
}

func rightRate(product, what string, r measure.Rate, form measure.Kind) error {
	if r.Kind != form {
		return refuse("Give it in the other kind of unit.", "The %s of %s is a %s rate, but the product is %s.", what, product, formWords(r.Kind), formWords(form))
	}
	if !RateFits(r) {
		return refuse("Give more than 0, as the label has it.", "The %s of %s is %s.", what, product, r.Text())
	}
	return nil
}
