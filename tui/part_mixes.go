package tui

import (
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/tui/theme"
)

// mixes say what each compartment holds: the mix, and of each product how much goes on an area. Each has one row, and
// more where there are more rows than compartments.
func (m *Model) mixes(w, rows int) []line {
	all := m.mixesSaid()
	all = all[:min(len(all), rows)]
	room := mixRoom(w)
	var out []line
	for i, n := range sharedRows(all, m.g, room, rows) {
		for j, l := range all[i].in(m.g, room, n) {
			head, t, letter := "", all[i].t, all[i].word
			if len(out) == 0 {
				head = mixLabel
			}
			if j > 0 {
				t, letter = theme.Base, " "
			}
			out = append(out, line{left: []span{
				{theme.Dim, m.padded(head, len(mixLabel))}, {t, letter}, {theme.Base, "  "}, {theme.Strong, l.strong}, {theme.Base, l.weak},
			}})
		}
	}
	return out
}

const mixLabel = " mix  "

func mixRoom(w int) int { return w - len(mixLabel) - len("a  ") }

// mixRows is how many rows it takes to say all of them.
func (m *Model) mixRows(w int) int { return wantedRows(m.mixesSaid(), m.g, mixRoom(w)) }

func (m *Model) mixesSaid() []said {
	tanks := m.book.Plumbing().Compartments
	all := make([]said, 0, len(tanks))
	for i := range tanks {
		all = append(all, m.mixSaid(&tanks[i]))
	}
	return all
}

// mixSaid is a compartment's mix as words that matter and words that explain.
func (m *Model) mixSaid(t *fluid.Compartment) said {
	s := said{t: m.letterToken(t.Letter), word: string(rune(t.Letter)), flows: true}
	mix := m.book.Mix(m.book.MixIn(string(t.Letter)))
	switch {
	case t.Liquid.Volume == 0:
		s.says = "empty"
	case mix == nil:
		s.says = "no mix was named for what it holds"
	default:
		s.do = m.g.clean(mix.MixName) + ":"
		s.says = m.g.clean(partsWords(mix.Parts))
	}
	return s
}

// partsWords are the products of a mix with their rates: "0.500 fl oz surfactant, per 1,000 sq ft".
func partsWords(parts []core.MixPart) string {
	const per = " per 1,000 sq ft"
	words := make([]string, 0, len(parts))
	for _, p := range parts {
		words = append(words, strings.TrimSuffix(p.Rate.Text(), per)+" "+p.Product)
	}
	return strings.Join(words, "; ") + "," + per
}
