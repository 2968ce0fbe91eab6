package printed

import (
	_ "embed"
	"fmt"
	"html/template"
	"strings"
	"unicode"
)

//go:embed page.html
var pageText string

var pageTemplate = template.Must(template.New("page").Parse(pageText))

// sheet is a document as it goes on its pages.
type sheet struct {
	Document
	Runs   template.CSS // what stands at the foot of each page
	Side   bool         // the pages lie on their side
	Points int          // the size of the letters of a document of one page; 0 of others
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

// running is the title as a text of a style sheet: every sign but letters and figures by its number, so that none ends it.
func (d Document) running() template.CSS {
	title := []rune(OneLine(strings.ToValidUTF8(d.Title, "\ufffd")))
	if len(title) > mostRunning {
		title = append(title[:mostRunning-1:mostRunning-1], '\u2026')
	}
	var out strings.Builder
	for _, r := range title {
		if r < unicode.MaxASCII && (unicode.IsLetter(r) || unicode.IsDigit(r)) {
			out.WriteRune(r)
		} else {
			fmt.Fprintf(&out, "\\%06x", r)
		}
	}
	return template.CSS(`"` + out.String() + `"`)
}
