package glance

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// What gauges taught stands in the document and, once it is used, in the text; a book of which they taught nothing says so with
// an empty list.
func TestStatusSaysWhatGaugesTaught(t *testing.T) {
	b := demoBook(t)
	if d := Of(b, b.LastAt(), core.Maybe[core.Moment]{}); d.Taught == nil {
		t.Error("no list")
	}
	const more = 1.2
	letter := b.Plumbing().LineUp.Supply[0]
	put := func(f core.Fact) {
		es, err := b.Prepare("test", b.LastAt(), f)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range es {
			if err := b.Apply(e); err != nil {
				t.Fatal(err)
			}
		}
	}
	gun := b.Rig().Applicators[0]
	lawn := b.Lawns()[0]
	job := &core.Sprayed{Lawn: lawn.LawnName, Applicator: gun.Name, By: core.ByArea}
	left := func() measure.Volume { return b.Plumbing().Compartment(letter).Liquid.Volume }
	put(&core.GaugeRead{Compartment: letter, Volume: core.Known(left())})
	for range 4 {
		if left() < measure.Gallons(60) {
			put(&core.Loaded{Into: string(letter), Volume: measure.Gallons(60)})
			put(&core.GaugeRead{Compartment: letter, Volume: core.Known(left())})
		}
		was := left()
		put(job)
		put(&core.GaugeRead{Compartment: letter, Volume: core.Known(was - measure.Volume(math.Round(more*float64(was-left()))))})
	}
	put(job)
	d := Of(b, b.LastAt(), core.Maybe[core.Moment]{})
	if len(d.Taught) != 1 || d.Taught[0].Applicator != gun.Name || !d.Taught[0].Used || d.Taught[0].Ratio <= 1.01 || d.Taught[0].SD <= 0 {
		t.Errorf("%+v", d.Taught)
	}
	raw, err := json.Marshal(d)
	text := Text(b, b.LastAt(), core.Maybe[core.Moment]{})
	if err != nil || !strings.Contains(string(raw), `"expected_gal":`) || !strings.Contains(text, " gal expected by what gauges taught") || !strings.Contains(text, "taught      "+gun.Name+" puts down 1.") {
		t.Errorf("%v\n%s", err, text)
	}
}
