package measure

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// quantityNoun names each quantity in a sentence, with the units that are offered
// when a text is refused.
var quantityNoun = []struct{ quantity, article, offered string }{
	{"volume", "a volume", "gal, qt, pt, fl oz, L or mL"},
	{"mass", "a weight", "lb, oz, kg or g"},
	{"area", "an area", "sq ft, acres, sq yd, m2 or ha"},
	{"length", "a length", "ft, in, yd, mi, m or cm"},
	{"flow", "a flow", "gpm, fl oz/min or L/min"},
	{"pressure", "a pressure", "psi, bar or kPa"},
	{"speed", "a speed", "mph, ft/s, ft/min, km/h or m/s"},
	{"money", "an amount of money", "dollars or cents"},
}

// article gives the quantity with its article: "a volume".
func article(quantity string) string {
	for _, q := range quantityNoun {
		if q.quantity == quantity {
			return q.article
		}
	}
	return "a " + quantity
}

// allowed gives the units that a field of the quantity offers.
func allowed(quantity string) string {
	for _, q := range quantityNoun {
		if q.quantity == quantity {
			return q.offered
		}
	}
	return ""
}

// wrongUnit is the sentence for a unit that does not belong in the field: it says
// so when the unit measures something else.
func wrongUnit(quantity, name, typed string) error {
	for _, q := range quantityNoun {
		if q.quantity != quantity && namedUnit(q.quantity, name) != nil {
			return textErrorf("%s is %s; this field takes %s: %s.", quoted(typed), q.article, article(quantity), allowed(quantity))
		}
	}
	return textErrorf("%s has a unit that is not known, %s; this field takes %s: %s.", quoted(typed), quoted(name), article(quantity), allowed(quantity))
}

// quoted gives what was typed in quotation marks, cut to a length that fits a
// line of the screen, with anything that cannot be shown written as an escape.
func quoted(text string) string {
	text = strings.TrimSpace(text)
	if utf8.RuneCountInString(text) > 40 {
		text = string([]rune(text)[:39]) + "…"
	}
	return strconv.Quote(text)
}
