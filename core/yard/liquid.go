package yard

import (
	"math"

	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/check"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// holds are the products of a liquid, in the order in which they were entered.
func holds(b *core.Book, l fluid.Liquid) []batch.Held {
	var out []batch.Held
	for _, p := range l.Holds {
		if p.N > 0 {
			prod := b.ProductByKey(p.Key)
			out = append(out, batch.Held{Product: prod.ProductName, Label: prod.Label, Amount: measure.Amount{N: p.N, Kind: prod.Label.Form}})
		}
	}
	return out
}

// apart puts the traces of a compartment aside: what is no part of its mix and only residue, as a push back leaves it. No answer lays them
// on purpose.
func apart(b *core.Book, c *fluid.Compartment, mix string, held []batch.Held) (own, traces []batch.Held) {
	meant := map[string]bool{}
	if m := b.Mix(mix); m != nil {
		for _, p := range m.Parts {
			meant[p.Product] = true
		}
	}
	for _, h := range held {
		if k, ok := b.ProductKey(h.Product); ok && !meant[h.Product] && check.IsTrace(b, c, k) {
			traces = append(traces, h)
		} else {
			own = append(own, h)
		}
	}
	return own, traces
}

// traces says what stays in it beside what the answer is about.
func (a *Answer) traces(list []batch.Held) {
	for _, h := range list {
		a.Says = append(a.Says, stays(h.Product, h.Amount))
	}
}

func stays(product string, amount measure.Amount) string {
	return product + " " + amount.Text() + " stays in it, which is no part of the mix"
}

// parts are the products of a mix with what their labels say.
func parts(b *core.Book, mix string) ([]batch.Part, error) {
	m := b.Mix(mix)
	if m == nil {
		return nil, measure.Troublef(mixesWords(b), "There is no mix %q in the book.", mix)
	}
	var out []batch.Part
	for _, p := range m.Parts {
		prod := b.Product(p.Product)
		if prod == nil {
			return nil, measure.Troublef("Enter the product first.", "The mix %s has %s, which is no product of the book.", mix, p.Product)
		}
		out = append(out, batch.Part{Product: p.Product, Label: prod.Label, Rate: p.Rate})
	}
	return out, nil
}

func mixesWords(b *core.Book) string {
	if len(b.Mixes()) == 0 {
		return "Enter a mix first."
	}
	words := "Name one of the mixes: "
	for i, m := range b.Mixes() {
		if i > 0 {
			words += ", "
		}
		words += m.MixName
	}
	return words + "."
}

// compartment finds one by its letter; 0 is the one that has least.
func compartment(b *core.Book, letter byte) (*fluid.Compartment, error) {
	if letter == 0 {
		letter = Least(b)
	}
	if c := b.Plumbing().Compartment(letter); c != nil {
		return c, nil
	}
	if b.Rig() == nil || letter == 0 {
		return nil, measure.Troublef("Enter the rig first.", "The book has no rig with compartments.")
	}
	words := ""
	for i := range b.Plumbing().Compartments {
		words += " " + string(b.Plumbing().Compartments[i].Letter)
	}
	return nil, measure.Troublef("The rig has"+words+".", "There is no compartment %q.", string(rune(letter)))
}

// subject is the compartment that a question is about, and the mix that it is to be.
func (q Ask) subject(b *core.Book) (*fluid.Compartment, string, error) {
	c, err := compartment(b, q.Into)
	if err != nil {
		return nil, "", err
	}
	mix, err := mixIn(b, q.Mix, c)
	return c, mix, err
}

// toAdd says what of products is to be added, and puts it into the plan of a load.
func (a *Answer) toAdd(plan *core.LoadPlanned, doses []batch.Dose) {
	for _, d := range doses {
		if d.Amount.N > 0 {
			a.Says = append(a.Says, "add "+d.Product+" "+d.Amount.Text())
			plan.Parts = append(plan.Parts, core.LoadPart{Product: d.Product, Amount: d.Amount})
		}
	}
}

// sprayer finds an applicator that sprays, by its name; empty is the one that a mix in a compartment is made up for.
func sprayer(b *core.Book, name, mix string, c *fluid.Compartment) (*core.Applicator, error) {
	if name == "" {
		name = MadeFor(b, mix, c)
	}
	a := b.Applicator(name)
	switch {
	case a == nil:
		return nil, measure.Troublef("Name one that the rig has.", "There is no applicator %q.", name)
	case a.Type == core.Spreader:
		return nil, measure.Troublef("Name an applicator that sprays.", "%s spreads dry product; no liquid is made up for it.", name)
	case a.Delivery.V <= 0:
		return nil, measure.Troublef("Enter its delivery rate with the rig, or log a catch test.", "%s has no delivery rate.", name)
	}
	return a, nil
}

// Least is the compartment that has least of what it holds when it is full, of those in which a mix stands; else the emptiest of all. 0
// where the rig has none.
func Least(b *core.Book) byte {
	var at byte
	share, named := math.Inf(1), false
	p := b.Plumbing()
	for i := range p.Compartments {
		c := &p.Compartments[i]
		mixed := b.Mix(b.MixIn(string(c.Letter))) != nil
		if c.Capacity <= 0 || (named && !mixed) {
			continue
		}
		if s := float64(c.Drawable()) / float64(c.Capacity); at == 0 || s < share || (mixed && !named) {
			at, share, named = c.Letter, s, mixed
		}
	}
	return at
}

// MadeFor is the applicator that a mix in a compartment is made up for: the one for which it would be nearest to what it holds. The first
// one where nothing of the mix is in it.
func MadeFor(b *core.Book, mix string, c *fluid.Compartment) string {
	first := check.FirstApplicator(b)
	m := b.Mix(mix)
	if m == nil || c == nil || c.Liquid.Volume <= 0 || b.Rig() == nil {
		return first
	}
	best, off := first, math.Inf(1)
	for _, a := range b.Rig().Applicators {
		if a.Type == core.Spreader || a.Delivery.V <= 0 {
			continue
		}
		if d := away(b, m, c, a.Delivery); d < off {
			best, off = a.Name, d
		}
	}
	return best
}

// away is how far what a compartment holds is from a mix for a delivery rate: the largest of its products, as a logarithm.
func away(b *core.Book, m *core.Mix, c *fluid.Compartment, delivery measure.Rate) float64 {
	worst := 0.0
	for _, p := range m.Parts {
		k, ok := b.ProductKey(p.Product)
		is := float64(c.Liquid.Strength(k))
		if !ok || is <= 0 || p.Rate.V <= 0 {
			return math.Inf(1)
		}
		worst = math.Max(worst, math.Abs(math.Log(is*delivery.V/p.Rate.V)))
	}
	return worst
}

// mixIn is the mix that is asked for, else the one that stands in a compartment.
func mixIn(b *core.Book, asked string, c *fluid.Compartment) (string, error) {
	if asked != "" {
		return asked, nil
	}
	if m := b.MixIn(string(c.Letter)); b.Mix(m) != nil {
		return m, nil
	}
	if c.Drawable() == 0 && len(b.Mixes()) > 0 {
		return likelyMix(b), nil
	}
	return "", measure.Troublef(mixesWords(b), "No mix of the book stands in %c, so it is not known what it is to become.", c.Letter)
}

// inOrder puts what is to be added into the order in which it goes in.
func inOrder(b *core.Book, doses []batch.Dose) []batch.Dose {
	var list []label.ToAdd
	for _, d := range doses {
		if p := b.Product(d.Product); p != nil {
			list = append(list, label.ToAdd{Name: d.Product, Entry: p.Label})
		}
	}
	var out []batch.Dose
	for _, step := range label.OrderOf(b.MixingOrder(), list...).Steps {
		for _, d := range doses {
			if d.Product == step.Name {
				out = append(out, d)
			}
		}
	}
	return out
}

// likelyMix is the first mix of the book that may go on the lawn that is next; the first one where none may, or no lawn is next.
func likelyMix(b *core.Book) string {
	if lawn := check.Subject(b); lawn != "" {
		for _, m := range b.Mixes() {
			r, err := check.MixOn(b, m.MixName, check.Intent{Lawn: lawn, With: check.FirstApplicator(b), At: b.LastAt()})
			if err == nil && r.Verdict < check.Stop {
				return m.MixName
			}
		}
	}
	return b.Mixes()[0].MixName
}

// gallons is a volume with its unit.
func gallons(v measure.Volume) string { return v.Text() + " gal" }

// perGallon is a strength: "1.15 fl oz a gal".
func perGallon(c measure.Concentration, k measure.Kind) string {
	return c.In(measure.USGallon, k).Text() + " a gal"
}

// feet is an area with its unit.
func feet(a measure.Area) string { return a.Text() + " sq ft" }

// doseFacts are amounts for a script.
func doseFacts(doses []batch.Dose) []map[string]any {
	out := []map[string]any{}
	for _, d := range doses {
		f := amountFacts(d.Amount)
		f["product"] = d.Product
		key := map[measure.Kind]string{measure.Liquid: "fl_oz_per_gal", measure.Dry: "oz_per_gal"}[d.Amount.Kind]
		f[key] = d.Strength.PerGallon(d.Amount.Kind)
		out = append(out, f)
	}
	return out
}

// amountFacts is an amount for a script, in the unit of its kind.
func amountFacts(a measure.Amount) map[string]any {
	if a.Kind == measure.Dry {
		return map[string]any{"amount_oz": measure.Mass(a.N).Ounces()}
	}
	return map[string]any{"amount_fl_oz": measure.Volume(a.N).FluidOunces()}
}
