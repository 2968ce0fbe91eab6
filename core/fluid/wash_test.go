package fluid

import (
	"math"
	"testing"

	"example.com/tintline/core/measure"
)

const (
	oldMix int32 = 1 // product keys of these tests, both liquid
	newMix int32 = 2
)

const gal = measure.USGallon

// full is v of liquid that holds a tenth of its volume of one product.
func full(v measure.Volume, product, origin int32) Liquid {
	return Liquid{Volume: v, From: Parts{{origin, int64(v)}}, Holds: Parts{{product, int64(v) / 10}}}
}

// changeover is a rig whose cell and hose hold the old mix, lined up on a compartment of the new one, with an
// empty one beside it.
func changeover(cell, hose measure.Volume) *Plumbing {
	p := &Plumbing{
		Compartments: []Compartment{
			{Letter: 'a', Tank: Tank{Capacity: 500 * gal, Origin: 1}},
			{Letter: 'b', Tank: Tank{Capacity: 500 * gal, Origin: 2, Liquid: Liquid{Volume: 400 * gal, Holds: Parts{{newMix, int64(40 * gal)}}}}},
		},
		Cell:    Cell{Size: cell},
		Hoses:   []Hose{{Name: "reel", Size: hose, Charge: []Parcel{{Liquid: full(hose, oldMix, 1)}}}},
		Outside: Accounts{},
	}
	if cell > 0 {
		p.Cell.Liquid = full(cell, oldMix, 1)
	}
	p.Turn(LineUp{Supply: []byte{'b'}, Return: 'b'})
	return p
}

// mixed is all parcels together.
func mixed(parcels []Liquid) Liquid {
	var l Liquid
	for _, q := range parcels {
		l = l.Plus(q)
	}
	return l
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %.10g, not %.10g (within %.1g)", what, got, want, tolerance)
	}
}

// The share of new liquid in a stirred cell after x cell volumes is F = 1-e^-x. The factors are those of
// shared figures: Levenspiel, Chemical Reaction Engineering, 3rd ed. 1999, mixed flow, step response.
func TestCellWashesOutByTheFactors(t *testing.T) {
	const source = "Levenspiel 1999, step response of mixed flow: x = ln(1/(1-F)) cell volumes"
	for _, row := range []struct {
		factor, share float64
		source        string
	}{
		{0.693, 0.50, source},
		{2.303, 0.90, source},
		{2.996, 0.95, source},
		{4.605, 0.99, source},
		{6.908, 0.999, source},
	} {
		for _, cell := range []float64{0.05, 0.2, 0.5} {
			c := Cell{Size: measure.Gallons(cell), Liquid: full(measure.Gallons(cell), oldMix, 1)}
			c.exchange(full(measure.Gallons(cell*row.factor), newMix, 2))
			// The printed factor has four figures, so the share is right to half of its last one.
			near(t, row.source, c.Liquid.ShareFrom(2), row.share, (1-row.share)*0.0006)
			near(t, "the share against 1-e^-x", c.Liquid.ShareFrom(2), -math.Expm1(-row.factor), 1e-8)
		}
	}
}

func TestCellGivesTheSameInOneStepOrMany(t *testing.T) {
	for _, v := range []measure.Volume{gal / 50, gal / 5, gal, 3 * gal} {
		one := Cell{Size: gal / 5, Liquid: full(gal/5, oldMix, 1)}
		whole := one.exchange(full(v, newMix, 2))
		for _, steps := range []int{2, 7, 100, 3000} {
			many := Cell{Size: gal / 5, Liquid: full(gal/5, oldMix, 1)}
			var sum Liquid
			for _, part := range cut(full(v, newMix, 2), steps) {
				sum = sum.Plus(many.exchange(part))
			}
			for _, key := range []int32{oldMix, newMix} {
				d := sum.Holds.Of(key) - whole.Holds.Of(key)
				if d > int64(steps)+1 || d < -int64(steps)-1 {
					t.Errorf("%s gal in %d steps gave %d units more of %d than in one", v.Text(), steps, d, key)
				}
			}
			if sum.Volume != v {
				t.Errorf("%d went in and %d came out", v, sum.Volume)
			}
		}
	}
}

// cut parts a liquid into so many equal steps.
func cut(l Liquid, steps int) []Liquid {
	var out []Liquid
	for n := steps; n > 0; n-- {
		var part Liquid
		part, l = l.Split(l.Volume / measure.Volume(n))
		out = append(out, part)
	}
	return out
}

