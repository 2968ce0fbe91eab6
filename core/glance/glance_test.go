package glance

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/testdata/demo"
)

func demoBook(t *testing.T) *core.Book {
	t.Helper()
	b := core.NewBook(1)
	for _, line := range strings.Split(strings.TrimSpace(demo.Journal), "\n") {
		l, err := core.DecodeLine([]byte(line))
		if err != nil {
			t.Fatal(err)
		}
		entries, err := b.Prepare("demo", l.At.V, l.Fact)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			if err := b.Apply(e); err != nil {
				t.Fatal(err)
			}
		}
	}
	return b
}

func TestEmptyBookHasNoNullLists(t *testing.T) {
	text, err := json.Marshal(Of(core.NewBook(1), core.Moment{}, core.Maybe[core.Moment]{}))
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"compartments", "hose", "applicators", "supply", "loads"} {
		if !strings.Contains(string(text), `"`+key+`":[]`) {
			t.Errorf("%s is no empty list in %s", key, text)
		}
	}
	if page := Text(core.NewBook(1), core.Moment{}, core.Maybe[core.Moment]{}); !strings.Contains(page, "no day yet") {
		t.Errorf("the page of an empty book is\n%s", page)
	}
}

func TestDemoAtAGlance(t *testing.T) {
	b := demoBook(t)
	d := Of(b, b.LastAt(), core.Maybe[core.Moment]{})
	if d.Changeover == nil || d.Changeover.PushBack == nil || *d.Changeover.PushBack.Into != "b" {
		t.Errorf("the hose holds b, but the changeover is %+v", d.Changeover)
	}
	inHose := 0.0
	for _, p := range d.Hose {
		inHose += p.Volume + p.Air
		of := 0.0
		for _, v := range p.Origins {
			of = max(of, v)
		}
		if of > p.Volume {
			t.Errorf("%g gal of one origin in a parcel of %g", of, p.Volume)
		}
	}
	if size := b.Plumbing().Hoses[0].Size.Gallons(); math.Abs(inHose-size) > 1e-9 {
		t.Errorf("the parcels are %g gal, the hose is %g", inHose, size)
	}
	page := Text(b, b.LastAt(), core.Maybe[core.Moment]{})
	for _, want := range []string{"visit 4 of 15", "a to the pump, return to a", "push back", "traces of", d.State, d.Journal} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q in\n%s", want, page)
		}
	}
}
