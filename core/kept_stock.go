package core

// stockLine keeps what the Stocked entries of a product come to.
func (k *keptCodec) stockLine(l *stockLine) {
	k.yes(&l.known)
	k.yes(&l.counted)
	whole(k, &l.base)
	whole(k, &l.then)
	k.moment(&l.since)
	whole(k, &l.off)
	whole(k, &l.recount)
	k.yes(&l.reorder.Known)
	whole(k, &l.reorder.V)
	whole(k, &l.pack)
	k.yes(&l.paid.Known)
	whole(k, &l.paid.V)
	whole(k, &l.paidFor)
	text(k, &l.supplier)
	text(k, &l.lot)
	whole(k, &l.yearBefore)
	whole(k, &l.bought)
	whole(k, &l.boughtBefore)
}
