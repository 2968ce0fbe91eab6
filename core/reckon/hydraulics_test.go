package reckon

import (
	"bufio"
	"encoding/json"
	"maps"
	"math"
	"os"
	"strings"
	"testing"
)

// hydraulic is a row of testdata/hydraulics/checks.jsonl.
type hydraulic struct {
	ID       string                     `json:"id"`
	Topic    string                     `json:"topic"`
	Source   string                     `json:"source"`
	Inputs   map[string]json.RawMessage `json:"inputs"`
	Expected map[string]any             `json:"expected"`
	TolAbs   float64                    `json:"tol_abs"`
	TolRel   float64                    `json:"tol_rel"`
}

// hoseKinds names the reckoning of a topic of hoses and pressure.
var hoseKinds = map[string]string{
	"hose volume": "hose", "water weight": "hose",
	"static head": "pressure", "friction factor": "pressure", "Reynolds and friction factor": "pressure",
	"hose flow at inlet pressure": "pressure", "pipe friction Hazen-Williams": "pressure", "hose friction": "pressure",
	"hose friction Darcy-Weisbach": "pressure",
	"turbulent dispersion":         "changeover", "flush past plug arrival, no dead volume": "changeover",
	"flush past hose plug arrival with well-mixed dead volume": "changeover", "flush-back balance (no bypass)": "changeover",
	"minimum flow for Re = 4000": "changeover", "batch interface length 1-99 %": "changeover",
	"contamination of B by a gallons of A as fraction of label rate": "changeover",
}

