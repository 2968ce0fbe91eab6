package measure

import (
	"math"
	"strings"
	"testing"
)

// The figures are printed ones, to the digits of the source, in SI units.
func TestUnitsAgreeWithPublishedFactors(t *testing.T) {
	const sp811 = "NIST SP 811 (2008) Appendix B.8"
	const h44 = "NIST Handbook 44 Appendix C"
	tests := []struct {
		quantity, unit, per string
		want                float64
		source              string
	}{
		{"volume", "gal", "m3", 3.785412e-03, sp811},
		{"volume", "fl_oz", "ml", 29.57353, sp811},
		{"volume", "pt", "l", 4.731765e-01, sp811},
		{"volume", "qt", "l", 9.463529e-01, sp811},
		{"volume", "tbsp", "ml", 14.78676, sp811},
		{"volume", "tsp", "ml", 4.928922, sp811},
		{"volume", "gal", "fl_oz", 128, h44},
		{"volume", "gal", "qt", 4, h44},
		{"volume", "gal", "pt", 8, h44},
		{"volume", "fl_oz", "tbsp", 2, h44},
		{"volume", "tbsp", "tsp", 3, h44},
		{"volume", "m3", "cm3", 1e6, sp811},
		{"mass", "lb", "kg", 4.535924e-01, sp811},
		{"mass", "oz", "g", 28.34952, sp811},
		{"mass", "lb", "oz", 16, h44},
		{"mass", "g", "mg", 1000, sp811},
		{"mass", "mg", "ng", 1e6, sp811},
		{"area", "acre", "m2", 4046.856, h44},
		{"area", "acre", "sqft", 43560, h44},
		{"area", "sq_rod", "sqft", 272.25, h44},
		{"area", "sqft", "m2", 9.290304e-02, sp811},
		{"area", "sq_yd", "m2", 8.361274e-01, sp811},
		{"area", "ha", "m2", 1e4, sp811},
		{"area", "ha", "acre", 2.471054, h44},
		{"area", "1000_sqft", "sqft", 1000, "by definition"},
		{"area", "100_sqft", "sqft", 100, "by definition"},
		{"length", "ft", "m", 0.3048, sp811},
		{"length", "in", "cm", 2.54, sp811},
		{"length", "yd", "m", 0.9144, sp811},
		{"length", "mi", "m", 1609.344, sp811},
		{"length", "mi", "ft", 5280, h44},
		{"length", "cm", "mm", 10, sp811},
		{"flow", "gpm", "l_per_min", 3.785412, sp811},
		{"flow", "gal_per_min", "fl_oz_per_min", 128, h44},
		{"flow", "gpm", "nl_per_s", 6.309020e+07, sp811},
		{"pressure", "psi", "pa", 6.894757e+03, sp811},
		{"pressure", "bar", "kpa", 100, sp811},
		{"speed", "mph", "m_per_s", 0.44704, sp811},
		{"speed", "ft_per_min", "um_per_s", 5080, sp811},
		{"speed", "mph", "km_per_h", 1.609344, sp811},
		{"speed", "ft_per_s", "m_per_s", 0.3048, sp811},
		{"money", "usd", "cents", 100, "31 U.S.C. 5101"},
	}
	for _, tt := range tests {
		a, okA := Factor(tt.quantity, tt.unit)
		b, okB := Factor(tt.quantity, tt.per)
		if !okA || !okB {
			t.Errorf("%s: %s or %s is no unit", tt.quantity, tt.unit, tt.per)
			continue
		}
		if got := a / b; math.Abs(got-tt.want) > 5e-7*tt.want {
			t.Errorf("1 %s = %.9g %s, want %.9g (%s)", tt.unit, got, tt.per, tt.want, tt.source)
		}
	}
}

func TestEveryUnitHasASourceAndItsOwnNames(t *testing.T) {
	keys, names := map[string]bool{}, map[string]string{}
	for _, u := range units {
		if u.source == "" {
			t.Errorf("%s has no source", u.key)
		}
		if keys[u.key] {
			t.Errorf("%s stands twice", u.key)
		}
		keys[u.key] = true
		for _, n := range u.names {
			id := u.quantity + " " + n
			if other := names[id]; other != "" || n == "" || n != normal(n) {
				t.Errorf("%s: typed name %q is empty, not in its plain form, or also of %q", u.key, n, other)
			}
			names[id] = u.key
		}
	}
	if len(units) < 50 {
		t.Errorf("only %d units", len(units))
	}
	for _, q := range []string{"volume", "mass", "area", "length", "flow", "pressure", "speed", "money"} {
		if len(UnitsOf(q)) == 0 || allowed(q) == "" {
			t.Errorf("%s has no units or no words", q)
		}
	}
	if got := strings.Join(UnitsOf("mass"), " "); got != "ng mg g kg oz lb" {
		t.Errorf("mass: %s", got)
	}
	if QuantityOf("acre") != "area" || QuantityOf("cubit") != "" {
		t.Error("QuantityOf")
	}
}

