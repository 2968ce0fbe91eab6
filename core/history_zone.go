package core

import "iter"

// link is one spraying or spreading in the history of a zone, product by product. A link is never changed, so that
// clones of a book share it.
type link struct {
	laid   []Went
	before *link
}

// zoneHistory is what went on one zone: the links since the book was taken up from a snapshot, and what lay before
// them as the snapshot has it.
type zoneHistory struct {
	zone  string
	last  *link
	older packed
	from  string // the date on which a zone was added to a lawn that there was; empty: it came with the lawn
}

// newest goes through the history, newest first. Nothing that is shared is changed: readers run beside each other.
func (z *zoneHistory) newest() iter.Seq[[]Went] {
	return func(yield func([]Went) bool) {
		if z == nil {
			return
		}
		for l := z.last; l != nil; l = l.before {
			if !yield(l.laid) {
				return
			}
		}
		for r := z.older.read(); ; {
			laid := r.link()
			if laid == nil || !yield(laid) {
				return
			}
		}
	}
}

// since is the history without what was laid before a date.
func (z zoneHistory) since(from string) zoneHistory {
	var kept []*link // newest first
	l := z.last
	for ; l != nil && l.laid[0].Date >= from; l = l.before {
		kept = append(kept, l)
	}
	if l == nil {
		z.older = z.older.since(from)
		return z
	}
	z.last, z.older = nil, packed{}
	for i := len(kept) - 1; i >= 0; i-- {
		z.last = &link{laid: kept[i].laid, before: z.last}
	}
	return z
}
