package fluid

import (
	"math"
	"testing"

	"example.com/tintline/core/measure"
)

// The rigs of these tests are a hundred times as large as a real one, so that rounding to the unit stays below a
// billionth of what is compared; the equations do not know a scale.
const large = 100

// withReturn is a changeover from a to b, whose return line leads to the compartment named and holds the old mix.
func withReturn(cell, line float64, to byte) *Plumbing {
	p := changeover(measure.Gallons(large*cell), large*gal)
	p.Compartments[0].Capacity, p.Compartments[1].Capacity = 1e6*gal, 1e6*gal
	p.Compartments[1].Liquid = full(1e5*gal, newMix, 2)
	p.Compartments[1].Liquid.From = nil
	p.Compartments = append(p.Compartments, Compartment{Letter: 'c', Tank: Tank{Capacity: 1e6 * gal, Origin: 3}})
	p.Return.Size = measure.Gallons(large * line)
	if line > 0 {
		p.Return.Liquid = full(p.Return.Size, oldMix, 1)
	}
	p.Turn(LineUp{Supply: []byte{'b'}, Return: to})
	return p
}

// integrate is the fourth-order method of Runge and Kutta (1901) with fixed steps: an account of the same flows that
// shares nothing with the ledger.
func integrate(y []float64, until float64, steps int, f func(y, dy []float64)) []float64 {
	n, h := len(y), until/float64(steps)
	k := [4][]float64{make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)}
	at, out := make([]float64, n), append([]float64(nil), y...)
	for range steps {
		for stage, part := range []float64{0, h / 2, h / 2, h} {
			copy(at, out)
			if stage > 0 {
				for i := range at {
					at[i] += part * k[stage-1][i]
				}
			}
			f(at, k[stage])
		}
		for i := range out {
			out[i] += h / 6 * (k[0][i] + 2*k[1][i] + 2*k[2][i] + k[3][i])
		}
	}
	return out
}

// gallonsOf is how many gallons of a mix are in a liquid: it is a tenth of it.
func gallonsOf(mix int32, l Liquid) float64 {
	return float64(l.Holds.Of(mix)) / float64(gal) * 10 / large
}

func inHose(p *Plumbing) Liquid { return p.Hoses[0].Liquid() }

// The cell is swept by gun and bypass together, so that in what leaves the gun it acts as Vm' = Vm qg/(qg+qb); of its
// old liquid Vm' goes through the hose and the rest through the return line (mass balance of a stirred cell with two
// outflows).
func TestCellIsSweptByGunAndBypass(t *testing.T) {
	for _, row := range []struct{ cell, line, gun, bypass float64 }{{0.2, 0.3, 3, 4}, {0.5, 0.05, 2.5, 5.5}, {0.1, 0, 6, 0.5}, {0.2, 0.15, 1, 9}} {
		share := row.gun / (row.gun + row.bypass)
		own := row.cell * share
		for _, x := range []float64{0.01, 0.1, 0.4, 0.9} {
			p := withReturn(row.cell, row.line, 'c')
			hoseOld := gallonsOf(oldMix, inHose(p))
			out := mixed(p.Draw("reel", measure.Gallons(large*x), measure.Gallons(large*x*row.bypass/row.gun)))
			near(t, "the share of new in the cell", p.Cell.Liquid.ShareFrom(2), -math.Expm1(-x/own), 1e-9)
			c := p.Compartment('c')
			back := gallonsOf(oldMix, p.Return.Liquid) + gallonsOf(oldMix, c.Liquid) - row.line
			fore := gallonsOf(oldMix, inHose(p)) + gallonsOf(oldMix, out) - hoseOld
			near(t, "old through the return", back, (row.cell-own)*-math.Expm1(-x/own), 1e-9)
			near(t, "old through the hose", fore, own*-math.Expm1(-x/own), 1e-9)
			// The plug: nothing but old leaves the line until it has passed once.
			passed := x * row.bypass / row.gun
			near(t, "into the other compartment", c.Liquid.Volume.Gallons()/large, passed, 1e-9)
			if passed <= row.line && c.Liquid.Holds.Of(newMix) != 0 {
				t.Errorf("%g gal of a line of %g passed, and new liquid left it", passed, row.line)
			}
			// cell, out by the hose, out by the return: gallons of old liquid, by time in minutes
			y := integrate([]float64{row.cell, 0, 0}, x/row.gun, 4000, func(y, dy []float64) {
				dy[0] = -(row.gun + row.bypass) * y[0] / row.cell
				dy[1], dy[2] = row.gun*y[0]/row.cell, row.bypass*y[0]/row.cell
			})
			near(t, "integrated: old in the cell", gallonsOf(oldMix, p.Cell.Liquid), y[0], 1e-9)
			near(t, "integrated: old by the hose", fore, y[1], 1e-9)
			near(t, "integrated: old by the return", back, y[2], 1e-9)
		}
		// In the end the other compartment has V_return + Vm qb/(qb+qg) of the old liquid.
		p := withReturn(row.cell, row.line, 'c')
		p.Draw("reel", measure.Gallons(large*40*row.cell), measure.Gallons(large*40*row.cell*row.bypass/row.gun))
		if got := gallonsOf(oldMix, p.Compartment('c').Liquid); row.bypass > row.gun/2 {
			near(t, "old liquid sent by the return", got, row.line+row.cell-own, 1e-9)
		}
	}
}

