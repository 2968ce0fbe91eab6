package setup

import (
	"fmt"
	"slices"

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

func partTargetKey(n int) string { return fmt.Sprintf("target_%d", n) }

func targetField(n int, words, start string) Field {
	return Field{
		Key: partTargetKey(n), Words: words, Start: start, check: cell(sheet.Mixes, "target"),
		Help: "The pest that the product is for; the record names it. Blank: not said.", Allowed: allowed(sheet.Mixes, "target"),
	}
}

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
				rate, err := readTypedRate(said, formOf(b, a[partKey(n)]))
				if err != nil {
					return err
				}
				return core.CheckMixRate(a[keyMix], core.MixPart{Product: a[partKey(n)], Rate: rate}, b.Product(a[partKey(n)]))
			},
		}, targetField(n, "against", ""))
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
		f.Parts = append(f.Parts, core.MixPart{Product: p, Rate: rate, Target: a[partTargetKey(n)]})
	}
	return []core.Fact{f}, nil
}

// recipeForm asks for the rates of a mix and the pests that its products are for, as they stand in it.
func recipeForm(b *core.Book, mix string) Form {
	parts := b.Mix(mix).Parts
	starts := make([]string, len(parts))
	f := Form{Name: Recipe, Title: "The mix " + mix, facts: func(b *core.Book, _ core.Moment, a Answers) ([]core.Fact, error) {
		return recipeFacts(b, mix, starts, a)
	}}
	var fields []Field
	for i, p := range parts {
		starts[i] = sheet.RateText(p.Rate)
		rate := Field{
			Key: partRateKey(i), Words: fitWords(p.Product), Start: starts[i], need: always, Help: "How much " + p.Product + " goes on an area, with both units.",
			Allowed: "more than 0, with both units, such as 1.5 fl oz/1000 sq ft or 2 lb/acre",
			check: func(_ Answers, said string) error {
				rate, err := readTypedRate(said, p.Rate.Kind)
				if err != nil || said == starts[i] {
					return err // what stands there may be older than its label
				}
				return core.CheckMixRate(mix, core.MixPart{Product: p.Product, Rate: rate}, b.Product(p.Product))
			},
		}
		fields = append(fields, rate, targetField(i, "against", p.Target))
	}
	f.Pages = []Page{{Title: "rates and targets", Fields: fields}}
	return f
}

// longestWords is how many letters stand before an answer.
const longestWords = 22

func fitWords(s string) string {
	if r := []rune(s); len(r) > longestWords {
		return string(r[:longestWords])
	}
	return s
}

func recipeFacts(b *core.Book, mix string, starts []string, a Answers) ([]core.Fact, error) {
	old := b.Mix(mix)
	if old == nil || len(old.Parts) != len(starts) {
		return nil, nil
	}
	f := *old
	f.Parts = slices.Clone(old.Parts)
	changed := false
	for i := range f.Parts {
		p := &f.Parts[i]
		if said := a[partTargetKey(i)]; said != p.Target {
			p.Target, changed = said, true
		}
		if said := a[partRateKey(i)]; said != starts[i] {
			rate, err := readTypedRate(said, p.Rate.Kind)
			if err != nil {
				return nil, err
			}
			p.Rate, changed = rate, true
		}
	}
	if !changed {
		return nil, nil
	}
	return []core.Fact{&f}, nil
}
