package setup

import (
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/sheet"
)

const (
	perThousandLiquid = "gal_per_1000_sqft"
	perThousandDry    = "lb_per_1000_sqft"
)

// applicatorForm is about an applicator, or one more.
func applicatorForm(r *core.Rig, name string) Form {
	x, at, title := core.Applicator{Name: name, Type: core.Gun}, len(r.Applicators), "Add an applicator"
	if len(r.Hoses) > 0 {
		x.Hose = r.Hoses[0].Name
	}
	var fields []Field
	if i := applicatorAt(r, name); i >= 0 {
		x, at, title = r.Applicators[i], i, "Change "+name
	} else {
		fields = append(fields, Field{
			Key: keyName, Words: "applicator", need: always, check: cell(sheet.Rig, "name"), Help: "What you call it: two letters or more.", Allowed: allowed(sheet.Rig, "name"),
		})
	}
	kinds, hoses := applicatorKinds(), hosesOf(r)
	lays, flow, tank, hopper := laysText(x.Delivery), flowText(x.Flow), amountText(gallons(x.Tank)), amountText(figure(x.Hopper.Pounds()))
	fields = append(
		fields,
		Field{Key: keyKind, Words: "kind", Start: x.Type, Options: kinds, need: always, Help: "What it is.", Allowed: "one of the list"},
		Field{Key: keyOn, Words: "hangs on", Start: x.Hose, Options: hoses, Help: "The hose that feeds or fills it.", Allowed: "one of the list"},
		Field{
			Key: keyLays, Words: "lays, gal/1,000 sq ft", Start: lays, check: cell(sheet.Rig, "delivery_gal_per_1000_sqft"), need: func(a Answers) bool { return a[keyKind] != core.Spreader },
			Help: "What it lays, as you measured it. A spreader needs none.", Allowed: allowed(sheet.Rig, "delivery_gal_per_1000_sqft"),
		},
		Field{
			Key: keyFlow, Words: "flow, gal a minute", Start: flow, check: cell(sheet.Rig, "flow_gpm"),
			Help: "What leaves the nozzle. Blank: seconds are not shown.", Allowed: allowed(sheet.Rig, "flow_gpm"),
		},
		Field{
			Key: keyTank, Words: "its own tank, gal", Start: tank, check: cell(sheet.Rig, "tank_gal"),
			Help: "Blank: it has none.", Allowed: allowed(sheet.Rig, "tank_gal"),
		},
		Field{
			Key: keyHopper, Words: "its hopper, lb", Start: hopper, check: checkHopper,
			Help: "For dry product. Blank: it has none.", Allowed: hopperAllowed,
		},
	)
	return ofRig(Applicator, title, "what lays it down", fields, func(r *core.Rig, a Answers) error {
		x := x
		if x.Name == "" {
			x.Name = a[keyName]
		}
		x.Type, x.Hose = a[keyKind], a[keyOn]
		if err := takeRate(a, lays, measure.Liquid, &x.Delivery); err != nil {
			return err
		}
		if err := takeFlow(a, flow, &x.Flow); err != nil {
			return err
		}
		if err := take(a, keyTank, tank, &x.Tank); err != nil {
			return err
		}
		if err := takeHopper(a, hopper, &x.Hopper); err != nil {
			return err
		}
		r.Applicators = placed(r.Applicators, at, x)
		return nil
	})
}

// takeHopper reads a hopper's capacity that is not as it was; blank means none.
func takeHopper(a Answers, was string, into *measure.Mass) error {
	said := a[keyHopper]
	switch said {
	case was:
		return nil
	case "":
		*into = 0
		return nil
	}
	m, err := measure.ReadMass(said, "lb")
	if err == nil {
		*into = m
	}
	return err
}

func applicatorKinds() []Option {
	var out []Option
	for _, k := range []string{core.Gun, core.RideOn, core.Backpack, core.Spreader} {
		out = append(out, Option{k, strings.ReplaceAll(k, "_", "-")})
	}
	return out
}

func hosesOf(r *core.Rig) []Option {
	out := []Option{{"", "no hose"}}
	for _, h := range r.Hoses {
		out = append(out, Option{h.Name, h.Name})
	}
	return out
}

