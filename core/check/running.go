package check

import (
	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// The stages of a changeover under way, by what has gone through the nozzle.
const (
	StageOld      = "old"      // what was in the hose comes
	StageArriving = "arriving" // the new liquid has come, and is not clean
	StageClean    = "clean"    // clean enough for the lawn
)

// Progress is where a changeover under way stands.
type Progress struct {
	Gone  measure.Volume // of liquid
	Air   measure.Volume // that has still to leave before it
	Stage string
	Into  byte           // the compartment that the push goes into now; 0: none
	To    string         // a place outside, where it is no compartment
	Leg   int            // of the legs, the one that it is in
	Turn  measure.Volume // until the push goes into another place; 0 if it does no more
	ToGo  measure.Volume // until clean, 0 once it is
	TurnS float64        // the same in seconds at the flow
	ToGoS float64
	Late  bool // the tint should have come: if none was seen, the valves are not where the book says

	// Arrives is what is still to go until the new liquid comes, Left the old liquid that would be left if one stopped now,
	// New the share of new liquid that the nozzle gives, at least.
	Arrives  measure.Volume
	ArrivesS float64
	Left     measure.Volume
	New      float64
}

// Running works a changeover out after so many seconds of a flow that is known. It is the one place for it: a screen
// has only the clock.
func Running(c *Changeover, flow measure.Flow, seconds float64) Progress {
	through := flow.Over(max(seconds, 0))
	p := Progress{Gone: max(through-c.Air, 0), Air: max(c.Air-through, 0), Stage: StageOld}
	p.ToGo = max(c.PushBack-p.Gone, 0)
	switch {
	case p.ToGo == 0:
		p.Stage = StageClean
	case p.Gone >= c.Arrives:
		p.Stage = StageArriving
	}
	p.Late = c.TintBy > 0 && p.Gone >= c.TintBy
	p.Arrives, p.Left, p.New = max(c.Arrives-p.Gone, 0), c.LeftAt(p.Gone), c.NewAt(p.Gone)
	var end measure.Volume
	for i, l := range c.Legs {
		end += l.Volume
		p.Leg, p.Into, p.To = i, l.Into, l.To
		if p.Gone < end {
			if i < len(c.Legs)-1 {
				p.Turn = end - p.Gone
			}
			break
		}
	}
	p.ToGoS = flow.Seconds(p.ToGo + p.Air)
	if p.Arrives > 0 {
		p.ArrivesS = flow.Seconds(p.Arrives + p.Air)
	}
	if p.Turn > 0 {
		p.TurnS = flow.Seconds(p.Turn + p.Air)
	}
	return p
}

// Pushed are the entries for so much that was pushed through the hose in a changeover: leg by leg, and what went
// beyond the last one into its place too. What no compartment can take goes into a pail.
func Pushed(c *Changeover, v measure.Volume) []core.Fact {
	var out []core.Fact
	if len(c.Legs) == 0 && v > 0 {
		return append(out, &core.PushedBack{To: Pail, Volume: v, Hose: c.Hose})
	}
	for i, l := range c.Legs {
		part := min(l.Volume, v)
		if i == len(c.Legs)-1 {
			part = v
		}
		if part > 0 {
			out = append(out, &core.PushedBack{Into: l.Into, To: l.To, Volume: part, Hose: c.Hose})
		}
		v -= part
	}
	return out
}
