package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/tui/theme"
)

// standingRows are the compartments: what of their liquid is not their own, and when it was last moved about.
func (m *Model) standingRows() []row {
	out := []row{sectionRow("compartments")}
	moved := check.Agitated(m.book, core.At(m.at))
	for _, c := range m.book.Rig().Compartments {
		l := string(rune(c.Letter))
		head := span{theme.Compartment(c.Letter, c.Colour), l + "  " + m.book.Plumbing().Compartment(c.Letter).Liquid.Volume.Text() + " gal"}
		words := ""
		for _, s := range m.book.Strangers(c.Letter) {
			of := check.StretchOf{Letter: s.From, Mix: s.Mix}
			words += fmt.Sprintf("%s gal of %s in it, %s in all since it was empty or rinsed; ", s.Now.Text(), fromWords(&of), s.In.Text())
		}
		if words == "" {
			words = "nothing but its own; "
		}
		t := theme.Base
		for i := range moved {
			if a := &moved[i]; a.Letter == c.Letter {
				words += m.agitatedWords(a)
				if a.Unmoved {
					t = theme.Note
				}
			}
		}
		out = append(out, m.behind(l, head, pipeLabel, t, words)...)
	}
	return out
}

// agitatedWords say how a compartment is agitated, when that was, and what settles in it.
func (m *Model) agitatedWords(a *check.Agitation) string {
	words := map[string]string{core.Paddle: "paddle", core.Jet: "jet", core.NotAgitated: "no agitation"}[a.How]
	if words == "" {
		words = "agitation not entered"
	}
	if a.At.Known {
		words += ", moved " + ageWords(a.At.V, m.at)
	}
	if len(a.Settles) > 0 {
		words += ": " + strings.Join(a.Settles, " and ")
		if len(a.Settles) == 1 {
			words += " settles"
		} else {
			words += " settle"
		}
	}
	return words
}

// driedRows are what may have dried on in strainers and dead ends. What little of injures stands first, with what is missing
// until it counts as cleaned away.
func (m *Model) driedRows() []row {
	out := []row{sectionRow("dried on in strainers and dead ends: in no account")}
	id, name := strainers, "strainers"
	add := func(t theme.Token, words string) {
		out = append(out, m.behind(id, span{theme.Strong, name}, pipeLabel, t, words)...)
		id, name = "", ""
	}
	told := map[string]bool{}
	for _, d := range check.StillDried(m.book, core.At(m.at)) {
		told[d.Product] = true
		add(theme.Note, d.Product+": "+d.Missing)
	}
	for _, d := range m.book.Dried() {
		if told[d.Product] {
			continue
		}
		words := d.Product + ", since " + d.Since.Clock() + ": not opened"
		if d.Opened {
			words = d.Product + ": opened"
		}
		for _, r := range d.Rinses {
			words += fmt.Sprintf(", %c rinsed %d of %d", r.Letter, r.Done, core.TripleRinse)
		}
		add(theme.Base, words)
	}
	if id != "" {
		add(theme.Base, "nothing went through since they were opened and all was rinsed")
	}
	return out
}