// tipForm is about a tip of an applicator, or a setting of it, or one more.
func tipForm(r *core.Rig, on int, name string) Form {
	x := &r.Applicators[on]
	t, at, title := core.Tip{Name: name}, len(x.Tips), "Add a tip to "+x.Name
	kind, words, unit := measure.Liquid, "lays, gal/1,000 sq ft", perThousandLiquid
	if !x.Sprays() {
		kind, words, unit = measure.Dry, "lays, lb/1,000 sq ft", perThousandDry
	}
	var fields []Field
	if i := slices.IndexFunc(x.Tips, func(t core.Tip) bool { return t.Name == name }); i >= 0 {
		t, at, title = x.Tips[i], i, "Change tip "+name+" of "+x.Name
	} else {
		fields = append(fields, Field{
			Key: keyName, Words: "tip, or setting", need: always, check: cell(sheet.Rig, "name"), Help: "What you call it, such as 04 at 40 psi.", Allowed: allowed(sheet.Rig, "name"),
		})
	}
	lays, flow, psi := laysText(t.Delivery), flowText(t.Flow), ""
	if t.PSI.Known {
		psi = figure(t.PSI.V)
	}
	fields = append(
		fields,
		Field{
			Key: keyPSI, Words: "at a pressure of, psi", Start: psi, check: checkPSI, Help: "Blank: not known.", Allowed: "more than 0 and up to 1,000 psi",
		},
		Field{
			Key: keyLays, Words: words, Start: lays, need: always, Help: "What the applicator lays with it, as you measured it.", Allowed: "more than 0",
			check: func(_ Answers, said string) error { _, err := readLays(said, unit, kind); return err },
		},
		Field{
			Key: keyFlow, Words: "flow, gal a minute", Start: flow, check: cell(sheet.Rig, "flow_gpm"), Help: "What leaves it. Blank: not known.", Allowed: allowed(sheet.Rig, "flow_gpm"),
		},
	)
	return ofRig(Tip, title, "rate and pressure", fields, func(r *core.Rig, a Answers) error {
		t := t
		if t.Name == "" {
			t.Name = a[keyName]
		}
		if err := takeRate(a, lays, kind, &t.Delivery); err != nil {
			return err
		}
		if err := takeFlow(a, flow, &t.Flow); err != nil {
			return err
		}
		if a[keyPSI] != psi {
			t.PSI = core.Maybe[float64]{}
			if a[keyPSI] != "" {
				p, err := readPSI(a[keyPSI])
				if err != nil {
					return err
				}
				t.PSI = core.Known(p)
			}
		}
		r.Applicators[on].Tips = placed(slices.Clone(r.Applicators[on].Tips), at, t)
		return nil
	})
}

// readPSI takes a bare figure as it stands, so that 45 is not 44.99.
func readPSI(said string) (float64, error) {
	if f, err := measure.ParseNumber(said); err == nil {
		return f, nil
	}
	p, err := measure.ReadPressure(said, "psi")
	return p.PSI(), err
}

func checkPSI(_ Answers, said string) error {
	p, err := readPSI(said)
	if err == nil && (!(p > 0) || p > core.HighestPSI) {
		return &Wrong{What: strings.TrimSpace(said) + " psi is out of range.", Do: "Type more than 0 and up to 1,000 psi."}
	}
	return err
}

// amountText leaves out what is not there.
func amountText(s string) string {
	if s == "0" {
		return ""
	}
	return s
}

func laysText(r measure.Rate) string {
	unit := perThousandLiquid
	if r.Kind == measure.Dry {
		unit = perThousandDry
	}
	if f, err := r.In(unit); err == nil && f > 0 {
		return figure(f)
	}
	return ""
}

func flowText(f core.Maybe[measure.Flow]) string {
	if !f.Known {
		return ""
	}
	return figure(f.V.GPM())
}

func readLays(said, unit string, kind measure.Kind) (measure.Rate, error) {
	r, err := measure.ReadRate(said, unit, kind)
	if err == nil && (!(r.V > 0) || r.V > core.LargestDelivery) {
		return r, &Wrong{What: strings.TrimSpace(said) + " is no delivery rate.", Do: "Type more than 0."}
	}
	return r, err
}

func takeRate(a Answers, start string, kind measure.Kind, r *measure.Rate) error {
	if a[keyLays] == start {
		return nil
	}
	*r = measure.Rate{}
	if a[keyLays] == "" {
		return nil
	}
	unit := perThousandLiquid
	if kind == measure.Dry {
		unit = perThousandDry
	}
	got, err := readLays(a[keyLays], unit, kind)
	*r = got
	return err
}

func takeFlow(a Answers, start string, f *core.Maybe[measure.Flow]) error {
	if a[keyFlow] == start {
		return nil
	}
	*f = core.Maybe[measure.Flow]{}
	if a[keyFlow] == "" {
		return nil
	}
	got, err := measure.ReadFlow(a[keyFlow], "gpm")
	*f = core.Known(got)
	return err
}

// Without is the rig without a part: a hose, an applicator, a tip, or the last compartment. The book refuses it where
// the part holds something, or another part needs it.
func Without(b *core.Book, name, about string) (*core.Rig, bool) {
	if b.Rig() == nil || about == "" {
		return nil, false
	}
	r := rigCopy(b.Rig())
	parts := func() int { return len(r.Compartments) + len(r.Hoses) + len(r.Applicators) + len(r.LineUps) }
	before := parts()
	switch name {
	case Compartment:
		if last := len(r.Compartments) - 1; last >= 0 && string(rune(r.Compartments[last].Letter)) == about {
			r.Compartments = r.Compartments[:last]
		}
	case Hose:
		r.Hoses = slices.DeleteFunc(r.Hoses, func(h core.RigHose) bool { return h.Name == about })
	case LineUp:
		r.LineUps = slices.DeleteFunc(r.LineUps, func(l core.NamedLineUp) bool { return l.Name == about })
	case Applicator:
		r.Applicators = slices.DeleteFunc(r.Applicators, func(a core.Applicator) bool { return a.Name == about })
	case Tip:
		on, tip, _ := strings.Cut(about, "/")
		if i := applicatorAt(r, on); i >= 0 {
			n := len(r.Applicators[i].Tips)
			r.Applicators[i].Tips = slices.DeleteFunc(slices.Clone(r.Applicators[i].Tips), func(t core.Tip) bool { return t.Name == tip })
			return r, len(r.Applicators[i].Tips) < n
		}
	}
	return r, parts() < before
}
