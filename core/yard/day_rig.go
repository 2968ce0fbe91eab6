package yard

import (
	"fmt"
	"math"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/fluid"
)

// rig gathers the compartments with what stands in them now, and the line to the nozzle.
func (g *gathered) rig() {
	b, p := g.b, g.b.Plumbing()
	for i := range p.Compartments {
		c := &p.Compartments[i]
		dc := batch.DayCompartment{Letter: c.Letter, Capacity: c.Capacity, Heel: c.Heel, Left: c.Liquid.Volume, Holds: batch.Nothing}
		if c.Liquid.Volume > 0 {
			if dc.Holds = g.isLiquid(c.Liquid); dc.Holds == batch.Other && len(c.Liquid.Holds) > 0 {
				g.notes = append(g.notes, fmt.Sprintf("%c holds %s gal of %s, which nothing that is left to do takes as it is", c.Letter, c.Liquid.Volume.Text(), g.holdsWords(c)))
			}
		}
		dc.Likes = g.usually(c.Letter)
		g.day.Rig.Compartments = append(g.day.Rig.Compartments, dc)
	}
	line := batch.DayLine{Cell: p.Cell.Size, Return: p.Return.Size, Clean: b.Setting(core.CleanNotAllowed), Holds: batch.Other}
	for _, a := range g.with {
		h := p.Hose(a.Hose)
		if h == nil || h.Size <= line.Hose {
			continue
		}
		line.Hose = h.Size
		if line.Holds = g.isLiquid(p.Cell.Liquid); line.Holds != g.isLiquid(h.Liquid()) {
			line.Holds = batch.Other
		}
		if pump := b.Rig().PumpFlow; pump.Known && a.Flow.Known && pump.V > a.Flow.V {
			line.Bypass = 1 - float64(a.Flow.V)/float64(pump.V)
		}
	}
	g.day.Rig.Line = line
}

// usually is the liquid that a compartment usually holds: the mix that stood in it last, else the one whose name it bears.
func (g *gathered) usually(letter byte) core.Maybe[int] {
	for _, name := range []string{g.b.MixIn(string(letter)), g.b.RigCompartment(letter).Name} {
		for i, l := range g.day.Liquids {
			if name != "" && strings.EqualFold(l.Mix, name) {
				return core.Known(i)
			}
		}
	}
	return core.Maybe[int]{}
}

func (g *gathered) holdsWords(c *fluid.Compartment) string {
	if mix := g.b.MixIn(string(c.Letter)); mix != "" {
		return mix
	}
	return g.b.RigCompartment(c.Letter).Name
}

// isLiquid is the liquid of the day that something is: each of its products within the band of strength, and of no other product more
// than what counts as clean leaves.
func (g *gathered) isLiquid(l fluid.Liquid) int {
	if l.Volume <= 0 {
		return batch.Other
	}
	band, clean := g.b.Setting(core.StrengthBandPct)/100, 1-g.b.Setting(core.CleanNotAllowed)
next:
	for i, of := range g.day.Liquids {
		own := map[int32]bool{}
		for _, t := range of.Products {
			k, ok := g.b.ProductKey(t.Product)
			own[k] = true
			if is := float64(l.Strength(k)); !ok || math.Abs(is-float64(t.Strength)) > float64(band*float64(t.Strength)) {
				continue next
			}
		}
		for _, h := range l.Holds {
			if !own[h.Key] && float64(l.Strength(h.Key)) > float64(clean*g.strongest(h.Key)) {
				continue next
			}
		}
		return i
	}
	return batch.Other
}

// strongest is the strongest that a product stands in a liquid of the day, or in a compartment.
func (g *gathered) strongest(k int32) float64 {
	name, most := g.b.ProductByKey(k).ProductName, 0.0
	for _, l := range g.day.Liquids {
		for _, t := range l.Products {
			if t.Product == name {
				most = max(most, float64(t.Strength))
			}
		}
	}
	p := g.b.Plumbing()
	for i := range p.Compartments {
		most = max(most, float64(p.Compartments[i].Liquid.Strength(k)))
	}
	return most
}
