package reckon

import (
	"math"
	"strings"

	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// open is what was given of compartments whose valves stand open to one another.
type open struct {
	in            *inputs
	area          map[string]quantity // mm2
	length        map[string]quantity // um
	cd, loss      float64
	hasCd, hasSum bool
	pull          quantity // m/s2
	time          quantity // s
}

// levelling answers what runs by gravity from one compartment to another, how a tank drains, and how strong two compartments become
// that the pump joins.
func levelling(in *inputs) (map[string]any, error) {
	for _, key := range in.keys {
		if joins(key) {
			return joined(in)
		}
	}
	o := &open{in: in}
	if err := o.read(); err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	if o.length["tank_d"].given || o.area["tank_area"].given || o.length["h0"].given {
		return o.drain()
	}
	return o.level()
}

// joins tells whether a key is about two compartments that the pump joins: what they hold, how strong, and the flows.
func joins(key string) bool {
	for _, word := range []string{"va_", "vb_", "va0_", "vb0_", "ca_", "cb_", "ca0_", "cb0_", "q_", "room_b_", "share_from_a"} {
		if strings.HasPrefix(key, word) {
			return true
		}
	}
	return false
}

func (o *open) read() (err error) {
	in := o.in
	if o.area, err = in.several(section, true, "area", "area1", "area2", "plan_area1", "plan_area2", "orifice_area", "outlet_area", "tank_area"); err != nil {
		return err
	}
	if o.length, err = in.several(plain("length"), true, "orifice_d", "tank_d", "dh0", "h0", "pipe_id"); err != nil {
		return err
	}
	rest, err := in.several(plain("length"), false, "dh1", "h1", "pipe_length", "roughness")
	if err != nil {
		return err
	}
	for k, v := range rest {
		o.length[k] = v
	}
	if o.cd, o.hasCd, err = in.bare("cd", true); err != nil {
		return err
	}
	if o.hasCd && o.cd > 1 {
		return &InputError{Key: "cd", Value: in.value["cd"], Want: "above 0 and at most 1"}
	}
	if o.loss, o.hasSum, err = in.bare("k_sum", false); err != nil {
		return err
	}
	if o.pull, err = in.one("g_", pull, true); err != nil {
		return err
	}
	o.time, err = in.one("time_", duration, false)
	return err
}

func (o *open) metres(name string) hydraulics.Metres {
	return hydraulics.Metres(o.length[name].base / perMetre)
}

func (o *open) squareMetres(name string) hydraulics.SquareMetres {
	return hydraulics.SquareMetres(o.area[name].base / 1e6)
}

func circleOf(d hydraulics.Metres) hydraulics.SquareMetres {
	return hydraulics.SquareMetres(math.Pi / 4 * float64(d) * float64(d))
}

// path reads what the liquid runs through.
func (o *open) path() (hydraulics.Path, error) {
	p := hydraulics.Path{Gravity: o.pull.base, Roughness: o.metres("roughness")}
	switch {
	case o.length["pipe_id"].given:
		if !o.hasSum {
			return p, o.in.missing("k_sum")
		}
		p.Bore, p.Length, p.Loss = o.metres("pipe_id"), o.metres("pipe_length"), o.loss
		if p.Loss == 0 && p.Length == 0 {
			return p, &InputError{Key: "k_sum", Value: o.in.value["k_sum"], Want: "above 0 where pipe_length_ft is not given"}
		}
		return p, nil
	case o.area["orifice_area"].given:
		p.Orifice = o.squareMetres("orifice_area")
	case o.area["outlet_area"].given:
		p.Orifice = o.squareMetres("outlet_area")
	case o.length["orifice_d"].given:
		p.Orifice = circleOf(o.metres("orifice_d"))
	default:
		return p, o.in.missing("pipe_id_in with k_sum, or orifice_area_m2 or orifice_d_m with cd")
	}
	if !o.hasCd {
		return p, o.in.missing("cd")
	}
	p.Cd = o.cd
	return p, nil
}

// areas are the plan areas of both; one area alone is that of each.
func (o *open) areas() (a, b hydraulics.SquareMetres, err error) {
	switch {
	case o.area["area"].given:
		return o.squareMetres("area"), o.squareMetres("area"), nil
	case o.area["area1"].given && o.area["area2"].given:
		return o.squareMetres("area1"), o.squareMetres("area2"), nil
	case o.area["plan_area1"].given && o.area["plan_area2"].given:
		return o.squareMetres("plan_area1"), o.squareMetres("plan_area2"), nil
	}
	return 0, 0, o.in.missing("plan_area1_ft2 and plan_area2_ft2, or area1_m2 and area2_m2, or area_m2 where both are alike")
}

// level answers two compartments that level out.
func (o *open) level() (map[string]any, error) {
	a, b, err := o.areas()
	if err != nil {
		return nil, err
	}
	if !o.length["dh0"].given {
		return nil, o.in.missing("dh0_in")
	}
	p, err := o.path()
	if err != nil {
		return nil, err
	}
	end, start := o.length["dh1"], o.length["dh0"]
	if end.given && end.base > start.base {
		return nil, &InputError{Key: end.key, Value: o.in.value[end.key], Want: "at most " + start.key + ", for levels come together"}
	}
	s, ok := hydraulics.Levelling{Area1: a, Area2: b, Drop: o.metres("dh0"), Path: p}.Start()
	if !ok {
		return nil, &InputError{Key: start.key, Value: o.in.value[start.key], Want: "of a size that can be reckoned with, as all inputs"}
	}
	out := answers{"k_eff": s.Loss}
	out.seconds("time_", s.Until(end.base/start.base))
	out.flow("initial_flow_", s.Flow)
	for _, at := range []struct {
		name    string
		seconds float64
	}{{"moved_30s_", 30}, {"moved_60s_", 60}, {"moved_120s_", 120}} {
		out.gallons(at.name, s.Moved(at.seconds))
	}
	out.gallons("moved_total_", s.Total)
	if o.time.given {
		out.gallons("moved_", s.Moved(o.time.base))
	}
	return out, nil
}

// drain answers how long a tank takes to fall from one level to another.
func (o *open) drain() (map[string]any, error) {
	t := o.squareMetres("tank_area")
	if d := o.length["tank_d"]; d.given {
		t = circleOf(o.metres("tank_d"))
	}
	from, to := o.length["h0"], o.length["h1"]
	switch {
	case t == 0:
		return nil, o.in.missing("tank_d_ft or tank_area_ft2")
	case !from.given:
		return nil, o.in.missing("h0_ft")
	case to.base > from.base:
		return nil, &InputError{Key: to.key, Value: o.in.value[to.key], Want: "at most " + from.key + ", for a level falls"}
	}
	p, err := o.path()
	if err != nil {
		return nil, err
	}
	out := answers{}
	out.seconds("time_", hydraulics.Drain(t, p, o.metres("h0"), o.metres("h1")))
	return out, nil
}

// hold is a compartment as hydraulics has it.
func hold(volume, strength quantity) hydraulics.Held {
	return hydraulics.Held{Volume: hydraulics.Gallons(volume.base / float64(measure.USGallon)), Strength: strength.base}
}
