package tui

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// noChange says why there is nothing to push out. Where what is lined up is itself the matter, it must not read as if
// all were well.
func (m *Model) noChange(w int) string {
	a := m.applicator()
	up := m.book.Plumbing().LineUp
	switch {
	case a != nil && !a.Sprays():
		return m.g.clean(a.Name) + " spreads dry product: the hose is no matter of it"
	case m.ownTankOf(a) != nil:
		return m.g.clean(a.Name) + " sprays from its own tank"
	case m.got.visiting && len(m.got.left) == 0:
		return m.fitting(w, "seen for the next lawn when you leave this one", "for the next lawn: leave first")
	case m.got.lawn == "" || m.got.err != nil:
		return "no lawn ahead to change for"
	case len(up.Supply) != 1:
		return m.fitting(w, "not one compartment feeds the pump", "no one supply is open")
	}
	for _, f := range m.got.report.Findings {
		if f.Weight >= check.Ask && f.Reason == "" && f.Part == check.PartCompartment {
			return m.fitting(
				w, fmt.Sprintf("a push does not help: the %s is about %c itself%s", f.Weight, up.Supply[0], m.turnsTo()),
				fmt.Sprintf("a push does not help: the %s is about %c itself", f.Weight, up.Supply[0]),
				fmt.Sprintf("no help: the %s is about %c", f.Weight, up.Supply[0]),
			)
		}
	}
	as := fmt.Sprintf("the nozzle gives %c, as lined up", up.Supply[0])
	return m.fitting(w, as+m.turnsTo(), as)
}

// turnsTo says where the figures of a change stand that the next act begins.
func (m *Model) turnsTo() string {
	for _, f := range m.got.next.Facts {
		if up, ok := f.(*core.LinedUp); ok && len(up.Supply) == 1 && string(up.Supply) != string(m.book.Plumbing().LineUp.Supply) {
			return fmt.Sprintf("; t looks at %c", up.Supply[0])
		}
	}
	return ""
}

// fitting is the first text that fits, else the last one.
func (m *Model) fitting(w int, texts ...string) string {
	for _, s := range texts[:len(texts)-1] {
		if cells(s) <= w {
			return s
		}
	}
	return texts[len(texts)-1]
}

func tintWords(t *core.TintSeen) string {
	for _, m := range []struct {
		words string
		v     core.Maybe[measure.Volume]
		s     core.Maybe[float64]
	}{{"tint seen", t.Volume, t.Seconds}, {"half seen", t.Half, t.HalfSeconds}, {"all seen", t.Full, t.FullSeconds}} {
		switch {
		case m.s.Known:
			return m.words + " at " + wholeWords(m.s.V) + " s"
		case m.v.Known:
			return m.words + " at " + m.v.V.Text() + " gal"
		}
	}
	return "tint seen"
}
