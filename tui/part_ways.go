package tui

import (
	"fmt"

	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// wayRows are the ways that the mixed tail can go, with what each puts into both compartments and what is wasted.
func (m *Model) wayRows(c *check.Changeover) []row {
	if len(c.Ways) == 0 {
		return nil
	}
	out := m.wayTable(c)
	if m.w < tableWide {
		out = m.wayLines(c)
	}
	words := "Shares: the worst of what is not the compartment's own, of the lowest label rate; own: of its strength."
	if w := c.Way(); w != nil && w.Worst != "" {
		words += fmt.Sprintf(" By the way marked: %s of %c", w.Worst, w.In)
		if w.On != "" {
			words += " at " + w.On
		}
		words += ", " + loadWords(w.Load) + " the limit from which it is asked about."
	}
	out = append(out, m.wrapped(theme.Dim, words)...)
	if o := c.Order; o != nil {
		words := fmt.Sprintf("Turned together, the return brings %s gal of %c into %c; left on %c for %s s it brings none, and %c gets %s gal of %c.",
			o.Together.Text(), c.Into, c.To, c.Into, wholeWords(o.HeldS), c.Into, o.Held.Text(), c.To)
		out = append(out, m.wrapped(theme.Base, words)...)
	}
	return out
}

// tableWide is how wide a screen has to be for the ways as a table.
const tableWide = 80

func (m *Model) wayTable(c *check.Changeover) []row {
	const name, part, share = 27, 9, 9
	out := []row{heading(
		m.cell(theme.Dim, "  ways of the tail", name),
		m.cellRight(theme.Dim, fmt.Sprintf("%c into %c", c.To, c.Into), part), m.cellRight(theme.Dim, "share", share),
		m.cellRight(theme.Dim, fmt.Sprintf("%c into %c", c.Into, c.To), part), m.cellRight(theme.Dim, "share", share),
		m.cellRight(theme.Dim, "wasted", part),
	)}
	for _, w := range c.Ways {
		mark, t := m.wayMark(w)
		l := line{left: []span{m.cell(t, mark+m.wayName(c, w), name)}}
		if w.Cannot != "" {
			l.left = append(l.left, span{theme.Dim, m.g.clean("cannot: " + w.Cannot)})
			out = append(out, row{line: l})
			continue
		}
		l.left = append(
			l.left,
			m.cellRight(t, w.NewOld.Text()+" gal", part), m.cellRight(t, labelShare(w.Old), share),
			m.cellRight(t, w.OldNew.Text()+" gal", part), m.cellRight(t, labelShare(w.New), share),
			m.cellRight(t, w.Wasted.Text()+" gal", part),
		)
		out = append(out, row{line: l})
	}
	return out
}

// wayLines are the same where there is no room for a table.
func (m *Model) wayLines(c *check.Changeover) []row {
	out := []row{heading(span{s: "ways of the tail"})}
	for _, w := range c.Ways {
		mark, _ := m.wayMark(w)
		words := m.wayName(c, w) + ": "
		if w.Cannot != "" {
			words += "cannot: " + w.Cannot
		} else {
			words += fmt.Sprintf("%s gal of %c into %c %s, %s gal of %c into %c %s, %s gal wasted", w.NewOld.Text(), c.To, c.Into, labelShare(w.Old),
				w.OldNew.Text(), c.Into, c.To, labelShare(w.New), w.Wasted.Text())
		}
		out = append(out, m.hanging(mark, words)...)
	}
	return out
}

func (m *Model) wayMark(w check.Way) (string, theme.Token) {
	if w.Chosen {
		return string(m.g.supply) + " ", theme.Strong
	}
	return "  ", theme.Base
}

// wayName says where the mixed tail goes.
func (m *Model) wayName(c *check.Changeover, w check.Way) string {
	switch w.Name {
	case check.WayNew:
		return fmt.Sprintf("tail into %c", c.To)
	case check.WayOld:
		return fmt.Sprintf("all into %c", c.Into)
	case check.WayPail:
		return "tail into a pail"
	case check.WaySwept:
		return fmt.Sprintf("bypass first, %s s", wholeWords(w.RunS))
	}
	return w.Name
}

// loadWords say a residue against its limit: below the limit in per cent of it, above as a multiple.
func loadWords(load float64) string {
	if load < 1 {
		return wholeWords(load*100) + "% of"
	}
	return measure.Multiple(load) + " times"
}

// labelShare is a share of the label rate, of a product of the compartment's own mix one of the strength that it had; empty
// where nothing would be laid.
func labelShare(r check.Residue) string {
	if r.Product == "" {
		return ""
	}
	percent := r.Share * 100
	switch {
	case r.Own:
		return fmt.Sprintf("%.3g%% own", percent)
	case percent >= 10:
		return wholeWords(percent) + "%"
	}
	return fmt.Sprintf("%.2g%%", percent)
}

// placeRows say what the push-back does to the compartments that take it.
func (m *Model) placeRows() []row {
	var out []row
	for _, a := range m.turn.look.Places {
		words := fmt.Sprintf("%c %s: gets %s gal, then holds %s gal", a.Letter, a.Mix, a.Gets.Text(), a.After.Text())
		for _, f := range a.Foreign {
			from := "water"
			if f.From != 0 {
				from = "of " + string(rune(f.From))
			}
			words += fmt.Sprintf(", %s gal %s in it", f.Volume.Text(), from)
		}
		if a.Lays.Product != "" {
			words += ": " + a.Lays.Product + " at " + labelShare(a.Lays)
			if !a.Lays.Own {
				words += " of its label rate"
			}
			if a.Lays.On != "" {
				words += " on " + a.Lays.On
			}
		}
		if a.Sum > 0 {
			words += "; " + a.Sum.Text() + " gal of others by then, since it was last empty or rinsed"
		}
		if len(a.Loses) > 0 {
			words += "; no longer for " + joined(a.Loses)
		}
		out = append(out, m.wrapped(theme.Base, words+".")...)
	}
	return out
}
