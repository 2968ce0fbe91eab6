package reckon

import (
	"strconv"

	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// flushing is what the push after turning the valves is reckoned from.
type flushing struct {
	stream
	bypass quantity
	hose   quantity // its volume, where it was measured
	cell   quantity
	sigma  quantity
	spread quantity // D/(u d)
	stop   quantity
	margin float64
}

// changeover answers how much must be pushed after the valves are turned, what that is made of, and what it does to the
// compartment that it goes into. No margin is on the smear unless sigma_factor asks for it.
func changeover(in *inputs) (map[string]any, error) {
	f, err := in.flushing()
	if err != nil {
		return nil, err
	}
	m, err := in.contaminating()
	if err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	out := answers{}
	if m.any() {
		if err := m.answer(in, out); err != nil {
			return nil, err
		}
	}
	if !m.any() || f.any() {
		if err := f.answer(in, out); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// flushing reads the inputs of a flush.
func (in *inputs) flushing() (f flushing, err error) {
	if f.stream, err = in.stream(); err != nil {
		return f, err
	}
	if err = in.bypass(&f); err != nil {
		return f, err
	}
	for _, volume := range []struct {
		to     *quantity
		prefix string
	}{{&f.hose, "hose_volume_"}, {&f.cell, "dead_volume_"}, {&f.sigma, "sigma_volume_"}} {
		if *volume.to, err = in.one(volume.prefix, plain("volume"), volume.to == &f.hose); err != nil {
			return f, err
		}
	}
	if f.spread, err = in.figure("d_over_ud", true); err != nil {
		return f, err
	}
	if f.stop, err = in.figure("stop_at_new_fraction", true); err != nil {
		return f, err
	}
	if f.stop.given && f.stop.base >= 1 {
		return f, &InputError{Key: f.stop.key, Value: in.value[f.stop.key], Want: "between 0 and 1"}
	}
	margin, err := in.figure("sigma_factor", true)
	if err != nil {
		return f, err
	}
	f.margin = 1
	if margin.given {
		f.margin = margin.base
	}
	if f.sigma.given && f.spread.given {
		return f, in.twice(f.sigma, f.spread)
	}
	return f, nil
}

// bypass reads what goes round: itself, or what is left of the pump's flow.
func (in *inputs) bypass(f *flushing) (err error) {
	if f.bypass, err = in.one("bypass_flow_", plain("flow"), false); err != nil {
		return err
	}
	pump, err := in.one("pump_flow_", plain("flow"), true)
	if err != nil || !pump.given {
		return err
	}
	most := "at most " + pump.key + ", " + strconv.FormatFloat(measure.Flow(pump.base).GPM(), 'g', 6, 64) + " gpm"
	for _, q := range []quantity{f.flow, f.bypass} {
		if q.given && q.base > pump.base {
			return &InputError{Key: q.key, Value: in.value[q.key], Want: most}
		}
	}
	switch {
	case f.flow.given && f.bypass.given:
		return in.twice(pump, f.bypass)
	case f.flow.given:
		f.bypass = quantity{given: true, key: pump.key, base: pump.base - f.flow.base}
	case f.bypass.given && f.bypass.base == pump.base:
		return &InputError{Key: f.bypass.key, Value: in.value[f.bypass.key], Want: "less than " + pump.key + ", so that something leaves the gun"}
	case f.bypass.given:
		f.flow = quantity{given: true, key: pump.key, base: pump.base - f.bypass.base}
	default:
		return &MissingError{Kind: in.kind, What: "flow_gpm"}
	}
	return nil
}

// any says whether something of a flush is given.
func (f flushing) any() bool {
	for _, q := range []quantity{f.bore, f.length, f.flow, f.reynolds, f.bypass, f.hose, f.cell, f.sigma, f.spread, f.stop} {
		if q.given {
			return true
		}
	}
	return false
}

// answer gives all that the inputs determine.
func (f *flushing) answer(in *inputs, out answers) error {
	missing := func(what string) error { return &MissingError{Kind: in.kind, What: what} }
	re, known := f.re()
	switch {
	case !f.bore.given && !f.hose.given && (!known || f.length.given):
		return missing("inside_diameter_in and length_ft, or reynolds")
	case f.bypass.given && f.bypass.base > 0 && !f.flow.given:
		return missing("flow_gpm")
	}
	if known {
		out["reynolds"] = re
		out["turbulent"] = hydraulics.Turbulent(re)
		f.dispersion(re, out)
	}
	f.bores(re, known, out)
	hose, told := f.volume()
	if !told {
		if f.cell.given || f.stop.given || f.sigma.given {
			return missing("length_ft")
		}
		return nil
	}
	out.gallons("hose_volume_", hose)
	o := hydraulics.Outlet{Hose: hose, Cell: hydraulics.EffectiveCell(gallonsOf(f.cell), f.gun(), measure.Flow(f.bypass.base))}
	switch {
	case f.sigma.given:
		o.Sigma = gallonsOf(f.sigma)
	case f.bore.given && f.length.given && f.spread.given:
		o.Sigma = f.pipe().Smear(hose, f.spread.base)
	case known && !hydraulics.Turbulent(re):
		o.Laminar = true
	case known && f.length.given && f.bore.given:
		o.Sigma = f.pipe().Smear(hose, hydraulics.WenFan(re))
	case f.cell.given || f.stop.given:
		return missing("flow_gpm with inside_diameter_in and length_ft, or sigma_volume_gal")
	default:
		return nil
	}
	o.Sigma *= hydraulics.Gallons(f.margin)
	f.flush(o, out)
	return nil
}

// volume is what the hose holds: measured, or by its bore and length.
func (f *flushing) volume() (hydraulics.Gallons, bool) {
	if f.hose.given {
		return gallonsOf(f.hose), true
	}
	return f.pipe().Volume(), f.bore.given && f.length.given
}

// dispersion answers D/(u d) by Wen and Fan, or as given, and D/(a u*) by the US EPA, where the flow is not laminar.
func (f *flushing) dispersion(re float64, out answers) {
	if hydraulics.IsLaminar(re) {
		return
	}
	out["D_over_ud"] = hydraulics.WenFan(re)
	if f.spread.given {
		out["D_over_ud"] = f.spread.base
	}
	out["D_over_a_ustar"] = hydraulics.EPAShear(re)
}

// bores answers what the bore determines: the least flow at which a changeover is clean, and the interface by Austin and
// Palfrey. Without a flow or a length, the flow that is asked for is the least one.
func (f *flushing) bores(re float64, known bool, out answers) {
	if !f.bore.given {
		return
	}
	p := f.pipe()
	out.flow("min_flow_", p.MinFlow(f.water))
	switch {
	case f.flow.given:
		out.flow("flow_", f.gun())
	case !f.length.given:
		out.flow("flow_", p.MinFlow(f.water))
	}
	if !f.length.given {
		return
	}
	out["critical_reynolds"] = p.CriticalReynolds()
	if known && !hydraulics.IsLaminar(re) {
		out.metres("interface_", p.AustinPalfrey(re))
	}
}

// flush answers the pushes past the plug's arrival, and what a push to the share asked for is made of.
func (f *flushing) flush(o hydraulics.Outlet, out answers) {
	out["laminar"] = o.Laminar
	if !o.Laminar {
		out.gallons("sigma_volume_", o.Sigma)
	}
	for _, share := range []struct {
		key string
		f   float64
	}{{"extra_50_", 0.5}, {"extra_90_", 0.9}, {"extra_95_", 0.95}, {"extra_99_", 0.99}, {"extra_999_", 0.999}} {
		// In a laminar hose the first half is new before a plug would have come: there is no such extra.
		if more := o.At(share.f) - o.Hose; more >= 0 {
			out.gallons(share.key, more)
		}
	}
	out.gallons("new_liquid_sprayed_by_99_", o.NewGone(o.At(0.99)))
	if f.bypass.given && f.cell.given {
		out.gallons("old_liquid_to_return_", gallonsOf(f.cell)-o.Cell)
	}
	if !f.stop.given {
		return
	}
	v := o.At(f.stop.base)
	out.gallons("total_flush_", v)
	out.gallons("new_liquid_in_flush_", o.NewGone(v))
	out.gallons("old_liquid_returned_", o.OldGone(v))
	out.gallons("old_liquid_still_in_line_", max(0, o.OldLeft(v)))
	if f.flow.given {
		out.seconds("total_flush_", v.Seconds(f.gun()))
	}
}
