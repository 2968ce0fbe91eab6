package sheet

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

func (d drawn) psi(what string, r map[string]string, column string) core.Maybe[float64] {
	if !d.yes(what) {
		return core.Maybe[float64]{}
	}
	p := float64(d.int(what, 1, 10000)) / 10
	r[column] = fixed(p) + " psi"
	return core.Known(p)
}

func (d drawn) length(what string, low, high measure.Length, r map[string]string, column string) core.Maybe[measure.Length] {
	if !d.yes(what) {
		return core.Maybe[measure.Length]{}
	}
	l := measure.Length(d.int(what, int64(low), int64(high)))
	r[column] = fmt.Sprintf("%d um", l)
	return core.Known(l)
}

// plumbing is what the rig's own row says of its plumbing, in a rig whose flows are below the pump's.
func (d drawn) plumbing(f *core.Rig, r map[string]string) {
	if d.yes("suction") {
		f.Suction = measure.Volume(d.int("suction", 0, int64(core.LargestVolume)/4))
		r["suction_gal"] = nl(f.Suction)
	}
	var legs []string
	for i := range d.int("legs", 0, 3) {
		l := core.DeadLeg{Name: fmt.Sprintf("leg %d of two-x", i), Volume: measure.Volume(d.int("leg", 1, int64(core.LargestVolume)/8))}
		f.DeadLegs = append(f.DeadLegs, l)
		legs = append(legs, fmt.Sprintf("%s = %d nl", l.Name, l.Volume))
	}
	r["dead_legs_gal"] = strings.Join(legs, ";")
	if d.yes("pump") {
		f.PumpFlow = core.Known(measure.Flow(float64(d.int("pump", 1<<40, 1<<44)) / 1024))
		r["pump_flow_gpm"] = fixed(float64(f.PumpFlow.V)) + " nl/s"
	}
	f.PumpPSI = d.psi("pump psi", r, "pump_psi")
	f.CrossBore = d.length("cross bore", 1, core.WidestBore, r, "cross_inside_diameter_in")
	f.CrossLength = d.length("cross length", 1, core.LongestHose, r, "cross_length_ft")
	if d.yes("loss") {
		f.CrossLoss = core.Known(float64(d.int("loss", 1, 10000)) / 10)
		r["cross_loss"] = fixed(f.CrossLoss.V)
	}
}

// kept is what a compartment's row says of its tint, agitation and gauge.
func (d drawn) kept(c *core.RigCompartment, r map[string]string) {
	c.Tint = rapid.SampledFrom([]string{"", core.NoTint, "blue", "deep \"sea\" green"}).Draw(d.T, "tint")
	c.Agitation = rapid.SampledFrom([]string{"", core.Paddle, core.Jet, core.NotAgitated}).Draw(d.T, "agitation")
	c.MarkUnit = rapid.SampledFrom([]string{"", core.MarksInches, core.MarksCentims}).Draw(d.T, "mark unit")
	r["tint"], r["agitation"], r["mark_unit"] = c.Tint, c.Agitation, c.MarkUnit
	if d.yes("plan") {
		c.Plan = core.Known(measure.Area(d.int("plan", 1, int64(100*measure.SquareMetre))))
		r["plan_sqft"] = fmt.Sprintf("%d mm2", c.Plan.V)
	}
	c.Floor = d.length("floor", 0, 100*measure.Inch, r, "floor_in")
	c.GaugeOff = d.length("gauge off", 0, core.FarthestGauge, r, "gauge_off_in")
}

// weighed is what a hose's row says of its outside, its weight and its pressures.
func (d drawn) weighed(h *core.RigHose, r map[string]string) {
	if low := h.Bore.V + 1; low < core.WidestBore {
		h.Outside = d.length("outside", low, core.WidestBore, r, "outside_diameter_in")
	}
	if d.yes("weight") {
		h.DryWeight = core.Known(measure.Mass(d.int("weight", 1, int64(core.LargestHopper))))
		r["dry_lb"] = fmt.Sprintf("%d ng", h.DryWeight.V)
	}
	if d.yes("pair") {
		h.PairFlow = core.Known(measure.Flow(float64(d.int("pair flow", 1, 1<<40)) / 1024))
		gun := float64(d.int("pair gun", 1, 5000)) / 10
		pump := float64(d.int("pair pump", 5001, 10000)) / 10
		h.PairPump, h.PairGun = core.Known(pump), core.Known(gun)
		r["pair_flow_gpm"], r["pair_pump_psi"], r["pair_gun_psi"] = fixed(float64(h.PairFlow.V))+" nl/s", fixed(pump)+" psi", fixed(gun)+" psi"
	}
}
