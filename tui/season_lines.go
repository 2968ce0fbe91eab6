package tui

import (
	"fmt"

	"example.com/tintline/core/label"
	"example.com/tintline/core/season"
	"example.com/tintline/tui/theme"
)

func (m *Model) showSeason() sheet {
	s, wait := m.seasonNow(pageSeason)
	if wait != nil {
		return *wait
	}
	by := m.seasonOf.by
	if by == "" {
		by = season.ByDue
	}
	out := sheet{about: append(m.told(theme.Strong, s.Year+", "+season.Titles[by]), m.told(theme.Base, s.AllWords())...)}
	switch by {
	case season.ByDue:
		m.dueRows(s, &out)
	case season.ByLawn:
		m.seasonByLawn(s, &out)
	case season.ByProduct:
		m.seasonProducts(s, &out)
	case season.ByPlots:
		charts := s.Charts()
		for i := range charts {
			if i > 0 {
				out.rows = append(out.rows, blankRow())
			}
			out.rows = append(out.rows, m.chartRows(&charts[i], fmt.Sprint("plot/", i))...)
		}
	default:
		m.coveredRows(s, by, &out)
	}
	return out
}

// dueRows are the lawns, what is due first on top; what there is besides stands below the one chosen.
func (m *Model) dueRows(s *season.Season, out *sheet) {
	const date, rounds = 11, 7
	name := max(m.w-tableMarks-2*date-rounds-3, shortName)
	out.rows = []row{heading(m.cell(theme.Dim, "lawn", name), m.cell(theme.Dim, "due", date), m.cell(theme.Dim, "last", date), m.cellRight(theme.Dim, "rounds", rounds))}
	at := m.seasonDate()
	for i := range s.Lawns {
		l := &s.Lawns[i]
		when := theme.Base
		if l.Due.Owed != "" || (l.Due.Date != "" && l.Due.Date <= at) {
			when = theme.Ask
		}
		out.rows = append(out.rows, row{id: toLawn + l.Lawn, now: true, line: line{left: []span{
			m.cell(theme.Strong, l.Lawn, name), m.cell(when, l.Due.When(), date), m.cell(theme.Base, l.Due.Last, date), m.cellRight(theme.Base, fmt.Sprint(l.Rounds), rounds),
		}}})
	}
	id := m.chosenAmong(out.rows)
	for i := range s.Lawns {
		if l := &s.Lawns[i]; toLawn+l.Lawn == id {
			out.offer = "open the season of " + l.Lawn
			out.below = append(out.below, blankRow(), sectionRow(m.g.clean(l.Lawn)))
			out.below = append(out.below, m.wrapped(theme.Base, l.Due.Words())...)
			if e := l.Due.Else(); e != "" {
				out.below = append(out.below, m.wrapped(theme.Base, e)...)
			}
		}
	}
	if len(s.Lawns) == 0 {
		out.rows = m.wrapped(theme.Base, "The book has no lawn yet.")
	}
}

// tableHeads are heads short enough for a screen: the unit alone where it says what is meant.
func tableHeads(by string, s *season.Season) ([]string, [][]string) {
	t := s.Table(by)
	head := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		switch c.Title {
		case "sprayed", "spread", "treated":
			head[i] = c.Unit
		case "N", "P2O5":
			head[i] = c.Title + " " + c.Unit
		default:
			head[i] = c.Title
		}
	}
	return head, append(append([][]string(nil), t.Rows...), t.Sum)
}

// seasonByLawn lists the lawns with what went down there; each leads to its season.
func (m *Model) seasonByLawn(s *season.Season, out *sheet) {
	head, rows := tableHeads(season.ByLawn, s)
	lines, turned := m.tabled(head, rows)
	for i, l := range lines {
		r := row{id: fmt.Sprint("sum/", i), line: l}
		if at := i - 1; !turned && at >= 0 && at < len(s.Lawns) {
			r.id, r.now = toLawn+s.Lawns[at].Lawn, true
		}
		if i == 0 && !turned {
			r.id = ""
		}
		out.rows = append(out.rows, r)
	}
	if id := m.chosenAmong(out.rows); m.leadsOn(id) {
		out.offer = "open the season of " + id[len(toLawn):]
	}
}

