package fluid

import (
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core/measure"
)

// TestRemeasureKeepsMassAndStrength: whatever is in hose and cell, a new size leaves nothing over, keeps the order and
// the strength of the parcels, and comes out of the unexplained to the last unit.
func TestRemeasureKeepsMassAndStrength(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		draw := func(what string, low, high int64) int64 { return rapid.Int64Range(low, high).Draw(rt, what) }
		p := &Plumbing{Outside: Accounts{}}
		var h Hose
		h.Name = "reel"
		for i := range draw("parcels", 1, 6) {
			v := measure.Volume(draw("volume", 1_000_000, 1<<40))
			l := Liquid{Volume: v, From: Parts{{int32(i + 1), int64(v)}}, Holds: Parts{{int32(i), draw("holds", 1_000_000, 1<<40)}}}
			h.Charge, h.Size = append(h.Charge, Parcel{Liquid: l}), h.Size+v
		}
		if air := measure.Volume(draw("air", 0, 1<<38)); air > 0 {
			h.Charge, h.Size = append([]Parcel{{Air: air}}, h.Charge...), h.Size+air
		}
		p.Hoses = []Hose{h}
		p.Cell = Cell{Size: 1 << 30, Liquid: Liquid{Volume: 1 << 30, From: Parts{{1, 1 << 30}}, Holds: Parts{{2, 12345678}}}}
		for _, l := range append([]Liquid{h.Liquid()}, p.Cell.Liquid) {
			p.Outside.Take(WaterSupply, l)
		}
		size, cell := measure.Volume(draw("size", 1_000_000, 1<<42)), measure.Volume(draw("cell", 0, 1<<32))
		p.Remeasure("reel", size)
		p.RemeasureCell(cell)
		if sum := p.Sum(); !sum.Empty() {
			rt.Fatalf("all places sum to %+v", sum)
		}
		now := p.Hoses[0]
		if now.Size != size || now.Liquid().Volume+now.Air() != size || p.Cell.Size != cell || p.Cell.Liquid.Volume != cell {
			rt.Fatalf("a hose of %d holds %d and %d of air; the cell of %d %d", now.Size, now.Liquid().Volume, now.Air(), p.Cell.Size, p.Cell.Liquid.Volume)
		}
		for i, c := range now.Charge {
			if len(now.Charge) != len(h.Charge) || c.Volume < 1000 {
				continue // shrunk to a few units, where rounding is all there is
			}
			was := h.Charge[i]
			if int64(c.Volume) != c.From.Sum() {
				rt.Fatalf("parcel %d is of %d and comes from %d", i, c.Volume, c.From.Sum())
			}
			for _, q := range was.Holds {
				want, got := float64(q.N)/float64(was.Volume), float64(c.Holds.Of(q.Key))/float64(c.Volume)
				// One unit, and what a float of that size can tell apart.
				if d := want - got; max(d, -d) > 1/float64(c.Volume)+1e-14*want {
					rt.Fatalf("parcel %d has the strength %g and had %g", i, got, want)
				}
			}
		}
	})
}
