package grid

import (
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core/check"
	"example.com/tintline/core/label"
)

// TestCellsAndGateAgree: of a product that the nozzle gives as it was mixed, a cell weighs what the gate's finding of the rule
// grass weighs, on every grass, growing and dormant, and with notes of the operator's own.
func TestCellsAndGateAgree(t *testing.T) {
	var zones []string
	for _, grass := range label.Grasses() {
		for _, growth := range []string{label.Growing, label.Dormant, label.Stressed} {
			zones = append(zones, fmt.Sprintf(`{"name":"%s %s","grass":%q,"area_sqft":1000,"growth":%q,"growth_since":"2026-05-01"}`, grass.Name, growth, grass.Name, growth))
		}
	}
	lines := strings.Replace(loads, `"grasses":["bermudagrass_common","st_augustinegrass","centipedegrass"]`,
		`"grasses":["bermudagrass_common","bermudagrass_hybrid","st_augustinegrass","centipedegrass","zoysiagrass","tall_fescue"]`, 1)
	b := bookOf(t, lines+`
{"fact":"lawn","name":"all of them","zones":[`+strings.Join(zones, ",")+`]}
{"fact":"cautioned","product":"warm","grass":"zoysiagrass","weight":"ask","says":"was slow"}
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"a","volume_gal":6}`)
	at := b.LastAt()
	g := OfLawn(b, "all of them", at)
	seen := map[check.Weight]int{}
	for i := range g.Rows {
		zone := g.Rows[i].Zone.Name
		r, err := check.Before(b, check.Intent{Lawn: "all of them", Zones: []string{zone}, With: "gun", At: at})
		if err != nil {
			t.Fatal(err)
		}
		gate := check.None
		for _, f := range r.Findings {
			if f.Rule == "grass" && f.Product == "warm" {
				gate = max(gate, f.Weight)
			}
		}
		c := g.Cell(i, 0)
		if g.Columns[0].Product != "warm" || c.Weight != gate {
			t.Errorf("%s: the cell says %v, the gate %v: %s", zone, c.Weight, gate, c.Says)
		}
		seen[gate]++
	}
	if len(seen) < 3 || seen[check.Stop] == 0 || seen[check.Ask] == 0 {
		t.Errorf("the gate said %v: that is not much to agree on", seen)
	}
}
