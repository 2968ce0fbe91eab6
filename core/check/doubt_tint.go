package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// doubtTint asks about a tint outside of the bounds within which it is looked for, about one where none is to be seen,
// and about a change that lies too far off to be learned from. What was pushed before it was logged has moved the front:
// then it is measured against the hose alone.
func doubtTint(b *core.Book, at core.Moment, f *core.TintSeen) (words, do string, doubtful bool) {
	if f.Missed != "" {
		return "", "", false
	}
	if sds, most, odd := b.OddTint(f); odd {
		l := b.Learned(f.Hose)
		return fmt.Sprintf("That is %s standard deviations from what is known of the hose, %s, and of the cell, %s; more than %s are odd.",
				measure.Multiple(sds), giveOrTake(l.Hose, l.HoseSD), giveOrTake(l.Cell, l.CellSD), measure.Multiple(most)),
			"Look at the figure, and at the valves; if it is right it is kept, and nothing is learned from it.", true
	}
	if f.Direction == core.BetweenAlike {
		return "No tint tells them apart, by the rig: there is none to be seen.", "Look at the valves, and at the tints of the rig; book it if it is right.", true
	}
	s, err := look(b, likelyNow(b, at))
	if err != nil || s.tank != nil {
		return "", "", false
	}
	hose := s.with.Hose
	if f.Hose != "" {
		hose = f.Hose
	}
	h := b.Plumbing().Hose(hose)
	seen, known := seenAt(f, s.with.Flow)
	if h == nil || !known || f.Direction == core.TowardsClear {
		return "", "", false
	}
	from, by := s.tintFrom(h.Size, h), s.tintBy(h)
	if c := s.toClean(); c != nil && !s.pushedSince() {
		from = min(from, c.TintFrom)
	}
	if seen >= from && seen <= by {
		return "", "", false
	}
	return fmt.Sprintf("The tint at %s is not where it is looked for: %s to %s.", gal(seen), from.Text(), gal(by)),
		"Look at the figure, and at the valves; book it if it is right.", true
}

// seenAt is how much had gone when the first of the colour was seen; false where that was not timed.
func seenAt(f *core.TintSeen, flow core.Maybe[measure.Flow]) (measure.Volume, bool) {
	switch {
	case f.Volume.Known:
		return f.Volume.V, true
	case f.Seconds.Known && flow.Known:
		return flow.V.Over(f.Seconds.V), true
	}
	return 0, false
}

func giveOrTake(v, sd measure.Volume) string { return gal(v) + " ± " + sd.Text() }
