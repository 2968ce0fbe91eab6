package setup

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/sheet"
)

const (
	keyBase   = "base"
	mostParts = 4 // products that one form adds to a mix
)

func partKey(n int) string { return fmt.Sprintf("product_%d", n) }

func partRateKey(n int) string { return fmt.Sprintf("rate_%d", n) }

// mixForm asks for a mix: products with their rates, and perhaps another mix that they are added to.
func mixForm(b *core.Book, base string) Form {
	f := Form{Name: Mix, Title: "Enter a mix", facts: mixFacts}
	bases := []Option{{"", "no other mix"}}
	for _, x := range b.Mixes() {
		bases = append(bases, Option{x.MixName, x.MixName})
	}
	fields := []Field{
		{
			Key: keyMix, Words: "name of the mix", need: always, Help: "What you call it.", Allowed: allowed(sheet.Mixes, "mix"),
			check: func(_ Answers, said string) error { return newName(sheet.Mixes, "mix", said, b.Mix(said) != nil) },
		}, {
			Key: keyBase, Words: "it is", Start: base, Options: bases, Help: "A mix may be another one with more in it.",
			Allowed: "a mix of the book",
		},
	}
	products := []Option{{"", "none"}}
	for _, h := range b.Products() {
		products = append(products, Option{h.Name, h.Name})
	}
	for n := 1; n <= mostParts; n++ {
		need := func(a Answers) bool { return a[partRateKey(n)] != "" || n == 1 && a[keyBase] == "" }
		words := "and the product"
		if n == 1 {
			words = "with the product"
		}
		fields = append(fields, Field{
			Key: partKey(n), Words: words, need: need, Options: products, Help: "What goes into it.", Allowed: "a product of the book",
		}, Field{
			Key: partRateKey(n), Words: "at", need: filled(partKey(n)), Allowed: "more than 0, with both units, such as 1.5 fl oz/1000 sq ft or 2 lb/acre",
			Help: "How much of it goes on an area, with both units: 1.5 fl oz/1000 sq ft, 2 lb/acre.",
			check: func(a Answers, said string) error {
				_, err := readTypedRate(said, formOf(b, a[partKey(n)]))
				return err
			},
		})
	}
	f.Pages = []Page{{Title: "what goes on 1,000 sq ft", Fields: fields}}
	return f
}

// formOf is how a product is measured out.
func formOf(b *core.Book, product string) measure.Kind {
	if p := b.Product(product); p != nil {
		return p.Label.Form
	}
	return measure.Liquid
}

func mixFacts(b *core.Book, _ core.Moment, a Answers) ([]core.Fact, error) {
	f := &core.Mix{MixName: a[keyMix], Base: a[keyBase]}
	for n := 1; n <= mostParts; n++ {
		p := a[partKey(n)]
		if p == "" {
			continue
		}
		rate, err := readTypedRate(a[partRateKey(n)], formOf(b, p))
		if err != nil {
			return nil, err
		}
		f.Parts = append(f.Parts, core.MixPart{Product: p, Rate: rate})
	}
	return []core.Fact{f}, nil
}
