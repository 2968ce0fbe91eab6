package yard

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/check"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// UseUp works out where the rest of a compartment, or rinse water with it, may go: each zone of today's lawns, by its label, what it got
// today, what the year still allows, and when it may get it again. Without q.Thin it is thinned 1 to 10; q.Volume is how much of it there is.
func UseUp(b *core.Book, q Ask) (Answer, error) {
	c, err := compartment(b, q.Into)
	if err != nil {
		return Answer{}, err
	}
	a, err := sprayer(b, q.For, b.MixIn(string(c.Letter)), c)
	if err != nil {
		return Answer{}, err
	}
	left := q.Volume.Or(c.Drawable())
	if left <= 0 || left > c.Liquid.Volume {
		return Answer{}, measure.Troublef("Give more than 0 gal and at most what is in it, or choose another compartment.", "%s are to be used up of %s in %c, of which %s can be drawn.",
			gallons(left), gallons(c.Liquid.Volume), c.Letter, gallons(c.Drawable()))
	}
	taken, _ := c.Liquid.Split(left)
	thin := q.Thin.Or(batch.Practice(batch.Thin).Value)
	ask := batch.UseUpAsk{Left: left, Holds: holds(b, taken), Delivery: a.Delivery, Thin: thin}
	_, traces := apart(b, c, b.MixIn(string(c.Letter)), ask.Holds)
	for _, at := range todays(b) {
		ask.Grounds = append(ask.Grounds, ground(b, ask, traces, at, q.At))
	}
	got, err := ask.Work()
	if err != nil {
		return Answer{}, err
	}
	out := Answer{Kind: "use-up", Steps: got.Steps, About: fmt.Sprintf("%s of %c, 1 to %.4g, with %s", gallons(left), c.Letter, thin, a.Name)}
	out.Says = append(out.Says, fmt.Sprintf("thinned it is %s and lays %.1f %% of its strength on %s", gallons(got.Volume), 100*got.Share, feet(got.Area)))
	out.Facts = map[string]any{
		"from": string(c.Letter), "for": a.Name, "left_gal": left.Gallons(), "thin": thin, "share": got.Share, "volume_gal": got.Volume.Gallons(), "area_sqft": got.Area.SquareFeet(),
		"places": out.places(got.Places),
	}
	out.rinsate(b, c.Letter, left)
	if !out.Possible {
		out.Why, out.Do = "No zone of today's lawns can take it as it is thinned.", "Keep it for a lawn that its labels list, thin it further, or use it as part of the water of the next load of the same products."
		if len(ask.Grounds) == 0 {
			out.Why = "No lawn is on the list of today, so it is not known where it could go."
		}
	}
	return out, nil
}

// places writes each ground: those that can take it first.
func (a *Answer) places(list []batch.UseUpPlace) []map[string]any {
	facts := []map[string]any{}
	for _, may := range []bool{true, false} {
		for _, p := range list {
			if p.May != may {
				continue
			}
			var least, why any
			if p.LeastTo.Known {
				least = float64(p.LeastTo.V)
			}
			words := p.Name + ": up to " + gallons(p.Takes) + " of it, on " + feet(p.Area)
			if len(p.Unknown) > 0 {
				words += "; no limit is entered for " + and(p.Unknown)
			}
			if !may {
				why, words = p.Why, p.Name+": not there; "+p.Why
				if p.LeastTo.Known {
					words += ", but 1 to " + measure.Multiple(float64(p.LeastTo.V)) + " would do"
				}
			}
			a.Possible = a.Possible || may
			a.Says = append(a.Says, words)
			facts = append(facts, map[string]any{"place": p.Name, "may": may, "why": why, "takes_gal": p.Takes.Gallons(), "area_sqft": p.Area.SquareFeet(), "least_thin": least, "not_checked": orEmpty(p.Unknown)})
		}
	}
	return facts
}