func TestConstantsAreTheTables(t *testing.T) {
	tests := []struct {
		quantity, unit string
		got            int64
	}{
		{"volume", "gal", int64(USGallon)},
		{"volume", "qt", int64(USQuart)},
		{"volume", "pt", int64(USPint)},
		{"volume", "fl_oz", int64(USFluidOunce)},
		{"volume", "tbsp", int64(Tablespoon)},
		{"volume", "tsp", int64(Teaspoon)},
		{"volume", "l", int64(Litre)},
		{"volume", "ml", int64(Millilitre)},
		{"mass", "lb", int64(Pound)},
		{"mass", "oz", int64(Ounce)},
		{"mass", "kg", int64(Kilogram)},
		{"mass", "g", int64(Gram)},
		{"area", "1000_sqft", int64(ThousandSquareFeet)},
		{"area", "100_sqft", hundredSquareFeet},
		{"area", "ha", int64(Hectare)},
		{"area", "m2", int64(SquareMetre)},
		{"length", "ft", int64(Foot)},
		{"length", "in", int64(Inch)},
		{"length", "yd", int64(Yard)},
		{"length", "mi", int64(Mile)},
		{"length", "m", int64(Metre)},
		{"speed", "mph", int64(MilePerHour)},
		{"speed", "ft_per_s", int64(FootPerSecond)},
		{"speed", "ft_per_min", int64(FootPerMinute)},
		{"money", "usd", int64(Dollar)},
	}
	for _, tt := range tests {
		n, err := ParseIn(tt.quantity, tt.unit, "1")
		if err != nil || n != tt.got {
			t.Errorf("1 %s is %d in the table (%v), %d in the code", tt.unit, n, err, tt.got)
		}
	}
	if f, _ := Factor("pressure", "psi"); float64(PSI(1)) != f {
		t.Errorf("psi: %v in the table, %v in the code", f, float64(PSI(1)))
	}
}

func TestMakersAndReadersAgree(t *testing.T) {
	near := func(name string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-9*math.Abs(want) {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
	near("gal", Gallons(41.25).Gallons(), 41.25)
	near("qt", Quarts(3).Gallons(), 0.75)
	near("pt", Pints(3).Quarts(), 1.5)
	near("fl oz", FluidOunces(128).Gallons(), 1)
	near("tbsp", Tablespoons(64).FluidOunces(), 32)
	near("tsp", Teaspoons(96).FluidOunces(), 16)
	near("l", Litres(3.785411784).Gallons(), 1)
	near("ml", Millilitres(500).Litres(), 0.5)
	near("ml read", Litres(2).Millilitres(), 2000)
	near("pt read", Gallons(1).Pints(), 8)
	near("lb", Pounds(50).Ounces(), 800)
	near("oz", Ounces(8).Pounds(), 0.5)
	near("g", Grams(453.59237).Pounds(), 1)
	near("kg", Kilograms(1).Grams(), 1000)
	near("kg read", Grams(500).Kilograms(), 0.5)
	near("sqft", SquareFeet(43560).Acres(), 1)
	near("acre", Acres(0.25).SquareFeet(), 10890)
	near("m2", SquareMetres(10000).Hectares(), 1)
	near("ha", Hectares(1).SquareMetres(), 10000)
	near("ft", Feet(1).Inches(), 12)
	near("in", Inches(6).Feet(), 0.5)
	near("m", Metres(0.3048).Feet(), 1)
	near("m read", Feet(1).Metres(), 0.3048)
	near("mph", MPH(3).FeetPerSecond(), 4.4)
	near("ft/s", FeetPerSecond(88).MPH(), 60)
	near("m/s", MetresPerSecond(0.44704).MPH(), 1)
	near("m/s read", MPH(1).MetresPerSecond(), 0.44704)
	near("gpm", GPM(4.04).GPM(), 4.04)
	near("l/min", LitresPerMinute(3.785411784).GPM(), 1)
	near("l/min read", GPM(1).LitresPerMinute(), 3.785411784)
	near("psi", PSI(40).PSI(), 40)
	near("kpa", Kilopascals(6.894757293168361).PSI(), 1)
	near("kpa read", PSI(1).Kilopascals(), 6.894757293168361)
	near("usd", Dollars(68.5).Dollars(), 68.5)
	near("over", GPM(4).Over(30).Gallons(), 2)
	near("seconds", GPM(4).Seconds(Gallons(2)), 30)
	if Flow(0).Seconds(USGallon) != 0 {
		t.Error("nothing flows: no time")
	}
}

func TestMakersRoundHalfToEvenAndStop(t *testing.T) {
	tests := []struct {
		name      string
		got, want int64
	}{
		{"half a cent down", int64(Dollars(0.125)), 12},
		{"half a cent up", int64(Dollars(0.375)), 38},
		{"half a cent below", int64(Dollars(-0.125)), -12},
		{"a square foot", int64(SquareFeet(1)), 92903},
		{"12.5 square feet: 1,161,288", int64(SquareFeet(12.5)), 1161288},
		{"a fluid ounce", int64(FluidOunces(1)), 29573530},
		{"too much", int64(Gallons(1e300)), math.MaxInt64},
		{"too little", int64(Gallons(-1e300)), math.MinInt64},
		{"beyond", int64(SquareFeet(math.Inf(1))), math.MaxInt64},
		{"beyond, below", int64(SquareFeet(math.Inf(-1))), math.MinInt64},
		{"no number", int64(Acres(math.NaN())), 0},
		{"too many acres", int64(Acres(1e30)), math.MaxInt64},
		{"smallest", int64(Gallons(5e-324)), 0},
	}
	for _, tt := range tests {
		if tt.got != tt.want {
			t.Errorf("%s: %d, want %d", tt.name, tt.got, tt.want)
		}
	}
}
