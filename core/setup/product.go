package setup

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/sheet"
)

// The keys of the product's fields.
const (
	keyProduct      = "product"
	keyUnit         = "unit"
	keyRate         = "rate"
	keyRateHigh     = "rate_high"
	keyWind         = "wind_max"
	keyActives      = "actives"
	keyRegistration = "registration"
	keyMix          = "mix"
	keyGrasses      = "grasses"
	keyMostYear     = "most_year"
	keyBetween      = "days_between"
)

const (
	notChecked = " Blank: not checked."
	orNone     = notChecked + " None: the label has none."
)

// productForm asks for a product and the mix that comes of it: the ten things that a check rests on first. The rest of
// the label is asked by labelForm. The first product of a book always makes a mix.
func productForm(b *core.Book) Form {
	first := len(b.Mixes()) == 0
	f := Form{Name: Product, Title: "Enter a product", facts: func(b *core.Book, _ core.Moment, a Answers) ([]core.Fact, error) {
		return productFacts(b, a, first)
	}}
	if first {
		f.Title = "Enter the first product"
	}
	grasses := grassesField()
	grasses.need = always
	grasses.fill = func(a Answers) Filled {
		f := prefilled(a[keyActives])
		f.Help += " The rest of the label is entered later, on the product's page."
		return f
	}
	f.Pages = []Page{
		{Title: "from its label", Fields: append(rateFields(b), labelFields(b, first)...)},
		{Title: "grasses", Fields: []Field{grasses}},
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
				if err != nil || a[keyRateHigh] == "" || sheet.IsNone(a[keyRateHigh]) {
					return err
				}
				if high, wrong := readRate(a, a[keyRateHigh]); wrong == nil && r.V > high.V {
					return &Wrong{What: fmt.Sprintf("%s is more than the label's highest rate, %s.", said, a[keyRateHigh]), Do: "Correct one of the two."}
				}
				return nil
			},
			Help: "How much of it you put on an area.", Allowed: "more than 0, in the unit chosen above",
		}, {
			Key: keyRateHigh, Words: "label's highest rate", check: limit(rate),
			Help: "In the same unit." + orNone, Allowed: "more than 0, in the unit chosen above, or none",
		},
	}
}

// limit takes none besides what a check takes.
func limit(check func(Answers, string) error) func(Answers, string) error {
	return func(a Answers, said string) error {
		if sheet.IsNone(said) {
			return nil
		}
		return check(a, said)
	}
}

func labelFields(b *core.Book, first bool) []Field {
	mixHelp := "The mix of this product alone, at the rate above. Blank: it is called like the product."
	if !first {
		mixHelp = "The mix of this product alone, at the rate above. Blank: no mix is made."
	}
	return []Field{
		{
			Key: keyActives, Words: "actives", check: cell(sheet.Products, "actives"),
			Help: "With their content, as on the label: mesotrione 4 lb/gal; iron 5%." + notChecked, Allowed: allowed(sheet.Products, "actives"),
		}, {
			Key: keyRegistration, Words: "registration number", check: cell(sheet.Products, "registration"),
			Help: "As on the label. Without it the record of a pesticide stays incomplete.", Allowed: allowed(sheet.Products, "registration"),
		}, {
			Key: keyMostYear, Words: "label's most a year", check: limit(func(a Answers, said string) error { _, err := readRate(a, said); return err }),
			Help: "In the same unit." + orNone, Allowed: "more than 0, in the unit chosen above, or none",
		}, {
			Key: keyBetween, Words: "days between", check: cell(sheet.Products, "days_between"),
			Help: "From one application to the next." + orNone, Allowed: allowed(sheet.Products, "days_between"),
		}, {
			Key: keyWind, Words: "label's wind limit", check: cell(sheet.Products, "wind_max_mph"),
			Help: "In mph." + orNone, Allowed: allowed(sheet.Products, "wind_max_mph"),
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
		"grasses": a[keyGrasses], "days_between": a[keyBetween], "wind_max_mph": a[keyWind],
		"rate_high": noneOf(a[keyRateHigh]), "most_year": noneOf(a[keyMostYear]),
	}, b)
	if err != nil {
		return nil, err
	}
	f := fact.(*core.Product)
	if high, err := maybeRate(a, keyRateHigh); err != nil {
		return nil, err
	} else if high.Known {
		f.Label.RateHigh, f.Label.HasRateHigh = high.V, true
	}
	if f.Label.MostYear, err = maybeRate(a, keyMostYear); err != nil {
		return nil, err
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

// noneOf keeps of an answer that the label has none of it.
func noneOf(said string) string {
	if sheet.IsNone(said) {
		return said
	}
	return ""
}

// maybeRate is a rate in the unit that was chosen; unknown where the answer is blank or none.
func maybeRate(a Answers, key string) (core.Maybe[measure.Rate], error) {
	if a[key] == "" || sheet.IsNone(a[key]) {
		return core.Maybe[measure.Rate]{}, nil
	}
	r, err := readRate(a, a[key])
	if err != nil {
		return core.Maybe[measure.Rate]{}, err
	}
	return core.Known(r), nil
}
