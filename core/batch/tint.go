package batch

import (
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// TintAsk is a compartment whose tint is to be brought back to its dose.
type TintAsk struct {
	Tint     string
	Form     measure.Kind
	Left     measure.Volume
	Has      measure.Amount // of the tint, in what is left
	Dose     measure.Concentration
	Volume   measure.Volume // filled to; as much as is left where nothing else goes in
	Capacity measure.Maybe[measure.Volume]
}

// Tinted is what goes in. Share is how strong it is now, of the dose.
type Tinted struct {
	Share float64
	Add   measure.Amount
	TopUp
}

// Work tops the tint up as a product of its own. What was drawn took its share of the tint along, so that what is left is as strong as
// before; only what is filled up needs more.
func (q TintAsk) Work() (Tinted, error) {
	if !(q.Dose > 0) {
		return Tinted{}, measure.Troublef("Give how much of it goes into a gallon of mix.", "The dose of %s is nothing.", q.Tint)
	}
	entry := label.Entry{Form: q.Form}
	up, err := TopUpAsk{
		Left: q.Left, Holds: []Held{{q.Tint, entry, q.Has}}, Targets: []Target{{q.Tint, entry, q.Dose}}, Volume: q.Volume, Capacity: q.Capacity,
	}.Work()
	if err != nil {
		return Tinted{}, err
	}
	out := Tinted{TopUp: up, Add: up.Add[0].Amount}
	if q.Left > 0 {
		out.Share = float64(measure.ConcentrationOf(q.Has, q.Left)) / float64(q.Dose)
	}
	return out, nil
}
