package label

import (
	"slices"
	"strings"
)

// counted is a row that applies, with the rating that it has under the circumstances.
type counted struct {
	row    *Row
	rating Rating
}

// judge says whether a row counts under the circumstances and with which rating.
//
// What clears must hold: a row that says tolerant and whose condition is known to fail does not count. What warns must be
// refuted: a row that says otherwise counts unless its condition is known to fail. A rate or a temperature above what the
// row speaks of refutes no warning; if it is above a limit that the source sets, the row weighs as not tolerant.
func judge(r *Row, c *Circumstances) (rating Rating, counts bool) {
	if r.Rating == RatingUnknown || r.Contradicted != "" {
		return RatingUnknown, false
	}
	hot, strong := r.When.hotter(c), r.When.stronger(c)
	switch {
	case r.When.elsewhere(c), r.Rating == Tolerant && (hot || strong):
		return RatingUnknown, false
	case r.Rating == Tolerant:
		return Tolerant, true
	case hot || strong && r.When.MostIsLimit:
		return NotTolerant, true
	case r.Rating == OnlyDormant && c.Growth == Dormant:
		return Tolerant, true
	}
	return r.Rating, true
}

// hotter tells whether the day is known to be hotter than the row allows.
func (w *Conditions) hotter(c *Circumstances) bool {
	return w.TempMax.Known && c.TempF.Known && c.TempF.V > w.TempMax.V
}

// rateSlack is by how much a rate may be above one of the table and still be the same: rates of the table are rounded.
const rateSlack = 1.005

// stronger tells whether the rate is known to be above that of which the row speaks.
func (w *Conditions) stronger(c *Circumstances) bool {
	return w.MostRate.Known && c.Rate.Known && c.Rate.V.Kind == w.MostRate.V.Kind && c.Rate.V.V > w.MostRate.V.V*rateSlack
}

// elsewhere tells whether the row is known to speak of something else: another cultivar, month, form or state of growth, a
// colder day, a higher rate.
func (w *Conditions) elsewhere(c *Circumstances) bool {
	return w.TempMin.Known && c.TempF.Known && c.TempF.V < w.TempMin.V ||
		w.LeastRate.Known && c.Rate.Known && c.Rate.V.Kind == w.LeastRate.V.Kind && c.Rate.V.V*rateSlack < w.LeastRate.V.V ||
		len(w.Months) > 0 && c.Month != 0 && !slices.Contains(w.Months, c.Month) ||
		w.Form != "" && c.Form != "" && w.Form != c.Form ||
		c.Growth != "" && slices.Contains(w.NotIn, c.Growth) ||
		w.Cultivar != "" && c.Cultivar != "" && !namesCultivar(w.Cultivar, c.Cultivar)
}

// namesCultivar tells whether one of the cultivars that a row names is the one of the zone, which may say more than the
// bare name.
func namesCultivar(named, cultivar string) bool {
	zone := bare(cultivar)
	for rest := named; rest != ""; {
		var one string
		one, rest, _ = strings.Cut(rest, ", ")
		if strings.Contains(zone, bare(one)) {
			return true
		}
	}
	return false
}
