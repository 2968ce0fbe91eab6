package core

import (
	"strings"
	"testing"
)

func TestRouteIsChangedOneLawnAtATime(t *testing.T) {
	d := &Day{Visits: []Visit{{Lawn: "done", State: Done}, {Lawn: "a", State: Planned}, {Lawn: "b", State: Planned}, {Lawn: "c", State: Planned}}}
	for _, tc := range []struct {
		what string
		got  *Routed
		want string
	}{
		{"put in behind", d.PutIn("x", "a"), "a x b c"},
		{"put in behind the last", d.PutIn("x", "c"), "a b c x"},
		{"put in behind one that is done", d.PutIn("x", "done"), "a b c x"},
		{"put in behind none", d.PutIn("x", ""), "a b c x"},
		{"earlier", d.Moved("b", true), "b a c"},
		{"later", d.Moved("b", false), "a c b"},
		{"the first, earlier", d.Moved("a", true), "-"},
		{"the last, later", d.Moved("c", false), "-"},
		{"one that is not planned", d.Moved("done", false), "-"},
		{"taken out", d.TakenOut("b"), "a c"},
	} {
		got := "-"
		if tc.got != nil {
			got = strings.Join(tc.got.Lawns, " ")
		}
		if got != tc.want {
			t.Errorf("%s: %s, not %s", tc.what, got, tc.want)
		}
	}
	if got := strings.Join(d.planned(), " "); got != "a b c" {
		t.Errorf("the day was changed: %s", got)
	}
}
