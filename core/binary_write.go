package core

import (
	"encoding/binary"
	"math"
	"sort"

	"example.com/tintline/core/measure"
)

// binaryWriter writes fields as number and value; a field that is zero or unknown is left out, 0 ends them.
type binaryWriter struct{ b []byte }

func (w *binaryWriter) tag(n int)    { w.b = binary.AppendUvarint(w.b, uint64(n)) }
func (w *binaryWriter) int(v int64)  { w.b = binary.AppendVarint(w.b, v) }
func (w *binaryWriter) count(v int)  { w.b = binary.AppendUvarint(w.b, uint64(v)) }
func (w *binaryWriter) str(s string) { w.count(len(s)); w.b = append(w.b, s...) }
func (w *binaryWriter) bits(f float64) {
	w.b = binary.LittleEndian.AppendUint64(w.b, math.Float64bits(f))
}

func (w *binaryWriter) text(n int, _ string, p *string) {
	if *p != "" {
		w.tag(n)
		w.str(*p)
	}
}

func (w *binaryWriter) scalar(n int, key string, p *string) { w.text(n, key, p) }

func (w *binaryWriter) texts(n int, _ string, p *[]string) {
	if len(*p) > 0 {
		w.tag(n)
		w.count(len(*p))
		for _, s := range *p {
			w.str(s)
		}
	}
}

func (w *binaryWriter) letter(n int, key string, p *byte) {
	if *p != 0 {
		s := string([]byte{*p})
		w.text(n, key, &s)
	}
}

func (w *binaryWriter) letters(n int, key string, p *[]byte) {
	s := string(*p)
	w.text(n, key, &s)
}

func (w *binaryWriter) form(n int, key string, p *measure.Kind) {
	s := formWords(*p)
	w.text(n, key, &s)
}

func (w *binaryWriter) words(n int, _ string, p *map[string]string) {
	if len(*p) == 0 {
		return
	}
	w.tag(n)
	w.count(len(*p))
	for _, k := range sortedKeys(*p) {
		w.str(k)
		w.str((*p)[k])
	}
}

func sortedKeys(m map[string]string) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}

func (w *binaryWriter) integer(n int, _ string, p *int64) {
	if *p != 0 {
		w.tag(n)
		w.int(*p)
	}
}

func (w *binaryWriter) integers(n int, _ string, p *[]int64) {
	if len(*p) > 0 {
		w.tag(n)
		w.count(len(*p))
		for _, v := range *p {
			w.int(v)
		}
	}
}

func (w *binaryWriter) real(n int, _ string, p *float64, known *bool) {
	if present(*p != 0, known) {
		w.tag(n)
		w.bits(*p)
	}
}

func present(notZero bool, known *bool) bool {
	if known != nil {
		return *known
	}
	return notZero
}

func (w *binaryWriter) quantity(n int, _, _ string, p *int64, known *bool) {
	if present(*p != 0, known) {
		w.tag(n)
		w.int(*p)
	}
}

func (w *binaryWriter) flow(n int, key string, p *float64, known *bool) { w.real(n, key, p, known) }

func (w *binaryWriter) amount(n int, _ string, p *measure.Amount) {
	if *p != (measure.Amount{}) {
		w.tag(n)
		w.count(int(p.Kind))
		w.int(p.N)
	}
}

func (w *binaryWriter) rate(n int, _ string, p *measure.Rate, known *bool) {
	if present(*p != (measure.Rate{}), known) {
		w.tag(n)
		w.count(int(p.Kind))
		w.bits(p.V)
	}
}

func (w *binaryWriter) fact(n int, _ string, p *Fact) {
	if *p != nil {
		w.tag(n)
		w.count(int((*p).Kind()))
		w.factFields(*p)
	}
}

func (w *binaryWriter) factFields(f Fact) {
	f.fields(walker{w})
	w.tag(0)
}

func (w *binaryWriter) list(n int, _ string, count int, _ func(int), each func(walker, int)) {
	if count == 0 {
		return
	}
	w.tag(n)
	w.count(count)
	for i := range count {
		each(walker{w}, i)
		w.tag(0)
	}
}
