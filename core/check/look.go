package check

import (
	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// Looked is what label entry, reference and own notes say of a product on a zone as the mix itself, whatever stands in the
// tanks.
type Looked struct {
	Leave  label.Leave
	Weight Weight // the heaviest of all that is said
	// Ruled is that of label entry and reference; Ground, Source, Says and Do are theirs too.
	Ruled          Weight
	Ground, Source string
	Says, Do       string
	Notes          []string // the operator's own, each with its weight: "stop: killed it in 2025"
}

// Look asks that of a product at a rate. The zone need not be one of a lawn: a grass alone will do. The form is that in which it
// goes down, one of label.FormSpray and label.FormGranule; empty: as the label entry says.
func Look(b *core.Book, p *core.Product, lawn string, z core.Zone, form string, rate core.Maybe[measure.Rate], at core.Moment) Looked {
	j := judge{b, at, form}
	l := Looked{Leave: label.May(p.Label, z.Grass, j.circumstances(z), rate), Ground: GroundLabel, Source: labelSource(p), Notes: OwnNotes(b, p, lawn, z)}
	l.Says = called(p) + " on " + label.GrassWords(z.Grass) + ": " + l.Leave.Words()
	if o, against := j.leave(p, z, rate); against {
		l.Ruled, l.Ground, l.Source, l.Says, l.Do = o.weight, o.ground, o.source, o.says, o.do
	}
	l.Weight = l.Ruled
	for _, o := range j.ownNotes(p, lawn, z) {
		l.Weight = max(l.Weight, o.weight)
	}
	return l
}

// GrowthAsked says why it has to be asked how a zone grows before something goes on it; empty if it has not.
func GrowthAsked(b *core.Book, z core.Zone, at core.Moment) string {
	why, _ := growthAsked(b, z, at)
	return why
}
