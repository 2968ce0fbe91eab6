package check

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// noRegion as the setting nitrogen_region: the tables of all regions.
const noRegion = "none"

// nitrogenRule: pounds of nitrogen for each 1,000 sq ft in this visit and in the year, and what of it acts at once, against
// the reference by grass and region. What the label allows of a product is a matter of the rules of dose and season.
//
// Without a region the lowest figure for one application decides, because it is about burning the leaf and about what runs
// off; of a year the highest, because how much a grass needs differs with the climate.
func nitrogenRule(s *situation) []Finding {
	return s.perZoneOf("nitrogen", "", func() []Finding {
		var found []Finding
		for i, z := range s.zones {
			x := s.year(z)
			all, quick := x.NitrogenNow()
			if !s.judges(z.Name) || all.V.V <= 0 || !s.laysNitrogen(x) {
				continue
			}
			f := Finding{Part: PartZone, Active: "nitrogen", Grass: z.Grass, Zones: []string{z.Name}, Area: s.areas[i], Unit: unitNitrogen}
			s.nitrogenOnce(&f, z, inUnit(all.V, unitNitrogen))
			s.nitrogenQuick(&f, z, inUnit(all.V, unitNitrogen), quick)
			s.nitrogenYear(&f, z, x.Nitrogen())
			if f.Weight > None {
				found = append(found, f)
			}
		}
		return s.heaviest(found)
	})
}

// laysNitrogen tells whether some of what would go down holds nitrogen in more than a trace.
func (s *situation) laysNitrogen(x *core.Season) bool {
	for _, k := range s.all() {
		_, application := x.Planned(k)
		if n := s.b.ProductByKey(k).Label.NitrogenPerProduct(); application && (!n.Known || n.V > 0) {
			return true
		}
	}
	return false
}

// region is that of the operator's place; empty: all.
func (s *situation) region() string { return regionOf(s.b) }

func regionOf(b *core.Book) string {
	if set, ok := b.SettingText(core.NitrogenRegion); ok && set != noRegion {
		return set
	}
	return ""
}

// NitrogenYear are the rows of the reference against which the year's nitrogen on a grass is held: the highest that was read,
// and the highest that was recalled. None: it has no figure for that grass in the operator's region.
func NitrogenYear(b *core.Book, grass string) []label.NitrogenRow {
	var read, recalled []label.NitrogenRow
	for _, r := range label.NitrogenOf(label.NitrogenYear, grass, regionOf(b)) {
		list := &read
		if r.Source == memory {
			list = &recalled
		}
		if r.High.Known && (len(*list) == 0 || r.High.V > (*list)[0].High.V) {
			*list = []label.NitrogenRow{r}
		}
	}
	return append(read, recalled...)
}

// What a note of the table says of when a row holds.
const (
	withoutSlow = "no slow-release" // it is about what acts at once
	withSlow    = "with slow-release"
	dissolved   = "dissolved" // it is about what is sprayed
	inFall      = "fall"      // September to November; the months are common practice, no source
)

// nitrogenRows is the strictest row for one application that was read and the strictest that was recalled, of those that
// hold now; quick: of those about what acts at once.
func (s *situation) nitrogenRows(z core.Zone, quick bool) []label.NitrogenRow {
	var read, recalled []label.NitrogenRow
	for _, r := range label.NitrogenOf(label.NitrogenOnce, z.Grass, s.region()) {
		if !r.High.Known || strings.Contains(r.Note, withoutSlow) != quick || !s.holdsNow(r) {
			continue
		}
		list := &read
		if r.Source == memory {
			list = &recalled
		}
		if len(*list) == 0 || r.High.V < (*list)[0].High.V {
			*list = []label.NitrogenRow{r}
		}
	}
	return append(read, recalled...)
}

// holdsNow tells whether a row holds for the way it is laid and for the month.
func (s *situation) holdsNow(r label.NitrogenRow) bool {
	const september, november = "09", "11"
	switch d := s.date(); {
	case strings.Contains(r.Note, dissolved):
		return s.spraysNitrogen()
	case strings.Contains(r.Note, inFall) && len(d) >= 7:
		return d[5:7] >= september && d[5:7] <= november
	}
	return true
}

// spraysNitrogen tells whether some of what is sprayed holds nitrogen.
func (s *situation) spraysNitrogen() bool {
	for _, k := range s.products() {
		if n := s.b.ProductByKey(k).Label.NitrogenPerProduct(); n.V > 0 {
			return true
		}
	}
	return false
}

