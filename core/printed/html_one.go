package printed

import "math"

// What a document of one page may take, in millimetres: the shorter of letter and A4 within its margins, with some room to spare, and
// what stands around the rows.
const (
	pageHigh   = 245.0
	headHigh   = 14.0 // the title, and what is below it a line
	titleHigh  = 6.0  // of a part, with what is above it
	columnsGap = 6.0
	rowEdges   = 0.6
	lineHigh   = 1.2  // in letters
	wordWide   = 0.58 // a letter of words and figures mixed, of its height
)

// oneSizes are the letters in which a document of one page is tried: tables below one another, then the narrow ones side by side.
var oneSizes = []struct{ points, columns int }{{10, 1}, {9, 1}, {10, 2}, {9, 2}, {8, 1}, {8, 2}, {7, 1}, {7, 2}, {7, 3}, {6, 2}, {6, 3}}

// oneUpright lays the parts out on one page; where they need more, in the smallest letters on as few as they need. It is false where a table
// is too wide.
func (s *sheet) oneUpright() bool {
	for _, try := range oneSizes {
		groups, high, fits := s.grouped(try.points, try.columns)
		if !fits {
			continue
		}
		s.Points, s.Groups = try.points, groups
		if high <= pageHigh {
			break
		}
	}
	return len(s.Groups) > 0
}

// grouped are the parts with their height; those that are narrow enough flow through the columns.
func (s *sheet) grouped(points, columns int) (groups []group, high float64, fits bool) {
	high = headHigh + float64(float64(len(s.About)+len(s.Foot))*titleHigh)
	wide := uprightWide/float64(columns) - columnsGap
	for i := range s.Document.Parts {
		p := &s.Document.Parts[i]
		in, across := columns, wide
		out, fits := layOut(p, wide, []int{points})
		if columns == 1 || !fits {
			in, across = 1, uprightWide
			if out, fits = layOut(p, uprightWide, []int{points}); !fits {
				return nil, 0, false
			}
		}
		if n := len(groups); n == 0 || groups[n-1].Columns != in {
			groups = append(groups, group{Columns: in})
		}
		g := &groups[len(groups)-1]
		g.Parts = append(g.Parts, out)
		high += p.high(points, across) / float64(in)
	}
	return groups, high, true
}

// high is about how high a part is, in millimetres.
func (p *Part) high(points int, wide float64) float64 {
	letter := float64(points) * pointHigh
	lines := len(p.Lines) + len(p.Pairs)
	rows := lines
	if t := &p.Table; len(t.Columns) > 0 {
		lines, rows = lines+2, rows+1 // the head
		widths := t.widths()
		room, words := (wide-float64(cellEdges*float64(len(widths))))/float64(letter*wordWide), 0
		for i, n := range widths {
			if t.figures(i) {
				room -= float64(n)
			} else {
				words += n
			}
		}
		part := max(0, min(1, room/float64(max(1, words))))
		for _, r := range append(t.Rows[:len(t.Rows):len(t.Rows)], t.Sum) {
			most := 1
			for i, c := range r {
				if share := float64(widths[i]) * part; share > 0 && !t.figures(i) {
					most = max(most, int(math.Ceil(float64(places(c))/share)))
				}
			}
			lines, rows = lines+most, rows+1
		}
	}
	return titleHigh + float64(float64(lines)*letter*lineHigh) + float64(float64(rows)*rowEdges)
}

// widths are the letters of the widest cell of each column.
func (t *Table) widths() []int {
	out := make([]int, len(t.Columns))
	for i, c := range t.Columns {
		out[i] = longest(c.head())
		for _, r := range append(t.Rows[:len(t.Rows):len(t.Rows)], t.Sum) {
			if len(r) > 0 {
				out[i] = max(out[i], places(r[i]))
			}
		}
	}
	return out
}
