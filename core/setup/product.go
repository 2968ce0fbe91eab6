package setup

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/sheet"
)

// The keys of the product's fields.
const (
	keyProduct      = "product"
	keyUnit         = "unit"
	keyRate         = "rate"
	keyRateHigh     = "rate_high"
	keyRateLow      = "rate_low"
	keyWind         = "wind_max"
	keyActives      = "actives"
	keyRegistration = "registration"
	keyMix          = "mix"
	keyGrasses      = "grasses"
)

const notChecked = " Blank: not checked."

// productForm asks for a product and the mix that comes of it. The first product of a book always makes one.
func productForm(b *core.Book) Form {
	first := len(b.Mixes()) == 0
	f := Form{Name: Product, Title: "Enter a product", facts: func(b *core.Book, _ core.Moment, a Answers) ([]core.Fact, error) {
		return productFacts(b, a, first)
	}}
	if first {
		f.Title = "Enter the first product"
	}
	f.Pages = []Page{
		{Title: "from its label", Fields: append(rateFields(b), labelFields(b, first)...)},
		{Title: "grasses", Fields: []Field{{
			Key: keyGrasses, Words: "the label lists", Many: true, Long: true, need: always,
			Help:    "Tick the grasses that the label lists, all turf only where it says so. Any other grass will be a stop.",
			Allowed: "at least one", Options: grassOptions(Option{label.AllTurf, label.GrassWords(label.AllTurf)}),
		}}},
	}
	return f
}

func rateFields(b *core.Book) []Field {
	rate := func(a Answers, said string) error { _, err := readRate(a, said); return err }
	return []Field{
		{
			Key: keyProduct, Words: "product", need: always, Help: "What you call it. Its versions are kept under this name.", Allowed: allowed(sheet.Products, "name"),
			check: func(_ Answers, said string) error {
				return newName(sheet.Products, "product", said, b.Product(said) != nil)
			},
		}, {
			Key: keyUnit, Words: "measured out as", need: always, Options: rateOptions(),
			Help:    "How the label gives its rates.",
			Allowed: "the unit that the label uses",
		}, {
			Key: keyRate, Words: "rate in the mix", need: always, check: func(a Answers, said string) error {
				r, err := readRate(a, said)
				if err != nil || a[keyRateHigh] == "" {
					return err
				}
				if high, wrong := readRate(a, a[keyRateHigh]); wrong == nil && r.V > high.V {
					return &Wrong{What: fmt.Sprintf("%s is more than the label's highest rate, %s.", said, a[keyRateHigh]), Do: "Correct one of the two."}
				}
				return nil
			},
			Help: "How much of it you put on an area.", Allowed: "more than 0, in the unit chosen above",
		}, {
			Key: keyRateHigh, Words: "label's highest rate", check: rate,
			Help: "In the same unit." + notChecked, Allowed: "more than 0, in the unit chosen above",
		}, {
			Key: keyRateLow, Words: "label's lowest rate", check: func(a Answers, said string) error {
				low, err := readRate(a, said)
				if err != nil || a[keyRateHigh] == "" {
					return err
				}
				if high, wrong := readRate(a, a[keyRateHigh]); wrong == nil && low.V > high.V {
					return &Wrong{What: fmt.Sprintf("%s is more than the highest rate, %s.", said, a[keyRateHigh]), Do: "Correct one of the two."}
				}
				return nil
			},
			Help: "In the same unit." + notChecked, Allowed: "more than 0, in the unit chosen above",
		},
	}
}

func labelFields(b *core.Book, first bool) []Field {
	mixHelp := "The mix of this product alone, at the rate above. Blank: it is called like the product."
	if !first {
		mixHelp = "The mix of this product alone, at the rate above. Blank: no mix is made."
	}
	return []Field{
		{
			Key: keyWind, Words: "label's wind limit", check: cell(sheet.Products, "wind_max_mph"),
			Help: "In mph." + notChecked, Allowed: allowed(sheet.Products, "wind_max_mph"),
		}, {
			Key: keyActives, Words: "actives", check: cell(sheet.Products, "actives"),
			Help: "As on the label: mesotrione 4 lb/gal; iron 5%.", Allowed: allowed(sheet.Products, "actives"),
		}, {
			Key: keyRegistration, Words: "registration number", check: cell(sheet.Products, "registration"),
			Help: "As on the label.", Allowed: allowed(sheet.Products, "registration"),
		}, {
			Key: keyMix, Words: "name of the mix", Help: mixHelp, Allowed: allowed(sheet.Mixes, "mix"),
			check: func(_ Answers, said string) error { return newName(sheet.Mixes, "mix", said, b.Mix(said) != nil) },
		},
	}
}

// newName refuses a name that cannot be one, and one that the book has already.
func newName(kind, what, said string, there bool) error {
	column := map[string]string{sheet.Products: "name", sheet.Mixes: "mix", sheet.Lawns: "lawn"}[kind]
	if err := sheet.Check(kind, column, said); err != nil {
		return err
	}
	if there {
		return &Wrong{What: fmt.Sprintf("The %s %q is in the book already.", what, said), Do: "Type another name, or change it on its own page."}
	}
	return nil
}

func productFacts(b *core.Book, a Answers, first bool) ([]core.Fact, error) {
	u, _ := unitOf(a[keyUnit])
	fact, err := sheet.Row(sheet.Products, map[string]string{
		"name": a[keyProduct], "form": u.kind.String(), "actives": a[keyActives], "registration": a[keyRegistration],
		"grasses": a[keyGrasses], "wind_max_mph": a[keyWind],
	}, b)
	if err != nil {
		return nil, err
	}
	f := fact.(*core.Product)
	for _, r := range []struct {
		said string
		rate *measure.Rate
		has  *bool
	}{{a[keyRateLow], &f.Label.RateLow, &f.Label.HasRateLow}, {a[keyRateHigh], &f.Label.RateHigh, &f.Label.HasRateHigh}} {
		if r.said == "" {
			continue
		}
		if *r.rate, err = readRate(a, r.said); err != nil {
			return nil, err
		}
		*r.has = true
	}
	facts := []core.Fact{f}
	name := a[keyMix]
	if name == "" && first {
		name = a[keyProduct]
	}
	if name == "" {
		return facts, nil
	}
	rate, err := readRate(a, a[keyRate])
	return append(facts, &core.Mix{MixName: name, Parts: []core.MixPart{{Product: f.ProductName, Rate: rate}}}), err
}
