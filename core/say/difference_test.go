package say

import (
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

func TestDifference(t *testing.T) {
	rate := func(f float64) core.Maybe[measure.Rate] {
		r, err := measure.RateUnit(f, "oz_per_1000_sqft")
		if err != nil {
			t.Fatal(err)
		}
		return core.Known(r)
	}
	got := Difference([]core.PartDifference{
		{Product: "iron", Have: rate(2)}, {Product: "weed", Have: rate(1), Base: rate(1.5)}, {Product: "potash", Base: rate(3)},
	})
	if want := "with iron 2.00 oz per 1,000 sq ft, weed 1.00 oz per 1,000 sq ft instead of 1.50 oz per 1,000 sq ft and without potash"; got != want {
		t.Errorf("%s\nand should be\n%s", got, want)
	}
	if got := Difference(nil); got != "the same" {
		t.Error(got)
	}
}
