package check

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// Missing is something that nobody has entered yet and on which a verdict of today would rest.
type Missing struct {
	Product string // of its label entry; empty: it is about a zone
	Lawn    string
	Zone    string
	Field   string
	Why     string // what is not checked without it
}

// StillToEnter lists what is not entered yet of the products that the rig holds or is to be loaded with, and of the
// zones of the visits ahead: what a verdict there would rest on. What a label has none of is entered.
func StillToEnter(b *core.Book) []Missing {
	zones := zonesAhead(b)
	if len(zones) == 0 {
		return nil
	}
	var out []Missing
	for i := range b.Products() {
		p := b.Products()[i].Now()
		if !onTheRig(b, p.ProductName) {
			continue
		}
		for _, f := range matters {
			if f.missing(p.Label, zones, b) {
				out = append(out, Missing{Product: p.ProductName, Field: f.field, Why: f.why})
			}
		}
	}
	for _, z := range zones {
		out = append(out, z.missing(b.Day().Date)...)
	}
	return out
}

// StillToEnterWords is how much there is still to enter for the day; empty if nothing.
func StillToEnterWords(b *core.Book) string {
	n := len(StillToEnter(b))
	if n == 0 {
		return ""
	}
	visits := 0
	for _, v := range b.Day().Visits {
		if isAhead(v) {
			visits++
		}
	}
	return fmt.Sprintf("%d %s still to enter for today's %d %s", n, plural(n, "figure"), visits, plural(visits, "visit"))
}

// zoneAhead is a zone of a lawn that is still to be called at.
type zoneAhead struct {
	lawn string
	core.Zone
}

func isAhead(v core.Visit) bool { return v.State == core.Planned || v.State == core.Begun }

func zonesAhead(b *core.Book) []zoneAhead {
	var out []zoneAhead
	if !b.Day().Open {
		return nil
	}
	seen := map[string]bool{}
	for _, v := range b.Day().Visits {
		l := b.Lawn(v.Lawn)
		if l == nil || !isAhead(v) || seen[v.Lawn] {
			continue
		}
		seen[v.Lawn] = true
		for _, z := range l.Zones {
			out = append(out, zoneAhead{v.Lawn, z})
		}
	}
	return out
}

// onTheRig tells whether the rig holds a product, or a load is planned that has it.
func onTheRig(b *core.Book, product string) bool {
	if all, _ := b.Aboard(product); all.N != 0 {
		return true
	}
	for _, plan := range b.LoadPlans() {
		for _, p := range plan.Parts {
			if p.Product == product {
				return true
			}
		}
	}
	return false
}

// matters lists the fields of a label entry that a verdict may rest on, and when it does.
var matters = []struct {
	field, why string
	missing    func(e label.Entry, zones []zoneAhead, b *core.Book) bool
}{
	{"grasses", "the label entry lists none, so every lawn is a stop", ofAny(func(e label.Entry) bool { return len(e.Grasses) == 0 })},
	{"grasses", "the label entry lists no grass of the visits ahead", func(e label.Entry, zones []zoneAhead, _ *core.Book) bool {
		for _, z := range zones {
			if e.Lists(z.Grass) {
				return false
			}
		}
		return len(e.Grasses) > 0
	}},
	{"registration", "the record of it stays incomplete", ofAny(func(e label.Entry) bool { return e.OffRecord() != "" })},
	{"actives", "neither the reference nor the year's most of an active is looked at", ofPesticides(func(e label.Entry) bool { return len(e.Actives) == 0 })},
	{"content of actives", "how much of an active goes down is not known", ofPesticides(noContent)},
	{"highest rate", "the dose is held against no limit", ofAny(func(e label.Entry) bool {
		return !e.HasRateHigh && !e.MostAnywhere().Known && !e.NoneOnLabel(label.LimitRateHigh)
	})},
	{"most in a year", "the year's sum is held against no limit", ofPesticides(func(e label.Entry) bool {
		return !e.MostYear.Known && !e.MostTimes.Known && !e.NoneOnLabel(label.LimitMostYear)
	})},
	{"days between", "how soon again is not checked", ofPesticides(func(e label.Entry) bool { return !e.DaysBetween.Known && !e.NoneOnLabel(label.LimitDaysBetween) })},
	{"wind limit", "the wind is held against the setting alone", ofPesticides(func(e label.Entry) bool { return !e.HasWindMax && !e.NoneOnLabel(label.LimitWindMax) })},
	{"highest temperature", "the heat of the day is not checked", ofPesticides(func(e label.Entry) bool { return !e.TempMax.Known && !e.NoneOnLabel(label.LimitTempMax) })},
	{"rain-free hours", "the rain ahead is not checked", ofPesticides(func(e label.Entry) bool { return !e.RainFree.Known && !e.NoneOnLabel(label.LimitRainFree) })},
	{"wait on new turf", "a zone on the way is newly seeded or sodded", inZones(onNewTurf, func(e label.Entry) bool { return !e.NewTurfDays.Known && !e.NoneOnLabel(label.LimitNewTurf) })},
	{"wait before seeding", "seeding is planned in a zone on the way", inZones(withSite(label.SiteSeeding), func(e label.Entry) bool { return !e.ReseedDays.Known && !e.NoneOnLabel(label.LimitReseed) })},
	{"strip along water", "water or a well lies by a zone on the way", inZones(withSite(label.SiteWater, label.SiteWell), func(e label.Entry) bool { return !e.WaterFeet.Known && !e.NoneOnLabel(label.LimitWater) })},
	{"bloom", "flowers that bees visit are in a zone on the way", inZones(withSite(label.SiteBloom), func(e label.Entry) bool { return e.Pesticide() && e.NoBloom == "" })},
	{"inversion", "signs of an inversion were seen", func(e label.Entry, _ []zoneAhead, b *core.Book) bool {
		return e.Pesticide() && e.NoInversion == "" && b.Weather() != nil && b.Weather().Inversion == label.Yes
	}},
	{"nitrogen", "the nitrogen of visit and year is not known", ofAny(func(e label.Entry) bool { return fertilises(e) && !e.Nitrogen.Known })},
}

