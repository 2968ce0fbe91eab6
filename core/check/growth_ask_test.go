package check

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

// How the grass grows is asked once for all zones of which it is not known, and it is the act that comes next.
func TestGrowthIsAskedForAllZonesAtOnce(t *testing.T) {
	b := play(t, loadedLines+`{"fact":"setting","name":"growth_ask_to","value":630}
`+hoseOf("a")+alder)
	in := Intent{Lawn: "Alder"}
	r := before(t, b, in)
	f := find(r, "grass")
	if f == nil || f.Weight != Ask || f.About != aboutGrowth || len(f.Also) != 0 || f.Says != "front + back, common bermudagrass: since 2026-02-01 nobody has said how it grows." {
		t.Fatalf("%+v", f)
	}
	p := Propose(b, Intent{At: clock})
	if p.Act != ActGrowth || strings.Join(p.GrowthOf, " ") != "front back" || len(p.Facts) != 0 {
		t.Errorf("%+v", p)
	}
	log(t, b, &core.GrowthSeen{Lawn: "Alder", Zones: []string{"front"}, Growth: "growing"})
	if f := find(before(t, b, in), "grass"); f == nil || strings.Join(f.Zones, " ") != "back" {
		t.Errorf("%+v", f)
	}
	log(t, b, &core.GrowthSeen{Lawn: "Alder", Growth: "growing"})
	if p := Propose(b, Intent{At: clock}); p.Act != ActSpray {
		t.Errorf("%+v", p)
	}
}
