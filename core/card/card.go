// Package card says what is aboard now, for those who come when something went wrong: what stands in each tank and in the hose, its
// actives, registration numbers, signal words and amounts, what to do first, and whom to call.
package card

import (
	_ "embed"
	"encoding/csv"
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/printed"
)

//go:embed numbers.csv
var numbersText string

// Number is a public number, what it is for and where it was read. Check each before it is needed.
type Number struct {
	Name   string `json:"name"`
	Number string `json:"number"`
	For    string `json:"for"`
	Source string `json:"source"`
}

// Place is a tank, or the hose, and what stands in it.
type Place struct {
	Name     string    `json:"name"`
	Gallons  float64   `json:"gal"`
	Holds    string    `json:"holds"`
	Products []Product `json:"products"`
}

// Product is how much of a product is in a place.
type Product struct {
	Product string  `json:"product"`
	Amount  int64   `json:"amount"`
	Unit    string  `json:"unit"`
	Says    string  `json:"says"`
	PerGal  *string `json:"per_gal"`
}

// Label is what the label entry says of a product that is aboard.
type Label struct {
	Product      string `json:"product"`
	Actives      string `json:"actives"`
	Registration string `json:"registration"`
	Signal       string `json:"signal"`
	FirstAid     string `json:"first_aid"`
	Phone        string `json:"emergency_phone"`
}

// Card is all of it.
type Card struct {
	Truck    string   `json:"truck"`
	Operator string   `json:"operator"`
	At       string   `json:"at"`
	Places   []Place  `json:"places"`
	Labels   []Label  `json:"labels"`
	Numbers  []Number `json:"numbers"`
	Ask      []string `json:"what_they_ask"`
}

// Numbers are those to call: the operator's own first.
func Numbers(b *core.Book) []Number {
	var out []Number
	for _, own := range [][2]string{{core.SpillLine, "spill line of the state"}, {core.AgricultureLine, "state agriculture department"}, {core.BusinessPhone, "the business"}} {
		if number, set := b.SettingText(own[0]); set {
			out = append(out, Number{Name: own[1], Number: number, Source: "set by the operator"})
		}
	}
	rows, err := csv.NewReader(strings.NewReader(numbersText)).ReadAll()
	if err != nil {
		panic("core/card/numbers.csv: " + err.Error()) // embedded, and read by every test
	}
	var public []Number
	for _, r := range rows[1:] {
		public = append(public, Number{r[0], r[1], r[2], r[3]})
	}
	return append(public[:2:2], append(out, public[2:]...)...)
}

// Asked is what those who are called will ask.
//
// Common practice, no source.
var Asked = []string{"the product and its registration number", "the active ingredients", "how much", "who was exposed, and how", "where you are"}

// Of gathers the card as of a moment.
func Of(b *core.Book, at core.Moment) Card {
	c := Card{Operator: b.Day().Operator, At: at.String(), Places: []Place{}, Labels: []Label{}, Numbers: Numbers(b), Ask: Asked}
	if r := b.Rig(); r != nil {
		c.Truck = r.RigName
	}
	p := b.Plumbing()
	for i := range p.Compartments {
		t := &p.Compartments[i]
		c.add(b, "compartment "+string(t.Letter), b.MixIn(string(t.Letter)), t.Liquid)
	}
	for i := range p.Tanks {
		c.add(b, "tank of "+p.Tanks[i].Name, b.MixIn(p.Tanks[i].Name), p.Tanks[i].Liquid)
	}
	for i := range p.Hoses {
		var in fluid.Liquid
		for _, charge := range p.Hoses[i].Charge {
			in = in.Plus(charge.Liquid)
		}
		c.add(b, "hose "+p.Hoses[i].Name, "", in)
	}
	c.add(b, "pump, strainer and manifold", "", p.Cell.Liquid)
	var back fluid.Liquid
	back = back.Plus(p.Return.Liquid)
	for _, l := range p.Return.Charge {
		back = back.Plus(l)
	}
	c.add(b, "return line", "", back)
	for i := range p.Hoppers {
		if h := &p.Hoppers[i]; h.Mass() > 0 {
			c.add(b, "hopper of "+h.Name, b.MixInHopper(h.Name), fluid.Liquid{Holds: h.Holds})
		}
	}
	return c
}

