package check

import (
	"strings"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// acrePound is 1 lb per acre, in ng for each square millimetre.
var acrePound = func() float64 {
	r, _ := measure.RateUnit(1, unitActive)
	return r.V
}()

// memory is the source of a row that nobody read anywhere.
const memory = "memory"

func mostYear(r label.RateRow) measure.Maybe[float64] { return r.MostYear }

func mostOnce(r label.RateRow) measure.Maybe[float64] { return r.MostOnce }

// fewestDays is negative, so that the strictest is the least, as of the other limits.
func fewestDays(r label.RateRow) measure.Maybe[float64] {
	return measure.Maybe[float64]{V: -r.DaysBetween.V, Known: r.DaysBetween.Known}
}

// strictestRows is the strictest row of the reference that was read and the strictest that was recalled, of those that
// have a limit of an active and hold for the grass and for how it goes down.
func (s *situation) strictestRows(active, grass string, spread bool, limit func(label.RateRow) measure.Maybe[float64]) []label.RateRow {
	var rows []label.RateRow
	ownForm := false
	for _, r := range s.ratesOf(active) {
		if limit(r).Known && speaksOf(r.Formulation, grass) {
			rows = append(rows, r)
			ownForm = ownForm || isGranule(r.Formulation) == spread
		}
	}
	var read, recalled []label.RateRow
	for _, r := range rows {
		if ownForm && isGranule(r.Formulation) != spread && !strings.HasPrefix(r.Formulation, "any") {
			continue
		}
		list := &read
		if r.Source == memory {
			list = &recalled
		}
		if len(*list) == 0 || limit(r).V < limit((*list)[0]).V {
			*list = []label.RateRow{r}
		}
	}
	return append(read, recalled...)
}

// ratesOf keeps what the reference said of an active: it reads its table each time.
func (s *situation) ratesOf(active string) []label.RateRow {
	rows, asked := s.rates[active]
	if !asked {
		rows = label.RatesOf(active)
		s.rates[active] = rows
	}
	return rows
}

// isGranule tells whether the formulation of a row is one that is spread.
func isGranule(formulation string) bool {
	for _, word := range strings.FieldsFunc(formulation, func(r rune) bool { return r == ' ' || r == ',' }) {
		if word == "G" || word == "granular" || word == "granule" {
			return true
		}
	}
	return false
}

// speaksOf tells whether a row holds for a grass: its formulation names that grass, or none.
func speaksOf(formulation, grass string) bool {
	named := false
	for _, g := range label.Grasses() {
		if strings.Contains(formulation, shortName(g)) {
			if g.Name == grass {
				return true
			}
			named = true
		}
	}
	return !named
}

// shortName is the word by which a row names a grass: "ryegrass", "fine fescue", "Kentucky bluegrass".
func shortName(g label.Grass) string {
	words := strings.Fields(g.CommonName)
	switch last := words[len(words)-1]; last {
	case "fescue", "bluegrass", "paspalum":
		return g.CommonName
	case "zoysiagrass":
		return "zoysia"
	default:
		return last
	}
}

// groundOf is the ground of a row of the reference, by its source.
func groundOf(source string) string {
	switch {
	case source == memory:
		return GroundRecalled
	case strings.HasPrefix(source, "J-"):
		return GroundTrial
	}
	return GroundExtension
}

// sourceOf is the source of a row on rates in words.
func sourceOf(r label.RateRow) string {
	return label.SourceWords(r.Source) + " (" + r.Active + ", " + r.Formulation + ")"
}
