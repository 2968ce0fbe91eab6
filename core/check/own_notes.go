package check

import (
	"strings"

	"example.com/tintline/core"
)

// OwnNotes lists what the operator's own stricter notes say of a product on a zone, each with its weight: "stop: killed
// it here in 2025".
func OwnNotes(b *core.Book, p *core.Product, lawn string, z core.Zone) []string {
	var out []string
	for _, n := range b.Cautions() {
		if ownNoteOn(&n, p, lawn, z) {
			out = append(out, n.Weight+": "+n.Says)
		}
	}
	return out
}

func ownNoteOn(n *core.Cautioned, p *core.Product, lawn string, z core.Zone) bool {
	fits := func(want, is string) bool { return want == "" || want == is }
	if !fits(n.Product, p.ProductName) || !fits(n.Grass, z.Grass) || !fits(n.Lawn, lawn) || !fits(n.Zone, z.Name) || n.Weight == "none" {
		return false
	}
	if n.Active == "" {
		return true
	}
	for _, a := range p.Label.Actives {
		if strings.EqualFold(core.ActiveName(a.Name), core.ActiveName(n.Active)) {
			return true
		}
	}
	return false
}
