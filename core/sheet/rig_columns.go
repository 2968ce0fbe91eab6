package sheet

import (
	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// The parts of a rig, each on rows of its own.
const (
	partRig         = "rig"
	partCompartment = "compartment"
	partHose        = "hose"
	partApplicator  = "applicator"
	partTip         = "tip"
	partLineUp      = "line_up"
)

var rigParts = []string{partRig, partCompartment, partHose, partApplicator, partTip, partLineUp}

var rigColumns = append(partColumns, plumbingColumns...)

// partColumns set the parts up.
var partColumns = []column{
	{
		Column: Column{Name: "part", Words: "what the row is about: one row for the rig, one for each of its parts", Example: partCompartment, Required: true},
		reader: oneOf(rigParts...),
	}, {
		Column: Column{Name: "name", Words: "what it is called", Example: "example gun"},
		reader: name("part"), needed: []string{partRig, partHose, partApplicator, partTip, partLineUp},
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
		Column: Column{Name: "gauge_marks_gal", Words: "the chart of its gauge", Example: "1/4=50; 1/2=100; full=200"},
		reader: marks(), parts: []string{partCompartment},
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
		Column: Column{Name: "applicator", Words: "the applicator that the tip, or the setting, is for", Example: "example gun"},
		reader: name("applicator"), parts: []string{partTip}, needed: []string{partTip},
	}, {
		Column: Column{Name: "delivery_gal_per_1000_sqft", Words: "how much liquid the applicator lays, or lays with the tip", Example: "1.5"},
		reader: delivery(measure.Liquid), parts: []string{partApplicator, partTip},
	}, {
		Column: Column{Name: "delivery_lb_per_1000_sqft", Words: "how much a spreader lays, or lays at the setting; it may be left to the product", Example: "3"},
		reader: delivery(measure.Dry), parts: []string{partApplicator, partTip},
	}, {
		Column: Column{Name: "flow_gpm", Words: "what leaves the nozzle, where it is known", Example: "2.5"},
		reader: gallonsPerMinute(), parts: []string{partApplicator, partTip},
	}, {
		Column: Column{Name: "pressure_psi", Words: "the pressure at which the tip gives that", Example: "40"},
		reader: psi(), parts: []string{partTip},
	}, {
		Column: Column{Name: "tank_gal", Words: "the applicator's own tank, where it has one", Example: "14"},
		reader: gallons(false), parts: []string{partApplicator},
	}, {
		Column: Column{Name: "hopper_lb", Words: "the hopper for dry product of a spreader or ride-on, where it has one", Example: "50"},
		reader: pounds(), parts: []string{partApplicator},
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
