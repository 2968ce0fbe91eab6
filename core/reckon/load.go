package reckon

import "strings"

// mixing is what a load is reckoned from, in base units: nL, mm², and nL or ng of
// product. A figure that is not known yet is not given.
type mixing struct {
	dry      bool
	rate     quantity // product over area
	strength quantity // product in a volume of mix
	carrier  quantity // mix over area
	tank     quantity // what one tank holds
	mix      quantity // what is mixed in all
	area     quantity // what is treated in all
}

// load answers how much product belongs in a tank, in a volume of mix, on an area.
func load(in *inputs) (map[string]any, error) {
	m, err := in.mixing()
	if err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	if err := m.complete(in); err != nil {
		return nil, err
	}
	out := m.answer()
	out.working(m.working())
	return out, nil
}

// mixing reads the inputs of a load.
func (in *inputs) mixing() (*mixing, error) {
	m := &mixing{}
	read := func(to *quantity, prefix string, unit func(string) (float64, bool), positive bool) func() error {
		return func() (err error) {
			*to, err = in.one(prefix, unit, positive)
			return err
		}
	}
	for _, step := range []func() error{
		func() error { return in.rate(m) },
		read(&m.tank, "tank_", plain("volume"), true),
		read(&m.mix, "mix_", plain("volume"), true),
		func() error { return in.treated(m) },
		func() error { return in.bareRates(m) },
		func() error {
			return in.kinded(m, &m.strength, "", "volume", func(string) bool { return true })
		},
	} {
		if err := step(); err != nil {
			return nil, err
		}
	}
	return m, nil
}

// kinded reads a figure of product, liquid or dry, over below; accept may refuse
// units.
func (in *inputs) kinded(m *mixing, to *quantity, prefix, below string, accept func(unit string) bool) error {
	for _, above := range []string{"volume", "mass"} {
		unit := per(above, below)
		q, err := in.one(prefix, func(name string) (float64, bool) {
			f, ok := unit(name)
			return f, ok && accept(name)
		}, false)
		if err != nil {
			return err
		}
		if q.given {
			if err := in.twice(*to, q); err != nil {
				return err
			}
			if err := in.sameKind(m, q, above == "mass"); err != nil {
				return err
			}
			*to = q
		}
	}
	return nil
}

// twice refuses a quantity that is there already.
func (in *inputs) twice(first, second quantity) error {
	if !first.given {
		return nil
	}
	return &InputError{Key: second.key, Value: in.value[second.key], Want: "left out, for " + first.key + " already gives it"}
}

// sameKind notes whether the product is dry, and refuses a second figure of it that
// is told the other way: a volume of a product is no weight.
func (in *inputs) sameKind(m *mixing, q quantity, dry bool) error {
	if (m.rate.given || m.strength.given) && m.dry != dry {
		want := map[bool]string{true: "a weight, as " + m.rate.key, false: "a volume, as " + m.rate.key}[m.dry]
		return &InputError{Key: q.key, Value: in.value[q.key], Want: want}
	}
	m.dry = dry
	return nil
}

// rate reads rate_U, or rate_X on rate_area_Y.
func (in *inputs) rate(m *mixing) error {
	if err := in.kinded(m, &m.rate, "rate_", "area", func(string) bool { return true }); err != nil {
		return err
	}
	on, err := in.one("rate_area_", plain("area"), true)
	if err != nil {
		return err
	}
	for _, kind := range []string{"volume", "mass"} {
		q, err := in.one("rate_", plain(kind), false)
		if err != nil {
			return err
		}
		if !q.given {
			continue
		}
		if err := in.twice(m.rate, q); err != nil {
			return err
		}
		if !on.given {
			return &MissingError{Kind: in.kind, What: "rate_area_sqft"}
		}
		m.rate = quantity{given: true, key: q.key, base: q.base / on.base}
		m.dry = kind == "mass"
	}
	if on.given && !m.rate.given {
		return &MissingError{Kind: in.kind, What: "rate_lb or rate_fl_oz"}
	}
	return nil
}

// treated reads the area that is treated: area_U, or the bare unit (acres).
func (in *inputs) treated(m *mixing) (err error) {
	if m.area, err = in.one("area_", plain("area"), true); err != nil {
		return err
	}
	bare, err := in.one("", plain("area"), true)
	if err != nil || !bare.given {
		return err
	}
	if err := in.twice(m.area, bare); err != nil {
		return err
	}
	m.area = bare
	return nil
}

// carrierUnit says whether a bare volume over area in this unit is the mix even
// beside a product: mix is told in gallons and litres, product in smaller units.
func carrierUnit(unit string) bool {
	above, _, _ := strings.Cut(unit, "_per_")
	return above == "gal" || above == "l" || above == "m3"
}

