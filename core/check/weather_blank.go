package check

import "example.com/tintline/core/label"

// weatherLimits are the limits of the weather that a label entry can have.
var weatherLimits = []struct {
	limit   string // its key, of which a label may have none
	what    string
	whole   string // what, where it stands among limits of other kinds
	entered func(label.Entry) bool
	wet     bool // it is about drops
}{
	{label.LimitWindMax, "wind", "wind limit", func(e label.Entry) bool { return e.HasWindMax }, false},
	{label.LimitTempMax, "temperature", "temperature limit", func(e label.Entry) bool { return e.TempMax.Known }, false},
	{label.LimitRainFree, "rain", "rain-free hours", func(e label.Entry) bool { return e.RainFree.Known }, false},
	{"", "inversion", "inversion", func(e label.Entry) bool { return e.NoInversion != "" }, true},
}

// weatherUnchecked names the limits of the weather that are blank.
func weatherUnchecked(s *situation) []string {
	var out []string
	for _, l := range weatherLimits {
		if s.wet || !l.wet {
			out = append(out, s.blank(l.limit, l.whole, l.entered)...)
		}
	}
	return append(out, s.inversionUnseen()...)
}

// inversionUnseen: in a wind that makes an inversion unlikely nobody is asked for its signs; that they were not looked at
// is said where a label entry forbids spraying under one.
func (s *situation) inversionUnseen() []string {
	w := s.b.Weather()
	forbid := s.ownLimits(false, noInversion)
	if !s.wet || len(forbid) == 0 || w == nil || w.Inversion != "" {
		return nil
	}
	return []string{"signs of an inversion (not looked at; the label entry of " + names(forbid) + " forbids it)"}
}
