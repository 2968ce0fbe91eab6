package reckon

import (
	"math"
	"strings"
	"testing"
)

// Each row says where its figures come from. A key with a text holds a piece of the sentence.
func TestMixingKinds(t *testing.T) {
	for _, row := range []struct {
		source, kind, in string
		want             map[string]any
	}{
		{
			"hand arithmetic: 100 x 2 - 30 x 1.5 = 155 fl oz, and 70 gal less that", "topup",
			"left_gal=30 left_fl_oz_per_gal=1.5 target_fl_oz_per_gal=2 target_gal=100 capacity_gal=120",
			map[string]any{"possible": true, "product_fl_oz": 155.0, "water_gal": 70 - 155./128, "why": nil},
		},
		{
			"the same with a dry product, which adds no volume", "topup", "left_l=10 left_g_per_l=1 target_oz_per_gal=1 target_gal=20",
			map[string]any{"possible": true, "product_oz": 20 - 10/28.349523125, "water_l": 20*3.785411784 - 10},
		},
		{
			"hand arithmetic: 30 x 4 / 2 = 60 gal", "topup", "left_gal=30 left_fl_oz_per_gal=4 target_fl_oz_per_gal=2 target_gal=50 capacity_gal=55",
			map[string]any{"possible": false, "right_at_gal": 60.0, "times_too_strong": 1.2, "why": "2.00 times the strength meant", "do": "the tank holds 55.0 gal"},
		},
		{
			"no room: 100 gal into 55", "topup", "left_gal=30 left_fl_oz_per_gal=1 target_fl_oz_per_gal=2 target_gal=100 capacity_gal=55",
			map[string]any{"possible": false, "why": "do not fit", "do": "at most 55.0 gal"},
		},
		{
			"a heel stronger than the whole tank may be", "topup", "capacity_gal=10 heel_gal=5 heel_conc_rel=3 new_conc_rel=0",
			map[string]any{"possible": false, "conc_rel": 1.5},
		},
		{
			"a flow that is as large out as in goes over into e^-1 (mass balance)", "topup", "v0_gal=10 m0_gal=1 q_in_gpm=1 q_out_gpm=1 c_in_gal_gal=0 time_min=10",
			map[string]any{"product_gal": math.Exp(-1), "volume_gal": 10.0},
		},
		{
			"eight times the strength at one eighth of the delivery rate: common practice, no source", "dilute",
			"left_gal=5 from_gal_per_1000_sqft=0.25 to_gal_per_1000_sqft=2",
			map[string]any{"possible": true, "strength_ratio": 0.125, "water_gal": 35.0, "total_gal": 40.0},
		},
		{
			"the other way round water is of no use", "dilute", "left_gal=5 from_gal_per_1000_sqft=2 to_gal_per_1000_sqft=0.25",
			map[string]any{"possible": false, "strength_ratio": 8.0, "why": "8 times as strong"},
		},
		{
			"hand arithmetic: 10 x 2 x 1.5 / 2.5 = 12 gal, 8,000 sq ft", "stretch", "left_gal=10 fl_oz_per_gal=2 rate_low_fl_oz_per_1000_sqft=2.5 gal_per_1000_sqft=1.5",
			map[string]any{"possible": true, "water_gal": 2.0, "total_gal": 12.0, "area_sqft": 8000.0},
		},
		{
			"there is room for half of it", "stretch", "left_gal=10 fl_oz_per_gal=2 rate_low_fl_oz_per_1000_sqft=2.5 gal_per_1000_sqft=1.5 room_gal=1",
			map[string]any{"possible": true, "water_gal": 1.0, "total_gal": 11.0, "rate_fl_oz_per_1000_sqft": 3 * 10. / 11},
		},
		{
			"below the lowest rate as it is: 3 of 4 fl oz", "stretch", "left_gal=10 fl_oz_per_gal=2 rate_low_fl_oz_per_1000_sqft=4 gal_per_1000_sqft=1.5",
			map[string]any{"possible": false, "water_gal": 0.0, "why": "75 %"},
		},
		{
			"hand arithmetic: (60 x 0.5 + 30 x 1) / 90", "blend", "va_gal=60 vb_gal=30 ca_oz_gal=0.5 cb_oz_gal=1",
			map[string]any{"total_gal": 90.0, "c_oz_gal": 60. / 90, "c_lb_per_gal": 60. / 90 / 16},
		},
		{
			"5 gal left: 30 gal at once leaves 14.3 %, 3 x 10 gal 3.70 % (mass balance)", "rinse", "residual_gal=5 rinse_each_gal=10 rinses=3",
			map[string]any{"fraction_old": 1. / 27, "rinse_total_gal": 30.0},
		},
		{
			"factor 300 in three rinses takes 5.69 residuals each (ISO 16119; mass balance)", "rinse", "residual_gal=1 rinses=3 target_fraction=0.0033333333333333335",
			map[string]any{"rinse_each_gal": math.Cbrt(300) - 1},
		},
		{
			"from 1 to 1/20,000 with rinses of 9 to 1: 4.3, five in practice", "rinse", "residual_gal=1 rinse_each_gal=9 target_fraction=0.00005",
			map[string]any{"rinses": 5.0, "fraction_old": 1e-5},
		},
	} {
		got, err := Do(row.kind, pairs(row.in))
		if err != nil {
			t.Errorf("%s: %v", row.source, err)
			continue
		}
		for key, want := range row.want {
			switch want := want.(type) {
			case float64:
				if f, ok := got[key].(float64); !ok || math.Abs(f-want) > 1e-10*math.Abs(want) {
					t.Errorf("%s: %s = %v, want %v", row.source, key, got[key], want)
				}
			case string:
				if s, ok := got[key].(string); !ok || !strings.Contains(s, want) {
					t.Errorf("%s: %s = %v, want %q", row.source, key, got[key], want)
				}
			default:
				if v, there := got[key]; !there || v != want {
					t.Errorf("%s: %s = %v, want %v", row.source, key, got[key], want)
				}
			}
		}
		if lines, ok := got[Working].([]string); !ok || len(lines) == 0 {
			t.Errorf("%s: no working: %v", row.source, got[Working])
		}
	}
}

