package grid

import (
	"testing"

	"example.com/tintline/core/measure"
)

// A rate stands in the unit of the label; one that no label would print stands for 1,000 sq ft to three digits.
func TestRateWords(t *testing.T) {
	for _, row := range []struct {
		rate measure.Rate
		want string
	}{
		{inUnit(t, 0.25, "oz_per_acre"), "0.25 oz per acre"},
		{inUnit(t, 1.5, "fl_oz_per_1000_sqft"), "1.5 fl oz per 1,000 sq ft"},
		{inUnit(t, 2, "pt_per_acre"), "32 fl oz per acre"},
		{measure.Rate{V: 0.123456789, Kind: measure.Liquid}, "0.388 fl oz per 1,000 sq ft"},
	} {
		if got := RateWords(row.rate); got != row.want {
			t.Errorf("%v is %q, not %q", row.rate, got, row.want)
		}
	}
}

func inUnit(t *testing.T, f float64, unit string) measure.Rate {
	t.Helper()
	r, err := measure.RateUnit(f, unit)
	if err != nil {
		t.Fatal(err)
	}
	return r
}
