package past

import (
	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/tally"
)

// Laid is what one spraying or spreading put on one zone. What a record asks for besides (weather, the visit, the words of
// the label) is found in the journal by Seq and Date, and in the product's label entry by Version.
type Laid struct {
	Date     string // of the day in which it was logged
	Opened   uint64 // the entry that opened that day
	Operator string // of that day

	Seq        uint64 // the entry
	At         core.Moment
	Lawn, Zone string
	Grass      string
	Applicator string
	Dry        bool // spread by weight: no volume
	Volume     measure.Volume
	Area       measure.Area
	Treated    measure.Area // what it adds to the area treated: a zone that got liquid and dry product in one visit counts once
	Products   []Used
}

// Used is how much of a product was in it.
type Used struct {
	Product string
	Version int32 // which of its label entries was in force, from 0
	Amount  measure.Amount
	Key     int32 // the product's place in the book
}

// of tells how much of a product was in it, and whether any was.
func (l *Laid) of(product string) (Used, bool) {
	for _, u := range l.Products {
		if u.Product == product {
			return u, true
		}
	}
	return Used{}, false
}

// ofDay lists what was laid on the book's own day.
func ofDay(b *core.Book) []Laid {
	d := b.Day()
	areas := tally.Treated(d)
	out := make([]Laid, len(d.Laid))
	for i := range d.Laid {
		l := &d.Laid[i]
		out[i] = Laid{
			Date: d.Date, Opened: d.Seq, Operator: d.Operator, Seq: l.Seq, At: l.At, Lawn: l.Lawn, Zone: l.Zone, Grass: l.Grass,
			Applicator: l.Applicator, Dry: l.Dry, Volume: l.Volume, Area: l.Area, Treated: areas[i],
		}
		for j, h := range l.Holds {
			p := b.ProductByKey(h.Key)
			u := Used{Product: p.ProductName, Amount: measure.Amount{N: h.N, Kind: p.Label.Form}, Key: h.Key}
			if j < len(l.Versions) {
				u.Version = l.Versions[j]
			}
			out[i].Products = append(out[i].Products, u)
		}
	}
	return out
}

// tables are the names of a day, each once and in the order of their first use.
type tables struct {
	lawns, texts []string
	products     []Used // without amounts
}

func placeIn[T comparable](list *[]T, v T) int {
	for i := len(*list) - 1; i >= 0; i-- {
		if (*list)[i] == v {
			return i
		}
	}
	*list = append(*list, v)
	return len(*list) - 1
}

func (u Used) nameless() Used {
	u.Amount.N = 0
	return u
}

// encodeLaid writes the names before what was laid, so that a reader that looks for one lawn or product can pass on.
func encodeLaid(h head, operator string, list []Laid) []byte {
	var t tables
	body := &writer{b: make([]byte, 0, 64*len(list))}
	body.count(len(list))
	before := Laid{Seq: h.opened}
	for i := range list {
		l := &list[i]
		body.int(int64(l.Seq - before.Seq))
		body.ints(l.At.Unix-before.At.Unix, int64(l.At.Offset)-int64(before.At.Offset))
		body.count(placeIn(&t.lawns, l.Lawn))
		for _, s := range []string{l.Zone, l.Grass, l.Applicator} {
			body.count(placeIn(&t.texts, s))
		}
		body.yes(l.Dry)
		body.ints(int64(l.Volume), int64(l.Area), int64(l.Treated))
		body.count(len(l.Products))
		for _, u := range l.Products {
			body.count(placeIn(&t.products, u.nameless()))
			body.int(u.Amount.N)
		}
		before = *l
	}
	w := &writer{b: make([]byte, 0, len(body.b)+512)}
	w.head(h)
	w.text(operator)
	w.count(len(t.lawns))
	for _, s := range t.lawns {
		w.text(s)
	}
	w.count(len(t.products))
	for _, p := range t.products {
		w.text(p.Product)
		w.uint(uint64(p.Amount.Kind))
		w.uint(uint64(p.Key))
		w.uint(uint64(p.Version))
	}
	w.count(len(t.texts))
	for _, s := range t.texts {
		w.text(s)
	}
	return append(w.b, body.b...)
}

// day is the row of one day, read into lists that are used again for the next.
type day struct {
	head
	operator string
	names    tables
	laid     []Laid
	used     []Used
}

// tables reads the names.
func (r *reader) tables(h head, d *day) {
	d.head, d.operator = h, r.text()
	d.names = tables{d.names.lawns[:0], d.names.texts[:0], d.names.products[:0]}
	for n := r.count(); n > 0 && r.err == nil; n-- {
		unique(r, &d.names.lawns, r.text())
	}
	for n := r.count(); n > 0 && r.err == nil; n-- {
		u := Used{Product: r.text()}
		u.Amount.Kind, u.Key, u.Version = r.kind(), r.int32(), r.int32()
		unique(r, &d.names.products, u)
	}
}

func unique[T comparable](r *reader, list *[]T, v T) {
	if n := len(*list); placeIn(list, v) != n {
		r.fail("a name stands twice")
	}
}

// first reads a place in a list whose names stand in the order of their first use; seen is how many were used so far.
func (r *reader) first(n int, seen *int) int {
	i := r.below(n)
	switch {
	case i > *seen:
		r.fail("names are out of order")
	case i == *seen:
		*seen++
	}
	return i
}

// pieces reads what was laid; the tables are read before.
func (r *reader) pieces(d *day) error {
	for n := r.count(); n > 0 && r.err == nil; n-- {
		unique(r, &d.names.texts, r.text())
	}
	d.laid, d.used = d.laid[:0], d.used[:0]
	lawns, texts, products := 0, 0, 0
	before := Laid{Seq: d.opened}
	for n := r.count(); n > 0 && r.err == nil; n-- {
		l := Laid{Date: d.date, Opened: d.opened, Operator: d.operator, Seq: before.Seq + uint64(r.int())}
		l.At.Unix = before.At.Unix + r.int()
		offset := int64(before.At.Offset) + r.int()
		if l.At.Offset = int32(offset); int64(l.At.Offset) != offset {
			r.fail("a clock is out of range")
		}
		lawn := r.first(len(d.names.lawns), &lawns)
		zone, grass, with := r.first(len(d.names.texts), &texts), r.first(len(d.names.texts), &texts), r.first(len(d.names.texts), &texts)
		l.Dry = r.yes()
		l.Volume, l.Area, l.Treated = measure.Volume(r.int()), measure.Area(r.int()), measure.Area(r.int())
		from := len(d.used)
		for m := r.count(); m > 0 && r.err == nil; m-- {
			i, amount := r.first(len(d.names.products), &products), r.int()
			if r.err == nil {
				u := d.names.products[i]
				u.Amount.N = amount
				d.used = append(d.used, u)
			}
		}
		if r.err != nil {
			return r.err
		}
		l.Lawn, l.Zone, l.Grass, l.Applicator = d.names.lawns[lawn], d.names.texts[zone], d.names.texts[grass], d.names.texts[with]
		l.Products = d.used[from:len(d.used):len(d.used)]
		d.laid = append(d.laid, l)
		before = l
	}
	if lawns != len(d.names.lawns) || texts != len(d.names.texts) || products != len(d.names.products) {
		r.fail("a name is not used")
	}
	return r.end()
}