// bareRates reads what stands over an area without "rate_". A weight is product. A
// volume is the mix, unless the mix stands beside it in gallons or litres: then the
// smaller unit is product.
func (in *inputs) bareRates(m *mixing) error {
	large := func(name string) (float64, bool) {
		f, ok := per("volume", "area")(name)
		return f, ok && carrierUnit(name)
	}
	var err error
	if m.carrier, err = in.one("", large, true); err != nil {
		return err
	}
	if !m.carrier.given {
		if m.carrier, err = in.one("", per("volume", "area"), true); err != nil {
			return err
		}
	}
	return in.kinded(m, &m.rate, "", "area", func(string) bool { return true })
}

// complete works out what the inputs determine, and refuses an input that is of no
// use without another.
func (m *mixing) complete(in *inputs) error {
	known := func(base float64) quantity { return quantity{given: true, base: base} }
	if m.rate.given && m.strength.given && m.carrier.given {
		return in.twice(m.rate, m.strength)
	}
	if m.mix.given && m.area.given {
		if m.carrier.given {
			return in.twice(m.mix, m.area)
		}
		m.carrier = known(m.mix.base / m.area.base)
	}
	switch {
	case m.rate.given && m.strength.given && m.strength.base > 0 && m.rate.base > 0:
		m.carrier = known(m.rate.base / m.strength.base)
	case m.rate.given && m.carrier.given:
		m.strength = known(m.rate.base / m.carrier.base)
	case m.strength.given && m.carrier.given:
		m.rate = known(m.strength.base * m.carrier.base)
	}
	product := m.rate.given || m.strength.given
	switch {
	case !product && !m.carrier.given:
		return &MissingError{Kind: in.kind, What: "a rate (rate_fl_oz_per_acre, rate_lb on rate_area_sqft), a strength (fl_oz_per_100_gal) or gal_per_acre"}
	case (m.tank.given || m.mix.given) && !m.carrier.given && !m.strength.given:
		return &MissingError{Kind: in.kind, What: "gal_per_acre, gal_per_1000_sqft or a strength such as fl_oz_per_100_gal"}
	case m.area.given && !m.carrier.given && !m.rate.given:
		return &MissingError{Kind: in.kind, What: "gal_per_acre, gal_per_1000_sqft or a rate such as rate_fl_oz_per_acre"}
	}
	if m.carrier.given && m.area.given && !m.mix.given {
		m.mix = known(m.carrier.base * m.area.base)
	}
	if m.carrier.given && m.mix.given && !m.area.given {
		m.area = known(m.mix.base / m.carrier.base)
	}
	return nil
}

// answer gives all that is known in every unit.
func (m *mixing) answer() answers {
	out := answers{}
	kind, units := "volume", volumeUnits
	if m.dry {
		kind, units = "mass", massUnits
	}
	if m.rate.given {
		out.per("", kind, units, "area", areaUnits, m.rate.base)
		out.per("rate_", kind, units, "area", areaUnits, m.rate.base)
	}
	if m.carrier.given {
		out.carrier(m)
	}
	if m.strength.given {
		out.per("", kind, units, "volume", mixUnits, m.strength.base)
		if !m.dry {
			out["fraction"] = m.strength.base
		}
	}
	if m.tank.given && m.strength.given {
		for _, u := range units {
			f, _ := factor(kind, u)
			out[u+"_per_tank"] = m.strength.base * m.tank.base / f
		}
	}
	if total, ok := m.total(); ok {
		out.plain("", kind, units, total)
	}
	if m.mix.given {
		out.plain("mix_", "volume", volumeUnits, m.mix.base)
	}
	m.areas(out)
	return out
}

// carrier answers the mix over area. Beside a liquid product the bare keys in
// smaller units stay the product's.
func (a answers) carrier(m *mixing) {
	units := volumeUnits
	if m.rate.given && !m.dry {
		units = []string{"gal", "l"}
	}
	a.per("", "volume", units, "area", areaUnits, m.carrier.base)
}

// total is all the product: for the area, else for the mix, else for one tank.
func (m *mixing) total() (float64, bool) {
	switch {
	case m.area.given && m.rate.given:
		return m.rate.base * m.area.base, true
	case m.mix.given && m.strength.given:
		return m.strength.base * m.mix.base, true
	case m.tank.given && m.strength.given:
		return m.strength.base * m.tank.base, true
	}
	return 0, false
}

// areas answers what is treated, in all and with one tank.
func (m *mixing) areas(out answers) {
	treated := m.area
	if m.tank.given && m.carrier.given {
		covers := m.tank.base / m.carrier.base
		for _, u := range areaUnits {
			f, _ := factor("area", u)
			out[u+"_per_tank"] = covers / f
		}
		out["acres_per_tank"] = out["acre_per_tank"]
		if !treated.given {
			treated = quantity{given: true, base: covers}
		}
	}
	if treated.given {
		out.area("area_", treated.base)
		out.area("", treated.base)
	}
}
