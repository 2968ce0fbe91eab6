package season

import (
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/calib"
)

// driftsOf lists the accepted catch tests up to the end of a year that the book keeps, oldest first, applicator by applicator of the rig, and
// behind them what the gauges teach of it now, where they teach enough. Both are held against the rate meant.
func driftsOf(b *core.Book, year string, gauges bool) []Drift {
	var out []Drift
	if b.Rig() == nil {
		return nil
	}
	for i := range b.Rig().Applicators {
		a := &b.Rig().Applicators[i]
		var tests []Drift
		for _, t := range b.Tests(a.Name) {
			if t.Test.Accepted != core.Yes || t.At.Date() > year+"-12-31" {
				continue
			}
			if d, ok := calib.DriftOf(t.Test.Delivery.V, t.Test.Meant.V, b.CatchLimits()); ok && t.Test.Delivery.Known && t.Test.Meant.Known {
				tests = append(tests, Drift{Applicator: a.Name, Date: t.At.Date(), Share: d.Share, Rate: t.Test.Delivery.V})
			}
		}
		slices.SortStableFunc(tests, func(x, y Drift) int { return strings.Compare(x.Date, y.Date) })
		out = append(out, tests...)
		if t, ok := b.Taught(a.Name); gauges && ok && t.Enough {
			rate := a.Delivery
			rate.V = float64(rate.V * t.Ratio)
			d := Drift{Applicator: a.Name, Share: t.Ratio - 1, Band: t.SD, Readings: t.Readings, Rate: rate}
			if meant, known := b.MeantRate(a.Name, b.TipOn(a.Name), ""); known && meant.V > 0 {
				d.Share = rate.V/meant.V - 1
			}
			out = append(out, d)
		}
	}
	return out
}
