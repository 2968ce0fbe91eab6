package yard

import (
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Tint works out how much tint brings a compartment to its dose, filled to q.Volume; without one as it stands. The dose is q.Dose to the
// gallon, else what the mix in it has, else what is in it now.
func Tint(b *core.Book, q Ask) (Answer, error) {
	c, err := compartment(b, q.Into)
	if err != nil {
		return Answer{}, err
	}
	p, err := tintProduct(b, q.Name, c)
	if err != nil {
		return Answer{}, err
	}
	form := p.Label.Form
	k, _ := b.ProductKey(p.ProductName)
	has := measure.Amount{N: c.Liquid.Holds.Of(k), Kind: form}
	dose, from, err := tintDose(b, q, c, p, has)
	if err != nil {
		return Answer{}, err
	}
	to := q.Volume.Or(c.Capacity)
	got, err := batch.TintAsk{Tint: p.ProductName, Form: form, Left: c.Liquid.Volume, Has: has, Dose: dose, Volume: to, Capacity: measure.Known(c.Capacity)}.Work()
	if err != nil {
		return Answer{}, err
	}
	letter := string(c.Letter)
	out := Answer{Kind: "tint", Possible: got.Possible, Why: got.Why, Do: got.Do, Steps: got.Steps, About: p.ProductName + " in " + letter + ", " + perGallon(dose, form) + ", filled to " + gallons(to)}
	out.Says = append(out.Says, "dose "+perGallon(dose, form)+", "+from)
	if got.Possible {
		out.Says = append([]string{"add " + p.ProductName + " " + got.Add.Text() + " when it is filled to " + gallons(to)}, out.Says...)
	}
	out.Says = append(out.Says, "now at "+measure.Multiple(got.Share)+" times the dose, "+has.Text()+" in "+gallons(c.Liquid.Volume))
	out.Facts = map[string]any{"into": letter, "tint": p.ProductName, "left_gal": c.Liquid.Volume.Gallons(), "target_gal": to.Gallons(), "share": got.Share, "add": amountFacts(got.Add), "has": amountFacts(has)}
	return out, nil
}

// tintProduct is the product that tints: the one named, else one that is a tint by its kind and stands in the compartment, else the first.
func tintProduct(b *core.Book, name string, c *fluid.Compartment) (*core.Product, error) {
	if name != "" {
		if p := b.Product(name); p != nil {
			return p, nil
		}
		return nil, measure.Troublef("Enter it as a product of its own, with the kind tint.", "There is no product %q in the book.", name)
	}
	var first *core.Product
	for k, h := range b.Products() {
		p := h.Now()
		if !tints(p) {
			continue
		}
		if c.Liquid.Holds.Of(int32(k)) > 0 {
			return p, nil
		}
		if first == nil {
			first = p
		}
	}
	if first == nil {
		return nil, measure.Troublef("Enter the tint as a product of its own, with the kind tint.", "No product of the book is a tint.")
	}
	return first, nil
}

// tints tells whether a product is a tint by its kind.
func tints(p *core.Product) bool {
	kind := strings.ToLower(p.Label.Kind)
	return strings.Contains(kind, "tint") || strings.Contains(kind, "dye") || strings.Contains(kind, "marker") || strings.Contains(kind, "colorant")
}

// tintDose is how much of a tint belongs into a gallon, with where that comes from.
func tintDose(b *core.Book, q Ask, c *fluid.Compartment, p *core.Product, has measure.Amount) (measure.Concentration, string, error) {
	if q.Dose.Known {
		if q.Dose.V.Kind != p.Label.Form {
			return 0, "", measure.Troublef("Give it as the product is measured.", "%s is %s, but the dose is %s.", p.ProductName, p.Label.Form, q.Dose.V.Text())
		}
		return measure.ConcentrationOf(q.Dose.V, measure.USGallon), "as typed", nil
	}
	mix := b.MixIn(string(c.Letter))
	if m := b.Mix(mix); m != nil {
		if r, in := m.Rate(p.ProductName); in {
			if a := b.Applicator(MadeFor(b, mix, c)); a != nil && a.Delivery.V > 0 {
				return measure.Concentration(r.V / a.Delivery.V), "as " + mix + " has it for " + a.Name, nil
			}
		}
	}
	if has.N > 0 && c.Liquid.Volume > 0 {
		return measure.ConcentrationOf(has, c.Liquid.Volume), "as it stands now", nil
	}
	return 0, "", measure.Troublef("Type the dose, such as 0.5 fl oz.", "How much of %s goes into a gallon of %c is not known.", p.ProductName, c.Letter)
}
