package tui

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/grid"
	"example.com/tintline/tui/theme"
)

// cellAt is a cell of a table of grasses: the id of its row, and the name of its column.
type cellAt struct{ row, column string }

const (
	signsWidth = 15 // a letter, a mark, and the longest word: "D! dormant only"
	cellWidth  = signsWidth + 1
	grassWidth = 22
	rowGrass   = "grass/"
	rowOfZone  = "zone/"
)

// gridRowID is the id of a row of a table of grasses.
func gridRowID(r *grid.Row) string {
	if r.Lawn != "" {
		return rowOfZone + r.Zone.Name
	}
	return rowGrass + r.Grass.Name
}

// gridRow finds a row by its id.
func gridRow(g *grid.Grid, id string) (int, bool) {
	for i := range g.Rows {
		if gridRowID(&g.Rows[i]) == id {
			return i, true
		}
	}
	return 0, false
}

// gridColumn is the place of a column by its name, the first if there is none.
func gridColumn(g *grid.Grid, name string) int {
	for i := range g.Columns {
		if g.Columns[i].Name() == name {
			return i
		}
	}
	return 0
}

// gridLook is how much of a table there is room for.
type gridLook struct {
	name     int // cells for the names of grasses
	from, to int // columns in sight
}

// lookAt shares out the width: as many columns as fit, those with the chosen one.
func (m *Model) lookAt(g *grid.Grid, column int) gridLook {
	longest := 0
	for i := range g.Rows {
		longest = max(longest, cells(m.g.clean(g.Rows[i].Name())))
	}
	room := m.w - tableMarks
	n := max((room-min(longest, grassWidth))/cellWidth, 1)
	l := gridLook{name: min(longest, room-min(n, max(len(g.Columns), 1))*cellWidth)}
	l.from = column / n * n
	l.to = min(l.from+n, len(g.Columns))
	return l
}

// gridHead are the names over the columns in sight, in lines by words, with which of how many they are.
func (m *Model) gridHead(g *grid.Grid, l gridLook) []line {
	most := 1
	switch {
	case m.h >= 34:
		most = 3
	case m.h >= highScreen:
		most = 2
	}
	var heads [][]string
	n := 1
	for i := l.from; i < l.to; i++ {
		h := m.headLines(g.Columns[i].Name(), signsWidth, most)
		heads, n = append(heads, h), max(n, len(h))
	}
	out := make([]line, n)
	for i := range out {
		first := ""
		if i == n-1 && l.to-l.from < len(g.Columns) {
			first = fmt.Sprintf("%d to %d of %d", l.from+1, l.to, len(g.Columns))
			if l.to-l.from == 1 {
				first = fmt.Sprintf("%d of %d", l.to, len(g.Columns))
			}
		}
		out[i].left = append(out[i].left, span{theme.Dim, "  " + m.padded(first, l.name)})
		for _, h := range heads {
			s := ""
			if at := i - (n - len(h)); at >= 0 {
				s = h[at]
			}
			out[i].left = append(out[i].left, span{theme.Dim, " " + m.padded(s, signsWidth)})
		}
	}
	return out
}

// headLines breaks a name into at most so many lines by words.
func (m *Model) headLines(name string, w, most int) []string {
	lines := m.g.wrap(m.g.clean(name), w)
	if len(lines) > most {
		lines = append(lines[:most-1], m.g.fitWords(lines[most-1]+" "+lines[most], w))
	}
	return lines
}

// gridRows are the rows of a table; the cell chosen has a mark. Rows of zones stand first, below a title of their own.
func (m *Model) gridRows(g *grid.Grid, l gridLook, at cellAt) []row {
	var out []row
	for i := range g.Rows {
		r := &g.Rows[i]
		if i > 0 && g.Rows[i-1].Lawn != "" && r.Lawn == "" {
			out = append(out, row{line: text(theme.Dim, "all grasses")})
		}
		id := gridRowID(r)
		one := row{id: id, line: line{left: []span{{theme.Strong, m.padded(m.g.fitWords(m.g.clean(r.Name()), l.name), l.name)}}}}
		for j := l.from; j < l.to; j++ {
			mark := " "
			if id == at.row && g.Columns[j].Name() == at.column {
				mark = string(m.g.supply)
			}
			c := g.Cell(i, j)
			one.left = append(one.left, span{theme.Strong, mark}, span{weightToken(c.Weight), m.padded(c.Signs(), signsWidth)})
		}
		out = append(out, one)
	}
	return out
}

func weightToken(w check.Weight) theme.Token {
	switch w {
	case check.Stop:
		return theme.Stop
	case check.Ask:
		return theme.Ask
	case check.Note:
		return theme.Note
	}
	return theme.Base
}

// groundRows are all that a cell stands on.
func (m *Model) groundRows(g *grid.Grid, i, j int) []row {
	var out []row
	for _, l := range m.g.wrap(m.g.clean(g.CellTitle(i, j)), m.w-tableMarks) {
		out = append(out, row{line: text(theme.Strong, l)})
	}
	told := g.Tell(i, j)
	if where := g.Columns[j].WhereWords(); where != "" && !g.Columns[j].Residue {
		told = append(told, grid.Told{About: "stands in", Words: where})
	}
	for _, t := range told {
		if m.w < leastFacts {
			out = append(out, m.fact(theme.Base, t.About, t.Words)...)
		} else {
			out = append(out, m.labelled(t.About, t.Words)...)
		}
	}
	return out
}

func (m *Model) moment() core.Moment { return core.At(m.at) }
