package printed

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Text is the document as plain text.
func (d Document) Text() string {
	var w strings.Builder
	w.WriteString(OneLine(d.Title) + "\n")
	for _, l := range d.About {
		w.WriteString(OneLine(l) + "\n")
	}
	for _, p := range d.Parts {
		w.WriteString("\n")
		if p.Title != "" {
			w.WriteString(OneLine(p.Title) + "\n")
		}
		for _, l := range p.Lines {
			w.WriteString(OneLine(l) + "\n")
		}
		var pairs [][]string
		for _, q := range p.Pairs {
			pairs = append(pairs, []string{q.Name, q.Says})
		}
		w.WriteString(lined(pairs, func(int) bool { return true }))
		w.WriteString(p.Table.Text())
	}
	if len(d.Foot) > 0 {
		w.WriteString("\n")
	}
	for _, l := range d.Foot {
		w.WriteString(OneLine(l) + "\n")
	}
	return w.String()
}

// Text is the table with its columns lined up.
func (t Table) Text() string {
	if len(t.Columns) == 0 {
		return ""
	}
	head := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		head[i] = c.Head()
	}
	rows := append([][]string{head}, t.Rows...)
	if len(t.Sum) > 0 {
		rows = append(rows, t.Sum)
	}
	return lined(rows, func(i int) bool { return t.Columns[i].Left })
}

func lined(rows [][]string, left func(int) bool) string {
	var w strings.Builder
	var widths []int
	for _, r := range rows {
		for i, c := range r {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], utf8.RuneCountInString(OneLine(c)))
		}
	}
	for _, r := range rows {
		line := ""
		for i, c := range r {
			c = OneLine(c)
			pad := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(c))
			if i > 0 {
				line += "  "
			}
			if left(i) {
				line += c + pad
			} else {
				line += pad + c
			}
		}
		w.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return w.String()
}

// OneLine puts a text into one line: breaks and tabs become a blank, what cannot be seen and what turns the direction of
// writing is left out.
func OneLine(s string) string {
	return strings.Join(strings.Fields(strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r):
			return -1
		}
		return r
	}, s)), " ")
}
