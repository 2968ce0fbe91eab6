package label

import (
	"strings"

	"example.com/tintline/core/measure"
)

// ownPlace is where a label puts its product: first, last, or before, after or with a step.
type ownPlace struct{ how, class string }

// CheckMixingOrder tells whether the words of a label on the order of adding begin as they can be followed: first, last, or
// before, after or with a step ("before ec"), and behind a colon what else it says. It fails with a measure.Trouble.
func CheckMixingOrder(words string) error {
	_, err := readOwnPlace(words)
	return err
}

func readOwnPlace(words string) (ownPlace, error) {
	place, _, _ := strings.Cut(words, ":")
	switch w := strings.Fields(strings.ToLower(place)); {
	case len(w) == 1 && (w[0] == "first" || w[0] == "last"):
		return ownPlace{how: w[0]}, nil
	case len(w) == 2 && (w[0] == "before" || w[0] == "after" || w[0] == "with"):
		c, ok := FindOrderClass(w[1])
		if !ok {
			return ownPlace{}, measure.Troublef("Use "+classNames()+".", "%q is no step of filling a tank.", w[1])
		}
		return ownPlace{w[0], c.Class}, nil
	}
	return ownPlace{}, measure.Troublef("Begin with first, last, before, after or with a step, such as \"before ec: add to the full tank\".",
		"The place of a product in the order of adding is %q.", words)
}

func (p ownPlace) rank(o MixingOrder) float64 {
	const beside = 0.5
	switch p.how {
	case "first":
		return -1
	case "last":
		return float64(len(o))
	case "before":
		return o.rank(p.class) - beside
	case "after":
		return o.rank(p.class) + beside
	}
	return o.rank(p.class)
}
