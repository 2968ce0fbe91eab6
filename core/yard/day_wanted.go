package yard

import (
	"fmt"
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/label"
)

// How much a mix is wanted on a zone where several may go, the most wanted first.
const (
	wantMeantWith = iota // made from the one that the zone names, with what is due there
	wantMeant            // the zone names it
	wantExtra            // it has what is due there
	wantAtHand           // made for some grasses, and it stands in a tank or is to be loaded
	wantMade             // made for some grasses
	wantTurf             // for all turf, at hand
	wantAnything         // for all turf
	unwanted
)

// candidate is a mix that might go on a zone, with what check says of it.
type candidate struct {
	mix  *core.Mix
	want int
	asks []string       // by sentence; none: nothing is asked
	stop *check.Finding // nil: it may go
}

// says is its stop, with its name.
func (c *candidate) says() string {
	if strings.HasPrefix(c.stop.Says, c.mix.MixName+":") {
		return c.stop.Says
	}
	return c.mix.MixName + ": " + c.stop.Says
}

// candidates are the mixes for a zone through an applicator, the most wanted first.
func (g *gathered) candidates(lawn string, z core.Zone, in check.Intent) ([]candidate, error) {
	var out []candidate
	for i := range g.mixes {
		m := &g.mixes[i]
		c := candidate{mix: m, want: g.wanted(m, lawn, z)}
		if c.want == unwanted {
			continue
		}
		r, err := check.MixOn(g.b, m.MixName, in)
		if err != nil {
			return nil, err
		}
		for j := range r.Findings {
			switch f := &r.Findings[j]; {
			case f.Reason != "":
			case f.Weight == check.Stop && c.stop == nil:
				c.stop = f
			case f.Weight == check.Ask:
				c.asks = append(c.asks, f.Says)
			}
		}
		out = append(out, c)
	}
	slices.SortStableFunc(out, func(a, b candidate) int { return a.want - b.want })
	return out, nil
}

// wanted says how much a mix is wanted on a zone.
func (g *gathered) wanted(m *core.Mix, lawn string, z core.Zone) int {
	if m.MixName == z.Mix {
		return wantMeant
	}
	if m.For != "" && m.For != core.EveryVisit {
		switch {
		case g.due(m, lawn, z) != dueNow, z.Mix != "" && m.Base != z.Mix:
			return unwanted
		case z.Mix != "":
			return wantMeantWith
		}
		return wantExtra
	}
	turf := g.forAllTurf(m)
	switch {
	case !turf && g.atHand[m.MixName]:
		return wantAtHand
	case !turf:
		return wantMade
	case g.atHand[m.MixName]:
		return wantTurf
	}
	return wantAnything
}

// forAllTurf tells whether each product of a mix is for all turf.
func (g *gathered) forAllTurf(m *core.Mix) bool {
	for _, p := range m.Parts {
		if prod := g.b.Product(p.Product); prod == nil || !slices.Contains(prod.Label.Grasses, label.AllTurf) {
			return false
		}
	}
	return true
}

// Whether what a mix has beyond others is due on a zone.
const (
	notDue = iota
	dueNow
	dueUnknown // the book does not go back far enough
)

// due tells whether a mix that is not for every visit is due: on a first visit what is for those; once a year what none of was
// laid yet this year.
func (g *gathered) due(m *core.Mix, lawn string, z core.Zone) int {
	history := g.b.History(lawn, z.Name)
	if m.For == core.FirstVisits {
		if len(history) == 0 && g.first(lawn) {
			return dueNow
		}
		return notDue
	}
	year := g.date[:4] + "-01-01"
	for _, product := range g.extra(m) {
		if k, ok := g.b.ProductKey(product); ok {
			for _, w := range history {
				if w.Product == k && w.Date >= year && w.Amount > 0 {
					return notDue
				}
			}
		}
	}
	if known := g.b.ZoneKnownSince(lawn, z.Name); known > year && !g.first(lawn) {
		return dueUnknown
	}
	return dueNow
}

// first tells whether nothing was laid on a lawn yet.
func (g *gathered) first(lawn string) bool {
	l := g.b.Lawn(lawn)
	for _, z := range l.Zones {
		if len(g.b.History(lawn, z.Name)) > 0 {
			return false
		}
	}
	return true
}

