package yard

import (
	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// Dilute works out what makes a rest, mixed for one applicator, as strong as another needs it: q.For is that other; without it the first
// other one that sprays.
func Dilute(b *core.Book, q Ask) (Answer, error) {
	c, mix, err := q.subject(b)
	if err != nil {
		return Answer{}, err
	}
	from, err := sprayer(b, "", mix, c)
	if err != nil {
		return Answer{}, err
	}
	to := q.For
	if to == "" {
		to = otherSprayer(b, from.Name)
	}
	if to == "" {
		return Answer{}, measure.Troublef("Name the applicator that it is to go through.", "The rig has no other applicator that sprays than %s.", from.Name)
	}
	with, err := sprayer(b, to, mix, c)
	if err != nil {
		return Answer{}, err
	}
	own, traces := apart(b, c, mix, holds(b, c.Liquid))
	got, err := batch.TurnAsk{Left: c.Liquid.Volume, Holds: own, From: from.Delivery, To: with.Delivery, Capacity: measure.Known(c.Capacity)}.Work()
	if err != nil {
		return Answer{}, err
	}
	letter := string(c.Letter)
	out := Answer{Kind: "dilute", Possible: got.Possible, Why: got.Why, Do: got.Do, Steps: got.Steps, About: gallons(c.Liquid.Volume) + " in " + letter + ", mixed for " + from.Name + ", for " + with.Name}
	out.Facts = map[string]any{
		"into": letter, "mix": mix, "from": from.Name, "to": with.Name, "left_gal": c.Liquid.Volume.Gallons(), "strength_ratio": got.Times, "water_gal": nil, "total_gal": got.Volume.Gallons(),
		"products": []map[string]any{}, "most_left_gal": got.Most.Gallons(),
	}
	out.Says = append(out.Says, "it has to become "+measure.Multiple(got.Times)+" times as strong")
	if got.Possible {
		plan := &core.LoadPlanned{Into: letter, Volume: got.Volume - c.Liquid.Volume}
		if got.Water > 0 {
			out.Says = append(out.Says, "add water "+gallons(got.Water))
		}
		out.toAdd(plan, inOrder(b, got.Add))
		out.Says = append(out.Says, gallons(got.Volume)+" in all, for "+feet(with.Delivery.AreaFor(max(got.Volume-c.Heel, 0))))
		if plan.Volume > 0 && !dryAlone(plan) { // what is dry adds no volume, and no load is of 0 gal
			out.Plan = plan
		}
		out.Facts["water_gal"], out.Facts["products"] = got.Water.Gallons(), doseFacts(got.Add)
	}
	out.traces(traces)
	out.note(Finding{check.Note, "The hose still holds it as it was mixed for " + from.Name + ".", "Change over before the first lawn.", practice})
	return out, nil
}

// dryAlone tells whether a plan is of dry products, without volume.
func dryAlone(p *core.LoadPlanned) bool {
	for _, part := range p.Parts {
		if part.Amount.Kind == measure.Liquid {
			return false
		}
	}
	return len(p.Parts) > 0
}

// otherSprayer is the first applicator that sprays, other than one.
func otherSprayer(b *core.Book, than string) string {
	for _, a := range b.Rig().Applicators {
		if a.Type != core.Spreader && a.Name != than && a.Delivery.V > 0 {
			return a.Name
		}
	}
	return ""
}
