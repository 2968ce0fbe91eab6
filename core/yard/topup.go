package yard

import (
	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/check"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// TopUp works out what fills a compartment to a volume at the strength of a mix, from what it holds: without a volume, as full as it can
// be. A load that follows from it books only what is added.
func TopUp(b *core.Book, q Ask) (Answer, error) {
	c, mix, err := q.subject(b)
	if err != nil {
		return Answer{}, err
	}
	a, err := sprayer(b, q.For, mix, c)
	if err != nil {
		return Answer{}, err
	}
	list, err := parts(b, mix)
	if err != nil {
		return Answer{}, err
	}
	targets, err := batch.Targets(list, a.Delivery)
	if err != nil {
		return Answer{}, err
	}
	ask := batch.TopUpAsk{Left: c.Liquid.Volume, Holds: holds(b, c.Liquid), Targets: targets, Volume: q.Volume.Or(c.Capacity), Capacity: measure.Known(c.Capacity)}
	got, err := ask.Work()
	if err != nil {
		return Answer{}, err
	}
	letter := string(c.Letter)
	out := Answer{Kind: "topup", Possible: got.Possible, Why: got.Why, Do: got.Do, Steps: got.Steps, About: letter + " to " + gallons(ask.Volume) + " of " + mix + " for " + a.Name}
	out.Facts = map[string]any{
		"into": letter, "mix": mix, "for": a.Name, "left_gal": c.Liquid.Volume.Gallons(), "target_gal": ask.Volume.Gallons(), "capacity_gal": c.Capacity.Gallons(),
		"water_gal": nil, "products": []map[string]any{}, "too_strong": strongFacts(got.Strong), "strange": doseFacts(got.Strange),
	}
	if got.Possible {
		got.Add = inOrder(b, got.Add)
		out.addTopUp(c, got, mix, a)
		if out.Plan != nil {
			out.beforeLoad(b, q.At, c.Letter, out.Plan.Volume, got.Add, true)
		}
	}
	out.Says = append(out.Says, nowWords(c, ask, targets)...)
	if len(got.Strange) > 0 {
		out.strange(b, got, a, q.At)
	}
	return out, nil
}

// addTopUp says what to add, and plans it.
func (a *Answer) addTopUp(c *fluid.Compartment, got batch.TopUp, mix string, with *core.Applicator) {
	plan := &core.LoadPlanned{Into: string(c.Letter), Volume: got.Volume - c.Liquid.Volume}
	a.Says = append(a.Says, "add water "+gallons(got.Water))
	a.toAdd(plan, got.Add)
	if len(plan.Parts) > 0 { // water alone keeps the name of what stands in it
		plan.Mix, plan.For = mix, with.Name
	}
	if plan.Volume > 0 {
		a.Plan = plan
	} else {
		a.Says = []string{"nothing is to be added: it is as strong as it is meant to be"}
	}
	a.Facts["water_gal"], a.Facts["products"] = got.Water.Gallons(), doseFacts(got.Add)
}

// nowWords say how strong it is now, product by product, as a share of what is meant.
func nowWords(c *fluid.Compartment, ask batch.TopUpAsk, targets []batch.Target) []string {
	if c.Liquid.Volume <= 0 {
		return []string{"it is empty now"}
	}
	out := []string{gallons(c.Liquid.Volume) + " are in it now"}
	for _, t := range targets {
		for _, h := range ask.Holds {
			if h.Product == t.Product && t.Strength > 0 {
				share := float64(measure.ConcentrationOf(h.Amount, c.Liquid.Volume)) / float64(t.Strength)
				out = append(out, t.Product+" now at "+measure.Multiple(share)+" times the strength meant")
			}
		}
	}
	return out
}

// strange says what stays in it that is no part of the mix, and on which grasses that matters.
func (a *Answer) strange(b *core.Book, got batch.TopUp, with *core.Applicator, at core.Moment) {
	var list []laying
	for _, d := range got.Strange {
		list = append(list, laying{d.Product, measure.Rate{V: float64(d.Strength) * with.Delivery.V, Kind: d.Amount.Kind}})
		a.Says = append(a.Says, stays(d.Product, d.Amount))
	}
	for _, g := range onGrasses(b, list, at) {
		if g.Weight > check.None {
			a.note(Finding{g.Weight, g.Says + ".", g.Do, g.Source})
		}
	}
}

func strongFacts(list []batch.TooStrong) []map[string]any {
	out := []map[string]any{}
	for _, t := range list {
		var fits any
		if t.Fits.Known {
			fits = t.Fits.V
		}
		out = append(out, map[string]any{"product": t.Product, "times": finite(t.Times), "times_then": finite(t.After), "right_at_gal": t.RightAt.Gallons(), "fits": fits})
	}
	return out
}
