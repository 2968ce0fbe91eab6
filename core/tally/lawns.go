package tally

import (
	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// Lawn is what one lawn got.
type Lawn struct {
	Lawn   string
	Volume measure.Volume
	Mass   measure.Mass
	Area   measure.Area
	Zones  []Zone
}

// Zone is what one zone with one grass got.
type Zone struct {
	Zone, Grass string
	Volume      measure.Volume
	Mass        measure.Mass // of what was spread
	Area        measure.Area // treated: once in a visit, with liquid, dry product or both
	Products    []Product
}

func (t *Tally) takeLawn(b *core.Book, l *core.Laid, treated measure.Area) {
	t.lawn(l.Lawn).Take(Zone{l.Zone, l.Grass, l.Volume, dryMass(l), treated, productsOf(b, l)})
}

func (t *Tally) lawn(name string) *Lawn {
	for i := len(t.Lawns) - 1; i >= 0; i-- { // the one laid on last is asked for again most often
		if t.Lawns[i].Lawn == name {
			return &t.Lawns[i]
		}
	}
	t.Lawns = append(t.Lawns, Lawn{Lawn: name})
	return &t.Lawns[len(t.Lawns)-1]
}

// Take adds what a zone got to the lawn. A zone that was sown to another grass is a row of its own.
func (l *Lawn) Take(z Zone) {
	l.Volume += z.Volume
	l.Mass += z.Mass
	l.Area += z.Area
	for i := range l.Zones {
		if at := &l.Zones[i]; at.Zone == z.Zone && at.Grass == z.Grass {
			at.Volume += z.Volume
			at.Mass += z.Mass
			at.Area += z.Area
			at.Products = addProducts(at.Products, z.Products)
			return
		}
	}
	z.Products = append([]Product(nil), z.Products...)
	l.Zones = append(l.Zones, z)
}

func (t *Tally) addLawns(day []Lawn) {
	for _, d := range day {
		l := t.lawn(d.Lawn)
		for _, z := range d.Zones {
			l.Take(z)
		}
	}
}
