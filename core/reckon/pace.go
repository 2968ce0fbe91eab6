package reckon

import (
	"math"

	"example.com/tintline/core/calib"
)

// speed answers the time over courses at a speed, or the speed of a time over a course.
func speed(in *inputs) (map[string]any, error) {
	v, err := in.oneOf(plain("speed"), "speed_", "")
	if err != nil {
		return nil, err
	}
	courses, key, err := in.listOf("course_", plain("length"))
	if err != nil {
		return nil, err
	}
	times, err := in.secondsList()
	if err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	switch {
	case v.given && len(times) > 0:
		return nil, &InputError{Key: "seconds", Value: in.value["seconds"], Want: "left out, for " + v.key + " already gives the speed"}
	case !v.given && len(times) == 0:
		return nil, in.missing("speed_mph, or course_ft and seconds")
	case !v.given && len(courses) == 0:
		return nil, in.missing("course_ft")
	case !v.given && len(courses) > 1:
		return nil, &InputError{Key: key, Value: in.value[key], Want: "one course, for seconds are of one"}
	}
	out := answers{}
	if !v.given {
		if err := calib.Even(times, calib.Usual()); err != nil {
			return nil, err
		}
		out["mean_seconds"] = calib.Mean(times)
		v.base = calib.SpeedOf(courses[0], calib.Mean(times))
	}
	out.plain("speed_", "speed", speedUnits, v.base)
	out.plain("", "speed", speedUnits, v.base)
	for _, c := range courses {
		out[feetKey("seconds", c)] = calib.SecondsFor(c, v.base)
	}
	foot, _ := factor("speed", "ft_per_s")
	mile, _ := factor("speed", "mph")
	out["mph_per_ft_per_s"], out["ft_per_s_per_mph"] = foot/mile, mile/foot
	return out, nil
}

// secondsList reads the runs over one course.
func (in *inputs) secondsList() ([]float64, error) {
	if _, given := in.value["seconds"]; !given {
		return nil, nil
	}
	list, err := in.list("seconds")
	if err != nil {
		return nil, err
	}
	for _, s := range list {
		if s <= 0 {
			return nil, &InputError{Key: "seconds", Value: in.value["seconds"], Want: "above 0"}
		}
	}
	return list, nil
}

// pace answers the area that is covered in a time.
func pace(in *inputs) (map[string]any, error) {
	width, err := in.oneOf(plain("length"), "width_", "swath_")
	if err != nil {
		return nil, err
	}
	v, err := in.one("speed_", plain("speed"), true)
	if err != nil {
		return nil, err
	}
	share, err := in.percent("field_efficiency_pct")
	if err != nil {
		return nil, err
	}
	area, err := in.one("area_", plain("area"), true)
	if err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	switch {
	case !width.given:
		return nil, in.missing("width_ft")
	case !v.given:
		return nil, in.missing("speed_mph")
	case share.base > 1:
		return nil, &InputError{Key: share.key, Value: in.value[share.key], Want: "at most 100"}
	case !share.given:
		share.base = 1
	}
	out := answers{}
	perSecond := calib.PaceOf(width.base, v.base, share.base)
	for _, u := range areaUnits {
		f, _ := factor("area", u)
		out[u+"_per_h"], out[u+"_per_min"] = perSecond/f*3600, perSecond/f*60
	}
	out["acres_per_h"], out["acres_per_min"] = out["acre_per_h"], out["acre_per_min"]
	if area.given {
		out.seconds("time_", area.base/perSecond)
	}
	return out, nil
}

// nozzle answers flow and pressure of a nozzle: the flow goes with the square root of the pressure.
func nozzle(in *inputs) (map[string]any, error) {
	n := struct{ p1, p2, f1, f2, v1, v2, ratio quantity }{}
	var err error
	read := func(q *quantity, name, kind string) {
		if err == nil {
			*q, err = in.one(name, plain(kind), true)
		}
	}
	read(&n.p1, "pressure1_", "pressure")
	read(&n.p2, "pressure2_", "pressure")
	read(&n.f1, "flow1_", "flow")
	read(&n.f2, "flow2_", "flow")
	read(&n.v1, "speed1_", "speed")
	read(&n.v2, "speed2_", "speed")
	var bore quantity
	read(&bore, "nozzle_", "length") // it names the nozzle: its flow is given
	if err != nil {
		return nil, err
	}
	f, given, err := in.bare("flow_ratio", true)
	if err != nil {
		return nil, err
	}
	n.ratio = quantity{given: given, key: "flow_ratio", base: f}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	ratio, err := in.flowRatio(n.ratio, pair{n.f1, n.f2, false}, pair{n.v1, n.v2, false}, pair{n.p1, n.p2, true})
	if err != nil {
		return nil, err
	}
	out := answers{"flow_ratio": ratio, "pressure_ratio": calib.PressureRatio(ratio)}
	out["flow_increase_pct"], out["pressure_increase_pct"] = 100*(ratio-1), 100*(calib.PressureRatio(ratio)-1)
	if n.v1.given {
		out["speed_increase_pct"] = 100 * (ratio - 1)
		out.plain("speed2_", "speed", speedUnits, n.v1.base*ratio)
	}
	if n.p1.given {
		out.plain("pressure2_", "pressure", pressureUnits, n.p1.base*calib.PressureRatio(ratio))
	}
	if n.f1.given {
		out.plain("flow2_", "flow", flowUnits, n.f1.base*ratio)
	}
	return out, nil
}

// pair is a figure before and after; root: the flow goes with its square root.
type pair struct {
	first, second quantity
	root          bool
}

// flowRatio is by what the flow changes; at the same rate it goes with the speed. One thing may say it.
func (in *inputs) flowRatio(ratio quantity, pairs ...pair) (float64, error) {
	for _, p := range pairs {
		if p.second.given && !p.first.given {
			return 0, in.missing("the first of the two that " + p.second.key + " belongs to")
		}
		if !p.second.given {
			continue
		}
		r := p.second.base / p.first.base
		if p.root {
			r = calib.FlowRatio(r)
		}
		next := quantity{given: true, key: p.second.key, base: r}
		if err := in.twice(ratio, next); err != nil {
			return 0, err
		}
		ratio = next
	}
	if !ratio.given || math.IsNaN(ratio.base) {
		return 0, in.missing("pressure1_psi and pressure2_psi, speed1_mph and speed2_mph, two flows, or flow_ratio")
	}
	return ratio.base, nil
}
