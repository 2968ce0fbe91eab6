package glance

import (
	"math"
	"strings"
	"testing"

	"example.com/tintline/core"
)

func TestLoadsAtAGlance(t *testing.T) {
	b := demoBook(t)
	letter := string(b.Plumbing().Compartments[2].Letter)
	mix, gun := b.Mixes()[0].MixName, b.Rig().Applicators[0].Name
	for _, f := range []core.Fact{
		&core.LoadPlanned{Into: letter, Volume: b.Plumbing().Compartments[2].Room() / 2, Mix: mix, For: gun},
		&core.Ticked{List: core.LoadList(letter), Item: core.WaterItem},
	} {
		es, err := b.Prepare("test", b.LastAt(), f)
		if err != nil {
			t.Fatal(err)
		}
		if err := b.Apply(es[0]); err != nil {
			t.Fatal(err)
		}
	}
	d := Of(b, b.LastAt(), core.Maybe[core.Moment]{})
	if len(d.Loads) != 1 || d.Loads[0].Into != letter || *d.Loads[0].Mix != mix || *d.Loads[0].For != gun {
		t.Fatalf("%+v", d.Loads)
	}
	items := d.Loads[0].Items
	if len(items) < 2 || !items[0].Ticked || items[0].Item != "water" || items[1].Ticked || math.Abs(items[0].Amount/d.Loads[0].Volume-1) > 0.1 {
		t.Errorf("%+v", items)
	}
	page := Text(b, b.LastAt(), core.Maybe[core.Moment]{})
	for _, want := range []string{"to load     " + letter + ": ", "gal of " + mix + "; in: water ", "; to come: " + items[1].Item} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q in\n%s", want, page)
		}
	}
	if d.Changeover.TintFrom >= d.Changeover.Arrives || d.Changeover.TintBy <= d.Changeover.Half {
		t.Errorf("%+v", d.Changeover)
	}
	if (d.LineUp.Name == nil) != (d.LineUp.Valves == nil) {
		t.Errorf("%+v", d.LineUp)
	}
}
