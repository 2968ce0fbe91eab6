package sheet

import (
	"math"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// plumbingColumns say of the rig's parts what pressure, bypass, levelling, gauges and tint rest on. All may be left out.
var plumbingColumns = []column{
	{
		Column: Column{Name: "suction_gal", Words: "the suction pipe that the compartments share, as long as the cell is not measured", Example: "0.1"},
		reader: gallons(false), parts: []string{partRig},
	}, {
		Column: Column{Name: "dead_legs_gal", Words: "branches that liquid stands in", Example: "second reel=0.2; fill line=0.1"},
		reader: deadLegs(), parts: []string{partRig},
	}, {
		Column: Column{Name: "pump_flow_gpm", Words: "what the pump gives in all, gun and bypass together", Example: "8"},
		reader: gallonsPerMinute(), parts: []string{partRig},
	}, {
		Column: Column{Name: "pump_psi", Words: "the most that the pump, or its relief valve, gives", Example: "150"},
		reader: psi(), parts: []string{partRig},
	}, {
		Column: Column{Name: "cross_inside_diameter_in", Words: "inside diameter of the suction plumbing between two compartments", Example: "1 1/4"},
		reader: inches(), parts: []string{partRig},
	}, {
		Column: Column{Name: "cross_length_ft", Words: "its length from one compartment to the other", Example: "6"},
		reader: feet(), parts: []string{partRig},
	}, {
		Column: Column{Name: "cross_loss", Words: "the sum of the loss coefficients of its fittings, entrance and exit included", Example: "7.3"},
		reader: lossSum(), parts: []string{partRig},
	}, {
		Column: Column{Name: "tint", Words: "the colour of the tint in what is kept there, or none", Example: "blue"},
		reader: text(), parts: []string{partCompartment},
	}, {
		Column: Column{Name: "agitation", Words: "how it is agitated", Example: core.Jet},
		reader: oneOf(core.Paddle, core.Jet, core.NotAgitated), parts: []string{partCompartment},
	}, {
		Column: Column{Name: "mark_unit", Words: "what the marks of its gauge are, where they are depths", Example: core.MarksInches},
		reader: oneOf(core.MarksInches, core.MarksCentims), parts: []string{partCompartment},
	}, {
		Column: Column{Name: "plan_sqft", Words: "its area seen from above, inside", Example: "6"},
		reader: squareFeet(), parts: []string{partCompartment},
	}, {
		Column: Column{Name: "floor_in", Words: "its lowest inside point above that of the lowest compartment", Example: "2"},
		reader: farInches(), parts: []string{partCompartment},
	}, {
		Column: Column{Name: "gauge_off_in", Words: "how far its gauge is from the middle, along the truck", Example: "10"},
		reader: farInches(), parts: []string{partCompartment},
	}, {
		Column: Column{Name: "outside_diameter_in", Words: "the hose's outside diameter", Example: "5/8"},
		reader: inches(), parts: []string{partHose},
	}, {
		Column: Column{Name: "dry_lb", Words: "what the hose weighs empty", Example: "33"},
		reader: pounds(), parts: []string{partHose},
	}, {
		Column: Column{Name: "pair_flow_gpm", Words: "a measured pair of pressures: at this flow", Example: "2.5"},
		reader: gallonsPerMinute(), parts: []string{partHose},
	}, {
		Column: Column{Name: "pair_pump_psi", Words: "a gauge at the pump says", Example: "140"},
		reader: psi(), parts: []string{partHose},
	}, {
		Column: Column{Name: "pair_gun_psi", Words: "and one at the gun", Example: "35"},
		reader: psi(), parts: []string{partHose},
	}, {
		Column: Column{Name: "needs_psi", Words: "the pressure that the applicator needs at its inlet", Example: "40"},
		reader: psi(), parts: []string{partApplicator},
	},
}

// farInches takes a distance on the truck.
func farInches() reader {
	return amount(measure.ReadLength, "in", "30 cm", bounds[measure.Length]{0, core.FarthestGauge, false, "0 to 240 in"})
}

// lossSum takes a sum of loss coefficients, a pure number.
func lossSum() reader {
	const allowed = "more than 0 and up to 1,000"
	return reader{allowed, func(cell string) (any, error) {
		f, err := measure.ParseNumber(cell)
		if err != nil || !(f > 0) || f > core.LargestLoss || math.IsNaN(f) {
			return nil, faultf("%s is no sum of loss coefficients: %s.", quote(cell), allowed)
		}
		return f, nil
	}}
}

// deadLegs takes branches with what stands in them.
func deadLegs() reader {
	return volumes("branches, each with its gallons, such as second reel=0.2; fill line=0.1", "branch", gallons(true),
		func(name string, v measure.Volume) core.DeadLeg { return core.DeadLeg{Name: name, Volume: v} })
}

// plumbing takes what the rig's own row says of its plumbing.
func (g *rigRows) plumbing(r *row) {
	f := g.rig
	f.Suction, f.DeadLegs = value[measure.Volume](r, "suction_gal"), value[[]core.DeadLeg](r, "dead_legs_gal")
	f.PumpFlow, f.PumpPSI = maybe[measure.Flow](r, "pump_flow_gpm"), maybe[float64](r, "pump_psi")
	f.CrossBore, f.CrossLength = maybe[measure.Length](r, "cross_inside_diameter_in"), maybe[measure.Length](r, "cross_length_ft")
	f.CrossLoss = maybe[float64](r, "cross_loss")
}

// gauged takes what a compartment's row says of its tint, agitation and gauge.
func gauged(r *row, c core.RigCompartment) core.RigCompartment {
	c.Tint, c.Agitation, c.MarkUnit = value[string](r, "tint"), value[string](r, "agitation"), value[string](r, "mark_unit")
	c.Plan, c.Floor = maybe[measure.Area](r, "plan_sqft"), maybe[measure.Length](r, "floor_in")
	c.GaugeOff = maybe[measure.Length](r, "gauge_off_in")
	return c
}

// weighed takes what a hose's row says of its weight and its pressures.
func weighed(r *row, h core.RigHose) core.RigHose {
	h.Outside, h.DryWeight = maybe[measure.Length](r, "outside_diameter_in"), maybe[measure.Mass](r, "dry_lb")
	h.PairFlow = maybe[measure.Flow](r, "pair_flow_gpm")
	h.PairPump, h.PairGun = maybe[float64](r, "pair_pump_psi"), maybe[float64](r, "pair_gun_psi")
	return h
}
