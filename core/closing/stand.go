package closing

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// standingWords says since when a mix stands, and whether something in it settles.
func standingWords(settles bool, at core.Moment, loaded bool) string {
	var out []string
	if loaded {
		out = append(out, "loaded "+at.Date()[5:]+" "+at.Clock())
	}
	if settles {
		out = append(out, "settles, stir it first")
	}
	return strings.Join(out, "; ")
}

// planned holds what went into each tank and out of it against the accepted plan of the day, where they differ by more than the tank's
// gauge can tell.
func planned(b *core.Book) []Step {
	f := b.Planned()
	if f == nil || f.Date != b.Day().Date {
		return nil
	}
	want := map[string]measure.Volume{}
	for i := range f.Loads {
		want[f.Loads[i].Into] += f.Loads[i].Volume
	}
	laid := map[string]measure.Volume{}
	for i := range b.Day().Laid {
		for _, d := range b.Day().Laid[i].Drew {
			laid[string(d.Letter)] += d.Volume
		}
	}
	var out []Step
	p := b.Plumbing()
	for i := range p.Compartments {
		c := &p.Compartments[i]
		letter := string(c.Letter)
		if off := c.Flows.Loaded - want[letter]; max(off, -off) > b.Band(&c.Tank) {
			out = append(out, Step{Kind: Planned, Of: letter, Says: fmt.Sprintf(
				"%s: the plan loads %s gal; %s gal were loaded and %s gal of it laid", letter, want[letter].Text(), c.Flows.Loaded.Text(), laid[letter].Text(),
			)})
		}
	}
	return out
}
