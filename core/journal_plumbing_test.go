package core

import (
	"pgregory.net/rapid"

	"example.com/tintline/core/measure"
)

func (g *anyFact) plumbing(kind Kind) Fact {
	switch kind {
	case kindRan:
		return &Ran{Seconds: Known(rapid.Float64Range(0, 300).Draw(g.t, "s")), Pump: g.pick("pump", "on", "off")}
	case kindCleaned:
		return &Cleaned{What: g.pick("what", Strainers, Strainers, "")}
	default:
		return &Marked{Compartment: g.letter(), Mark: g.pick("mark", "1", "2", "3", "full"), Volume: Known(g.volume(50))}
	}
}

// taught counts the changeovers from which the book could learn.
const taught = "taught"

// tintable gives a rig what changeovers are learned from, and sometimes a second hose.
func (g *anyFact) tintable(f *Rig) {
	f.Compartments[0].Tint, f.Compartments[1].Tint = NoTint, "blue"
	for i := 2; i < len(f.Compartments); i++ {
		f.Compartments[i].Tint = g.pick("tint", NoTint, "blue", "blue", "")
	}
	if rapid.Bool().Draw(g.t, "dead leg") {
		f.DeadLegs = []DeadLeg{{"fill line", g.volume(0.3)}}
	}
	if rapid.IntRange(0, 2).Draw(g.t, "second hose") > 0 {
		f.Hoses = append(f.Hoses, RigHose{Name: "other", Volume: measure.Gallons(0.5)})
	}
}

func (g *anyFact) gunFlow() Maybe[measure.Flow] {
	if rapid.IntRange(0, 3).Draw(g.t, "no flow") == 0 {
		return Maybe[measure.Flow]{}
	}
	return Known(measure.GPM(rapid.Float64Range(2, 3).Draw(g.t, "gun flow")))
}

// tint is a changeover that was timed: near what a hose of the rig may hold, so that some are learned from.
func (g *anyFact) tint() *TintSeen {
	f := &TintSeen{Missed: g.pick("missed", "", "", "", "yes"), Hose: g.pick("hose", "", "", "", "reel", "other", "other", "none")}
	at := rapid.Float64Range(0, 60).Draw(g.t, "s")
	if h, flow := g.b.Plumbing().Hose(f.Hose), g.b.flowAt(f.Hose); h != nil && flow.Known && rapid.Bool().Draw(g.t, "near") {
		at = float64(flow.V.Seconds(h.Size) * rapid.Float64Range(0.9, 1.2).Draw(g.t, "of it"))
	}
	f.Seconds = Known(at)
	if rapid.Bool().Draw(g.t, "half") {
		f.HalfSeconds = Known(at + rapid.Float64Range(0, 8).Draw(g.t, "half s"))
		f.FullSeconds = Known(f.HalfSeconds.V + rapid.Float64Range(0, 20).Draw(g.t, "full s"))
	}
	return f
}

// calibrated is a test of an applicator, at times one that cannot be.
func (g *anyFact) calibrated() *Calibrated {
	f := &Calibrated{Applicator: g.pick("applicator", "gun", "gun", "gun", "spreader"), Accepted: g.pick("accepted", Yes, Yes, No, "")}
	f.Course, f.Swath = Known(measure.Feet(100)), Known(measure.Feet(5))
	if f.Applicator == "spreader" {
		f.Weighed = []WeighedRun{{measure.Pounds(rapid.Float64Range(0, 5).Draw(g.t, "lb"))}}
		return f
	}
	for range rapid.IntRange(2, 4).Draw(g.t, "runs") {
		f.Runs = append(f.Runs, TimedRun{rapid.Float64Range(38, 41).Draw(g.t, "s")})
	}
	f.Caught = []CaughtVolume{{g.volume(1)}}
	return f
}