func readHydraulics(t *testing.T) []hydraulic {
	t.Helper()
	f, err := os.Open("../../testdata/hydraulics/checks.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	var out []hydraulic
	lines := bufio.NewScanner(f)
	for lines.Scan() {
		var h hydraulic
		if err := json.Unmarshal(lines.Bytes(), &h); err != nil {
			t.Fatalf("line %d: %v", len(out)+1, err)
		}
		out = append(out, h)
	}
	if err := lines.Err(); err != nil {
		t.Fatal(err)
	}
	return out
}

// texts writes inputs as they would be typed.
func (h hydraulic) texts() map[string]string {
	out := map[string]string{}
	for k, raw := range h.Inputs {
		out[k] = strings.Trim(strings.ReplaceAll(string(raw), " ", ""), `[]"`)
	}
	return out
}

// hold compares an answer with the row, each figure within either tolerance.
func (h hydraulic) hold(t *testing.T, got map[string]any) {
	t.Helper()
	for key, v := range h.Expected {
		want, ok := v.(float64)
		if !ok {
			t.Fatalf("%s: %s is no figure", h.ID, key)
		}
		f, ok := got[key].(float64)
		if d := math.Abs(f - want); !ok || (d > h.TolAbs && d > h.TolRel*math.Abs(want)) {
			t.Errorf("%s: %s = %v, want %v (%s)", h.ID, key, got[key], want, h.Source)
		}
	}
}

func TestHoseRows(t *testing.T) {
	driven := 0
	for _, h := range readHydraulics(t) {
		kind := hoseKinds[h.Topic]
		if kind == "" {
			continue
		}
		t.Run(kind+"/"+h.ID, func(t *testing.T) {
			got, err := Do(kind, h.texts())
			if err != nil {
				t.Fatal(err)
			}
			h.hold(t, got)
			driven++
		})
	}
	if driven != 80 {
		t.Errorf("%d rows were driven", driven)
	}
}

// Each row gives the same when an input is told in another unit of its kind.
func TestHoseRowsInOtherUnits(t *testing.T) {
	other := []struct {
		from, to string
		factor   float64 // one of from in to
	}{
		{"_in", "_mm", 25.4},
		{"_in", "_m", 0.0254},
		{"_ft", "_m", 0.3048},
		{"_ft", "_yd", 1. / 3},
		{"_ft", "_mi", 1. / 5280},
		{"_gpm", "_l_per_min", 3.785411784},
		{"_gpm", "_fl_oz_per_min", 128},
		{"_gpm", "_gal_per_min", 1},
		{"_psi", "_kpa", 6.894757293168361},
		{"_psi", "_bar", 0.06894757293168361},
		{"_gal", "_l", 3.785411784},
		{"_gal", "_qt", 4},
		{"diameter_m", "diameter_in", 1 / 0.0254},
		{"viscosity_m2_s", "viscosity_cst", 1e6},
		{"viscosity_m2_s", "viscosity_ft2_s", 1 / 0.09290304},
		{"density_kg_m3", "density_lb_gal", 0.003785411784 / 0.45359237},
		{"roughness_mm", "roughness_in", 1 / 25.4},
		{"conc_a_oz_gal", "conc_a_g_per_l", 28.349523125 / 3.785411784},
		{"carrier_gal_per_1000ft2", "carrier_gal_per_acre", 43.56},
		{"label_oz_per_1000ft2", "label_lb_per_acre", 43.56 / 16},
	}
	tried := 0
	for _, h := range readHydraulics(t) {
		kind := hoseKinds[h.Topic]
		if kind == "" {
			continue
		}
		texts := h.texts()
		for _, o := range other {
			for key, text := range texts {
				name, ok := strings.CutSuffix(key, o.from)
				if !ok || strings.HasSuffix(name, "conc_a_oz") {
					continue
				}
				in := maps.Clone(texts)
				delete(in, key)
				in[name+o.to] = scaled(t, text, o.factor)
				got, err := Do(kind, in)
				if err != nil {
					t.Errorf("%s with %s: %v", h.ID, name+o.to, err)
					continue
				}
				tried++
				if h.TolAbs == 0 {
					h.TolRel = max(h.TolRel, 1e-9)
				}
				h.hold(t, got)
			}
		}
	}
	if tried < 500 {
		t.Errorf("only %d were tried", tried)
	}
}

// Every unit of an answer is the same quantity.
func TestHoseAnswersInEveryUnit(t *testing.T) {
	tests := []struct {
		kind, in string
		want     map[string]float64 // one key over another
	}{
		{"hose", "inside_diameter_in=0.5 length_ft=300 outside_diameter_in=0.82", map[string]float64{
			"volume_l/volume_gal": 3.785411784, "volume_tsp/volume_fl_oz": 6, "weight_kg/weight_lb": 0.45359237,
			"weight_lb/volume_gal": 8.3304, "dry_weight_oz/dry_weight_lb": 16, "volume_low_gal/volume_gal": 0.8780, "volume_high_gal/volume_gal": 1.1299,
		}},
		{"pressure", "inside_diameter_in=0.5 length_ft=300 flow_gpm=3 height_ft=10", map[string]float64{
			"pressure_loss_kpa/pressure_loss_psi": 6.894757293168361, "head_loss_m/head_loss_ft": 0.3048,
			"velocity_m_s/velocity_ft_s": 0.3048, "velocity_mph/velocity_ft_per_s": 3600. / 5280, "flow_l_per_min/flow_gpm": 3.785411784,
		}},
		{"changeover", "inside_diameter_in=0.5 length_ft=300 flow_gpm=3 dead_volume_gal=0.2 stop_at_new_fraction=0.9", map[string]float64{
			"extra_90_fl_oz/extra_90_gal": 128, "total_flush_pt/total_flush_gal": 8, "interface_ft/interface_m": 1 / 0.3048,
			"min_flow_l_per_min/min_flow_gpm": 3.785411784, "total_flush_s/total_flush_gal": 20,
		}},
		{"changeover", "volume_of_a_gal=1 volume_b_before_gal=99 conc_a_fl_oz_gal=2 carrier_gal_per_acre=87.12 label_fl_oz_per_acre=3", map[string]float64{
			"conc_in_b_ml_l/conc_in_b_fl_oz_gal": 29.5735295625 / 3.785411784, "conc_in_b_fl_oz_per_100_gal/conc_in_b_fl_oz_gal": 100,
			"dose_fl_oz_per_acre/dose_fl_oz_per_1000ft2": 43.56, "dose_fl_oz_per_1000_sqft/conc_in_b_fl_oz_gal": 2,
		}},
	}
	for _, tt := range tests {
		got, err := Do(tt.kind, pairs(tt.in))
		if err != nil {
			t.Errorf("%s: %v", tt.in, err)
			continue
		}
		for key, want := range tt.want {
			above, below, _ := strings.Cut(key, "/")
			a, okA := got[above].(float64)
			b, okB := got[below].(float64)
			if !okA || !okB || math.Abs(a/b-want) > 5e-5*want {
				t.Errorf("%s: %s is %v over %v, not %g", tt.in, key, got[above], got[below], want)
			}
		}
	}
}

// pairs reads key=value with blanks between.
func pairs(text string) map[string]string {
	in := map[string]string{}
	for _, pair := range strings.Fields(text) {
		k, v, _ := strings.Cut(pair, "=")
		in[k] = v
	}
	return in
}

func TestNoMarginUnlessAsked(t *testing.T) {
	const flush = "inside_diameter_in=0.375 length_ft=200 flow_gpm=3 dead_volume_gal=0"
	const loss = "inside_diameter_in=0.375 length_ft=100 flow_gpm=3"
	for _, tt := range []struct {
		kind, in, with, key string
		times               float64
	}{
		{"changeover", flush, " sigma_factor=1.25", "sigma_volume_gal", 1.25},
		{"changeover", flush, " sigma_factor=1.25", "extra_99_gal", 1.25},
		{"pressure", loss, " hose_factor=1.15", "pressure_loss_psi", 1.15},
		{"pressure", loss, " hose_factor=1.15", "darcy_f", 1},
	} {
		bare, err := Do(tt.kind, pairs(tt.in))
		if err != nil {
			t.Fatal(err)
		}
		with, err := Do(tt.kind, pairs(tt.in+tt.with))
		if err != nil {
			t.Fatal(err)
		}
		if got := with[tt.key].(float64) / bare[tt.key].(float64); math.Abs(got-tt.times) > 1e-9 {
			t.Errorf("%s%s: %s times %g", tt.in, tt.with, tt.key, got)
		}
	}
}

func TestHoseAnswers(t *testing.T) {
	tests := []struct {
		name, kind, in string
		want           map[string]float64
		absent         []string
	}{
		{
			"the bypass sweeps the cell with the gun", "changeover",
			"inside_diameter_in=0.375 length_ft=200 flow_gpm=3 pump_flow_gpm=7 dead_volume_gal=0.2 stop_at_new_fraction=0.99",
			map[string]float64{"old_liquid_to_return_gal": 0.2 * 4 / 7, "extra_99_gal": 0.2*3/7*math.Log(100) + 0.0128*0.0128/2/(0.6/7)},
			nil,
		},
		{
			"below Re 4,000 the hose is laminar", "changeover", "inside_diameter_in=0.5 length_ft=100 flow_gpm=0.3",
			map[string]float64{"extra_99_gal": 4 * 1.019997614801881},
			[]string{"extra_50_gal", "sigma_volume_gal", "D_over_ud"},
		},
		{
			"a hose volume that was measured", "changeover", "hose_volume_gal=2 sigma_volume_gal=0 dead_volume_gal=0.5 stop_at_new_fraction=0.5",
			map[string]float64{"hose_volume_gal": 2, "total_flush_gal": 2 + 0.5*math.Ln2, "extra_90_gal": 0.5 * math.Log(10)},
			[]string{"reynolds", "flow_gpm", "total_flush_s"},
		},
		{
			"what a pump's pressure leaves at the gun", "pressure", "inside_diameter_in=0.5 length_ft=100 flow_gpm=3 inlet_pressure_psi=40 hose_factor=1.15",
			map[string]float64{"outlet_pressure_psi": 40 - 1.15*10.27472844},
			nil,
		},
		{
			"a fitting of K = 1 at 3 gpm in half an inch", "pressure", "inside_diameter_in=0.5 length_ft=0.000001 flow_gpm=3 k_sum=1",
			map[string]float64{"pressure_loss_psi": 0.1616},
			nil,
		},
		{
			"a bore's volume goes on in any unit", "hose", "inside_diameter_mm=12.7 length_yd=100", map[string]float64{"volume_gal": 3.0599928}, []string{"dry_weight_lb"},
		},
		{"fahrenheit", "hose", "volume_gal=1 temperature_f=68", map[string]float64{"weight_lb": 8.330396}, nil},
	}
	for _, tt := range tests {
		got, err := Do(tt.kind, pairs(tt.in))
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		for k, want := range tt.want {
			if f, ok := got[k].(float64); !ok || math.Abs(f-want) > 2e-5*math.Abs(want) {
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
