package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core/check"
	"example.com/tintline/core/grid"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/say"
	"example.com/tintline/tui/theme"
)

// productsPage lists the products.
func productsPage() *pageSpec {
	return &pageSpec{
		page: pageProducts, key: "p", title: "Products", words: "label entries, what is aboard, what is not checked",
		show: (*Model).showProducts,
		pick: func(m *Model, id string) tea.Cmd { return m.openProduct(id) },
		keys: []binding{pageKey(pageProducts, "n", "new", "enter a product from its label", (*Model).formProduct, nil)},
	}
}

// productPage shows one product.
func productPage() *pageSpec {
	return &pageSpec{
		page: pageProduct, title: "One product", show: (*Model).showProduct, pick: (*Model).pickOfProduct,
		keys: []binding{
			opening(pageKey(pageProduct, "i", "its label", "enter more of its label, or change what is entered: the next version", (*Model).formLabel, func(m *Model) bool {
				return !m.busy() && m.book.Product(m.subject.product) != nil
			})),
		},
	}
}

// openProduct opens the page of a product.
func (m *Model) openProduct(name string) tea.Cmd {
	if m.book.Product(name) == nil {
		return nil
	}
	cmd := m.goTo(pageProduct)
	m.subject.product, m.on[pageProduct] = name, placeOn{text: true}
	return tea.Batch(cmd, m.pullYears("", name))
}

func (m *Model) pickOfProduct(id string) tea.Cmd {
	if strings.HasPrefix(id, rowGrass) {
		return m.openGroundOf(cellAt{row: id, column: m.subject.product})
	}
	return m.leadOn(id)
}

func (m *Model) showProducts() sheet {
	const wide, middle = 100, 70
	list := m.book.Products()
	if len(list) == 0 {
		return sheet{rows: m.wrapped(theme.Base, "The book has no product yet. A product is entered from its label.")}
	}
	nameWidth := 24
	if m.w < middle {
		nameWidth = 16
	}
	head := []span{m.cell(theme.Dim, "product", nameWidth), m.cellRight(theme.Dim, "aboard", 11)}
	if m.w >= middle {
		head = append(head, m.cell(theme.Dim, " kind", 18))
	}
	if m.w >= wide {
		head = append(head, m.cell(theme.Dim, "actives", 30))
	}
	rows := []row{heading(append(head, m.cell(theme.Dim, "not checked", 16))...)}
	for i := range list {
		p := list[i].Now()
		all, _ := m.book.Aboard(p.ProductName)
		l := line{left: []span{m.cell(theme.Strong, p.ProductName, nameWidth), m.cellRight(theme.Base, all.Text(), 11)}}
		if m.w >= middle {
			l.left = append(l.left, m.cell(theme.Base, " "+kindWords(p.Label), 18))
		}
		if m.w >= wide {
			l.left = append(l.left, m.cell(theme.Base, p.Label.Words(), 30))
		}
		l.left = append(l.left, m.notEntered(p.Label)...)
		rows = append(rows, row{id: p.ProductName, now: true, line: l})
	}
	out := sheet{rows: rows}
	if words := check.StillToEnterWords(m.book); words != "" {
		out.about = m.noted(words)
	}
	if id := m.chosenAmong(rows); id != "" {
		out.offer = "open " + id
	}
	return out
}

// fewBlanks is how many blanks a row of the list names.
const fewBlanks = 2

// notEntered is what the label entry lacks, in what is left of a row.
func (m *Model) notEntered(e label.Entry) []span {
	var out []span
	if e.OffRecord() != "" {
		out = append(out, span{theme.Note, "no reg. number  "})
	}
	switch blank := e.Blank(); {
	case len(blank) > fewBlanks:
		out = append(out, span{theme.Base, fmt.Sprintf("%d blank", len(blank))})
	default:
		out = append(out, span{theme.Base, strings.Join(blank, ", ")})
	}
	return out
}

// kindWords is "liquid herbicide".
func kindWords(e label.Entry) string {
	return strings.TrimSpace(e.Form.String() + " " + e.Kind)
}

