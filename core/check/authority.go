package check

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// judge holds label entry, reference and the operator's own notes against a product on a zone, in this order of authority.
type judge struct {
	b    *core.Book
	at   core.Moment
	form string // label.FormSpray or label.FormGranule
}

func (s *situation) judge() judge { return judge{s.b, s.in.At, label.FormSpray} }

func (s *situation) dryJudge() judge { return judge{s.b, s.in.At, label.FormGranule} }

func (j judge) circumstances(z core.Zone) label.Circumstances {
	c := CircumstancesOf(j.b, z, j.at)
	c.Form = j.form
	return c
}

// aboutNote is what a finding is about that comes from a note of the operator's own.
const aboutNote = "own note"

// opinion is what one ground says of a product on a zone.
type opinion struct {
	weight         Weight
	about          string
	ground, source string
	says           string // "mesotrione is not for common bermudagrass"
	do             string // empty: as the part of the rig asks
	unlisted       bool
}

// opinions are what there is to say of a product on a zone at a rate, label and reference first.
func (j judge) opinions(p *core.Product, lawn string, z core.Zone, rate core.Maybe[measure.Rate]) []opinion {
	var out []opinion
	if o, some := j.leave(p, z, rate); some {
		out = append(out, o)
	}
	return append(out, j.ownNotes(p, lawn, z)...)
}

// leave is what label entry and reference say; false if they have nothing against it.
func (j judge) leave(p *core.Product, z core.Zone, rate core.Maybe[measure.Rate]) (opinion, bool) {
	c := j.circumstances(z)
	l := label.May(p.Label, z.Grass, c, rate)
	grass := label.GrassWords(z.Grass)
	o := opinion{ground: GroundLabel, source: labelSource(p)}
	switch l.Kind {
	case label.Unlisted:
		o.weight, o.unlisted = Stop, true
		o.says = fmt.Sprintf("%s is not for %s", called(p), grass)
		return o, true
	case label.WrongState:
		o.weight = Ask
		if info, _ := label.FindActive(l.Active); info.Trace == 'B' {
			o.weight = Stop
		}
		o.do = fmt.Sprintf("If %s is dormant, say so on the lawn's page; else leave it off.", z.Name)
	case label.Injures:
		o.weight = Ask
		o.do = fmt.Sprintf("Look at what the label itself says of %s; if you doubt it, leave it off.", grass)
	case label.Reduced:
		o.weight = Note
		o.do = keepTo(&l)
		if len(l.Verdict.Rows[0].When.Months) > 0 { // these months are what it speaks against
			o.weight = Ask
			o.do = fmt.Sprintf("Wait until these months are over, or look at what the label itself says of %s.", grass)
		}
	default:
		return o, false
	}
	row := deciding(&l)
	o.ground, o.source = groundOfBasis(row.Basis), j.sources(p, &l, row)
	if first := &l.Verdict.Rows[0]; row.Recalled() && !first.Recalled() { // the state is recalled; that it injures was read
		o.ground, o.source = groundOfBasis(first.Basis), o.source+"; "+first.Cite()
	}
	o.says = fmt.Sprintf("%s on %s: the label entry lists it; %s", called(p), grass, j.against(p, &l, row))
	if step := j.stepBeyond(z, c, row); step != "" {
		o.weight = stepped(o.weight, step, 0)
		o.says += "; it weighs one step more because " + step
	}
	return o, true
}

// keepTo names the conditions of the row that decides; where it has none, its rating asks for little.
func keepTo(l *label.Leave) string {
	var needs []string
	for _, n := range deciding(l).When.Needs {
		if n != "normal rate" {
			needs = append(needs, n)
		}
	}
	if lb, some := mostOfRow(deciding(l)); some {
		needs = append(needs, fmt.Sprintf("at most %.3g lb of it per acre", lb))
	}
	if len(needs) == 0 {
		return "Keep to the lowest rate; some injury may show."
	}
	return "Keep to this: " + strings.Join(needs, ", ") + "."
}

// mostOfRow is the rate that a row sets as the most, in pounds of the active per acre.
func mostOfRow(row *label.Row) (lb float64, some bool) {
	most := row.When.MostRate
	if !most.Known || !row.When.MostIsLimit {
		return 0, false
	}
	lb, err := most.V.In("lb_per_acre")
	return lb, err == nil
}

