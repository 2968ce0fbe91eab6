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
	every := "actives, registration, grasses, lowest rate, highest rate, wind limit, most in a year, times a year, days between, highest temperature, " +
		"lowest temperature, rain-free hours, inversion, wait before seeding, wait on new turf, strip along water, bloom"
	if got := strings.Join((Entry{}).Blank(), ", "); got != every {
		t.Errorf("an empty entry leaves out %s", got)
	}
	full := Entry{Actives: []Active{{Name: "dicamba"}}, Registration: "00000-1", Grasses: []string{AllTurf}, NoInversion: No, NoBloom: Yes, None: Limits()}
	if got := full.Blank(); len(got) != 0 {
		t.Errorf("an entry that says none of each limit leaves out %v", got)
	}
	full.None = slices.DeleteFunc(full.None, func(l string) bool { return l == LimitDaysBetween })
	if got := full.Blank(); len(got) != 1 || got[0] != "days between" {
		t.Errorf("one limit is blank: %v", got)
	}
	rated := Entry{Grasses: []string{"tall_fescue"}, Rates: []GrassRates{{Grasses: []string{"tall_fescue"}, High: known(2)}}}
	if got := rated.Blank(); slices.Contains(got, "highest rate") || !slices.Contains(got, "lowest rate") {
		t.Errorf("a rate for each grass is no blank: %v", got)
	}
}

func known(f float64) measure.Maybe[measure.Rate] {
	return measure.Maybe[measure.Rate]{V: ounces(f), Known: true}
}

func TestMostAnywhere(t *testing.T) {
	group := func(high float64, grasses ...string) GrassRates {
		return GrassRates{Grasses: grasses, High: known(high)}
	}
	for _, row := range []struct {
		name string
		e    Entry
		want measure.Maybe[measure.Rate]
	}{
		{"blank", Entry{}, measure.Maybe[measure.Rate]{}},
		{"general", Entry{HasRateHigh: true, RateHigh: ounces(3)}, known(3)},
		{"general and one more for a grass that is listed", Entry{Grasses: []string{"tall_fescue", "zoysiagrass"}, HasRateHigh: true, RateHigh: ounces(3), Rates: []GrassRates{group(5, "zoysiagrass")}}, known(5)},
		{"one more for a grass that is not listed", Entry{Grasses: []string{"tall_fescue"}, HasRateHigh: true, RateHigh: ounces(3), Rates: []GrassRates{group(5, "zoysiagrass")}}, known(3)},
		{"one grass has none", Entry{Grasses: []string{"tall_fescue", "zoysiagrass"}, Rates: []GrassRates{group(5, "zoysiagrass")}}, measure.Maybe[measure.Rate]{}},
		{"each grass has one", Entry{Grasses: []string{"tall_fescue", "zoysiagrass"}, Rates: []GrassRates{group(5, "zoysiagrass"), group(4, "tall_fescue")}}, known(5)},
		{"all turf, and less for one", Entry{Grasses: []string{AllTurf}, HasRateHigh: true, RateHigh: ounces(3), Rates: []GrassRates{group(1, "zoysiagrass")}}, known(3)},
		{"most in one application", Entry{HasRateHigh: true, RateHigh: ounces(3), Most: known(2)}, known(2)},
	} {
		if got := row.e.MostAnywhere(); got != row.want {
			t.Errorf("%s: %v, want %v", row.name, got, row.want)
		}
	}
}

func TestOffRecord(t *testing.T) {
	for _, row := range []struct {
		e    Entry
		want bool
	}{
		{Entry{Kind: "herbicide"}, true},
		{Entry{Kind: "Growth_Regulator"}, true},
		{Entry{Kind: "post-emergence herbicide", Registration: "00000-1"}, false},
		{Entry{Kind: "fertiliser"}, false},
		{Entry{Kind: "iron", Actives: []Active{{Name: "iron", PercentByWeight: 5}}}, false},
		{Entry{Kind: "fertiliser", Actives: []Active{{Name: "nitrogen"}, {Name: "prodiamine"}}}, true},
		{Entry{Kind: "surfactant"}, false},
		{Entry{Kind: "dye"}, false},
		{Entry{}, false},
	} {
		if got := row.e.OffRecord() != ""; got != row.want {
			t.Errorf("%s %q: %v", row.e.Kind, row.e.Registration, got)
		}
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
