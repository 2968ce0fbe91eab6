package reckon

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/tintline/core/measure"
)

// reckoning is one kind: its name, the keys that help names, and the arithmetic.
type reckoning struct {
	kind   string
	inputs []string
	do     func(*inputs) (map[string]any, error)
}

// reckonings gives all kinds, in the order in which help lists them.
func reckonings() []reckoning { return append(ofMixes(), ofApplicators()...) }

// ofMixes are the kinds about what is mixed and the tank that it is in.
func ofMixes() []reckoning {
	return []reckoning{
		{"convert", []string{"gal", "lb", "acre", "ft", "mph", "psi", "gal_per_min", "gal_per_acre", "lb_per_acre", "lb_per_gal", "fl_oz_per_gal"}, convert},
		{"area", []string{
			"shape", "length_ft", "width_ft", "diameter_ft", "radius_ft", "base_ft", "height_ft",
			"offset_widths_ft", "spacing_ft", "lot_sqft", "non_lawn_sqft",
		}, area},
		{"load", []string{
			"rate_fl_oz_per_acre", "rate_lb_per_1000_sqft", "rate_lb", "rate_area_sqft", "fl_oz_per_100_gal", "lb_per_gal",
			"gal_per_acre", "gal_per_1000_sqft", "tank_gal", "mix_gal", "area_sqft", "acres",
		}, load},
		{"hose", []string{"inside_diameter_in", "length_ft", "outside_diameter_in", "volume_gal", "temperature_c"}, hose},
		{"pressure", []string{
			"flow_gpm", "inside_diameter_in", "length_ft", "height_ft", "inlet_pressure_psi", "outlet", "k_sum", "hose_factor",
			"hazen_williams_c", "reynolds", "relative_roughness", "formula", "roughness_mm", "temperature_c",
			"kinematic_viscosity_m2_s", "density_kg_m3",
		}, pressure},
		{"changeover", []string{
			"inside_diameter_in", "length_ft", "hose_volume_gal", "flow_gpm", "bypass_flow_gpm", "pump_flow_gpm", "dead_volume_gal",
			"stop_at_new_fraction", "sigma_factor", "sigma_volume_gal", "d_over_ud", "diameter_m", "length_m", "reynolds",
			"temperature_c", "kinematic_viscosity_m2_s", "volume_of_a_gal", "volume_b_before_gal", "conc_a_oz_gal",
			"carrier_gal_per_1000ft2", "label_oz_per_1000ft2",
		}, changeover},
		{"gauge", []string{
			"shape", "diameter_in", "radius_in", "length_in", "width_in", "height_in", "depth_in", "level_in", "head", "head_depth_in", "bottom", "bottom_depth_in", "end_depth_in",
			"slant_height_in", "wall_height_in", "cap_radius_in", "cap_height_in", "gauge_step_gal",
		}, gauge},
		{"levelling", []string{
			"plan_area1_ft2", "plan_area2_ft2", "area_m2", "dh0_in", "dh1_in", "pipe_id_in", "pipe_length_ft", "k_sum", "roughness_mm", "orifice_d_in", "orifice_area_in2", "cd",
			"tank_d_ft", "tank_area_ft2", "outlet_area_in2", "h0_ft", "h1_ft", "g_m_s2", "time_s",
			"va_gal", "vb_gal", "ca0_oz_gal", "cb0_oz_gal", "q_gpm", "q_gun_gpm", "q_bypass_gpm", "room_b_gal", "q_pump_gpm", "share_from_a",
		}, levelling},
		{"active", []string{
			"lb_ai_per_gal", "percent_ai", "density_lb_per_gal", "lb_ai_per_acre", "lb_ai_per_100_gal", "lb_ai", "fl_oz_per_acre", "lb_per_acre",
			"spray_gal", "finished_percent_ai_ww", "spray_density_lb_per_gal",
		}, active},
		{"strength", []string{"percent_vv", "percent_ww", "percent_wv", "ppm", "percent_n", "density_lb_per_gal", "mix_gal"}, strength},
		{"nitrogen", []string{
			"n_lb_per_1000_sqft", "p2o5_lb_per_1000_sqft", "k2o_lb_per_1000_sqft", "percent_n", "percent_p2o5", "percent_k2o", "lb_n_per_gal", "density_lb_per_gal",
			"lb_per_1000_sqft", "gal_per_acre", "area_sqft", "lb", "gal", "max_n_lb_per_1000_sqft", "passes",
		}, nitrogen},
		{"topup", []string{
			"left_gal", "left_fl_oz_per_gal", "target_fl_oz_per_gal", "target_gal", "capacity_gal",
			"heel_gal", "heel_conc_rel", "new_conc_rel", "v0_gal", "m0_lb", "q_in_gpm", "q_out_gpm", "c_in_lb_gal", "time_min",
		}, topup},
		{"dilute", []string{
			"final_gal", "final_pct", "concentrate_pct", "density_lb_per_gal", "stock_ml", "stock_pct", "target_pct", "diluent_pct",
			"left_gal", "from_gal_per_1000_sqft", "to_gal_per_1000_sqft", "capacity_gal",
		}, dilute},
		{"stretch", []string{"left_gal", "fl_oz_per_gal", "rate_low_fl_oz_per_1000_sqft", "gal_per_1000_sqft", "room_gal", "heel_gal"}, stretch},
		{"blend", []string{"va_gal", "vb_gal", "ca_oz_gal", "cb_oz_gal", "capacity_gal"}, blend},
		{"rinse", []string{"residual_gal", "rinse_total_gal", "rinse_each_gal", "rinses", "target_fraction", "volume_gal", "flow_gpm", "time_min"}, rinse},
	}
}

