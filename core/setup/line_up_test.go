package setup

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

func TestALineUpIsAddedChangedAndTakenAway(t *testing.T) {
	b := fullRig(t)
	facts, err := answer(t, LineUp, "", b, Answers{"name": "over", "supply": "A + b", "return": "c", "valves": "suction=right; 2 = shut"})
	enter(t, b, facts, err)
	l := b.Rig().LineUps[1]
	if l.Name != "over" || string(l.Supply) != "ab" || l.Return != 'c' || l.Valves["suction"] != "right" || l.Valves["2"] != "shut" {
		t.Errorf("%+v", l)
	}
	facts, err = answer(t, LineUp, "over", b, Answers{"supply": "none", "return": "", "valves": ""})
	enter(t, b, facts, err)
	if l = b.Rig().LineUps[1]; len(l.Supply) != 0 || l.Return != 0 || len(l.Valves) != 0 {
		t.Errorf("%+v", l)
	}
	for _, said := range []Answers{{"supply": "f"}, {"supply": "a; a"}, {"valves": "open"}, {"name": ""}, {"name": "a to a"}} {
		facts, err = answer(t, LineUp, "over", b, said)
		if err == nil {
			_, err = b.Prepare("x", core.Moment{}, facts...)
		}
		if err == nil {
			t.Errorf("%v was taken", said)
		}
	}
	r, ok := Without(b, LineUp, "over")
	if !ok || len(r.LineUps) != 1 || strings.Contains(r.LineUps[0].Name, "over") {
		t.Errorf("%v %+v", ok, r.LineUps)
	}
}
