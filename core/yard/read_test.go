package yard

import (
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

func TestReadALine(t *testing.T) {
	b := play(t, loaded+`{"fact":"mix","name":"Red, White","parts":[{"product":"W1","rate_fl_oz_per_1000_sqft":1}]}`)
	gal := func(f float64) core.Maybe[measure.Volume] { return core.Known(measure.Gallons(f)) }
	for _, row := range []struct {
		kind, said string
		want       Ask
	}{
		{"topup", "b", Ask{Into: 'b'}},
		{"topup", "B, 150 gal", Ask{Into: 'b', Volume: gal(150)}},
		{"topup", "150", Ask{Volume: gal(150)}},
		{"load", "100 gal W for gun", Ask{Volume: gal(100), Mix: "W", For: "gun"}},
		{"load", "w for ride-on, 20,000 sq ft", Ask{Mix: "W", For: "ride-on", Area: core.Known(measure.SquareFeet(20_000))}},
		{"load", "10,400 sqft C", Ask{Mix: "C", Area: core.Known(measure.SquareFeet(10_400))}},
		{"dilute", "gun", Ask{For: "gun"}},
		{"blend", "c, a, 2 gal", Ask{From: 'c', Into: 'a', Volume: gal(2), lettered: true}},
		{"blend", "c", Ask{From: 'c', lettered: true}},
		{"use-up", "a, 1 to 12", Ask{Into: 'a', Thin: core.Known(12.0)}},
		{"rinse", "4 rinses, 30 gal", Ask{Rinses: 4, Volume: gal(30)}},
		{"jug", "iron, 4 oz", Ask{Name: "iron", Each: core.Known(measure.DryAmount(measure.Ounces(4)))}},
		{"jug", "a, 3 oz", Ask{Into: 'a', Each: core.Known(measure.LiquidAmount(measure.FluidOunces(3)))}},
		{"jug", "4 loads", Ask{Loads: 4}},
		{"jug", "W1, package 1 gal", Ask{Name: "W1", Pack: core.Known(measure.LiquidAmount(measure.USGallon))}},
		{"load", "80 gal Red, white for gun", Ask{Volume: gal(80), Mix: "Red, White", For: "gun"}},
		{"tint", "blue, 0.5 fl oz a gal", Ask{Name: "blue", Dose: core.Known(measure.LiquidAmount(measure.FluidOunces(0.5)))}},
	} {
		got, err := Read(b, row.kind, Ask{}, row.said)
		if err != nil || got != row.want {
			t.Errorf("%s %q: %+v %v", row.kind, row.said, got, err)
		}
	}
	for _, row := range []struct{ kind, said, says string }{
		{"topup", "", "Nothing is typed."},
		{"topup", "fog", `"fog" is neither a name`},
		{"load", "5 lb", `"5 lb" is neither`},
		{"jug", "4 rinses", `"4 rinses" is neither`},
		{"use-up", "1 to many", `"1 to many" is neither`},
	} {
		_, err := Read(b, row.kind, Ask{}, row.said)
		with, ok := err.(interface{ Do() string })
		if err == nil || !ok || !strings.Contains(err.Error(), row.says) || !strings.HasPrefix(with.Do(), "Type one of ") {
			t.Errorf("%s %q: %v", row.kind, row.said, err)
		}
	}
	for _, q := range Questions() {
		if Offered(q.Kind) == "" {
			t.Error(q.Kind)
		}
	}
}

// Whatever is typed is read or refused in two sentences, and what is read gives an answer or a refusal.
func FuzzRead(f *testing.F) {
	for _, s := range []string{"b, 150 gal", "100 gal W for gun", "1 to 10", "4 loads", "c, a", "0.5 fl oz a gal", "-3 gal", "9e99 gal", ",,for"} {
		f.Add(s)
	}
	b := play(f, loaded)
	f.Fuzz(func(t *testing.T, said string) {
		for _, q := range Questions() {
			ask, err := Read(b, q.Kind, Ask{At: clock}, said)
			if err == nil {
				_, err = q.Ask(b, ask)
			}
			if with, ok := err.(interface{ Do() string }); err != nil && (!ok || with.Do() == "") {
				t.Fatalf("%s %q: %v", q.Kind, said, err)
			}
		}
	})
}
