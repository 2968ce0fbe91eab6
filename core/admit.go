package core

import (
	"fmt"
	"strings"
	"time"
	"unicode"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// admit says whether a fact entered at that time could have happened. It only reads. It is no check: what is wrong for the grass
// can still have happened, and is written down.
func (s *state) admit(f Fact, at Moment) error {
	switch f := f.(type) {
	case *Rig:
		return s.admitRig(f)
	case *Product:
		return s.admitProduct(f)
	case *Mix:
		return s.admitMix(f)
	case *Lawn:
		return admitLawn(f)
	case *GrowthSeen:
		return s.admitGrowthSeen(f)
	case *Cautioned:
		return s.admitCautioned(f)
	case *Noted:
		return s.admitNoted(f)
	case *Setting:
		return admitSetting(f)
	}
	return s.admitDayFact(f, at)
}

func (s *state) admitDayFact(f Fact, at Moment) error {
	switch f := f.(type) {
	case *DayOpened:
		return s.admitDayOpened(f)
	case *DayClosed:
		return s.needDay("close it")
	case *VisitBegun:
		return s.admitVisitBegun(f, at)
	case *VisitSkipped:
		return s.admitVisitSkipped(f)
	case *VisitDone:
		return s.admitVisitDone(f)
	case *Routed:
		return s.admitRouted(f)
	case *CarriedOver:
		return s.admitCarriedOver(f, at)
	case *Held:
		return s.admitHeld(f)
	case *Resumed:
		return s.admitResumed()
	case *Weather:
		return admitWeather(f)
	case *Overridden:
		return s.admitOverridden(f)
	}
	return s.admitMove(f)
}

// admitMove admits what moves liquid or product, or measures it.
func (s *state) admitMove(f Fact) error {
	switch f := f.(type) {
	case *Loaded:
		return s.admitLoaded(f)
	case *LinedUp:
		return s.admitLinedUp(f)
	case *PushedBack:
		return s.admitPushedBack(f)
	case *TintSeen:
		return admitTint(f)
	case *Filled:
		return s.admitFilled(f)
	case *Sprayed:
		return s.admitSprayed(f)
	case *GaugeRead:
		return s.admitGauge(f)
	case *Rinsed:
		return s.admitRinsed(f)
	case *Dumped:
		return s.admitDumped(f)
	case *LoadPlanned:
		return s.admitLoadPlanned(f)
	case *Ticked:
		return s.admitTicked(f)
	case *Fitted:
		return s.admitFitted(f)
	case *Spread:
		return s.admitSpread(f)
	}
	return refuse("Use a version that knows it.", "This fact is not known.")
}

// name refuses what could not stand on one line of a screen or in a place's name.
func name(what, s string) error {
	switch {
	case strings.TrimSpace(s) == "":
		return refuse("Give it a name.", "The name of the %s is empty.", what)
	case s != strings.TrimSpace(s):
		return refuse("Take the spaces off.", "The name of the %s, %q, begins or ends with a space.", what, s)
	case len([]rune(s)) > LongestName:
		return refuse(fmt.Sprintf("Shorten it to %d.", LongestName), "The name of the %s has %d letters; %d are allowed.", what, len([]rune(s)), LongestName)
	case strings.ContainsRune(s, '/'):
		return refuse("Write it without.", "The name of the %s, %q, holds a slash, which parts the names of places.", what, s)
	}
	for _, r := range s {
		if unicode.IsControl(r) {
			return refuse("Write it on one line.", "The name of the %s holds a control character.", what)
		}
	}
	return nil
}

func unique(what string, names []string) error {
	seen := map[string]bool{}
	for _, n := range names {
		if seen[n] {
			return refuse("Name it once, or give each a name of its own.", "The %s %q is named twice.", what, n)
		}
		seen[n] = true
	}
	return nil
}

// What an amount can be at most.
const (
	largestAmount = int64(10_000_000_000_000_000) // 10,000 kg, or more than 2 million gal
	// strongest is how much of a dry product a load may hold, ng/nL: 5 kg/L, heavier than any powder. It
	// keeps a thousand tanks of it within an int64.
	strongest = 5000
)

func positive(what string, v measure.Volume) error {
	if v <= 0 {
		return refuse("Give more than 0 gal.", "%s is %s gal.", what, v.Text())
	}
	return bounded(what, v)
}

func bounded(what string, v measure.Volume) error {
	if v < 0 || v > LargestVolume {
		return refuse("Give 0 to 10,000 gal.", "%s is %s gal.", what, v.Text())
	}
	return nil
}

func (s *state) needDay(to string) error {
	if !s.day.Open {
		return refuse("Open the day first.", "No day is open, so you cannot %s.", to)
	}
	return nil
}

func (s *state) needRig() error {
	if s.rig == nil {
		return refuse("Enter the rig first.", "The book has no rig yet.")
	}
	return nil
}

func (s *state) admitProduct(f *Product) error {
	if err := name("product", f.ProductName); err != nil {
		return err
	}
	e := f.Label
	if e.Form != measure.Liquid && e.Form != measure.Dry {
		return refuse("Write liquid or dry.", "The form of %s is neither liquid nor dry.", f.ProductName)
	}
	if before := s.Product(f.ProductName); before != nil && before.Label.Form != e.Form {
		// The book counts a liquid in nanolitres and a dry product in nanograms, under one name.
		return refuse("Give the new product a name of its own.", "%s is in the book as %s and cannot become %s.", f.ProductName, formWords(before.Label.Form), formWords(e.Form))
	}
	for _, a := range e.Actives {
		if err := name("active", strings.ReplaceAll(a.Name, "/", " ")); err != nil {
			return err
		}
		if a.PoundsPerGallon < 0 || a.PoundsPerGallon > MostPoundsPerGallon || a.PercentByWeight < 0 || a.PercentByWeight > 100 {
			return refuse("Give 0 to 20 lb per gal, or 0 to 100 per cent.", "The content of %s in %s is %.6g lb per gal and %.6g per cent.", a.Name, f.ProductName, a.PoundsPerGallon, a.PercentByWeight)
		}
	}
	for _, g := range e.Grasses {
		if err := knownGrass(g, true); err != nil {
			return err
		}
	}
	for _, r := range []struct {
		has  bool
		rate measure.Rate
		what string
	}{{e.HasRateLow, e.RateLow, "lowest"}, {e.HasRateHigh, e.RateHigh, "highest"}} {
		if r.has {
			if err := rightRate(f.ProductName, r.what+" rate", r.rate, e.Form); err != nil {
				return err
			}
		}
	}
	if e.HasRateLow && e.HasRateHigh && e.RateLow.V > e.RateHigh.V {
		return refuse("Change one of them.", "The lowest rate of %s, %s, is above the highest, %s.", f.ProductName, e.RateLow.Text(), e.RateHigh.Text())
	}
	if e.HasWindMax && (e.WindMax < 0 || e.WindMax > StrongestWind) {
		return refuse("Give 0 to 100 mph.", "The wind limit of %s is %s.", f.ProductName, e.WindMax.Text())
	}
	return nil
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
	if !(r.V > 0) || r.V > 1e9 {
		return refuse("Give more than 0, as the label has it.", "The %s of %s is %s.", what, product, r.Text())
	}
	return nil
}

func (s *state) admitMix(f *Mix) error {
	if err := name("mix", f.MixName); err != nil {
		return err
	}
	if err := s.admitBase(f); err != nil {
		return err
	}
	if len(f.Parts) == 0 {
		return refuse("Name at least one product with its rate.", "The mix %s holds no product.", f.MixName)
	}
	var names []string
	for _, p := range f.Parts {
		names = append(names, p.Product)
		prod := s.Product(p.Product)
		if prod == nil {
			return s.noProduct(p.Product)
		}
		if err := rightRate(p.Product, "rate in mix "+f.MixName, p.Rate, prod.Label.Form); err != nil {
			return err
		}
	}
	return unique("product", names)
}

func (s *state) noProduct(n string) error {
	var known []string
	for i, h := range s.products {
		if i == 8 {
			known = append(known, "...")
			break
		}
		known = append(known, h.Name)
	}
	hint := "Enter its label first."
	if len(known) > 0 {
		hint = "Enter its label first, or use one of " + strings.Join(known, ", ") + "."
	}
	return refuse(hint, "There is no product %q in the book.", n)
}

func admitLawn(f *Lawn) error {
	if err := name("lawn", f.LawnName); err != nil {
		return err
	}
	if len(f.Zones) == 0 {
		return refuse("Give it at least one zone with a grass and an area.", "The lawn %s has no zone.", f.LawnName)
	}
	for _, z := range f.Zones {
		if err := name("zone", z.Name); err != nil {
			return err
		}
		if z.Grass == "" {
			return refuse("Name the grass; the check cannot work without it.", "The zone %s of %s has no grass.", z.Name, f.LawnName)
		}
		if err := knownGrass(z.Grass, false); err != nil {
			return err
		}
		if z.Area <= 0 || z.Area > LargestArea {
			return refuse("Give more than 0, up to 10 square kilometres.", "The area of zone %s of %s is %.6g sq ft.", z.Name, f.LawnName, z.Area.SquareFeet())
		}
		if z.Price.Known && (z.Price.V < 0 || z.Price.V > HighestPrice) {
			return refuse("Give 0 to 100,000 dollars.", "The price of zone %s of %s is %s.", z.Name, f.LawnName, z.Price.V.Text())
		}
	}
	return unique("zone", f.ZoneNames())
}

func (s *state) admitDayOpened(f *DayOpened) error {
	if _, err := time.Parse(time.DateOnly, f.Date); err != nil {
		return refuse("Write it as in 2026-05-28.", "%q is not a date.", f.Date)
	}
	if f.FlowModel != FlowModel {
		return refuse("Leave flow_model out.", "There is no flow model %d; this version knows %d.", f.FlowModel, FlowModel)
	}
	if strings.TrimSpace(f.Operator) == "" {
		return refuse("Say who works today.", "The day has no operator.")
	}
	if s.day.Date != "" && f.Date <= s.day.Date {
		if s.day.Open && f.Date == s.day.Date {
			return refuse("Go on with it.", "%s is open already.", f.Date)
		}
		return refuse("Open a later date.", "%s was opened already; %s does not come after it.", s.day.Date, f.Date)
	}
	for _, l := range f.Route {
		if s.Lawn(l) == nil {
			return s.noLawn(l)
		}
	}
	return unique("lawn on the route", f.Route)
}

func (s *state) noLawn(n string) error {
	return refuse("Enter the lawn first, or write its name as it stands in the book.", "There is no lawn %q in the book.", n)
}
