package label

import (
	"slices"
	"strings"

	"example.com/tintline/core/measure"
)

// LeaveKind is what label entry and reference together say of a product on a grass, in this order of authority.
type LeaveKind uint8

// The kinds of leave, from the heaviest down.
const (
	Unlisted   LeaveKind = iota // the label entry does not list the grass: a stop, whatever the reference says
	WrongState                  // listed, but the reference knows it on dormant turf only, and this is not said to be dormant
	Injures                     // listed, and the reference calls the grass not tolerant: both grounds are shown
	Reduced                     // listed, and the reference calls it moderate
	Listed                      // listed, and the reference has nothing against it, or nothing
)

// Leave is what label entry and reference say of a product on a grass.
type Leave struct {
	Kind    LeaveKind
	Active  string  // the active or mixture that decided; empty where it is the label entry alone
	Verdict Verdict // of that active
	// Backed tells whether sources that were read support the label entry for each active that could harm turf.
	Backed bool
}

// May says whether a product may go on a grass: the label entry first, then the reference, for each active and for each
// mixture whose parts the product holds; the heaviest decides. The rates of the actives follow from the rate of the
// product and the contents, where both are known; c.Rate is not used.
func May(e Entry, grass string, c Circumstances, rate measure.Maybe[measure.Rate]) Leave {
	if !e.Lists(grass) {
		return Leave{Kind: Unlisted}
	}
	if c.Form == "" {
		c.Form = e.goesDownAs()
	}
	parts := e.parts(rate)
	for i := range parts {
		p := &parts[i]
		c.Rate = p.rate
		p.leave = Leave{Active: p.name, Verdict: blockVerdict(p.blocks, grass, &c)}
		p.leave.Kind = p.leave.Verdict.Kind(c.Growth)
		p.clear = p.leave.Verdict.Rating == Tolerant
	}
	out, heaviest, well := Leave{Kind: Listed}, -1, backed(parts)
	for i := range parts {
		if w := parts[i].weight(well); w > heaviest {
			out, heaviest = parts[i].leave, w
		}
	}
	if out.Kind == Listed && len(out.Verdict.Rows) == 0 {
		out.Active = ""
	}
	out.Backed = well
	return out
}

// Kind is what a verdict comes to on a grass that the label entry lists, in a state of growth. What is known on dormant turf
// only is WrongState on any other, also where the verdict is NotTolerant.
func (v Verdict) Kind(growth string) LeaveKind {
	if growth != Dormant {
		for i := range v.Rows {
			if v.Rows[i].Rating == OnlyDormant {
				return WrongState
			}
		}
	}
	switch v.Rating {
	case NotTolerant:
		return Injures
	case Moderate:
		return Reduced
	}
	return Listed
}

// weight says which part of a product decides: by the kind of its leave, then one that was read before one that was
// recalled. Of several that are listed, the one of which nothing is known where the label entry stands alone, else one
// that a source clears; plant food and what is added to a mix last.
func (p *part) weight(backed bool) int {
	w := 4 * int(Listed-p.leave.Kind)
	switch {
	case p.leave.Kind != Listed:
		if !p.leave.Verdict.Recalled {
			w++
		}
	case p.harmless:
		w += min(1, len(p.leave.Verdict.Rows))
	case p.clear == backed:
		w += 3
	default:
		w += 2
	}
	return w
}

// backed tells whether each active of which turf could take harm is cleared by sources that were read, alone or in a mixture.
func backed(parts []part) bool {
	some := false
	for _, p := range parts {
		some = some || p.of == nil
		if p.of != nil || p.harmless || p.clear {
			continue
		}
		if !slices.ContainsFunc(parts, func(m part) bool { return m.clear && slices.Contains(m.of, p.name) }) {
			return false
		}
	}
	return some
}

// part is an active of a product, or a mixture of some of them.
type part struct {
	name     string
	of       []string // of a mixture, its parts
	blocks   []block
	rate     measure.Maybe[measure.Rate]
	harmless bool // nothing that the reference rates: plant food, what is added to a mix
	clear    bool // a source that was read calls the grass tolerant
	leave    Leave
}

// parts are the actives of a product and the mixtures whose parts it holds, with their rates for one of the product.
func (e Entry) parts(rate measure.Maybe[measure.Rate]) []part {
	out := make([]part, 0, len(e.Actives)+1)
	for _, a := range e.Actives {
		p := part{name: a.Name, rate: e.ActiveRate(a, rate)}
		if info, ok := FindActive(a.Name); ok {
			p.name, p.harmless = info.Name, info.harmless()
		}
		p.blocks = blocksOf(p.name)
		out = append(out, p)
	}
	singles := out
	for _, m := range mixtures {
		if sum, all := rateOf(m, singles); all {
			out = append(out, part{name: m.name, of: m.parts, blocks: blocksOf(m.name), rate: sum})
		}
	}
	return out
}

// rateOf is the rate of a mixture, the sum of those of its parts, and whether all of them are there.
func rateOf(m mixture, singles []part) (sum measure.Maybe[measure.Rate], all bool) {
	sum = measure.Known(measure.Rate{Kind: measure.Dry})
	for _, name := range m.parts {
		i := slices.IndexFunc(singles, func(p part) bool { return p.name == name })
		if i < 0 {
			return sum, false
		}
		sum.V.V += singles[i].rate.V.V
		sum.Known = sum.Known && singles[i].rate.Known
	}
	return sum, true
}

// goesDownAs is the form in which the product goes down, by its mixing class; a liquid product is sprayed. Empty where
// that is not known: a dry product may be spread or mixed with water.
func (e Entry) goesDownAs() string {
	switch class := strings.ToLower(e.MixingClass); {
	case class == "g" || strings.HasPrefix(class, "gr"):
		return FormGranule
	case e.Form == measure.Liquid || class != "":
		return FormSpray
	}
	return ""
}