// Suction a, return b: V_A falls by gun and bypass, V_B rises by the bypass, and what comes has the strength of A.
func TestSuctionFromOneReturnToAnother(t *testing.T) {
	const gun, bypass, minutes = 3.0, 4.0, 6.0
	for _, cell := range []float64{0, 0.2} {
		p := withReturn(cell, 0, 'c')
		c := p.Compartment('c')
		c.Liquid = full(large*30*gal, oldMix, 3)
		c.Liquid.From = nil
		c.StartDay()
		before := p.Compartment('b').Liquid.Volume
		p.Draw("reel", measure.Gallons(large*gun*minutes), measure.Gallons(large*bypass*minutes))
		near(t, "drawn from the supply", (before-p.Compartment('b').Liquid.Volume).Gallons()/large, (gun+bypass)*minutes, 1e-9)
		near(t, "in the other", c.Liquid.Volume.Gallons()/large, 30+bypass*minutes, 1e-9)
		if cell == 0 {
			// c_B = (V_B c_B0 + qb t c_A)/(V_B + qb t), of the new mix
			near(t, "share of new", gallonsOf(newMix, c.Liquid)/(c.Liquid.Volume.Gallons()/large), bypass*minutes/(30+bypass*minutes), 1e-9)
		}
		vm := max(cell, 1e-9)
		y := integrate([]float64{0, 0}, minutes, 200_000, func(y, dy []float64) { // gallons of new: in the cell, in c
			in := 1.0
			if cell > 0 {
				in = y[0] / vm
				dy[0] = (gun + bypass) * (1 - in)
			} else {
				dy[0] = 0
			}
			dy[1] = bypass * in
		})
		near(t, "integrated: new in the other", gallonsOf(newMix, c.Liquid), y[1], 1e-8)
		if f := c.Flows; f.Left() != c.Liquid.Volume || f.Other <= 0 || c.Moved != f.Other {
			t.Errorf("flows of the one that receives: %+v, moved %d", f, c.Moved)
		}
	}
}

