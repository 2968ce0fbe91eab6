package core

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.com/tintline/core/measure"
)

func (r *jsonReader) text(_ int, key string, p *string) {
	if v, ok := r.take(key); ok && json.Unmarshal(v, p) != nil {
		r.fail("%s must be a text in quotes, not %s.", r.path(key), short(v))
	}
}

func short(v []byte) string {
	if len(v) > 40 {
		return string(v[:40]) + "..."
	}
	return string(v)
}

func (r *jsonReader) scalar(_ int, key string, p *string) {
	v, ok := r.take(key)
	if !ok {
		return
	}
	switch {
	case json.Unmarshal(v, p) == nil:
	case v[0] == '{' || v[0] == '[':
		r.fail("%s must be a text or a number, not %s.", r.path(key), short(v))
	default:
		*p = string(v)
	}
}

func (r *jsonReader) texts(_ int, key string, p *[]string) {
	if v, ok := r.take(key); ok && json.Unmarshal(v, p) != nil {
		r.fail("%s must be a list of texts, not %s.", r.path(key), short(v))
	}
	if len(*p) == 0 {
		*p = nil
	}
}

// letter reads one letter; an empty text is none.
func (r *jsonReader) letter(_ int, key string, p *byte) {
	var s string
	r.text(0, key, &s)
	switch {
	case len(s) == 1:
		*p = s[0]
	case len(s) > 1:
		r.fail("%s is %q: a compartment is one letter, a to f.", r.path(key), short([]byte(s)))
	}
}

func (r *jsonReader) form(_ int, key string, p *measure.Kind) {
	s := formWords(*p)
	r.text(0, key, &s)
	k, ok := formOf(s)
	if !ok {
		r.fail("%s is %q: write liquid or dry.", r.path(key), short([]byte(s)))
	}
	*p = k
}

func (r *jsonReader) letters(_ int, key string, p *[]byte) {
	v, ok := r.take(key)
	if !ok {
		return
	}
	var list []string
	if json.Unmarshal(v, &list) != nil {
		r.fail("%s must be a list of letters such as [\"a\"], not %s.", r.path(key), short(v))
		return
	}
	for _, s := range list {
		if len(s) != 1 {
			r.fail("%s holds %q: a compartment is one letter, a to f.", r.path(key), s)
			return
		}
		*p = append(*p, s[0])
	}
}

func (r *jsonReader) words(_ int, key string, p *map[string]string) {
	if v, ok := r.take(key); ok && json.Unmarshal(v, p) != nil {
		r.fail("%s must be an object of texts, not %s.", r.path(key), short(v))
	}
	if len(*p) == 0 {
		*p = nil
	}
}

func (r *jsonReader) integer(_ int, key string, p *int64) {
	if v, ok := r.take(key); ok {
		n, err := strconv.ParseInt(string(v), 10, 64)
		if err != nil {
			r.fail("%s must be a whole number, not %s.", r.path(key), short(v))
			return
		}
		*p = n
	}
}

func (r *jsonReader) integers(_ int, key string, p *[]int64) {
	if v, ok := r.take(key); ok && json.Unmarshal(v, p) != nil {
		r.fail("%s must be a list of whole numbers, not %s.", r.path(key), short(v))
	}
	if len(*p) == 0 {
		*p = nil
	}
}

func (r *jsonReader) real(_ int, key string, p *float64, known *bool) {
	v, ok := r.take(key)
	if !ok {
		return
	}
	f, err := strconv.ParseFloat(string(v), 64)
	if err != nil || math.IsInf(f, 0) || math.IsNaN(f) || !isNumber(v) {
		r.fail("%s must be a number, not %s.", r.path(key), short(v))
		return
	}
	*p = f
	set(known)
}

func isNumber(v []byte) bool { return len(v) > 0 && (v[0] == '-' || v[0] >= '0' && v[0] <= '9') }

// usualUnit is the unit that a sentence names for a quantity; every other unit of the kind is read as well.
var usualUnit = map[string]string{
	"volume": "gal", "area": "sqft", "mass": "oz", "length": "ft", "speed": "mph", "money": "usd", "flow": "gpm",
}

// oneOf reads the quantity under stem_unit, in whatever unit of its kind it is given; twice is refused.
func (r *jsonReader) oneOf(stem, kind string, found func(unit string, v json.RawMessage) error) {
	taken := ""
	for _, u := range measure.UnitsOf(kind) {
		key := stem + "_" + u
		v, there := r.m[key]
		if !there {
			continue
		}
		delete(r.m, key)
		if string(v) == "null" || r.err != nil {
			continue
		}
		if taken != "" {
			r.fail("%s and %s say the same thing twice; leave one out.", r.path(taken), r.path(key))
			return
		}
		taken = key
		if !isNumber(v) {
			r.fail("%s must be a number, not %s.", r.path(key), short(v))
			return
		}
		if err := found(u, v); err != nil {
			r.fail("%s: %v", r.path(key), err)
		}
	}
	r.allowed = append(r.allowed, stem+"_"+usualUnit[kind])
}

