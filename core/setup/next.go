package setup

import "example.com/tintline/core"

// Next names the form that a book needs before it can take a day, or its first one; empty if none.
func Next(b *core.Book) string {
	switch {
	case b.Rig() == nil:
		return Rig
	case len(b.Products()) == 0:
		return Product
	case len(b.Mixes()) == 0:
		return Mix
	case len(b.Lawns()) == 0:
		return Lawn
	case b.Day().Date == "":
		return Day
	}
	return ""
}

// Names lists the forms, in the order in which a book can take them, then those of the parts of a rig.
var Names = []string{Rig, Product, Label, Mix, Recipe, Lawn, Zone, Day, ZoneMore, Caution, Pump, Compartment, Hose, Applicator, Tip}

// For is a form for a book; false where there is none of that name, or the book has not what it needs. about
// names what it is about: the product of a label, the base of a mix, the mix of a recipe, the lawn of a zone; else it is
// empty.
func For(name, about string, b *core.Book) (Form, bool) {
	switch name {
	case Rig:
		return rigForm(), true
	case Product:
		return productForm(b), true
	case Label:
		if b.Product(about) == nil {
			return Form{}, false
		}
		return labelForm(b, about), true
	case Recipe:
		if b.Mix(about) == nil {
			return Form{}, false
		}
		return recipeForm(b, about), true
	case Mix:
		return mixForm(b, about), len(b.Products()) > 0
	case Lawn:
		return lawnForm(b), true
	case Zone:
		return zoneForm(b, about), b.Lawn(about) != nil
	case ZoneMore:
		return zoneMoreForm(b, about)
	case Caution:
		return cautionForm(b, about)
	case Day:
		if b.Rig() != nil && len(b.Lawns()) > 0 && b.Day().Date == "" {
			return dayForm(b), true
		}
	}
	return partForm(name, about, b)
}
