package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

const ruleStock = "stock"

// dryStockRule notes that more would come from the bag than the stock says there is. What went down is never refused.
func dryStockRule(s *situation) []Finding {
	if s.noWeight != nil || s.dry.FromBag <= 0 || s.dry.Fact.Product == "" {
		return nil
	}
	f, short := short(s.b.Stock(s.dry.Fact.Product), int64(s.dry.FromBag), "would come from the bag")
	if !short {
		return nil
	}
	f.Part, f.Weight = PartApplicator, Note
	return []Finding{f}
}

// short is what there is to say where more of a product is needed than is in stock. A stock that was never counted says nothing.
func short(st core.Stock, need int64, what string) (Finding, bool) {
	if !st.Have.Known || need <= st.Have.V.N {
		return Finding{}, false
	}
	amount := func(n int64) string { return measure.Amount{N: n, Kind: st.Form}.Text() }
	figure := func(n int64) core.Maybe[float64] {
		if st.Form == measure.Dry {
			return core.Known(measure.Mass(n).Pounds())
		}
		return core.Known(measure.Volume(n).Gallons())
	}
	f := Finding{
		Rule: ruleStock, Product: st.Product, Limit: figure(st.Have.V.N), Figured: figure(need), Unit: "gal",
		Ground: GroundPractice, Source: "stock as counted and bought, less what was used",
		Says: fmt.Sprintf("%s of %s %s, and the stock is %s: %s short.", amount(need), st.Product, what, st.Have.V.Text(), amount(need-max(st.Have.V.N, 0))),
		Do:   fmt.Sprintf("Put at least %s more on the truck, or count what is there.", amount(need-max(st.Have.V.N, 0))),
	}
	if st.Form == measure.Dry {
		f.Unit = "lb"
	}
	if st.Have.V.N < 0 {
		f.Says = fmt.Sprintf("The stock of %s is %s: more was put in than was there. %s %s.", st.Product, st.Have.V.Text(), amount(need), what)
		f.Do = "Count what is there, and enter what was bought."
	}
	return f, true
}

// stock asks where a load, with those that are planned for the other tanks, takes more of a product than is in stock.
func (l *Loading) stock(b *core.Book, f *core.LoadPlanned) {
	for _, p := range f.Parts {
		need := p.Amount.N
		for _, other := range b.LoadPlans() {
			for _, o := range other.Parts {
				if other.Into != f.Into && o.Product == p.Product {
					need += o.Amount.N
				}
			}
		}
		words := "are to be loaded"
		if need > p.Amount.N {
			words = "are to be loaded, with the other tanks"
		}
		if found, ok := short(b.Stock(p.Product), need, words); ok {
			found.Part, found.Weight = PartCompartment, Ask
			l.Findings = append(l.Findings, found)
		}
	}
}

// Stock lists what there is to say of the stock: products of which the planned loads take more than there is are asked about, those of which
// more was put in than was there are noted.
func Stock(b *core.Book) []Finding {
	var out []Finding
	for _, st := range b.Stocks() {
		if f, ok := short(st, st.Planned.N, "are to be loaded"); ok {
			f.Part, f.Weight = PartCompartment, Ask
			if st.Planned.N == 0 {
				f.Weight = Note
				f.Says = fmt.Sprintf("The stock of %s is %s: more was put in than was there.", st.Product, st.Have.V.Text())
			}
			out = append(out, f)
		}
	}
	return out
}
