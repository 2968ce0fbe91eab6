package printed

import (
	_ "embed"
	"html/template"
	"strings"
)

//go:embed page.html
var pageText string

var pageTemplate = template.Must(template.New("page").Parse(pageText))

// HTML is the document as one file with its print styles in it; nothing is loaded from elsewhere.
func (d Document) HTML() (string, error) {
	var out strings.Builder
	if err := pageTemplate.Execute(&out, d); err != nil {
		return "", err
	}
	return out.String(), nil
}
