package batch

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// Bad input is refused with what is wrong, with figures, and with what to do: a sentence each.
func TestRefusals(t *testing.T) {
	gal := measure.Gallons
	oz := func(f float64) measure.Amount { return measure.LiquidAmount(measure.FluidOunces(f)) }
	lb := func(f float64) measure.Amount { return measure.DryAmount(measure.Pounds(f)) }
	liquid, dry := entryOf(measure.Liquid), entryOf(measure.Dry)
	warm, gun := partOf(t, "Warm", 2, "fl_oz_per_1000_sqft"), measure.GalPer1000(1.5)
	wrong := Part{"Warm", liquid, rateIn(t, 2, "oz_per_1000_sqft")}
	held := func(p string, e label.Entry, a measure.Amount) []Held { return []Held{{p, e, a}} }
	load := func(q LoadAsk) error { _, err := q.Work(); return err }
	topup := func(q TopUpAsk) error { _, err := q.Work(); return err }
	turn := func(q TurnAsk) error { _, err := q.Work(); return err }
	stretch := func(q StretchAsk) error { _, err := q.Work(); return err }
	blend := func(q BlendAsk) error { _, err := q.Work(); return err }
	jug := func(q JugAsk) error { _, err := q.Work(); return err }
	use := func(q UseUpAsk) error { _, err := q.Work(); return err }
	tint := func(q TintAsk) error { _, err := q.Work(); return err }
	rinse := func(q RinseAsk) error { _, err := q.Work(); return err }
	targets := func(parts []Part, d measure.Rate) error { _, err := Targets(parts, d); return err }
	washed := func(v, f, m float64) error { _, _, err := WashedOut(hydraulics.Gallons(v), f, m); return err }
	for _, row := range []struct {
		err      error
		says, do string
	}{
		{load(LoadAsk{Parts: []Part{wrong}, Delivery: gun, Volume: gal(10)}), "Warm is liquid and is measured by volume, but 2.00 oz per 1,000 sq ft is a weight.", "Give a volume"},
		{load(LoadAsk{Parts: []Part{{"Grit", dry, warm.Rate}}, Delivery: gun, Volume: gal(10)}), "Grit is dry and is weighed, but 2.00 fl oz per 1,000 sq ft is a volume.", "Give a weight"},
		{load(LoadAsk{Parts: []Part{warm}, Delivery: gun, Volume: gal(30), Room: measure.Known(gal(20))}), "The load is 30.0 gal, but there is room for 20.0 gal.", "at most 20.0 gal, which treats 13,330 sq ft"},
		{load(LoadAsk{Parts: []Part{warm}, Delivery: gun, Area: measure.SquareFeet(20_000), Room: measure.Known(gal(20))}), "The load is 30.0 gal", "13,330 sq ft"},
		{load(LoadAsk{Parts: []Part{warm}, Delivery: gun, Volume: gal(3), Room: measure.Known(measure.Volume(0))}), "the tank has no room", "Draw it down"},
		{load(LoadAsk{Parts: []Part{warm}, Delivery: gun}), "How large the load is to be is not said.", "gallons, or the area"},
		{load(LoadAsk{Parts: []Part{warm}, Delivery: gun, Volume: gal(3), Area: 5}), "given as 3.00 gal and as", "one of the two"},
		{load(LoadAsk{Parts: []Part{warm}, Delivery: gun, Volume: gal(-3)}), "The load is -3.00 gal.", "more than 0 gal"},
		{load(LoadAsk{Parts: []Part{warm}, Delivery: gun, Area: measure.SquareFeet(-100)}), "The area is -100 sq ft.", "more than 0 sq ft"},
		{load(LoadAsk{Parts: []Part{warm}, Volume: gal(3)}), "The delivery rate is 0.00 gal per 1,000 sq ft.", "catch test"},
		{load(LoadAsk{Parts: []Part{warm, warm}, Delivery: gun, Volume: gal(3)}), "Warm is named twice.", "once"},
		{load(LoadAsk{Parts: []Part{{"Warm", liquid, measure.Rate{V: math.NaN()}}}, Delivery: gun, Volume: gal(3)}), "The rate of Warm is", "above 0"},
		{load(LoadAsk{Parts: []Part{partOf(t, "Warm", 2, "gal_per_1000_sqft")}, Delivery: gun, Volume: gal(3)}), "The products alone are 4.00 gal; the load is 3.00 gal in all.", "Lower the rates"},
		{targets([]Part{wrong}, gun), "is a weight", "a volume"},
		{targets([]Part{warm}, measure.Rate{}), "0.00 gal per 1,000 sq ft", "catch test"},
		{topup(TopUpAsk{Left: gal(-1), Volume: gal(5)}), "What is left is -1.00 gal.", "0 gal or more"},
		{topup(TopUpAsk{Left: gal(6), Volume: gal(5)}), "filled to 5.00 gal, but 6.00 gal are in it already", "at least 6.00 gal"},
		{topup(TopUpAsk{Volume: 0}), "The volume to fill to is 0.00 gal.", "more than 0 gal"},
		{topup(TopUpAsk{Volume: gal(5), Left: gal(1), Holds: held("Warm", liquid, lb(1))}), "Warm is liquid", "a volume"},
		{topup(TopUpAsk{Volume: gal(5), Left: gal(1), Holds: held("Warm", liquid, oz(-1))}), "The amount of Warm is -1.00 fl oz.", "0 or more"},
		{topup(TopUpAsk{Volume: gal(5), Targets: []Target{{"Warm", liquid, -1}}}), "The strength meant of Warm", "0 or more"},
		{turn(TurnAsk{Left: gal(5), From: gun}), "A delivery rate is 0.00", "catch test"},
		{turn(TurnAsk{From: gun, To: gun}), "What is left is 0.00 gal.", "more than 0"},
		{stretch(StretchAsk{Delivery: gun}), "What is left is 0.00 gal.", "more than 0"},
		{stretch(StretchAsk{Left: gal(5), Heel: gal(6), Delivery: gun}), "The heel is 6.00 gal of 5.00 gal.", "0 to 5.00 gal"},
		{
			stretch(StretchAsk{Left: gal(5), Delivery: gun, Holds: held("Warm", liquid, oz(5)), Lowest: []Lowest{{Product: "Warm", Rate: measure.Known(wrong.Rate)}}}),
			"Warm is liquid", "a volume",
		},
		{blend(BlendAsk{A: Liquid{Volume: gal(5)}}), "One of the two is 0.00 gal.", "more than 0"},
		{blend(BlendAsk{A: Liquid{Volume: gal(5)}, B: Liquid{Volume: gal(5)}, Capacity: measure.Known(gal(8))}), "Both are 10.0 gal, but the tank holds 8.00 gal.", "at most 3.00 gal"},
		{jug(JugAsk{Product: "Warm", Package: oz(128)}), "is to be split into 0 loads", "1 to 1000"},
		{jug(JugAsk{Product: "Warm", Loads: 3}), "The package of Warm holds nothing.", "Enter"},
		{jug(JugAsk{Product: "Warm", Package: oz(10), Given: []measure.Amount{oz(6), oz(6)}}), "The loads are 12.0 fl oz together, but the package holds 10.0 fl oz of Warm.", "another package"},
		{jug(JugAsk{Product: "Warm", Package: oz(10), Each: measure.Known(oz(11))}), "Each load is 11.0 fl oz of Warm", "at most 10.0 fl oz"},
		{jug(JugAsk{Product: "Warm", Package: oz(10), Each: measure.Known(lb(1))}), "Warm is liquid", "a volume"},
		{use(UseUpAsk{Left: gal(5), Delivery: gun, Thin: -1}), "thinned with -1.00 parts", "0 to 1,000"},
		{tint(TintAsk{Tint: "blue", Left: gal(5), Volume: gal(9)}), "The dose of blue is nothing.", "a gallon"},
		{rinse(RinseAsk{Water: 3, Rinses: 1}), "The residual is 0.00 gal.", "above 0 gal"},
		{rinse(RinseAsk{Residual: 1, Water: -3, Rinses: 1}), "The rinse water is -3.00 gal.", "more than 0"},
		{rinse(RinseAsk{Residual: 1, Water: 3}), "The share that may be left is 0 %.", "above 0"},
		{rinse(RinseAsk{Residual: 1, Water: 1e-9, Share: 0.01}), "do not bring", "more water"},
		{rinse(RinseAsk{Residual: 1, Rinses: 2000, Water: 1}), "rinsed 2000 times", "1 to 1000"},
		{washed(0, 1, 1), "through 0.00 gal", "above 0 gal"},
	} {
		var trouble *measure.Trouble
		if !errors.As(row.err, &trouble) || !strings.Contains(trouble.Error(), row.says) || !strings.Contains(trouble.Do(), row.do) {
			t.Errorf("%v, want %q and %q", row.err, row.says, row.do)
			continue
		}
		for _, s := range []string{trouble.Error(), trouble.Do()} {
			if !strings.HasSuffix(s, ".") || strings.Contains(strings.ToLower(s), "safe") {
				t.Errorf("%q is no plain sentence", s)
			}
		}
	}
}
