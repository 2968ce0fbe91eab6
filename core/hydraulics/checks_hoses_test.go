package hydraulics

import (
	"math"

	"example.com/tintline/core/measure"
)

// pipe is the pipe of a row; rows say inches and feet, or metres.
func (in inputs) pipe() Pipe {
	if d := in.f("diameter_m"); d > 0 {
		return Pipe{d, in.f("length_m")}
	}
	return Pipe{in.f("inside_diameter_in") * 0.0254, in.f("length_ft") * 0.3048}
}

func (in inputs) flow() measure.Flow { return measure.GPM(in.f("flow_gpm")) }

// water is that of the row, else of the usual temperature.
func (in inputs) water() Water {
	w := WaterAt(Temperature)
	if n := in.f("kinematic_viscosity_m2_s"); n > 0 {
		w.Viscosity = n
	}
	if n := in.f("density_kg_m3"); n > 0 {
		w.Density = n
	}
	return w
}

// law is the law of friction that a row asks for, with no factor.
func (in inputs) law() Law {
	if c := in.f("hazen_williams_c"); c > 0 {
		return Law{C: c, Factor: 1}
	}
	law := Plastic(1)
	if mm := in.f("roughness_mm"); mm > 0 {
		law.Roughness = mm / 1000
	}
	return law
}

// outlet is the outlet of a row: its own smear, or that of its own dispersion, or the fit's.
func (in inputs) outlet() Outlet {
	p := in.pipe()
	d := in.f("D_over_ud")
	if d == 0 {
		d = WenFan(p.Reynolds(in.flow(), in.water()))
	}
	s := Gallons(in.f("sigma_volume_gal"))
	if s == 0 {
		s = p.Smear(p.Volume(), d)
	}
	cell := EffectiveCell(Gallons(in.f("dead_volume_gal")), in.flow(), measure.GPM(in.f("bypass_flow_gpm")))
	return Outlet{Hose: p.Volume(), Sigma: s, Cell: cell}
}

// extra gives the pushes past the plug's arrival.
func extra(o Outlet) answer {
	out := answer{"hose_volume_gal": float64(o.Hose), "sigma_volume_gal": float64(o.Sigma)}
	for key, f := range map[string]float64{"extra_50_gal": 0.5, "extra_90_gal": 0.9, "extra_95_gal": 0.95, "extra_99_gal": 0.99, "extra_999_gal": 0.999} {
		out[key] = float64(o.At(f) - o.Hose)
	}
	out["new_liquid_sprayed_by_99_gal"] = float64(o.NewGone(o.At(0.99)))
	return out
}

func friction(in inputs) answer {
	re, rough := in.f("reynolds"), in.f("relative_roughness")
	switch in.text("formula") {
	case "Colebrook":
		return answer{"darcy_f": Colebrook(re, rough)}
	case "Haaland":
		return answer{"darcy_f": Haaland(re, rough)}
	}
	p := in.pipe()
	re = p.Reynolds(in.flow(), in.water())
	return answer{
		"reynolds":      re,
		"velocity_ft_s": p.Velocity(in.flow()) / 0.3048,
		"darcy_f":       Friction(re, in.law().Roughness/p.Bore),
	}
}

func loss(in inputs) answer {
	p, w := in.pipe(), in.water()
	lost := p.Loss(in.flow(), 0, w, in.law())
	return answer{"pressure_loss_psi": lost.PSI(), "head_loss_ft": w.Head(lost) / foot}
}

func closedVessel(in inputs) answer {
	t, c := in.list("t_min"), in.list("c_g_l")
	var area, first, second float64
	for i := range t {
		area += c[i]
		first += c[i] * t[i]
	}
	mean := first / area
	for i := range t {
		second += c[i] * (t[i] - mean) * (t[i] - mean)
	}
	spread := second / area / mean / mean
	return answer{"mean_min": mean, "sigma_theta_sq": spread, "D_over_uL": NumberOfClosedVessel(spread)}
}

