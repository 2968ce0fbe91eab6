package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/yard"
	"example.com/tintline/tui/theme"
)

// stockPage lists the products: what the planned loads take, what is in stock, what to order.
func stockPage() *pageSpec {
	return &pageSpec{
		page: pageStock, under: pageMorning, key: "s", title: "Stock and truck", words: "what the loads take, what is there, what to order",
		show: (*Model).showStock, pick: (*Model).pickStock,
	}
}

func (m *Model) showStock() sheet {
	s, err := yard.Stock(m.book)
	if err != nil {
		what, do := sentences(err)
		return sheet{rows: append(m.wrapped(theme.Stop, what), m.wrapped(theme.Base, do)...)}
	}
	if len(s.Products) == 0 {
		return sheet{rows: m.wrapped(theme.Base, "The book has no product yet.")}
	}
	const figures = 13
	name := max(m.w-tableMarks-3*figures-4, shortName)
	out := sheet{about: m.stockAbout(&s)}
	out.rows = []row{heading(m.cell(theme.Dim, "product", name), m.cellRight(theme.Dim, "loads take", figures), m.cellRight(theme.Dim, "in stock", figures), m.cellRight(theme.Dim, "order", figures))}
	for i := range s.Products {
		out.rows = append(out.rows, m.stockRow(&s.Products[i], name, figures))
	}
	id := m.chosenAmong(out.rows)
	for i := range s.Products {
		if p := &s.Products[i]; p.Product == id {
			out.offer, out.small = "count, buy or set the line of "+id, yard.StockHint
			out.below = m.stockBelow(p)
		}
	}
	return out
}

// stockAbout is what is wrong with the stock, the heaviest first, else what the planned loads cost.
func (m *Model) stockAbout(s *yard.Shelf) []line {
	var out []line
	for _, f := range s.Findings {
		t, word := theme.Ask, "ASK "
		if f.Weight.String() == "note" {
			t, word = theme.Base, "note: "
		}
		out = append(out, m.told(t, word+f.Says)...)
	}
	if s.Cost.Total > 0 {
		cost := "The planned loads cost " + s.Cost.Total.Text()
		if len(s.Cost.Unpriced) > 0 {
			cost += ", without " + m.g.clean(joined(s.Cost.Unpriced)) + ", of which no price is entered"
		}
		out = append(out, m.told(theme.Base, cost+".")...)
	}
	return out
}

func (m *Model) stockRow(p *yard.Stocked, name, figures int) row {
	takes, have, order := "", "not counted", ""
	if p.Planned.N > 0 {
		takes = p.Planned.Text()
	}
	t := theme.Dim
	if p.Have.Known {
		have, t = p.Have.V.Text(), theme.Strong
	}
	if p.Order.Known {
		if order = p.Order.V.Amount.Text(); p.Order.V.Packages > 0 {
			order = fmt.Sprintf("%d x %s", p.Order.V.Packages, p.Package.Text())
		}
	}
	return row{id: p.Product, line: line{left: []span{
		m.cell(theme.Strong, p.Product, name), m.cellRight(theme.Base, takes, figures), m.cellRight(t, have, figures), m.cellRight(theme.Ask, order, figures),
	}}}
}

// stockBelow is the product chosen: what is on the shelf, what goes into which tank, what to order.
func (m *Model) stockBelow(p *yard.Stocked) []row {
	out := []row{blankRow(), sectionRow(m.g.clean(p.Product + ": " + p.HaveWords()))}
	for _, l := range p.Lines() {
		t := theme.Base
		if strings.HasPrefix(l, "ORDER ") {
			t = theme.Ask
		}
		for i, s := range m.g.wrap(m.g.clean(l), m.w-tableMarks-3) {
			if i > 0 {
				s = "  " + s
			}
			out = append(out, row{line: text(t, " "+s)})
		}
	}
	return out
}

// pickStock asks what was bought or counted of a product, or from where on to order it.
func (m *Model) pickStock(id string) tea.Cmd {
	if id == "" || m.busy() {
		return nil
	}
	m.openLine(textLine{
		prompt: id, hint: yard.StockHint, tells: true,
		read: func(m *Model, said string) ([]core.Fact, error) {
			f, err := yard.ReadStocked(m.book, id, said)
			if err != nil {
				return nil, err
			}
			return onlyFact(f, nil)
		},
	})
	return nil
}
