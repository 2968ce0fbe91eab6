package setup

import (
	"fmt"
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/sheet"
)

// PairAllowed says what ReadPair reads.
const PairAllowed = "flow, then psi at the pump, then psi at the gun while it sprays: 2.5 gpm 110 60; none takes the pair away"

// ReadPair reads a measured pair of pressures and gives the rig with it on a hose: the factor of the hose comes of it from then
// on. The error is a Wrong.
func ReadPair(b *core.Book, hose, said string) (*core.Rig, error) {
	if b.Rig() == nil {
		return nil, &Wrong{What: "The book has no rig yet.", Do: "Enter the rig first."}
	}
	r := rigCopy(b.Rig())
	i := slices.IndexFunc(r.Hoses, func(h core.RigHose) bool { return h.Name == hose })
	if i < 0 {
		return nil, &Wrong{What: fmt.Sprintf("The rig has no hose %q.", hose), Do: "Name one that it has."}
	}
	h := &r.Hoses[i]
	if strings.EqualFold(strings.TrimSpace(said), "none") {
		h.PairFlow, h.PairPump, h.PairGun = core.Maybe[measure.Flow]{}, core.Maybe[float64]{}, core.Maybe[float64]{}
		return r, nil
	}
	figures := capacities(strings.ReplaceAll(said, " at ", " "))
	if len(figures) != 3 {
		return nil, &Wrong{What: fmt.Sprintf("%q has %d of 3 figures.", strings.TrimSpace(said), len(figures)), Do: "Type " + PairAllowed + "."}
	}
	for n, column := range []string{"pair_flow_gpm", "pair_pump_psi", "pair_gun_psi"} {
		if err := sheet.Check(sheet.Rig, column, figures[n]); err != nil {
			return nil, err
		}
	}
	flow, err := measure.ReadFlow(figures[0], "gpm")
	if err != nil {
		return nil, err
	}
	pump, err := psiOf(figures[1])
	if err != nil {
		return nil, err
	}
	gun, err := psiOf(figures[2])
	if err != nil {
		return nil, err
	}
	switch {
	case flow <= 0:
		return nil, &Wrong{What: "Nothing flows at 0 gpm, and a hose takes no pressure then.", Do: "Read both gauges while the gun sprays."}
	case gun >= pump:
		return nil, &Wrong{
			What: fmt.Sprintf("The gun has %.0f psi and the pump %.0f psi: the hose would take nothing.", gun, pump),
			Do:   "Type the pressure at the pump first, then the lower one at the gun.",
		}
	}
	h.PairFlow, h.PairPump, h.PairGun = core.Known(flow), core.Known(pump), core.Known(gun)
	return r, nil
}

// psiOf reads a pressure as it stands: what is typed in psi goes through no other unit.
func psiOf(said string) (float64, error) {
	if f, err := measure.ParseNumber(strings.TrimSpace(strings.TrimSuffix(strings.ToLower(said), "psi"))); err == nil {
		return f, nil
	}
	p, err := measure.ReadPressure(said, "psi")
	return p.PSI(), err
}
