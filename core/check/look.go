package check

import (
	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// Looked is what label entry, reference and own notes say of a product on a zone, whatever stands in the tanks: the
// heaviest of it.
type Looked struct {
	Leave          label.Leave
	Weight         Weight
	Ground, Source string
	Says           string
	Do             string
}

// Look asks that of a product at a rate. The zone need not be one of a lawn: a grass alone will do. The form is that in which it
// goes down, one of label.FormSpray and label.FormGranule; empty: as the label entry says.
func Look(b *core.Book, p *core.Product, lawn string, z core.Zone, form string, rate core.Maybe[measure.Rate], at core.Moment) Looked {
	c := CircumstancesOf(b, z, at)
	c.Form = form
	l := Looked{Leave: label.May(p.Label, z.Grass, c, rate), Ground: GroundLabel, Source: labelSource(p)}
	l.Says = called(p) + " on " + label.GrassWords(z.Grass) + ": " + l.Leave.Words()
	switch l.Leave.Kind {
	case label.Unlisted:
		l.Weight = Stop
	case label.WrongState, label.Injures:
		l.Weight = Ask
	case label.Reduced:
		l.Weight = Note
	}
	return l
}
