package yard

import (
	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/check"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// Stretch works out how far the rest of a compartment goes at the lowest label rates: those for the grasses of the lawns ahead on which it
// may go, else the general ones. With q.Volume only so much water.
func Stretch(b *core.Book, q Ask) (Answer, error) {
	c, err := compartment(b, q.Into)
	if err != nil {
		return Answer{}, err
	}
	mix := q.Mix
	if mix == "" {
		mix = b.MixIn(string(c.Letter))
	}
	a, err := sprayer(b, q.For, mix, c)
	if err != nil {
		return Answer{}, err
	}
	held, traces := apart(b, c, mix, holds(b, c.Liquid))
	ask := batch.StretchAsk{
		Left: c.Liquid.Volume, Heel: min(c.Heel, c.Liquid.Volume), Holds: held, Delivery: a.Delivery, Room: measure.Known(c.Room()),
		Lowest: lowest(b, held, c.Liquid.Volume, a.Delivery, q.At),
	}
	if q.Volume.Known {
		ask.Room.V = min(ask.Room.V, q.Volume.V)
	}
	got, err := ask.Work()
	if err != nil {
		return Answer{}, err
	}
	letter := string(c.Letter)
	out := Answer{Kind: "stretch", Possible: got.Possible, Why: got.Why, Do: got.Do, Steps: got.Steps, About: gallons(c.Liquid.Volume) + " in " + letter + " with " + a.Name}
	out.Facts = map[string]any{
		"into": letter, "for": a.Name, "left_gal": c.Liquid.Volume.Gallons(), "water_gal": got.Water.Gallons(), "total_gal": got.Total.Gallons(), "area_sqft": got.Area.SquareFeet(),
		"area_now_sqft": got.Now.SquareFeet(), "limit": nil, "warnings": orEmpty(got.Warnings), "rates": rateFacts(got.Rates),
	}
	if got.Limit != "" {
		out.Facts["limit"] = got.Limit
	}
	out.Says = append(out.Says, "covers "+feet(got.Now)+" as it is")
	if !got.Possible {
		out.traces(traces)
		return out, nil
	}
	if got.Water < measure.USGallon/100 {
		out.Says = append(out.Says, "it takes no water: "+got.Limit+" is at its lowest label rate")
		out.traces(traces)
		return out, nil
	}
	out.Says = append([]string{"add water " + gallons(got.Water), "covers " + feet(got.Area) + " then, " + feet(got.Area-got.Now) + " more", "control is shorter, and the record says the lower rate"}, out.Says...)
	for _, r := range got.Rates {
		low := ", label entry without a lowest rate"
		if r.Lowest.Known {
			low = ", lowest " + r.Lowest.V.Text()
		}
		out.Says = append(out.Says, r.Product+" "+r.Then.Text()+low)
	}
	out.traces(traces)
	for _, w := range got.Warnings {
		out.note(Finding{Weight: check.Note, Says: w})
	}
	out.Plan = &core.LoadPlanned{Into: letter, Volume: got.Water}
	return out, nil
}

// lowest are the lowest label rates of products: the highest of them over the grasses ahead on which the product may go, so that it is below
// none of them.
func lowest(b *core.Book, held []batch.Held, v measure.Volume, delivery measure.Rate, at core.Moment) []batch.Lowest {
	var out []batch.Lowest
	for _, h := range held {
		l := batch.Lowest{Product: h.Product, None: h.Label.NoneOnLabel(label.LimitRateLow)}
		rate := measure.Rate{V: float64(measure.ConcentrationOf(h.Amount, v)) * delivery.V, Kind: h.Amount.Kind}
		for _, name := range ahead(b) {
			lawn := b.Lawn(name)
			if lawn == nil {
				continue
			}
			for _, z := range lawn.Zones {
				low, _ := h.Label.RatesFor(z.Grass)
				if !low.Known || (l.Rate.Known && low.V.V <= l.Rate.V.V) || !onZone(b, []laying{{h.Product, rate}}, name, z, at).may() {
					continue
				}
				l.Rate = low
			}
		}
		if !l.Rate.Known && h.Label.HasRateLow {
			l.Rate = measure.Known(h.Label.RateLow)
		}
		if l.Rate.Known {
			l.None = false
		}
		out = append(out, l)
	}
	return out
}

func rateFacts(list []batch.StretchedRate) []map[string]any {
	out := []map[string]any{}
	for _, r := range list {
		unit := map[measure.Kind]string{measure.Liquid: "fl_oz_per_1000_sqft", measure.Dry: "oz_per_1000_sqft"}[r.Now.Kind]
		now, _ := r.Now.In(unit)
		then, _ := r.Then.In(unit)
		f := map[string]any{"product": r.Product, "now_" + unit: now, "then_" + unit: then, "lowest_" + unit: nil}
		if r.Lowest.Known {
			low, _ := r.Lowest.V.In(unit)
			f["lowest_"+unit] = low
		}
		out = append(out, f)
	}
	return out
}
