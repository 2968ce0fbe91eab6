package reckon

import (
	"bufio"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
)

// tankRow is a row of testdata/hydraulics/checks.jsonl about tanks, gauges and levelling.
type tankRow struct {
	ID       string                     `json:"id"`
	Topic    string                     `json:"topic"`
	Source   string                     `json:"source"`
	How      string                     `json:"how_obtained"`
	Inputs   map[string]json.RawMessage `json:"inputs"`
	Expected map[string]float64         `json:"expected"`
	TolAbs   float64                    `json:"tol_abs"`
	TolRel   float64                    `json:"tol_rel"`
}

// tankTopics are the kinds that answer a topic, with the shape that its measures alone do not tell.
var tankTopics = map[string][2]string{
	"horizontal cylinder partial volume":               {"gauge", ""},
	"vertical cylinder with shaped bottom":             {"gauge", ""},
	"vertical tank, slanted floor and dished top":      {"gauge", ""},
	"elliptical cross-section tank":                    {"gauge", "ellipse"},
	"obround (flat-sided oval) tank on edge":           {"gauge", "obround"},
	"circular segment area":                            {"gauge", ""},
	"oval vessel full volume by width/height scaling":  {"gauge", ""},
	"uniform distribution standard uncertainty":        {"gauge", ""},
	"equal cross-circulation A<->B":                    {"levelling", ""},
	"both suctions open, return on A, constant volume": {"levelling", ""},
	"level equalisation through an orifice (textbook)": {"levelling", ""},
	"tank drain time":                                  {"levelling", ""},
	"equal tanks, time to equalise":                    {"levelling", ""},
	"cross-feed through suction plumbing, pump off":    {"levelling", ""},
	"heel plus refill":                                 {"topup", ""},
	"tank gaining volume (textbook)":                   {"topup", ""},
	"washout of a mixed volume":                        {"rinse", ""},
	"n-rinse dilution, equal split":                    {"rinse", ""},
	"uniform gauge band, exact posterior":              {"learn", ""},
	"hose volume calibration from dye arrival":         {"learn", ""},
}

