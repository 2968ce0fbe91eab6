package reckon

import (
	"errors"
	"strings"
	"testing"
)

// given reads inputs as key=value with blanks between.
func given(text string) map[string]string {
	in := map[string]string{}
	for _, pair := range strings.Fields(text) {
		k, v, _ := strings.Cut(pair, "=")
		in[k] = v
	}
	return in
}

// TestProductFigures: figures of actives, strengths and plant food, each worked out beside it or printed by a source.
func TestProductFigures(t *testing.T) {
	tests := []struct {
		kind, in, key string
		want          float64
		source        string
	}{
		{"active", "percent_ai=50 lb_ai=0.5", "lb_product", 1, "University of Arizona (Kopec), 1994: a 1 lb bag of a 50W holds 0.5 lb"},
		{"active", "percent_ai=50 lb_ai=2.5", "lb_product", 5, "University of Arizona (Kopec), 1994: a 5 lb bag of a 50W holds 2.5 lb"},
		{"active", "lb_ai_per_gal=4 pt_per_acre=2", "lb_ai_per_acre", 1, "the inverse of 1 lb from 2 pt of a 4 lb product (Pacific Northwest handbook)"},
		{"active", "lb_per_acre=277 percent_ai=20", "lb_ai_per_acre", 55.4, "University of Florida, spreader of 43 revolutions"},
		{"active", "lb_ai_per_gal=4 lb_ai_per_100_gal=3 spray_gal=50", "qt", 1.5, "half of 3 qt for 100 gal (University of Nevada, 4 EC)"},
		{"active", "percent_ai_ww=41 density_lb_per_gal=10 lb_ai_per_acre=4.1", "gal_per_acre", 1, "4.1 lb in a gallon that weighs 10 lb"},
		{"active", "percent_ai_ww=40 density_lb_per_gal=10 finished_percent_ai_ww=1 spray_density_lb_per_gal=8 spray_gal=100", "gal", 2, "8 lb in 800 lb of spray, from 4 lb in a gallon"},
		{"active", "lb_ai_per_gal=4 finished_percent_ai_ww=1 density_lb_per_gal=8.34", "fl_oz_per_gal", 2.085 * 128 / 100, "University of Missouri: 2.085 gal in 100"},
		{"strength", "percent_vv=2 mix_gal=3", "fl_oz", 7.68, "2 per cent of 384 fl oz"},
		{"strength", "percent_wv=1", "g_per_l", 10, "1 per cent in volume is 10 g per litre, by definition"},
		{"strength", "ppm=1000", "g_per_l", 1, "a thousand milligrams in a litre"},
		{"strength", "ppm=150 percent_n=33 mix_l=378.5411784", "g", 56.78117676 / 0.33, "150 mg a litre; the sheet of Texas A&M prints 5 oz, with its factor rounded it would be 6.06"},
		{"nitrogen", "gal_per_acre=30 lb_n_per_gal=3", "lb_N_per_acre", 90, "Purdue (Camberato), 2023"},
		{"nitrogen", "gal_per_acre=30 density_lb_per_gal=10.6 percent_n=28", "N_lb_per_acre", 89.04, "Purdue (Camberato), 2023, not rounded"},
		{"nitrogen", "lb=100 percent_k2o=10", "K_lb", 8.30148, "100 lb of 10 per cent potash, of which 0.830148 is potassium (weights of IUPAC)"},
		{"nitrogen", "lb_per_1000_sqft=4 percent_n=25 area_sqft=6000", "N_lb", 6, "1 lb on each of six thousands"},
		{"nitrogen", "gal=10 lb_n_per_gal=3", "N_lb", 30, "ten times 3 lb"},
		{"nitrogen", "n_lb_per_1000_sqft=0.9 passes=3", "N_lb_per_1000_sqft_per_pass", 0.3, "a third of it (Rutgers has two passes)"},
		{"nitrogen", "p2o5_lb_per_1000_sqft=1 percent_p2o5=10 percent_n=20", "N_lb_per_1000_sqft", 2, "twice as much nitrogen as phosphate"},
	}
	for _, tt := range tests {
		got, err := Do(tt.kind, given(tt.in))
		if f, ok := got[tt.key].(float64); err != nil || !ok || !agree(f, tt.want) {
			t.Errorf("%s %s: %s = %v (%v), want %v: %s", tt.kind, tt.in, tt.key, got[tt.key], err, tt.want, tt.source)
		}
	}
}

