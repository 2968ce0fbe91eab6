package reckon

import (
	"errors"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"
)

func TestAnswers(t *testing.T) {
	tests := []struct {
		name, kind string
		in         map[string]string
		want       map[string]float64
		absent     []string
	}{
		{
			"beside a product, gallons and litres over area are the mix", "load",
			map[string]string{"rate_qt_per_acre": "1", "gal_per_acre": "10", "tank_gal": "50", "area_acre": "8"},
			map[string]float64{
				"gal_per_acre": 10, "qt_per_acre": 1, "rate_gal_per_acre": 0.25, "gal_per_100_gal": 2.5, "fraction": 0.025,
				"acres_per_tank": 5, "qt_per_tank": 5, "qt": 8, "mix_gal": 80, "acres": 8, "area_sqft": 348480, "fl_oz_per_gal": 3.2,
			},
			nil,
		},
		{
			"without a product all volumes over area are the mix", "load",
			map[string]string{"gal_per_1000_sqft": "3", "tank_gal": "300"},
			map[string]float64{"fl_oz_per_1000_sqft": 384, "gal_per_acre": 130.68, "area_sqft": 100000, "1000_sqft_per_tank": 100},
			[]string{"fl_oz", "fraction", "gal", "rate_gal_per_acre"},
		},
		{
			"the smaller unit beside the mix is product", "load",
			map[string]string{"fl_oz_per_1000_sqft": "3", "gal_per_1000_sqft": "2", "mix_gal": "100"},
			map[string]float64{"fl_oz": 150, "fl_oz_per_100_gal": 150, "area_sqft": 50000, "rate_fl_oz_per_1000_sqft": 3},
			[]string{"fl_oz_per_tank"},
		},
		{
			"mix and area give the delivery", "load",
			map[string]string{"rate_oz_per_1000_sqft": "2", "mix_gal": "30", "area_sqft": "10000"},
			map[string]float64{"gal_per_1000_sqft": 3, "oz": 20, "oz_per_gal": 2. / 3, "lb": 1.25},
			[]string{"fraction"},
		},
		{
			"rate and strength give the delivery", "load",
			map[string]string{"rate_lb_per_acre": "3", "lb_per_100_gal": "6"},
			map[string]float64{"gal_per_acre": 50},
			nil,
		},
		{
			"strength and delivery give the rate", "load",
			map[string]string{"lb_per_100_gal": "6", "gal_per_acre": "50", "acres": "2"},
			map[string]float64{"lb_per_acre": 3, "lb": 6, "mix_gal": 100},
			nil,
		},
		{
			"no product at all", "load",
			map[string]string{"rate_lb_per_acre": "0", "gal_per_acre": "50", "tank_gal": "100"},
			map[string]float64{"lb": 0, "lb_per_tank": 0},
			nil,
		},
		{
			"keys in any case; null and nothing are left out", "load",
			map[string]string{"Rate_FL_OZ_per_acre": "32", "gal_per_acre": "20", "tank_gal": "null", "mix_gal": ""},
			map[string]float64{"fl_oz_per_gal": 1.6},
			[]string{"fl_oz", "mix_gal"},
		},
		{
			"lawn of a shape", "area",
			map[string]string{"length_yd": "10", "width_ft": "30", "non_lawn_sqft": "100"},
			map[string]float64{"area_sqft": 900, "lawn_sqft": 800, "lawn_acre": 800. / 43560, "m2": 83.612736},
			nil,
		},
		{
			"widths at a spacing", "area",
			map[string]string{"offset_widths_m": "1, 2,3", "spacing_m": "2"},
			map[string]float64{"sum_m": 6, "area_m2": 12},
			nil,
		},
		{"speed", "convert", map[string]string{"km_per_h": "1.609344"}, map[string]float64{"mph": 1, "m_per_s": 0.44704}, nil},
		{"strength", "convert", map[string]string{"lb_per_100_gal": "100"}, map[string]float64{"lb_per_gal": 1, "oz_per_gal": 16}, nil},
		{"flow", "convert", map[string]string{"gal_per_min": "1"}, map[string]float64{"gpm": 1, "fl_oz_per_min": 128}, nil},
		{"acres", "convert", map[string]string{"acres": "1"}, map[string]float64{"acre": 1, "1000_sqft": 43.56, "acres": 1}, nil},
	}
	for _, tt := range tests {
		got, err := Do(tt.kind, tt.in)
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		for k, want := range tt.want {
			if f, ok := got[k].(float64); !ok || !agree(f, want) {
				t.Errorf("%s: %s = %v, want %v", tt.name, k, got[k], want)
			}
		}
		for _, k := range tt.absent {
			if v, there := got[k]; there {
				t.Errorf("%s: %s = %v, which nothing determines", tt.name, k, v)
			}
		}
	}
}

