package core

import (
	"encoding/binary"
	"fmt"
	"math"
	"unicode/utf8"

	"example.com/tintline/core/measure"
)

// binaryReader reads what binaryWriter wrote, and nothing else: each fact has one stored form, so what is
// read gives the same bytes again. The first error stops it; what follows stays zero.
type binaryReader struct {
	b     []byte
	whole string // all that b is the end of: texts are cut from it; empty: each is copied
	next  uint64 // number of the field that comes next
	fresh bool   // next was read
	depth int
	err   error
}

// maxDepth bounds facts within facts: only a strike holds one, and that one is no strike.
const maxDepth = 3

func (r *binaryReader) fail(format string, args ...any) {
	if r.err == nil {
		r.err = fmt.Errorf("%w: %s", ErrCode, fmt.Sprintf(format, args...))
	}
}

func (r *binaryReader) uint() uint64 {
	if r.err != nil {
		return 0
	}
	v, n := binary.Uvarint(r.b)
	if n <= 0 || (n > 1 && r.b[n-1] == 0) {
		r.fail("a number is cut short or oversized")
		return 0
	}
	r.b = r.b[n:]
	return v
}

func (r *binaryReader) int() int64 {
	if r.err != nil {
		return 0
	}
	v, n := binary.Varint(r.b)
	if n <= 0 || (n > 1 && r.b[n-1] == 0) {
		r.fail("a number is cut short or oversized")
		return 0
	}
	r.b = r.b[n:]
	return v
}

// count reads a length and refuses one that the rest cannot hold.
func (r *binaryReader) count() int {
	v := r.uint()
	if v > uint64(len(r.b)) {
		r.fail("a length of %d is more than is left", v)
		return 0
	}
	return int(v)
}

func (r *binaryReader) str() string {
	n := r.count()
	var s string
	if at := len(r.whole) - len(r.b); r.whole != "" {
		s = r.whole[at : at+n]
	} else {
		s = string(r.b[:n])
	}
	if !utf8.ValidString(s) {
		r.fail("a text is not UTF-8")
	}
	r.b = r.b[n:]
	return s
}

func (r *binaryReader) bits() float64 {
	if r.err != nil || len(r.b) < 8 {
		r.fail("a figure is cut short")
		return 0
	}
	f := math.Float64frombits(binary.LittleEndian.Uint64(r.b))
	r.b = r.b[8:]
	if math.IsNaN(f) || math.IsInf(f, 0) {
		r.fail("a figure is not a number")
		return 0
	}
	return f
}

// at tells whether field n comes next.
func (r *binaryReader) at(n int) bool {
	if r.err != nil {
		return false
	}
	if !r.fresh {
		r.next, r.fresh = r.uint(), true
	}
	if r.next != uint64(n) {
		return false
	}
	r.fresh = false
	return true
}

// end reads the 0 that ends a list of fields.
func (r *binaryReader) end() {
	if !r.at(0) && r.err == nil {
		r.err = fmt.Errorf("%w: field %d is not known", ErrNewer, r.next)
	}
}

// empty refuses a field that is stored though it is zero: the writer leaves it out.
func (r *binaryReader) empty(yes bool) {
	if yes && r.err == nil {
		r.fail("a field is there that should be left out")
	}
}

func (r *binaryReader) text(n int, _ string, p *string) {
	if r.at(n) {
		*p = r.str()
		r.empty(*p == "")
	}
}

func (r *binaryReader) scalar(n int, key string, p *string) { r.text(n, key, p) }

func (r *binaryReader) texts(n int, _ string, p *[]string) {
	if !r.at(n) {
		return
	}
	for i := r.count(); i > 0 && r.err == nil; i-- {
		*p = append(*p, r.str())
	}
	r.empty(len(*p) == 0)
}

func (r *binaryReader) letter(n int, _ string, p *byte) {
	var s []byte
	r.letters(n, "", &s)
	switch {
	case len(s) == 1:
		*p = s[0]
	case len(s) > 1:
		r.fail("%q is not one letter", s)
	}
}

