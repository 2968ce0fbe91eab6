package batch

import (
	"fmt"
	"testing"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// chance is a small generator, so that a day of a benchmark is the same each time.
type chance uint64

func (c *chance) below(n int) int {
	*c = *c*6364136223846793005 + 1442695040888963407
	return int(uint64(*c) >> 33 % uint64(n))
}

// fullDay is a day of so many visits in a town, with a rig of six compartments and four mixes, each for the gun and for the ride-on.
func fullDay(visits int, seed chance) Day {
	gal := func(f float64) measure.Volume { return measure.Volume(f * float64(measure.USGallon)) }
	d := Day{Start: 420, Applicators: []DayApplicator{{"gun"}, {"ride-on"}}, Times: DayTimes{Changeover: 2, Refill: 25, Rinse: 6, Between: 8, ToRefill: 15, MPH: 25}, Reserve: DayReserve{Share: 0.05}, Base: Place{measure.Known(38.0), measure.Known(-85.0)}}
	for m := range 4 {
		for a, lays := range []float64{1.5, 0.3} {
			d.Liquids = append(d.Liquids, DayLiquid{Name: fmt.Sprint("mix ", m, " through ", d.Applicators[a].Name), Products: []Target{{fmt.Sprint("product ", m), label.Entry{}, measure.Concentration(0.01 / lays)}}})
		}
	}
	for c := range 6 {
		d.Rig.Compartments = append(d.Rig.Compartments, DayCompartment{Letter: byte('a' + c), Capacity: gal([]float64{100, 60, 60, 40, 25, 25}[c]), Heel: gal(1), Holds: []int{0, 2, Nothing, Other, Nothing, Nothing}[c]})
	}
	d.Rig.Line = DayLine{Hose: gal(3.06), Cell: gal(0.2), Return: gal(0.1), Bypass: 0.5, Clean: 0.95, Holds: 0}
	for v := range visits {
		in := Visit{Name: fmt.Sprint("lawn ", v), Place: Place{measure.Known(38 + float64(seed.below(100))/1000), measure.Known(-85 + float64(seed.below(100))/1000)}}
		for z := range 1 + seed.below(2) {
			area := float64(2 + seed.below(12))
			n := Need{Zone: fmt.Sprint("zone ", z), Area: measure.SquareFeet(1000 * area)}
			first := seed.below(4)
			for k := range 1 + seed.below(2) {
				m := (first + k) % 4
				cost := measure.Money(area * float64(30+10*m))
				n.Options = append(n.Options, Option{Liquid: 2 * m, Applicator: 0, Volume: gal(1.5 * area), Minutes: 3 + area, Cost: cost}, Option{Liquid: 2*m + 1, Applicator: 1, Volume: gal(0.3 * area), Minutes: 9 + 0.5*area, Cost: cost})
			}
			in.Zones = append(in.Zones, n)
		}
		d.Visits = append(d.Visits, in)
	}
	return d
}

func BenchmarkPlanDay(b *testing.B) {
	for _, seed := range []chance{1, 2, 3} {
		b.Run(fmt.Sprint("30visits/", seed), func(b *testing.B) {
			d := fullDay(30, seed)
			b.ReportAllocs()
			var p DayPlan
			for b.Loop() {
				var err error
				if p, err = PlanDay(d); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(p.States), "states")
			b.ReportMetric(p.Minutes.Total(), "min")
			b.ReportMetric(p.Bound, "bound_min")
			b.ReportMetric(float64(len(p.Loads)-1), "refills")
			if !p.Exact {
				b.ReportMetric(1, "inexact")
			}
		})
	}
}
