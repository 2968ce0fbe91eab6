package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// intervalRule: how long since the product last went there, against the label entry; and since one of its actives did in
// another product. Parts of one round are no repetition, nor is what was laid in the same call: that is one dose.
func intervalRule(s *situation) []Finding {
	var out []Finding
	for _, k := range s.all() {
		out = append(out, s.perZone("interval", k, func() []Finding {
			var found []Finding
			for i, z := range s.zones {
				if f, early := s.tooSoon(z, k); early && s.judges(z.Name) {
					f.Area = s.areas[i]
					found = append(found, f)
				}
			}
			return s.heaviest(found)
		})...)
	}
	return out
}

func (s *situation) tooSoon(z core.Zone, k int32) (Finding, bool) {
	x, prod := s.year(z), s.b.ProductByKey(k)
	e := &prod.Label
	if _, application := x.Planned(k); !application && (s.noWeight == nil || !s.isSpread(k)) {
		return Finding{}, false
	}
	f := Finding{
		Weight: Stop, Part: PartZone, Product: prod.ProductName, Active: e.Words(), Grass: z.Grass, Zones: []string{z.Name},
		Unit: unitDays, Ground: GroundLabel, Source: labelSource(prod),
	}
	line := x.Product(k)
	if e.DaysBetween.Known {
		if line.Again > line.To {
			f.soon(called(prod), line.Last, line.DaysSince.V, e.DaysBetween.V, "the label entry asks for")
			return f, true
		}
		return s.activeTooSoon(f, x, k)
	}
	if e.NoneOnLabel(label.LimitDaysBetween) {
		return f, false
	}
	return s.referenceTooSoon(f, x, z, k)
}

// soon says how much too soon it is.
func (f *Finding) soon(what, last string, since int, days float64, who string) {
	f.Figured, f.Limit = core.Known(float64(since)), core.Known(days)
	f.Says = fmt.Sprintf("%s went down %s ago, on %s; %s %.0f days between.", what, daysWords(since), last, who, days)
	f.Do = "Wait: it may go down again on " + core.After(last, days) + "."
}

// activeTooSoon asks about an active that went down in another product: whether the days between hold for both, the label
// says.
func (s *situation) activeTooSoon(f Finding, x *core.Season, k int32) (Finding, bool) {
	e := &s.b.ProductByKey(k).Label
	for _, a := range e.Actives {
		last, product, since, found := x.LastActive(core.ActiveName(a.Name), k)
		if found && float64(since) < e.DaysBetween.V {
			f.Weight = Ask
			f.soon(fmt.Sprintf("%s (in %s)", a.Name, product), last, since, e.DaysBetween.V, "the label entry asks for")
			return f, true
		}
	}
	return f, false
}

// referenceTooSoon asks the reference where the label entry is blank.
func (s *situation) referenceTooSoon(f Finding, x *core.Season, z core.Zone, k int32) (Finding, bool) {
	f.Weight = None
	for _, a := range s.b.ProductByKey(k).Label.Actives {
		last, _, since, found := x.LastActive(core.ActiveName(a.Name), -1)
		if !found {
			continue
		}
		for _, r := range s.strictestRows(a.Name, z.Grass, s.isSpread(k), fewestDays) {
			w := Ask
			if r.Source == memory {
				w = Note
			}
			if days := r.DaysBetween.V; float64(since) < days && w > f.Weight {
				f.Weight, f.Ground, f.Source = w, groundOf(r.Source), sourceOf(r)
				f.soon(a.Name, last, since, days, "the label entry is blank, the reference has")
				f.Do = "Look on the label for the days between, and enter them; by the reference it may go down again on " + core.After(last, days) + "."
			}
		}
	}
	return f, f.Weight > None
}

// intervalUnchecked: the days between.
func intervalUnchecked(s *situation) []string {
	return s.blank(label.LimitDaysBetween, "days between", func(e label.Entry) bool { return e.DaysBetween.Known })
}
