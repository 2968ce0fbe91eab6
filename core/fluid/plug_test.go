package fluid

import (
	"math"
	"testing"

	"example.com/tintline/core/measure"
	"pgregory.net/rapid"
)

func TestWhatWentInFirstLeavesFirst(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := Hose{Size: 1000 * drop, Charge: []Parcel{{Liquid: full(1000*drop, oldMix, 0)}}}
		in := []Liquid{full(1000*drop, oldMix, 0)}
		var out []Liquid
		for i := range int32(40) {
			// Each parcel has an origin of its own, so that none becomes one with its neighbour.
			l := full(measure.Volume(rapid.Int64Range(drop, 300*drop).Draw(t, "in")), newMix, i+1)
			in = append(in, l)
			out = append(out, h.push(l)...)
		}
		for _, p := range h.Charge {
			out = append(out, p.Liquid)
		}
		for i := 0; len(out) > 0; i++ {
			var got Liquid
			for len(out) > 0 && out[0].From[0].Key == in[i].From[0].Key {
				got, out = got.Plus(out[0]), out[1:]
			}
			if got.Volume != in[i].Volume || got.Holds.Minus(in[i].Holds).Sum() != 0 {
				t.Fatalf("parcel %d went in as %v and left as %v", i, in[i], got)
			}
		}
	})
}

func TestDropAfterDropStillMakesParcels(t *testing.T) {
	p := changeover(gal/5, gal)
	for range 4000 {
		p.Draw("reel", drop/2, 0)
	}
	h := &p.Hoses[0]
	last := h.Charge[len(h.Charge)-1]
	if last.Volume > p.Cell.Size/cellSteps {
		t.Errorf("the last parcel is %d nL of 20,000,000 nL that went in", last.Volume)
	}
	if n := h.Charge[0].Holds.Of(newMix); n != 0 {
		t.Errorf("the parcel at the nozzle holds %d of what is still behind it", n)
	}
}

func TestOriginsRightAfterTheChangeover(t *testing.T) {
	p := changeover(gal/5, 2*gal)
	for _, l := range p.Draw("reel", 2*gal, 0) {
		if l.ShareFrom(1) != 1 || l.Holds.Of(newMix) != 0 {
			t.Fatalf("before the hose volume has left, %v comes out", l)
		}
	}
	first := p.Draw("reel", gal/80, 0)[0]
	// A sixteenth of the cell has passed: its mean share of new liquid is 1 - (1-e^-x)/x at x = 1/16.
	near(t, "the new share in the first parcel", first.ShareFrom(2), 1-(-math.Expm1(-1.0/16))*16, 1e-6)
	near(t, "the new product's share of its strength", float64(first.Strength(newMix))*10, first.ShareFrom(2), 1e-6)
}

func TestAirLeavesFirstAndIsNotCounted(t *testing.T) {
	p := changeover(gal/5, 2*gal)
	before := p.Compartments[1].Liquid.Volume
	p.Dump(HosePlace("reel"), 2*gal, WastePlace("pad"))
	if p.Hoses[0].Air() != 2*gal || p.Outside[WastePlace("pad")].Volume != 2*gal {
		t.Fatalf("drained hose: %v", p.Hoses[0])
	}
	needs := p.Needs("reel", gal, 0)
	out := mixed(p.Draw("reel", gal, 0))
	if took := before - p.Compartments[1].Liquid.Volume; out.Volume != gal || took != 3*gal || needs != took {
		t.Errorf("1 gal took %s from the compartment, %s were foreseen; the hose holds 2 and was empty", took.Text(), needs.Text())
	}
	if p.Hoses[0].Air() != 0 {
		t.Errorf("%s of air are left in the hose", p.Hoses[0].Air().Text())
	}
}

// delivered is what has left the nozzle n gallons after a changeover of a cell (strength c0 in it, c1 behind
// it) and a hose of strength c0, by closed form: before the hose volume Vh only old liquid leaves; x gallons
// after it, old liquid has left to Vh + Vm(1-e^(-x/Vm)) gallons, the rest is new (mixed and plug flow in
// series, Levenspiel 1999).
func delivered(n, cell, hose float64) (old, fresh float64) {
	x := max(n-hose, 0)
	old = min(n, hose)
	if cell > 0 {
		old += cell * -math.Expm1(-x/cell)
	}
	return old, n - old
}

// integrated is the same by a fixed-step RK4 of the cell's balance dc/dv = (1-c)/Vm, behind a delay of Vh.
func integrated(n, cell, hose float64) (old, fresh float64) {
	const steps = 20_000
	c, h := 0.0, max(n-hose, 0)/steps
	slope := func(c float64) float64 { return (1 - c) / cell }
	for range steps {
		k1 := slope(c)
		k2 := slope(c + h/2*k1)
		k3 := slope(c + h/2*k2)
		k4 := slope(c + h*k3)
		mid := c + h/2*k2
		next := c + h/6*(k1+2*k2+2*k3+k4)
		fresh += h / 6 * (c + 4*mid + next)
		c = next
	}
	return n - fresh, fresh
}

