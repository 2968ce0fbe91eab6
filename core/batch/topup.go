package batch

import (
	"math"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// Target is a product and how strong it is to be.
type Target struct {
	Product  string
	Label    label.Entry
	Strength measure.Concentration
}

// Targets are the strengths of a mix that is made up for a delivery rate: rate over delivery.
func Targets(parts []Part, delivery measure.Rate) ([]Target, error) {
	if err := checkDelivery("The delivery rate", delivery); err != nil {
		return nil, err
	}
	var out []Target
	for _, p := range parts {
		if err := checkRate(p.Product, p.Label.Form, p.Rate); err != nil {
			return nil, err
		}
		out = append(out, Target{p.Product, p.Label, measure.Concentration(p.Rate.V / delivery.V)})
	}
	return out, nil
}

// TopUpAsk is a tank that is to be filled to a volume at a strength.
type TopUpAsk struct {
	Left     measure.Volume
	Holds    []Held
	Targets  []Target
	Volume   measure.Volume                // when it is full
	Capacity measure.Maybe[measure.Volume] // unknown: not asked about
}

// TopUp is what goes in, or why it cannot be.
type TopUp struct {
	Possible bool
	Why, Do  string // where it is not possible: a sentence each
	Add      []Dose // one for each target, in their order; of what is not to be added 0
	Water    measure.Volume
	Volume   measure.Volume
	Strong   []TooStrong // what is too strong already
	Strange  []Dose      // what is in it that the target has none of, as strong as it is afterwards
	Steps    []Step
}

// TooStrong is a product of which a tank holds more than the volume asked for may hold.
type TooStrong struct {
	Product string
	Times   float64        // how many times the target it is as it stands
	After   float64        // how many times it would still be at the volume asked for
	RightAt measure.Volume // to how much the tank would have to be filled
	Fits    measure.Maybe[bool]
}

// hair is the share below which a lack or an excess is rounding: amounts are whole nanolitres and nanograms. One of them is rounding too.
const hair = 1e-6

// Work gives what is to be added: volume x strength less what is in the tank, for each product, and water for the rest. What cannot be
// is an answer that says why; bad input is refused.
func (q TopUpAsk) Work() (TopUp, error) {
	if err := q.check(); err != nil {
		return TopUp{}, err
	}
	out := TopUp{Volume: q.Volume}
	var s steps
	s.say(q.Left.Text(), " gal are left; filled to ", q.Volume.Text(), " gal there are ", (q.Volume - q.Left).Text(), " gal to add")
	for _, t := range q.Targets {
		q.product(&out, &s, t)
	}
	out.Strange = q.strange(&s)
	out.Water = q.Volume - q.Left - liquids(out.Add)
	q.judge(&out)
	if out.Possible {
		s.water(q.Volume-q.Left, liquids(out.Add), out.Water)
	} else {
		out.Water = 0
		s.say(out.Why)
	}
	out.Steps = s
	return out, nil
}

// product works out one target.
func (q TopUpAsk) product(out *TopUp, s *steps, t Target) {
	have := q.held(t.Product)
	want := t.Strength.In(q.Volume, t.Label.Form)
	lack := ToAdd(float64(q.Volume), float64(t.Strength), float64(have.N))
	line := t.Product + ": " + q.Volume.Text() + " gal at " + aGallon(t.Strength, t.Label.Form) + " = " + want.Text() + ", less " + measure.Amount{N: have.N, Kind: t.Label.Form}.Text() + " that is in it"
	if math.Abs(lack) <= math.Max(1, hair*math.Max(float64(have.N), float64(want.N))) {
		lack = 0
	}
	d := Dose{Product: t.Product, Amount: measure.Amount{N: int64(math.RoundToEven(math.Max(lack, 0))), Kind: t.Label.Form}, Strength: t.Strength}
	out.Add = append(out.Add, d)
	if lack >= 0 {
		s.say(line, " = ", d.Amount.Text(), " to add")
		return
	}
	strong := TooStrong{Product: t.Product, Times: math.Inf(1), After: math.Inf(1)}
	if t.Strength > 0 {
		strong.RightAt = measure.Volume(math.RoundToEven(math.Min(RightAt(float64(have.N), float64(t.Strength)), largest)))
		strong.After = float64(have.N) / (float64(t.Strength) * float64(q.Volume))
		if q.Left > 0 {
			strong.Times = float64(have.N) / (float64(t.Strength) * float64(q.Left))
		}
		if q.Capacity.Known {
			strong.Fits = measure.Known(strong.RightAt <= q.Capacity.V)
		}
	}
	out.Strong = append(out.Strong, strong)
	s.say(line, ": too much already; it is right at ", strong.RightAt.Text(), " gal")
}

// strange lists what the target has none of.
func (q TopUpAsk) strange(s *steps) []Dose {
	var out []Dose
	for _, h := range q.Holds {
		if h.Amount.N == 0 || q.wants(h.Product) {
			continue
		}
		c := measure.ConcentrationOf(h.Amount, q.Volume)
		out = append(out, Dose{h.Product, h.Amount, c})
		s.say(h.Product, " is none of it: ", h.Amount.Text(), " stay in it, ", aGallon(c, h.Amount.Kind), " afterwards")
	}
	return out
}

// judge says whether it can be done. The product that needs most room decides.
func (q TopUpAsk) judge(out *TopUp) {
	switch {
	case q.Capacity.Known && q.Volume > q.Capacity.V:
		out.Why = q.Volume.Text() + " gal do not fit: the tank holds " + q.Capacity.V.Text() + " gal."
		out.Do = "Fill to at most " + q.Capacity.V.Text() + " gal."
	case len(out.Strong) > 0:
		worst := out.Strong[0]
		for _, t := range out.Strong[1:] {
			if t.RightAt > worst.RightAt {
				worst = t
			}
		}
		out.Why = "It is too strong already: of " + worst.Product + " it holds " + times(worst.Times) + " the strength meant, and at " + q.Volume.Text() + " gal still " + times(worst.After) + " that."
		switch {
		case !worst.Fits.Known:
			out.Do = "Fill to " + worst.RightAt.Text() + " gal, where it is right."
		case worst.Fits.V:
			out.Do = "Fill to " + worst.RightAt.Text() + " gal, where it is right and which fits."
		default:
			out.Do = "It is right at " + worst.RightAt.Text() + " gal, but the tank holds " + q.Capacity.V.Text() + " gal; draw it down first, or use it where it is meant to be as strong."
		}
	case out.Water < 0:
		out.Why = "There is no room: the products to add are " + measure.LiquidAmount(liquids(out.Add)).Text() + ", and only " + (q.Volume - q.Left).Text() + " gal go in."
		out.Do = "Fill to more, or draw it down first."
	default:
		out.Possible = true
	}
}

func (q TopUpAsk) held(product string) measure.Amount {
	for _, h := range q.Holds {
		if h.Product == product {
			return h.Amount
		}
	}
	return measure.Amount{}
}

func (q TopUpAsk) wants(product string) bool {
	for _, t := range q.Targets {
		if t.Product == product {
			return true
		}
	}
	return false
}

func (q TopUpAsk) check() error {
	if q.Left < 0 {
		return measure.Troublef("Give what is left as 0 gal or more.", "What is left is %s gal.", q.Left.Text())
	}
	if err := checkVolume("The volume to fill to", q.Volume); err != nil {
		return err
	}
	if q.Volume < q.Left {
		return measure.Troublef("Give at least "+q.Left.Text()+" gal.", "It is to be filled to %s gal, but %s gal are in it already.", q.Volume.Text(), q.Left.Text())
	}
	var names []string
	for _, t := range q.Targets {
		names = append(names, t.Product)
		if !(t.Strength >= 0) || math.IsInf(float64(t.Strength), 0) {
			return measure.Troublef("Give a strength of 0 or more.", "The strength meant of %s is no figure.", t.Product)
		}
	}
	if err := once(names); err != nil {
		return err
	}
	return checkHeld(q.Holds)
}

// checkHeld refuses amounts of the wrong kind and less than nothing.
func checkHeld(holds []Held) error {
	var names []string
	for _, h := range holds {
		names = append(names, h.Product)
		if err := checkAmount(h.Product, h.Label.Form, h.Amount); err != nil {
			return err
		}
	}
	return once(names)
}
