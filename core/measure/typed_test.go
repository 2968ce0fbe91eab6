package measure

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestReadWhatIsTyped(t *testing.T) {
	volume := func(s, u string) (int64, error) { v, err := ReadVolume(s, u); return int64(v), err }
	area := func(s, u string) (int64, error) { v, err := ReadArea(s, u); return int64(v), err }
	mass := func(s, u string) (int64, error) { v, err := ReadMass(s, u); return int64(v), err }
	length := func(s, u string) (int64, error) { v, err := ReadLength(s, u); return int64(v), err }
	speed := func(s, u string) (int64, error) { v, err := ReadSpeed(s, u); return int64(v), err }
	money := func(s, u string) (int64, error) { v, err := ReadMoney(s, u); return int64(v), err }
	tests := []struct {
		read         func(string, string) (int64, error)
		text, expect string
		want         int64
	}{
		{volume, "41", "gal", int64(Gallons(41))},
		{volume, " 41 GAL ", "gal", int64(Gallons(41))},
		{volume, "1.5 qt", "gal", int64(Quarts(1.5))},
		{volume, "12oz", "gal", int64(FluidOunces(12))},
		{volume, "12 Fl. Oz.", "gal", int64(FluidOunces(12))},
		{volume, "2 L", "gal", int64(Litres(2))},
		{volume, "1/2", "gal", int64(Gallons(0.5))},
		{volume, "1 1/2 gal", "qt", int64(Gallons(1.5))},
		{volume, "1-1/2 gal", "qt", int64(Gallons(1.5))},
		{volume, "3 / 4 gal", "qt", int64(Gallons(0.75))},
		{volume, "1/2gal", "qt", int64(Gallons(0.5))},
		{volume, "1 gal 12 oz", "gal", int64(FluidOunces(140))},
		{volume, ".5", "gal", int64(Gallons(0.5))},
		{volume, "5.", "gal", int64(Gallons(5))},
		{volume, "0", "gal", 0},
		{volume, "16 fl_oz", "gal", int64(USPint)},
		{area, "6,200", "sqft", 575_998_848},
		{area, "6200 sqft", "acre", 575_998_848},
		{area, "6,200 sq ft", "acre", 575_998_848},
		{area, "6,200 sq. ft.", "acre", 575_998_848},
		{area, "0.14 ac", "sqft", int64(Acres(0.14))},
		{area, "2 m2", "sqft", 2_000_000},
		{area, "6.2", "1000_sqft", 575_998_848},
		{area, "1,234,567.5 sf", "acre", int64(SquareFeet(1234567.5))},
		{mass, "12 oz", "lb", int64(Ounces(12))},
		{mass, "2 lb 4 oz", "lb", int64(Ounces(36))},
		{mass, "50 LBS", "oz", int64(Pounds(50))},
		{mass, "5 g", "lb", int64(Grams(5))},
		{length, "400", "ft", int64(Feet(400))},
		{length, "1/2 in", "ft", int64(Inches(0.5))},
		{length, "1 1/2\"", "ft", int64(Inches(1.5))},
		{length, "5' 6\"", "ft", int64(Inches(66))},
		{length, "5'6\"", "ft", int64(Inches(66))},
		{speed, "3", "mph", int64(MPH(3))},
		{speed, "88 ft/min", "mph", int64(MPH(1))},
		{speed, "88 ft / min", "mph", int64(MPH(1))},
		{money, "68.5", "usd", 6850},
		{money, "$68.50", "usd", 6850},
		{money, "$ 1,200", "usd", 120000},
		{money, "50 cents", "usd", 50},
	}
	for _, tt := range tests {
		got, err := tt.read(tt.text, tt.expect)
		if err != nil || got != tt.want {
			t.Errorf("%q in a field of %s: %d (%v), want %d", tt.text, tt.expect, got, err, tt.want)
		}
	}
}

