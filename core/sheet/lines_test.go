package sheet

import (
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// TestEachLimitHasAValueNoneOrBlank: the three are told apart, for every limit.
func TestEachLimitHasAValueNoneOrBlank(t *testing.T) {
	says := func(e label.Entry) map[string]string {
		out := map[string]string{}
		e.Kind, e.Form = "herbicide", measure.Dry
		for _, l := range Lines(&core.Product{ProductName: "x", Label: e}) {
			out[l.Key] = l.Says
			if l.Blank != (l.Says == SaysBlank) {
				t.Errorf("%+v", l)
			}
		}
		return out
	}
	blank, none := says(label.Entry{}), says(label.Entry{None: label.Limits()})
	for i := range entryFields {
		f := &entryFields[i]
		if f.limit == "" {
			continue
		}
		if blank[f.Name] != SaysBlank || none[f.Name] != SaysNone {
			t.Errorf("%s: %q and %q", f.Name, blank[f.Name], none[f.Name])
		}
	}
	if got := says(label.Entry{TempMax: measure.Known(85.0)})["temp_max_f"]; got != "85 F" {
		t.Errorf("%q", got)
	}
	if got := says(label.Entry{Nitrogen: measure.Known(24.0), Potash: measure.Known(11.0)})["nitrogen_pct"]; !strings.HasPrefix(got, "24-?-11 ") {
		t.Errorf("%q", got)
	}
	if got := says(label.Entry{Price: measure.Known(measure.Money(9650)), Package: measure.DryAmount(measure.Pound)})["price_usd"]; got != "$96.50 for 1.00 lb" {
		t.Errorf("%q", got)
	}
}

// TestChangesSayOnlyWhatChanged holds the difference of two versions to what is otherwise in them.
func TestChangesSayOnlyWhatChanged(t *testing.T) {
	before := &core.Product{ProductName: "x", Label: label.Entry{Form: measure.Dry, Grasses: []string{"tall_fescue", "zoysiagrass"}, DaysBetween: measure.Known(30.0)}}
	after := *before
	if got := Changes(before, &after); len(got) != 0 {
		t.Errorf("%q", got)
	}
	after.Label.Grasses, after.Label.DaysBetween = []string{"tall_fescue", "bahiagrass"}, measure.Known(42.0)
	after.Label.None = []string{label.LimitTempMax}
	got := strings.Join(Changes(before, &after), "; ")
	for _, want := range []string{"with bahiagrass", "without zoysiagrass", "between two visits 42 days, was 30 days", "highest temperature none on the label, was blank"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q lacks %q", got, want)
		}
	}
	if strings.Count(got, "; ") != 3 {
		t.Errorf("more than what changed: %q", got)
	}
}