func TestMixingRefusals(t *testing.T) {
	for _, row := range []struct{ kind, in, says, do string }{
		{"topup", "", "left_gal", "left_gal"},
		{"topup", "left_gal=3", "left_fl_oz_per_gal is missing", "any unit"},
		{"topup", "left_gal=3 left_oz_per_gal=1 target_fl_oz_per_gal=1 target_gal=9", "a volume of product", "Give left_oz_per_gal"},
		{"topup", "left_gal=9 left_oz_per_gal=1 target_oz_per_gal=1 target_gal=3", "9.00 gal are in it already", "at least 9.00 gal"},
		{"topup", "left_gal=-1 left_oz_per_gal=1 target_oz_per_gal=1 target_gal=3", "0 or more", ""},
		{"topup", "capacity_gal=5 heel_gal=6 heel_conc_rel=1 new_conc_rel=1", "The heel is 6.00 gal", "0 gal to the capacity"},
		{"topup", "capacity_gal=5 heel_gal=1 heel_conc_rel=1", "new_conc_rel is missing", ""},
		{"topup", "v0_gal=5 m0_lb=1 q_in_gpm=1 q_out_gpm=2 c_in_lb_gal=1 time_min=6", "dry before 6 min", "shorter time"},
		{"topup", "v0_gal=5 m0_lb=1 q_in_gpm=1 q_out_gpm=2 c_in_fl_oz_gal=1 time_min=1", "a weight of product", ""},
		{"dilute", "", "final_gal", ""},
		{"dilute", "final_gal=5 final_pct=50 concentrate_pct=40", "does not make 50 per cent", "0 per cent to 40"},
		{"dilute", "final_gal=5 final_pct=1 concentrate_pct=140", "at most 100", ""},
		{"dilute", "final_gal=5 final_pct=1", "concentrate_pct is missing", ""},
		{"dilute", "stock_ml=5 stock_pct=50 target_pct=60", "does not lie between 50 and 0", "between the two"},
		{"dilute", "stock_ml=5 stock_pct=50 target_pct=0", "No amount of 0 per cent", ""},
		{"dilute", "left_gal=5 from_gal_per_acre=10", "to_gal_per_1000_sqft is missing", ""},
		{"stretch", "left_gal=10 fl_oz_per_gal=2 rate_low_oz_per_1000_sqft=2 gal_per_1000_sqft=1", "a weight of product", "fl_oz_per_gal"},
		{"stretch", "left_gal=10 fl_oz_per_gal=2 rate_low_fl_oz_per_1000_sqft=2", "gal_per_1000_sqft is missing", ""},
		{"stretch", "left_gal=10 heel_gal=11 fl_oz_per_gal=2 rate_low_fl_oz_per_1000_sqft=2 gal_per_1000_sqft=1", "The heel is 11.0 gal", "0 to 10.0 gal"},
		{"blend", "va_gal=5 vb_gal=5 ca_oz_gal=1", "cb_oz_gal is missing", ""},
		{"blend", "va_gal=5 vb_gal=5 ca_oz_gal=1 cb_fl_oz_gal=1", "a volume of product", ""},
		{"blend", "va_gal=5 vb_gal=5 ca_oz_gal=1 cb_oz_gal=1 capacity_gal=8", "the tank holds 8.00 gal", "at most 3.00 gal"},
		{"rinse", "residual_gal=1 rinse_total_gal=3 rinses=1.5", "whole number", ""},
		{"rinse", "residual_gal=1 rinse_total_gal=3", "rinses", ""},
		{"rinse", "volume_gal=1 flow_gpm=3", "time_min is missing", ""},
		{"rinse", "residual_gal=1 rinses=2 target_fraction=1", "below 1", "below 1"},
	} {
		_, err := Do(row.kind, pairs(row.in))
		with, ok := err.(interface{ Do() string })
		if err == nil || !ok || !strings.Contains(err.Error(), row.says) || !strings.Contains(with.Do(), row.do) || with.Do() == "" {
			t.Errorf("%s %s: %v, %v", row.kind, row.in, err, ok)
		}
	}
}
