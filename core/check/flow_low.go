package check

import (
	"fmt"

	"example.com/tintline/core"
)

// flowLow: below a Reynolds number of 4,000 the new liquid does not push the old one out as a plug but runs through the
// middle of it (Hart, Guymer, Sonnenwald and Stovin 2016).
func (s *situation) flowLow() []Finding {
	c := s.toClean()
	if c == nil || !c.FlowLow || !c.MinFlow.Known {
		return nil
	}
	gpm, least := s.with.Flow.V.GPM(), c.MinFlow.V.GPM()
	return []Finding{{
		Weight: Ask, About: "flow", Part: PartHose, Unit: "gal_per_min", Ground: GroundPractice, Source: "common textbook limit of turbulent pipe flow, Re 4,000",
		Figured: core.Known(gpm), Limit: core.Known(least),
		Says: fmt.Sprintf("The flow is too low for a clean changeover: %.2f gal a minute, at least %.2f in this hose. As it is it takes %s.", gpm, least, gal(c.PushBack)),
		Do:   fmt.Sprintf("Push with at least %.2f gal a minute.", least),
	}}
}
