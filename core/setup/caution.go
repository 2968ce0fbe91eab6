package setup

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/sheet"
)

// Caution is the form of the operator's own stricter note: about a place that PlaceOf names, for a new one, or with
// CautionAt about one in force.
const Caution = "caution"

const (
	keyOf     = "of"
	keyWhere  = "where"
	keyWeight = "weight"
	keyWhy    = "why"
)

// The places of an own note.
const (
	everyLawn = "every"
	thisLawn  = "lawn"
	thisZone  = "zone"
)

// CautionAt names the own note at a place in the book's list.
func CautionAt(i int) string { return fmt.Sprint("#", i) }

func cautionForm(b *core.Book, about string) (Form, bool) {
	for i, c := range b.Cautions() {
		if about == CautionAt(i) {
			return changeCaution(c), true
		}
	}
	lawn, at := place(b, about)
	if about != "" && lawn == nil {
		return Form{}, false
	}
	scope := core.Cautioned{}
	var where []Option
	if lawn != nil {
		scope.Lawn = lawn.LawnName
		if at >= 0 {
			scope.Zone = lawn.Zones[at].Name
			where = append(where, Option{thisZone, scope.Zone + " of " + scope.Lawn})
		}
		where = append(where, Option{thisLawn, "all of " + scope.Lawn})
	}
	where = append(where, Option{everyLawn, "every lawn"})
	fields := []Field{
		{
			Key: keyOf, Words: "product or active", Help: "Of what you think twice. Blank: of anything.", Allowed: "a product of the book, or an active",
			check: func(_ Answers, said string) error { _, _, err := readOf(b, said); return err },
		},
		{Key: keyWhere, Words: "where", Options: where, Start: where[0].Value, need: always, Help: "On what it is.", Allowed: "one of the list"},
		{Key: keyGrass, Words: "on which grass", Options: heldGrasses(b), Help: "On one grass, or on any.", Allowed: "one of the list"},
	}
	return Form{
		Name: Caution, Title: "Own note", Pages: []Page{{Title: "stricter than label and reference", Fields: append(fields, sayFields(core.Cautioned{Weight: "stop"}, false)...)}},
		facts: func(b *core.Book, _ core.Moment, a Answers) ([]core.Fact, error) {
			f := scope
			if a[keyWhere] != thisZone {
				f.Zone = ""
			}
			if a[keyWhere] == everyLawn {
				f.Lawn = ""
			}
			f.Grass, f.Weight, f.Says = a[keyGrass], a[keyWeight], a[keyWhy]
			var err error
			f.Product, f.Active, err = readOf(b, a[keyOf])
			return []core.Fact{&f}, err
		},
	}, true
}

// changeCaution changes an own note or takes it back.
func changeCaution(c core.Cautioned) Form {
	return Form{
		Name: Caution, Title: "Own note", Pages: []Page{{Title: CautionScope(c), Fields: sayFields(c, true)}},
		facts: func(_ *core.Book, _ core.Moment, a Answers) ([]core.Fact, error) {
			f := c
			f.Weight, f.Says = a[keyWeight], a[keyWhy]
			if f == c {
				return nil, nil
			}
			return []core.Fact{&f}, nil
		},
	}
}

func sayFields(c core.Cautioned, back bool) []Field {
	weights := []Option{{"stop", "stop"}, {"ask", "ask"}, {"note", "note"}}
	if back {
		weights = append(weights, Option{core.NoCaution, "take it back"})
	}
	return []Field{
		{Key: keyWeight, Words: "it is a", Options: weights, Start: c.Weight, need: always, Help: "How heavy it is. It adds to label and reference and clears nothing.", Allowed: "one of the list"},
		{
			Key: keyWhy, Words: "because", Start: c.Says, Help: "In a few words.", Allowed: allowed(sheet.Lawns, "notes"), check: cell(sheet.Lawns, "notes"),
			need: func(a Answers) bool { return a[keyWeight] != core.NoCaution },
		},
	}
}

// heldGrasses are the grasses of the lawns in the book.
func heldGrasses(b *core.Book) []Option {
	out := []Option{{"", "any grass"}}
	seen := map[string]bool{}
	for _, l := range b.Lawns() {
		for _, z := range l.Zones {
			if !seen[z.Grass] {
				seen[z.Grass] = true
				out = append(out, Option{z.Grass, label.GrassWords(z.Grass)})
			}
		}
	}
	return out
}

// readOf finds the product or the active that is typed.
func readOf(b *core.Book, said string) (product, active string, err error) {
	if said == "" {
		return "", "", nil
	}
	var known []string
	for k := range b.Products() {
		p := b.ProductByKey(int32(k))
		if strings.EqualFold(p.ProductName, said) {
			return p.ProductName, "", nil
		}
		known = append(known, p.ProductName)
		for _, a := range p.Label.Actives {
			if strings.EqualFold(a.Name, said) {
				active = a.Name
			}
		}
	}
	if a, ok := label.ReadActive(said); ok {
		return "", a, nil
	}
	if active != "" {
		return "", active, nil
	}
	near := label.NearestActives(said)
	if p := label.Nearest(said, known); p != "" {
		near = append([]string{p}, near...)
	}
	w := &Wrong{Field: keyOf, What: fmt.Sprintf("%q is no product of the book and no known active.", said), Do: "Type a product or an active, or nothing."}
	if len(near) > 0 {
		w.Do = "Nearest known names: " + strings.Join(near, ", ") + "."
	}
	return "", "", w
}

// CautionScope says what an own note is about: "mesotrione on zoysiagrass, front of 4 Elm".
func CautionScope(c core.Cautioned) string {
	words := c.Product + c.Active
	if words == "" {
		words = "anything"
	}
	if c.Grass != "" {
		words += " on " + label.GrassWords(c.Grass)
	}
	switch {
	case c.Zone != "":
		words += ", " + c.Zone + " of " + c.Lawn
	case c.Lawn != "":
		words += ", " + c.Lawn
	}
	return words
}
