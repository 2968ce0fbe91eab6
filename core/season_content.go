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
	return contentIn(x.contentsOf(x.labelOf(w)), active)
}

func (x *Season) contentsOf(e *label.Entry) []content {
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
	return list
}

// contentIn adds up what stands there more than once, as amine and as ester.
func contentIn(list []content, active string) (sum Maybe[float64], has bool) {
	sum = Known(0.0)
	for _, c := range list {
		if c.active == active {
			sum, has = Maybe[float64]{V: sum.V + c.per.V, Known: sum.Known && c.per.Known}, true
		}
	}
	return sum, has
}
