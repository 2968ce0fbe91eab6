package batch

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core/measure"
)

// What is measured out, as a person reads it off. Where a source stands the figure is published; the others are worked out by hand.
func TestMeasuredTable(t *testing.T) {
	liquid := func(v measure.Volume) measure.Amount { return measure.LiquidAmount(v) }
	dry := func(m measure.Mass) measure.Amount { return measure.DryAmount(m) }
	none := measure.Amount{}
	for _, row := range []struct {
		metric bool
		a      measure.Amount
		pack   measure.Amount
		want   string
		err    float64 // per cent
		source string
	}{
		{false, liquid(measure.FluidOunces(128)), none, "1 gal", 0, "NIST Handbook 44 (2024), Appendix C: 1 gal = 128 fl oz"},
		{false, liquid(measure.Gallons(1)), none, "1 gal", 0, "by hand"},
		{false, liquid(measure.Quarts(4)), none, "1 gal", 0, "NIST Handbook 44 (2024), Appendix C: 4 qt = 1 gal"},
		{false, liquid(measure.Pints(3)), none, "1 qt 16 fl oz", 0, "NIST Handbook 44 (2024), Appendix C: 2 pt = 1 qt, 16 fl oz = 1 pt"},
		{false, liquid(measure.FluidOunces(197)), none, "1 gal 2 qt 5 fl oz", 0, "by hand: 128 + 64 + 5"},
		{false, liquid(measure.FluidOunces(5.12)), none, "5 fl oz", -2.34375, "by hand: 0.12 of 5.12"},
		{false, liquid(measure.FluidOunces(5.3)), none, "5 1/2 fl oz", 3.773585, "by hand: 0.2 of 5.3"},
		{false, liquid(measure.FluidOunces(127.9)), none, "1 gal", 0.078186, "by hand: rounds up to the gallon"},
		{false, liquid(measure.FluidOunces(31.8)), none, "1 qt", 0.628931, "by hand: rounds up to the quart"},
		{false, dry(measure.Ounces(35.5)), none, "2 lb 3 1/2 oz", 0, "NIST Handbook 44 (2024), Appendix C: 16 oz = 1 lb"},
		{false, dry(measure.Ounces(15.9)), none, "1 lb", 0.628931, "by hand: rounds up to the pound"},
		{true, liquid(measure.Pints(1)), none, "475 mL", 0.385370, "University of Nebraska-Lincoln Pesticide Safety Education: 473.2 mL a pint"},
		{true, liquid(measure.Millilitres(2350)), none, "2 L 350 mL", 0, "by hand"},
		{true, dry(measure.Ounces(1)), none, "28 g", -1.232913, "NIST SP 365: 28.35 g an ounce"},
		{true, dry(measure.Pounds(1)), none, "454 g", 0.089867, "NIST SP 811 (2008): 453.5924 g a pound"},
		{true, dry(measure.Grams(1250)), none, "1 kg 250 g", 0, "by hand"},
		{false, liquid(measure.Gallons(2.5) + measure.FluidOunces(36)), liquid(measure.Gallons(2.5)), "1 whole jug of 2.5 gal and 1 qt 4 fl oz", 0, "by hand"},
		{false, liquid(measure.Gallons(4.999)), liquid(measure.Gallons(2.5)), "2 whole jugs of 2.5 gal", 0.020004, "by hand: rounds up to the jug"},
		{false, dry(measure.Pounds(100)), dry(measure.Pounds(50)), "2 whole bags of 50 lb", 0, "by hand"},
		{false, liquid(0), none, "nothing", 0, "by hand"},
		{false, liquid(measure.FluidOunces(0.2)), none, "under 1/2 fl oz, the smallest mark", -100, "by hand"},
	} {
		m, err := UsualRuler(row.metric).Measure("P", row.a, row.pack)
		if err != nil || m.Words != row.want || math.Abs(m.ErrorPct-row.err) > 1e-5 {
			t.Errorf("%s (%s): %q %.6f %v, want %q %.6f", row.a.Text(), row.source, m.Words, m.ErrorPct, err, row.want, row.err)
		}
	}
}

