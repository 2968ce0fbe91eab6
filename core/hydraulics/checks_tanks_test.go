package hydraulics

import (
	"math"
	"testing"

	"example.com/tintline/core/measure"
)

func (in inputs) inches(key string) Inches { return Inches(in.f(key)) }

// holds answers what a shape holds up to the depth of the row.
func holds(in inputs, s Shape) answer {
	v, err := VolumeAt(s, in.inches("depth_in"))
	if err != nil {
		return answer{}
	}
	return answer{"volume_gal": float64(v)}
}

func init() {
	claim("horizontal cylinder partial volume", func(in inputs) answer {
		t := Lying{Diameter: in.inches("diameter_in"), Length: in.inches("length_in"), Head: Head(in.text("head")), HeadDepth: in.inches("head_depth_in")}
		if in.text("head") == "torispherical f=1 k=0.06" {
			t.Head, t.DishRadius, t.KnuckleRadius = TorisphericalHead, 1, 0.06
		}
		return holds(in, t)
	})
	claim("vertical cylinder with shaped bottom", func(in inputs) answer {
		return holds(in, Upright{Diameter: in.inches("diameter_in"), Bottom: Bottom(in.text("bottom")), BottomDepth: in.inches("bottom_depth_in")})
	})
	claim("vertical tank, slanted floor and dished top", func(in inputs) answer {
		t := Slanted{in.inches("radius_in"), in.inches("slant_height_in"), in.inches("wall_height_in"), in.inches("cap_radius_in"), in.inches("cap_height_in")}
		v, err := VolumeAt(t, in.inches("level_in"))
		if err != nil {
			return answer{}
		}
		return answer{"volume_gal": float64(v)}
	})
	claim("elliptical cross-section tank", func(in inputs) answer {
		return holds(in, Elliptical{Width: in.inches("width_in"), Tall: in.inches("height_in"), Length: in.inches("length_in")})
	})
	claim("obround (flat-sided oval) tank on edge", func(in inputs) answer {
		return holds(in, Obround{in.inches("width_in"), in.inches("height_in"), in.inches("length_in")})
	})
	claim("circular segment area", func(in inputs) answer {
		a, err := SegmentArea(in.inches("diameter_in"), in.inches("depth_in"))
		if err != nil {
			return answer{}
		}
		return answer{"area_in2": a}
	})
	claim("oval vessel full volume by width/height scaling", func(in inputs) answer {
		mm := func(key string) Inches { return Inches(in.f(key) / 25.4) }
		t := Elliptical{mm("width_mm"), mm("height_mm"), mm("length_mm"), mm("end_depth_mm")}
		full, err := FullVolume(t)
		if err != nil {
			return answer{}
		}
		return answer{"circular_equivalent_l": float64(full) / t.Stretch() * 3.785411784, "scale_factor": t.Stretch()}
	})
	claim("uniform distribution standard uncertainty", func(in inputs) answer {
		return answer{"sd_gal": UniformSD(in.f("gauge_step_gal"))}
	})
	claim("washout of a mixed volume", func(in inputs) answer {
		return answer{"fraction_old": Washout(Gallons(in.f("volume_gal")), Gallons(in.f("flow_gpm")*in.f("time_min")))}
	})
	claim("n-rinse dilution, equal split", func(in inputs) answer {
		return answer{"fraction_old": Rinses(Gallons(in.f("residual_gal")), Gallons(in.f("rinse_total_gal")), int(in.f("rinses")))}
	})
	claim("heel plus refill", func(in inputs) answer {
		full, heel, c := Gallons(in.f("capacity_gal")), Gallons(in.f("heel_gal")), in.f("heel_conc_rel")
		return answer{"conc_rel": Heel(full, heel, c, in.f("new_conc_rel")), "product_needed_for_rel_1": HeelNeeds(full, heel, c, 1)}
	})
	claim("tank gaining volume (textbook)", func(in inputs) answer {
		v, m, ok := Gaining{Gallons(in.f("v0_gal")), in.f("m0_lb"), in.f("q_in_gpm"), in.f("q_out_gpm"), in.f("c_in_lb_gal")}.After(in.f("time_min"))
		if !ok {
			return answer{}
		}
		return answer{"mass_lb": m, "conc_lb_gal": m / float64(v)}
	})
	claim("two tanks in series (textbook)", func(in inputs) answer {
		a, b := Series(Gallons(in.f("va_gal")), Gallons(in.f("vb_gal")), in.f("ma0_lb"), in.f("q_gpm"), in.f("time_min"))
		return answer{"mass_a_lb": a, "mass_b_lb": b}
	})
	claim("equal cross-circulation A<->B", func(in inputs) answer {
		a, b := Circulate(Held{Gallons(in.f("va_gal")), in.f("ca0_oz_gal")}, Held{Gallons(in.f("vb_gal")), in.f("cb0_oz_gal")}, in.f("q_gpm"), in.f("time_min"))
		return answer{"ca_oz_gal": a.Strength, "cb_oz_gal": b.Strength}
	})
	claim("both suctions open, return on A, constant volume", func(in inputs) answer {
		s := BothOpen{
			A: Held{Gallons(in.f("va0_gal")), in.f("ca0_oz_gal")}, B: Held{1000, in.f("cb_oz_gal")},
			Pump: in.f("q_pump_gpm"), Bypass: in.f("q_bypass_gpm"), Share: in.f("share_from_a"),
		}
		a, _, _ := s.After(in.f("time_min"))
		return answer{"va_gal": float64(a.Volume), "ca_oz_gal": a.Strength}
	})
	claimLevelling()
}