func TestLongHoseAfterChangeover(t *testing.T) {
	hose := BoreVolume(measure.Inches(0.375), measure.Feet(300))
	for _, cell := range []float64{0.05, 0.2, 0.5} {
		for _, n := range []float64{0.5, 1.7, 1.75, 1.9, 2.1, 2.5, 3, 4, 6, 11, 40} {
			p := changeover(measure.Gallons(cell), hose)
			size, vh := p.Cell.Size.Gallons(), hose.Gallons()
			out := mixed(p.Draw("reel", measure.Gallons(n), 0))
			old, fresh := delivered(n, size, vh)
			rkOld, rkFresh := integrated(n, size, vh)
			near(t, "the closed form against RK4", fresh, rkFresh, 1e-6*n)
			// Both mixes hold a tenth of their volume of one product. A cut within a parcel is off by at most an
			// eighth of a step times the change over it.
			near(t, "old product, of all that left", float64(out.Holds.Of(oldMix))/float64(gal)*10/n, old/n, 1e-4)
			near(t, "new product, of all that left", float64(out.Holds.Of(newMix))/float64(gal)*10/n, fresh/n, 1e-4)
			near(t, "old product against RK4", float64(out.Holds.Of(oldMix))/float64(gal)*10/n, rkOld/n, 1e-4)
			if n >= 2.5 {
				near(t, "old product, relative", float64(out.Holds.Of(oldMix))/float64(gal)*10/old, 1, 1e-4)
				near(t, "new product, relative", float64(out.Holds.Of(newMix))/float64(gal)*10/fresh, 1, 2e-4)
			}
		}
	}
}

func TestAmountsAtParcelEdgesAreExact(t *testing.T) {
	hose := BoreVolume(measure.Inches(0.375), measure.Feet(300))
	for _, k := range []measure.Volume{1, 5, 16, 48, 160} {
		q := changeover(gal/5, hose)
		step := q.Cell.Size / cellSteps
		out := mixed(q.Draw("reel", hose+k*step, 0)).Holds.Of(newMix)
		x := float64(k*step) / float64(q.Cell.Size)
		want := float64(q.Cell.Size) * (x + math.Expm1(-x)) / 10
		near(t, "new product at a parcel's edge, in nL", float64(out), want, float64(k)+1) // a unit a step
	}
}

func TestPushBackGoesIntoTheCompartmentAsItLeaves(t *testing.T) {
	hose := BoreVolume(measure.Inches(0.375), measure.Feet(200))
	p := changeover(gal/5, hose)
	n := 2.07
	p.PushBack("reel", measure.Gallons(n), 0, p.Compartment('a'))
	old, fresh := delivered(n, p.Cell.Size.Gallons(), hose.Gallons())
	a := p.Compartment('a')
	near(t, "old product in a", float64(a.Liquid.Holds.Of(oldMix))/float64(gal)*10, old, 2e-4)
	near(t, "new product in a", float64(a.Liquid.Holds.Of(newMix))/float64(gal)*10, fresh, 2e-4)
	if a.Flows.PushedIn != measure.Gallons(n) || a.Liquid.Volume != measure.Gallons(n) {
		t.Errorf("a got %s and holds %s", a.Flows.PushedIn.Text(), a.Liquid.Volume.Text())
	}
}

func TestReturnLineIsSweptOnceAfterTheValvesTurn(t *testing.T) {
	p := changeover(gal/5, 2*gal)
	p.ResizeReturn(gal / 10)
	p.Return.Liquid = full(gal/10, oldMix, 1)
	a, b := p.Compartment('a'), p.Compartment('b')
	p.Turn(LineUp{Supply: []byte{'b'}, Return: 'a'})
	p.Draw("reel", gal, 0)
	if a.Liquid.Volume != gal/10 || a.Liquid.Holds.Of(oldMix) != int64(gal/10)/10 {
		t.Errorf("a got %v; the return line stood full of the old mix", a.Liquid)
	}
	if p.Return.Liquid.ShareFrom(2) != 1 {
		t.Errorf("the return line holds %v", p.Return.Liquid)
	}
	p.Draw("reel", gal, 0)
	if a.Liquid.Volume != gal/10 || 400*gal-b.Liquid.Volume != 2*gal+gal/10 {
		t.Errorf("the second draw moved more: a %s, b %s", a.Liquid.Volume.Text(), b.Liquid.Volume.Text())
	}
	p.Dump(ReturnPlace, gal, WastePlace("pad"))
	p.Draw("reel", gal, 0)
	if p.Return.Liquid.Volume != gal/10 {
		t.Errorf("a drained return line stays at %s while the pump runs", p.Return.Liquid.Volume.Text())
	}
}

// A push-back into the compartment that feeds the pump does not depend on how many entries it is written in.
func TestPushBackIntoItsOwnSupplyInOneOrInMany(t *testing.T) {
	fresh := func() *Plumbing {
		p := &Plumbing{Outside: Accounts{}, Cell: Cell{Size: measure.Gallons(0.2)}}
		p.Cell.Liquid = Water(p.Cell.Size, 0)
		hose := measure.Gallons(1.72)
		p.Hoses = []Hose{{Name: "h", Size: hose, Charge: []Parcel{{Liquid: Water(hose, 0)}}}}
		c := Compartment{Letter: 'a', Tank: Tank{Capacity: measure.Gallons(300), Origin: 1}}
		c.Liquid = Liquid{Volume: measure.Gallons(50), Holds: Parts{{Key: 0, N: 1_000_000_000_000}}}
		p.Compartments = []Compartment{c}
		p.Turn(LineUp{Supply: []byte{'a'}, Return: 'a'})
		return p
	}
	one, many := fresh(), fresh()
	one.PushBack("h", measure.Gallons(4), 0, one.Compartment('a'))
	for range 400 {
		many.PushBack("h", measure.Gallons(0.01), 0, many.Compartment('a'))
	}
	for what, pair := range map[string][2]Liquid{
		"compartment": {one.Compartment('a').Liquid, many.Compartment('a').Liquid},
		"hose":        {one.Hose("h").Liquid(), many.Hose("h").Liquid()},
	} {
		x, y := float64(pair[0].Holds.Of(0)), float64(pair[1].Holds.Of(0))
		if d := x/y - 1; max(d, -d) > 1e-4 {
			t.Errorf("%s holds %.9g in one entry and %.9g in many", what, x, y)
		}
	}
}
