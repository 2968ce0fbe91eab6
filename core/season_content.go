package core

import (
	"example.com/tintline/core/label"
)

// content is how much of an active a label entry has in each unit of the product.
type content struct {
	active string // as sums of it are kept
	per    Maybe[float64]
}

// contentOf is how much of an active something laid has in each unit of its product, and whether its label entry names it.
// Names are looked up once for each label entry: a sum asks of all that went down.
func (x *Season) contentOf(w *Went, active string) (Maybe[float64], bool) {
	e := x.labelOf(w)
	list, read := x.contents[e]
	if !read {
		list = make([]content, len(e.Actives))
		for i, a := range e.Actives {
			list[i] = content{ActiveName(a.Name), e.PerProduct(a)}
		}
		if x.contents == nil {
			x.contents = map[*label.Entry][]content{}
		}
		x.contents[e] = list
	}
	for _, c := range list {
		if c.active == active {
			return c.per, true
		}
	}
	return Maybe[float64]{}, false
}
