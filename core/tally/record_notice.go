package tally

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
)

// takeNotices takes the signs that were put up at the lawn on the day, and each contact about its treatment, attempts that failed
// too. What is entered after the day has ended is not in its rows.
func (r *Record) takeNotices(b *core.Book) {
	var signs, given, told []string
	for _, g := range b.SignsOf(r.Lawn, r.Date) {
		r.Signs = core.Known(r.Signs.V + float64(g.Count))
		s := fmt.Sprintf("%d at %s", g.Count, g.Up.Clock())
		if !g.Due.Zero() {
			s += ", to stay until " + g.Due.Date() + " " + g.Due.Clock()
		}
		if !g.Down.Zero() {
			s += ", taken down " + g.Down.Date() + " " + g.Down.Clock()
		}
		signs = append(signs, s)
	}
	for _, c := range b.ContactsOf(r.Lawn, r.Date, "") {
		s := core.ContactWords(c.How) + " " + c.At.Date() + " " + c.At.Clock()
		if !c.Reached() {
			s += ", no answer"
		}
		if len(c.Given) > 0 {
			s += ": " + core.GivenWords(c.Given)
		}
		if c.Whom == core.ToldNeighbour {
			told = append(told, c.Person+" "+s)
		} else {
			given = append(given, s)
		}
	}
	r.SignsAt, r.Notice, r.Neighbours = strings.Join(signs, "; "), strings.Join(given, "; "), strings.Join(told, "; ")
}