func (r *binaryReader) letters(n int, _ string, p *[]byte) {
	if !r.at(n) {
		return
	}
	*p = []byte(r.str())
	r.empty(len(*p) == 0)
	for _, c := range *p {
		if c == 0 || c >= utf8.RuneSelf {
			r.fail("%q are not letters", *p)
		}
	}
}

func (r *binaryReader) form(n int, _ string, p *measure.Kind) {
	if !r.at(n) {
		r.fail("a product has no form")
		return
	}
	k, ok := formOf(r.str())
	if !ok {
		r.fail("a form is neither liquid nor dry")
	}
	*p = k
}

func (r *binaryReader) words(n int, _ string, p *map[string]string) {
	if !r.at(n) {
		return
	}
	m, before := map[string]string{}, ""
	for i := r.count(); i > 0 && r.err == nil; i-- {
		k := r.str()
		if len(m) > 0 && k <= before {
			r.fail("keys are out of order")
		}
		m[k], before = r.str(), k
	}
	r.empty(len(m) == 0)
	*p = m
}

func (r *binaryReader) integer(n int, _ string, p *int64) {
	if r.at(n) {
		*p = r.int()
		r.empty(*p == 0)
	}
}

func (r *binaryReader) integers(n int, _ string, p *[]int64) {
	if !r.at(n) {
		return
	}
	for i := r.count(); i > 0 && r.err == nil; i-- {
		*p = append(*p, r.int())
	}
	r.empty(len(*p) == 0)
}

func (r *binaryReader) real(n int, _ string, p *float64, known *bool) {
	if r.at(n) {
		*p = r.bits()
		r.empty(*p == 0 && known == nil)
		set(known)
	}
}

func set(known *bool) {
	if known != nil {
		*known = true
	}
}

func (r *binaryReader) quantity(n int, _, _ string, p *int64, known *bool) {
	if r.at(n) {
		*p = r.int()
		r.empty(*p == 0 && known == nil)
		set(known)
	}
}

func (r *binaryReader) flow(n int, key string, p *float64, known *bool) { r.real(n, key, p, known) }

func (r *binaryReader) amount(n int, _ string, p *measure.Amount) {
	if r.at(n) {
		p.Kind = r.kind()
		p.N = r.int()
		r.empty(*p == measure.Amount{})
	}
}

func (r *binaryReader) kind() measure.Kind {
	k := r.uint()
	if k > uint64(measure.Dry) {
		r.fail("%d is neither liquid nor dry", k)
		return measure.Liquid
	}
	return measure.Kind(k)
}

func (r *binaryReader) rate(n int, _ string, p *measure.Rate, known *bool) {
	if r.at(n) {
		p.Kind = r.kind()
		p.V = r.bits()
		r.empty(*p == measure.Rate{} && known == nil)
		set(known)
	}
}

func (r *binaryReader) fact(n int, _ string, p *Fact) {
	if r.at(n) {
		*p = r.readFact()
	}
}

func (r *binaryReader) readFact() Fact {
	k := r.uint()
	if r.err != nil {
		return nil
	}
	if k > math.MaxUint16 || newFact[Kind(k)] == nil {
		r.err = fmt.Errorf("%w: fact %d is not known", ErrNewer, k)
		return nil
	}
	if r.depth++; r.depth > maxDepth {
		r.fail("facts within facts")
		return nil
	}
	f := newFact[Kind(k)]()
	f.fields(walker{r})
	r.end()
	r.depth--
	return f
}

// firstRoom is how many elements of a list get room before one of them was read: a length that is not true costs no memory.
const firstRoom = 256

func (r *binaryReader) list(n int, _ string, _ int, grow func(int), each func(walker, int)) {
	if !r.at(n) {
		return
	}
	count := r.count()
	r.empty(count == 0)
	if r.err != nil {
		return
	}
	room := 0
	for i := 0; i < count && r.err == nil; i++ {
		if i == room {
			room = min(count, max(4*room, firstRoom))
			grow(room)
		}
		each(walker{r}, i)
		r.end()
	}
}
