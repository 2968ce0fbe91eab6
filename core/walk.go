package core

import "example.com/tintline/core/measure"

// codec is one way in or out of an entry: binary or JSON, writing or reading. A nil known means that zero
// and left out are the same. A codec that writes changes nothing, so that a fact can be written by one while
// another reads it.
type codec interface {
	text(n int, key string, p *string)
	texts(n int, key string, p *[]string)
	scalar(n int, key string, p *string)
	letter(n int, key string, p *byte)
	letters(n int, key string, p *[]byte)
	form(n int, key string, p *measure.Kind)
	words(n int, key string, p *map[string]string)
	integer(n int, key string, p *int64)
	integers(n int, key string, p *[]int64)
	real(n int, key string, p *float64, known *bool)
	quantity(n int, stem, kind string, p *int64, known *bool)
	flow(n int, stem string, p *float64, known *bool)
	amount(n int, stem string, p *measure.Amount)
	rate(n int, stem string, p *measure.Rate, known *bool)
	fact(n int, key string, p *Fact)
	list(n int, key string, count int, grow func(int), each func(w walker, i int))
}

// walker gives a fact's list of fields its words; the codec below does the work.
type walker struct{ codec }

// later begins the keys that came after the fact, or the list, was first written. A line of the journal has the keys before
// it always and those after it only where they say something, so that a line that says nothing new is the line that an
// older version wrote, and one that it reads.
func (w walker) later() {
	if j, ok := w.codec.(*jsonWriter); ok {
		j.later = true
	}
}

func list[T any](w walker, n int, key string, p *[]T, each func(w walker, one *T)) {
	w.codec.list(n, key, len(*p), func(count int) { *p = append(make([]T, 0, count), *p...)[:count] }, func(w walker, i int) { each(w, &(*p)[i]) })
}

func formWords(k measure.Kind) string {
	switch k {
	case measure.Liquid:
		return "liquid"
	case measure.Dry:
		return "dry"
	}
	return "?"
}

func formOf(s string) (k measure.Kind, ok bool) {
	switch s {
	case "liquid":
		return measure.Liquid, true
	case "dry":
		return measure.Dry, true
	}
	return 0, false
}

func (w walker) volume(n int, stem string, p *measure.Volume) {
	w.quantity(n, stem, "volume", (*int64)(p), nil)
}

func (w walker) mass(n int, stem string, p *measure.Mass) {
	w.quantity(n, stem, "mass", (*int64)(p), nil)
}

func (w walker) area(n int, stem string, p *measure.Area) {
	w.quantity(n, stem, "area", (*int64)(p), nil)
}

func (w walker) number(n int, key string, p *float64) { w.real(n, key, p, nil) }

func (w walker) maybeNumber(n int, key string, p *Maybe[float64]) { w.real(n, key, &p.V, &p.Known) }

func (w walker) maybeVolume(n int, stem string, p *Maybe[measure.Volume]) {
	w.quantity(n, stem, "volume", (*int64)(&p.V), &p.Known)
}

func (w walker) maybeMass(n int, stem string, p *Maybe[measure.Mass]) {
	w.quantity(n, stem, "mass", (*int64)(&p.V), &p.Known)
}

func (w walker) maybeArea(n int, stem string, p *Maybe[measure.Area]) {
	w.quantity(n, stem, "area", (*int64)(&p.V), &p.Known)
}

func (w walker) maybeLength(n int, stem string, p *Maybe[measure.Length]) {
	w.quantity(n, stem, "length", (*int64)(&p.V), &p.Known)
}

func (w walker) maybeSpeed(n int, stem string, p *Maybe[measure.Speed]) {
	w.quantity(n, stem, "speed", (*int64)(&p.V), &p.Known)
}

func (w walker) maybeMoney(n int, stem string, p *Maybe[measure.Money]) {
	w.quantity(n, stem, "money", (*int64)(&p.V), &p.Known)
}

func (w walker) maybeFlow(n int, stem string, p *Maybe[measure.Flow]) {
	w.flow(n, stem, (*float64)(&p.V), &p.Known)
}

func (w walker) maybeRate(n int, stem string, p *Maybe[measure.Rate]) {
	w.codec.rate(n, stem, &p.V, &p.Known)
}

func (w walker) rate(n int, stem string, p *measure.Rate) { w.codec.rate(n, stem, p, nil) }

// delivery is a rate of mix, which is always liquid.
func (w walker) delivery(n int, stem string, p *measure.Rate) { w.codec.rate(n, stem, p, nil) }
