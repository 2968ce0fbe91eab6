package printed

import (
	_ "embed"
	"html/template"
	"strings"
)

//go:embed page.html
var pageText string

var pageTemplate = template.Must(template.New("page").Parse(pageText))

// HTML is the document as one file with its print styles in it; nothing is loaded from elsewhere. Letter and A4 both do. A document with
// a table that is too wide for a page lies on its side, and a table that is too wide for that is written row by row.
func (d Document) HTML() (string, error) {
	type page struct {
		Document
		Runs  string // what stands at the foot of each page
		Side  bool   // the pages lie on their side
		Parts []laidOut
	}
	out := page{Document: d, Runs: d.running()}
	for i := range d.Parts {
		_, fits := layOut(&d.Parts[i], uprightWide, uprightLeast)
		out.Side = out.Side || !fits
	}
	for i := range d.Parts {
		wide, least := uprightWide, uprightLeast
		if out.Side {
			wide, least = sideWide, 0
		}
		p, _ := layOut(&d.Parts[i], wide, least)
		p.Begins = p.Apart && i > 0
		out.Parts = append(out.Parts, p)
	}
	var text strings.Builder
	if err := pageTemplate.Execute(&text, out); err != nil {
		return "", err
	}
	return strings.ToValidUTF8(text.String(), "\ufffd"), nil
}

const mostRunning = 60 // letters of the title that stand at the foot of a page

func (d Document) running() string {
	title := []rune(OneLine(d.Title))
	if len(title) > mostRunning {
		return string(title[:mostRunning-1]) + "\u2026"
	}
	return string(title)
}
