package check

import (
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// classUnknown is the class by which residue is judged where the reference does not know the active.
const classUnknown = 'C'

// residueLimit is from which share of the lowest label rate on the residue of one active is noted, asked about and a stop on
// a zone. 0: never.
type residueLimit struct {
	active          string // empty: the label entry names none
	known           bool   // the reference knows it
	class           byte   // 'A' to 'F'
	verdict         label.Verdict
	note, ask, stop float64
	noteOf          string // the settings that they come from
	askOf, stopOf   string
	step            string // why it weighs one step heavier; empty: it does not
}

// residueLimits are those of each active of a product on a zone.
func (j judge) residueLimits(p *core.Product, z core.Zone) []residueLimit {
	c := j.circumstances(z)
	step := j.step(z, c)
	var out []residueLimit
	for _, name := range activeNames(p) {
		l := residueLimit{active: name, class: classUnknown, step: step}
		info, ok := label.FindActive(name)
		switch {
		case ok:
			l.active, l.known, l.class = info.Name, true, info.Trace
			l.verdict = label.Tolerance(info.Name, z.Grass, c)
		case harmlessKind(p):
			l.class = 'F'
		}
		out = append(out, j.fill(l, z))
	}
	return out
}

// activeNames are those of a product; one that is empty where the entry names none.
func activeNames(p *core.Product) []string {
	var out []string
	for _, a := range p.Label.Actives {
		out = append(out, a.Name)
	}
	if len(out) == 0 {
		return []string{""}
	}
	return out
}

// harmlessKind tells whether a product is by its kind one of those of which no injury by small doses is known. A kind that
// is blank says nothing.
func harmlessKind(p *core.Product) bool {
	kind := strings.ToLower(p.Label.Kind)
	for _, k := range []string{"insecticide", "fungicide", "growth"} {
		if strings.Contains(kind, k) {
			return true
		}
	}
	return kind != "" && !p.Label.Pesticide()
}

// fill sets the shares by the class and the column of the grass: not tolerant, also where nobody that was read says
// otherwise; moderate; tolerant, on which residue is never more than noted.
func (j judge) fill(l residueLimit, z core.Zone) residueLimit {
	name := "trace_" + strings.ToLower(string(l.class))
	moderate := name
	if l.class == 'A' || l.class == 'C' || l.class == 'D' {
		moderate += "_moderate"
	}
	switch l.verdict.Counted() {
	case label.Tolerant:
		l.note, l.noteOf = j.b.Setting(moderate+"_ask"), moderate+"_ask"
	case label.Moderate:
		l = j.take(l, moderate)
	default:
		l = j.take(l, name)
	}
	if l.class == 'D' && hasSite(z, label.SiteEdible) && (l.ask == 0 || j.b.Setting("trace_e_ask") < l.ask) {
		l.class = 'E'
		l = j.take(l, "trace_e")
	}
	return l
}

// take sets the shares by the settings of a name.
func (j judge) take(l residueLimit, name string) residueLimit {
	l.ask, l.askOf = j.b.Setting(name+"_ask"), name+"_ask"
	l.note, l.noteOf = j.b.Setting(core.TraceNoteShare)*l.ask, l.askOf
	if l.class != 'F' {
		l.stop, l.stopOf = j.b.Setting(name+"_stop"), name+"_stop"
	}
	return l
}

// weigh says how heavy a share is, and the limit that it reaches with the setting from which that comes.
func (l *residueLimit) weigh(share float64) (w Weight, limit float64, of string) {
	switch {
	case l.stop > 0 && share >= l.stop:
		w, limit, of = Stop, l.stop, l.stopOf
	case l.ask > 0 && share >= l.ask:
		w, limit, of = Ask, l.ask, l.askOf
	case l.note > 0 && share >= l.note:
		w, limit, of = Note, l.note, l.noteOf
	default:
		return None, 0, ""
	}
	return stepped(w, l.step, l.class), limit, of
}

// stepped is a weight one step heavier where there is a reason for it. What nothing is known to be injured by never stops.
func stepped(w Weight, step string, class byte) Weight {
	switch {
	case step == "" || w == None:
		return w
	case class == 'F':
		return min(w+1, Ask)
	}
	return min(w+1, Stop)
}

// askFrom is the share from which on it is more than a note; 0: never.
func (l *residueLimit) askFrom() float64 {
	if l.step != "" {
		return l.note
	}
	return l.ask
}

// askedBy names the setting that askFrom comes from.
func (l *residueLimit) askedBy() string {
	if l.step != "" {
		return l.noteOf
	}
	return l.askOf
}

// heaviestOf is the limit of those of a product's actives that says most of a share.
func heaviestOf(limits []residueLimit, share float64) (at *residueLimit, w Weight) {
	for i := range limits {
		if v, _, _ := limits[i].weigh(share); v > w || at == nil {
			at, w = &limits[i], v
		}
	}
	return at, w
}

func hasSite(z core.Zone, kind string) bool {
	for _, s := range z.Sites {
		if s.Kind == kind {
			return true
		}
	}
	return false
}
