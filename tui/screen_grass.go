package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core/grid"
	"example.com/tintline/tui/theme"
)

// grassesPage shows what may go on which grass: grasses down, products of the loads across.
func grassesPage() *pageSpec {
	const p = pageGrasses
	many := func(m *Model) bool { return len(m.grasses().Columns) > 1 }
	return &pageSpec{
		page: p, key: "k", title: "Grasses", words: "what may go on which grass, and who says so",
		enter: (*Model).enterGrasses, show: (*Model).showGrasses, pick: (*Model).pickCell,
		keys: []binding{
			arrowKey(p, "left", "Left", "the product before", func(m *Model) tea.Cmd { return m.moveCell(-1) }, many),
			arrowKey(p, "right", "Right", "the product behind", func(m *Model) tea.Cmd { return m.moveCell(1) }, many),
			pageKey(p, "w", "why", "all on which the cell stands, with its sources", (*Model).openGround, func(m *Model) bool { return len(m.grasses().Columns) > 0 }),
		},
	}
}

func arrowKey(p page, k, shown, long string, run func(m *Model) tea.Cmd, on func(m *Model) bool) binding {
	b := pageKey(p, k, "", long, run, on)
	b.SetHelp(shown, "")
	return b
}

// highScreen is the height from which there is a line to spare.
const highScreen = 20

// groundPage is all on which one cell stands.
func groundPage() *pageSpec {
	return &pageSpec{page: pageGround, title: "Why", show: (*Model).showGround}
}

// enterGrasses begins with the zones of the lawn from whose page it is opened, else of the one ahead.
func (m *Model) enterGrasses() tea.Cmd {
	if len(m.back) == 0 || m.back[len(m.back)-1].page != pageLawn {
		m.subject.lawn = m.got.lawn
	}
	m.subject.cell = cellAt{}
	m.on[pageGrasses] = placeOn{}
	return nil
}

func (m *Model) grasses() *grid.Grid { return grid.WithLawn(m.book, m.subject.lawn, m.moment()) }

func (m *Model) showGrasses() sheet {
	g := m.grasses()
	at := m.cellChosen(g)
	j := gridColumn(g, at.column)
	l := m.lookAt(g, j)
	out := sheet{about: m.grassesAbout(g), head: m.gridHead(g, l), rows: m.gridRows(g, l, at), more: "w"}
	i, ok := gridRow(g, at.row)
	if !ok || len(g.Columns) == 0 {
		return out
	}
	out.below = m.groundRows(g, i, j)
	if m.h >= highScreen {
		out.below = append([]row{blankRow()}, out.below...)
	}
	out.offer = "open " + g.Columns[j].Name()
	if g.Columns[j].Product == "" {
		out.offer = "show who says so of " + g.Columns[j].Name()
	}
	out.small = "the label in your hand and local rules decide"
	return out
}

func (m *Model) grassesAbout(g *grid.Grid) []line {
	words := "Products of the current loads. Arrows move from cell to cell."
	switch g.Of {
	case grid.OfProducts:
		words = "Nothing is loaded: all products. Arrows move from cell to cell."
	case grid.OfReference:
		words = "The book has no product yet: what the reference says of actives."
	}
	var out []line
	if m.w >= leastFacts {
		out = m.told(theme.Base, words)
	}
	key := ""
	for _, k := range g.Keys() {
		key += k.Letter + " " + k.Word + "  "
	}
	return append(out, m.told(theme.Dim, strings.TrimSpace(key))...)
}

// cellChosen is the cell that is chosen, of those that there are.
func (m *Model) cellChosen(g *grid.Grid) cellAt {
	at := cellAt{m.on[pageGrasses].chosen, m.subject.cell.column}
	if _, ok := gridRow(g, at.row); !ok {
		at.row = gridRowID(&g.Rows[0])
	}
	if len(g.Columns) > 0 {
		at.column = g.Columns[gridColumn(g, at.column)].Name()
	}
	return at
}

func (m *Model) moveCell(by int) tea.Cmd {
	g := m.grasses()
	if len(g.Columns) == 0 {
		return nil
	}
	j := gridColumn(g, m.cellChosen(g).column)
	m.subject.cell.column = g.Columns[min(max(j+by, 0), len(g.Columns)-1)].Name()
	m.on[pageGrasses].text = false
	return nil
}

// pickCell opens the product of the cell chosen.
func (m *Model) pickCell(string) tea.Cmd {
	g := m.grasses()
	if len(g.Columns) == 0 {
		return nil
	}
	if c := g.Columns[gridColumn(g, m.cellChosen(g).column)]; c.Product != "" {
		return m.openProduct(c.Product)
	}
	return m.openGround()
}

// openGround shows all on which the cell chosen stands.
func (m *Model) openGround() tea.Cmd {
	at := m.cellChosen(m.grasses())
	cmd := m.goTo(pageGround)
	m.subject.product, m.subject.cell = "", at
	m.on[pageGround] = placeOn{text: true}
	return cmd
}

// openGroundOf shows the same of one product on one grass, from the product's page.
func (m *Model) openGroundOf(at cellAt) tea.Cmd {
	cmd := m.goTo(pageGround)
	m.subject.cell = at
	m.on[pageGround] = placeOn{text: true}
	return cmd
}

func (m *Model) showGround() sheet {
	g := m.grasses()
	if m.subject.product != "" {
		g = grid.OfProduct(m.book, m.subject.product, m.moment())
	}
	i, ok := gridRow(g, m.subject.cell.row)
	if !ok || len(g.Columns) == 0 {
		return sheet{rows: m.wrapped(theme.Base, "No cell is chosen.")}
	}
	out := sheet{rows: m.groundRows(g, i, gridColumn(g, m.subject.cell.column))}
	out.rows = append(out.rows, blankRow())
	for _, k := range g.Keys() {
		out.rows = append(out.rows, m.wrapped(theme.Dim, k.Letter+" "+k.Word+": "+k.Words)...)
	}
	return out
}