// extra are the products that a mix has beyond its base.
func (g *gathered) extra(m *core.Mix) []string {
	var out []string
	for _, d := range core.Difference(m, g.b.Mix(m.Base)) {
		if d.Have.Known && !d.Base.Known {
			out = append(out, d.Product)
		}
	}
	return out
}

// chosen are the mixes that the plan may take for a zone: the most wanted of those that may go, without an ask where there are such.
func chosen(list []candidate) []candidate {
	var out []candidate
	for _, c := range list {
		switch {
		case c.stop != nil:
		case len(out) == 0:
			out = append(out, c)
		case c.want != out[0].want:
		case len(c.asks) == 0 && len(out[0].asks) > 0:
			out = []candidate{c}
		case (len(c.asks) == 0) == (len(out[0].asks) == 0):
			out = append(out, c)
		}
	}
	return out
}

// warnOf says what is to be known of a zone before the day: that no mix may go on it, that not the one which is meant does, that
// something is asked about, that a book does not go back far enough.
func (g *gathered) warnOf(lawn string, z core.Zone, list, take []candidate) {
	add := func(w check.Weight, noMix bool, do, says string, args ...any) {
		g.warnings = append(g.warnings, DayWarning{Lawn: lawn, Zone: z.Name, Weight: w, Says: fmt.Sprintf(says, args...), Do: do, NoMix: noMix})
	}
	grass := label.GrassWords(z.Grass)
	switch {
	case len(take) > 0:
	case len(list) == 0:
		add(check.Stop, true, "Enter a mix for it.", "No mix for %s (%s): the book has none that can be sprayed.", z.Name, grass)
	default:
		add(check.Stop, true, list[0].stop.Do, "No mix for %s (%s): %s", z.Name, grass, list[0].says())
	}
	if z.Mix != "" && g.b.Mix(z.Mix) == nil {
		add(check.Ask, false, "Enter that mix, or name another for the zone.", "%s is meant for %s, and the book has no such mix.", z.Mix, z.Name)
	}
	if len(take) > 0 {
		for _, c := range list {
			if c.stop != nil && c.want < take[0].want && (c.mix.MixName == z.Mix || c.want <= wantExtra) {
				add(check.Ask, false, c.stop.Do, "%s on %s, because %s", take[0].mix.MixName, z.Name, c.says())
			}
		}
		if c := refusedBefore(list, take[0].want); c != nil && take[0].want >= wantTurf && z.Mix == "" {
			add(check.Ask, false, "Leave it at that, or make up a mix for this grass; what the plan puts there stands in its order.", "only %s, for all turf, may go on %s (%s); %s", take[0].mix.MixName, z.Name, grass, c.says())
		}
		for _, ask := range take[0].asks {
			add(check.Ask, false, "It is asked at the trigger.", "%s on %s: %s", take[0].mix.MixName, z.Name, ask)
		}
	}
	g.warnOfDue(lawn, z, take, add)
}

// refusedBefore is the first mix that is wanted more and may not go; nil if there is none.
func refusedBefore(list []candidate, want int) *candidate {
	for i := range list {
		if list[i].stop != nil && list[i].want < want {
			return &list[i]
		}
	}
	return nil
}

// warnOfDue says what of an extra product is not known.
func (g *gathered) warnOfDue(lawn string, z core.Zone, take []candidate, add func(check.Weight, bool, string, string, ...any)) {
	year := g.date[:4] + "-01-01"
	known := g.b.ZoneKnownSince(lawn, z.Name)
	for i := range g.mixes {
		m := &g.mixes[i]
		if m.For != core.OnceAYear {
			continue
		}
		extra := strings.Join(g.extra(m), ", ")
		switch g.due(m, lawn, z) {
		case dueUnknown:
			add(check.Note, false, "If none was laid, name "+m.MixName+" for the zone, or enter since when the lawn is known.",
				"Whether %s was laid on %s this year before %s is not in the book: %s is not planned there.", extra, z.Name, known, m.MixName)
		case dueNow:
			if known > year && len(take) > 0 && take[0].mix.MixName == m.MixName {
				add(check.Note, false, "If another laid some there, name another mix for the zone.", "%s on %s, a first visit: what was laid before %s is not in the book.", m.MixName, z.Name, known)
			}
		}
	}
}
