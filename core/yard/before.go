package yard

import (
	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// beforeLoad adds what check says of a load before it goes in: what is not to be mixed, what never met, formulations, standing. Of a blend,
// which moves what was mixed before, only the first two are asked.
func (a *Answer) beforeLoad(b *core.Book, at core.Moment, into byte, v measure.Volume, products []batch.Dose, all bool) {
	f := &core.LoadPlanned{Into: string(into), Volume: v}
	for _, d := range products {
		if d.Amount.N > 0 {
			f.Parts = append(f.Parts, core.LoadPart{Product: d.Product, Amount: d.Amount})
		}
	}
	for _, x := range check.BeforeLoad(b, at, f).Findings {
		if all || x.Rule == "pair" {
			a.note(Finding{x.Weight, x.Says, x.Do, x.Source})
		}
	}
}
