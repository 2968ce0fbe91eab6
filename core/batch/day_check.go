package batch

import (
	"math"

	"example.com/tintline/core/measure"
)

// What a day may hold at most, so that its figures stay whole numbers and the search ends.
const (
	mostVisits       = 100
	mostZones        = 12 // of a visit
	mostLiquids      = 16
	mostCompartments = 6
	mostOptions      = 32
	mostDayMinutes   = 2880.0
	mostDayCost      = 40_000 * measure.Dollar
	mostSumMinutes   = 30_000.0
)

// check refuses a day that cannot be reckoned with.
func (d *Day) check() error {
	if n := len(d.Rig.Compartments); n == 0 || n > mostCompartments {
		return measure.Troublef("Set up the rig with 1 to 6 compartments.", "The rig has %d compartments.", n)
	}
	if len(d.Visits) > mostVisits || len(d.Liquids) > mostLiquids {
		return measure.Troublef("Plan at most 100 visits with 16 liquids.", "The day has %d visits and %d liquids.", len(d.Visits), len(d.Liquids))
	}
	for _, f := range []func() error{d.checkTank, d.checkTimes, d.checkVisits, d.checkPins} {
		if err := f(); err != nil {
			return err
		}
	}
	return d.Base.check("The base")
}

func (d *Day) checkTank() error {
	for _, c := range d.Rig.Compartments {
		letter := string(rune(c.Letter))
		switch {
		case c.Capacity <= 0 || c.Capacity > largest || c.Heel < 0 || c.Heel >= c.Capacity:
			return measure.Troublef("Give a capacity above 0 gal and a heel below it.", "Compartment %s holds %s gal with a heel of %s gal.", letter, c.Capacity.Text(), c.Heel.Text())
		case c.Left < 0 || c.Left > c.Capacity:
			return measure.Troublef("Read its gauge.", "Compartment %s is said to hold %s gal of at most %s gal.", letter, c.Left.Text(), c.Capacity.Text())
		case c.Holds < Other || c.Holds >= len(d.Liquids):
			return measure.Troublef("Name one of the day's liquids.", "What compartment %s holds is none of the %d liquids of the day.", letter, len(d.Liquids))
		}
	}
	l := d.Rig.Line
	for _, v := range []measure.Volume{l.Hose, l.Cell, l.Return, d.Reserve.Volume} {
		if v < 0 || v > largest {
			return measure.Troublef("Give 0 gal or more.", "A volume of the line, or the reserve, is %s gal.", v.Text())
		}
	}
	if !(l.Bypass >= 0 && l.Bypass < 1) || !(l.Clean >= 0 && l.Clean < 1) {
		return measure.Troublef("Give shares from 0 to below 100 %.", "The bypass is %s of the flow, and clean is %s new.", percent(l.Bypass), percent(l.Clean))
	}
	if l.Holds == Nothing || l.Holds < Other || l.Holds >= len(d.Liquids) {
		return measure.Troublef("Name one of the day's liquids, or another.", "What the line holds is none of the %d liquids of the day.", len(d.Liquids))
	}
	return nil
}

func (d *Day) checkTimes() error {
	t := d.Times
	for _, x := range []struct {
		what string
		v    float64
	}{
		{"A changeover", t.Changeover},
		{"A refill", t.Refill},
		{"A rinse", t.Rinse},
		{"The drive between two places", t.Between},
		{"The drive to the refill", t.ToRefill},
		{"The start", d.Start},
	} {
		if !(x.v >= 0 && x.v <= mostDayMinutes/2) {
			return measure.Troublef("Give 0 to 1,440 minutes.", "%s is given as %s min.", x.what, figure(x.v))
		}
	}
	if !(t.MPH > 0) || math.IsInf(t.MPH, 0) {
		return measure.Troublef("Give miles an hour above 0.", "The speed is %s mph.", figure(t.MPH))
	}
	if !(d.Reserve.Share >= 0 && d.Reserve.Share <= 1) {
		return measure.Troublef("Give 0 to 100 %.", "The reserve is %s.", percent(d.Reserve.Share))
	}
	return nil
}