func claimLevelling() {
	claim("level equalisation through an orifice (textbook)", func(in inputs) answer {
		d := in.f("orifice_d_m")
		s, ok := Levelling{
			SquareMetres(in.f("area1_m2")), SquareMetres(in.f("area2_m2")), Metres(in.f("dh0_m")),
			Path{Orifice: SquareMetres(math.Pi / 4 * d * d), Cd: in.f("cd"), Gravity: in.f("g_m_s2")},
		}.Start()
		if !ok {
			return answer{}
		}
		return answer{"time_s": s.Until(in.f("dh1_m") / in.f("dh0_m"))}
	})
	claim("tank drain time", func(in inputs) answer {
		d, ft := in.f("tank_d_ft"), 0.3048
		tank := SquareMetres(math.Pi / 4 * d * d * ft * ft)
		out := Path{Orifice: SquareMetres(in.f("outlet_area_in2") * 0.0254 * 0.0254), Cd: in.f("cd"), Gravity: in.f("g_ft_s2") * ft}
		return answer{"time_s": Drain(tank, out, Metres(in.f("h0_ft")*ft), Metres(in.f("h1_ft")*ft))}
	})
	claim("equal tanks, time to equalise", func(in inputs) answer {
		a := SquareMetres(in.f("area_m2"))
		s, ok := Levelling{a, a, Metres(in.f("dh0_m")), Path{Orifice: SquareMetres(in.f("orifice_area_m2")), Cd: in.f("cd"), Gravity: in.f("g_m_s2")}}.Start()
		if !ok {
			return answer{}
		}
		return answer{"time_s": s.Seconds}
	})
	claim("cross-feed through suction plumbing, pump off", func(in inputs) answer {
		s, ok := crossFeed(in).Start()
		if !ok {
			return answer{}
		}
		return answer{
			"initial_flow_gpm": s.Flow.GPM(), "moved_30s_gal": float64(s.Moved(30)), "moved_60s_gal": float64(s.Moved(60)),
			"moved_120s_gal": float64(s.Moved(120)), "moved_total_gal": float64(s.Total),
		}
	})
}

// crossFeed is the levelling of a row in feet and inches.
func crossFeed(in inputs) Levelling {
	sqft := 0.3048 * 0.3048
	return Levelling{
		SquareMetres(in.f("plan_area1_ft2") * sqft), SquareMetres(in.f("plan_area2_ft2") * sqft), Metres(in.f("dh0_in") * 0.0254),
		Path{Bore: Metres(in.f("pipe_id_in") * 0.0254), Length: Metres(in.f("pipe_length_ft") * 0.3048), Loss: in.f("k_sum"), Roughness: Metres(in.f("roughness_mm") / 1000)},
	}
}

// The rows of one topic that the row's own inputs cannot ask of a function are asked here by hand.
func TestSharedSuctionFigures(t *testing.T) {
	// Own computation beside the row CF-4 (energy balance, 1 1/4 in, loss coefficient 4, standard gravity): the pump's flow
	// below which liquid is pushed into the lower compartment, and the flows at 8 gpm with 6 in between the levels.
	path := Path{Bore: 1.25 * 0.0254, Loss: 4}
	for _, row := range []struct{ inches, gpm float64 }{{1, 4.4}, {3, 7.7}, {6, 10.8}} {
		b := Branches{Path1: path, Path2: path, Drop: Metres(row.inches * 0.0254), Pump: measure.GPM(8)}
		if got := b.PushesBelow().GPM(); math.Abs(got-row.gpm) > 0.06 {
			t.Errorf("%g in: liquid is pushed down below %g gpm, not %g", row.inches, got, row.gpm)
		}
	}
	high, low := Branches{Path1: path, Path2: path, Drop: 6 * 0.0254, Pump: measure.GPM(8)}.Flows()
	if math.Abs(high.GPM()-10.5) > 0.05 || math.Abs(low.GPM()+2.5) > 0.05 {
		t.Errorf("%g gpm out of the higher, %g out of the lower", high.GPM(), low.GPM())
	}
	// 6 sq ft, 24 in off the middle, 5 per cent: 4.5 gal.
	if got := TiltGallons(6*144, 24, 0.05); math.Abs(float64(got)-4.5) > 0.05 {
		t.Errorf("the slope makes %g gal", got)
	}
}
