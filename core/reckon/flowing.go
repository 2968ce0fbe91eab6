package reckon

import (
	"strings"

	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

var (
	pressureUnits = []string{"psi", "kpa", "bar", "pa"}
	speedUnits    = []string{"ft_per_s", "m_per_s", "mph", "km_per_h", "ft_per_min"}
)

// stream is what flows in a bore, as far as it is given; lengths in µm, flow in nL/s.
type stream struct {
	bore, length, flow, reynolds quantity
	water                        hydraulics.Water
}

// stream reads a bore, a length, a flow or a Reynolds number, and the water.
func (in *inputs) stream() (s stream, err error) {
	if s.bore, err = in.bore(); err != nil {
		return s, err
	}
	if s.length, err = in.one("length_", plain("length"), true); err != nil {
		return s, err
	}
	if s.flow, err = in.one("flow_", plain("flow"), true); err != nil {
		return s, err
	}
	if s.reynolds, err = in.figure("reynolds", true); err != nil {
		return s, err
	}
	if s.water, err = in.water(); err != nil {
		return s, err
	}
	if !s.bore.given || !s.reynolds.given {
		return s, nil
	}
	if s.flow.given {
		return s, in.twice(s.flow, s.reynolds)
	}
	s.flow = quantity{given: true, key: s.reynolds.key, base: float64(s.pipe().FlowFor(s.reynolds.base, s.water))}
	return s, nil
}

// bore reads inside_diameter_in, or diameter_m, in any unit of length.
func (in *inputs) bore() (quantity, error) {
	q, err := in.one("inside_diameter_", plain("length"), true)
	if err != nil {
		return q, err
	}
	bare, err := in.one("diameter_", plain("length"), true)
	if err != nil || !bare.given {
		return q, err
	}
	return bare, in.twice(q, bare)
}

// pipe is the bore with its length, in metres.
func (s stream) pipe() hydraulics.Pipe {
	return hydraulics.Pipe{Bore: s.bore.base / float64(measure.Metre), Length: s.length.base / float64(measure.Metre)}
}

func (s stream) gun() measure.Flow { return measure.Flow(s.flow.base) }

// re is the Reynolds number, given or of flow and bore.
func (s stream) re() (float64, bool) {
	switch {
	case s.reynolds.given:
		return s.reynolds.base, true
	case s.flow.given && s.bore.given:
		return s.pipe().Reynolds(s.gun(), s.water), true
	}
	return 0, false
}

// figure reads a figure that has no unit.
func (in *inputs) figure(key string, positive bool) (quantity, error) {
	if _, there := in.value[key]; !there {
		return quantity{}, nil
	}
	f, err := in.number(key, positive)
	return quantity{given: err == nil, key: key, base: f}, err
}

// The ends of what water is reckoned with, in C.
const coldest, hottest = 0, 40

// water reads the liquid: a temperature, or its kinematic viscosity and density themselves; else water at 20 C.
func (in *inputs) water() (hydraulics.Water, error) {
	c := quantity{base: hydraulics.Temperature}
	for _, scale := range []struct {
		key        string
		zero, size float64 // the freezing point of water, and how many degrees are one of Celsius
	}{{"temperature_c", 0, 1}, {"temperature_f", 32, 1.8}} {
		q, err := in.figure(scale.key, false)
		if err != nil {
			return hydraulics.Water{}, err
		}
		if !q.given {
			continue
		}
		if c.given {
			return hydraulics.Water{}, in.twice(c, q)
		}
		c = quantity{given: true, key: q.key, base: (q.base - scale.zero) / scale.size}
		if !(c.base >= coldest && c.base <= hottest) {
			return hydraulics.Water{}, &InputError{Key: q.key, Value: in.value[q.key], Want: "from 0 to 40 C (32 to 104 F)"}
		}
	}
	w := hydraulics.WaterAt(c.base)
	viscosity, err := in.one("kinematic_viscosity_", viscosityUnit, true)
	if err != nil {
		return w, err
	}
	if viscosity.given {
		w.Viscosity = viscosity.base
	}
	density, err := in.one("density_", over("mass", "volume"), true)
	if err != nil {
		return w, err
	}
	if density.given {
		w.Density = density.base // ng/nL is kg/m3
	}
	return w, nil
}

// viscosityUnit gives a unit of kinematic viscosity in m2/s: an area a second, or centistokes, mm2/s.
func viscosityUnit(unit string) (float64, bool) {
	if unit == "cst" {
		unit = "mm2_s"
	}
	area, ok := strings.CutSuffix(unit, "_s")
	if !ok {
		return 0, false
	}
	f, ok := areaFactor(strings.TrimSuffix(area, "_per"))
	return f / float64(measure.SquareMetre), ok
}

// areaFactor also knows square feet as hydraulics writes them: ft2 and 1000ft2.
func areaFactor(unit string) (float64, bool) {
	switch unit {
	case "ft2":
		unit = "sqft"
	case "100ft2", "1000ft2":
		unit = strings.TrimSuffix(unit, "ft2") + "_sqft"
	}
	return factor("area", unit)
}

// over gives the factor of a unit such as oz_gal, kg_m3 or gal_per_1000ft2: one quantity over another, with "per" or
// without.
func over(above, below string) func(string) (float64, bool) {
	under := plain(below)
	if below == "area" {
		under = areaFactor
	}
	return func(unit string) (float64, bool) {
		for i := range len(unit) {
			if unit[i] != '_' {
				continue
			}
			a, okA := factor(above, unit[:i])
			b, okB := under(strings.TrimPrefix(unit[i+1:], "per_"))
			if okA && okB {
				return a / b, true
			}
		}
		return 0, false
	}
}

// over answers base under prefix + above_below for each pair of units.
func (a answers) over(prefix, above string, aboves []string, below string, belows []string, base float64) {
	for _, top := range aboves {
		for _, bottom := range belows {
			f, _ := factor(above, top)
			g, _ := factor(below, bottom)
			a[prefix+top+"_"+bottom] = base / f * g
		}
	}
}

func (a answers) pressure(prefix string, p measure.Pressure) {
	a.plain(prefix, "pressure", pressureUnits, float64(p))
}

// metres answers a length in every unit.
func (a answers) metres(prefix string, m float64) {
	a.plain(prefix, "length", append([]string{"mm", "cm"}, lengthUnits...), m*float64(measure.Metre))
}

// speed answers a speed, given in metres a second, in every unit, ft_s beside ft_per_s.
func (a answers) speed(prefix string, v float64) {
	a.plain(prefix, "speed", speedUnits, v*float64(measure.Metre))
	a[prefix+"ft_s"], a[prefix+"m_s"] = a[prefix+"ft_per_s"], a[prefix+"m_per_s"]
}

// kilograms answers a weight in every unit.
func (a answers) kilograms(prefix string, kg float64) {
	a.plain(prefix, "mass", massUnits, kg*float64(measure.Kilogram))
}

// gallonsOf is a volume that was given.
func gallonsOf(q quantity) hydraulics.Gallons {
	return hydraulics.Gallons(q.base / float64(measure.USGallon))
}
