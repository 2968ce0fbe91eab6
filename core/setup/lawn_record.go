package setup

import (
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/sheet"
)

// legal is a text of a lawn or of one of its zones that rules on application records ask for.
type legal struct {
	key, words, help string
	to               *string
}

// legalTexts lists them; the lawn and the zone may be empty ones.
func legalTexts(l *core.Lawn, z *core.Zone) []legal {
	return []legal{
		{keyCustomer, "customer", "Whose lawn it is.", &l.Customer},
		{keyAddress, "address", "Where it is.", &l.Address},
		{keyPhone, "phone", "Whom to call.", &l.Phone},
		{"zip", "ZIP", "ZIP code of the lawn.", &l.ZIP},
		{"town", "town", "Town or municipality of the lawn.", &l.Town},
		{"county", "county", "County of the lawn.", &l.County},
		{"customer_address", "customer's address", "Blank: the lawn's own.", &l.CustomerAddress},
		{"soil_test", "soil test", "Date of the zone's last one. Blank: none known.", &z.SoilTest},
	}
}

// forRecord asks for them, with what the book has.
func forRecord(l *core.Lawn, z core.Zone) []Field {
	var out []Field
	c := *l
	for _, a := range legalTexts(&c, &z) {
		out = append(out, Field{Key: a.key, Words: a.words, Start: *a.to, Help: a.help, Allowed: allowed(sheet.Lawns, a.key), check: cell(sheet.Lawns, a.key)})
	}
	return out
}

// takeForRecord puts what was answered into a lawn and its zone, and tells whether that changed any.
func takeForRecord(l *core.Lawn, z *core.Zone, a Answers) bool {
	changed := false
	for _, f := range legalTexts(l, z) {
		if said := strings.TrimSpace(a[f.key]); said != *f.to {
			*f.to, changed = said, true
		}
	}
	return changed
}