// rinsate says in how large a load of the same products it could make up part of the water.
func (a *Answer) rinsate(b *core.Book, letter byte, left measure.Volume) {
	share := batch.Practice(batch.RinsateShare)
	load := measure.Volume(float64(left) / (share.Value / 100))
	a.note(Finding{
		check.Note, fmt.Sprintf("As rinse water it may make up to %g %% of the water of a later load of the same products: all of it needs a load of %s.", share.Value, gallons(load)),
		"Keep it only as long as the label lets it stand.", share.Source,
	})
	a.Facts["rinsate_load_gal"] = load.Gallons()
}

// spot is a zone of a lawn of today.
type spot struct {
	lawn string
	zone core.Zone
}

// todays lists the zones of today's lawns: those ahead first, then those that were visited.
func todays(b *core.Book) []spot {
	var out []spot
	seen := map[string]bool{}
	add := func(name string) {
		l := b.Lawn(name)
		if l == nil || seen[name] {
			return
		}
		seen[name] = true
		for _, z := range l.Zones {
			out = append(out, spot{name, z})
		}
	}
	for _, name := range ahead(b) {
		add(name)
	}
	for _, v := range b.Day().Visits {
		add(v.Lawn)
	}
	return out
}

// ground is what a zone can still take of each product.
func ground(b *core.Book, ask batch.UseUpAsk, traces []batch.Held, at spot, now core.Moment) batch.Ground {
	date := b.Day().Date
	name := at.lawn
	if l := b.Lawn(at.lawn); l != nil && len(l.Zones) > 1 {
		name += ", " + at.zone.Name
	}
	g := batch.Ground{Name: name, Area: b.AreaMeant(at.lawn, at.zone)}
	season := b.Season(at.lawn, at.zone.Name, date, nil)
	for _, h := range ask.Holds {
		k, ok := b.ProductKey(h.Product)
		if !ok {
			continue
		}
		full := float64(measure.ConcentrationOf(h.Amount, ask.Left)) * ask.Delivery.V
		rate := measure.Rate{V: full / (1 + ask.Thin), Kind: h.Amount.Kind}
		if among(traces, h.Product) {
			g.Can = append(g.Can, canTakeTrace(b, h, at, rate, now))
			continue
		}
		g.Can = append(g.Can, canTake(b, h, k, at, season.Product(k), rate, now))
	}
	return g
}

func among(list []batch.Held, product string) bool {
	for _, h := range list {
		if h.Product == product {
			return true
		}
	}
	return false
}

// canTakeTrace holds residue against a zone, as the gate does.
func canTakeTrace(b *core.Book, h batch.Held, at spot, rate measure.Rate, now core.Moment) batch.CanTake {
	out := batch.CanTake{Product: h.Product, Residue: true}
	if look := check.LookLaid(b, b.Product(h.Product), at.lawn, at.zone, rate, now); look.Weight == check.Stop {
		out.Not = "is stopped there: " + look.Says
	}
	return out
}

// canTake holds one product against a zone. It is laid on purpose, so that a product that the label entry does not list for the grass may
// not go there, however thin.
func canTake(b *core.Book, h batch.Held, key int32, at spot, line core.SeasonLine, rate measure.Rate, now core.Moment) batch.CanTake {
	out := batch.CanTake{Product: h.Product, Laid: measure.Rate{Kind: h.Amount.Kind}, Most: h.Label.MostFor(at.zone.Grass)}
	date := b.Day().Date
	for _, w := range b.History(at.lawn, at.zone.Name) {
		if w.Product == key && w.Date == date {
			out.Laid.V += w.Dose(h.Amount.Kind).V
		}
	}
	if line.Room.Known {
		out.Year = line.Room
	} else {
		out.Year = line.Left
	}
	look := check.Look(b, b.Product(h.Product), at.lawn, at.zone, label.FormSpray, core.Known(rate), now)
	switch {
	case !h.Label.Lists(at.zone.Grass):
		out.Not = "is not listed for " + label.GrassWords(at.zone.Grass)
	case look.Weight == check.Stop:
		out.Not = "is stopped there: " + look.Says
	case out.Laid.V == 0 && line.Again != "" && line.Again > date:
		out.Not = "may go there again from " + line.Again
	}
	return out
}
