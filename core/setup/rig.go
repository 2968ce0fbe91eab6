package setup

import (
	"errors"
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/sheet"
)

// The names that the parts of a rig get from the form.
const (
	theHose = "reel"
	theGun  = "gun"
	theRide = "ride-on"
	thePack = "backpack"
	theSpr  = "spreader"
)

const commonPractice = "common practice, no source"

// The keys of the rig's fields.
const (
	keyRig          = "rig"
	keyCompartments = "compartments"
	keyHeel         = "heel"
	keyCell         = "cell"
	keyReturn       = "return_line"
	keyHose         = "hose"
	keyGunLays      = "gun_lays"
	keyGunFlow      = "gun_flow"
	keyRideTank     = "ride_on_tank"
	keyRideLays     = "ride_on_lays"
	keyPackTank     = "backpack_tank"
	keyPackLays     = "backpack_lays"
	keyHopper       = "spreader_hopper"
)

func rigForm() Form {
	return Form{
		Name: Rig, Title: "Set up the rig", facts: rigFacts,
		Pages: []Page{{Title: "tank, pump and hose", Fields: tankFields()}, {Title: "what lays it down", Fields: applicatorFields()}},
	}
}

func tankFields() []Field {
	gallons := allowed(sheet.Rig, "cell_gal")
	return []Field{
		{
			Key: keyCompartments, Words: "compartments, gal", need: always, check: checkCapacities,
			Help:    "What each compartment holds when it is full, a first.",
			Allowed: "2 to 6 capacities with spaces between them, such as 300 160 90",
		}, {
			Key: keyHeel, Words: "heel of each, gal", Start: "2", Source: commonPractice, need: always, check: cell(sheet.Rig, "heel_gal"),
			Help:    "What the suction cannot draw. Run one dry and measure what stays.",
			Allowed: gallons,
		}, {
			Key: keyCell, Words: "pump, manifold, gal", Start: "0.2", need: always, check: cell(sheet.Rig, "cell_gal"),
			Help:    "Dead volume of pump, strainer and manifold, where old and new liquid blend.",
			Source:  "0.1 to 0.5 is usual, by published retained volumes of small sprayers",
			Allowed: gallons,
		}, {
			Key: keyReturn, Words: "return line, gal", Start: "0.1", need: always, check: cell(sheet.Rig, "return_line_gal"),
			Help:    "What the line from the bypass back to the tank holds; 0 if it has none.",
			Source:  "published retained volumes of an agitation line: 0.02 to 0.16",
			Allowed: gallons,
		}, {
			Key: keyHose, Words: "hose", Start: "3/8 x 300", Source: commonPractice, need: always, check: checkHose,
			Help:    "Inside diameter in inches by length in feet, or what it holds. Coupled lengths: with + between them.",
			Allowed: "bore by length, 3/8 x 300, several with + between them, or a volume, 1.7 gal",
		}, {
			Key: keyRig, Words: "name of the rig", Start: "truck 1", need: always, check: cell(sheet.Rig, "name"),
			Help: "What this truck is called in the book.", Allowed: allowed(sheet.Rig, "name"),
		},
	}
}

func applicatorFields() []Field {
	lays, tank := allowed(sheet.Rig, "delivery_gal_per_1000_sqft"), allowed(sheet.Rig, "tank_gal")
	delivery := cell(sheet.Rig, "delivery_gal_per_1000_sqft")
	const none = " Leave it blank if there is none."
	return []Field{
		{
			Key: keyGunLays, Words: "gun, gal/1,000 sq ft", Start: "1.5", Source: commonPractice + ": catch it and measure", need: always, check: delivery,
			Help: "What the hose gun lays at your walking pace.", Allowed: lays,
		}, {
			Key: keyGunFlow, Words: "gun, gal a minute", Start: "2.5", Source: commonPractice + ": time a bucket", check: cell(sheet.Rig, "flow_gpm"),
			Help: "It turns gallons into seconds. Blank: seconds are not shown.", Allowed: allowed(sheet.Rig, "flow_gpm"),
		}, {
			Key: keyRideTank, Words: "ride-on's tank, gal", need: filled(keyRideLays), check: cell(sheet.Rig, "tank_gal"),
			Help: "A ride-on machine with a tank of its own." + none, Allowed: tank,
		}, {
			Key: keyRideLays, Words: "ride-on, gal/1,000", need: filled(keyRideTank), check: delivery,
			Help: "What the ride-on lays on 1,000 sq ft." + none, Allowed: lays,
		}, {
			Key: keyPackTank, Words: "backpack's tank, gal", need: filled(keyPackLays), check: cell(sheet.Rig, "tank_gal"),
			Help: "A backpack sprayer." + none, Allowed: tank,
		}, {
			Key: keyPackLays, Words: "backpack, gal/1,000", need: filled(keyPackTank), check: delivery,
			Help: "What the backpack lays on 1,000 sq ft." + none, Allowed: lays,
		}, {
			Key: keyHopper, Words: "spreader's hopper, lb", check: checkHopper,
			Help: "A spreader for dry product." + none, Allowed: hopperAllowed,
		},
	}
}

