package label

import (
	"slices"
	"strconv"
	"strings"
	"testing"
)

func TestRatesOf(t *testing.T) {
	at := RatesOf("atrazine")
	if len(at) != 5 {
		t.Fatalf("%d rows on atrazine", len(at))
	}
	if r := at[1]; r.MostOnce.V != 1 || !r.MostOnce.Known || r.Source != "NCSU-TRI20" || r.DaysBetween.Known {
		t.Errorf("%+v", r)
	}
	if got := RatesOf("2,4-d amine"); len(got) != 5 || got[4].RainFree.V != 24 || got[4].TempMax.V != 90 || got[4].ReseedWeeks.V != 4 {
		t.Errorf("%+v", got)
	}
	if got := RatesOf("2,4-D + mecoprop-p + dicamba"); len(got) != 2 || got[0].Signal != "Caution" {
		t.Errorf("%+v", got)
	}
	if got := RatesOf("quinclorac"); len(got) != 2 || got[1].MostYear.V != 1.5 || got[1].DaysBetween.V != 21 || got[1].Source != "memory" {
		t.Errorf("%+v", got)
	}
	if RatesOf("dihydrogen") != nil || RatesOf("") != nil {
		t.Error("rates of what is not known")
	}
}

func TestNitrogenOf(t *testing.T) {
	for _, row := range []struct {
		record, grass, region, want string // regions and highest, in order
	}{
		{NitrogenYear, "st_augustinegrass", "TX", "TX 4 TX-N, TX 2 TX-N"},
		{NitrogenYear, "bermudagrass_common", "TX", "TX 4 TX-N"},
		{NitrogenYear, "bermudagrass_hybrid", "FL south", "FL south 7 UF-N"},
		{NitrogenYear, "st_augustinegrass", "FL north", "FL north 4 UF-N, FL 4 UF-SACAL"},
		{NitrogenYear, "tall_fescue", "TX", ""},
		{NitrogenOnce, "tall_fescue", "IL", "IL 1 IL-N, any 0.5 memory"},
		{NitrogenOnce, "st_augustinegrass", "FL central", "FL 0.7 UF-RULE, FL 1 memory, any 0.5 memory"},
		{NitrogenOnce, "zoysiagrass", "TX", "TX 1 TX-N, any 0.5 memory"},
		{PhosphateOnce, "zoysiagrass", "", "FL 0.25 UF-RULE"},
		{NitrogenYear, "no_such", "", ""},
	} {
		var got []string
		for _, r := range NitrogenOf(row.record, row.grass, row.region) {
			got = append(got, r.Region+" "+strconv.FormatFloat(r.High.V, 'g', -1, 64)+" "+r.Source)
		}
		if s := strings.Join(got, ", "); s != row.want {
			t.Errorf("%s of %s in %s: %s", row.record, row.grass, row.region, s)
		}
	}
	for _, r := range NitrogenOf(NitrogenCalendar, "tall_fescue", "NC") {
		if r.Grass == "warm-season" {
			t.Error("a row of warm-season grasses holds for tall fescue")
		}
	}
	regions := NitrogenRegions()
	if len(regions) != 16 || !slices.IsSorted(regions) || slices.Contains(regions, anyRegion) || !slices.Contains(regions, "FL central") {
		t.Errorf("%d regions: %v", len(regions), regions)
	}
}
