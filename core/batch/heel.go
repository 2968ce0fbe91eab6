package batch

import (
	"strconv"

	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// RefillAsk is a heel of one strength on which a tank is filled to its capacity with liquid of another; strengths in any one unit.
type RefillAsk struct {
	Capacity, Heel    hydraulics.Gallons
	HeelStrength, New float64
	Wanted            float64 // the strength that product is to bring it to
}

// Refill is how strong it becomes, and the product that it needs for the strength wanted: in gallons of a liquid of strength 1.
type Refill struct {
	Strength, Needs float64
	Steps           []Step
}

// Work gives both (mass balance).
func (q RefillAsk) Work() (Refill, error) {
	if !(q.Capacity > 0) || q.Heel < 0 || q.Heel > q.Capacity {
		return Refill{}, measure.Troublef("Give a heel of 0 gal to the capacity, which is above 0.", "The heel is %s gal, the capacity %s gal.", figure(float64(q.Heel)), figure(float64(q.Capacity)))
	}
	out := Refill{
		Strength: hydraulics.Heel(q.Capacity, q.Heel, q.HeelStrength, q.New),
		Needs:    hydraulics.HeelNeeds(q.Capacity, q.Heel, q.HeelStrength, q.Wanted),
	}
	var s steps
	heel, rest := bare(float64(q.Heel)), bare(float64(q.Capacity-q.Heel))
	s.say("(", heel, " gal x ", bare(q.HeelStrength), " + ", rest, " gal x ", bare(q.New), ") / ", bare(float64(q.Capacity)), " gal = ", bare(out.Strength))
	s.say(bare(float64(q.Capacity)), " gal x ", bare(q.Wanted), " less ", heel, " gal x ", bare(q.HeelStrength), " = ", bare(out.Needs), " gal worth of product to add")
	if out.Needs < 0 {
		s.say("it is too strong already")
	}
	out.Steps = s
	return out, nil
}

// bare prints a figure as it is given, to six digits.
func bare(f float64) string { return strconv.FormatFloat(f, 'g', 6, 64) }

// Gained is a tank that liquid flows into and whose own flows out, some time later.
type Gained struct {
	Volume  hydraulics.Gallons
	Product float64
	Steps   []Step
}

// Gain is the textbook tank after so many minutes. It is refused where the tank runs dry before.
func Gain(g hydraulics.Gaining, minutes float64) (Gained, error) {
	v, m, ok := g.After(minutes)
	if !ok {
		return Gained{}, measure.Troublef("Give a shorter time, or more flow in.", "%s gal with %s gpm in and %s gpm out are dry before %s min.",
			bare(float64(g.Volume)), bare(g.In), bare(g.Out), bare(minutes))
	}
	var s steps
	s.say(bare(float64(g.Volume)), " gal + (", bare(g.In), " - ", bare(g.Out), ") gpm x ", bare(minutes), " min = ", bare(float64(v)), " gal")
	s.say("of what flowed in ", bare(g.InStrength*float64(v)), " would be there if nothing else had been; of the ", bare(g.Product-float64(g.InStrength*float64(g.Volume))),
		" that it began with beside that, ", bare(m-float64(g.InStrength*float64(v))), " are left")
	s.say("together ", bare(m), ", ", bare(m/float64(v)), " a gal")
	return Gained{v, m, s}, nil
}
