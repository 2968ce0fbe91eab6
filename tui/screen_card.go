package tui

import (
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/card"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// cardPage shows what is aboard, for those who come when something went wrong: whom to call first.
func cardPage() *pageSpec {
	return &pageSpec{
		page: pageCard, under: pageEvening, key: "x", title: "What is aboard", words: "for an emergency: products, amounts, whom to call",
		show: (*Model).showCard,
	}
}

func (m *Model) showCard() sheet {
	c := card.Of(m.book, core.At(m.at))
	out := sheet{}
	for _, n := range c.Numbers {
		says := n.Number
		if n.For != "" {
			says += ": " + n.For
		}
		out.rows = append(out.rows, m.fact(theme.Strong, n.Name, says)...)
	}
	out.rows = append(out.rows, m.wrapped(theme.Dim, "They will ask: "+strings.Join(c.Ask, "; ")+".")...)
	out.rows = append(out.rows, sectionRow("what it is"))
	for _, l := range c.Labels {
		says := []string{orElse(l.Actives, "actives not entered"), orElse(l.Registration, "no registration number"), strings.ToUpper(orElse(l.Signal, "no signal word entered"))}
		out.rows = append(out.rows, m.fact(theme.Strong, l.Product, strings.Join(says, "; "))...)
		out.rows = append(out.rows, m.wrapped(theme.Base, "  first aid: "+orElse(l.FirstAid, card.NotEntered))...)
		if l.Phone != "" {
			out.rows = append(out.rows, m.wrapped(theme.Base, "  the label's number: "+l.Phone)...)
		}
	}
	out.rows = append(out.rows, sectionRow("where it is"))
	for _, p := range c.Places {
		says := p.Holds
		if p.Gallons > 0 {
			says = strings.TrimSuffix(measure.Gallons(p.Gallons).Text()+" gal of "+p.Holds, " of ")
		}
		for i, one := range p.Products {
			sep := "; "
			if i == 0 {
				sep = ": "
			}
			says += sep + one.Says + " " + one.Product
		}
		out.rows = append(out.rows, m.fact(theme.Base, p.Name, says)...)
	}
	if len(c.Places) == 0 {
		out.rows = append(out.rows, m.wrapped(theme.Base, "By the book all tanks and lines are empty.")...)
	}
	out.rows = append(out.rows, m.wrapped(theme.Dim, card.Caution)...)
	return out
}

func orElse(s, other string) string {
	if s == "" {
		return other
	}
	return s
}
