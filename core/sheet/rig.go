package sheet

import (
	"cmp"
	"slices"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// rigRows is a rig while its rows are read.
type rigRows struct {
	*reading
	rig          *core.Rig
	head         *row
	compartments []placed[core.RigCompartment]
	hoses        []placed[core.RigHose]
	applicators  []placed[core.Applicator]
	tips         []placed[fitting]
	lineUps      []placed[core.NamedLineUp]
	names        map[string]named // by part
}

// placed is a part with its row.
type placed[T any] struct {
	part T
	row  *row
}

// fitting is a tip with the applicator that it is for.
type fitting struct {
	applicator string
	tip        core.Tip
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
		g.plumbing(r)
	case partCompartment:
		g.compartments = append(g.compartments, placed[core.RigCompartment]{gauged(r, core.RigCompartment{
			Letter: value[byte](r, "letter"), Name: value[string](r, "name"), Colour: value[string](r, "colour"),
			Capacity: value[measure.Volume](r, "capacity_gal"), Heel: value[measure.Volume](r, "heel_gal"),
			Marks: value[[]core.GaugeMark](r, "gauge_marks_gal"),
		}), r})
	case partHose:
		g.hoses = append(g.hoses, placed[core.RigHose]{weighed(r, core.RigHose{
			Name: value[string](r, "name"), Bore: maybe[measure.Length](r, "inside_diameter_in"),
			Length: maybe[measure.Length](r, "length_ft"), Volume: value[measure.Volume](r, "volume_gal"),
		}), r})
	case partApplicator:
		g.applicators = append(g.applicators, placed[core.Applicator]{core.Applicator{
			Name: value[string](r, "name"), Type: value[string](r, "kind"), Hose: value[string](r, "hose"),
			Delivery: r.delivery(), Flow: maybe[measure.Flow](r, "flow_gpm"),
			Tank: value[measure.Volume](r, "tank_gal"), Hopper: value[measure.Mass](r, "hopper_lb"),
			PSI: maybe[float64](r, "needs_psi"),
		}, r})
	case partTip:
		g.tips = append(g.tips, placed[fitting]{fitting{value[string](r, "applicator"), core.Tip{
			Name: value[string](r, "name"), PSI: maybe[float64](r, "pressure_psi"), Delivery: r.delivery(), Flow: maybe[measure.Flow](r, "flow_gpm"),
		}}, r})
	case partLineUp:
		g.lineUps = append(g.lineUps, placed[core.NamedLineUp]{core.NamedLineUp{
			Name: value[string](r, "name"), Valves: value[map[string]string](r, "valves"),
			Supply: value[[]byte](r, "supply"), Return: value[byte](r, "return"),
		}, r})
	}
}

// delivery is what a row lays, liquid or dry.
func (r *row) delivery() measure.Rate {
	liquid, wet := get[measure.Rate](r, "delivery_gal_per_1000_sqft")
	dry, solid := get[measure.Rate](r, "delivery_lb_per_1000_sqft")
	if wet && solid {
		r.bad("delivery_lb_per_1000_sqft", faultf("The row has a delivery rate in gallons already."))
	}
	if solid {
		return dry
	}
	return liquid
}

// together looks at what one row says of another, where a column can be named.
func (g *rigRows) together() {
	slices.SortStableFunc(g.compartments, func(a, b placed[core.RigCompartment]) int { return cmp.Compare(a.part.Letter, b.part.Letter) })
	var lettered []string
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
	g.onHoses()
	g.onApplicators()
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

func (g *rigRows) onHoses() {
	for _, h := range g.hoses {
		g.names[partHose].once(h.row, "name", "hose", h.part.Name)
		if h.row.cells["volume_gal"] == "" && (h.row.cells["inside_diameter_in"] == "" || h.row.cells["length_ft"] == "") {
			h.row.bad("volume_gal", faultf("The hose %s has neither a volume nor both an inside diameter and a length.", quote(h.part.Name)))
		}
	}
}

func (g *rigRows) onApplicators() {
	var hoses, applicators []string
	for _, h := range g.hoses {
		hoses = append(hoses, h.part.Name)
	}
	for _, a := range g.applicators {
		g.names[partApplicator].once(a.row, "name", "applicator", a.part.Name)
		applicators = append(applicators, a.part.Name)
		if a.part.Hose != "" {
			a.row.known("hose", "hose", a.part.Hose, hoses)
		}
		if a.part.Type != core.Spreader && a.row.cells["delivery_gal_per_1000_sqft"] == "" {
			a.row.bad("delivery_gal_per_1000_sqft", faultf("The applicator %s needs its delivery rate.", quote(a.part.Name)))
		}
	}
	for _, t := range g.tips {
		t.row.known("applicator", "applicator", t.part.applicator, applicators)
		if t.part.tip.Delivery.V == 0 {
			t.row.bad("delivery_gal_per_1000_sqft", faultf("The tip %s needs the delivery rate that it gives.", quote(t.part.tip.Name)))
		}
	}
}

// build makes the one fact. Cut to fewer rows it keeps what stands before: all compartments and hoses before
// the first applicator.
func (g *rigRows) build() {
	f := g.rig
	m := made{fact: f, rows: []*row{g.head}}
	ends := [4]int{}
	var tips []fitting
	m.rows, f.Compartments, ends[0] = parted(m.rows, g.compartments)
	m.rows, f.Hoses, ends[1] = parted(m.rows, g.hoses)
	m.rows, f.Applicators, ends[2] = parted(m.rows, g.applicators)
	m.rows, tips, ends[3] = parted(m.rows, g.tips)
	m.rows, f.LineUps, _ = parted(m.rows, g.lineUps)
	bare := f.Applicators
	f.Applicators = fitted(bare, tips)
	m.cut = func(n int) core.Fact {
		c := *f
		c.Compartments = first(f.Compartments, n-1)
		c.Hoses = first(f.Hoses, n-ends[0])
		c.Applicators = fitted(first(bare, n-ends[1]), first(tips, n-ends[2]))
		c.LineUps = first(f.LineUps, n-ends[3])
		return &c
	}
	g.facts = []made{m}
}

// fitted are applicators with their tips.
func fitted(bare []core.Applicator, tips []fitting) []core.Applicator {
	out := slices.Clone(bare)
	for _, t := range tips {
		for i := range out {
			if out[i].Name == t.applicator {
				out[i].Tips = append(out[i].Tips, t.tip)
			}
		}
	}
	return out
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
