package batch

import (
	"math"

	"example.com/tintline/core/measure"
)

// Diluted is what a concentrate and water come to.
type Diluted struct {
	Concentrate, Water, Total float64 // in the unit of what was asked
	Steps                     []Step
}

// DiluteTo makes a final amount of a strength from a concentrate: C1 V1 = C2 V2, in one unit of volume with strengths by volume, or of
// weight with strengths by weight. unit names it in the working.
func DiluteTo(final, finalPercent, concentratePercent float64, unit string) (Diluted, error) {
	switch {
	case !(final > 0) || math.IsInf(final, 0):
		return Diluted{}, measure.Troublef("Give more than 0.", "The final amount is %s %s.", bare(final), unit)
	case !(concentratePercent > 0) || concentratePercent > 100:
		return Diluted{}, measure.Troublef("Give more than 0 and at most 100 per cent.", "The concentrate is %s per cent.", bare(concentratePercent))
	case !(finalPercent >= 0) || finalPercent > concentratePercent:
		return Diluted{}, measure.Troublef("Give 0 per cent to "+bare(concentratePercent)+" per cent, or a stronger concentrate.",
			"Water does not make %s per cent of a concentrate of %s per cent.", bare(finalPercent), bare(concentratePercent))
	}
	c := Concentrate(final, finalPercent, concentratePercent)
	var s steps
	s.say(bare(final), " ", unit, " x ", bare(finalPercent), " % / ", bare(concentratePercent), " % = ", bare(c), " ", unit, " of concentrate")
	s.say(bare(final), " ", unit, " less ", bare(c), " ", unit, " = ", bare(final-c), " ", unit, " of water")
	return Diluted{Concentrate: c, Water: final - c, Total: final, Steps: s}, nil
}

// DiluteStock thins a stock, or strengthens it, with what has another strength: Pearson's square. unit names the volume in the working.
// Water holds what is added of the diluent.
func DiluteStock(stock, stockPercent, targetPercent, diluentPercent float64, unit string) (Diluted, error) {
	switch {
	case !(stock > 0) || math.IsInf(stock, 0):
		return Diluted{}, measure.Troublef("Give more than 0.", "The stock is %s %s.", bare(stock), unit)
	case !between(targetPercent, stockPercent, diluentPercent):
		return Diluted{}, measure.Troublef("Give a strength between the two.", "%s per cent does not lie between %s and %s per cent.", bare(targetPercent), bare(stockPercent), bare(diluentPercent))
	}
	partsStock, partsDiluent := Pearson(stockPercent, targetPercent, diluentPercent)
	if partsStock == 0 {
		return Diluted{}, measure.Troublef("Give a strength that something is left of.", "No amount of %s per cent makes %s per cent.", bare(diluentPercent), bare(targetPercent))
	}
	add := stock * partsDiluent / partsStock
	var s steps
	s.say(bare(targetPercent), " less ", bare(diluentPercent), " = ", bare(partsStock), " parts of the stock; ", bare(stockPercent), " and ", bare(targetPercent), " are ", bare(partsDiluent), " apart: so many parts to add")
	s.say(bare(stock), " ", unit, " x ", bare(partsDiluent), " / ", bare(partsStock), " = ", bare(add), " ", unit, " to add, ", bare(stock+add), " ", unit, " in all")
	return Diluted{Concentrate: stock, Water: add, Total: stock + add, Steps: s}, nil
}

// between tells whether f lies between two figures, ends included.
func between(f, a, b float64) bool { return f >= math.Min(a, b) && f <= math.Max(a, b) && a != b }

// TurnAsk is a rest that was made up for one delivery rate and is to go through an applicator of another.
type TurnAsk struct {
	Left     measure.Volume
	Holds    []Held
	From, To measure.Rate                  // delivery rates
	Capacity measure.Maybe[measure.Volume] // unknown: not asked about
}

