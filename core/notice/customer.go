package notice

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/printed"
	"example.com/tintline/core/tally"
)

// Poison control in the United States, at all hours.
const (
	PoisonControl       = "1-800-222-1222"
	PoisonControlSource = "EPA, page on pesticide emergencies (archived copy of January 2017)"
)

const decides = "The product label, the law and local rules decide. The labels can be asked for."

// Customer is the notice of what was put down on one lawn in one day, of the rows of its record, one or more.
func Customer(b *core.Book, records []tally.Record) printed.Document {
	r := &records[0]
	d := printed.Document{Title: "Notice of treatment", OnePage: true, About: business(r.Business, r.BusinessAddress, r.BusinessPhone, r.BusinessLicence)}
	when := printed.Part{Pairs: []printed.Pair{{Name: "place", Says: place(r.Lawn, r.Site)}, {Name: "customer", Says: said(r.Customer)}, {Name: "date", Says: r.Date}}}
	from, to := r.Arrived, r.Completed
	for i := range records {
		from, to = min(from, records[i].Arrived), max(to, records[i].Completed)
	}
	when.Pairs = append(when.Pairs, printed.Pair{Name: "time", Says: from + " to " + to}, printed.Pair{Name: "applied by", Says: licensed(r.Operator, r.Licence)})
	if r.Supervisor != "" {
		when.Pairs = append(when.Pairs, printed.Pair{Name: "supervised by", Says: licensed(r.Supervisor, r.SupervisorLicence)})
	}
	d.Parts = append(d.Parts, when, putDown(records), keepOff(b, records), calls(r.Business, r.BusinessPhone))
	d.Foot = foot(b)
	return d
}

func business(name, address, phone, licence string) []string {
	var out []string
	for _, s := range []string{name, address, phone} {
		if s != "" {
			out = append(out, s)
		}
	}
	if licence != "" {
		out = append(out, "licence "+licence)
	}
	if len(out) == 0 {
		out = append(out, "The name and the phone of the business are not entered.")
	}
	return out
}

func place(lawn, address string) string {
	switch {
	case address == "":
		return lawn
	case strings.HasPrefix(address, lawn):
		return address
	}
	return lawn + ", " + address
}

func licensed(who, licence string) string {
	if licence == "" {
		return said(who)
	}
	return who + ", licence " + licence
}

func said(s string) string {
	if s == "" {
		return "not entered"
	}
	return s
}

func putDown(records []tally.Record) printed.Part {
	p := printed.Part{Title: "What was put down", Table: printed.Table{Columns: []printed.Column{
		{Title: "zone", Left: true},
		{Title: "product", Left: true},
		{Title: "kind", Left: true},
		{Title: "registration", Left: true},
		{Title: "active", Left: true},
		{Title: "for", Left: true},
		{Title: "amount"},
		{Title: "area", Unit: "sq ft"},
	}}}
	for i := range records {
		r := &records[i]
		product := r.Product
		if r.Trace == label.Yes {
			product += " (trace)"
		}
		p.Table.Rows = append(p.Table.Rows, []string{
			r.Zone, product, said(r.Kind), registration(r.Registration, r.Pesticide == label.Yes), said(r.Actives), r.Target, r.Amount.Text(), r.Area.Text(),
		})
	}
	return p
}

// registration is what stands for a number: one that a fertiliser does not have is none, one of a pesticide is not entered.
func registration(number string, pesticide bool) string {
	if number == "" && !pesticide {
		return "none"
	}
	return said(number)
}

// keepOff are the words of the label entries, and until when signs stay.
func keepOff(b *core.Book, records []tally.Record) printed.Part {
	p := printed.Part{Title: "Going back onto the lawn"}
	for i := range records {
		r := &records[i]
		if s := keepOffWords(r.Product, r.Reentry, r.Pesticide == label.Yes); s != "" {
			p.Lines = withText(p.Lines, s)
		}
	}
	if len(p.Lines) == 0 {
		p.Lines = []string{"Nothing is entered on going back onto the lawn; the label in hand decides."}
	}
	r := &records[0]
	for _, g := range b.SignsOf(r.Lawn, r.Date) {
		switch {
		case !g.Down.Zero():
		case g.Due.Zero():
			p.Lines = append(p.Lines, "A sign stands on the lawn. No time is set for taking it down; local rules decide.")
		default:
			p.Lines = append(p.Lines, fmt.Sprintf("A sign stands on the lawn and is to stay until %s, %s.", g.Due.Date(), g.Due.Clock()))
		}
	}
	if rule := SignRuleOf(stateOf(b)); rule != nil {
		p.Lines = append(p.Lines, fmt.Sprintf("Signs in %s: %s.", rule.State, strings.TrimSuffix(rule.Words, ".")))
	}
	return p
}

// keepOffWords are the label's words, or that they are not entered; empty for what is no pesticide and says nothing.
func keepOffWords(product, words string, pesticide bool) string {
	switch {
	case words != "":
		return product + ": " + strings.TrimSuffix(words, ".") + "."
	case pesticide:
		return product + ": the label's words are not entered here; the label in hand decides."
	}
	return ""
}

