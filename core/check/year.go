package check

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

type zoneProduct struct {
	zone    string
	product int32
}

// date is the date by which sums go: that of the open day, else that of the intent.
func (s *situation) date() string {
	if d := s.b.Day(); d.Open {
		return d.Date
	}
	return s.in.At.Date()
}

// year is what went on a zone, as if what is foreseen went down on it.
func (s *situation) year(z core.Zone) *core.Season {
	if x := s.years[z.Name]; x != nil {
		return x
	}
	var plan []core.Went
	lay := func(k int32, dose measure.Rate, area measure.Area) {
		if dose.V > 0 && area > 0 {
			plan = append(plan, s.b.Would(s.date(), s.lawn.LawnName, z.Name, k, dose, area))
		}
	}
	for i := range s.parts {
		if p := &s.parts[i]; p.Zone.Name == z.Name {
			for _, k := range keysOf(p.Parcels) {
				lay(k, p.Peak(k, s.b.ProductByKey(k).Label.Form), p.Area)
			}
		}
	}
	if s.dry != nil && s.noWeight == nil {
		for _, p := range s.dry.Zones {
			for _, q := range p.Holds {
				if p.Zone.Name == z.Name {
					lay(q.Key, measure.RateOf(measure.Amount{N: q.N, Kind: measure.Dry}, p.Area), p.Area)
				}
			}
		}
	}
	if s.noWeight != nil { // how long it is since the last time is known all the same
		for _, k := range s.dryKeys() {
			plan = append(plan, s.b.Would(s.date(), s.lawn.LawnName, z.Name, k, measure.Rate{Kind: measure.Dry}, s.areaOfZone(z.Name)))
		}
	}
	s.years[z.Name] = s.b.Season(s.lawn.LawnName, z.Name, s.date(), plan)
	return s.years[z.Name]
}

func (s *situation) areaOfZone(name string) measure.Area {
	for i, z := range s.zones {
		if z.Name == name {
			return s.areas[i]
		}
	}
	return 0
}

// keysOf lists the products in parcels, each once.
func keysOf(parcels []fluid.Liquid) []int32 {
	var out []int32
	for i := range parcels {
		for _, q := range parcels[i].Holds {
			if !has(out, q.Key) {
				out = append(out, q.Key)
			}
		}
	}
	return out
}

// all lists the products that would go down, sprayed or spread.
func (s *situation) all() []int32 {
	if s.group == nil && s.keys != nil {
		return s.keys
	}
	out := s.products()
	for _, k := range s.dryKeys() {
		if !has(out, k) {
			out = append(out, k)
		}
	}
	if s.group == nil {
		s.keys = out
	}
	return out[:len(out):len(out)]
}

// isSpread tells whether a product would be spread and not sprayed.
func (s *situation) isSpread(k int32) bool {
	return s.dry != nil && has(s.dryKeys(), k) && !has(s.products(), k)
}

// heaviest joins what was found for single zones: of each weight one finding, about all zones of that weight, in the words
// of the one that is furthest over its limit.
func (s *situation) heaviest(found []Finding) []Finding {
	var out []Finding
next:
	for _, f := range found {
		for i := range out {
			o := &out[i]
			if o.Weight != f.Weight || o.About != f.About {
				continue
			}
			zones, area := append(o.Zones, f.Zones...), o.Area+f.Area
			if over(f) > over(*o) {
				*o = f
			}
			o.Zones, o.Area = zones, area
			continue next
		}
		out = append(out, f)
	}
	for i := range out {
		if len(out[i].Zones) < len(s.zones) {
			out[i].Says = strings.Join(out[i].Zones, " + ") + ": " + out[i].Says
		}
	}
	return out
}

// over is how far a figure is over its limit; of days, how far under.
func over(f Finding) float64 {
	switch {
	case !f.Limit.Known || f.Limit.V <= 0:
		return f.Figured.Or(0)
	case f.Unit == unitDays:
		return 1 - f.Figured.Or(0)/f.Limit.V
	}
	return f.Figured.Or(0) / f.Limit.V
}

// The units of figures of a season.
const (
	unitActive   = "lb_per_acre"
	unitNitrogen = "lb_per_1000_sqft" // and of what is spread by the pound
	unitTimes    = "times"
	unitDays     = "days"
)

// inUnit is a rate in a unit; 0 where it does not fit it.
func inUnit(r measure.Rate, unit string) float64 {
	f, err := r.In(unit)
	if err != nil {
		return 0
	}
	return f
}

// unitOf is the unit in which a product's sums are told against a limit.
func unitOf(limit measure.Rate) string {
	switch {
	case limit.Kind == measure.Liquid:
		return "fl_oz_per_1000_sqft"
	case inUnit(limit, unitNitrogen) >= 1:
		return unitNitrogen
	}
	return "oz_per_1000_sqft"
}

func unitWords(unit string) string {
	switch unit {
	case unitActive:
		return "lb per acre"
	case unitNitrogen:
		return "lb per 1,000 sq ft"
	case unitTimes:
		return "applications"
	}
	return strings.NewReplacer("fl_oz", "fl oz", "_per_1000_sqft", " per 1,000 sq ft").Replace(unit)
}

// figures prints figures, the limit second, to as many digits as it takes to write the limit (two or three) and to tell
// those apart that differ by more than rounding.
func figures(list ...float64) []string {
	digits := 2
	if figure(list[1], 2) != figure(list[1], 3) {
		digits = 3
	}
	for ; ; digits++ {
		out := make([]string, len(list))
		apart := true
		for i, f := range list {
			out[i] = figure(f, digits)
			for j := range i {
				if out[i] == out[j] && math.Abs(f-list[j]) > (core.Rounding-1)*math.Abs(f) {
					apart = false
				}
			}
		}
		if apart || digits == 5 {
			return out
		}
	}
}

// figure prints a figure to so many significant digits, in full from 10 on.
func figure(f float64, digits int) string {
	places := digits - 1
	if f > 0 {
		places -= int(math.Floor(math.Log10(f)))
	}
	text := strconv.FormatFloat(f, 'f', min(max(places, 0), 6), 64)
	if strings.Contains(text, ".") {
		text = strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// days is "1 day", "12 days".
func daysWords(n int) string { return fmt.Sprintf("%d %s", n, plural(n, "day")) }
