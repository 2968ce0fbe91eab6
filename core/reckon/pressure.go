package reckon

import (
	"strconv"
	"strings"

	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// driving is what a loss of pressure is reckoned from.
type driving struct {
	stream
	height, inlet quantity
	fittings      quantity // sum of loss coefficients beside those of open ends
	open          bool
	law           hydraulics.Law
	rough         quantity // relative roughness, as far as it is known
	formula       string
}

// formulas are the friction factors that may be asked for.
var formulas = map[string]func(re, rough float64) float64{
	"colebrook":   hydraulics.Colebrook,
	"haaland":     hydraulics.Haaland,
	"swamee-jain": hydraulics.SwameeJain,
	"churchill":   hydraulics.Churchill,
	"blasius":     func(re, _ float64) float64 { return hydraulics.Blasius(re) },
	"laminar":     func(re, _ float64) float64 { return hydraulics.Laminar(re) },
}

// pressure answers what a flow costs in a bore, what a pressure drives through it, and what a height costs.
func pressure(in *inputs) (map[string]any, error) {
	d, err := in.driving()
	if err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	if err := d.complete(in); err != nil {
		return nil, err
	}
	out := answers{}
	static := d.water.Pressure(d.height.base / float64(measure.Metre))
	if d.height.given {
		out.pressure("pressure_", static)
	}
	if d.inlet.given {
		if err := d.drive(in, static, out); err != nil {
			return nil, err
		}
	}
	if err := d.factor(in, out); err != nil {
		return nil, err
	}
	if !d.bore.given {
		return out, nil
	}
	p := d.pipe()
	out.flow("flow_", d.gun())
	out.speed("velocity_", p.Velocity(d.gun()))
	if d.length.given {
		lost := d.loss()
		out.pressure("pressure_loss_", lost)
		out.metres("head_loss_", d.water.Head(lost))
		if d.height.given {
			out.pressure("pressure_", lost+static)
		}
	}
	return out, nil
}

// driving reads the inputs.
func (in *inputs) driving() (d driving, err error) {
	if d.stream, err = in.stream(); err != nil {
		return d, err
	}
	if d.height, err = in.one("height_", plain("length"), false); err != nil {
		return d, err
	}
	if d.inlet, err = in.one("inlet_pressure_", plain("pressure"), true); err != nil {
		return d, err
	}
	if d.fittings, err = in.figure("k_sum", false); err != nil {
		return d, err
	}
	if word, there := in.value["outlet"]; there {
		in.taken["outlet"] = true
		if d.open = strings.EqualFold(word, "open"); !d.open {
			return d, &InputError{Key: "outlet", Value: word, Want: "open"}
		}
	}
	return d, in.friction(&d)
}

// friction reads the law: Hazen and Williams with a coefficient, else Darcy and Weisbach with a roughness and a formula.
func (in *inputs) friction(d *driving) error {
	d.law = hydraulics.Plastic(1)
	hazen, err := in.figure("hazen_williams_c", true)
	if err != nil {
		return err
	}
	more, err := in.figure("hose_factor", true)
	if err != nil {
		return err
	}
	if more.given {
		d.law.Factor = more.base
	}
	absolute, err := in.one("roughness_", plain("length"), false)
	if err != nil {
		return err
	}
	if d.rough, err = in.figure("relative_roughness", false); err == nil && d.rough.base >= 1 {
		err = &InputError{Key: "relative_roughness", Value: in.value["relative_roughness"], Want: "below 1, a share of the bore"}
	}
	if err != nil {
		return err
	}
	if absolute.given {
		d.law.Roughness = absolute.base / float64(measure.Metre)
		if d.rough.given {
			return in.twice(absolute, d.rough)
		}
	}
	word, there := in.value["formula"]
	if there {
		in.taken["formula"] = true
		d.formula = strings.ToLower(word)
		if d.law.Friction = formulas[d.formula]; d.law.Friction == nil {
			return &InputError{Key: "formula", Value: word, Want: "Colebrook, Haaland, Swamee-Jain, Churchill, Blasius or laminar"}
		}
	}
	if hazen.given {
		for _, key := range []string{absolute.key, d.rough.key, map[bool]string{true: "formula"}[there]} {
			if key != "" {
				return &InputError{Key: key, Value: in.value[key], Want: "left out, for hazen_williams_c is a law without it"}
			}
		}
		d.law.C = hazen.base
	}
	if d.bore.given && d.rough.given {
		d.law.Roughness = d.rough.base * d.pipe().Bore
	} else if d.bore.given {
		d.rough = quantity{given: true, key: "roughness_mm", base: d.law.Roughness / d.pipe().Bore}
	}
	return nil
}

// complete says what is missing.
func (d *driving) complete(in *inputs) error {
	missing := func(what string) error { return &MissingError{Kind: in.kind, What: what} }
	switch {
	case !d.bore.given && (d.flow.given || d.inlet.given || d.length.given):
		return missing("inside_diameter_in")
	case d.inlet.given && !d.length.given:
		return missing("length_ft")
	case d.bore.given && !d.flow.given && !d.inlet.given:
		return missing("flow_gpm or inlet_pressure_psi")
	case !d.bore.given && !d.reynolds.given && !d.height.given:
		return missing("inside_diameter_in with flow_gpm or with length_ft and inlet_pressure_psi, reynolds with relative_roughness, or height_ft")
	}
	return nil
}

// drive reckons with a pressure at the inlet: the flow that it drives, or what of it is left at the outlet.
func (d *driving) drive(in *inputs, static measure.Pressure, out answers) error {
	most := measure.Pressure(d.inlet.base)
	short := func(need measure.Pressure, of string) error {
		psi := strconv.FormatFloat(need.PSI(), 'g', 4, 64)
		return &InputError{Key: d.inlet.key, Value: in.value[d.inlet.key], Want: "more than the " + psi + " psi that " + of}
	}
	if most <= static {
		return short(static, "the height costs")
	}
	if !d.flow.given {
		q := d.pipe().FlowAt(most-static, d.coefficients(), d.water, d.law)
		if !(q > 0) {
			return &InputError{Key: d.bore.key, Value: in.value[d.bore.key], Want: "of a size that can be reckoned with"}
		}
		d.flow = quantity{given: true, key: d.inlet.key, base: float64(q)}
		return nil
	}
	if d.open {
		return in.twice(d.inlet, d.flow)
	}
	need := d.loss() + static
	if most < need {
		return short(need, "flow and height cost")
	}
	out.pressure("outlet_pressure_", most-need)
	return nil
}

// coefficients are the fittings': those given, and entrance and exit of a hose with open ends.
func (d *driving) coefficients() float64 {
	if d.open {
		return d.fittings.base + hydraulics.OpenEnds()
	}
	return d.fittings.base
}

func (d *driving) loss() measure.Pressure {
	return d.pipe().Loss(d.gun(), d.coefficients(), d.water, d.law)
}

// factor answers Reynolds number and friction factor.
func (d *driving) factor(in *inputs, out answers) error {
	re, known := d.re()
	if !known {
		return nil
	}
	out["reynolds"] = re
	if d.law.C > 0 {
		return nil
	}
	if !d.rough.given && d.formula != "blasius" && d.formula != "laminar" {
		return &MissingError{Kind: in.kind, What: "relative_roughness"}
	}
	f := d.law.Friction
	if f == nil {
		f = hydraulics.Friction
	}
	out["darcy_f"] = f(re, d.rough.base)
	return nil
}
