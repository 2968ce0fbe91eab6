package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/setup"
	"example.com/tintline/tui/theme"
)

// rigPage shows the parts of the rig. The id of a row is the form that changes the part, a slash and its name; without
// a name the form adds one more.
func rigPage() *pageSpec {
	const p = pageRig
	return &pageSpec{
		page: p, key: "r", title: "Rig", words: "tank, hoses, applicators with their tips; change and add",
		show: (*Model).showRig,
		pick: func(m *Model, id string) tea.Cmd {
			name, about, _ := strings.Cut(id, "/")
			return m.openForm(name, about)
		},
		keys: []binding{
			pageKey(p, "t", "next tip", "fit the next tip of the applicator that is chosen", (*Model).fitOnPage, (*Model).canFitOnPage),
			pageKey(p, "h", "next hose", "hang the applicator that is chosen on the next hose", (*Model).hangOnPage, (*Model).canHangOnPage),
			pageKey(p, "g", "pressure", "pressure along the hose that is chosen, and what it weighs", (*Model).goToPressure, func(m *Model) bool {
				return m.drawsThrough(m.hoseChosen()) != ""
			}),
			pageKey(p, "x", "take away", "take the part that is chosen out of the rig", (*Model).askAway, (*Model).canTakeAway),
		},
	}
}

// rigWidths are the widths of what a part is called and of the figures behind it.
const (
	rigName   = 20
	rigFigure = 11
)

func (m *Model) showRig() sheet {
	r := m.book.Rig()
	if r == nil {
		return sheet{}
	}
	var rows []row
	part := func(id string, spans ...span) { rows = append(rows, row{id: id, line: line{left: spans}}) }
	part(setup.Pump+"/", m.cell(theme.Strong, r.RigName, rigName), span{theme.Base, "pump " + m.learnedCell() + ", return line " + size(r.ReturnLine) + " gal"})
	more := func(id, words string) { part(id, span{theme.Dim, "+ " + words}) }
	rows = append(rows, sectionRow("compartments"))
	for _, c := range r.Compartments {
		l := string(rune(c.Letter))
		part(setup.Compartment+"/"+l, m.cell(theme.Compartment(c.Letter, c.Colour), l+"  "+c.Name, rigName),
			m.cellRight(theme.Base, size(c.Capacity)+" gal", rigFigure), m.cell(theme.Base, "heel "+size(c.Heel), rigFigure), span{theme.Base, join(chartWords(c), m.g.clean(tankWords(&c)))})
	}
	if len(r.Compartments) < mostCompartments {
		more(setup.Compartment+"/", "another compartment")
	}
	rows = append(rows, sectionRow("hoses"))
	for _, h := range r.Hoses {
		part(setup.Hose+"/"+h.Name, m.cell(theme.Strong, h.Name, rigName), m.cellRight(theme.Base, m.hoseHolds(&h)+" gal", rigFigure), span{theme.Base, m.g.clean(m.learnedHose(&h))})
	}
	more(setup.Hose+"/", "another hose")
	rows = append(rows, sectionRow("applicators"))
	for i := range r.Applicators {
		rows = append(rows, m.applicatorRows(&r.Applicators[i])...)
	}
	more(setup.Applicator+"/", "another applicator")
	rows = append(rows, sectionRow("pump, pipes, line-ups"))
	part(setup.Plumbing+"/", m.cell(theme.Strong, "plumbing", rigName), span{theme.Base, m.plumbedWords(r)})
	part(setup.Cross+"/", m.cell(theme.Strong, "between tanks", rigName), span{theme.Base, crossWords(r)})
	for _, l := range r.LineUps {
		part(setup.LineUp+"/"+l.Name, m.cell(theme.Strong, l.Name, rigName), span{theme.Base, lineUpWords(fluid.LineUp{Supply: l.Supply, Return: l.Return})})
	}
	more(setup.LineUp+"/", "another line-up")
	out := sheet{rows: rows, about: m.told(theme.Base, "A change holds from now on; it moves no liquid, and takes away no part that holds some.")}
	out.offer = m.rigOffer(m.chosenAmong(rows))
	return out
}

const mostCompartments = 6

func chartWords(c core.RigCompartment) string {
	if len(c.Marks) == 0 {
		return "no marks"
	}
	return "marks " + c.Marks[0].Mark + " to " + c.Marks[len(c.Marks)-1].Mark
}

func boreWords(h core.RigHose) string {
	if !h.Bore.Known || !h.Length.Known {
		return "measured"
	}
	bore, length, is := strings.Cut(setup.HoseText(h), " x ")
	if !is {
		return "coupled lengths"
	}
	return bore + " in x " + length + " ft"
}

