package core

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"sort"
	"strings"
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
		r.fail("%s is not an object in braces.", r.name("The line"))
		return r
	}
	for dec.More() {
		tok, err := dec.Token()
		key, ok := tok.(string)
		if err != nil || !ok {
			r.fail("%s is cut short or not JSON.", r.name("The line"))
			return r
		}
		var v json.RawMessage
		if err := dec.Decode(&v); err != nil {
			r.fail("%s is cut short or not JSON at key %q.", r.name("The line"), key)
			return r
		}
		if _, twice := r.m[key]; twice {
			r.fail("%s has the key %q twice.", r.name("The line"), key)
			return r
		}
		r.m[key] = v
	}
	if _, err := dec.Token(); err != nil {
		r.fail("%s is cut short.", r.name("The line"))
		return r
	}
	if _, err := dec.Token(); !errors.Is(err, io.EOF) {
		r.fail("%s has more than one object.", r.name("The line"))
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

// errUnknown marks a fact or a key that this version does not know: mistyped, or of a newer version.
var errUnknown = fmt.Errorf("a word that is not known: %w", ErrRefused)

// unknown refuses what this version does not know.
func (r *jsonReader) unknown(format string, args ...any) {
	if r.err == nil {
		r.fail(format, args...)
		r.err.(*Problem).Err = errUnknown
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
	r.unknown("%q is not a key of %s; allowed are %s.", left[0], r.name("this fact"), strings.Join(r.allowed, ", "))
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
