package tui

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// The three figures of a changeover: when the colour comes, when it is clean enough, and what is left of the old liquid when
// one stops there.

// fromTo is a span of time, or of gallons where the flow is not known.
func fromTo(a, b measure.Volume, as, bs core.Maybe[float64]) string {
	if as.Known && bs.Known {
		return wholeWords(as.V) + " to " + wholeWords(bs.V) + " s"
	}
	return a.Text() + " to " + b.Text() + " gal"
}

// at is when, in seconds and gallons.
func at(v measure.Volume, s core.Maybe[float64]) string {
	if s.Known {
		return wholeWords(s.V) + " s " + v.Text() + " gal"
	}
	return v.Text() + " gal"
}

// shortly is when, in seconds; in gallons where the flow is not known.
func shortly(v measure.Volume, s core.Maybe[float64]) string {
	if s.Known {
		return wholeWords(s.V) + " s"
	}
	return v.Text() + " gal"
}

// tintShort is the first figure in few words.
func tintShort(c *check.Changeover) string {
	switch c.Tint {
	case core.BetweenAlike:
		return "no tint, new at " + shortly(c.Arrives, c.ArrivesS)
	case core.TowardsClear:
		if c.TintGone == 0 {
			return "colour gone"
		}
		return "colour fades " + shortly(c.Arrives, c.ArrivesS) + ", gone " + shortly(c.TintGone, c.TintGoneS)
	}
	return "tint " + fromTo(c.TintFrom, c.TintBy, c.TintFromS, c.TintByS)
}

// tintShortest is the first figure where there is little room.
func tintShortest(c *check.Changeover) string {
	if c.Tint == core.TowardsClear && c.TintGone > 0 {
		return "tint fades " + fromTo(c.Arrives, c.TintGone, c.ArrivesS, c.TintGoneS)
	}
	return tintShort(c)
}

// tintWhole is the first figure with all that it rests on.
func tintWhole(c *check.Changeover) string {
	words := "new liquid at " + at(c.Arrives, c.ArrivesS) + ", half at " + at(c.Half, c.HalfS) + "."
	switch c.Tint {
	case core.BetweenAlike:
		return "None tells them apart: go by gallons; " + words
	case core.TowardsClear:
		if c.TintGone == 0 {
			return "The colour is gone already; " + words
		}
		return "The colour fades from " + at(c.Arrives, c.ArrivesS) + ", the last of it goes at " + at(c.TintGone, c.TintGoneS) +
			" and that is late; half new at " + at(c.Half, c.HalfS) + ". No change by " + shortly(c.TintBy, c.TintByS) + ": look at the valves."
	}
	words = "Seen from " + fromTo(c.TintFrom, c.TintBy, c.TintFromS, c.TintByS) + ", early and not clean; " + words
	if c.Tint == "" {
		words += " The rig does not say the tints: what is timed is not learned."
	}
	return words
}

// cleanWhole is the second figure: with its band, what it rests on and what decided it.
func (m *Model) cleanWhole(c *check.Changeover) string {
	words := at(c.Clean, c.CleanS) + " " + m.g.plusMinus() + c.Band.Text() + ", " + c.Margins
	if c.Advised > c.Clean {
		words += "; " + m.untimed(c.Hose) + ", so push to " + at(c.PushBack, c.AdvisedS)
	}
	words += "."
	if c.DecidedBy != "" {
		words += " " + m.g.clean(c.DecidedBy) + " decides"
		if c.Why != "" {
			words += ": " + m.g.clean(c.Why)
		}
		words += "."
	}
	return words
}

// untimed says what of a hose no changeover has shown yet.
func (m *Model) untimed(hose string) string {
	if m.book.Learned(hose).FromRig {
		return "not timed yet"
	}
	return "half and full colour not timed yet"
}

// leftWhole is the third figure.
func leftWhole(c *check.Changeover) string {
	words := check.LittleText(c.LeftAt(c.PushBack)) + " of the old when you stop at " + shortly(c.PushBack, c.AdvisedS)
	if c.Advised > c.Clean {
		words += ", " + check.LittleText(c.Left) + " at " + shortly(c.Clean, c.CleanS)
	}
	return words + "; " + c.NewLost.Text() + " gal of new is out by then."
}

