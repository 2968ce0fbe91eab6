package check

import (
	"strings"

	"example.com/tintline/core/label"
)

// weatherLimits are the limits of the weather that a label entry can have.
var weatherLimits = []struct {
	limit   string // its key, of which a label may have none
	what    string
	entered func(label.Entry) bool
	wet     bool // it is about drops
}{
	{label.LimitWindMax, "wind", func(e label.Entry) bool { return e.HasWindMax }, false},
	{label.LimitTempMax, "temperature", func(e label.Entry) bool { return e.TempMax.Known }, false},
	{label.LimitRainFree, "rain", func(e label.Entry) bool { return e.RainFree.Known }, false},
	{"", "inversion", func(e label.Entry) bool { return e.NoInversion != "" }, true},
}

// weatherUnchecked names the limits of the weather that are blank, those together that lack in as many products:
// "temperature and rain limits: 2 of 3 products (label entry is blank)".
func weatherUnchecked(s *situation) []string {
	var tails []string
	whats := map[string][]string{}
	for _, l := range weatherLimits {
		if l.wet && !s.wet {
			continue
		}
		for _, line := range s.blank(l.limit, "", l.entered) {
			tail := strings.TrimPrefix(line, ": ")
			if whats[tail] == nil {
				tails = append(tails, tail)
			}
			whats[tail] = append(whats[tail], l.what)
		}
	}
	var out []string
	for _, tail := range tails {
		out = append(out, list(whats[tail])+" "+plural(len(whats[tail]), "limit")+": "+tail)
	}
	return out
}