// nitrogenOnce holds what goes down in this visit against the most in one application.
func (s *situation) nitrogenOnce(f *Finding, z core.Zone, lb float64) {
	for _, r := range s.nitrogenRows(z, false) {
		if lb <= float64(r.High.V*core.Rounding) {
			continue
		}
		n := figures(lb, r.High.V)
		f.nitrogen(
			weightOf(r), r, lb,
			fmt.Sprintf("%s lb of nitrogen per 1,000 sq ft in this visit; the reference has at most %s in one application (%s: %s).", n[0], n[1], r.Region, r.Note),
			fmt.Sprintf("Lay %s lb per 1,000 sq ft or less, and the rest in another visit.", n[1]),
		)
	}
}

// nitrogenQuick holds what acts at once against the rule for what holds no slow-release nitrogen. Where it is not entered how
// much that is, and all of it would be too much, that is noted.
func (s *situation) nitrogenQuick(f *Finding, z core.Zone, all float64, quick core.Maybe[measure.Rate]) {
	for _, r := range s.nitrogenRows(z, true) {
		most := float64(r.High.V * core.Rounding)
		lb := inUnit(quick.V, unitNitrogen)
		switch {
		case quick.Known && lb > most:
			n := figures(lb, r.High.V)
			f.nitrogen(
				weightOf(r), r, lb,
				fmt.Sprintf("%s lb per 1,000 sq ft of nitrogen that acts at once; the reference has at most %s in one application (%s: %s).", n[0], n[1], r.Region, r.Note),
				"Lay less, or take a product with slow-release nitrogen.",
			)
		case !quick.Known && all > most:
			n := figures(all, r.High.V)
			f.nitrogen(
				Note, r, all,
				fmt.Sprintf("%s lb per 1,000 sq ft of nitrogen, and how much of it acts at once is not entered; the reference has at most %s of that (%s).", n[0], n[1], r.Region),
				"Look on the label for the share of slow-release nitrogen, and enter it.",
			)
		}
	}
}

// nitrogenYear holds the sum of the year against the highest figure for the grass.
func (s *situation) nitrogenYear(f *Finding, z core.Zone, line core.SeasonLine) {
	lb, before := inUnit(line.With.V, unitNitrogen), inUnit(line.AtLeast, unitNitrogen)
	for _, r := range NitrogenYear(s.b, z.Grass) {
		if lb <= float64(r.High.V*core.Rounding) {
			continue
		}
		n := figures(before, r.High.V, lb)
		words := fmt.Sprintf("%s of %s lb of nitrogen per 1,000 sq ft this year, this would make %s; the reference for %s has up to %s (%s).", n[0], n[1], n[2], label.GrassWords(z.Grass), n[1], r.Region)
		if line.UnknownBefore != "" {
			words += " What was laid before " + line.UnknownBefore + " is not in it."
		}
		f.nitrogen(weightOf(r), r, lb, words, "Leave nitrogen out here for the rest of the year.")
	}
}

// weightOf is an ask for a row that was read, a note for one that was recalled.
func weightOf(r label.NitrogenRow) Weight {
	if r.Source == memory {
		return Note
	}
	return Ask
}

// nitrogen adds what was found: the heavier takes the figures, of the same weight the words are added.
func (f *Finding) nitrogen(w Weight, r label.NitrogenRow, lb float64, says, do string) {
	switch {
	case w < f.Weight:
		return
	case w == f.Weight:
		f.Says += " " + says
		return
	}
	f.Weight, f.Says, f.Do, f.Figured, f.Limit = w, says, do, core.Known(lb), r.High
	f.Ground, f.Source = groundOf(r.Source), label.SourceWords(r.Source)
}

// nitrogenUnchecked: the analysis of what holds nitrogen, and grasses for which the table has no figure.
func nitrogenUnchecked(s *situation) []string {
	out := s.blank("", "nitrogen content", func(e label.Entry) bool { return e.NitrogenPerProduct().Known })
	for _, g := range s.grasses() {
		rows := label.NitrogenOf(label.NitrogenYear, g, s.region())
		for _, z := range s.zones {
			if z.Grass == g && len(rows) == 0 && s.laysNitrogen(s.year(z)) {
				where := "any region"
				if r := s.region(); r != "" {
					where = r
				}
				out = append(out, fmt.Sprintf("nitrogen in a year: no figure for %s in %s (reference)", label.GrassWords(g), where))
				break
			}
		}
	}
	return out
}