// figureRows are the three figures, and what they cannot be relied on for.
func (m *Model) figureRows(c *check.Changeover) []row {
	out := m.hanging("tint   ", tintWhole(c))
	out = append(out, m.hanging("clean  ", m.cleanWhole(c))...)
	out = append(out, m.hanging("left   ", leftWhole(c))...)
	if c.FlowLow || c.Laminar {
		words := "The flow of the gun is low: the hose is reckoned without mixing across it, and the middle runs ahead."
		if c.MinFlow.Known {
			words = "The flow of the gun is below " + measure.Multiple(c.MinFlow.V.GPM()) + " gpm, from where the liquid in this hose surely mixes across it: reckoned as if it did not."
		}
		out = append(out, m.hanging("flow   ", words)...)
	}
	return out
}

// change says what it takes until the nozzle gives what is lined up, clean enough for the lawn ahead. When it is
// clean is what counts: the rest stands there if it has room.
func (m *Model) change(w int) line {
	const label = " change "
	l := line{left: []span{{theme.Dim, label}}}
	if t := m.turn; t.plan != nil && t.phase > phaseReady {
		l.left = append(l.left, span{theme.Strong, m.countingWords(w - len(label) - 1)})
		return l
	}
	if t := m.book.Tint(); t != nil {
		l.right = []span{{theme.Strong, "  " + tintWords(t) + " "}}
	}
	room := w - len(label) - spanCells(l.right) - 1
	c := m.got.change
	if c == nil {
		l.left = append(l.left, span{theme.Base, m.noChange(room)})
		return l
	}
	clean, band := "clean "+at(c.Clean, c.CleanS), " "+m.g.plusMinus()+c.Band.Text()
	tint, short, left := tintShort(c)+"  ", tintShortest(c)+"  ", "  left "+check.LittleText(c.LeftAt(c.PushBack))
	by := ""
	if c.DecidedBy != "" {
		by = " by " + m.g.clean(c.DecidedBy)
	}
	for _, f := range [][4]string{
		{tint, band, by + ", " + c.Margins, left},
		{short, band, by + ", " + c.Margins, left},
		{tint, band, by, left},
		{short, band, by, left},
		{tint, band, "", left},
		{short, band, "", left},
		{tint, band, "", ""},
		{short, band, "", ""},
		{short, "", "", ""},
		{"", "", "", ""},
	} {
		if cells(f[0])+cells(clean)+cells(f[1])+cells(f[2])+cells(f[3]) <= room || f[0] == "" {
			l.left = append(l.left, span{theme.Base, f[0]}, span{theme.Strong, clean + f[1]}, span{theme.Dim, f[2]}, span{theme.Base, f[3]})
			break
		}
	}
	return l
}

// countingWords say on the cab screen how far a changeover has come.
func (m *Model) countingWords(w int) string {
	t, p := &m.turn, m.progress()
	switch {
	case t.phase == phaseSweep:
		return m.fitting(w, fmt.Sprintf("bypass washes the cell, %s s until the return is turned", wholeWords(m.sweepLeft())), "bypass, "+wholeWords(m.sweepLeft())+" s")
	case t.phase == phaseDelay:
		return m.fitting(w, "trigger in "+wholeWords(t.began.Sub(m.at).Seconds())+" s")
	case t.phase == phaseStopped:
		return m.fitting(w, "stopped, drawn as it would be: what was pushed is not logged yet, t goes on", "stopped, not logged yet: t")
	case p.Stage == check.StageClean:
		return m.fitting(w, "CLEAN: let go of the trigger, t goes on; not logged yet", "CLEAN: let go, then t")
	}
	clean := "clean in " + wholeWords(p.ToGoS) + " s " + p.ToGo.Text() + " gal"
	tint := ""
	if p.ArrivesS > 0 {
		tint = m.comes() + " in " + wholeWords(p.ArrivesS) + " s   "
	}
	return m.fitting(w, tint+clean+"   into "+m.place(p)+"   drawn as it moves, not logged yet", tint+clean+"   into "+m.place(p)+"   not logged yet", tint+clean+"   into "+m.place(p), tint+clean, clean)
}

// comes is what is seen as the new liquid comes.
func (m *Model) comes() string {
	switch m.turn.plan.Tint {
	case core.BetweenAlike:
		return "new liquid"
	case core.TowardsClear:
		return "colour fades"
	}
	return "tint"
}

// place is where the push goes now.
func (m *Model) place(p check.Progress) string {
	if p.Into == 0 && p.To == "" {
		return "a can"
	}
	return check.Leg{Into: p.Into, To: p.To}.Place()
}