func TestRefusals(t *testing.T) {
	tests := []struct {
		kind string
		in   string // key=value, with blanks between
		want string
	}{
		{"cubits", "", `There is no reckoning called "cubits".`},
		{"convert", "", "To reckon convert, one quantity such as gal or gal_per_acre is missing."},
		{"convert", "gal=1 lb=2", `lb is "2"; it must be left out, for one quantity is converted at a time.`},
		{"convert", "cubits=1", `reckon convert takes no input "cubits".`},
		{"convert", "gal=many", `gal is "many"; it must be a plain number such as 1.5.`},
		{"convert", "gal=-1", `gal is "-1"; it must be 0 or more.`},
		{"convert", "gal=1 GAL=2", `gal is "1"; it must be given once.`},
		{"area", "", "To reckon area, the measures of a shape"},
		{"area", "shape=oval", "To reckon area, length_ft and width_ft is missing."},
		{"area", "shape=star length_ft=1 width_ft=1", `shape is "star"; it must be rectangle or oval.`},
		{"area", "shape=oval diameter_ft=1", `shape is "oval"; it must be left out, for it goes with length_ft and width_ft.`},
		{"area", "length_ft=1", "width_ft is missing"},
		{"area", "width_m=1", "length_ft is missing"},
		{"area", "base_ft=1", "height_ft is missing"},
		{"area", "spacing_ft=1", "offset_widths_ft is missing"},
		{"area", "offset_widths_ft=1,x spacing_ft=1", "numbers of 0 or more with commas between; number 2 is not one"},
		{"speed", "course_ft=100 seconds=-5", `seconds is "-5"; it must be a plain number of 0 or more, or several with commas.`},
		{"area", "offset_widths_ft=1 offset_widths_m=1 spacing_ft=1", "already gives it"},
		{"area", "diameter_ft=1 radius_ft=1", `radius_ft is "1"; it must be left out, for diameter_ft already gives a shape.`},
		{"area", "lot_sqft=5", "non_lawn_sqft is missing"},
		{"area", "non_lawn_sqft=5", "lot_sqft is missing"},
		{"area", "lot_sqft=5 non_lawn_sqft=6", "it must be at most the whole, lot_sqft"},
		{"area", "length_ft=5 width_ft=5 colour=2", `takes no input "colour"`},
		{"area", "length_ft=5 length_m=5 width_ft=5", "already gives it"},
		{"load", "", "To reckon load, a rate"},
		{"load", "tank_gal=5", "To reckon load, a rate"},
		{"load", "rate_pt_per_acre=4 tank_gal=5", "gal_per_acre, gal_per_1000_sqft or a strength"},
		{"load", "pt_per_100_gal=4 acres=5", "gal_per_acre, gal_per_1000_sqft or a rate"},
		{"load", "rate_lb=50", "rate_area_sqft is missing"},
		{"load", "rate_area_sqft=50", "rate_lb or rate_fl_oz is missing"},
		{"load", "rate_lb=50 rate_area_sqft=0", "above 0"},
		{"load", "gal_per_acre=0", "above 0"},
		{"load", "rate_lb=50 rate_area_sqft=6 rate_oz_per_acre=5", "already gives it"},
		{"load", "rate_lb_per_acre=1 oz_per_acre=2", "already gives it"},
		{"load", "rate_lb_per_acre=1 pt_per_100_gal=2", `pt_per_100_gal is "2"; it must be a weight, as rate_lb_per_acre.`},
		{"load", "rate_lb_per_acre=1 lb_per_gal=2 gal_per_acre=5", "already gives it"},
		{"load", "gal_per_acre=1 mix_gal=5 acres=5", "already gives it"},
		{"load", "gal_per_acre=1 area_acre=5 acres=5", "already gives it"},
		{"load", "gal_per_acre=1 wind_mph=5", `takes no input "wind_mph"`},
		{"load", "gal_per_acre=1e30 lb_per_gal=1e30 acres=1e-30", ""},
	}
	for _, tt := range tests {
		in := map[string]string{}
		for _, pair := range strings.Fields(tt.in) {
			k, v, _ := strings.Cut(pair, "=")
			in[k] = v
		}
		got, err := Do(tt.kind, in)
		if tt.want == "" {
			if err != nil {
				t.Errorf("%s %s: %v", tt.kind, tt.in, err)
			}
			continue
		}
		if err == nil || !strings.Contains(err.Error(), tt.want) || !strings.HasSuffix(err.Error(), ".") {
			t.Errorf("%s %s: %v, %v\nwant %s", tt.kind, tt.in, got, err, tt.want)
			continue
		}
		var hint interface{ Do() string }
		if !errors.As(err, &hint) || !strings.HasSuffix(hint.Do(), ".") {
			t.Errorf("%s %s: nothing to do about it", tt.kind, tt.in)
		}
	}
}

func TestKindsAndInputs(t *testing.T) {
	for _, kind := range []string{
		"convert", "area", "load", "hose", "pressure", "changeover", "gauge", "levelling", "active", "strength", "nitrogen",
		"topup", "dilute", "stretch", "blend", "rinse",
	} {
		if !slices.Contains(Kinds(), kind) {
			t.Errorf("%s is no kind", kind)
		}
	}
	if Inputs("cubits") != nil {
		t.Error("inputs of no kind")
	}
	for _, kind := range Kinds() {
		for _, key := range Inputs(kind) {
			// Known means: never refused as unknown, whatever else is missing.
			_, err := Do(kind, map[string]string{key: "1"})
			var unknown *KeyError
			if errors.As(err, &unknown) {
				t.Errorf("%s lists %s and does not take it", kind, key)
			}
		}
	}
}

func FuzzDo(f *testing.F) {
	f.Add("load", "rate_fl_oz_per_acre", "32", "gal_per_acre", "20")
	f.Add("area", "offset_widths_ft", "1,2,,", "spacing_m", "1e30")
	f.Add("convert", "gal_per_acre", "1e-30", "", "")
	f.Fuzz(func(t *testing.T, kind, k1, v1, k2, v2 string) {
		in := map[string]string{k1: v1, k2: v2}
		got, err := Do(kind, in)
		again, errAgain := Do(kind, in)
		if (err == nil) != (errAgain == nil) || (err != nil && err.Error() != errAgain.Error()) || !reflect.DeepEqual(got, again) {
			t.Fatalf("%v, %v; then %v, %v", got, err, again, errAgain)
		}
		for k, v := range got {
			if n, ok := v.(float64); ok && !(n >= 0 && n <= math.MaxFloat64) {
				t.Fatalf("%s = %v", k, v)
			}
		}
	})
}
