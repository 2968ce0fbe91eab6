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

// plumbingSituations are those of pipes, pressures and charts.
var plumbingSituations = []situated{
	{"gauge_chart_filled", func(t *testing.T) *cab {
		return climbIn(t, morning).press("g", "g", "c", "n", "enter").type_("1").type_("2.5")
	}},
	{"gauge_chart_backwards", func(t *testing.T) *cab {
		return climbIn(t, morning+charted(t)).press("g", "g", "a", "n", "n").type_("9")
	}},
	{"gauge_chart_by_shape", func(t *testing.T) *cab {
		return climbIn(t, morning).press("g", "g", "a", "n", "s").type_("obround 48 x 36 x 47 in, mark every 4 in")
	}},
	{"plumbing", func(t *testing.T) *cab { return climbIn(t, plumbed(t)+pushing).press("g", "i") }},
	{"plumbing_end", func(t *testing.T) *cab { return climbIn(t, plumbed(t)+pushing).press("g", "i", "pgdown", "pgdown") }},
	{"plumbing_two_open", func(t *testing.T) *cab {
		return climbIn(t, plumbed(t)+`
{"fact":"lined_up","supply":["a","b"],"return":"a"}`).press("g", "i")
	}},
	{"plumbing_ran_line", func(t *testing.T) *cab {
		c := climbIn(t, plumbed(t)+`
{"fact":"loaded","into":"b","volume_gal":40,"mix":"fescue, bluegrass","for":"gun"}
{"fact":"lined_up","supply":["a"],"return":"b"}`).press("g", "i", "r")
		return c.typed("6 min")
	}},
	{"plumbing_drained", func(t *testing.T) *cab { return climbIn(t, plumbed(t)+pushing).press("g", "i", "o").type_("1") }},
	{"pressure", func(t *testing.T) *cab { return climbIn(t, plumbed(t)).press("g", "i", "g") }},
	{"pressure_measured", func(t *testing.T) *cab {
		return climbIn(t, plumbed(t)).press("g", "i", "g", "enter").type_("2.5 110 50")
	}},
	{"pressure_line_is_wrong", func(t *testing.T) *cab {
		return climbIn(t, plumbed(t)).press("g", "i", "g", "enter").type_("2.5 50 110")
	}},
}
