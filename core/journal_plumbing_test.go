package core

import "pgregory.net/rapid"

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