func (m *Model) coveredRows(s *season.Season, by string, out *sheet) {
	head, rows := tableHeads(by, s)
	lines, _ := m.tabled(head, rows)
	for i, l := range lines {
		out.rows = append(out.rows, row{id: fmt.Sprint(by, "/", i), line: l})
	}
	if by == season.ByRound {
		out.rows = append(out.rows, blankRow())
		out.rows = append(out.rows, m.wrapped(theme.Dim, "A lawn's next round begins with what comes half a round or more after its last one began.")...)
	}
}

// seasonProducts list what went down of each product and its stock; the rest stands below the one chosen.
func (m *Model) seasonProducts(s *season.Season, out *sheet) {
	const figure = 13
	name := max(m.w-tableMarks-3*figure-4, shortName)
	out.rows = []row{heading(m.cell(theme.Dim, "product", name), m.cellRight(theme.Dim, "went down", figure), m.cellRight(theme.Dim, "in stock now", figure), m.cellRight(theme.Dim, "reorder", figure))}
	for i := range s.Products {
		p := &s.Products[i]
		have, order := "not counted", "no"
		if p.Stock.Have.Known {
			have = p.Stock.Have.V.Text()
		}
		t := theme.Base
		if p.Order != "" {
			order, t = "yes", theme.Ask
		}
		out.rows = append(out.rows, row{id: toProduct + p.Product, now: true, line: line{left: []span{
			m.cell(theme.Strong, p.Product, name), m.cellRight(theme.Base, p.Amount.Text(), figure), m.cellRight(theme.Base, have, figure), m.cellRight(t, order, figure),
		}}})
	}
	if len(s.Products) == 0 {
		out.rows = m.wrapped(theme.Base, "Nothing went down in "+s.Year+", and nothing is in stock.")
		return
	}
	id := m.chosenAmong(out.rows)
	for i := range s.Products {
		if p := &s.Products[i]; toProduct+p.Product == id {
			out.offer = "open the page of " + p.Product
			out.below = append([]row{blankRow(), sectionRow(m.g.clean(p.Product))}, m.wrapped(theme.Base, p.Words())...)
		}
	}
}

// showSeasonLawn is the sheet of one lawn, in words where its table is too wide.
func (m *Model) showSeasonLawn() sheet {
	s, wait := m.seasonNow(pageSeasonLawn)
	if wait != nil {
		return *wait
	}
	d, err := s.Sheet(m.subject.lawn)
	if err != nil {
		what, do := sentences(err)
		return sheet{rows: append(m.wrapped(theme.Ask, what), m.wrapped(theme.Base, do)...)}
	}
	out := sheet{about: m.told(theme.Strong, d.Title)}
	for _, a := range d.About {
		out.about = append(out.about, m.told(theme.Base, a)...)
	}
	for i := range s.Lawns {
		if l := &s.Lawns[i]; l.Lawn == m.subject.lawn {
			for j := range l.Zones {
				out.rows = append(out.rows, m.seasonZone(s, &l.Zones[j], d.Parts[j].Lines)...)
			}
		}
	}
	if id := m.chosenAmong(out.rows); m.leadsOn(id) {
		out.offer = "open the page of " + id[len(toProduct):]
	}
	return out
}

func (m *Model) seasonZone(s *season.Season, z *season.Zone, lines []string) []row {
	title := z.Zone + ", " + label.GrassWords(z.Grass)
	if z.Area > 0 {
		title += ", " + z.Area.Text() + " sq ft"
	}
	out := []row{blankRow(), sectionRow(m.g.fit(m.g.clean(title), m.w-tableMarks))}
	for i := range z.Used {
		u := &z.Used[i]
		out = append(out, row{id: toProduct + u.Product, now: true, line: text(theme.Base, m.g.fit(m.g.clean(u.Product), m.w-tableMarks))})
		for _, w := range m.g.wrap(m.g.clean(u.Words(z, s.Year)), m.w-tableMarks-3) {
			out = append(out, row{line: text(theme.Base, "  "+w)})
		}
	}
	for _, l := range lines {
		out = append(out, m.wrapped(theme.Dim, l)...)
	}
	return out
}