// The ids of rows that lead to other pages begin so.
const (
	toProduct = "product/"
	toMix     = "mix/"
	toLawn    = "lawn/"
)

func (m *Model) showProduct() sheet {
	p := m.book.Product(m.subject.product)
	if p == nil {
		return sheet{rows: m.wrapped(theme.Base, "No product is chosen.")}
	}
	e := p.Label
	out := sheet{about: []line{{left: []span{{theme.Strong, " " + m.g.clean(p.ProductName)}, {theme.Base, "  " + m.g.clean(kindWords(e))}}}}}
	all, at := m.book.Aboard(p.ProductName)
	if why := e.OffRecord(); why != "" {
		out.about = append(out.about, m.noted(why)...)
	}
	if words := m.stillToEnter(p.ProductName); words != "" {
		out.about = append(out.about, m.noted(words)...)
	}
	out.rows = append(out.rows, m.labelRows(p)...)
	aboard := all.Text()
	if all.N == 0 {
		aboard = "none"
	}
	for i, a := range at {
		sep := ", "
		if i == 0 {
			sep = ": "
		}
		aboard += sep + a.Amount.Text() + " in " + say.Place(a.Place)
	}
	out.rows = append(out.rows, m.fact(theme.Base, "aboard", aboard)...)
	out.rows = append(out.rows, m.mixesWith(p.ProductName)...)
	out.rows = append(out.rows, m.productGrid(p)...)
	out.rows = append(out.rows, m.referenceRates(p)...)
	out.rows = append(out.rows, m.versions(p.ProductName)...)
	out.rows = append(out.rows, m.pastRows("", p.ProductName)...)
	id := m.chosenAmong(out.rows)
	if mix, leads := strings.CutPrefix(id, toMix); leads {
		out.offer = "open the mix " + mix
	}
	if grass, leads := strings.CutPrefix(id, rowGrass); leads {
		out.offer = "show why on " + label.GrassWords(grass)
	}
	return out
}

// stillToEnter is what today's visits want of a label entry that is blank.
func (m *Model) stillToEnter(product string) string {
	var fields []string
	for _, f := range check.StillToEnter(m.book) {
		if f.Product == product {
			fields = append(fields, f.Field)
		}
	}
	if len(fields) == 0 {
		return ""
	}
	return "still to enter for today: " + strings.Join(fields, ", ")
}

// mixesWith lists the mixes that hold a product; each leads to its page.
func (m *Model) mixesWith(product string) []row {
	var out []row
	for _, mix := range m.book.Mixes() {
		r, in := mix.Rate(product)
		if !in {
			continue
		}
		name := ""
		if len(out) == 0 {
			name = "mixes"
		}
		out = append(out, row{id: toMix + mix.MixName, now: true, line: line{left: []span{
			{theme.Dim, m.padded(name, m.factWidth())}, {theme.Strong, m.g.clean(mix.MixName)}, {theme.Base, "  " + grid.RateWords(r)},
		}}})
	}
	if len(out) == 0 {
		return m.fact(theme.Base, "mixes", "none holds it")
	}
	return out
}

const blankWords = "blank: not checked"

// rateRange is the label's lowest and highest rate.
func rateRange(e label.Entry) string {
	return grid.RangeWords(e, measure.Maybe[measure.Rate]{V: e.RateLow, Known: e.HasRateLow}, measure.Maybe[measure.Rate]{V: e.RateHigh, Known: e.HasRateHigh})
}

// labelWidth is that of the names before facts.
const labelWidth = 11

// labelled is a fact behind its name, wrapped beside it.
func (m *Model) labelled(name, words string) []row {
	var out []row
	for i, l := range m.g.wrap(m.g.clean(words), m.w-labelWidth-tableMarks) {
		if i > 0 {
			name = ""
		}
		out = append(out, row{line: line{left: []span{{theme.Dim, m.padded(name, labelWidth)}, {theme.Base, l}}}})
	}
	return out
}
