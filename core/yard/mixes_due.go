package yard

import (
	"example.com/tintline/core"
)

// MixesDue lists the mixes for once a year that a zone has not had in the year of a date, as the plan of a day judges it, of those whose
// products beyond their base list the grass. Where the book does not go back far enough none is said to be due.
func MixesDue(b *core.Book, date, lawn string, z core.Zone) []string {
	g := &gathered{b: b, date: date}
	var out []string
	mixes := b.Mixes()
	for i := range mixes {
		m := &mixes[i]
		if m.For != core.OnceAYear || (z.Mix != "" && m.Base != z.Mix) || !g.listedOn(m, z.Grass) {
			continue
		}
		if g.due(m, lawn, z) == dueNow {
			out = append(out, m.MixName)
		}
	}
	return out
}

// listedOn tells whether the label entry of each product of a mix lists a grass.
func (g *gathered) listedOn(m *core.Mix, grass string) bool {
	for _, part := range m.Parts {
		if p := g.b.Product(part.Product); p == nil || !p.Label.Lists(grass) {
			return false
		}
	}
	return true
}
