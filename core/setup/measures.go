package setup

import (
	"slices"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/sheet"
)

// The forms of measures that most rigs do without.
const (
	Gauge = "gauge" // of a compartment: plan, floor, place of its gauge, what its marks are
	Cross = "cross" // the pipe between two compartments whose supplies are both open
	Reel  = "reel"  // of a hose: outside diameter and weight
)

// A measured is a field whose answer goes to one place of the rig, unless it still says what it began with: what is shown
// is rounded.
type measured struct {
	Field
	set func(said string) error
}

// measuresForm is a form of such fields; fields gives them for a rig that can be changed.
func measuresForm(name, title, page string, r *core.Rig, fields func(r *core.Rig) []measured) Form {
	var shown []Field
	for _, f := range fields(r) {
		shown = append(shown, f.Field)
	}
	return ofRig(name, title, page, shown, func(r *core.Rig, a Answers) error {
		for i, f := range fields(r) {
			if a[f.Key] == shown[i].Start {
				continue
			}
			if err := f.set(a[f.Key]); err != nil {
				return err
			}
		}
		return nil
	})
}

// blankOr reads an answer; blank makes it unknown.
func blankOr[T any](to *core.Maybe[T], read func(said string) (T, error)) func(said string) error {
	return func(said string) error {
		if said == "" {
			*to = core.Maybe[T]{}
			return nil
		}
		v, err := read(said)
		if err == nil {
			*to = core.Known(v)
		}
		return err
	}
}

// asked is a field with the words, range and example of a column of a file.
func asked(column, words, help, start string, set func(said string) error) measured {
	return measured{Field{Key: column, Words: words, Start: start, check: cell(sheet.Rig, column), Help: help + " Blank: not known.", Allowed: allowed(sheet.Rig, column)}, set}
}

func lengthIn(unit string, to *core.Maybe[measure.Length]) func(said string) error {
	return blankOr(to, func(said string) (measure.Length, error) { return measure.ReadLength(said, unit) })
}

// inchesText and the others are what the rig has as it would be typed; empty where it is not known.
func inchesText(l core.Maybe[measure.Length]) string { return knownText(l, measure.Length.Inches) }

func knownText[T any](v core.Maybe[T], in func(T) float64) string {
	if !v.Known {
		return ""
	}
	return figure(in(v.V))
}

func gaugeForm(r *core.Rig, letter string) (Form, bool) {
	at := slices.IndexFunc(r.Compartments, func(c core.RigCompartment) bool { return string(rune(c.Letter)) == letter })
	if at < 0 {
		return Form{}, false
	}
	return measuresForm(Gauge, "Gauge and floor of "+letter, "measures", r, func(r *core.Rig) []measured {
		c := &r.Compartments[at]
		units := []Option{{"", "signs, no depths"}, {core.MarksInches, "inches of depth"}, {core.MarksCentims, "centimetres of depth"}}
		unit := Field{Key: "mark_unit", Words: "its marks are", Start: c.MarkUnit, Options: units, Help: "Marks that are depths tell how high the liquid stands.", Allowed: "one of the list"}
		return []measured{
			asked("plan_sqft", "plan area, sq ft", "Its area seen from above, inside: what a slope under the truck makes of a reading hangs on it.", knownText(c.Plan, measure.Area.SquareFeet),
				blankOr(&c.Plan, func(said string) (measure.Area, error) { return measure.ReadArea(said, "sqft") })),
			asked("gauge_off_in", "gauge off middle, in", "How far its gauge is from the middle of the tank, along the truck.", inchesText(c.GaugeOff), lengthIn("in", &c.GaugeOff)),
			asked("floor_in", "floor, in", "Its lowest inside point above that of the lowest compartment: how two open supplies level out hangs on it.", inchesText(c.Floor), lengthIn("in", &c.Floor)),
			{unit, func(said string) error { c.MarkUnit = said; return nil }},
		}
	}), true
}

func crossForm(r *core.Rig) Form {
	return measuresForm(Cross, "Pipe between the compartments", "measures", r, func(r *core.Rig) []measured {
		return []measured{
			asked("cross_inside_diameter_in", "bore, in", "Inside diameter of the suction plumbing between two compartments.", inchesText(r.CrossBore), lengthIn("in", &r.CrossBore)),
			asked("cross_length_ft", "length, ft", "From one compartment to the other.", knownText(r.CrossLength, measure.Length.Feet), lengthIn("ft", &r.CrossLength)),
			asked("cross_loss", "loss coefficients", "The sum of those of its fittings, entrance and exit included.", knownText(r.CrossLoss, func(f float64) float64 { return f }), blankOr(&r.CrossLoss, measure.ParseNumber)),
		}
	})
}

func reelForm(r *core.Rig, name string) (Form, bool) {
	at := slices.IndexFunc(r.Hoses, func(h core.RigHose) bool { return h.Name == name })
	if at < 0 {
		return Form{}, false
	}
	return measuresForm(Reel, "Weight of the hose "+name, "measures", r, func(r *core.Rig) []measured {
		h := &r.Hoses[at]
		return []measured{
			asked("outside_diameter_in", "outside, in", "Its outside diameter: what it weighs is reckoned from it.", inchesText(h.Outside), lengthIn("in", &h.Outside)),
			asked("dry_lb", "weight empty, lb", "On a scale, empty; it takes the place of what is reckoned.", knownText(h.DryWeight, measure.Mass.Pounds),
				blankOr(&h.DryWeight, func(said string) (measure.Mass, error) { return measure.ReadMass(said, "lb") })),
		}
	}), true
}