// Where the marks are too coarse a finer way is given, and what it puts in is nearer.
func TestMeasuredFiner(t *testing.T) {
	for _, row := range []struct {
		metric bool
		a      measure.Amount
		want   string
	}{
		{false, measure.LiquidAmount(measure.FluidOunces(0.2)), "make a pre-mix: 1/2 fl oz of it and water to 32 fl oz, stir, put in 13 fl oz, 1.6 % more than asked"}, // 12.8
		{false, measure.LiquidAmount(measure.FluidOunces(0.7)), "make a pre-mix: 1 fl oz of it and water to 32 fl oz, stir, put in 22 1/2 fl oz, 0.4 % more than asked"},
		{false, measure.DryAmount(measure.Grams(20.3)), "weigh 20 g on a scale in grams, 1.5 % less than asked"},
		{false, measure.DryAmount(measure.Grams(0.2)), "make a pre-mix: 1 g of it and water to 32 fl oz, stir, put in 6 1/2 fl oz, 1.6 % more than asked"},
		{true, measure.DryAmount(measure.Grams(0.25)), "make a pre-mix: 1 g of it and water to 1000 mL, stir, put in 250 mL, within 0.1 %"},
		{true, measure.LiquidAmount(measure.Millilitres(2)), "make a pre-mix: 5 mL of it and water to 1000 mL, stir, put in 400 mL, within 0.1 %"},
	} {
		r := UsualRuler(row.metric)
		r.MostError = 2
		m, err := r.Measure("P", row.a, measure.Amount{})
		if err != nil || !m.Finer.Known || m.Finer.V.Says != row.want {
			t.Errorf("%s: %+v %v, want %q", row.a.Text(), m.Finer, err, row.want)
		}
	}
	tiny, err := UsualRuler(false).Measure("P", measure.LiquidAmount(measure.FluidOunces(0.001)), measure.Amount{})
	if err != nil || tiny.Finer.Known || !tiny.Below {
		t.Errorf("%+v %v", tiny, err)
	}
}

func TestMeasuredRefuses(t *testing.T) {
	for _, row := range []struct {
		a, pack measure.Amount
		want    string
	}{
		{measure.Amount{N: -1}, measure.Amount{}, "The amount of P is above -0.001 fl oz."},
		{measure.Amount{N: 1 << 62}, measure.Amount{}, "The amount of P is 1,220,000,000 gal."},
		{measure.Amount{N: 5}, measure.Amount{N: -5}, "A package of P holds above -0.001 fl oz."},
		{measure.LiquidAmount(measure.USGallon), measure.DryAmount(measure.Pound), "P is liquid and is measured by volume, but 1.00 lb is a weight."},
		{measure.DryAmount(measure.Pound), measure.LiquidAmount(measure.USGallon), "P is dry and is weighed, but 1.00 gal is a volume."},
	} {
		_, err := UsualRuler(false).Measure("P", row.a, row.pack)
		if err == nil || err.Error() != row.want {
			t.Errorf("%v: %v, want %q", row.a, err, row.want)
		}
	}
	r := UsualRuler(false)
	r.CupMark = math.NaN()
	if _, err := r.Measure("P", measure.LiquidAmount(5), measure.Amount{}); err == nil {
		t.Error("a cup without marks measures")
	}
}

// Whole packages and portions are together what is rounded to, to the last unit; what is asked for is at most half a mark away; the
// error is that of the amounts; the portions read back as printed; the finer way is nearer than it has to be.
func TestMeasuredAddsUp(t *testing.T) {
	units := map[string]int64{
		gal: int64(measure.USGallon), qt: int64(measure.USQuart), lb: int64(measure.Pound), oz: int64(measure.Ounce),
		ltr: int64(measure.Litre), ml: int64(measure.Millilitre), kg: int64(measure.Kilogram), gram: int64(measure.Gram),
	}
	rapid.Check(t, func(t *rapid.T) {
		r := UsualRuler(rapid.Bool().Draw(t, "metric"))
		r.CupMark = rapid.SampledFrom([]float64{r.CupMark, 0.25, 1, 0.3, 7}).Draw(t, "cup")
		kind := measure.Kind(rapid.IntRange(0, 1).Draw(t, "kind"))
		a := measure.Amount{N: rapid.OneOf(rapid.Int64Range(0, 1e15), rapid.Int64Range(0, 1e10)).Draw(t, "amount"), Kind: kind}
		pack := measure.Amount{N: rapid.OneOf(rapid.Just(int64(0)), rapid.Int64Range(1e9, 1e14)).Draw(t, "package"), Kind: kind}
		m, err := r.Measure("P", a, pack)
		if err != nil {
			t.Fatal(err)
		}
		sum := m.Whole * pack.N
		for _, p := range m.Parts {
			if n, ok := units[p.Unit]; ok {
				sum += measure.MulDivRound(p.Hundredths, n, 100)
			} else {
				sum += measure.MulDivRound(p.Hundredths, int64(measure.USPint), 1600)
			}
		}
		if sum != m.Rounded.N || m.Rest.N != sum-m.Whole*pack.N {
			t.Fatalf("%v: portions %d, rounded %d, rest %d", m, sum, m.Rounded.N, m.Rest.N)
		}
		s, _ := r.scale(kind)
		if off := m.Rounded.N - a.N; 2*max(off, -off) > s.at(s.hundredths)+2 {
			t.Fatalf("%s became %s", a.Text(), m.Rounded.Text())
		}
		if a.N > 0 && math.Abs(float64(a.N)*(1+m.ErrorPct/100)-float64(m.Rounded.N)) > 1 {
			t.Fatalf("%d by %v per cent is not %d", a.N, m.ErrorPct, m.Rounded.N)
		}
		if m.Finer.Known && math.Abs(m.Finer.V.ErrorPct) > r.MostError {
			t.Fatalf("%+v", m.Finer)
		}
		if !m.Below && math.Abs(m.ErrorPct) <= r.MostError && m.Finer.Known {
			t.Fatalf("a finer way for %v", m)
		}
		if m.Words == "" || strings.Contains(m.Words, "?") {
			t.Fatalf("%q", m.Words)
		}
	})
}

