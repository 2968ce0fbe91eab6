package measure

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestText(t *testing.T) {
	tests := []struct{ got, want string }{
		{Gallons(11.1).Text(), "11.1"},
		{Gallons(3.12).Text(), "3.12"},
		{Gallons(9.994).Text(), "9.99"},
		{Gallons(9.997).Text(), "10.0"},
		{Gallons(10).Text(), "10.0"},
		{Gallons(0).Text(), "0.00"},
		{Gallons(0.0049).Text(), "0.00"},
		{Gallons(-0.0049).Text(), "0.00"},
		{Gallons(-0.3).Text(), "-0.30"},
		{Gallons(-12.34).Text(), "-12.3"},
		{Gallons(1240).Text(), "1,240.0"},
		{Gallons(-1234567.89).Text(), "-1,234,567.9"},
		{Volume(math.MaxInt64).Text(), "2,436,557,120.6"},
		{Volume(math.MinInt64).Text(), "-2,436,557,120.6"},
		{SquareFeet(7404).Text(), "7,400"},
		{SquareFeet(96).Text(), "100"},
		{SquareFeet(4).Text(), "0"},
		{SquareFeet(-4).Text(), "0"},
		{SquareFeet(98400).Thousands(), "98k"},
		{SquareFeet(400).Thousands(), "0.4k"},
		{SquareFeet(960).Thousands(), "1k"},
		{SquareFeet(7400).Thousands(), "7k"},
		{SquareFeet(0).Thousands(), "0.0k"},
		{SquareFeet(1.2e6).Thousands(), "1,200k"},
		{Multiple(5), "5.0"},
		{Multiple(-0.01), "0.0"},
		{Multiple(1234.56), "1,234.6"},
		{Multiple(math.NaN()), "?"},
		{SecondsText(74.4), "74"},
		{SecondsText(math.Inf(1)), "?"},
		{SecondsText(3600), "3,600"},
		{Dollars(1240.5).Text(), "$1,240.50"},
		{Dollars(-3).Text(), "-$3.00"},
		{Money(math.MinInt64).Text(), "-$92,233,720,368,547,758.08"},
		{Money(0).Text(), "$0.00"},
		{MPH(3).Text(), "3.0 mph"},
		{GPM(4.04).Text(), "4.04 gpm"},
		{PSI(40).Text(), "40 psi"},
		{LiquidAmount(FluidOunces(5.12)).Text(), "5.12 fl oz"},
		{LiquidAmount(FluidOunces(32)).Text(), "32.0 fl oz"},
		{LiquidAmount(FluidOunces(127.9)).Text(), "1.00 gal"},
		{LiquidAmount(Gallons(1.25)).Text(), "1.25 gal"},
		{LiquidAmount(Gallons(1234)).Text(), "1,230 gal"},
		{LiquidAmount(FluidOunces(0.0123)).Text(), "0.0123 fl oz"},
		{LiquidAmount(FluidOunces(0.99999)).Text(), "1.00 fl oz"},
		{LiquidAmount(1).Text(), "under 0.001 fl oz"},
		{LiquidAmount(-1).Text(), "above -0.001 fl oz"},
		{LiquidAmount(0).Text(), "0 fl oz"},
		{LiquidAmount(Gallons(-2.5)).Text(), "-2.50 gal"},
		{DryAmount(Pounds(75)).Text(), "75.0 lb"},
		{DryAmount(Ounces(0.48)).Text(), "0.480 oz"},
		{DryAmount(Ounces(15.99)).Text(), "1.00 lb"},
		{GalPer1000(3).Text(), "3.00 gal per 1,000 sq ft"},
		{Rate{V: math.NaN()}.Text(), "? fl oz per 1,000 sq ft"},
		{Liquid.String() + Dry.String(), "liquiddry"},
	}
	for _, tt := range tests {
		if tt.got != tt.want {
			t.Errorf("printed %q, want %q", tt.got, tt.want)
		}
	}
}

func TestNothingPrintsAsMinusZeroOrPanics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.OneOf(hostile(), rapid.Int64Range(-1e8, 1e8)).Draw(t, "n")
		f := rapid.OneOf(rapid.Float64(), rapid.Float64Range(-1, 1)).Draw(t, "f")
		for _, text := range []string{
			Volume(n).Text(), Area(n).Text(), Area(n).Thousands(), Money(n).Text(), Speed(n).Text(),
			LiquidAmount(Volume(n)).Text(), DryAmount(Mass(n)).Text(), Multiple(f), SecondsText(f), Rate{V: f}.Text(), Flow(f).Text(),
		} {
			if strings.HasPrefix(text, "-") && !strings.ContainsAny(text, "123456789") {
				t.Fatalf("%d, %v printed as %q", n, f, text)
			}
		}
	})
}