func (r *jsonReader) quantity(_ int, stem, kind string, p *int64, known *bool) {
	r.oneOf(stem, kind, func(unit string, v json.RawMessage) error {
		n, err := measure.ParseIn(kind, unit, string(v))
		*p = n
		set(known)
		return err
	})
}

func (r *jsonReader) flow(_ int, stem string, p *float64, known *bool) {
	r.oneOf(stem, "flow", func(unit string, v json.RawMessage) error {
		set(known)
		if unit == exactUnit["flow"] {
			f, err := strconv.ParseFloat(string(v), 64)
			*p = f
			return err
		}
		f, err := measure.ParseFlowIn(unit, string(v))
		*p = float64(f)
		return err
	})
}

func (r *jsonReader) amount(n int, stem string, p *measure.Amount) {
	var liquid, dry bool
	var nl, ng int64
	r.quantity(n, stem, "volume", &nl, &liquid)
	r.quantity(n, stem, "mass", &ng, &dry)
	switch {
	case liquid && dry:
		r.fail("%s is given both as a volume and as a mass; leave one out.", r.path(stem))
	case dry:
		*p = measure.Amount{N: ng, Kind: measure.Dry}
	case liquid:
		*p = measure.Amount{N: nl, Kind: measure.Liquid}
	}
}

// exactRate reads a rate; in the journal's own units whatever float64 the journal wrote.
func exactRate(unit, text string) (measure.Rate, error) {
	kind := measure.Liquid
	switch unit {
	case exactRates[measure.Dry]:
		kind = measure.Dry
	case exactRates[measure.Liquid]:
	default:
		return measure.ParseRateIn(unit, text)
	}
	f, err := strconv.ParseFloat(text, 64)
	return measure.Rate{V: f, Kind: kind}, err
}

func (r *jsonReader) rate(_ int, stem string, p *measure.Rate, known *bool) {
	taken := ""
	for _, key := range r.keysWith(stem + "_") {
		unit := strings.TrimPrefix(key, stem+"_")
		if !strings.Contains(unit, "_per_") {
			continue
		}
		v, ok := r.take(key)
		if !ok {
			continue
		}
		if taken != "" {
			r.fail("%s and %s say the same thing twice; leave one out.", r.path(taken), r.path(key))
			return
		}
		taken = key
		if !isNumber(v) {
			r.fail("%s must be a number, not %s.", r.path(key), short(v))
			return
		}
		rate, err := exactRate(unit, string(v))
		if err != nil {
			r.fail("%s: %v", r.path(key), err)
			return
		}
		*p = rate
		set(known)
	}
	r.allowed = append(r.allowed, stem+"_AMOUNT_per_AREA")
}

func (r *jsonReader) fact(_ int, key string, p *Fact) {
	if v, ok := r.take(key); ok {
		if r.depth+1 > maxDepth {
			r.fail("%s: facts within facts.", r.path(key))
			return
		}
		sub := readObject(v, r.path(key), r.depth+1)
		*p = sub.readFact()
		if r.err == nil {
			r.err = sub.err
		}
	}
}

// readFact reads "fact" and then the fields of that fact.
func (r *jsonReader) readFact() Fact {
	name := ""
	r.text(0, "fact", &name)
	if r.err != nil {
		return nil
	}
	f := NewFact(name)
	if f == nil {
		r.unknown("%q is not a fact; allowed are %s.", name, strings.Join(FactNames(), ", "))
		return nil
	}
	if r.where == "" {
		r.where = name
	}
	f.fields(walker{r})
	r.finish()
	return f
}

func (r *jsonReader) list(_ int, key string, _ int, grow func(int), each func(walker, int)) {
	v, ok := r.take(key)
	if !ok {
		return
	}
	var all []json.RawMessage
	if json.Unmarshal(v, &all) != nil {
		r.fail("%s must be a list, not %s.", r.path(key), short(v))
		return
	}
	if len(all) == 0 {
		return
	}
	grow(len(all))
	for i, one := range all {
		sub := readObject(one, fmt.Sprintf("%s[%d]", r.path(key), i+1), r.depth)
		if sub.err == nil {
			each(walker{sub}, i)
			sub.finish()
		}
		if sub.err != nil {
			r.err = sub.err
			return
		}
	}
}
