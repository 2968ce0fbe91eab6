package core

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"sort"
	"strconv"
	"strings"

	"example.com/tintline/core/measure"
)

// jsonReader reads the fields of one JSON object. Each key it takes is crossed off; what is left at the
// end is unknown and refused. The first error stops it.
type jsonReader struct {
	m       map[string]json.RawMessage
	where   string   // path to this object, for the sentence
	allowed []string // keys asked for, for the sentence
	depth   int
	err     error
}

func readObject(raw []byte, where string, depth int) *jsonReader {
	r := &jsonReader{where: where, depth: depth, m: map[string]json.RawMessage{}}
	dec := json.NewDecoder(bytes.NewReader(raw))
	tok, err := dec.Token()
	if d, ok := tok.(json.Delim); err != nil || !ok || d != '{' {
		r.fail("%s is not an object in braces.", r.name("the line"))
		return r
	}
	for dec.More() {
		tok, err := dec.Token()
		key, ok := tok.(string)
		if err != nil || !ok {
			r.fail("%s is cut short or not JSON.", r.name("the line"))
			return r
		}
		var v json.RawMessage
		if err := dec.Decode(&v); err != nil {
			r.fail("%s is cut short or not JSON at key %q.", r.name("the line"), key)
			return r
		}
		if _, twice := r.m[key]; twice {
			r.fail("%s has the key %q twice.", r.name("the line"), key)
			return r
		}
		r.m[key] = v
	}
	if _, err := dec.Token(); err != nil {
		r.fail("%s is cut short.", r.name("the line"))
		return r
	}
	if _, err := dec.Token(); !errors.Is(err, io.EOF) {
		r.fail("%s has more than one object.", r.name("the line"))
	}
	return r
}

func (r *jsonReader) name(top string) string {
	if r.where == "" {
		return top
	}
	return r.where
}

func (r *jsonReader) path(key string) string {
	if r.where == "" {
		return key
	}
	return r.where + "." + key
}

func (r *jsonReader) fail(format string, args ...any) {
	if r.err == nil {
		r.err = &Problem{What: fmt.Sprintf(format, args...), Do: "Correct the line and enter it again; nothing was changed.", Err: ErrRefused}
	}
}

// take crosses a key off; false if it is left out or null.
func (r *jsonReader) take(key string) (json.RawMessage, bool) {
	r.allowed = append(r.allowed, key)
	v, ok := r.m[key]
	delete(r.m, key)
	return v, ok && r.err == nil && string(v) != "null"
}

// finish refuses keys that nothing asked for.
func (r *jsonReader) finish() {
	if r.err != nil || len(r.m) == 0 {
		return
	}
	var left []string
	for k := range r.m {
		left = append(left, k)
	}
	sort.Strings(left)
	r.fail("%q is not a key of %s; allowed are %s.", left[0], r.name("this fact"), strings.Join(r.allowed, ", "))
}

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

// units lists stem_unit for a quantity.
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
	r.allowed = append(r.allowed, stem+"_"+exactUnit[kind])
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
		f, err := measure.ParseFlowIn(unit, string(v))
		*p = float64(f)
		set(known)
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
		rate, err := measure.ParseRateIn(unit, string(v))
		if err != nil {
			r.fail("%s: %v", r.path(key), err)
			return
		}
		*p = rate
		set(known)
	}
	r.allowed = append(r.allowed, stem+"_AMOUNT_per_AREA")
}

func (r *jsonReader) keysWith(prefix string) []string {
	var out []string
	for k := range r.m {
		if strings.HasPrefix(k, prefix) {
			out = append(out, k)
		}
	}
	sort.Strings(out)
	return out
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
		r.fail("%q is not a fact; allowed are %s.", name, strings.Join(FactNames(), ", "))
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