func (c *Card) add(b *core.Book, name, mix string, l fluid.Liquid) {
	if l.Volume <= 0 && len(l.Holds) == 0 {
		return
	}
	at := Place{Name: name, Gallons: l.Volume.Gallons(), Holds: mix, Products: []Product{}}
	if mix == "" && len(l.Holds) == 0 {
		at.Holds = "water"
	}
	for _, h := range l.Holds {
		p := b.ProductByKey(h.Key)
		a := measure.Amount{N: h.N, Kind: p.Label.Form}
		one := Product{Product: p.ProductName, Amount: a.N, Unit: "nl", Says: a.Text()}
		if a.Kind == measure.Dry {
			one.Unit = "ng"
		}
		if l.Volume > 0 {
			per := measure.Amount{N: measure.MulDivRound(a.N, int64(measure.USGallon), int64(l.Volume)), Kind: a.Kind}.Text()
			one.PerGal = &per
		}
		at.Products = append(at.Products, one)
		c.label(p)
	}
	c.Places = append(c.Places, at)
}

// label adds what the label entry in force says.
func (c *Card) label(p *core.Product) {
	if slices.ContainsFunc(c.Labels, func(l Label) bool { return l.Product == p.ProductName }) {
		return
	}
	e := &p.Label
	c.Labels = append(c.Labels, Label{p.ProductName, e.Words(), e.Registration, e.Signal, e.FirstAid, e.Emergency})
}

// NotEntered stands where the label entry says nothing.
const NotEntered = "not entered: read the label"

func or(s, other string) string {
	if s == "" {
		return other
	}
	return s
}

// Caution stands at the end of the card.
const Caution = "The label and the data sheet of each product go before this card. The amounts are as booked. Check each number before it is needed."

// Printed is the card as it is handed out.
func (c Card) Printed() printed.Document {
	d := printed.Document{Title: "What is aboard", OnePage: true, About: []string{"as of " + strings.Replace(c.At, "T", " ", 1)}, Foot: []string{Caution}}
	if c.Truck != "" {
		d.About = append(d.About, "truck: "+c.Truck)
	}
	if c.Operator != "" {
		d.About = append(d.About, "operator: "+c.Operator)
	}
	call := printed.Part{Title: "Call", Table: printed.Table{Columns: []printed.Column{{Title: "who", Left: true}, {Title: "number", Left: true}, {Title: "for", Left: true}, {Title: "source", Left: true}}}}
	for _, n := range c.Numbers {
		call.Table.Rows = append(call.Table.Rows, []string{n.Name, n.Number, n.For, n.Source})
	}
	call.Lines = []string{"They will ask: " + strings.Join(c.Ask, "; ") + "."}
	labels := printed.Part{Title: "What it is", Table: printed.Table{Columns: []printed.Column{
		{Title: "product", Left: true}, {Title: "active ingredients", Left: true}, {Title: "registration", Left: true}, {Title: "signal word", Left: true}, {Title: "first aid, as on the label", Left: true}, {Title: "label's number", Left: true},
	}}}
	for _, l := range c.Labels {
		labels.Table.Rows = append(labels.Table.Rows, []string{l.Product, or(l.Actives, NotEntered), or(l.Registration, "none entered"), strings.ToUpper(or(l.Signal, "none entered")), or(l.FirstAid, NotEntered), l.Phone})
	}
	where := printed.Part{Title: "Where it is", Table: printed.Table{Columns: []printed.Column{{Title: "place", Left: true}, {Title: "liquid", Unit: "gal"}, {Title: "holds", Left: true}, {Title: "product", Left: true}, {Title: "amount"}, {Title: "in a gallon"}}}}
	for _, p := range c.Places {
		gal := ""
		if p.Gallons > 0 {
			gal = measure.Gallons(p.Gallons).Text()
		}
		first := []string{p.Name, gal, p.Holds}
		if len(p.Products) == 0 {
			where.Table.Rows = append(where.Table.Rows, append(first, "", "", ""))
		}
		for _, one := range p.Products {
			per := ""
			if one.PerGal != nil {
				per = *one.PerGal
			}
			where.Table.Rows = append(where.Table.Rows, append(slices.Clone(first), one.Product, one.Says, per))
			first = []string{"", "", ""}
		}
	}
	d.Parts = []printed.Part{call, labels, where}
	if len(c.Places) == 0 {
		d.Parts = []printed.Part{call, {Lines: []string{"By the book all tanks and lines are empty."}}}
	}
	return d
}