func TestReadSaysWhatIsWrong(t *testing.T) {
	tests := []struct{ text, want string }{
		{"41 lbs", `"41 lbs" is a weight; this field takes a volume: gal, qt, pt, fl oz, L or mL.`},
		{"41 g", `"41 g" is a weight; this field takes a volume: gal, qt, pt, fl oz, L or mL.`},
		{"41 acres", `"41 acres" is an area; this field takes a volume: gal, qt, pt, fl oz, L or mL.`},
		{"41 buckets", `"41 buckets" has a unit that is not known, "buckets"; this field takes a volume: gal, qt, pt, fl oz, L or mL.`},
		{"", `Nothing is typed; this field takes a volume: gal, qt, pt, fl oz, L or mL.`},
		// Digits that touch a letter belong to the name, as in m2.
		{"1gal12oz", `"1gal12oz" has a unit that is not known, "gal12oz"; this field takes a volume: gal, qt, pt, fl oz, L or mL.`},
		{"full", `"full" does not begin with a number; write one such as 41, 1.5 or 1 1/2.`},
		{"-4", `"-4" is less than nothing; write it without the sign.`},
		{"1,5", `"1,5" has a comma that marks no thousands; write 6,200 or 6200, and decimals with a point.`},
		{"12,34,567", `"12,34,567" has a comma that marks no thousands; write 6,200 or 6200, and decimals with a point.`},
		{"1/0", `"1/0" divides by zero.`},
		{"5 12", `"5 12" has a number without a unit; write each with its unit.`},
		{"5 gal 12", `"5 gal 12" has a number without a unit; write each with its unit.`},
		{"9e99", `"9e99" has a unit that is not known, "e99"; this field takes a volume: gal, qt, pt, fl oz, L or mL.`},
		{"99999999999999", `"99999999999999" is more than can be kept.`},
		{strings.Repeat("7", 70), `"777777777777777777777777777777777777777…" is too long; at most 64 characters are read.`},
	}
	for _, tt := range tests {
		if v, err := ReadVolume(tt.text, "gal"); err == nil || err.Error() != tt.want {
			t.Errorf("%q: %d, %v\nwant %s", tt.text, v, err, tt.want)
		}
	}
	if _, err := ReadVolume("4", "lb"); err == nil {
		t.Error("a field of volume that expects pounds")
	}
	if _, err := ReadMass("12 gal", "lb"); err == nil || !strings.Contains(err.Error(), "is a volume; this field takes a weight") {
		t.Errorf("a volume in a field of weight: %v", err)
	}
}

func TestReadFlowPressureAmountRate(t *testing.T) {
	f, err := ReadFlow("3.785411784 L/min", "gpm")
	if err != nil || math.Abs(f.GPM()-1) > 1e-12 {
		t.Errorf("flow: %v (%v)", f.GPM(), err)
	}
	p, err := ReadPressure("40", "psi")
	if err != nil || math.Abs(p.PSI()-40) > 1e-12 {
		t.Errorf("pressure: %v (%v)", p.PSI(), err)
	}
	if _, err := ReadFlow("4 gal", "gpm"); err == nil {
		t.Error("a volume as a flow")
	}
	if _, err := ReadPressure("4 gal", "psi"); err == nil {
		t.Error("a volume as a pressure")
	}
	a, err := ReadAmount("12 oz", "lb", Dry)
	if err != nil || a != DryAmount(Ounces(12)) {
		t.Errorf("dry: %v (%v)", a, err)
	}
	a, err = ReadAmount("12 oz", "gal", Liquid)
	if err != nil || a != LiquidAmount(FluidOunces(12)) {
		t.Errorf("liquid: %v (%v)", a, err)
	}
	for _, tt := range []struct {
		text, expect string
		k            Kind
		unit         string
		want         float64
	}{
		{"3", "fl_oz_per_1000_sqft", Liquid, "fl_oz_per_1000_sqft", 3},
		{"3 fl oz/1,000 sq ft", "gal_per_acre", Liquid, "fl_oz_per_1000_sqft", 3},
		{"4 pt per acre", "fl_oz_per_1000_sqft", Liquid, "pt_per_acre", 4},
		{"4 pt", "fl_oz_per_acre", Liquid, "pt_per_acre", 4},
		{"1/2 oz/ac", "lb_per_acre", Dry, "oz_per_acre", 0.5},
		{"1/2", "lb_per_acre", Dry, "lb_per_acre", 0.5},
	} {
		r, err := ReadRate(tt.text, tt.expect, tt.k)
		if err != nil {
			t.Errorf("%q: %v", tt.text, err)
			continue
		}
		if got, err := r.In(tt.unit); err != nil || math.Abs(got-tt.want) > 1e-12 {
			t.Errorf("%q: %v %s (%v)", tt.text, got, tt.unit, err)
		}
	}
	for _, text := range []string{"", "4 lb", "4 pt per bucket", "4 pt/", "per acre"} {
		if r, err := ReadRate(text, "pt_per_acre", Liquid); err == nil {
			t.Errorf("%q was read as %v", text, r)
		}
	}
	if _, err := ReadRate("4", "lb_per_acre", Liquid); err == nil {
		t.Error("a liquid in pounds")
	}
}