// What is taken out of packages and what is left in them is what was in them.
func TestOpen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pack := measure.Amount{N: rapid.Int64Range(1, 1e12).Draw(t, "package")}
		open := measure.Amount{N: rapid.Int64Range(0, pack.N).Draw(t, "open")}
		take := measure.Amount{N: rapid.Int64Range(0, 1e13).Draw(t, "take")}
		o, err := Open("P", take, open, pack)
		if err != nil {
			t.Fatal(err)
		}
		if open.N+o.Opened*pack.N != take.N+o.Left.N || o.Left.N < 0 || o.Left.N > pack.N || o.FromOpen.N > open.N {
			t.Fatalf("%+v", o)
		}
		before := o.Opened
		if open.N > 0 {
			before++
		}
		if after := before - o.Empty; after < 0 || after > 1 || (after == 1) != (o.Left.N > 0) {
			t.Fatalf("%d packages are open then: %+v", after, o)
		}
	})
	two := measure.LiquidAmount(measure.Gallons(2.5))
	o, err := Open("P", measure.LiquidAmount(measure.Gallons(4)), measure.LiquidAmount(measure.Gallons(1)), two)
	if err != nil || o.Opened != 2 || o.Left.N != int64(measure.Gallons(2)) || o.Empty != 2 || o.FromOpen.N != int64(measure.USGallon) {
		t.Errorf("%+v %v", o, err)
	}
	for _, bad := range [][3]measure.Amount{
		{{N: -1}, {}, two}, {{}, {N: -1}, two}, {{N: 5}, {}, {}}, {{N: 5}, {N: two.N + 1}, two}, {{N: 5, Kind: measure.Dry}, {}, two},
	} {
		if _, err := Open("P", bad[0], bad[1], bad[2]); err == nil {
			t.Errorf("%v is not refused", bad)
		}
	}
}

// The published price of a package, and what a load of it costs, worked out by hand: 20 fl oz of 320 for $96.00 are $6.00.
func TestCost(t *testing.T) {
	pack := measure.LiquidAmount(measure.Gallons(2.5))
	c, err := CostOf([]Priced{
		{"A", measure.LiquidAmount(measure.FluidOunces(20)), measure.Known(96 * measure.Dollar), pack},
		{"B", measure.DryAmount(measure.Pounds(125)), measure.Known(20 * measure.Dollar), measure.DryAmount(measure.Pounds(50))},
		{Product: "C", Amount: measure.LiquidAmount(5)},
	})
	if err != nil || c.Total != 56*measure.Dollar || c.Each[0].V != 6*measure.Dollar || len(c.Unpriced) != 1 || c.Unpriced[0] != "C" || len(c.Steps) != 3 {
		t.Errorf("%+v %v", c, err)
	}
	if _, err := CostOf([]Priced{{"A", measure.DryAmount(5), measure.Known(measure.Dollar), pack}}); err == nil {
		t.Error("a liquid by weight has a price")
	}
	if _, err := CostOf([]Priced{{Product: "A", Amount: measure.Amount{N: -5}}}); err == nil {
		t.Error("a negative amount has a price")
	}
}

func TestMarks(t *testing.T) {
	for _, name := range []string{CupMarkFlOz, CupMarkML, ScaleMarkOz, ScaleMarkG, PremixFlOz, PremixML, MeasureErrorPct} {
		if l := Mark(name); !(l.Value > 0) || l.Source == "" || l.Unit == "" {
			t.Errorf("%s: %+v", name, l)
		}
	}
}
