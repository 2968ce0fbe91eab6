package tui

import (
	"strings"
	"testing"
)

// plumbed is the morning on a truck whose pump, agitation and pressures are in the book.
func plumbed(t testing.TB) string {
	rig := strings.Split(truck(t), "\n")[0]
	for _, r := range [][2]string{
		{`"cell_gal":0.2`, `"cell_gal":0.2,"pump_flow_gpm":10,"pump_psi":120`},
		{`"flow_gpm":2.5}`, `"flow_gpm":2.5,"needs_psi":40}`},
		{`"heel_gal":2},{"letter":"b"`, `"heel_gal":2,"agitation":"paddle","tint":"none"},{"letter":"b"`},
		{`"heel_gal":2},{"letter":"c"`, `"heel_gal":2,"agitation":"jet","tint":"blue"},{"letter":"c"`},
	} {
		if !strings.Contains(rig, r[0]) {
			t.Fatal("the truck has changed: ", r[0])
		}
		rig = strings.Replace(rig, r[0], r[1], 1)
	}
	return rig + "\n" + morning
}

// pushing is a changeover to a that is half done: some of what was pushed went into b.
const pushing = `
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"b","volume_gal":1.2}`