func tankRows(t *testing.T) []tankRow {
	t.Helper()
	f, err := os.Open("../../testdata/hydraulics/checks.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	var out []tankRow
	lines := bufio.NewScanner(f)
	for lines.Scan() {
		var head struct{ Topic string }
		if err := json.Unmarshal(lines.Bytes(), &head); err != nil {
			t.Fatal(err)
		}
		if _, mine := tankTopics[head.Topic]; !mine {
			continue
		}
		var r tankRow
		if err := json.Unmarshal(lines.Bytes(), &r); err != nil {
			t.Fatal(err)
		}
		out = append(out, r)
	}
	return out
}

// texts writes the inputs as they would be typed.
func (r tankRow) texts() map[string]string {
	out := map[string]string{}
	for k, raw := range r.Inputs {
		out[k] = strings.Trim(string(raw), `"`)
	}
	if shape := tankTopics[r.Topic][1]; shape != "" {
		out["shape"] = shape
	}
	return out
}

func (r tankRow) within(got, want float64) bool {
	d := math.Abs(got - want)
	return d <= r.TolAbs || d <= r.TolRel*math.Abs(want)
}

func TestTankRows(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range tankRows(t) {
		seen[r.Topic] = true
		group := "computed"
		if r.How == "published" {
			group = "published"
		}
		t.Run(group+"/"+r.ID, func(t *testing.T) {
			got, err := Do(tankTopics[r.Topic][0], r.texts())
			if err != nil {
				t.Fatal(err)
			}
			for key, want := range r.Expected {
				if f, ok := got[key].(float64); !ok || !r.within(f, want) {
					t.Errorf("%s = %v, want %v (%s)", key, got[key], want, r.Source)
				}
			}
		})
	}
	if len(seen) != len(tankTopics) {
		t.Errorf("%d topics were driven of %d", len(seen), len(tankTopics))
	}
}

// A row whose inputs are told in other units gives the same answers.
func TestTankRowsInOtherUnits(t *testing.T) {
	other := []struct {
		from, to string
		factor   float64
	}{
		{"_in", "_cm", 2.54},
		{"_in", "_ft", 1. / 12},
		{"_ft", "_m", 0.3048},
		{"_mm", "_in", 1 / 25.4},
		{"_m", "_in", 1 / 0.0254},
		{"_m2", "_sqft", 1 / 0.09290304},
		{"_m2", "_in2", 1 / 0.00064516},
		{"_in2", "_cm2", 6.4516},
		{"_ft2", "_m2", 0.09290304},
		{"_ft2", "_sq_yd", 1. / 9},
		{"_gal", "_l", 3.785411784},
		{"_gal", "_qt", 4},
		{"_oz_gal", "_lb_per_gal", 1. / 16},
		{"_oz_gal", "_g_l", 28.349523125 / 3.785411784},
		{"_gpm", "_l_per_min", 3.785411784},
		{"_min", "_s", 60},
		{"_min", "_h", 1. / 60},
		{"_m_s2", "_ft_s2", 1 / 0.3048},
	}
	tried := 0
	for _, r := range tankRows(t) {
		texts := r.texts()
		for _, o := range other {
			for key, text := range texts {
				name, ok := strings.CutSuffix(key, o.from)
				if !ok || strings.HasSuffix(key, "_oz_gal") != (o.from == "_oz_gal") || strings.HasSuffix(name, "oz") || strings.HasSuffix(name, "_lb") {
					continue
				}
				in := map[string]string{}
				for k, v := range texts {
					in[k] = v
				}
				delete(in, key)
				if text == "null" {
					continue
				}
				in[name+o.to] = scaled(t, text, o.factor)
				got, err := Do(tankTopics[r.Topic][0], in)
				if err != nil {
					t.Errorf("%s with %s: %v", r.ID, name+o.to, err)
					continue
				}
				tried++
				for k, want := range r.Expected {
					if f, ok := got[k].(float64); !ok || math.Abs(f-want) > max(r.TolAbs, max(r.TolRel, 1e-6)*math.Abs(want)) {
						t.Errorf("%s with %s: %s = %v, want %v", r.ID, name+o.to, k, got[k], want)
					}
				}
			}
		}
	}
	if tried < 120 {
		t.Errorf("only %d were tried", tried)
	}
}

// Each answer stands in every unit of its kind.
func TestTankAnswersInEveryUnit(t *testing.T) {
	for _, row := range []struct {
		kind string
		in   map[string]string
		keys []string
	}{
		{
			"gauge",
			map[string]string{"shape": "obround", "width_in": "27", "height_in": "44", "length_in": "60", "depth_in": "40", "gauge_step_gal": "5"},
			[]string{"volume_gal", "volume_l", "volume_fl_oz", "volume_qt", "full_gal", "full_l", "sd_gal", "sd_l"},
		},
		{"gauge", map[string]string{"diameter_in": "72", "depth_in": "24"}, []string{"area_in2", "area_sqft", "area_m2", "area_acre", "area_acres"}},
		{
			"levelling",
			map[string]string{"area_m2": "1", "dh0_m": "0.5", "pipe_id_in": "1.25", "k_sum": "8", "time_s": "10"},
			[]string{"time_s", "time_min", "initial_flow_gpm", "initial_flow_l_per_min", "moved_30s_gal", "moved_60s_l", "moved_120s_qt", "moved_total_gal", "moved_gal", "k_eff"},
		},
		{
			"levelling",
			map[string]string{"va_gal": "60", "vb_gal": "30", "ca0_fl_oz_gal": "1", "cb0_ml_l": "1", "q_gpm": "1", "time_min": "1"},
			[]string{"va_gal", "vb_l", "ca_fl_oz_gal", "ca_ml_per_l", "cb_fl_oz_per_gal"},
		},
	} {
		got, err := Do(row.kind, row.in)
		if err != nil {
			t.Errorf("%v: %v", row.in, err)
			continue
		}
		for _, k := range row.keys {
			if _, ok := got[k].(float64); !ok {
				t.Errorf("%v: there is no %s", row.in, k)
			}
		}
	}
}

// States that no row has: arithmetic by hand stands beside each.
func TestLevellingStates(t *testing.T) {
	for _, row := range []struct {
		why  string
		in   map[string]string
		want map[string]float64
	}{
		{
			"60 gal at 3 and 5 gpm are dry after 7.5 min; 20 gal at 5 gpm after 4",
			map[string]string{
				"va_gal": "60", "vb_gal": "40", "ca0_oz_gal": "1", "cb0_oz_gal": "0", "q_gun_gpm": "3", "q_bypass_gpm": "5", "room_b_gal": "20", "time_min": "4",
			},
			map[string]float64{"dry_min": 7.5, "over_min": 4, "va_gal": 28, "vb_gal": 60, "ca_oz_gal": 1, "cb_oz_gal": 1. / 3},
		},
		{
			"A takes 4 gpm and gives 3: 10 gal more after 10 min; B gives 5",
			map[string]string{
				"va0_gal": "50", "vb0_gal": "80", "ca0_oz_gal": "1", "cb0_oz_gal": "1", "q_pump_gpm": "8", "q_bypass_gpm": "4", "share_from_a": "0.375", "time_min": "10",
			},
			map[string]float64{"va_gal": 60, "vb_gal": 30, "ca_oz_gal": 1, "c_gun_oz_gal": 1, "dry_min": 16},
		},
		{
			"half of the difference: T (1 - sqrt 0.5)",
			map[string]string{"area_m2": "1", "dh0_m": "1", "dh1_m": "0.5", "orifice_area_m2": "0.01", "cd": "0.5", "g_m_s2": "8"},
			map[string]float64{"time_s": 50 * (1 - math.Sqrt(0.5)), "moved_total_gal": 0.5 * 264.172052358148},
		},
	} {
		got, err := Do("levelling", row.in)
		if err != nil {
			t.Errorf("%s: %v", row.why, err)
			continue
		}
		for k, want := range row.want {
			if f, ok := got[k].(float64); !ok || math.Abs(f-want) > 1e-9*max(math.Abs(want), 1) {
				t.Errorf("%s: %s = %v, want %v", row.why, k, got[k], want)
			}
		}
	}
}

func TestTankRefusals(t *testing.T) {
	obround := map[string]string{"shape": "obround", "width_in": "27", "height_in": "44", "length_in": "60", "depth_in": "40"}
	feed := map[string]string{"plan_area1_ft2": "6", "plan_area2_ft2": "4", "dh0_in": "12", "pipe_id_in": "1.25", "pipe_length_ft": "6", "k_sum": "7.3"}
	both := map[string]string{"va0_gal": "50", "ca0_oz_gal": "0.5", "cb_oz_gal": "1", "q_pump_gpm": "7", "q_bypass_gpm": "4", "share_from_a": "0.5", "time_min": "6"}
	round := map[string]string{"va_gal": "50", "vb_gal": "5", "ca0_oz_gal": "0.5", "cb0_oz_gal": "1", "q_gpm": "7", "time_min": "6"}
	for _, row := range []struct {
		kind     string
		from     map[string]string
		changes  string // key=value; without a value it is left out
		says, do string
	}{
		{"gauge", nil, "", "the shape of a tank", "gauge_step_gal"},
		{"gauge", obround, "depth_in=45", "A depth of 45 in is above the tank, which is 44 in high.", "Give a depth of 0 to 44 in."},
		{"gauge", obround, "width_in=0", `width_in is "0"; it must be above 0.`, "above 0"},
		{"gauge", obround, "depth_in=-1", "0 or more", "0 or more"},
		{"gauge", obround, "level_in=3", "left out, for depth_in already gives it", ""},
		{"gauge", obround, "shape=moulded", "lying, upright, ellipse, obround, segment or slant", ""},
		{"gauge", obround, "shape", "shape (lying, upright, ellipse", ""},
		{"gauge", obround, "length_in", "length_in is missing", ""},
		{"gauge", obround, "gal=3", `takes no input "gal"`, "depth_in"},
		{"gauge", map[string]string{"diameter_in": "72"}, "", "depth_in is missing", ""},
		{"gauge", map[string]string{"diameter_in": "72", "depth_in": "73"}, "", "above the tank", "0 to 72 in"},
		{"gauge", map[string]string{"diameter_in": "72", "bottom": "conical", "bottom_depth_in": "9"}, "", "depth_in is missing", ""},
		{"gauge", map[string]string{"diameter_in": "72", "length_in": "9", "depth_in": "3", "head": "pointed"}, "", `The heads are "pointed".`, "torispherical"},
		{"gauge", map[string]string{"diameter_in": "72", "length_in": "9", "depth_in": "3", "head": "torispherical"}, "", "torispherical f=1 k=0.06", ""},
		{"gauge", map[string]string{"diameter_in": "72", "length_in": "9", "depth_in": "3", "head": "flat 3"}, "", "flat, ellipsoidal", ""},
		{"gauge", map[string]string{"gauge_step_gal": "0"}, "", "above 0", ""},
		{"levelling", nil, "", "plan_area1_ft2 and plan_area2_ft2", ""},
		{"levelling", feed, "plan_area2_ft2", "plan_area1_ft2 and plan_area2_ft2", ""},
		{"levelling", feed, "dh0_in", "dh0_in is missing", ""},
		{"levelling", feed, "dh0_in=0", "above 0", ""},
		{"levelling", feed, "dh1_in=13", "at most dh0_in, for levels come together", ""},
		{"levelling", feed, "k_sum", "k_sum is missing", ""},
		{"levelling", feed, "pipe_id_in", "pipe_id_in with k_sum", ""},
		{"levelling", map[string]string{"area_m2": "1", "dh0_m": "1", "pipe_id_in": "1", "k_sum": "0"}, "", "above 0 where pipe_length_ft is not given", ""},
		{"levelling", map[string]string{"area_m2": "1", "dh0_m": "1", "orifice_area_m2": "1"}, "", "cd is missing", ""},
		{"levelling", map[string]string{"tank_d_ft": "4", "outlet_area_in2": "5", "cd": "1"}, "", "h0_ft is missing", ""},
		{"levelling", map[string]string{"tank_d_ft": "4", "outlet_area_in2": "5", "cd": "1", "h0_ft": "2", "h1_ft": "3"}, "", "for a level falls", ""},
		{"levelling", map[string]string{"h0_ft": "2", "outlet_area_in2": "5", "cd": "1"}, "", "tank_d_ft or tank_area_ft2", ""},
		{"levelling", both, "share_from_a=1.5", "0 to 1", ""},
		{"levelling", both, "q_bypass_gpm=8", "at most q_pump_gpm", ""},
		{"levelling", both, "share_from_a", "share_from_a is missing", ""},
		{"levelling", both, "q_bypass_gpm", "q_bypass_gpm is missing", ""},
		{"levelling", both, "time_min", "time_min is missing", ""},
		{"levelling", round, "vb_gal", "vb_gal is missing", ""},
		{"levelling", round, "cb0_oz_gal", "cb0_oz_gal is missing", ""},
		{"levelling", round, "q_gpm", "q_gpm, or q_gun_gpm", ""},
		{"levelling", map[string]string{"va_gal": "50", "vb_gal": "5", "ca0_oz_gal": "0.5", "cb0_fl_oz_gal": "1", "q_gpm": "7", "time_min": "6"}, "", "by volume or by weight", ""},
	} {
		in := map[string]string{}
		for k, v := range row.from {
			in[k] = v
		}
		if key, value, set := strings.Cut(row.changes, "="); set {
			in[key] = value
		} else {
			delete(in, key)
		}
		_, err := Do(row.kind, in)
		with, ok := err.(interface{ Do() string })
		if err == nil || !ok || !strings.Contains(err.Error(), row.says) || !strings.Contains(with.Do(), row.do) || with.Do() == "" {
			t.Errorf("%v %s: %v", in, row.changes, err)
		}
	}
	if got := fmt.Sprint(Kinds()); !strings.Contains(got, "gauge") || !strings.Contains(got, "levelling") || len(Inputs("gauge")) == 0 || len(Inputs("levelling")) == 0 {
		t.Error(got)
	}
}
