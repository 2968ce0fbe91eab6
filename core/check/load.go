package check

import (
	"errors"
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/label"
)

// Loading is what there is to say of a load before it goes in.
type Loading struct {
	Findings []Finding
	Verdict  Weight
	Adding   label.Adding // the products in order, with their cautions
	Unmet    [][2]string  // pairs that never met in this book: a jar is asked for
	Standing []string     // products that stand in the tank already and would be in the mix
}

// The rules of a load besides rulePair. They have no reasons: a load that went in is written down.
const (
	ruleRoom   = "room"
	ruleMixing = "mixing"
)

// Source of what BeforeLoad says of pairs that never met.
const jarSource = "Utah State University extension, jar test, 2012"

// BeforeLoad says what would come of a load that is planned: pairs that are not to be mixed are a stop, pairs that never met
// are asked about, room, formulations and standing are said.
func BeforeLoad(b *core.Book, at core.Moment, f *core.LoadPlanned) Loading {
	var out Loading
	var names []string
	var products []label.ToAdd
	for _, p := range f.Parts {
		if prod := b.Product(p.Product); prod != nil {
			names = append(names, p.Product)
			products = append(products, label.ToAdd{Name: p.Product, Entry: prod.Label})
		}
	}
	out.Adding = label.OrderOf(b.MixingOrder(), products...)
	out.Standing = standingIn(b, f.Into, names)
	together := append(append([]string(nil), names...), out.Standing...)
	for _, j := range b.NotToMix(together) {
		stop := pairStop(j)
		stop.Do = "Do not load it; plan one of them for another tank."
		out.Findings = append(out.Findings, stop)
	}
	out.unmet(b, names, out.Standing)
	out.room(b, at, f)
	out.mixing()
	out.settling(b, f.Into)
	out.stock(b, f)
	for _, x := range out.Findings {
		out.Verdict = max(out.Verdict, x.Weight)
	}
	return out
}

// inTank is the liquid of a compartment or an applicator's tank.
func inTank(b *core.Book, into string) (l fluid.Liquid, ok bool) {
	if len(into) == 1 {
		if c := b.Plumbing().Compartment(into[0]); c != nil {
			return c.Liquid, true
		}
	}
	if t := b.Plumbing().Tank(into); t != nil {
		return t.Liquid, true
	}
	return l, false
}

// standingIn lists what stands in the tank as more than residue and is not loaded.
func standingIn(b *core.Book, into string, loaded []string) []string {
	l, ok := inTank(b, into)
	if !ok || l.Volume == 0 {
		return nil
	}
	var out []string
	for _, k := range mixedIn(b, l) {
		if n := b.ProductByKey(k).ProductName; !hasText(loaded, n) {
			out = append(out, n)
		}
	}
	return out
}

// unmet asks for a jar of the pairs of which at least one product is loaded now.
func (l *Loading) unmet(b *core.Book, loaded, standing []string) {
	together := append(append([]string(nil), loaded...), standing...)
	for _, p := range b.Unmet(together) {
		if hasText(loaded, p[0]) || hasText(loaded, p[1]) {
			l.Unmet = append(l.Unmet, p)
		}
	}
	if len(l.Unmet) == 0 {
		return
	}
	var pairs []string
	for _, p := range l.Unmet {
		pairs = append(pairs, p[0]+" with "+p[1])
	}
	l.Findings = append(l.Findings, Finding{
		Rule: rulePair, Weight: Ask, About: "jar", Part: PartCompartment, Product: l.Unmet[0][0], Ground: GroundExtension, Source: jarSource,
		Says: fmt.Sprintf("Never in one tank in this book: %s.", list(pairs)),
		Do:   "Make a jar of it first and log what it came to.",
	})
}

func (l *Loading) room(b *core.Book, at core.Moment, f *core.LoadPlanned) {
	var p *core.Problem
	if _, err := b.Prepare("load", at, core.LoadedFrom(f)); errors.As(err, &p) {
		l.Findings = append(l.Findings, Finding{Rule: ruleRoom, Weight: Stop, Part: PartCompartment, Ground: GroundPractice, Says: p.What, Do: p.Do})
	}
}