// Turned is what makes the rest as strong as the other applicator needs it.
type Turned struct {
	Times    float64 // how strong it has to be, of what it is: from over to
	Possible bool
	Why, Do  string
	Water    measure.Volume // to add, where it is thinned
	Add      []Dose         // to add, where it is strengthened
	Volume   measure.Volume
	Most     measure.Volume // of the rest that can be turned in this tank; all of it where it fits
	Steps    []Step
}

// Work gives what is to be added so that the same product lies on an area: a mix laid with a delivery rate d is rate / d strong, so that
// the strength goes as the delivery rates, the other way round. That eight times the strength goes with one eighth of the delivery rate
// is common practice, no source.
func (q TurnAsk) Work() (Turned, error) {
	if err := checkVolume("What is left", q.Left); err != nil {
		return Turned{}, err
	}
	for _, r := range []measure.Rate{q.From, q.To} {
		if err := checkDelivery("A delivery rate", r); err != nil {
			return Turned{}, err
		}
	}
	if err := checkHeld(q.Holds); err != nil {
		return Turned{}, err
	}
	out := Turned{Times: q.From.V / q.To.V}
	var s steps
	s.say("made up for ", laying(q.From), ", wanted for ", laying(q.To), ": ", figure(out.Times), " times as strong")
	if out.Times <= 1 {
		q.thin(&out, &s)
	} else {
		q.strengthen(&out, &s)
	}
	out.Steps = s
	return out, nil
}

// thin adds water.
func (q TurnAsk) thin(out *Turned, s *steps) {
	out.Volume = measure.Volume(math.RoundToEven(math.Min(float64(q.Left)/out.Times, largest)))
	out.Water = out.Volume - q.Left
	s.say(q.Left.Text(), " gal / ", figure(out.Times), " = ", out.Volume.Text(), " gal in all: ", out.Water.Text(), " gal of water")
	q.judge(out, s)
}

// strengthen adds product, which takes room of its own.
func (q TurnAsk) strengthen(out *Turned, s *steps) {
	var liquid float64
	for _, h := range q.Holds {
		if h.Amount.Kind == measure.Liquid {
			liquid += float64(h.Amount.N)
		}
	}
	v, ok := Strengthened(float64(q.Left), liquid/float64(q.Left), out.Times)
	if !ok || v > largest {
		out.Why = "No product makes it " + figure(out.Times) + " times as strong: " + percent(liquid/float64(q.Left)) + " of it is product already."
		out.Do = "Mix a load for the other applicator."
		s.say(out.Why)
		return
	}
	out.Volume = measure.Volume(math.RoundToEven(v))
	for _, h := range q.Holds {
		c := measure.ConcentrationOf(h.Amount, q.Left) * measure.Concentration(out.Times)
		a := measure.Amount{N: max(int64(math.RoundToEven(ToAdd(v, float64(c), float64(h.Amount.N)))), 0), Kind: h.Amount.Kind}
		out.Add = append(out.Add, Dose{h.Product, a, c})
		s.say(h.Product, ": ", out.Volume.Text(), " gal at ", aGallon(c, a.Kind), ", less ", h.Amount.Text(), " that is in it = ", a.Text(), " to add")
	}
	q.judge(out, s)
}

// judge says whether the tank holds it, and how much of the rest it could hold turned.
func (q TurnAsk) judge(out *Turned, s *steps) {
	out.Most, out.Possible = q.Left, true
	if !q.Capacity.Known || out.Volume <= q.Capacity.V {
		return
	}
	out.Possible = false
	out.Most = measure.Volume(float64(q.Left) * (float64(q.Capacity.V) / float64(out.Volume)))
	out.Why = "There is no room: it becomes " + out.Volume.Text() + " gal, and the tank holds " + q.Capacity.V.Text() + " gal."
	out.Do = "Draw it down to " + out.Most.Text() + " gal first; that much becomes " + q.Capacity.V.Text() + " gal."
	s.say(out.Why)
}
