package sheet

import (
	"cmp"
	"slices"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// The parts of a rig, each on rows of its own.
const (
	partRig         = "rig"
	partCompartment = "compartment"
	partHose        = "hose"
	partApplicator  = "applicator"
	partLineUp      = "line_up"
)

var rigParts = []string{partRig, partCompartment, partHose, partApplicator, partLineUp}

var rigColumns = []column{
	{
		Column: Column{Name: "part", Words: "what the row is about: one row for the rig, one for each of its parts", Example: partCompartment, Required: true},
		reader: oneOf(rigParts...),
	}, {
		Column: Column{Name: "name", Words: "what it is called", Example: "example gun"},
		reader: name("part"), needed: []string{partRig, partHose, partApplicator, partLineUp},
	}, {
		Column: Column{Name: "letter", Words: "the compartment's letter by its position, from a on", Example: "a"},
		reader: letter(), parts: []string{partCompartment}, needed: []string{partCompartment},
	}, {
		Column: Column{Name: "colour", Words: "the colour by which you know it", Example: "yellow"},
		reader: text(), parts: []string{partCompartment},
	}, {
		Column: Column{Name: "capacity_gal", Words: "what the compartment holds when it is full", Example: "200"},
		reader: gallons(true), parts: []string{partCompartment}, needed: []string{partCompartment},
	}, {
		Column: Column{Name: "heel_gal", Words: "what the suction cannot draw from it", Example: "2"},
		reader: gallons(false), parts: []string{partCompartment},
	}, {
		Column: Column{Name: "cell_gal", Words: "dead volume of pump, strainer and manifold", Example: "0.2"},
		reader: gallons(false), parts: []string{partRig},
	}, {
		Column: Column{Name: "return_line_gal", Words: "what the line from the bypass back to the tank holds", Example: "0.1"},
		reader: gallons(false), parts: []string{partRig},
	}, {
		Column: Column{Name: "inside_diameter_in", Words: "the hose's inside diameter", Example: "3/8"},
		reader: inches(), parts: []string{partHose},
	}, {
		Column: Column{Name: "length_ft", Words: "the hose's length", Example: "300"},
		reader: feet(), parts: []string{partHose},
	}, {
		Column: Column{Name: "volume_gal", Words: "what the hose holds, where it was measured; else diameter and length give it", Example: "1.7"},
		reader: gallons(true), parts: []string{partHose},
	}, {
		Column: Column{Name: "kind", Words: "the kind of applicator", Example: core.Gun},
		reader: oneOf(core.Gun, core.RideOn, core.Backpack, core.Spreader), parts: []string{partApplicator}, needed: []string{partApplicator},
	}, {
		Column: Column{Name: "hose", Words: "the hose that feeds or fills the applicator", Example: "reel"},
		reader: name("hose"), parts: []string{partApplicator},
	}, {
		Column: Column{Name: "delivery_gal_per_1000_sqft", Words: "how much the applicator lays; a spreader needs none", Example: "1.5"},
		reader: delivery(), parts: []string{partApplicator},
	}, {
		Column: Column{Name: "flow_gpm", Words: "what leaves the nozzle, where it is known", Example: "2.5"},
		reader: gallonsPerMinute(), parts: []string{partApplicator},
	}, {
		Column: Column{Name: "tank_gal", Words: "the applicator's own tank, where it has one", Example: "14"},
		reader: gallons(false), parts: []string{partApplicator},
	}, {
		Column: Column{Name: "supply", Words: "the compartments that the line-up draws from", Example: "a"},
		reader: letters(), parts: []string{partLineUp},
	}, {
		Column: Column{Name: "return", Words: "the compartment that the bypass goes back to", Example: "a"},
		reader: letter(), parts: []string{partLineUp},
	}, {
		Column: Column{Name: "valves", Words: "how the valves stand for it", Example: "suction=left; return=left"},
		reader: pairs(), parts: []string{partLineUp},
	},
}

// rigRows is a rig while its rows are read.
type rigRows struct {
	*reading
	rig          *core.Rig
	head         *row
	compartments []placed[core.RigCompartment]
	hoses        []placed[core.RigHose]
	applicators  []placed[core.Applicator]
	lineUps      []placed[core.NamedLineUp]
	names        map[string]named // by part
}

// placed is a part with its row.
type placed[T any] struct {
	part T
	row  *row
}

// readRig makes the rig of all rows.
func readRig(s *reading) {
	g := &rigRows{reading: s, rig: &core.Rig{}, names: map[string]named{}}
	for _, p := range rigParts {
		g.names[p] = named{}
	}
	for _, r := range s.rows {
		part, ok := get[string](r, "part")
		switch {
		case ok && !r.sound(part), !ok && r.cells["part"] != "":
		case !ok:
			r.bad("part", faultf("The cell is empty."))
		default:
			g.take(r, part)
		}
	}
	if len(g.troubles) > 0 {
		return // a part that could not be read would be missed by the others
	}
	if g.head == nil {
		g.add(Trouble{What: "No row sets up the rig itself.", Allowed: "a row with rig under part and the rig's name"})
		return
	}
	g.together()
	g.build()
}

func (g *rigRows) take(r *row, part string) {
	switch part {
	case partRig:
		if !g.names[part].once(r, "part", "part", part) {
			return
		}
		g.head = r
		g.rig.RigName, g.rig.Cell, g.rig.ReturnLine = value[string](r, "name"), value[measure.Volume](r, "cell_gal"), value[measure.Volume](r, "return_line_gal")
	case partCompartment:
		g.compartments = append(g.compartments, placed[core.RigCompartment]{core.RigCompartment{
			Letter: value[byte](r, "letter"), Name: value[string](r, "name"), Colour: value[string](r, "colour"),
			Capacity: value[measure.Volume](r, "capacity_gal"), Heel: value[measure.Volume](r, "heel_gal"),
		}, r})
	case partHose:
		g.hoses = append(g.hoses, placed[core.RigHose]{core.RigHose{
			Name: value[string](r, "name"), Bore: maybe[measure.Length](r, "inside_diameter_in"),
			Length: maybe[measure.Length](r, "length_ft"), Volume: value[measure.Volume](r, "volume_gal"),
		}, r})
	case partApplicator:
		g.applicators = append(g.applicators, placed[core.Applicator]{core.Applicator{
			Name: value[string](r, "name"), Type: value[string](r, "kind"), Hose: value[string](r, "hose"),
			Delivery: value[measure.Rate](r, "delivery_gal_per_1000_sqft"), Flow: maybe[measure.Flow](r, "flow_gpm"),
			Tank: value[measure.Volume](r, "tank_gal"),
		}, r})
	case partLineUp:
		g.lineUps = append(g.lineUps, placed[core.NamedLineUp]{core.NamedLineUp{
			Name: value[string](r, "name"), Valves: value[map[string]string](r, "valves"),
			Supply: value[[]byte](r, "supply"), Return: value[byte](r, "return"),
		}, r})
	}
}

// together looks at what one row says of another, where a column can be named.
func (g *rigRows) together() {
	slices.SortStableFunc(g.compartments, func(a, b placed[core.RigCompartment]) int { return cmp.Compare(a.part.Letter, b.part.Letter) })
	var lettered, hoses []string
	for _, c := range g.compartments {
		l := string(rune(c.part.Letter))
		if c.part.Letter == 0 || !g.names[partCompartment].once(c.row, "letter", "letter", l) {
			continue
		}
		lettered = append(lettered, l)
		if want := string(rune('a' + len(lettered) - 1)); l != want {
			c.row.bad("letter", faultf("Compartment %s is there, but no compartment %s.", l, want))
			return
		}
		if c.part.Capacity > 0 && c.part.Heel >= c.part.Capacity {
			c.row.bad("heel_gal", faultf("The heel of compartment %s is %s gal of %s.", l, c.part.Heel.Text(), c.part.Capacity.Text()))
		}
	}
	for _, h := range g.hoses {
		g.names[partHose].once(h.row, "name", "hose", h.part.Name)
		hoses = append(hoses, h.part.Name)
		if h.row.cells["volume_gal"] == "" && (h.row.cells["inside_diameter_in"] == "" || h.row.cells["length_ft"] == "") {
			h.row.bad("volume_gal", faultf("The hose %s has neither a volume nor both an inside diameter and a length.", quote(h.part.Name)))
		}
	}
	for _, a := range g.applicators {
		g.names[partApplicator].once(a.row, "name", "applicator", a.part.Name)
		if a.part.Hose != "" {
			a.row.known("hose", "hose", a.part.Hose, hoses)
		}
		if a.part.Type != "" && a.part.Type != core.Spreader && a.row.cells["delivery_gal_per_1000_sqft"] == "" {
			a.row.bad("delivery_gal_per_1000_sqft", faultf("The applicator %s needs its delivery rate.", quote(a.part.Name)))
		}
	}
	for _, l := range g.lineUps {
		g.names[partLineUp].once(l.row, "name", "line-up", l.part.Name)
		for _, c := range l.part.Supply {
			l.row.known("supply", "compartment", string(rune(c)), lettered)
		}
		if l.part.Return != 0 {
			l.row.known("return", "compartment", string(rune(l.part.Return)), lettered)
		}
	}
}

// build makes the one fact. Cut to fewer rows it keeps what stands before: all compartments and hoses before
// the first applicator.
func (g *rigRows) build() {
	f := g.rig
	m := made{fact: f, rows: []*row{g.head}}
	ends := [4]int{}
	m.rows, f.Compartments, ends[0] = parted(m.rows, g.compartments)
	m.rows, f.Hoses, ends[1] = parted(m.rows, g.hoses)
	m.rows, f.Applicators, ends[2] = parted(m.rows, g.applicators)
	m.rows, f.LineUps, ends[3] = parted(m.rows, g.lineUps)
	m.cut = func(n int) core.Fact {
		c := *f
		c.Compartments = first(f.Compartments, n-1)
		c.Hoses = first(f.Hoses, n-ends[0])
		c.Applicators = first(f.Applicators, n-ends[1])
		c.LineUps = first(f.LineUps, n-ends[2])
		return &c
	}
	g.facts = []made{m}
}

// parted adds the rows of some parts to those before and gives the parts themselves, and how many rows there
// are now.
func parted[T any](rows []*row, parts []placed[T]) ([]*row, []T, int) {
	var out []T
	for _, p := range parts {
		out, rows = append(out, p.part), append(rows, p.row)
	}
	return rows, out, len(rows)
}

func first[T any](all []T, n int) []T { return all[:max(0, min(n, len(all)))] }