// Both suctions open with half from each, all bypass back to a: s = qb - Q/2,
// c_A = c_B - (c_B - c_A0)(V_A/V_A0)^(-qb/2/s). It is cut in slices, so it agrees to a share of the change.
func TestBothSuctionsOpen(t *testing.T) {
	for _, row := range []struct{ gun, bypass, minutes, a, b float64 }{{3, 5, 5, 40, 60}, {3, 3.2, 12, 25, 80}, {2, 6, 3, 10, 30}, {3, 1, 8, 50, 50}} {
		p := withReturn(0, 0, 'a')
		a, b := p.Compartment('a'), p.Compartment('b')
		a.Liquid, b.Liquid = full(measure.Gallons(large*row.a), oldMix, 1), full(measure.Gallons(large*row.b), newMix, 2)
		a.Liquid.From, b.Liquid.From = nil, nil
		p.Turn(LineUp{Supply: []byte("ab"), Return: 'a'})
		p.Draw("reel", measure.Gallons(large*row.gun*row.minutes), measure.Gallons(large*row.bypass*row.minutes))
		q := row.gun + row.bypass
		s := row.bypass - q/2
		va := row.a + s*row.minutes
		near(t, "volume of a", a.Liquid.Volume.Gallons()/large, va, 1e-8)
		near(t, "volume of b", b.Liquid.Volume.Gallons()/large, row.b-q/2*row.minutes, 1e-8)
		want := 1 - math.Exp(-row.bypass*row.minutes/2/row.a) // of the new mix in a, s = 0
		if s != 0 {
			want = 1 - math.Pow(va/row.a, -row.bypass/2/s)
		}
		near(t, "share of new in a", gallonsOf(newMix, a.Liquid)/va, want, 1e-3)
		y := integrate([]float64{row.a, 0}, row.minutes, 20_000, func(y, dy []float64) { // volume of a, new in it
			dy[0] = s
			dy[1] = row.bypass*(0.5*y[1]/y[0]+0.5) - q/2*y[1]/y[0]
		})
		near(t, "integrated: new in a", gallonsOf(newMix, a.Liquid), y[1], 1e-3*y[1])
		near(t, "the closed form, integrated", y[1]/y[0], want, 1e-9)
	}
}

// The same with a cell between: no closed form, so the integration stands alone.
func TestBothSuctionsOpenWithACell(t *testing.T) {
	const cell, gun, bypass, minutes = 0.3, 3.0, 5.0, 4.0
	p := withReturn(cell, 0, 'a')
	a, b := p.Compartment('a'), p.Compartment('b')
	a.Liquid, b.Liquid = full(large*40*gal, oldMix, 1), full(large*60*gal, newMix, 2)
	a.Liquid.From, b.Liquid.From = nil, nil
	p.Turn(LineUp{Supply: []byte("ab"), Return: 'a'})
	p.Draw("reel", measure.Gallons(large*gun*minutes), measure.Gallons(large*bypass*minutes))
	const q = gun + bypass
	y := integrate([]float64{40, 0, 0}, minutes, 20_000, func(y, dy []float64) { // volume of a; new in a and in the cell
		dy[0] = bypass - q/2
		dy[1] = bypass*y[2]/cell - q/2*y[1]/y[0]
		dy[2] = q * ((y[1]/y[0]+1)/2 - y[2]/cell)
	})
	near(t, "new in a", gallonsOf(newMix, a.Liquid), y[1], 1e-3*y[1])
	near(t, "new in the cell", gallonsOf(newMix, p.Cell.Liquid), y[2], 1e-3*y[2])
}

// The return stays on the old compartment for T minutes while b feeds the pump: b loses
// qb T - qb/(qb+qg) Vm (1 - e^(-(qb+qg)T/Vm)), of which up to V_return is still in the line.
func TestReturnHeldOnTheOldCompartment(t *testing.T) {
	for _, row := range []struct{ cell, line, gun, bypass, minutes float64 }{{0.2, 0.1, 3, 4, 1}, {0.2, 0.4, 3, 4, 0.05}, {0.5, 0, 2.5, 5.5, 0.2}} {
		p := withReturn(row.cell, row.line, 'a')
		p.Draw("reel", measure.Gallons(large*row.gun*row.minutes), measure.Gallons(large*row.bypass*row.minutes))
		q := row.gun + row.bypass
		lost := row.bypass*row.minutes - row.bypass/q*row.cell*-math.Expm1(-q*row.minutes/row.cell)
		in := gallonsOf(newMix, p.Return.Liquid)
		near(t, "lost to the old compartment and the line", gallonsOf(newMix, p.Compartment('a').Liquid)+in, lost, 1e-9)
		if in > row.line+1e-9 {
			t.Errorf("%g gal of it are in a line of %g", in, row.line)
		}
		y := integrate([]float64{0, 0}, row.minutes, 20_000, func(y, dy []float64) { // new in the cell, new by the return
			dy[0] = q * (1 - y[0]/row.cell)
			dy[1] = row.bypass * y[0] / row.cell
		})
		near(t, "integrated: lost", lost, y[1], 1e-9)
	}
}

