package yard

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/measure"
)

// Jug works out how a package of a product is split: into q.Loads equal loads, or into loads of q.Each; without either into two. Without a
// name it is the first product of the mix in q.Into. What a load covers goes by the rate of that mix, else by the label's lowest.
func Jug(b *core.Book, q Ask) (Answer, error) {
	p, mix, err := jugOf(b, q)
	if err != nil {
		return Answer{}, err
	}
	ask := batch.JugAsk{Product: p.ProductName, Form: p.Label.Form, Package: p.Label.Package, Loads: q.Loads, Each: q.Each}
	if ask.Package.N == 0 { // not entered
		ask.Package.Kind = p.Label.Form
	}
	if q.Pack.Known {
		ask.Package = q.Pack.V
	}
	if ask.Loads == 0 && !ask.Each.Known {
		ask.Loads = 2
	}
	rateOf := ""
	switch r, in := mix.Rate(p.ProductName); {
	case in:
		ask.Rate, rateOf = measure.Known(r), "as in "+mix.MixName
	case p.Label.HasRateLow:
		ask.Rate, rateOf = measure.Known(p.Label.RateLow), "the label's lowest"
	}
	got, err := ask.Work()
	if err != nil {
		return Answer{}, err
	}
	out := Answer{Kind: "jug", Possible: true, Steps: got.Steps, About: ask.Package.Text() + " of " + p.ProductName + " into " + fmt.Sprint(len(got.Loads)) + " loads"}
	first := got.Loads[0]
	words := fmt.Sprintf("%d loads of %s", len(got.Loads), first.Amount.Text())
	if first.Area.Known {
		words += ", each for " + feet(first.Area.V) + " at " + ask.Rate.V.Text() + ", " + rateOf
	}
	out.Says = append(out.Says, words, got.Left.Text()+" left in the package")
	loads := []map[string]any{}
	for _, l := range got.Loads {
		f := amountFacts(l.Amount)
		f["area_sqft"] = nil
		if l.Area.Known {
			f["area_sqft"] = l.Area.V.SquareFeet()
		}
		loads = append(loads, f)
	}
	out.Facts = map[string]any{"product": p.ProductName, "package": amountFacts(ask.Package), "loads": loads, "left": amountFacts(got.Left)}
	return out, nil
}

// jugOf is the product that is asked about, and the mix by which it is laid; an empty mix where none has it.
func jugOf(b *core.Book, q Ask) (*core.Product, *core.Mix, error) {
	mix := &core.Mix{}
	if c, err := compartment(b, q.Into); err == nil {
		if m := b.Mix(b.MixIn(string(c.Letter))); m != nil {
			mix = m
		}
	}
	name := q.Name
	if name == "" && len(mix.Parts) > 0 {
		name = mix.Parts[0].Product
	}
	if name == "" && len(b.Products()) > 0 {
		name = b.Products()[0].Name
	}
	p := b.Product(name)
	if p == nil {
		return nil, nil, measure.Troublef("Name a product of the book.", "There is no product %q in the book.", name)
	}
	return p, mix, nil
}
