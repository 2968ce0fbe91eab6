package check

import (
	"fmt"
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// unchecked lists, rule by rule, what the verdict does not rest on. A rule puts its own function here, which stands in
// its own file.
var unchecked = []func(*situation) []string{
	doseUnchecked,
	seasonUnchecked,
	intervalUnchecked,
	nitrogenUnchecked,
	weatherUnchecked,
	recordUnchecked,
	listUnchecked,
	siteUnchecked,
	datesUnchecked,
	growthUnchecked,
	settlingUnchecked,
}

// notChecked names what the verdict does not rest on. What is blank for as many products stands in one line.
func (s *situation) notChecked() []string {
	var out []string
	at := map[string]int{}
	for _, ask := range unchecked {
		for _, line := range ask(s) {
			what, of, _ := strings.Cut(line, ": ")
			i, said := at[of]
			if !strings.HasSuffix(of, isBlank) || !said {
				at[of] = len(out)
				out = append(out, line)
				continue
			}
			out[i] = strings.TrimSuffix(out[i], ": "+of) + ", " + what + ": " + of
		}
	}
	return out
}

// isBlank ends a line about limits that are not entered.
const isBlank = "(label entry is blank)"

// blank counts the products that would go down and whose label entry lacks a limit: "wind limit: 1 of 2 products (label
// entry is blank)". What the label has none of is no blank.
func (s *situation) blank(limit, what string, entered func(label.Entry) bool) []string {
	keys := s.all()
	n := 0
	for _, k := range keys {
		if e := s.b.ProductByKey(k).Label; !entered(e) && !e.NoneOnLabel(limit) {
			n++
		}
	}
	if n == 0 {
		return nil
	}
	return []string{fmt.Sprintf("%s: %d of %d %s %s", what, n, len(keys), plural(len(keys), "product"), isBlank)}
}

// listUnchecked names the herbicides of which all turf is listed and not the grass ahead: plant food may be for all turf,
// the label of a herbicide names its grasses.
func listUnchecked(s *situation) []string {
	var out []string
	for _, k := range s.all() {
		p := s.b.ProductByKey(k)
		named := func(z core.Zone) bool { return slices.Contains(p.Label.Grasses, z.Grass) }
		if isHerbicide(p.Label) && p.Label.Lists(label.AllTurf) && !allOf(s.zones, named) {
			out = append(out, p.ProductName+": its label entry lists all turf; the label of a herbicide names its grasses")
		}
	}
	return out
}

func allOf(zones []core.Zone, is func(core.Zone) bool) bool {
	return !slices.ContainsFunc(zones, func(z core.Zone) bool { return !is(z) })
}