func calls(name, phone string) printed.Part {
	if name == "" {
		name = "the business"
	}
	return printed.Part{Title: "Who to call", Pairs: []printed.Pair{
		{Name: name, Says: said(phone)},
		{Name: "poison control, at all hours", Says: PoisonControl},
		{Name: "the maker", Says: "the number on the product label"},
	}}
}

func foot(b *core.Book) []string {
	out := []string{decides, "Number of poison control: " + PoisonControlSource + "."}
	if rule := RuleOf(stateOf(b), core.ToldCustomer); rule != nil {
		out = append(out, fmt.Sprintf("Rule of %s as it was read in a stored copy: %s.", rule.State, rule.Source))
	}
	return out
}

// Advance is the word ahead of a treatment on a date: when, where, with what, by whom. What is meant to go down follows from the plan of
// that date, else from the mix of each zone.
func Advance(b *core.Book, lawn *core.Lawn, date string) printed.Document {
	set := func(name string) string { s, _ := b.SettingText(name); return s }
	d := printed.Document{
		Title: "Advance notice of treatment",
		About: business(set(core.Business), set(core.BusinessAddress), set(core.BusinessPhone), set(core.BusinessLicence)),
	}
	from, to := Span(b, lawn)
	d.Parts = append(d.Parts, printed.Part{Pairs: []printed.Pair{
		{Name: "place", Says: place(lawn.LawnName, lawn.Address)},
		{Name: "customer", Says: said(lawn.Customer)},
		{Name: "date", Says: date},
		{Name: "earliest start", Says: notSet(from)},
		{Name: "latest finish", Says: notSet(to)},
		{Name: "applied by", Says: licensed(b.Day().Operator, set(core.Licence))},
	}})
	p := printed.Part{Title: "What is meant to be put down", Table: printed.Table{Columns: []printed.Column{
		{Title: "zone", Left: true},
		{Title: "product", Left: true},
		{Title: "kind", Left: true},
		{Title: "registration", Left: true},
		{Title: "active", Left: true},
	}}}
	off := printed.Part{Title: "Going back onto the lawn"}
	for _, z := range lawn.Zones {
		mix := b.Mix(mixOf(b, lawn.LawnName, &z, date))
		if mix == nil {
			p.Lines = append(p.Lines, z.Name+": the mix is not decided yet.")
			continue
		}
		for _, part := range mix.Parts {
			product := b.Product(part.Product)
			if product == nil {
				continue
			}
			e := &product.Label
			p.Table.Rows = append(p.Table.Rows, []string{z.Name, part.Product, said(e.Kind), registration(e.Registration, e.Pesticide()), said(e.Words())})
			if s := keepOffWords(part.Product, e.Reentry, e.Pesticide()); s != "" {
				off.Lines = withText(off.Lines, s)
			}
		}
	}
	if len(p.Table.Rows) == 0 {
		p.Table = printed.Table{}
	}
	d.Parts = append(d.Parts, p)
	if len(off.Lines) > 0 {
		d.Parts = append(d.Parts, off)
	}
	d.Parts = append(d.Parts, calls(set(core.Business), set(core.BusinessPhone)))
	d.Foot = []string{decides, "Number of poison control: " + PoisonControlSource + "."}
	if rule := RuleOf(stateOf(b), core.ToldNeighbour); rule != nil {
		d.Foot = append(d.Foot, fmt.Sprintf("Rule of %s as it was read in a stored copy: %s.", rule.State, rule.Source))
	}
	return d
}

func notSet(s string) string {
	if s == "" {
		return "not set; name one"
	}
	return s
}

// mixOf is the mix that the plan of a date has for a zone, else the zone's own.
func mixOf(b *core.Book, lawn string, z *core.Zone, date string) string {
	if p := b.Planned(); p != nil && p.Date == date {
		for _, v := range p.Visits {
			if v.Lawn == lawn && v.Zone == z.Name && v.Mix != "" {
				return v.Mix
			}
		}
	}
	return z.Mix
}

// Span are the times of day between which a lawn is treated, as far as they are set: of the lawn, else the start of the day.
func Span(b *core.Book, lawn *core.Lawn) (from, to string) {
	from = lawn.WindowFrom
	if from == "" {
		from, _ = b.SettingText(core.PlanStarts)
	}
	return from, lawn.WindowTo
}

// Of is the notice for a lawn and a date: of what was put down there if the record has rows, else of what is meant to be. The error is a
// Problem.
func Of(b *core.Book, lawn, date string, records []tally.Record) (printed.Document, error) {
	var mine []tally.Record
	for i := range records {
		if records[i].Lawn == lawn && records[i].Date == date {
			mine = append(mine, records[i])
		}
	}
	l := b.Lawn(lawn)
	switch {
	case len(mine) > 0:
		return Customer(b, mine), nil
	case l == nil:
		return printed.Document{}, &core.Problem{What: fmt.Sprintf("There is no lawn %q in the book.", lawn), Do: "Write its name as it stands in the book.", Err: core.ErrRefused}
	case date < b.Day().Date || date == b.Day().Date && !b.Day().Open:
		return printed.Document{}, &core.Problem{What: fmt.Sprintf("Nothing was put down at %s on %s.", lawn, date), Do: "Give a date on which it was treated, or one to come.", Err: core.ErrRefused}
	}
	return Advance(b, l, date), nil
}
