package check

import (
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

func TestCircumstances(t *testing.T) {
	b := play(t, rigLines+`{"fact":"lawn","name":"Bay","zones":[{"name":"all","grass":"zoysiagrass","area_sqft":1000,"growth":"stressed","growth_since":"2026-05-20","cultivar":"Palisades"}]}`)
	z := b.Lawn("Bay").Zones[0]
	for _, row := range []struct {
		name, line string
		minutes    int64
		want       label.Circumstances
	}{
		{"as observed", `{"fact":"weather","wind_mph":6,"temp_f":64}`, 0, label.Circumstances{TempF: core.Known(64.0)}},
		{"an hour old", "", 60, label.Circumstances{TempF: core.Known(64.0)}},
		{"too old", "", 61, label.Circumstances{}},
		{"the forecast is higher", `{"fact":"weather","wind_mph":6,"temp_f":64,"forecast_high_f":91}`, 0, label.Circumstances{TempF: core.Known(91.0)}},
		{"the forecast holds for the day", "", 61, label.Circumstances{TempF: core.Known(91.0)}},
		{"and for no other", "", 24 * 60, label.Circumstances{}},
		{"the forecast is lower", `{"fact":"weather","wind_mph":6,"temp_f":95,"forecast_high_f":91}`, 0, label.Circumstances{TempF: core.Known(95.0)}},
	} {
		if row.line != "" {
			more(t, b, row.line)
		}
		at := clock
		at.Unix += row.minutes * 60
		want := row.want
		want.Growth, want.Cultivar, want.Month = label.Stressed, "Palisades", 5
		if got := CircumstancesOf(b, z, at); got != want {
			t.Errorf("%s: %+v, want %+v", row.name, got, want)
		}
	}
}
