package yard

import (
	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Blend works out what results if q.From, or so much of it as q.Volume says, is run into q.Into, and on which grasses that may go. Without
// letters it is the compartment that has least, run into the one that it fits best: with the same mix, else with most room.
func Blend(b *core.Book, q Ask) (Answer, error) {
	from, err := compartment(b, q.From)
	if err != nil {
		return Answer{}, err
	}
	if q.Into == 0 {
		q.Into = partner(b, from)
	}
	if q.Into == 0 || q.Into == from.Letter {
		return Answer{}, measure.Troublef("Name two compartments.", "There is no second compartment to run %c into.", from.Letter)
	}
	into, err := compartment(b, q.Into)
	if err != nil {
		return Answer{}, err
	}
	v := q.Volume.Or(min(from.Drawable(), into.Room()))
	if v > from.Drawable() {
		return Answer{}, measure.Troublef("Give at most "+gallons(from.Drawable())+".", "%s of %c cannot be drawn: %s can.", gallons(v), from.Letter, gallons(from.Drawable()))
	}
	if v <= 0 || into.Liquid.Volume <= 0 {
		return Answer{}, measure.Troublef("Choose two that hold something, of which one has room.", "There is nothing to blend: %c can give %s, and %c holds %s with room for %s.",
			from.Letter, gallons(from.Drawable()), into.Letter, gallons(into.Liquid.Volume), gallons(into.Room()))
	}
	a, err := sprayer(b, q.For, b.MixIn(string(into.Letter)), into)
	if err != nil {
		return Answer{}, err
	}
	taken, _ := from.Liquid.Split(v)
	got, err := batch.BlendAsk{
		A: batch.Liquid{Volume: into.Liquid.Volume, Holds: holds(b, into.Liquid)}, B: batch.Liquid{Volume: taken.Volume, Holds: holds(b, taken)},
		Capacity: measure.Known(into.Capacity), Delivery: measure.Known(a.Delivery),
	}.Work()
	if err != nil {
		return Answer{}, err
	}
	out := Answer{Kind: "blend", Possible: true, Steps: got.Steps, About: gallons(v) + " of " + string(from.Letter) + " into " + string(into.Letter) + ", with " + a.Name}
	out.Facts = map[string]any{"from": string(from.Letter), "into": string(into.Letter), "for": a.Name, "moved_gal": v.Gallons(), "total_gal": got.Volume.Gallons(), "products": blendFacts(got.Holds)}
	out.Says = append(out.Says, gallons(got.Volume)+" in "+string(into.Letter)+", which covers "+feet(a.Delivery.AreaFor(max(got.Volume-into.Heel, 0))))
	var list []laying
	var laid []string
	for _, h := range got.Holds {
		list = append(list, laying{h.Product, h.Rate.V})
		laid = append(laid, h.Product+" laid at "+h.Rate.V.Text())
	}
	out.verdict(onGrasses(b, list, q.At), onLawns(b, list, into.Liquid.Plus(taken), a.Name, q.At))
	out.Says = append(out.Says, laid...)
	var moved []batch.Dose
	for _, h := range holds(b, taken) {
		moved = append(moved, batch.Dose{Product: h.Product, Amount: h.Amount})
	}
	out.beforeLoad(b, q.At, into.Letter, v, moved, false)
	out.Done = &core.Dumped{From: string(fluid.CompartmentPlace(from.Letter)), Volume: core.Known(v), To: string(fluid.CompartmentPlace(into.Letter))}
	return out, nil
}

// partner is the compartment into which another fits best; 0 where there is none.
func partner(b *core.Book, from *fluid.Compartment) byte {
	var best *fluid.Compartment
	same := func(c *fluid.Compartment) bool {
		return b.MixIn(string(c.Letter)) != "" && b.MixIn(string(c.Letter)) == b.MixIn(string(from.Letter))
	}
	p := b.Plumbing()
	for i := range p.Compartments {
		c := &p.Compartments[i]
		if c.Letter == from.Letter || c.Liquid.Volume <= 0 || c.Room() <= 0 {
			continue
		}
		if best == nil || (same(c) && !same(best)) || (same(c) == same(best) && c.Room() > best.Room()) {
			best = c
		}
	}
	if best == nil {
		return 0
	}
	return best.Letter
}

func blendFacts(list []batch.BlendPart) []map[string]any {
	out := []map[string]any{}
	for _, h := range list {
		key := map[measure.Kind]string{measure.Liquid: "fl_oz", measure.Dry: "oz"}[h.Amount.Kind]
		f := amountFacts(h.Amount)
		f["product"] = h.Product
		f[key+"_per_gal"], f["was_"+key+"_per_gal"], f["moved_"+key+"_per_gal"] = h.Both.PerGallon(h.Amount.Kind), h.A.PerGallon(h.Amount.Kind), h.B.PerGallon(h.Amount.Kind)
		rate, _ := h.Rate.V.In(key + "_per_1000_sqft")
		f[key+"_per_1000_sqft"] = rate
		out = append(out, f)
	}
	return out
}
