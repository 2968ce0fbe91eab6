package label

import (
	_ "embed"
	"sort"
	"strings"

	"example.com/tintline/core/measure"
)

// OrderClass is a step of filling a tank: products whose formulations go in together.
type OrderClass struct {
	Class    string // "wp", as the operator writes it in an order of his own
	Letters  []string
	Words    string
	Disagree string // where the sheets do not agree on its place; empty: they do
	Source   string
}

//go:embed mixing_order.csv
var mixingOrderCSV string

var orderClasses = readOrderClasses(mixingOrderCSV)

func readOrderClasses(text string) []OrderClass {
	var out []OrderClass
	for _, r := range readCSV("mixing_order.csv", text) {
		out = append(out, OrderClass{r[0], strings.Fields(r[1]), r[2], r[7], r[8]})
	}
	return out
}

// The steps that are not told by letters alone.
const (
	OrderAdjuvant   = "adjuvant"
	OrderFertiliser = "fertiliser"
	OrderUnknown    = "unknown"
)

// OrderClasses lists the steps in the usual order.
func OrderClasses() []OrderClass { return append([]OrderClass(nil), orderClasses...) }

// FindOrderClass looks up a step by its own name or by the letters of a formulation, whatever their case.
func FindOrderClass(word string) (OrderClass, bool) {
	word = bareLetters(word)
	for _, c := range orderClasses {
		if c.Class == word {
			return c, true
		}
	}
	for _, c := range orderClasses {
		for _, l := range c.Letters {
			if l == word {
				return c, true
			}
		}
	}
	return OrderClass{}, false
}

// bareLetters takes a figure before the letters off ("75 WG"), as FindFormulation does.
func bareLetters(word string) string {
	return strings.TrimLeft(strings.ToLower(strings.TrimSpace(word)), "0123456789. ")
}

// OrderClassOf is the step of a product. A liquid that feeds is taken for liquid fertiliser where its letters say no more
// than that it is a solution. False where nothing says which it is.
func OrderClassOf(e Entry) (OrderClass, bool) {
	c, known := FindOrderClass(e.MixingClass)
	kind := strings.ToLower(strings.TrimSpace(e.Kind))
	if feeds := kind == ClassFertiliser || kind == "iron"; feeds && e.Form == measure.Liquid && (c.Class == "sl" || bareLetters(e.MixingClass) == "") {
		return FindOrderClass(OrderFertiliser)
	}
	if !known && bareLetters(e.MixingClass) == "" && kind == ClassAdjuvant {
		return FindOrderClass(OrderAdjuvant)
	}
	return c, known
}

// MixingOrder are the steps of filling, first to last; none of them: the usual order.
type MixingOrder []string

// ReadMixingOrder reads an order of the operator's own, such as "wp df sc sl ec adjuvant". Steps that he leaves out stay
// behind the one that they usually follow. It fails with a measure.Trouble.
func ReadMixingOrder(text string) (MixingOrder, error) {
	var own MixingOrder
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' || r == ';' }) {
		c, ok := FindOrderClass(word)
		if !ok {
			do := "Use " + classNames() + "."
			return nil, measure.Troublef(do, "%q is no step of filling a tank.", word)
		}
		if own.has(c.Class) {
			return nil, measure.Troublef("Name each step once.", "The order of adding has %s twice.", c.Class)
		}
		own = append(own, c.Class)
	}
	if len(own) == 0 {
		return nil, measure.Troublef("Write it such as wp df sc sl ec adjuvant.", "The order of adding names no step.")
	}
	return own.whole(), nil
}

func classNames() string {
	var out []string
	for _, c := range orderClasses {
		out = append(out, c.Class)
	}
	return strings.Join(out, ", ")
}

func (o MixingOrder) has(class string) bool { return o.at(class) >= 0 }

func (o MixingOrder) at(class string) int {
	for i, c := range o {
		if c == class {
			return i
		}
	}
	return -1
}

// whole puts in the steps that are not named.
func (o MixingOrder) whole() MixingOrder {
	out := append(MixingOrder(nil), o...)
	for i, c := range orderClasses {
		if out.has(c.Class) {
			continue
		}
		at := 0
		if i > 0 {
			at = out.at(orderClasses[i-1].Class) + 1
		}
		out = append(out[:at], append(MixingOrder{c.Class}, out[at:]...)...)
	}
	return out
}

// rank is the place of a step; an unknown one stands last before the adjuvants.
func (o MixingOrder) rank(class string) float64 {
	if class == OrderUnknown {
		return float64(o.at(OrderAdjuvant)) - unknownBefore
	}
	return float64(o.at(class))
}

// unknownBefore keeps what is unknown apart from what a label puts just before the adjuvants.
const unknownBefore = 0.25

// ToAdd is a product that is to go into a tank.
type ToAdd struct {
	Name  string
	Entry Entry
}

// Added is a product at its place in the order of adding.
type Added struct {
	Name     string
	Class    string // OrderUnknown where nothing says which it is
	Words    string // of the class: "wettable powder"
	ByLabel  string // the label's own words, where they set the place
	Disagree string
	Source   string
	Cautions []Caution
	rank     float64
}

// Adding is what goes in after what, and what is to be heeded before, between and after.
type Adding struct {
	Steps    []Added
	Cautions []Caution
	Partners int // products besides surfactants and conditioners
}

// OrderOf puts products into the order in which they go into the tank: by the label's own words where it has them, else by
// the class of the formulation. An empty order is the usual one. Products of one class stay as they are given.
func OrderOf(o MixingOrder, products ...ToAdd) Adding {
	o = o.whole()
	var out Adding
	for _, p := range products {
		a := Added{Name: p.Name, Class: OrderUnknown, Words: "formulation not known", Source: "common practice, no source"}
		if c, ok := OrderClassOf(p.Entry); ok {
			a.Class, a.Words, a.Disagree, a.Source = c.Class, c.Words, c.Disagree, c.Source
		}
		a.rank = o.rank(a.Class)
		if own, err := readOwnPlace(p.Entry.MixingOrder); err == nil && p.Entry.MixingOrder != "" {
			a.rank, a.ByLabel, a.Source = own.rank(o), p.Entry.MixingOrder, "the label of "+p.Name
		}
		out.Steps = append(out.Steps, a)
	}
	sort.SliceStable(out.Steps, func(i, j int) bool { return out.Steps[i].rank < out.Steps[j].rank })
	out.heed(products)
	return out
}
