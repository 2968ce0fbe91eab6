package core

import (
	"strings"

	"example.com/tintline/core/measure"
)

func (s *state) admitMix(f *Mix) error {
	if err := name("mix", f.MixName); err != nil {
		return err
	}
	if err := s.admitBase(f); err != nil {
		return err
	}
	if f.For != "" && !containsText(MixVisits(), f.For) {
		return refuse("Write one of "+strings.Join(MixVisits(), ", ")+", or leave it out.", "The mix %s is for %q.", f.MixName, f.For)
	}
	if f.For == OnceAYear && f.Base == "" {
		return refuse("Name the mix that it is made from, or leave the visits out.", "What goes on once a year in %s cannot be told: it has no base.", f.MixName)
	}
	if len(f.Parts) == 0 {
		return refuse("Name at least one product with its rate.", "The mix %s holds no product.", f.MixName)
	}
	var names []string
	for _, p := range f.Parts {
		names = append(names, p.Product)
		prod := s.Product(p.Product)
		if prod == nil {
			return s.noProduct(p.Product)
		}
		if err := rightRate(p.Product, "rate in mix "+f.MixName, p.Rate, prod.Label.Form); err != nil {
			return err
		}
		if err := CheckMixRate(f.MixName, p, prod); err != nil {
			return err
		}
	}
	return unique("product", names)
}

// sameRate is how far a rate may be above another one for the two to be the same as printed in other units, 16 oz per
// acre and 0.367 oz per 1,000 sq ft. common practice, no source.
const sameRate = 0.005

func above(r, most measure.Rate) bool { return r.V > float64(most.V*(1+sameRate)) }

// CheckMixRate refuses a rate of a product in a mix above what its label entry allows on any of its grasses; for whoever
// reads what is typed. A product of nil has no label.
func CheckMixRate(mix string, p MixPart, prod *Product) error {
	if prod == nil {
		return nil
	}
	most := prod.Label.MostAnywhere()
	if !most.Known || most.V.Kind != p.Rate.Kind || !above(p.Rate, most.V) {
		return nil
	}
	rate, limit := p.Rate.Text(), most.V.Text()
	if n, unit, _ := strings.Cut(rate, " "); strings.HasSuffix(limit, " "+unit) {
		rate = n // both figures fit on a line of the screen
	}
	return refuse("Lower the rate, or correct the label entry if it is wrong.", "%s: %s is above the label's most, %s (mix %s).", p.Product, rate, limit, mix)
}

func (s *state) noProduct(n string) error {
	var known []string
	for i, h := range s.products {
		if i == 8 {
			known = append(known, "...")
			break
		}
		known = append(known, h.Name)
	}
	hint := "Enter its label first."
	if len(known) > 0 {
		hint = "Enter its label first, or use one of " + strings.Join(known, ", ") + "."
	}
	return refuse(hint, "There is no product %q in the book.", n)
}