func init() {
	claim("hose volume", func(in inputs) answer { return answer{"volume_gal": float64(in.pipe().Volume())} })
	claim("water weight", func(in inputs) answer {
		return answer{"weight_lb": WaterWeight(Gallons(in.f("volume_gal")), in.f("temperature_c")).Pounds()}
	})
	claim("static head", func(in inputs) answer {
		return answer{"pressure_psi": StaticHead(measure.Feet(in.f("height_ft")), Temperature).PSI()}
	})
	claim("friction factor", friction)
	claim("Reynolds and friction factor", friction)
	claim("hose flow at inlet pressure", func(in inputs) answer {
		q := in.pipe().FlowAt(measure.PSI(in.f("inlet_pressure_psi")), OpenEnds(), in.water(), in.law())
		return answer{"flow_gpm": q.GPM()}
	})
	claim("pipe friction Hazen-Williams", loss)
	claim("hose friction", loss)
	claim("hose friction Darcy-Weisbach", loss)
	claim("minor loss", func(inputs) answer {
		out := answer{}
		for key, name := range map[string]string{"K_entrance": "entrance", "K_exit": "exit", "K_elbow": "elbow", "K_tee_branch": "tee_branch", "K_gate": "gate"} {
			out[key], _ = LossOf(name)
		}
		return out
	})
	claim("turbulent dispersion", func(in inputs) answer {
		re := in.f("reynolds")
		return answer{"D_over_ud": WenFan(re), "D_over_a_ustar": EPAShear(re)}
	})
	claim("1-99 % interface length constant", func(in inputs) answer {
		return answer{"c": InterfaceConstant(in.f("lower_fraction"), in.f("upper_fraction"), in.f("D_over_a_ustar"))}
	})
	claim("batch interface length 1-99 %", func(in inputs) answer {
		p := in.pipe()
		return answer{"critical_reynolds": p.CriticalReynolds(), "interface_m": p.AustinPalfrey(in.f("reynolds"))}
	})
	claim("minimum flow for Re = 4000", func(in inputs) answer {
		return answer{"flow_gpm": in.pipe().MinFlow(in.water()).GPM()}
	})
	claim("flush past plug arrival, no dead volume", func(in inputs) answer { return extra(in.outlet()) })
	claim("flush past hose plug arrival with well-mixed dead volume", func(in inputs) answer { return extra(in.outlet()) })
	claim("flush-back balance (no bypass)", func(in inputs) answer {
		o := in.outlet()
		v := o.At(in.f("stop_at_new_fraction"))
		return answer{
			"total_flush_gal": float64(v), "new_liquid_in_flush_gal": float64(o.NewGone(v)),
			"old_liquid_returned_gal": float64(o.OldGone(v)), "old_liquid_still_in_line_gal": float64(o.OldLeft(v)),
		}
	})
	claim("dispersion number from variance difference", func(in inputs) answer {
		u := in.f("superficial_velocity_cm_s") / in.f("voidage")
		mean := in.f("bed_length_cm") / u
		return answer{"D_over_uL": NumberFromVariance((in.f("variance_out_s2") - in.f("variance_in_s2")) / mean / mean)}
	})
	claim("dispersion number, closed vessel", closedVessel)
	claim("F curve small dispersion", func(in inputs) answer {
		o := Outlet{Hose: 1, Sigma: Gallons(math.Sqrt(2 * in.f("D_over_uL")))}
		theta := in.list("theta")
		return answer{"F[0]": o.New(Gallons(theta[0])), "F[1]": o.New(Gallons(theta[1]))}
	})
	claim("contamination of B by a gallons of A as fraction of label rate", func(in inputs) answer {
		c, dose, share := Contamination(Gallons(in.f("volume_of_a_gal")), Gallons(in.f("volume_b_before_gal")),
			in.f("conc_a_oz_gal"), in.f("carrier_gal_per_1000ft2"), in.f("label_oz_per_1000ft2"))
		return answer{"conc_in_b_oz_gal": c, "dose_oz_per_1000ft2": dose, "fraction_of_label": share}
	})
}
