package reckon

import (
	"math"

	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// twoTanks is what was given of two compartments that the pump joins.
type twoTanks struct {
	in       *inputs
	volume   map[string]quantity // nL
	strength map[string]quantity // base units of kind in a nL
	kind     string              // volume or mass: what the strengths are told in
	flow     map[string]quantity // nL/s
	share    float64
	shared   bool
	time     quantity // s
}

// joined answers two compartments after a time in which the pump carried liquid from one to the other.
func joined(in *inputs) (map[string]any, error) {
	t := &twoTanks{in: in}
	if err := t.read(); err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	if !t.time.given {
		return nil, in.missing("time_min")
	}
	switch {
	case t.flow["q_pump"].given || t.shared:
		return t.bothOpen()
	case t.flow["q_bypass"].given || t.flow["q_gun"].given:
		return t.elsewhere()
	}
	return t.circulate()
}

func (t *twoTanks) read() (err error) {
	in := t.in
	if t.volume, err = in.several(plain("volume"), true, "va", "vb", "va0", "vb0", "room_b"); err != nil {
		return err
	}
	t.strength = map[string]quantity{}
	for _, kind := range []string{"volume", "mass"} {
		some, err := in.several(strengthOf(kind), false, "ca", "cb", "ca0", "cb0")
		if err != nil {
			return err
		}
		for _, name := range []string{"ca", "cb", "ca0", "cb0"} {
			q, ok := some[name]
			if !ok {
				continue
			}
			if t.kind != "" && t.kind != kind {
				return &InputError{Key: q.key, Value: in.value[q.key], Want: "told as the other strength is, by volume or by weight"}
			}
			t.kind, t.strength[name] = kind, q
		}
	}
	if t.flow, err = in.several(plain("flow"), false, "q", "q_pump", "q_bypass", "q_gun"); err != nil {
		return err
	}
	if t.share, t.shared, err = in.bare("share_from_a", false); err != nil {
		return err
	}
	if t.shared && t.share > 1 {
		return &InputError{Key: "share_from_a", Value: in.value["share_from_a"], Want: "0 to 1"}
	}
	t.time, err = in.one("time_", duration, false)
	return err
}

// first is the first of the quantities that was given.
func first(from map[string]quantity, names ...string) quantity {
	for _, n := range names {
		if q := from[n]; q.given {
			return q
		}
	}
	return quantity{}
}

// both reads the two compartments; b's volume may be left out where it is not asked for.
func (t *twoTanks) both(needB bool) (a, b hydraulics.Held, err error) {
	va, vb := first(t.volume, "va0", "va"), first(t.volume, "vb0", "vb")
	ca, cb := first(t.strength, "ca0", "ca"), first(t.strength, "cb0", "cb")
	switch {
	case !va.given:
		return a, b, t.in.missing("va_gal")
	case needB && !vb.given:
		return a, b, t.in.missing("vb_gal")
	case !ca.given:
		return a, b, t.in.missing("ca0_oz_gal")
	case !cb.given:
		return a, b, t.in.missing("cb0_oz_gal")
	}
	return hold(va, ca), hold(vb, cb), nil
}

// gpm is a flow in gallons a minute.
func gpm(q quantity) float64 { return measure.Flow(q.base).GPM() }

func (t *twoTanks) circulate() (map[string]any, error) {
	a, b, err := t.both(true)
	if err != nil {
		return nil, err
	}
	if !t.flow["q"].given {
		return nil, t.in.missing("q_gpm, or q_gun_gpm and q_bypass_gpm, or q_pump_gpm")
	}
	out := answers{}
	a, b = hydraulics.Circulate(a, b, gpm(t.flow["q"]), t.time.base/60)
	t.answer(out, "a", a)
	t.answer(out, "b", b)
	return out, nil
}

// elsewhere is the suction on A and the return on B.
func (t *twoTanks) elsewhere() (map[string]any, error) {
	a, b, err := t.both(true)
	if err != nil {
		return nil, err
	}
	s := hydraulics.Elsewhere{
		A: a, B: b, Gun: gpm(t.flow["q_gun"]), Bypass: gpm(t.flow["q_bypass"]),
		RoomB: hydraulics.Gallons(t.volume["room_b"].base / float64(measure.USGallon)),
	}
	out := answers{}
	if dry := s.DryAfter(); !math.IsInf(dry, 1) {
		out.seconds("dry_", 60*dry)
	}
	if over := s.OverAfter(); t.volume["room_b"].given && !math.IsInf(over, 1) {
		out.seconds("over_", 60*over)
	}
	a, b = s.After(t.time.base / 60)
	t.answer(out, "a", a)
	t.answer(out, "b", b)
	return out, nil
}

// bothOpen is both suctions open and the return on A.
func (t *twoTanks) bothOpen() (map[string]any, error) {
	vb := first(t.volume, "vb0", "vb")
	a, b, err := t.both(false)
	switch {
	case err != nil:
		return nil, err
	case !t.flow["q_pump"].given:
		return nil, t.in.missing("q_pump_gpm")
	case !t.flow["q_bypass"].given:
		return nil, t.in.missing("q_bypass_gpm")
	case !t.shared:
		return nil, t.in.missing("share_from_a")
	case t.flow["q_bypass"].base > t.flow["q_pump"].base:
		q := t.flow["q_bypass"]
		return nil, &InputError{Key: q.key, Value: t.in.value[q.key], Want: "at most " + t.flow["q_pump"].key}
	}
	if !vb.given { // enough for as long as is asked
		b.Volume = hydraulics.Gallons(math.MaxFloat64)
	}
	s := hydraulics.BothOpen{A: a, B: b, Pump: gpm(t.flow["q_pump"]), Bypass: gpm(t.flow["q_bypass"]), Share: t.share}
	out := answers{}
	if dry := s.DryAfter(); dry < math.MaxFloat64/1e9 { // b is without end where it is not given
		out.seconds("dry_", 60*dry)
	}
	var gun float64
	a, b, gun = s.After(t.time.base / 60)
	t.answer(out, "a", a)
	if vb.given {
		t.answer(out, "b", b)
	} else {
		t.strong(out, "cb_", b.Strength)
	}
	t.strong(out, "c_gun_", gun)
	return out, nil
}

// answer gives what a compartment holds and how strong it is.
func (t *twoTanks) answer(out answers, letter string, h hydraulics.Held) {
	out.gallons("v"+letter+"_", h.Volume)
	t.strong(out, "c"+letter+"_", h.Strength)
}

// strong answers a strength.
func (t *twoTanks) strong(out answers, prefix string, base float64) {
	out.strength(prefix, t.kind, base)
}
