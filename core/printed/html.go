package printed

import (
	_ "embed"
	"html/template"
	"strings"
)

//go:embed page.html
var pageText string

var pageTemplate = template.Must(template.New("page").Parse(pageText))

// sheet is a document as it goes on its pages.
type sheet struct {
	Document
	Runs   string // what stands at the foot of each page
	Side   bool   // the pages lie on their side
	Points int    // the size of the letters of a document of one page; 0 of others
	Groups []group
}

// group is parts that stand below one another, or flow through columns.
type group struct {
	Columns int
	Parts   []laidOut
}

// HTML is the document as one file with its print styles in it; nothing is loaded from elsewhere. Letter and A4 both do. A document with
// a table that is too wide for a page lies on its side, and a table that is too wide for that is written row by row.
func (d Document) HTML() (string, error) {
	out := sheet{Document: d, Runs: d.running()}
	if !d.OnePage || !out.oneUpright() {
		out.several()
	}
	var text strings.Builder
	if err := pageTemplate.Execute(&text, out); err != nil {
		return "", err
	}
	return strings.ToValidUTF8(text.String(), "\ufffd"), nil
}

// several lays the parts out over as many pages as they need.
func (s *sheet) several() {
	parts := s.Document.Parts
	for i := range parts {
		_, fits := layOut(&parts[i], uprightWide, sizes[:2])
		s.Side = s.Side || !fits
	}
	wide, try := uprightWide, sizes[:2]
	if s.Side {
		wide, try = sideWide, sizes
	}
	g := group{Columns: 1}
	for i := range parts {
		p, _ := layOut(&parts[i], wide, try)
		p.Begins = p.Apart && i > 0
		g.Parts = append(g.Parts, p)
	}
	s.Groups = []group{g}
}

const mostRunning = 60 // letters of the title that stand at the foot of a page

func (d Document) running() string {
	title := []rune(OneLine(d.Title))
	if len(title) > mostRunning {
		return string(title[:mostRunning-1]) + "\u2026"
	}
	return string(title)
}
