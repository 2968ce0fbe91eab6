package core

import (
	"bytes"
	"encoding/json"
	"strconv"

	"example.com/tintline/core/measure"
)

// jsonWriter writes fields as one JSON object, in the order of the list, with exact units in the keys.
type jsonWriter struct {
	b     bytes.Buffer
	fresh bool
	later bool // the keys that come now are left out where they say nothing; see walker.later
}

func newJSONWriter() *jsonWriter {
	w := &jsonWriter{fresh: true}
	w.b.WriteByte('{')
	return w
}

func (w *jsonWriter) key(k string) {
	if !w.fresh {
		w.b.WriteByte(',')
	}
	w.fresh = false
	w.str(k)
	w.b.WriteByte(':')
}

func (w *jsonWriter) str(s string) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	_ = enc.Encode(s) // a string always encodes
	w.b.Write(bytes.TrimRight(b.Bytes(), "\n"))
}

func (w *jsonWriter) raw(k, v string) {
	w.key(k)
	w.b.WriteString(v)
}

func (w *jsonWriter) end() []byte {
	w.b.WriteByte('}')
	return w.b.Bytes()
}

// silent tells whether a key is left out: it came later, and says nothing that its stored form would hold.
func (w *jsonWriter) silent(says bool) bool { return w.later && !says }

func (w *jsonWriter) text(_ int, key string, p *string) {
	if w.silent(*p != "") {
		return
	}
	w.key(key)
	w.str(*p)
}

func (w *jsonWriter) scalar(n int, key string, p *string) { w.text(n, key, p) }

func (w *jsonWriter) each(key string, count int, one func(int)) {
	w.raw(key, "[")
	for i := range count {
		if i > 0 {
			w.b.WriteByte(',')
		}
		one(i)
	}
	w.b.WriteByte(']')
}

func (w *jsonWriter) texts(_ int, key string, p *[]string) {
	if w.silent(len(*p) > 0) {
		return
	}
	w.each(key, len(*p), func(i int) { w.str((*p)[i]) })
}

func (w *jsonWriter) letter(_ int, key string, p *byte) {
	s := ""
	if *p != 0 {
		s = string([]byte{*p})
	}
	w.text(0, key, &s)
}

func (w *jsonWriter) form(_ int, key string, p *measure.Kind) {
	s := formWords(*p)
	w.text(0, key, &s)
}

func (w *jsonWriter) letters(_ int, key string, p *[]byte) {
	if w.silent(len(*p) > 0) {
		return
	}
	w.each(key, len(*p), func(i int) { w.str(string((*p)[i : i+1])) })
}

func (w *jsonWriter) words(_ int, key string, p *map[string]string) {
	if w.silent(len(*p) > 0) {
		return
	}
	w.raw(key, "{")
	for i, k := range sortedKeys(*p) {
		if i > 0 {
			w.b.WriteByte(',')
		}
		w.str(k)
		w.b.WriteByte(':')
		w.str((*p)[k])
	}
	w.b.WriteByte('}')
}

func (w *jsonWriter) integer(_ int, key string, p *int64) {
	if w.silent(*p != 0) {
		return
	}
	w.whole(key, *p)
}

func (w *jsonWriter) whole(key string, n int64) { w.raw(key, strconv.FormatInt(n, 10)) }

func (w *jsonWriter) integers(_ int, key string, p *[]int64) {
	if w.silent(len(*p) > 0) {
		return
	}
	w.each(key, len(*p), func(i int) { w.b.WriteString(strconv.FormatInt((*p)[i], 10)) })
}

func (w *jsonWriter) real(_ int, key string, p *float64, known *bool) {
	if w.silent(present(*p != 0, known)) {
		return
	}
	if known != nil && !*known {
		w.raw(key, "null")
		return
	}
	w.raw(key, strconv.FormatFloat(*p, 'g', -1, 64))
}

// exactUnit is the unit in which the journal writes a quantity: no figure is rounded.
var exactUnit = map[string]string{
	"volume": "nl", "area": "mm2", "mass": "ng", "length": "um", "speed": "um_per_s", "money": "cents", "flow": "nl_per_s",
}

// exactRates is the unit in which the journal writes a rate, liquid and dry.
var exactRates = [...]string{measure.Liquid: "nl_per_mm2", measure.Dry: "ng_per_mm2"}

func (w *jsonWriter) quantity(_ int, stem, kind string, p *int64, known *bool) {
	if w.silent(present(*p != 0, known)) {
		return
	}
	key := stem + "_" + exactUnit[kind]
	if known != nil && !*known {
		w.raw(key, "null")
		return
	}
	w.whole(key, *p)
}

func (w *jsonWriter) flow(n int, stem string, p *float64, known *bool) {
	w.real(n, stem+"_"+exactUnit["flow"], p, known)
}

func (w *jsonWriter) amount(_ int, stem string, p *measure.Amount) {
	if w.silent(*p != (measure.Amount{})) {
		return
	}
	unit := "_nl"
	if p.Kind == measure.Dry {
		unit = "_ng"
	}
	w.whole(stem+unit, p.N)
}

func (w *jsonWriter) rate(_ int, stem string, p *measure.Rate, known *bool) {
	if w.silent(present(*p != (measure.Rate{}), known)) {
		return
	}
	key := stem + "_" + exactRates[p.Kind]
	if known != nil && !*known {
		w.raw(key, "null")
		return
	}
	w.raw(key, strconv.FormatFloat(p.V, 'g', -1, 64))
}

func (w *jsonWriter) fact(_ int, key string, p *Fact) {
	if w.silent(*p != nil) {
		return
	}
	if *p == nil {
		w.raw(key, "null")
		return
	}
	w.key(key)
	sub := newJSONWriter()
	name := (*p).Name()
	sub.text(0, "fact", &name)
	(*p).fields(walker{sub})
	w.b.Write(sub.end())
}

func (w *jsonWriter) list(_ int, key string, count int, _ func(int), each func(walker, int)) {
	if w.silent(count > 0) {
		return
	}
	w.each(key, count, func(i int) {
		sub := newJSONWriter()
		each(walker{sub}, i)
		w.b.Write(sub.end())
	})
}