// Where a field has no unit of its own, each number needs one.
func TestReadWithoutAnExpectedUnit(t *testing.T) {
	if v, err := ReadVolume("41 qt", ""); err != nil || v != Quarts(41) {
		t.Errorf("41 qt: %v (%v)", v, err)
	}
	if _, err := ReadVolume("41", ""); err == nil || err.Error() != `"41" has no unit; write it as a volume: gal, qt, pt, fl oz, L or mL.` {
		t.Errorf("41: %v", err)
	}
	r, err := ReadRate("4 pt per acre", "", Liquid)
	if got, _ := r.In("pt_per_acre"); err != nil || math.Abs(got-4) > 1e-12 {
		t.Errorf("4 pt per acre: %v (%v)", got, err)
	}
	for text, want := range map[string]string{
		"4 pt":          `"4 pt" names no area; write the rate as fl oz per 1,000 sq ft, acre, m2 or ha.`,
		"4 per acre":    `"4 per acre" has no unit; write it as a volume: gal, qt, pt, fl oz, L or mL.`,
		"4":             `"4" has no unit; write it as a volume: gal, qt, pt, fl oz, L or mL.`,
		"4 lb per acre": `"4 lb per acre" is a weight; this field takes a volume: gal, qt, pt, fl oz, L or mL.`,
		"4 pt per gal":  `"gal" is no area; write the rate as fl oz per 1,000 sq ft, acre, m2 or ha.`,
	} {
		if r, err := ReadRate(text, "", Liquid); err == nil || err.Error() != want {
			t.Errorf("%q: %v, %v", text, r, err)
		}
	}
	if _, err := ReadRate("4 oz", "", Dry); err == nil || !strings.Contains(err.Error(), "write the rate as lb per") {
		t.Errorf("dry without an area: %v", err)
	}
}

func TestReadSeconds(t *testing.T) {
	for text, want := range map[string]float64{
		"72": 72, "72 s": 72, "1:12": 72, "1 min 12": 72, "1 min 12 s": 72, "1:02:03": 3723, "72.5 sec": 72.5, "1:12.5": 72.5,
		"2 min": 120, "1 1/2 min": 90, "1 h 5": 3900, "1 h 5 min 6 s": 3906, "0": 0, "1'12\"": 72, "1,200": 1200,
	} {
		if got, err := ReadSeconds(text); err != nil || got != want {
			t.Errorf("%q: %v (%v), want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"", "soon", "1:72", "1:2", ":12", "1:", "1:02:03:04", "-5", "5 gal", "12 s 1 min", "1 min 2 min", "5 6", "99999999999999", "1:00:00:00", strings.Repeat("1", 65), "9999999999:00"} {
		if got, err := ReadSeconds(text); err == nil {
			t.Errorf("%q was read as %v", text, got)
		}
	}
}

// What is printed can be typed again, and means what was printed.
func TestPrintedVolumesAndAreasAreRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := Volume(rapid.Int64Range(0, math.MaxInt64).Draw(t, "v"))
		back, err := ReadVolume(v.Text(), "gal")
		if err != nil {
			if v > math.MaxInt64-USGallon {
				return // rounded up past the end
			}
			t.Fatalf("%s: %v", v.Text(), err)
		}
		if back.Text() != v.Text() {
			t.Fatalf("%s came back as %s", v.Text(), back.Text())
		}
		a := Area(rapid.Int64Range(0, 1e15).Draw(t, "a"))
		again, err := ReadArea(a.Text(), "sqft")
		if err != nil || again.Text() != a.Text() {
			t.Fatalf("%s came back as %s (%v)", a.Text(), again.Text(), err)
		}
		amount := Amount{N: rapid.Int64Range(1e8, 1e17).Draw(t, "n"), Kind: Kind(rapid.IntRange(0, 1).Draw(t, "kind"))}
		read, err := ReadAmount(amount.Text(), map[Kind]string{Liquid: "gal", Dry: "lb"}[amount.Kind], amount.Kind)
		if err != nil || read.Text() != amount.Text() {
			t.Fatalf("%s came back as %s (%v)", amount.Text(), read.Text(), err)
		}
	})
}

func FuzzReadVolume(f *testing.F) {
	for _, text := range []string{"41", "1 1/2 gal", "6,200", "12oz", "1 gal 12 oz", "-4", "1/0", "½", "41 lbs", "1.5.2", "5' 6\"", "9 9/9 9", "\xff\xfe", "1 - 1/2"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, err := ReadVolume(text, "gal")
		if v < 0 || (err != nil && (v != 0 || !strings.HasSuffix(err.Error(), "."))) {
			t.Fatalf("%q: %d, %v", text, v, err)
		}
		if s, err := ReadSeconds(text); !(s >= 0 && s <= 3.6e9) || (err != nil && s != 0) {
			t.Fatalf("%q: %v, %v", text, s, err)
		}
		if r, err := ReadRate(text, "lb_per_acre", Dry); !(r.V >= 0) || math.IsInf(r.V, 0) || (err != nil && r.V != 0) {
			t.Fatalf("%q: %v, %v", text, r, err)
		}
		for _, read := range []func() error{
			func() error { _, err := ReadMoney(text, "usd"); return err },
			func() error { _, err := ReadFlow(text, "gpm"); return err },
		} {
			if err := read(); err != nil && !strings.HasSuffix(err.Error(), ".") {
				t.Fatalf("%q: %v", text, err)
			}
		}
	})
}