func TestCellIsEmptyOfOldLiquidInTheEnd(t *testing.T) {
	p := changeover(gal/5, 2*gal)
	p.Draw("reel", 30*gal, 0)
	if n := p.Cell.Liquid.Holds.Of(oldMix); n != 0 {
		t.Errorf("after 150 cell volumes %d nL of the old product are in the cell", n)
	}
	if n := len(p.Hoses[0].Charge); n > 2 {
		t.Errorf("a clean hose holds %d parcels", n)
	}
}

// x_F = Vm ln(1/(1-F)), the flush past the plug's arrival without smearing; totals are Vh + x_F. The printed
// table (Levenspiel's mixed and plug flow in series) includes smearing, which is below 0.005 gal where the
// cell is 0.1 gal or more, so that the printed totals hold to their last figure.
func TestTotalFlush(t *testing.T) {
	const source = "table of flush past hose volume, 3/8 in x 200 ft and 1/2 in x 300 ft; mixed and plug flow in series"
	for _, row := range []struct {
		bore   measure.Length
		feet   float64
		cell   float64
		share  float64
		total  float64
		source string
	}{
		{9525, 200, 0.10, 0.90, 1.38, source},
		{9525, 200, 0.10, 0.99, 1.61, source},
		{9525, 200, 0.20, 0.90, 1.61, source},
		{9525, 200, 0.20, 0.99, 2.07, source},
		{9525, 200, 0.30, 0.90, 1.84, source},
		{9525, 200, 0.50, 0.99, 3.45, source},
		{12700, 300, 0.10, 0.90, 3.30, source},
		{12700, 300, 0.20, 0.90, 3.52, source},
		{12700, 300, 0.20, 0.99, 3.98, source},
		{12700, 300, 0.40, 0.90, 3.98, source},
		{12700, 300, 0.50, 0.99, 5.36, source},
	} {
		hose := BoreVolume(row.bore, measure.Length(row.feet*float64(measure.Foot)))
		flush := firstClean(changeover(measure.Gallons(row.cell), hose), row.share)
		exact := hose.Gallons() + row.cell*math.Log(1/(1-row.share))
		step := max(row.cell/cellSteps, hose.Gallons()/hoseSteps) // parcels are as long as this
		near(t, "the flush against Vh + Vm ln(1/(1-F))", flush, exact, step)
		near(t, row.source, flush, row.total, 0.0105+step)
	}
}

// firstClean is how many gallons leave until the nozzle delivers the share of new liquid.
func firstClean(p *Plumbing, share float64) float64 {
	var sum measure.Volume
	for _, l := range p.Draw("reel", 20*gal, 0) {
		if l.ShareFrom(2) >= share {
			return sum.Gallons()
		}
		sum += l.Volume
	}
	return math.NaN()
}

func TestHoseVolume(t *testing.T) {
	const (
		published = "NWCG Firefighter Math, Table 3.1"
		computed  = "definition: 1 US gal = 231 cu in; V = pi/4 d^2 L"
	)
	for _, row := range []struct {
		inches, feet, gallons, tolerance float64
		source                           string
	}{
		{0.625, 50, 0.8, 0.05, published},
		{0.75, 50, 1.2, 0.06, published + " (printed rounded up)"},
		{1, 100, 4.1, 0.05, published},
		{1.5, 100, 9.2, 0.05, published},
		{0.25, 100, 0.2550, 0.00005, computed},
		{0.3125, 100, 0.3984, 0.00010, computed + "; a bore is kept to the micrometre, this one is 7937.5"},
		{0.375, 100, 0.5737, 0.00005, computed},
		{0.5, 100, 1.0200, 0.00005, computed},
		{0.625, 100, 1.5937, 0.00005, computed},
		{0.75, 100, 2.2950, 0.00005, computed},
		{1, 100, 4.0800, 0.00005, computed},
		{0.375, 300, 0.040800 * 0.375 * 0.375 * 300, 0.00002, "V = 0.040800 d^2 L"},
		{0.5, 300, 0.040800 * 0.5 * 0.5 * 300, 0.00002, "V = 0.040800 d^2 L"},
	} {
		v := BoreVolume(measure.Inches(row.inches), measure.Feet(row.feet))
		near(t, row.source, v.Gallons(), row.gallons, row.tolerance)
	}
}