// applicatorRows are an applicator, its tips, and the row that adds one.
func (m *Model) applicatorRows(a *core.Applicator) []row {
	kind := strings.ReplaceAll(a.Type, "_", "-")
	if kind == a.Name {
		kind = ""
	}
	l := line{left: []span{m.cell(theme.Strong, join(a.Name, kind), rigName)}}
	add := func(words string) { l.left = append(l.left, span{theme.Base, "  " + words}) }
	if a.Delivery.V > 0 {
		l.left = append(l.left, span{theme.Base, layWords(a.Delivery)})
	}
	if a.Flow.Known {
		add(a.Flow.V.Text())
	}
	for _, r := range m.book.RatesInForce() {
		if r.Applicator == a.Name && r.Tip == m.book.TipOn(a.Name) && r.Product == "" {
			add("by the test of " + r.At.Date())
		}
	}
	if a.Hose != "" && len(m.book.Rig().Hoses) > 1 {
		add("on " + a.Hose)
	}
	if a.Tank > 0 {
		add("tank " + size(a.Tank) + " gal")
	}
	if a.Hopper > 0 {
		add("hopper " + measure.Amount{N: int64(a.Hopper), Kind: measure.Dry}.Text())
	}
	rows := []row{{id: setup.Applicator + "/" + a.Name, line: l}}
	on := m.book.FittedTip(a.Name)
	for _, t := range a.Tips {
		id := setup.Tip + "/" + a.Name + "/" + t.Name
		mark, token := "     ", theme.Base
		if t.Name == on {
			mark, token = "  on ", theme.Strong
		}
		words := layWords(t.Delivery)
		if t.PSI.Known {
			words += "  " + wholeWords(t.PSI.V) + " psi"
		}
		if t.Flow.Known {
			words += "  " + t.Flow.V.Text()
		}
		rows = append(rows, row{id: id, line: line{left: []span{m.cell(token, mark+"tip "+t.Name, rigName), {token, words}}}})
	}
	return append(rows, row{id: setup.Tip + "/" + a.Name + "/", line: text(theme.Dim, "     + another tip of "+a.Name)})
}

// layWords is a delivery rate in short.
func layWords(r measure.Rate) string {
	return strings.Replace(r.Text(), " per 1,000 sq ft", "/1,000", 1)
}

// rigOffer is what Enter does with a row.
func (m *Model) rigOffer(id string) string {
	name, about, _ := strings.Cut(id, "/")
	words := map[string]string{setup.Pump: "the rig", setup.Compartment: "compartment", setup.Hose: "hose", setup.Applicator: "applicator", setup.Tip: "tip", setup.LineUp: "line-up"}[name]
	on, tip, _ := strings.Cut(about, "/")
	switch {
	case name == setup.Pump:
		return "change name, pump or return line"
	case name == setup.Cross:
		return "change the pipe between two compartments"
	case name == setup.Plumbing:
		return "change pump flow and pressure, suction, dead legs, tints, agitation"
	case name == setup.Tip && tip == "":
		return "enter another tip of " + on
	case name == setup.Tip:
		return "change tip " + tip + " of " + on
	case about == "":
		return "enter another " + words
	}
	return "change " + words + " " + about
}

// applicatorChosen is the applicator of the row chosen: its own, or that of a tip.
func (m *Model) applicatorChosen() string {
	name, about, _ := strings.Cut(m.chosen(), "/")
	if name != setup.Applicator && name != setup.Tip {
		return ""
	}
	on, _, _ := strings.Cut(about, "/")
	return on
}

func (m *Model) canFitOnPage() bool {
	_, more := m.book.NextTip(m.applicatorChosen())
	return more && !m.busy()
}

func (m *Model) fitOnPage() tea.Cmd {
	on := m.applicatorChosen()
	t, _ := m.book.NextTip(on)
	return m.enter(&core.Fitted{Applicator: on, Tip: t.Name})
}

func (m *Model) canTakeAway() bool {
	name, about, _ := strings.Cut(m.chosen(), "/")
	_, ok := setup.Without(m.book, name, about)
	return ok && !m.busy()
}

// askAway asks whether a part is to go; the book may still refuse it.
func (m *Model) askAway() tea.Cmd {
	name, about, _ := strings.Cut(m.chosen(), "/")
	if r, ok := setup.Without(m.book, name, about); ok {
		m.put(question{facts: []core.Fact{r}, words: "take " + strings.TrimPrefix(m.rigOffer(m.chosen()), "change ") + " out of the rig"})
	}
	return nil
}