func (d *Day) checkVisits() error {
	var cost measure.Money
	minutes := d.Start
	for _, v := range d.Visits {
		if err := v.Place.check(v.Name); err != nil {
			return err
		}
		if len(v.Zones) > mostZones {
			return measure.Troublef("Split the visit.", "%s has %d zones; a visit may have 12.", v.Name, len(v.Zones))
		}
		for _, m := range []measure.Maybe[float64]{v.From, v.To} {
			if m.Known && !(m.V >= 0 && m.V <= mostDayMinutes) {
				return measure.Troublef("Give a time of the day.", "%s has a window at minute %s of the day.", v.Name, figure(m.V))
			}
		}
		if v.From.Known && v.To.Known && v.From.V > v.To.V {
			return measure.Troublef("Give a beginning before the end.", "The window of %s begins at minute %s of the day and ends at minute %s.", v.Name, figure(v.From.V), figure(v.To.V))
		}
		for _, n := range v.Zones {
			most, dear, err := d.checkNeed(v, n)
			if err != nil {
				return err
			}
			minutes, cost = minutes+most, cost+dear
		}
	}
	if !(minutes <= mostDayMinutes) || cost > mostDayCost {
		return measure.Troublef("Plan one day at a time.", "The work alone ends at minute %s of the day and costs %s.", figure(minutes), cost.Text())
	}
	return nil
}

// checkNeed gives the most minutes and the highest cost of the options of a zone.
func (d *Day) checkNeed(v Visit, n Need) (most float64, dear measure.Money, err error) {
	if len(n.Options) > mostOptions {
		return 0, 0, measure.Troublef("Give at most 32.", "%s, %s has %d options.", v.Name, n.Zone, len(n.Options))
	}
	for _, o := range n.Options {
		switch {
		case o.Liquid < ByHand || o.Liquid >= len(d.Liquids) || o.Applicator < 0 || o.Applicator >= len(d.Applicators):
			return 0, 0, measure.Troublef("Name a liquid and an applicator of the day.", "%s, %s has an option with neither a liquid nor an applicator of the day.", v.Name, n.Zone)
		case o.Volume < 0 || o.Volume > largest || (o.Liquid >= 0 && o.Volume == 0):
			return 0, 0, measure.Troublef("Give more than 0 gal.", "%s, %s would get %s gal.", v.Name, n.Zone, o.Volume.Text())
		case !(o.Minutes >= 0 && o.Minutes <= mostDayMinutes):
			return 0, 0, measure.Troublef("Give 0 minutes or more.", "%s, %s would take %s min.", v.Name, n.Zone, figure(o.Minutes))
		case o.Cost < 0 || o.Cost > mostDayCost:
			return 0, 0, measure.Troublef("Give $0 or more.", "%s, %s would cost %s.", v.Name, n.Zone, o.Cost.Text())
		}
		most, dear = max(most, o.Minutes), max(dear, o.Cost)
	}
	return most, dear, nil
}

// checkPins refuses two visits at one place, a place that is not there, and windows that the pinned order turns around.
func (d *Day) checkPins() error {
	var at []Visit
	open := 0
	for _, v := range d.Visits {
		if !v.Done {
			open++
		}
	}
	for _, v := range d.Visits {
		if v.Done || !v.Pinned.Known {
			continue
		}
		if v.Pinned.V < 0 || v.Pinned.V >= open {
			return measure.Troublef("Pin it to a place from 1 to the number of visits.", "%s is pinned to place %d of %d.", v.Name, v.Pinned.V+1, open)
		}
		for _, w := range at {
			first, then := v, w
			if w.Pinned.V < v.Pinned.V {
				first, then = w, v
			}
			if w.Pinned.V == v.Pinned.V {
				return measure.Troublef("Pin one of them elsewhere.", "%s and %s are both pinned to place %d.", w.Name, v.Name, v.Pinned.V+1)
			}
			if first.From.Known && then.To.Known && first.From.V > then.To.V {
				return measure.Troublef("Change a pin or a window.", "%s is pinned before %s, but its window begins at minute %s of the day, and that of %s ends at minute %s.",
					first.Name, then.Name, figure(first.From.V), then.Name, figure(then.To.V))
			}
		}
		at = append(at, v)
	}
	return nil
}
