package label

import (
	"slices"
	"strings"
	"testing"

	"example.com/tintline/core/measure"
)

func ounces(f float64) measure.Rate {
	return measure.RateOf(measure.LiquidAmount(measure.FluidOunces(f)), measure.ThousandSquareFeet)
}

func TestHold(t *testing.T) {
	both := Entry{HasRateLow: true, RateLow: ounces(1), HasRateHigh: true, RateHigh: ounces(1.5)}
	low, high := both, both
	low.HasRateHigh, high.HasRateLow = false, false
	for _, row := range []struct {
		name string
		e    Entry
		rate measure.Rate
		want Standing
	}{
		{"blank", Entry{}, ounces(1), Unheld},
		{"of the other form", both, measure.RateOf(measure.DryAmount(measure.Ounces(1)), measure.ThousandSquareFeet), Unheld},
		{"at the lowest", both, ounces(1), Within},
		{"at the highest", both, ounces(1.5), Within},
		{"below", both, ounces(0.99), TooLow},
		{"above", both, ounces(1.51), TooHigh},
		{"above where only the lowest is entered", low, ounces(9), Within},
		{"below where only the highest is entered", high, ounces(0.1), Within},
	} {
		if got := row.e.Hold(row.rate); got != row.want {
			t.Errorf("%s: %d, want %d", row.name, got, row.want)
		}
	}
}

func TestBlank(t *testing.T) {
	if got := strings.Join((Entry{}).Blank(), ", "); got != "actives, registration, grasses, lowest rate, highest rate, wind limit" {
		t.Errorf("an empty entry leaves out %s", got)
	}
	full := Entry{Actives: []Active{{Name: "dicamba"}}, Registration: "00000-1", Grasses: []string{AllTurf}, HasRateLow: true, HasRateHigh: true, HasWindMax: true}
	if got := full.Blank(); len(got) != 0 {
		t.Errorf("a full entry leaves out %v", got)
	}
}

func TestListedByAll(t *testing.T) {
	all, fescue := Entry{Grasses: []string{AllTurf}}, Entry{Grasses: []string{"tall_fescue", "kentucky_bluegrass"}}
	zoysia := Entry{Grasses: []string{"zoysiagrass"}}
	for _, row := range []struct {
		entries []Entry
		want    []string
	}{
		{nil, nil},
		{[]Entry{all, all}, []string{AllTurf}},
		{[]Entry{all, fescue}, []string{"kentucky_bluegrass", "tall_fescue"}},
		{[]Entry{zoysia, fescue}, nil},
		{[]Entry{{}}, nil},
	} {
		if got := ListedByAll(row.entries); !slices.Equal(got, row.want) {
			t.Errorf("%v: %v, want %v", row.entries, got, row.want)
		}
	}
}
