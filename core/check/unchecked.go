package check

import (
	"fmt"

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
	siteUnchecked,
	datesUnchecked,
}

// notChecked names what the verdict does not rest on.
func (s *situation) notChecked() []string {
	var out []string
	for _, ask := range unchecked {
		out = append(out, ask(s)...)
	}
	return out
}

// blank counts the products that would go down and whose label entry lacks a limit: "wind limit: 1 of 2 products (label
// entry is blank)". What the label has none of is no blank.
func (s *situation) blank(limit, what string, entered func(label.Entry) bool) []string {
	keys := append(s.products(), s.dryKeys()...)
	n := 0
	for _, k := range keys {
		if e := s.b.ProductByKey(k).Label; !entered(e) && !e.NoneOnLabel(limit) {
			n++
		}
	}
	if n == 0 {
		return nil
	}
	return []string{fmt.Sprintf("%s: %d of %d %s (label entry is blank)", what, n, len(keys), plural(len(keys), "product"))}
}