// capacities parts "300 160 90" into the capacities of the compartments; a unit goes with the figure before it.
func capacities(said string) []string {
	var out []string
	for _, w := range strings.Fields(strings.NewReplacer(";", " ", ", ", " ").Replace(said)) {
		if n := len(out); n > 0 && strings.Trim(w, "0123456789.,/") == w {
			out[n-1] += " " + w
			continue
		}
		out = append(out, strings.TrimSuffix(w, ","))
	}
	return out
}

func checkCapacities(_ Answers, said string) error {
	all := capacities(said)
	if n := len(all); n < 2 || n > 6 {
		return &Wrong{What: fmt.Sprintf("%q names %d of 2 to 6 compartments.", said, n), Do: "Type a capacity for each, with spaces between them: 300 160 90."}
	}
	for _, c := range all {
		if err := sheet.Check(sheet.Rig, "capacity_gal", c); err != nil {
			return err
		}
	}
	return nil
}

const hopperAllowed = "more than 0 lb and up to 22,000 lb"

func checkHopper(_ Answers, said string) error {
	m, err := measure.ReadMass(said, "lb")
	if err == nil && (m <= 0 || m > core.LargestHopper) {
		return &Wrong{What: fmt.Sprintf("%q is out of range.", said), Do: "Type " + hopperAllowed + "."}
	}
	return err
}

func rigFacts(b *core.Book, _ core.Moment, a Answers) ([]core.Fact, error) {
	rows := []map[string]string{{"part": "rig", "name": a[keyRig], "cell_gal": a[keyCell], "return_line_gal": a[keyReturn]}}
	for i, c := range capacities(a[keyCompartments]) {
		rows = append(rows, map[string]string{"part": "compartment", "letter": string(rune('a' + i)), "capacity_gal": c, "heel_gal": a[keyHeel]})
	}
	bore, length, volume, err := hose(a[keyHose])
	if err != nil {
		return nil, err
	}
	rows = append(
		rows,
		map[string]string{"part": "hose", "name": theHose, "inside_diameter_in": bore, "length_ft": length, "volume_gal": volume},
		map[string]string{"part": "applicator", "name": theGun, "kind": core.Gun, "hose": theHose, "delivery_gal_per_1000_sqft": a[keyGunLays], "flow_gpm": a[keyGunFlow]},
	)
	if a[keyRideTank] != "" {
		rows = append(rows, map[string]string{"part": "applicator", "name": theRide, "kind": core.RideOn, "hose": theHose, "delivery_gal_per_1000_sqft": a[keyRideLays], "tank_gal": a[keyRideTank]})
	}
	if a[keyPackTank] != "" {
		rows = append(rows, map[string]string{"part": "applicator", "name": thePack, "kind": core.Backpack, "hose": theHose, "delivery_gal_per_1000_sqft": a[keyPackLays], "tank_gal": a[keyPackTank]})
	}
	facts, err := sheet.Rows(sheet.Rig, rows, b)
	if err != nil {
		return nil, rigWrong(err)
	}
	if a[keyHopper] != "" {
		f := facts[0].(*core.Rig)
		m, err := measure.ReadMass(a[keyHopper], "lb")
		if err != nil {
			return nil, err
		}
		f.Applicators = append(f.Applicators, core.Applicator{Name: theSpr, Type: core.Spreader, Hopper: m})
	}
	return facts, nil
}

// rigWrong gives what is wrong with a part to the field that asked for it.
func rigWrong(err error) error {
	var all sheet.Troubles
	if !errors.As(err, &all) || len(all) == 0 {
		return err
	}
	t := all[0]
	fields := map[string]string{"capacity_gal": keyCompartments, "heel_gal": keyHeel, "cell_gal": keyCell, "name": keyRig}
	w := &Wrong{Field: fields[t.Column], Err: err}
	t.Line, t.Column = 0, ""
	w.What, w.Do = t.Sentences()
	return w
}