// ofApplicators are the kinds about what an applicator really lays.
func ofApplicators() []reckoning {
	return []reckoning{
		{"catch", []string{
			"collected_fl_oz", "mean_catch_fl_oz", "gal_used", "seconds", "trip_seconds", "allowed_spread_pct", "swath_ft", "spray_width_ft", "boom_width_ft",
			"width_ft", "band_in", "nozzle_spacing_in", "pattern_width_in", "course_ft", "distance_ft", "length_ft", "wheel_revolutions", "circumference_ft",
			"plot_sqft", "plot_ft", "test_area_sqft", "area_sqft", "fraction_acre", "gal_per_min", "speed_mph", "speed_drop_pct", "tank_gal",
			"lb_delivered", "lb_dropped", "lb_per_acre", "percent_ai", "n_lb_per_1000_sqft", "percent_n",
		}, catch},
		{"speed", []string{"speed_mph", "ft_per_s", "course_ft", "seconds"}, speed},
		{"nozzle", []string{
			"pressure1_psi", "pressure2_psi", "flow1_gal_per_min", "flow2_gal_per_min", "speed1_mph", "speed2_mph", "flow_ratio", "nozzle_in",
		}, nozzle},
		{"pace", []string{"width_ft", "speed_mph", "field_efficiency_pct", "area_sqft"}, pace},
		{"learn", []string{
			"prior_v_gal", "prior_k", "p11_gal2", "p12_gal", "p22", "reading_low_gal", "reading_high_gal",
			"prior_gal", "prior_sd_gal", "flow_gpm", "flow_rel_sd", "time_s", "time_sd_s",
		}, learn},
	}
}

// Kinds lists the kinds of reckoning.
func Kinds() []string {
	var names []string
	for _, r := range reckonings() {
		names = append(names, r.kind)
	}
	return names
}

// Inputs lists the keys of a kind that help shows, each in one of its units; nil
// for an unknown kind.
func Inputs(kind string) []string {
	for _, r := range reckonings() {
		if r.kind == kind {
			return r.inputs
		}
	}
	return nil
}

// Do gives every figure that the inputs determine, by key, as a float64, bool, string or
// nil (unknown), and under Working how it was worked out, as a list of sentences. Inputs are plain decimal numbers as text, lists with commas; a key's case
// does not matter. An empty value or "null" counts as not given. The error is a
// *KindError, *KeyError, *InputError, *MissingError, *TankError or *measure.Trouble; each has a Do.
func Do(kind string, given map[string]string) (map[string]any, error) {
	for _, r := range reckonings() {
		if r.kind != kind {
			continue
		}
		in, err := newInputs(r, given)
		if err != nil {
			return nil, err
		}
		out, err := r.do(in)
		if err != nil {
			return nil, err
		}
		if err := in.finite(out); err != nil {
			return nil, err
		}
		return out, nil
	}
	return nil, &KindError{Kind: kind}
}

