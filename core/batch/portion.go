package batch

import (
	"strconv"
	"strings"
)

// Portion is so much of one unit, as a person measures it: "3 1/2 oz".
type Portion struct {
	Hundredths int64
	Unit       string // gal, qt, fl oz, lb, oz, L, mL, kg, g
}

// Count is how many of the unit it is.
func (p Portion) Count() float64 { return float64(p.Hundredths) / 100 }

// Text prints it with halves and quarters as they stand on a cup: "3 1/2 oz", "0.3 fl oz".
func (p Portion) Text() string {
	whole, rest := p.Hundredths/100, p.Hundredths%100
	n := strconv.FormatInt(whole, 10)
	switch fraction := map[int64]string{25: "1/4", 50: "1/2", 75: "3/4"}[rest]; {
	case rest == 0:
		return n + " " + p.Unit
	case fraction != "" && whole == 0:
		return fraction + " " + p.Unit
	case fraction != "":
		return n + " " + fraction + " " + p.Unit
	}
	return strconv.FormatFloat(p.Count(), 'f', -1, 64) + " " + p.Unit
}

// portions splits an amount into whole large units and the nearest mark of the small one. What comes to a whole large unit by rounding
// is one. The amount given back is what the portions are together, exactly.
func (s scale) portions(n int64) (parts []Portion, rounded int64) {
	counts := make([]int64, len(s.large))
	rest := n
	for i, l := range s.large {
		counts[i] = rest / l.size
		rest -= counts[i] * l.size
	}
	marks := s.nearest(rest)
	last := len(s.large) - 1
	if last >= 0 && s.at(marks) >= s.large[last].size {
		marks = 0
		counts[last]++
	}
	for i := last; i > 0; i-- {
		if counts[i]*s.large[i].size == s.large[i-1].size {
			counts[i] = 0
			counts[i-1]++
		}
	}
	for i, l := range s.large {
		rounded += counts[i] * l.size
		if counts[i] > 0 {
			parts = append(parts, Portion{100 * counts[i], l.name})
		}
	}
	if marks > 0 {
		parts = append(parts, Portion{marks, s.small})
	}
	return parts, rounded + s.at(marks)
}

// portionsText joins portions: "1 gal 2 qt 5 fl oz".
func portionsText(parts []Portion) string {
	words := make([]string, len(parts))
	for i, p := range parts {
		words[i] = p.Text()
	}
	return strings.Join(words, " ")
}