// mixing is about formulations that are not known, and about more partners than three.
func (l *Loading) mixing() {
	var unknown []string
	for _, s := range l.Adding.Steps {
		if s.Class == label.OrderUnknown {
			unknown = append(unknown, s.Name)
		}
	}
	if len(unknown) > 0 {
		l.Findings = append(l.Findings, Finding{
			Rule: ruleMixing, Weight: Note, About: "formulation", Part: PartCompartment, Product: unknown[0], Ground: GroundPractice, Source: "common practice, no source",
			Says: fmt.Sprintf("The place of %s is not known: the formulation is not entered or not in the table.", list(unknown)),
			Do:   "Look at the label; until then it stands last before the surfactants.",
		})
	}
	if p := l.Adding.Partners; p > label.MostPartners {
		l.Findings = append(l.Findings, Finding{
			Rule: ruleMixing, Weight: Note, About: "partners", Part: PartCompartment, Ground: GroundExtension, Source: l.Adding.Cautions[0].Source, Unit: "products",
			Figured: core.Known(float64(p)), Limit: core.Known(float64(label.MostPartners)),
			Says: fmt.Sprintf("%d partners in one tank; more than %d are not advised.", p, label.MostPartners), Do: "Leave one for another tank, or make a jar of all of them.",
		})
	}
}

// settling is about what settles in a tank that nothing moves while another is drawn from, and how long a mix may stand.
func (l *Loading) settling(b *core.Book, into string) {
	var settles []string
	for _, s := range l.Adding.Steps {
		if f, ok := label.FindFormulation(b.Product(s.Name).Label.MixingClass); ok && f.Settles {
			settles = append(settles, s.Name)
		}
	}
	how := core.Paddle
	if len(into) == 1 {
		how = ""
		if c := b.RigCompartment(into[0]); c != nil {
			how = c.Agitation
		}
	}
	note := Finding{
		Rule: "standing", Weight: Note, About: aboutAgitation, Part: PartCompartment, Ground: GroundSetting, Unit: "min",
		Limit: core.Known(b.Setting(core.SettleMin)), Source: settleSource + b.SettingSource(core.SettleMin),
	}
	if len(settles) > 0 && how != core.Paddle {
		verb := "settles"
		if len(settles) > 1 {
			verb = "settle"
		}
		note.Says = fmt.Sprintf("%s %s; %s has neither jet nor paddle.", list(settles), verb, into)
		note.Do = fmt.Sprintf("Stir %s at the lid before each draw, or load it where something stirs.", into)
		switch how {
		case core.Jet:
			note.Says = fmt.Sprintf("%s %s, and the jet of %s works only while the return goes there.", list(settles), verb, into)
			note.Do = fmt.Sprintf("Run the return to %s for %.0f min before you draw from it after %.0f min.", into, b.Setting(core.StirMin), b.Setting(core.SettleMin))
		case "":
			note.Says = fmt.Sprintf("%s %s; how %s is agitated is not entered.", list(settles), verb, into)
			note.Do = fmt.Sprintf("Stir %s before each draw, and enter with the rig how it is agitated.", into)
		}
		l.Findings = append(l.Findings, note)
	}
	if len(l.Adding.Steps) > 0 {
		l.Findings = append(l.Findings, Finding{
			Rule: "standing", Weight: Note, About: aboutNight, Part: PartCompartment, Unit: "h", Limit: core.Known(b.Setting(core.StandingH)),
			Ground: GroundExtension, Source: nightSource + b.SettingSource(core.StandingH),
			Says: "A mix is sprayed on the day it is made, within hours, and stands over no night.", Do: "Load no more than today's lawns take; see on the labels how long it may stand.",
		})
	}
}

// doubtLoad asks about a load of what is not to be mixed. What went in can be written down all the same.
func doubtLoad(b *core.Book, at core.Moment, f *core.LoadPlanned) (words, do string, doubtful bool) {
	if len(b.MarkedApart()) == 0 && len(b.Jars()) == 0 {
		return "", "", false
	}
	for _, x := range BeforeLoad(b, at, f).Findings {
		if x.Rule == rulePair && x.Weight == Stop {
			return x.Says, x.Do, true
		}
	}
	return "", "", false
}