func ofAny(blank func(label.Entry) bool) func(label.Entry, []zoneAhead, *core.Book) bool {
	return func(e label.Entry, _ []zoneAhead, _ *core.Book) bool { return blank(e) }
}

func ofPesticides(blank func(label.Entry) bool) func(label.Entry, []zoneAhead, *core.Book) bool {
	return func(e label.Entry, _ []zoneAhead, _ *core.Book) bool { return e.Pesticide() && blank(e) }
}

func inZones(so func(core.Zone) bool, blank func(label.Entry) bool) func(label.Entry, []zoneAhead, *core.Book) bool {
	return func(e label.Entry, zones []zoneAhead, _ *core.Book) bool {
		for _, z := range zones {
			if so(z.Zone) {
				return blank(e)
			}
		}
		return false
	}
}

func onNewTurf(z core.Zone) bool { return z.Growth == label.Seeded || z.Growth == label.Sodded }

func withSite(kinds ...string) func(core.Zone) bool {
	return func(z core.Zone) bool {
		for _, s := range z.Sites {
			for _, k := range kinds {
				if s.Kind == k {
					return true
				}
			}
		}
		return false
	}
}

func noContent(e label.Entry) bool {
	for _, a := range e.Actives {
		if a.PoundsPerGallon == 0 && a.PercentByWeight == 0 {
			return true
		}
	}
	return false
}

// fertilises tells whether a product is a fertiliser: by its kind, or because nitrogen is among its actives.
func fertilises(e label.Entry) bool {
	kind := strings.ToLower(e.Kind)
	if strings.Contains(kind, "fertilis") || strings.Contains(kind, "fertiliz") {
		return true
	}
	for _, a := range e.Actives {
		if n := strings.ToLower(a.Name); strings.Contains(n, "nitrogen") || n == "urea" {
			return true
		}
	}
	return false
}

// missing lists what is not known of a zone: how its grass stands, since this winter, and how far off or when its sites are.
func (z zoneAhead) missing(today string) []Missing {
	var out []Missing
	add := func(field, why string) {
		out = append(out, Missing{Lawn: z.lawn, Zone: z.Name, Field: field, Why: why})
	}
	switch {
	case z.Growth == "":
		add("growth", "how the grass stands was never said")
	case z.GrowthSince != "" && len(today) >= len("2026") && z.GrowthSince[:len("2026")] < today[:len("2026")] && !onNewTurf(z.Zone):
		add("growth", "how the grass stands was last said before the winter")
	}
	for _, s := range z.Sites {
		switch {
		case (s.Kind == label.SiteWater || s.Kind == label.SiteWell) && !s.Feet.Known:
			add("feet to the "+s.Kind, "the strip along it is not checked")
		case s.Kind == label.SiteSeeding && s.Date == "":
			add("date of the seeding", "the wait before it is not checked")
		}
	}
	return out
}
