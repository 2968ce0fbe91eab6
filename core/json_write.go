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

func (w *jsonWriter) text(_ int, key string, p *string) {
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
	w.each(key, len(*p), func(i int) { w.str(string((*p)[i : i+1])) })
}

func (w *jsonWriter) words(_ int, key string, p *map[string]string) {
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

func (w *jsonWriter) integer(_ int, key string, p *int64) { w.raw(key, strconv.FormatInt(*p, 10)) }

func (w *jsonWriter) integers(_ int, key string, p *[]int64) {
	w.each(key, len(*p), func(i int) { w.b.WriteString(strconv.FormatInt((*p)[i], 10)) })
}

func (w *jsonWriter) real(_ int, key string, p *float64, known *bool) {
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

func (w *jsonWriter) quantity(n int, stem, kind string, p *int64, known *bool) {
	key := stem + "_" + exactUnit[kind]
	if known != nil && !*known {
		w.raw(key, "null")
		return
	}
	w.integer(n, key, p)
}

func (w *jsonWriter) flow(n int, stem string, p *float64, known *bool) {
	w.real(n, stem+"_"+exactUnit["flow"], p, known)
}

func (w *jsonWriter) amount(n int, stem string, p *measure.Amount) {
	unit := "_nl"
	if p.Kind == measure.Dry {
		unit = "_ng"
	}
	w.integer(n, stem+unit, &p.N)
}

func (w *jsonWriter) rate(n int, stem string, p *measure.Rate, known *bool) {
	w.real(n, stem+"_"+exactRates[p.Kind], &p.V, known)
}

func (w *jsonWriter) fact(_ int, key string, p *Fact) {
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
	w.each(key, count, func(i int) {
		sub := newJSONWriter()
		each(walker{sub}, i)
		w.b.Write(sub.end())
	})
}
