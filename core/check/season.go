package check

import (
	"fmt"
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// seasonRule: what was laid in the label's year and what would be laid now, on the part that gets most, against the label
// entry: of the product, of each of its actives in whatever product, and how often. Where the entry has no such limit the
// reference is asked; and it is said from when on the book knows.
func seasonRule(s *situation) []Finding {
	var out []Finding
	for _, k := range s.all() {
		out = append(out, s.perZone("season", k, func() []Finding {
			var found []Finding
			for i, z := range s.zones {
				if s.judges(z.Name) {
					found = append(found, s.seasonOn(z, s.areas[i], k)...)
				}
			}
			return s.heaviest(found)
		})...)
	}
	return append(out, s.notInTheBook()...)
}

// sum is a sum of a year against a limit.
type sum struct {
	line   core.SeasonLine
	unit   string
	figure float64 // with what is planned
	before float64
	limit  float64
	most   measure.Rate // the limit, where it is a rate
	what   string       // what is summed up
	by     string       // the other product whose label entry has the limit; empty: the product's own
	// ground and source are those of the limit.
	ground, source string
}

// seasonOn judges one product on one zone; at most one finding comes of it, which says all that it is over.
func (s *situation) seasonOn(z core.Zone, area measure.Area, k int32) []Finding {
	x, prod := s.year(z), s.b.ProductByKey(k)
	dose, application := x.Planned(k)
	if dose.V <= 0 {
		return nil
	}
	f := Finding{
		Part: PartZone, Product: prod.ProductName, Active: prod.Label.Words(), Grass: z.Grass, Zones: []string{z.Name}, Area: area,
		Ground: GroundLabel, Source: labelSource(prod),
	}
	var lead sum
	for _, one := range s.sumsOf(x, z, k, application) {
		w := s.weigh(one, application)
		if w == None || w < f.Weight {
			continue
		}
		says := one.words()
		if w == f.Weight {
			f.Says += " " + says
			continue
		}
		f.Weight, f.Says, f.Ground, f.Source, f.Unit = w, says, one.ground, one.source, one.unit
		f.Figured, f.Limit = core.Known(one.figure), core.Known(one.limit)
		f.Do = one.whatToDo(w)
		lead = one
	}
	if f.Weight == None {
		return nil
	}
	if lead.unit != unitTimes {
		f.Area = s.areaOver(lead, z, k, area)
	}
	return []Finding{f}
}

// areaOver is how much of a zone would be over the limit: the parcels that are stronger than what is left of it.
func (s *situation) areaOver(one sum, z core.Zone, k int32, all measure.Area) measure.Area {
	per := 1.0
	if one.line.Of == core.OfActive {
		per = 0
		for _, a := range s.b.ProductByKey(k).Label.Actives {
			if core.ActiveName(a.Name) == one.line.Name {
				per += s.b.ProductByKey(k).Label.PerProduct(a).Or(1)
			}
		}
	}
	dose, _ := s.year(z).Planned(k)
	room := one.most.V - (one.line.With.V.V - float64(dose.V*per))
	var v measure.Volume
	s.eachParcel(func(other core.Zone, l fluid.Liquid) {
		if other.Name == z.Name && float64(s.dose(l, k)*per) > room {
			v += l.Volume
		}
	})
	if v == 0 { // it is spread, or not over it yet
		return all
	}
	return min(s.cover(v), all)
}

// sumsOf lists what is to be held against a limit: first the label's, then the reference's where the label has none.
func (s *situation) sumsOf(x *core.Season, z core.Zone, k int32, application bool) []sum {
	prod := s.b.ProductByKey(k)
	e := &prod.Label
	line := x.Product(k)
	var out []sum
	if line.Limit.Known {
		out = append(out, sumOf(line, unitOf(line.Limit.V), called(prod), line.Limit.V, GroundLabel, labelSource(prod)))
	}
	if line.MostTimes.Known && application {
		out = append(out, sum{
			line: line, unit: unitTimes, figure: float64(line.TimesWith), before: float64(line.Times), limit: line.MostTimes.V,
			what: called(prod), ground: GroundLabel, source: labelSource(prod),
		})
	}
	for i, a := range e.Actives {
		if slices.ContainsFunc(e.Actives[:i], func(o label.Active) bool { return core.ActiveName(o.Name) == core.ActiveName(a.Name) }) {
			continue
		}
		one := x.Active(core.ActiveName(a.Name), k)
		switch strictest, limited := s.strictestLabel(x, one, k, a.Name); {
		case limited:
			out = append(out, strictest)
		case !line.Limit.Known && !line.None:
			for _, r := range s.strictestRows(a.Name, z.Grass, s.isSpread(k), mostYear) {
				limit := measure.Rate{V: mostYear(r).V * acrePound, Kind: measure.Dry}
				out = append(out, sumOf(one, unitActive, a.Name, limit, groundOf(r.Source), sourceOf(r)))
			}
		}
	}
	return out
}

// strictestLabel is the sum of an active by the label entry that it comes nearest to, or is furthest over: the product's
// own, or that of another product with it that went down here in its year.
func (s *situation) strictestLabel(x *core.Season, own core.SeasonLine, k int32, name string) (strictest sum, limited bool) {
	for _, l := range append([]core.SeasonLine{own}, x.Elsewhere(own.Name, k)...) {
		p := s.b.Product(l.LimitOf)
		if !l.Limit.Known || p == nil {
			continue
		}
		one := sumOf(l, unitActive, name, l.Limit.V, GroundLabel, labelSource(p))
		if l.LimitOf != own.LimitOf {
			one.by = l.LimitOf
		}
		if !limited || float64(one.figure*strictest.limit) > float64(strictest.figure*one.limit) {
			strictest, limited = one, true
		}
	}
	return strictest, limited
}

func sumOf(line core.SeasonLine, unit, what string, limit measure.Rate, ground, source string) sum {
	return sum{
		line: line, unit: unit, figure: inUnit(line.With.V, unit), before: inUnit(line.AtLeast, unit), limit: inUnit(limit, unit),
		most: limit, what: what, ground: ground, source: source,
	}
}

// weigh is how heavy a sum is. The label's is a stop; but a trace that goes over it is asked about, because it is judged by
// the rule of traces.
func (s *situation) weigh(one sum, application bool) Weight {
	rounding := core.Rounding
	if one.unit == unitTimes {
		rounding = 1
	}
	switch near := 1 - s.b.Setting(core.SeasonNotePct)/100; {
	case one.figure > float64(one.limit*rounding):
		switch {
		case one.ground == GroundLabel && application:
			return Stop
		case one.ground == GroundRecalled:
			return Note
		}
		return Ask
	case one.ground != GroundLabel:
		return None
	case one.unit == unitTimes:
		return None
	case one.figure >= float64(one.limit*near), !one.line.With.Known:
		return Note
	}
	return None
}

// words is "prodiamine: 0.9 of 1.5 lb per acre this year, this would make 1.6."
func (one sum) words() string {
	if one.unit == unitTimes {
		return fmt.Sprintf("%s: %.0f of %.0f applications %s, this would be number %.0f.", one.what, one.before, one.limit, one.period(), one.figure)
	}
	n := figures(one.before, one.limit, one.figure)
	least := ""
	if !one.line.With.Known {
		least = "at least "
	}
	period := one.period()
	if one.by != "" {
		period += " by the label entry of " + one.by + ", which went down here"
	}
	words := fmt.Sprintf("%s: %s%s of %s %s %s, this would make %s.", one.what, least, n[0], n[1], unitWords(one.unit), period, n[2])
	if least != "" {
		words += " Not in the sum, because it is not known how much: " + strings.Join(one.line.Unknown, ", ") + "."
	}
	return words
}

// period is the year that is meant.
func (one sum) period() string {
	if strings.HasSuffix(one.line.From, "-01-01") && one.line.From[:4] == one.line.To[:4] {
		return "this year"
	}
	return "since " + one.line.From
}

func (one sum) whatToDo(w Weight) string {
	switch {
	case w == Note && one.figure <= float64(one.limit*core.Rounding):
		return "Plan without it for the rest of the year."
	case one.ground != GroundLabel:
		return "Look on the label for the most in a year, and enter it."
	case one.line.Fits == "" || one.line.Fits == one.line.To:
		return "Lay less here, or take another product."
	}
	return "Do not lay it here: it fits again on " + one.line.Fits + "."
}

// notInTheBook notes from when on the book knows what was laid, once, where a label has a limit by the year.
func (s *situation) notInTheBook() []Finding {
	f := Finding{Weight: Note, Part: PartZone, About: "unknown", Ground: GroundPractice, Source: "book"}
	date, keys := "", s.all()
	for _, z := range s.zones {
		x := s.year(z)
		for _, k := range keys {
			if dose, _ := x.Planned(k); dose.V <= 0 {
				continue
			}
			lines := []core.SeasonLine{x.Product(k)}
			for _, a := range s.b.ProductByKey(k).Label.Actives {
				lines = append(lines, x.Active(core.ActiveName(a.Name), k))
			}
			for _, l := range lines {
				if (l.Limit.Known || l.MostTimes.Known) && l.UnknownBefore != "" {
					f.also(z.Name)
					date = max(date, l.UnknownBefore)
				}
			}
		}
	}
	if date == "" {
		return nil
	}
	f.Says = fmt.Sprintf("What was laid on %s before %s is not in the book: sums of a year begin there.", s.lawn.LawnName, date)
	f.Do = "If another laid some there this year, count it yourself."
	return []Finding{f}
}

// seasonUnchecked: the most in a year, of the product or of all its actives, and how often.
func seasonUnchecked(s *situation) []string {
	out := s.blank(label.LimitMostYear, "most in a year", func(e label.Entry) bool {
		for _, a := range e.Actives {
			if !a.MostYear.Known {
				return e.MostYear.Known
			}
		}
		return e.MostYear.Known || len(e.Actives) > 0
	})
	return append(out, s.blank(label.LimitMostTimes, "times a year", func(e label.Entry) bool { return e.MostTimes.Known })...)
}
