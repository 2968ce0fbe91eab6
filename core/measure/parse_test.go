package measure

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestParseIn(t *testing.T) {
	tests := []struct {
		quantity, unit, text string
		want                 int64
	}{
		{"volume", "gal", "1.5", 5_678_117_676},
		{"volume", "gal", "1e3", 3_785_411_784_000},
		{"volume", "gal", "-0.25", -946_352_946},
		{"volume", "nl", "9223372036854775807", math.MaxInt64},
		{"volume", "nl", "-9223372036854775808", math.MinInt64},
		{"volume", "nl", "2.5", 2},
		{"volume", "nl", "3.5", 4},
		{"volume", "nl", "12e-1", 1},
		{"volume", "fl_oz", "16", 473_176_473},
		{"volume", "fl_oz", "1", 29_573_530},
		{"volume", "fl_oz", "8", 236_588_236}, // ...236.5: half to even
		{"area", "sqft", "6200", 575_998_848},
		{"area", "1000_sqft", ".5", 46_451_520},
		{"area", "acre", "1", 4_046_856_422},
		{"mass", "oz", "0.001", 28_349_523},
		{"length", "in", "0.5", 12_700},
		{"speed", "mph", "3", 1_341_120},
		{"money", "usd", "68.50", 6850},
		{"money", "usd", "1.005", 100},
		{"volume", "gal", "0e30", 0},
	}
	for _, tt := range tests {
		got, err := ParseIn(tt.quantity, tt.unit, tt.text)
		if err != nil || got != tt.want {
			t.Errorf("ParseIn(%s, %s, %s) = %d (%v), want %d", tt.quantity, tt.unit, tt.text, got, err, tt.want)
		}
	}
}

func TestParseInRefuses(t *testing.T) {
	long := strings.Repeat("1", 65)
	for _, text := range []string{
		"", " ", "-", "+1", "1 ", " 1", "NaN", "Inf", "-Infinity", "0x10", "1_000", "1,000", "1/2", "1e", "1e+", "e3", ".", "-.",
		"1.2.3", "1e31", "1e-31", "1e99999999999999999999", "1e-99999999999999999999", long, "1p3", "٣", "9e29", "1e1.5",
	} {
		if n, err := ParseIn("volume", "gal", text); err == nil {
			t.Errorf("%q was read as %d", text, n)
		} else if !strings.HasSuffix(err.Error(), ".") {
			t.Errorf("%q: no sentence: %v", text, err)
		}
		if r, err := ParseRateIn("gal_per_acre", text); err == nil && text != "9e29" {
			t.Errorf("%q was read as a rate %v", text, r)
		}
	}
	for _, tt := range []struct{ quantity, unit, text string }{
		{"volume", "lb", "1"},
		{"volume", "", "1"},
		{"taste", "gal", "1"},
		{"flow", "gpm", "1"},
		{"pressure", "psi", "1"},
		{"volume", "nl", "9223372036854775808"},
		{"volume", "nl", long},
		{"volume", "nl", "+5"},
	} {
		if n, err := ParseIn(tt.quantity, tt.unit, tt.text); err == nil {
			t.Errorf("%v was read as %d", tt, n)
		}
	}
	if _, err := ParseRateIn("fl_oz", "1"); err == nil {
		t.Error("a rate without an area was read")
	}
	if _, err := ParseFlowIn("psi", "1"); err == nil {
		t.Error("a flow in psi was read")
	}
}

func TestParseFloatsIn(t *testing.T) {
	r, err := ParseRateIn("fl_oz_per_1000_sqft", "1.5")
	if want := 1.5 * 473176473 / 16 / 92903040; err != nil || math.Abs(r.V-want) > 1e-15 || r.Kind != Liquid {
		t.Errorf("rate: %v (%v), want %v", r, err, want)
	}
	r, err = ParseRateIn("ng_per_mm2", "0.1")
	if err != nil || r.V != 0.1 || r.Kind != Dry {
		t.Errorf("rate: %v (%v)", r, err)
	}
	f, err := ParseFlowIn("gal_per_min", "4.04")
	if err != nil || math.Abs(f.GPM()-4.04) > 1e-14 {
		t.Errorf("flow: %v (%v)", f.GPM(), err)
	}
	p, err := ParsePressureIn("psi", "40")
	if err != nil || math.Abs(p.PSI()-40) > 1e-13 {
		t.Errorf("pressure: %v (%v)", p.PSI(), err)
	}
	n, err := ParseNumber("1.25e-3")
	if err != nil || n != 0.00125 {
		t.Errorf("number: %v (%v)", n, err)
	}
}

// A rate written as the shortest text that gives it back is given back.
func TestRatesComeBackToTheBit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(1e-9, 1e9).Draw(t, "v")
		r, err := ParseRateIn("nl_per_mm2", strconv.FormatFloat(v, 'g', -1, 64))
		if err != nil || r.V != v {
			t.Fatalf("%v came back as %v (%v)", v, r.V, err)
		}
	})
}

func TestParseInOfWholeUnitsIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(units).Draw(t, "unit")
		if u.quantity == "flow" || u.quantity == "pressure" {
			return
		}
		thousandths := rapid.Int64Range(-9e12, 9e12).Draw(t, "thousandths")
		text := new(big.Rat).SetFrac64(thousandths, 1000).FloatString(3)
		want, fits := ratInt(new(big.Rat).SetFrac(new(big.Int).Mul(big.NewInt(thousandths), big.NewInt(u.num)), new(big.Int).Mul(big.NewInt(1000), big.NewInt(u.den))))
		got, err := ParseIn(u.quantity, u.key, text)
		if fits != (err == nil) || (fits && got != want) {
			t.Fatalf("%s %s: %d (%v), want %d", text, u.key, got, err, want)
		}
	})
}

func FuzzParseIn(f *testing.F) {
	for _, text := range []string{"1.5", "6200", "1e3", "-0.1", "9223372036854775807", "1e30", "0x1p-2", "NaN", "1/3", "9e29", "1e-30"} {
		f.Add(uint8(8), text)
	}
	f.Fuzz(func(t *testing.T, which uint8, text string) {
		u := units[int(which)%len(units)]
		n, err := ParseIn(u.quantity, u.key, text)
		if err != nil {
			if n != 0 || !strings.HasSuffix(err.Error(), ".") {
				t.Fatalf("%q: %d, %v", text, n, err)
			}
			return
		}
		var value float64
		if _, err := fmt.Sscanf(text, "%g", &value); err != nil {
			t.Fatalf("%q was read as %d, but is no number: %v", text, n, err)
		}
		if want := value * u.float(); math.Abs(float64(n)-want) > 0.500001+1e-12*math.Abs(want) {
			t.Fatalf("%q %s = %d, want about %v", text, u.key, n, want)
		}
	})
}