// Where the return leads to the supply itself and all are of one liquid, what goes round changes nothing and is not
// cut; what stood in the line goes into the supply first.
func TestBypassIntoTheSupply(t *testing.T) {
	p := withReturn(0.2, 0.3, 'b')
	b := p.Compartment('b')
	before := b.Liquid.Volume
	p.Draw("reel", large*2*gal, large*3*gal)
	if got := before - b.Liquid.Volume; got != large*2*gal {
		t.Errorf("%s gal left the supply, not what left the nozzle", got.Text())
	}
	if b.Flows.Drawn != large*2*gal || b.Moved != b.Flows.Drawn || b.Flows.Other != 0 {
		t.Errorf("flows %+v, moved %d", b.Flows, b.Moved)
	}
	own := 0.2 * 2 / 5
	sent := 0.3 + (0.2-own)*-math.Expm1(-2/own)
	// Some of it has been drawn again: 0.42 gal in 100,000 is one part in 240,000.
	near(t, "old liquid in the supply", gallonsOf(oldMix, b.Liquid)/1000*1000, sent, 1e-3)
	p.Draw("reel", large*20*gal, large*30*gal)
	q := p.Sketch()
	if r := (round{p: q, from: q.open(), to: q.Compartment('b'), gun: 1, bypass: 1}); !r.settled() {
		t.Error("after a hundred cells they are not of one liquid")
	}
	q.Draw("reel", gal, 0)
	p.Draw("reel", gal, 5*gal)
	if !near0(p.Compartment('b').Liquid, q.Compartment('b').Liquid) {
		t.Errorf("of one liquid, a bypass makes %v of %v", p.Compartment('b').Liquid, q.Compartment('b').Liquid)
	}
}

// near0 tells whether two liquids are the same volume and hold the same within a thousand units.
func near0(a, b Liquid) bool {
	for _, d := range a.Holds.Minus(b.Holds) {
		if d.N > 1000 || d.N < -1000 {
			return false
		}
	}
	return a.Volume == b.Volume
}

// What is not there cannot go round: a supply that holds just what the gun takes gives that, and nothing is made up.
func TestBypassOfAnEmptyingSupply(t *testing.T) {
	p := withReturn(0.2, 0.1, 'b')
	b := p.Compartment('b')
	b.Liquid, _ = b.Liquid.Split(large * 2 * gal)
	p.Draw("reel", large*2*gal, large*9*gal)
	if f := b.Flows; f.Unexplained != 0 || b.Liquid.Volume != 0 {
		t.Errorf("flows %+v, %s gal left", f, b.Liquid.Volume.Text())
	}
}

func BenchmarkDrawWithBypass(b *testing.B) {
	for _, row := range []struct {
		name   string
		bypass measure.Volume
		warm   bool
	}{{"none", 0, true}, {"settled", 15 * gal, true}, {"none, changeover", 0, false}, {"changeover", 15 * gal, false}} {
		b.Run(row.name, func(b *testing.B) {
			p := changeover(gal/5, 2*gal)
			p.Return.Size, p.Return.Liquid = gal/4, full(gal/4, oldMix, 1)
			if row.warm {
				p.Draw("reel", 20*gal, 30*gal)
			}
			b.ReportAllocs()
			for range b.N {
				p.Sketch().Draw("reel", 11*gal, row.bypass)
			}
		})
	}
}
