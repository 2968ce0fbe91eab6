package core

import (
	"fmt"
	"hash/fnv"
	"reflect"
	"slices"
	"strings"
	"testing"
)

// layoutOf lists every field of all types that a type holds, with its type.
func layoutOf(t reflect.Type, seen map[reflect.Type]bool) []string {
	if seen[t] {
		return nil
	}
	seen[t] = true
	var out []string
	switch t.Kind() {
	case reflect.Struct:
		for i := range t.NumField() {
			f := t.Field(i)
			out = append(out, fmt.Sprintf("%s.%s %s %s", t, f.Name, f.Type, f.Type.Kind()))
			out = append(out, layoutOf(f.Type, seen)...)
		}
	case reflect.Map:
		out = append(layoutOf(t.Key(), seen), layoutOf(t.Elem(), seen)...)
	case reflect.Pointer, reflect.Slice, reflect.Array:
		out = layoutOf(t.Elem(), seen)
	}
	return out
}

// TestLayoutOfWhatIsKept fails when a field is added to what a book holds: then it has to be kept too, and snapshots
// without it are of no use any more.
func TestLayoutOfWhatIsKept(t *testing.T) {
	list := layoutOf(reflect.TypeFor[Closed](), map[reflect.Type]bool{})
	slices.Sort(list)
	h := fnv.New64a()
	_, _ = h.Write([]byte(strings.Join(list, "\n")))
	if got := h.Sum64(); got != keptLayout {
		t.Errorf("the fields of a book are not those of keptLayout: keep the new ones in kept*.go, then set it to %#x", got)
	}
	for _, want := range []string{"core.state.rounds int32 int32", "core.Visit.dueSince string string", "core.Went.after uint64 uint64", "fluid.Tank.StrangeIn fluid.Parts slice", "core.Site.Date string string", "label.Entry.WindMax"} {
		if !slices.ContainsFunc(list, func(s string) bool { return strings.HasPrefix(s, want) }) {
			t.Errorf("the walk over the fields does not come to %s", want)
		}
	}
}
