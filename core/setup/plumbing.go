package setup

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/sheet"
)

// Plumbing is the form of pump, suction and tints. All of it may be left blank, and what it does not ask stays as it is.
const Plumbing = "plumbing"

const (
	keyPumpFlow  = "pump_flow"
	keyPumpPSI   = "pump_psi"
	keySuction   = "suction"
	keyDeadLegs  = "dead_legs"
	keyGunPSI    = "gun_psi"
	keyTint      = "tint_"      // and the letter
	keyAgitation = "agitation_" // and the letter
)

// aGun is the first hose gun of a rig, -1 if it has none.
func aGun(r *core.Rig) int {
	return slices.IndexFunc(r.Applicators, func(a core.Applicator) bool { return a.Type == core.Gun })
}

func plumbingForm(r *core.Rig) Form {
	start := plumbingStart(r)
	form := Form{Name: Plumbing, Title: "Pump and plumbing", Pages: []Page{
		{Title: "pump and suction", Short: "pump", Fields: pumpFields(r, start)},
		{Title: "tint of each compartment", Short: "tints", Fields: tintFields(r, start)},
		{Title: "how each is agitated", Short: "agitation", Fields: agitationFields(r, start)},
	}}
	form.facts = func(b *core.Book, _ core.Moment, a Answers) ([]core.Fact, error) {
		c := rigCopy(b.Rig())
		if err := plumb(c, a, start); err != nil || reflect.DeepEqual(c, b.Rig()) {
			return nil, err
		}
		return []core.Fact{c}, nil
	}
	return form
}

// plumbingStart is what stands in the fields to begin with: what the rig says, rounded to be read.
func plumbingStart(r *core.Rig) Answers {
	a := Answers{}
	if r.PumpFlow.Known {
		a[keyPumpFlow] = figure(r.PumpFlow.V.GPM())
	}
	if r.PumpPSI.Known {
		a[keyPumpPSI] = figure(r.PumpPSI.V)
	}
	if r.Suction > 0 {
		a[keySuction] = gallons(r.Suction)
	}
	var legs []string
	for _, d := range r.DeadLegs {
		legs = append(legs, d.Name+"="+gallons(d.Volume))
	}
	a[keyDeadLegs] = strings.Join(legs, Joint)
	if i := aGun(r); i >= 0 && r.Applicators[i].PSI.Known {
		a[keyGunPSI] = figure(r.Applicators[i].PSI.V)
	}
	for _, c := range r.Compartments {
		a[keyTint+string(c.Letter)], a[keyAgitation+string(c.Letter)] = c.Tint, c.Agitation
	}
	return a
}

func pumpFields(r *core.Rig, start Answers) []Field {
	fields := []Field{
		{
			Key: keyPumpFlow, Words: "pump, gal a minute", check: cell(sheet.Rig, "pump_flow_gpm"),
			Help: "What it gives in all, gun and bypass together. Blank: the bypass is not reckoned.", Allowed: allowed(sheet.Rig, "pump_flow_gpm"),
		}, {
			Key: keyPumpPSI, Words: "pump's most, psi", check: checkPSI,
			Help: "Where its relief valve opens. Blank: not known.", Allowed: "more than 0 and up to 1,000 psi",
		}, {
			Key: keySuction, Words: "suction pipe, gal", check: cell(sheet.Rig, "suction_gal"),
			Help: "The pipe that the compartments share, between their valves and the pump. It counts in the cell until that is measured.", Allowed: allowed(sheet.Rig, "suction_gal"),
		}, {
			Key: keyDeadLegs, Words: "dead legs", check: cell(sheet.Rig, "dead_legs_gal"),
			Help: "Branches that liquid stands in, such as second reel=0.2; fill line=0.1.", Allowed: allowed(sheet.Rig, "dead_legs_gal"),
		},
	}
	if aGun(r) >= 0 {
		fields = append(fields, Field{
			Key: keyGunPSI, Words: "gun needs, psi", check: checkPSI,
			Help: "The pressure at the gun that gives its flow. Blank: not known.", Allowed: "more than 0 and up to 1,000 psi",
		})
	}
	for i := range fields {
		fields[i].Start = start[fields[i].Key]
	}
	return fields
}

func tintFields(r *core.Rig, start Answers) []Field {
	var out []Field
	for _, c := range r.Compartments {
		key := keyTint + string(c.Letter)
		out = append(out, Field{
			Key: key, Words: fmt.Sprintf("tint of %c", c.Letter), Start: start[key], check: cell(sheet.Rig, "tint"),
			Help: "The colour of what is kept in it, or none: the program says then whether a colour will be seen. Blank: not said.", Allowed: "a colour such as blue, or none",
		})
	}
	return out
}

func agitationFields(r *core.Rig, start Answers) []Field {
	ways := []Option{
		{"", "not said"}, {core.Paddle, "paddle: while the engine turns"}, {core.Jet, "jet: while the return goes to it"}, {core.NotAgitated, "none"},
	}
	var out []Field
	for _, c := range r.Compartments {
		key := keyAgitation + string(c.Letter)
		out = append(out, Field{
			Key: key, Words: fmt.Sprintf("agitation of %c", c.Letter), Start: start[key], Options: ways,
			Help: "What keeps a mix that settles moving in it.", Allowed: "one of the list",
		})
	}
	return out
}

// plumb puts the answers into a rig. What still says what it began with stays to the last unit.
func plumb(r *core.Rig, a, start Answers) error {
	if err := take(a, keySuction, start[keySuction], &r.Suction); err != nil {
		return err
	}
	if a[keyPumpFlow] != start[keyPumpFlow] {
		r.PumpFlow = core.Maybe[measure.Flow]{}
		if a[keyPumpFlow] != "" {
			f, err := measure.ReadFlow(a[keyPumpFlow], "gpm")
			if err != nil {
				return err
			}
			r.PumpFlow = core.Known(f)
		}
	}
	if err := takePSI(a, keyPumpPSI, start[keyPumpPSI], &r.PumpPSI); err != nil {
		return err
	}
	if i := aGun(r); i >= 0 {
		if err := takePSI(a, keyGunPSI, start[keyGunPSI], &r.Applicators[i].PSI); err != nil {
			return err
		}
	}
	if a[keyDeadLegs] != start[keyDeadLegs] {
		legs, err := readLegs(a[keyDeadLegs])
		if err != nil {
			return err
		}
		r.DeadLegs = legs
	}
	for i := range r.Compartments {
		c := &r.Compartments[i]
		c.Tint, c.Agitation = a[keyTint+string(c.Letter)], a[keyAgitation+string(c.Letter)]
	}
	return nil
}

func takePSI(a Answers, key, start string, to *core.Maybe[float64]) error {
	if a[key] == start {
		return nil
	}
	*to = core.Maybe[float64]{}
	if a[key] == "" {
		return nil
	}
	p, err := readPSI(a[key])
	if err == nil {
		*to = core.Known(p)
	}
	return err
}

// readLegs reads what the column of a file reads: it has been checked.
func readLegs(said string) ([]core.DeadLeg, error) {
	var out []core.DeadLeg
	for _, s := range strings.Split(said, ";") {
		leg, typed, _ := strings.Cut(s, "=")
		if strings.TrimSpace(s) == "" {
			continue
		}
		v, err := measure.ReadVolume(strings.TrimSpace(typed), "gal")
		if err != nil {
			return nil, err
		}
		out = append(out, core.DeadLeg{Name: strings.TrimSpace(leg), Volume: v})
	}
	return out, nil
}
