package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// earlier is what the part of a zone that got most has had of a product in this call, if it would be gone over again: with
// what goes down now it is one dose. Spots of one call are taken to be side by side, because nobody treats the same weed
// twice.
func (s *situation) earlier(z core.Zone, k int32) float64 {
	if v := s.b.Day().Visiting(); v != nil && v.Kind == core.Spot && v.Lawn == s.lawn.LawnName {
		return 0
	}
	key := zoneProduct{z.Name, k}
	had, asked := s.had[key]
	if !asked {
		had = s.year(z).Earlier(k).V
		s.had[key] = had
	}
	return had
}

// overAgain says that a zone had some in this call already.
func (s *situation) overAgain(f *Finding, k int32, earlier float64) {
	had := measure.Rate{V: earlier, Kind: s.b.ProductByKey(k).Label.Form}
	f.Says = fmt.Sprintf("%s With the %s that went down there in this visit it is one dose.", f.Says, had.Text())
	f.Do = "Do not go over it again in this visit."
	f.PushBack = core.Maybe[measure.Volume]{}
}

// mostOn is the label's most of a product in one application on a grass, 0 where the entry is blank or the label has none.
func mostOn(p *core.Product, grass string) float64 {
	return p.Label.MostFor(grass).V.V
}

// multiples sets how strong a dose is against the mix that is meant and against the label, on the grass of the finding.
func (s *situation) multiples(f *Finding, k int32, dose float64) { s.multiplesOn(f, k, dose, f.Grass) }

func (s *situation) multiplesOn(f *Finding, k int32, dose float64, grass string) {
	prod := s.b.ProductByKey(k)
	if r, ok := s.meantRate(prod.ProductName); ok {
		f.TimesMix = core.Known(dose / r)
		f.Multiple = f.TimesMix
	}
	againstLabel(f, prod, dose, grass)
}

// againstLabel sets how strong a dose is against the label's most and its lowest rate on a grass.
func againstLabel(f *Finding, prod *core.Product, dose float64, grass string) {
	if most := mostOn(prod, grass); most > 0 {
		f.Multiple = core.Known(dose / most)
	}
	if low, _ := prod.Label.RatesFor(grass); low.Known && low.V.V > 0 {
		f.ShareOfLabel = core.Known(dose / low.V.V)
	}
}

// doseUnchecked: the most in one application, on any of the grasses ahead.
func doseUnchecked(s *situation) []string {
	return s.blank(label.LimitRateHigh, "highest rate", func(e label.Entry) bool {
		for _, z := range s.zones {
			if !e.MostFor(z.Grass).Known && !e.NoneOnLabel(label.LimitMost) {
				return false
			}
		}
		return true
	})
}

// referenceOnce asks the reference for the most of an active in one application: where the label entry has none, a row that
// was read is asked about and one that was recalled is noted; where it has one, it decides, and a lower one that was read is
// noted beside it.
func (s *situation) referenceOnce(k int32) []Finding {
	prod := s.b.ProductByKey(k)
	var found []Finding
	for i, z := range s.zones {
		dose, _ := s.year(z).Planned(k)
		if !s.judges(z.Name) || dose.V <= 0 || prod.Label.NoneOnLabel(label.LimitMost) || prod.Label.NoneOnLabel(label.LimitRateHigh) {
			continue
		}
		most := mostOn(prod, z.Grass)
		f := Finding{
			Part: PartZone, Product: prod.ProductName, Active: prod.Label.Words(), Zones: []string{z.Name}, Area: s.areas[i], Unit: unitActive,
		}
		s.multiplesOn(&f, k, dose.V, z.Grass)
		for _, a := range prod.Label.Actives {
			lb := prod.Label.ActiveRate(a, core.Known(dose))
			for _, r := range s.strictestRows(a.Name, z.Grass, s.isSpread(k), mostOnce) {
				f.aboveReference(a.Name, lb, r, most > 0)
			}
		}
		if f.Weight > None {
			found = append(found, f)
		}
	}
	return s.heaviest(found)
}

func (f *Finding) aboveReference(active string, dose core.Maybe[measure.Rate], r label.RateRow, labelled bool) {
	w := Ask
	if labelled || r.Source == memory {
		w = Note
	}
	lb := inUnit(dose.V, unitActive)
	if !dose.Known || lb <= float64(r.MostOnce.V*core.Rounding) || w <= f.Weight || (labelled && r.Source == memory) {
		return
	}
	n := figures(lb, r.MostOnce.V)
	f.Weight, f.Ground, f.Source = w, groundOf(r.Source), sourceOf(r)
	f.Figured, f.Limit = core.Known(lb), r.MostOnce
	f.Says = fmt.Sprintf("%s would go down at %s lb per acre; the reference has at most %s in one application.", active, n[0], n[1])
	f.Do = "Look on the label for the most in one application, and enter it."
	if labelled {
		f.Says = fmt.Sprintf("%s would go down at %s lb per acre: the label entry allows it, the reference has at most %s in one application.", active, n[0], n[1])
		f.Do = "Look whether the label entry is that of the label in force."
	}
}
