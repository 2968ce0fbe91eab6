package check

import (
	"testing"

	"example.com/tintline/core"
)

func TestGroundAndFigureInWords(t *testing.T) {
	for _, row := range []struct {
		f               Finding
		source, figures string
	}{
		{Finding{Ground: GroundLabel, Source: "label entry of W1, 00000-1", Figured: core.Known(12.0), Limit: core.Known(10.0), Unit: "mph"}, "label entry of W1, 00000-1", "figured 12 mph, limit 10 mph"},
		{Finding{Ground: GroundRecalled, Source: "memory", Figured: core.Known(5.04), Unit: "multiple"}, "recalled, not read, memory", "figured 5.04 times"},
		{Finding{Ground: GroundSetting, Source: "common practice, no source"}, "setting, common practice, no source", ""},
		{Finding{Ground: GroundSetting, Source: "own note on mesotrione"}, "own note on mesotrione", ""},
		{Finding{Ground: GroundSetting, Source: "own note"}, "own note", ""},
		{Finding{Ground: GroundPractice, Figured: core.Known(1234.5), Limit: core.Known(0.25), Unit: "gal_per_min"}, "common practice", "figured 1234 gal per min, limit 0.25 gal per min"},
		{Finding{Ground: GroundPractice, Source: "common practice, no source"}, "common practice, no source", ""},
		{Finding{}, "", ""},
	} {
		if s := row.f.SourceWords(); s != row.source {
			t.Errorf("%q, expected %q", s, row.source)
		}
		if s := row.f.FigureWords(); s != row.figures {
			t.Errorf("%q, expected %q", s, row.figures)
		}
	}
}
