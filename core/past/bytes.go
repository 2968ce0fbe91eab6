package past

import (
	"encoding/binary"
	"fmt"
	"math"
	"unicode/utf8"

	"example.com/tintline/core/measure"
)

// form is the first byte of every row: it changes when the layout does, and then rows are made anew from the journal.
const form = 1

// writer writes a row.
type writer struct{ b []byte }

func (w *writer) uint(v uint64) { w.b = binary.AppendUvarint(w.b, v) }
func (w *writer) int(v int64)   { w.b = binary.AppendVarint(w.b, v) }
func (w *writer) count(n int)   { w.uint(uint64(n)) }
func (w *writer) text(s string) { w.count(len(s)); w.b = append(w.b, s...) }
func (w *writer) yes(v bool)    { w.uint(uint64(bit(v))) }
func (w *writer) ints(v ...int64) {
	for _, n := range v {
		w.int(n)
	}
}

func bit(v bool) int {
	if v {
		return 1
	}
	return 0
}

// texts keeps each text once, so that ten years of the same few names are not made anew for every row.
type texts map[string]string

// reader reads what writer wrote. The first error stops it; what follows stays zero.
type reader struct {
	b     []byte
	known texts
	err   error
}

func (r *reader) fail(what string) {
	if r.err == nil {
		r.err = fmt.Errorf("%w: %s", ErrForm, what)
	}
	r.b = nil
}

func (r *reader) uint() uint64 {
	v, n := binary.Uvarint(r.b)
	if n <= 0 || (n > 1 && r.b[n-1] == 0) {
		r.fail("a number is cut short or oversized")
		return 0
	}
	r.b = r.b[n:]
	return v
}

func (r *reader) int() int64 {
	u := r.uint()
	return int64(u>>1) ^ -int64(u&1)
}

// count reads a length and refuses one that the rest cannot hold.
func (r *reader) count() int {
	v := r.uint()
	if v > uint64(len(r.b)) {
		r.fail("a length is more than is left")
		return 0
	}
	return int(v)
}

func (r *reader) text() string {
	n := r.count()
	b := r.b[:n]
	r.b = r.b[n:]
	if s, ok := r.known[string(b)]; ok {
		return s
	}
	if !utf8.Valid(b) {
		r.fail("a text is not UTF-8")
		return ""
	}
	s := string(b)
	r.known[s] = s
	return s
}

func (r *reader) yes() bool {
	v := r.uint()
	if v > 1 {
		r.fail("neither yes nor no")
	}
	return v == 1
}

func (r *reader) kind() measure.Kind {
	v := r.uint()
	if v > uint64(measure.Dry) {
		r.fail("neither liquid nor dry")
		return 0
	}
	return measure.Kind(v)
}

func (r *reader) int32() int32 {
	v := r.uint()
	if v > math.MaxInt32 {
		r.fail("a number is too large")
		return 0
	}
	return int32(v)
}

// below reads a place in a list of n.
func (r *reader) below(n int) int {
	v := r.uint()
	if v >= uint64(n) {
		r.fail("a place is behind the end of its list")
		return 0
	}
	return int(v)
}

// end refuses what is left over.
func (r *reader) end() error {
	if r.err == nil && len(r.b) != 0 {
		r.fail("bytes are left over")
	}
	return r.err
}

// head is what both rows of a day begin with; date and opened stand in the key.
type head struct {
	date       string
	opened     uint64
	before     uint64 // the entry that opened the day before, 0: this was the first
	beforeDate string
}

func (w *writer) head(h head) {
	w.b = append(w.b, form)
	w.uint(h.before)
	w.text(h.beforeDate)
}

// head reads a key and the begin of its value.
func (r *reader) head(prefix string, key []byte) head {
	date, opened, err := keyDay(prefix, key)
	if err != nil {
		r.err = err
		r.b = nil
		return head{}
	}
	if len(r.b) == 0 || r.b[0] != form {
		r.fail("another form")
		return head{}
	}
	r.b = r.b[1:]
	h := head{opened: opened, before: r.uint(), beforeDate: r.text()}
	h.date = r.name(date)
	if h.before >= opened || (h.before == 0) != (h.beforeDate == "") || (h.before != 0 && !isDate([]byte(h.beforeDate))) {
		r.fail("the day before does not come before")
	}
	return h
}

func (r *reader) name(b []byte) string {
	if s, ok := r.known[string(b)]; ok {
		return s
	}
	s := string(b)
	r.known[s] = s
	return s
}