func TestProductFiguresRefused(t *testing.T) {
	tests := []struct{ kind, in, want string }{
		{"active", "", "lb_ai_per_gal or percent_ai is missing"},
		{"active", "lb_ai_per_gal=4", "lb_ai_per_acre, lb_ai_per_100_gal, lb_ai or the product over an area is missing"},
		{"active", "lb_ai_per_gal=4 percent_ai=40", "already gives it"},
		{"active", "lb_ai_per_gal=4 lb_per_acre=3", `lb_per_acre is "3"; it must be a volume, for the product is a liquid.`},
		{"active", "percent_ai=40 pt_per_acre=3", `pt_per_acre is "3"; it must be a weight, for the product is dry.`},
		{"active", "percent_ai=140 lb_ai=1", `percent_ai is "140"; it must be at most 100 per cent.`},
		{"active", "percent_ai=0 lb_ai=1", `percent_ai is "0"; it must be above 0.`},
		{"active", "percent_ai=40 finished_percent_ai_ww=1 spray_gal=5", "spray_density_lb_per_gal is missing"},
		{"active", "lb_ai_per_gal=4 spray_gal=5", "lb_ai_per_100_gal or finished_percent_ai_ww is missing"},
		{"active", "lb_ai_per_gal=4 lb_ai_per_acre=1 pt_per_acre=2", "already gives it"},
		{"strength", "", "percent_vv, percent_ww, percent_wv or ppm is missing"},
		{"strength", "percent_ww=1", "density_lb_per_gal is missing"},
		{"strength", "percent_vv=1 ppm=5", "already gives it"},
		{"strength", "percent_vv=101", "at most 100 per cent"},
		{"nitrogen", "", "percent_N or lb_N_per_gal is missing"},
		{"nitrogen", "n_lb_per_1000_sqft=1", "percent_N or lb_N_per_gal is missing"},
		{"nitrogen", "n_lb_per_1000_sqft=1 percent_n=0", `percent_n is "0"; it must be above 0, for it is to give n_lb_per_1000_sqft.`},
		{"nitrogen", "percent_n=20 gal_per_acre=3", `gal_per_acre is "3"; it must be a weight`},
		{"nitrogen", "lb_n_per_gal=3 lb_per_1000_sqft=3", `lb_per_1000_sqft is "3"; it must be a volume`},
		{"nitrogen", "n_lb_per_1000_sqft=1 k2o_lb_per_1000_sqft=1 percent_n=10", "one nutrient is reckoned at a time"},
		{"nitrogen", "percent_n=10 n_lb_per_1000_sqft=1 lb_per_1000_sqft=10", "already gives it"},
		{"learn", "", "prior_v_gal is missing"},
		{"learn", "prior_gal=1 prior_sd_gal=0.1", "flow_gpm is missing"},
		{"learn", "prior_gal=1 prior_v_gal=5", `prior_v_gal is "5"; it must be left out, for a hose is timed.`},
		{"learn", "prior_v_gal=76 prior_k=1 p11_gal2=8.2 p12_gal=-0.24 p22=0.01 reading_low_gal=75 reading_high_gal=70", "more than reading_low_gal"},
		{"learn", "prior_v_gal=76 prior_k=1 p11_gal2=8.2 p12_gal=-2 p22=0.01 reading_low_gal=70 reading_high_gal=75", "a covariance"},
		{"learn", "prior_v_gal=76 prior_k=1 p11_gal2=8.2 p12_gal=-0.2 p22=0.01 reading_low_gal=7 reading_high_gal=9", "less than one reading in a million"},
		{"nitrogen", "passes=2", "max_N_lb_per_1000_sqft or N_lb_per_1000_sqft is missing"},
	}
	for _, tt := range tests {
		got, err := Do(tt.kind, given(tt.in))
		var hint interface{ Do() string }
		if err == nil || !strings.Contains(err.Error(), tt.want) || !errors.As(err, &hint) || !strings.HasSuffix(hint.Do(), ".") {
			t.Errorf("%s %s: %v, %v; want %s", tt.kind, tt.in, got, err, tt.want)
		}
	}
}
