package batch

import (
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// TestJarOf: the quart holds 0.25/G of the rate per 1,000 sq ft and stands for 250/G sq ft (arithmetic), whatever the size
// of the load.
func TestJarOf(t *testing.T) {
	delivery := func(g float64) measure.Rate {
		r, err := measure.RateUnit(g, "gal_per_1000_sqft")
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	for _, row := range []struct {
		g, area, rate, mL float64 // rate in fl oz per 1,000 sq ft; 1 fl oz is 29.5735295625 mL
		source            string
	}{
		{1.0, 250, 1.0, 29.5735295625 * 0.25, "250/G and 0.25/G (arithmetic)"},
		{1.5, 500.0 / 3, 1.2, 29.5735295625 * 1.2 * 0.25 / 1.5, "250/G and 0.25/G (arithmetic)"},
		{0.2, 1250, 0.4, 29.5735295625 * 0.4 * 0.25 / 0.2, "250/G and 0.25/G (arithmetic)"},
	} {
		area := delivery(row.g).AreaFor(measure.Gallons(90))
		thousands := float64(area) / float64(measure.ThousandSquareFeet)
		j, err := JarOf(JarAsk{Volume: measure.Gallons(90), Delivery: delivery(row.g), Parts: []JarPart{
			{"weed", label.Entry{Form: measure.Liquid, MixingClass: "ec"}, measure.LiquidAmount(measure.FluidOunces(row.rate * thousands))},
			{"powder", label.Entry{Form: measure.Dry, MixingClass: "wp"}, measure.DryAmount(measure.Ounces(thousands))},
		}})
		if err != nil {
			t.Fatal(err)
		}
		if j.Parts[0].Name != "powder" || j.Parts[0].InPint != "1 tablespoon" || j.Parts[1].InPint != "1 teaspoon" {
			t.Errorf("in this order and by these spoons: %+v", j.Parts)
		}
		if got := measure.Volume(j.Parts[1].InQuart.N).Millilitres(); got < row.mL*0.99999 || got > row.mL*1.00001 {
			t.Errorf("G %g: %.6f mL, want %.6f (%s)", row.g, got, row.mL, row.source)
		}
		if got := float64(j.StandsFor.V) / float64(measure.ThousandSquareFeet) * 1000; got < row.area*0.99999 || got > row.area*1.00001 {
			t.Errorf("G %g: %.4f sq ft, want %.4f (%s)", row.g, got, row.area, row.source)
		}
		if says := fmt.Sprint(j.Working); !strings.Contains(says, "stands for") || !strings.Contains(says, "mL in a quart") {
			t.Error(says)
		}
	}
}

func TestJarRefusals(t *testing.T) {
	one := []JarPart{{Name: "weed"}}
	for _, row := range []struct {
		ask  JarAsk
		says string
	}{
		{JarAsk{Volume: 0, Parts: append(one, one...)}, "The load of which a jar is asked is 0.00 gal."},
		{JarAsk{Volume: 1, Parts: one}, "A jar holds at least two products; the load has 1."},
	} {
		if _, err := JarOf(row.ask); err == nil || err.Error() != row.says {
			t.Errorf("%v", err)
		}
	}
	for class, r := range jarSpoons {
		if _, ok := label.FindOrderClass(class); !ok || r[0] == "" || r[1] == "" {
			t.Errorf("%s: %v", class, r)
		}
	}
}