// inputs are what was given, by key in lower case, and which of it was taken.
type inputs struct {
	kind  string
	known []string
	keys  []string // in order, so that a refusal names the same key every time
	value map[string]string
	taken map[string]bool
}

func newInputs(r reckoning, given map[string]string) (*inputs, error) {
	in := &inputs{kind: r.kind, known: r.inputs, value: map[string]string{}, taken: map[string]bool{}}
	names := make([]string, 0, len(given))
	for k := range given {
		names = append(names, k)
	}
	slices.Sort(names)
	for _, k := range names {
		key, v := strings.ToLower(strings.TrimSpace(k)), strings.TrimSpace(given[k])
		if v == "" || v == "null" {
			continue
		}
		if _, twice := in.value[key]; twice {
			return nil, &InputError{Key: key, Value: v, Want: "given once"}
		}
		in.value[key] = v
		in.keys = append(in.keys, key)
	}
	return in, nil
}

// number reads the value of a key as a number of at least least.
func (in *inputs) number(key string, positive bool) (float64, error) {
	f, err := measure.ParseNumber(in.value[key])
	if err != nil {
		return 0, &InputError{Key: key, Value: in.value[key], Want: "a plain number such as 1.5"}
	}
	if f < 0 || (positive && f == 0) {
		return 0, &InputError{Key: key, Value: in.value[key], Want: map[bool]string{true: "above 0", false: "0 or more"}[positive]}
	}
	in.taken[key] = true
	return f, nil
}

// quantity is a figure that was given, in the base unit of its kind.
type quantity struct {
	given bool
	key   string
	base  float64
}

// one finds the quantity whose key is prefix and a unit that the units allow, and
// converts it. Given under two keys it is refused.
func (in *inputs) one(prefix string, unit func(string) (float64, bool), positive bool) (quantity, error) {
	var q quantity
	for _, key := range in.keys {
		name, ok := strings.CutPrefix(key, prefix)
		if !ok || in.taken[key] {
			continue
		}
		factor, ok := unit(name)
		if !ok {
			continue
		}
		if q.given {
			return q, &InputError{Key: key, Value: in.value[key], Want: "left out, for " + q.key + " already gives it"}
		}
		f, err := in.number(key, positive)
		if err != nil {
			return q, err
		}
		q = quantity{given: true, key: key, base: f * factor}
	}
	return q, nil
}

// reading is a quantity that a kind takes: where it goes, and under which keys it is found.
type reading struct {
	to       *quantity
	prefix   string
	unit     func(string) (float64, bool)
	positive bool
}

// readAll reads quantities in their order: a key that two could take goes to the first.
func (in *inputs) readAll(all []reading) (err error) {
	for _, r := range all {
		if *r.to, err = in.one(r.prefix, r.unit, r.positive); err != nil {
			return err
		}
	}
	return nil
}

// unknown refuses the first input that nothing took.
func (in *inputs) unknown() error {
	for _, key := range in.keys {
		if !in.taken[key] {
			return &KeyError{Kind: in.kind, Key: key, Known: in.known}
		}
	}
	return nil
}

// finite refuses inputs so large or small that an answer is no number: such a
// figure has no form in JSON.
func (in *inputs) finite(out map[string]any) error {
	for _, v := range out {
		if f, ok := v.(float64); ok && (math.IsInf(f, 0) || math.IsNaN(f)) {
			key := in.keys[0]
			return &InputError{Key: key, Value: in.value[key], Want: "of a size that can be reckoned with, as all inputs"}
		}
	}
	return nil
}

// list reads a list with commas as numbers of 0 or more.
func (in *inputs) list(key string) ([]float64, error) {
	var out []float64
	for i, part := range strings.Split(in.value[key], ",") {
		f, err := measure.ParseNumber(strings.TrimSpace(part))
		if err == nil && f >= 0 {
			out = append(out, f)
			continue
		}
		want := "a plain number of 0 or more, or several with commas"
		if strings.Contains(in.value[key], ",") {
			want = "numbers of 0 or more with commas between; number " + strconv.Itoa(i+1) + " is not one"
		}
		return nil, &InputError{Key: key, Value: in.value[key], Want: want}
	}
	in.taken[key] = true
	return out, nil
}
