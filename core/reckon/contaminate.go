package reckon

import "example.com/tintline/core/hydraulics"

// contaminating is what some of A in B is reckoned from; strengths, carrier and rate in base units.
type contaminating struct {
	of, into, strength, carrier, label quantity
	dry                                bool
}

// contaminating reads the inputs. The product is a weight or a volume, in strength and label rate alike.
func (in *inputs) contaminating() (m contaminating, err error) {
	if m.of, err = in.one("volume_of_a_", plain("volume"), false); err != nil {
		return m, err
	}
	if m.into, err = in.one("volume_b_before_", plain("volume"), false); err != nil {
		return m, err
	}
	if m.carrier, err = in.one("carrier_", over("volume", "area"), true); err != nil {
		return m, err
	}
	for _, above := range []string{"volume", "mass"} {
		conc, err := in.one("conc_a_", over(above, "volume"), false)
		if err != nil {
			return m, err
		}
		if conc.given {
			if m.strength.given {
				return m, in.twice(m.strength, conc)
			}
			m.strength, m.dry = conc, above == "mass"
		}
	}
	for _, above := range []string{"volume", "mass"} {
		label, err := in.one("label_", over(above, "area"), true)
		if err != nil {
			return m, err
		}
		if !label.given {
			continue
		}
		if m.label.given {
			return m, in.twice(m.label, label)
		}
		if m.strength.given && m.dry != (above == "mass") {
			want := map[bool]string{true: "a weight, as ", false: "a volume, as "}[m.dry]
			return m, &InputError{Key: label.key, Value: in.value[label.key], Want: want + m.strength.key}
		}
		m.label = label
	}
	return m, nil
}

// any says whether something of it is given.
func (m contaminating) any() bool {
	return m.of.given || m.into.given || m.strength.given || m.carrier.given || m.label.given
}

// answer gives the strength in B, the dose and its share of the label's rate.
func (m contaminating) answer(in *inputs, out answers) error {
	missing := func(what string) error { return &MissingError{Kind: in.kind, What: what} }
	switch {
	case !m.of.given:
		return missing("volume_of_a_gal")
	case !m.into.given:
		return missing("volume_b_before_gal")
	case !m.strength.given:
		return missing("conc_a_oz_gal")
	case m.label.given && !m.carrier.given:
		return missing("carrier_gal_per_1000ft2")
	case m.of.base+m.into.base == 0:
		return &InputError{Key: m.of.key, Value: in.value[m.of.key], Want: "above 0 where volume_b_before is 0"}
	}
	kind, units := "volume", volumeUnits
	if m.dry {
		kind, units = "mass", massUnits
	}
	strength, dose, share := hydraulics.Contamination(hydraulics.Gallons(m.of.base), hydraulics.Gallons(m.into.base), m.strength.base, m.carrier.base, m.label.base)
	out.over("conc_in_b_", kind, units, "volume", mixUnits, strength)
	out.per("conc_in_b_", kind, units, "volume", mixUnits, strength)
	if !m.carrier.given {
		return nil
	}
	out.per("dose_", kind, units, "area", areaUnits, dose)
	for _, u := range units {
		out["dose_"+u+"_per_1000ft2"] = out["dose_"+u+"_per_1000_sqft"]
	}
	if m.label.given {
		out["fraction_of_label"] = share
	}
	return nil
}