// deciding is the row that decides: of an active for dormant turf only the one that says so.
func deciding(l *label.Leave) *label.Row {
	rows := l.Verdict.Rows
	if l.Kind == label.WrongState {
		for i := range rows {
			if rows[i].Rating == label.OnlyDormant {
				return &rows[i]
			}
		}
	}
	return &rows[0]
}

// groundOfBasis is where a row of the reference comes from. A label that somebody else read is no word of the operator's own
// label, which alone makes a thing unlawful.
func groundOfBasis(basis string) string {
	switch basis {
	case label.BasisTrial:
		return GroundTrial
	case label.BasisRecalled:
		return GroundRecalled
	case label.BasisNone:
		return GroundPractice
	}
	return GroundExtension
}

// sources names the label entry and the rows that decide, or differ.
func (j judge) sources(p *core.Product, l *label.Leave, row *label.Row) string {
	words := labelSource(p) + "; " + row.Cite()
	if l.Verdict.Disagree {
		for i := range l.Verdict.Rows {
			if r := &l.Verdict.Rows[i]; r.Rating != row.Rating && !r.Recalled() && r.Contradicted == "" {
				return words + "; " + r.Cite()
			}
		}
	}
	return words
}

// against is what the reference says, of which active if there are several, and under which conditions.
func (j judge) against(p *core.Product, l *label.Leave, row *label.Row) string {
	words := "the reference"
	if len(p.Label.Actives) > 1 && l.Active != "" {
		words += " on " + l.Active
	}
	words += ": "
	if l.Kind == label.WrongState {
		words += "dormant turf only (" + row.Cite() + "), and this is not said to be dormant"
		if l.Verdict.Rating == label.NotTolerant {
			words += "; else " + l.Verdict.Words()
		}
		return words
	}
	words += l.Verdict.Words()
	if lb, some := mostOfRow(row); some && l.Kind == label.Reduced {
		words += fmt.Sprintf("; at most %.3g lb of it per acre", lb)
	}
	if l.Kind == label.Reduced && len(row.When.Needs) > 0 {
		words += "; needs " + strings.Join(row.When.Needs, ", ")
	}
	return words
}

// step is why what the reference says weighs one step heavier: turf that is weak, or heat. Empty if nothing does.
func (j judge) step(z core.Zone, c label.Circumstances) string {
	switch z.Growth {
	case label.Stressed, label.GreeningUp, label.Sodded, label.Seeded:
		return "it is " + label.GrowthWords(z.Growth)
	}
	if most := j.b.Setting(core.HeatStepF); c.TempF.Known && c.TempF.V > most {
		return fmt.Sprintf("of %.3g F, over %.3g", c.TempF.V, most)
	}
	return ""
}

// stepBeyond is the same, but for what the row that decides speaks of itself: that weighs once.
func (j judge) stepBeyond(z core.Zone, c label.Circumstances, row *label.Row) string {
	if stage := row.When.Stage; stage != label.StageEstablished && stage != label.StageDormant && stage != "" {
		z.Growth = ""
	}
	if row.When.TempMax.Known {
		c.TempF.Known = false
	}
	return j.step(z, c)
}

// ownNotes are the operator's notes that are about a product on a zone.
func (j judge) ownNotes(p *core.Product, lawn string, z core.Zone) []opinion {
	var out []opinion
	for _, n := range j.b.Cautions() {
		if !ownNoteOn(&n, p, lawn, z) {
			continue
		}
		weight := map[string]Weight{"stop": Stop, "ask": Ask, "note": Note}[n.Weight]
		if weight == None {
			continue
		}
		out = append(out, opinion{
			weight: weight, about: aboutNote, ground: GroundSetting, source: "own note of the operator",
			says: fmt.Sprintf("your note on %s says: %s", called(p), strings.TrimRight(n.Says, ".")),
			do:   "Go on only if your own note does not hold here.",
		})
	}
	return out
}

// strengthOf is how strong a product is in a liquid: whether that is the mix itself or residue, the share of the lowest
// label rate that it lays, and the rate.
type strengthOf struct {
	full        bool
	share, rate float64
}

// stops tells whether a product would be a stop on a zone, as the mix itself or as residue.
func (j judge) stops(p *core.Product, lawn string, z core.Zone, x strengthOf) bool {
	if x.full {
		for _, o := range j.opinions(p, lawn, z, core.Known(measure.Rate{V: x.rate, Kind: p.Label.Form})) {
			if o.weight == Stop {
				return true
			}
		}
		return false
	}
	if p.Label.Lists(z.Grass) {
		return false
	}
	_, w := heaviestOf(j.residueLimits(p, z), x.share)
	return w == Stop
}
