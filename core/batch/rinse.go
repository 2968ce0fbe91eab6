package batch

import (
	"math"
	"strconv"

	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// RinseAsk is a residual that is rinsed. Volumes in gallons.
type RinseAsk struct {
	Residual hydraulics.Gallons
	Water    hydraulics.Gallons // all of it, in equal shares
	Rinses   int                // 0: as many as Share needs with shares of Water
	Share    float64            // of the old liquid that may be left; 0: not asked
}

// Rinsed is what is left.
type Rinsed struct {
	Share  float64            // of the old liquid that is left
	Rinses int                // that were worked out
	Each   hydraulics.Gallons // of water
	Water  hydraulics.Gallons // in all
	Steps  []Step
}

// Work gives the share left after equal rinses of a residual: (r / (r + w))^n, w to each (mass balance, perfect mixing). Of the number of
// rinses, the water and the share to be reached, two are given: with water and a share, Water is what each rinse takes.
func (q RinseAsk) Work() (Rinsed, error) {
	if err := q.check(); err != nil {
		return Rinsed{}, err
	}
	var s steps
	out := Rinsed{Rinses: q.Rinses, Water: q.Water}
	switch {
	case q.Rinses == 0:
		out.Each, out.Rinses = q.Water, RinsesFor(float64(q.Residual), float64(q.Water), q.Share)
		if out.Rinses == 0 {
			return Rinsed{}, measure.Troublef("Give more water to each rinse.", "Rinses of %s gal do not bring %s gal down to %s.", figure(float64(q.Water)), figure(float64(q.Residual)), percent(q.Share))
		}
		out.Water = out.Each * hydraulics.Gallons(float64(out.Rinses))
	case q.Water == 0:
		out.Water = hydraulics.Gallons(RinseWater(float64(q.Residual), q.Share, q.Rinses))
		out.Each = out.Water / hydraulics.Gallons(float64(q.Rinses))
		s.say("to leave ", percent(q.Share), ", each of ", strconv.Itoa(q.Rinses), " rinses takes ", figure(float64(out.Each)), " gal, ", figure(float64(out.Water)), " gal in all")
	default:
		out.Each = q.Water / hydraulics.Gallons(float64(q.Rinses))
	}
	out.Share = hydraulics.Rinses(q.Residual, out.Water, out.Rinses)
	r, w := figure(float64(q.Residual)), figure(float64(out.Each))
	s.say("(", r, " / (", r, " + ", w, "))^", strconv.Itoa(out.Rinses), " = ", percent(out.Share), " of the old liquid is left")
	out.Steps = s
	return out, nil
}

func (q RinseAsk) check() error {
	const most = 1000
	switch {
	case !(q.Residual > 0) || math.IsInf(float64(q.Residual), 0):
		return measure.Troublef("Give what the suction leaves in it, above 0 gal.", "The residual is %s gal.", figure(float64(q.Residual)))
	case q.Rinses < 0 || q.Rinses > most:
		return measure.Troublef("Give 1 to "+strconv.Itoa(most)+" rinses.", "It is rinsed %d times.", q.Rinses)
	case q.Water < 0 || math.IsInf(float64(q.Water), 0) || math.IsNaN(float64(q.Water)):
		return measure.Troublef("Give more than 0 gal.", "The rinse water is %s gal.", figure(float64(q.Water)))
	case (q.Rinses == 0 || q.Water == 0) && !(q.Share > 0 && q.Share < 1):
		return measure.Troublef("Give a share above 0 and below 100 %, or water and the number of rinses.", "The share that may be left is %s.", percent(q.Share))
	case q.Rinses == 0 && q.Water == 0:
		return measure.Troublef("Give one of the two.", "Neither the water nor the number of rinses is given.")
	}
	return nil
}

// WashedOut is the share of the old liquid left in a mixed volume that a flow has passed for so many minutes: e^(-flow time / volume)
// (mass balance).
func WashedOut(volume hydraulics.Gallons, flow, minutes float64) (share float64, working []Step, err error) {
	passed := hydraulics.Gallons(flow * minutes)
	if !(volume > 0) || !(passed >= 0) || math.IsInf(float64(passed), 0) {
		return 0, nil, measure.Troublef("Give a volume above 0 gal, and a flow and a time.", "%s gpm for %s min through %s gal.", figure(flow), figure(minutes), figure(float64(volume)))
	}
	share = hydraulics.Washout(volume, passed)
	var s steps
	s.say(figure(flow), " gpm x ", figure(minutes), " min = ", figure(float64(passed)), " gal through ", figure(float64(volume)), " gal")
	s.say("e^(-", figure(float64(passed)), " / ", figure(float64(volume)), ") = ", percent(share), " of the old liquid is left")
	return share, s, nil
}
