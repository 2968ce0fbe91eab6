package yard

import (
	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// Ask is what is said of a question; what is left out is taken from the book as it most likely is.
type Ask struct {
	Into   byte   // a compartment; 0: the one that has least
	From   byte   // another one: of a blend
	Mix    string // empty: the one that stands in it
	For    string // an applicator; empty: the one that the mix is made up for
	Volume core.Maybe[measure.Volume]
	Area   core.Maybe[measure.Area]
	Thin   core.Maybe[float64] // parts of water to one
	Dose   core.Maybe[measure.Amount]
	Name   string                     // a product: of a jug, or the tint
	Pack   core.Maybe[measure.Amount] // what the package of a jug holds; unknown: as the product is entered
	Loads  int                        // that a jug is split into
	Each   core.Maybe[measure.Amount]
	Rinses int
	At     core.Moment

	lettered bool // a line of text named the first compartment of a blend
}

// Load works out a load of a mix: so many gallons, or for an area; without either all that there is room for.
func Load(b *core.Book, q Ask) (Answer, error) {
	c, mix, err := q.subject(b)
	if err != nil {
		return Answer{}, err
	}
	a, err := sprayer(b, q.For, mix, nil)
	if err != nil {
		return Answer{}, err
	}
	if q.For == "" {
		if made := MadeFor(b, mix, c); b.Applicator(made) != nil && b.Applicator(made).Delivery.V > 0 {
			a = b.Applicator(made)
		}
	}
	list, err := parts(b, mix)
	if err != nil {
		return Answer{}, err
	}
	ask := batch.LoadAsk{Parts: list, Delivery: a.Delivery, Room: measure.Known(c.Room()), Order: b.MixingOrder()}
	switch {
	case q.Area.Known:
		ask.Area = q.Area.V
	case q.Volume.Known:
		ask.Volume = q.Volume.V
	default:
		ask.Volume = c.Room()
		if ask.Volume <= 0 {
			return Answer{}, measure.Troublef("Draw it down first, or choose another compartment.", "%c is full: %s of %s.", c.Letter, gallons(c.Liquid.Volume), gallons(c.Capacity))
		}
	}
	got, err := ask.Work()
	if err != nil {
		return Answer{}, err
	}
	out := Answer{Kind: "load", Possible: true, Steps: got.Steps, About: gallons(got.Volume) + " of " + mix + " for " + a.Name + " into " + string(c.Letter)}
	out.Says = append(out.Says, "water "+gallons(got.Water))
	for _, d := range got.Doses {
		out.Says = append(out.Says, d.Product+" "+d.Amount.Text())
	}
	out.Says = append(out.Says, "covers "+feet(got.Area))
	if c.Drawable() > 0 {
		out.note(Finding{
			check.Note, gallons(c.Liquid.Volume) + " are in " + string(c.Letter) + " already; the load is worked out for itself.",
			"Top it up instead: that reckons with what is in it.", practice,
		})
	}
	out.beforeLoad(b, q.At, c.Letter, got.Volume, got.Doses, true)
	out.Plan = &core.LoadPlanned{Into: string(c.Letter), Volume: got.Volume, Mix: mix, For: a.Name}
	out.Facts = map[string]any{
		"into": string(c.Letter), "mix": mix, "for": a.Name, "volume_gal": got.Volume.Gallons(), "water_gal": got.Water.Gallons(), "area_sqft": got.Area.SquareFeet(),
		"room_gal": c.Room().Gallons(), "products": doseFacts(got.Doses),
	}
	return out, nil
}
