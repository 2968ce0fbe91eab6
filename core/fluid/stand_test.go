package fluid

import (
	"testing"

	"example.com/tintline/core/measure"
)

// The valves stand so with the gun shut: the pump draws from b and the return leads to a, while liquid levels over from a
// into b. The ledger goes slice by slice; the same flows, integrated, agree to a thousandth of what has moved.
func TestStandAgainstIntegration(t *testing.T) {
	for _, row := range []struct{ cell, pump, level, minutes, a, b float64 }{{0.2, 6, 4, 5, 60, 40}, {0, 6, 0, 5, 60, 40}, {0.5, 3, 9, 3, 60, 10}} {
		p := withReturn(row.cell, 0, 'a')
		a, b := p.Compartment('a'), p.Compartment('b')
		a.Liquid, b.Liquid = full(measure.Gallons(large*row.a), oldMix, 1), full(measure.Gallons(large*row.b), newMix, 2)
		a.Liquid.From, b.Liquid.From = nil, nil
		a.StartDay()
		b.StartDay()
		before := p.Sum()
		p.Stand([]Drawing{{'b', measure.Gallons(large * row.pump * row.minutes)}}, []Levelling{{'a', 'b', measure.Gallons(large * row.level * row.minutes)}}, "waste/overflow")
		if after := p.Sum(); after.Volume != before.Volume || len(after.Holds.Minus(before.Holds)) > 0 {
			t.Fatalf("%v became %v", before, after)
		}
		near(t, "volume of a", a.Liquid.Volume.Gallons()/large, row.a+(row.pump-row.level)*row.minutes, 1e-8)
		near(t, "volume of b", b.Liquid.Volume.Gallons()/large, row.b-(row.pump-row.level)*row.minutes, 1e-8)
		near(t, "flows of a", float64(a.Flows.Left()-a.Liquid.Volume), 0, 0)
		vm := max(row.cell, 1e-3) // a cell of nothing, as small as the integration can take
		y := integrate([]float64{0, row.b, 0, row.a, row.b}, row.minutes, 200_000, func(y, dy []float64) {
			// gallons of the new mix in a, b and cell; volumes of a and b
			inA, inB, inCell := y[0]/y[3], y[1]/y[4], y[2]/vm
			dy[0] = row.pump*inCell - row.level*inA
			dy[1] = row.level*inA - row.pump*inB
			dy[2] = row.pump * (inB - inCell)
			dy[3], dy[4] = row.pump-row.level, row.level-row.pump
		})
		near(t, "new mix in a", gallonsOf(newMix, a.Liquid), y[0], 2e-3*row.pump*row.minutes)
		near(t, "new mix in b", gallonsOf(newMix, b.Liquid), y[1], 2e-3*row.pump*row.minutes)
	}
}

// What finds no room goes where it is said to, and nothing else does.
func TestStandRunsOver(t *testing.T) {
	p := withReturn(0.2, 0.1, 'c')
	c := p.Compartment('c')
	c.Capacity = 3 * gal
	p.Stand([]Drawing{{'b', 10 * gal}}, nil, "waste/overflow")
	if over := p.Outside["waste/overflow"].Volume; c.Liquid.Volume != 3*gal || over != 7*gal {
		t.Errorf("%s gal in c, %s over", c.Liquid.Volume.Text(), over.Text())
	}
	q := withReturn(0.2, 0.1, 'c')
	q.Compartment('c').Capacity = 3 * gal
	q.Stand(nil, []Levelling{{'b', 'c', 10 * gal}}, "waste/overflow")
	if over := q.Outside["waste/overflow"].Volume; over != 7*gal {
		t.Errorf("%s gal levelled over the rim", over.Text())
	}
}

// With the return on the supply itself the volume stays, and what stood in cell and line comes into it.
func TestStandStirsOnly(t *testing.T) {
	p := withReturn(0.2, 0.3, 'b')
	b := p.Compartment('b')
	before := b.Liquid.Volume
	p.Stand([]Drawing{{'b', large * 40 * gal}}, nil, "waste/overflow")
	if b.Liquid.Volume != before || b.Flows.Other != 0 || b.Moved != 0 {
		t.Errorf("flows %+v, moved %d", b.Flows, b.Moved)
	}
	// Spread evenly over the 1,000 gal of the supply, the cell and the line.
	near(t, "old liquid in the supply", gallonsOf(oldMix, b.Liquid), 0.5*1000/1000.5, 1e-6)
	if b.Strange.Of(1) == 0 || b.Strange.Sum() > int64(b.Liquid.Volume) {
		t.Errorf("strangers %v", b.Strange)
	}
}
