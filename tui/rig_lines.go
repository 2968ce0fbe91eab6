package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/setup"
)

// learnedCell is what pump, manifold and shared pipe hold, and how sure that is.
func (m *Model) learnedCell() string {
	l := m.book.Learned("")
	return l.Cell.Text() + " " + m.g.plusMinus() + l.CellSD.Text()
}

// hoseHolds is what a hose holds: as entered, or as its changeovers have shown.
func (m *Model) hoseHolds(h *core.RigHose) string {
	if l := m.book.Learned(h.Name); !l.FromRig {
		return l.Hose.Text()
	}
	return size(h.Volume)
}

// learnedHose says how sure the volume of a hose is, and from how many changeovers.
func (m *Model) learnedHose(h *core.RigHose) string {
	l := m.book.Learned(h.Name)
	words := m.g.plusMinus() + l.HoseSD.Text() + "  " + boreWords(*h)
	switch {
	case l.FromRig:
		words += ", as entered"
	case l.N == 1:
		words += ", by 1 changeover"
	default:
		words += fmt.Sprintf(", by %d changeovers", l.N)
	}
	if l.Odd > 0 {
		words += fmt.Sprintf(", %d odd", l.Odd)
	}
	return words
}

// nextHose is the hose after the one that an applicator hangs on; empty where the rig has one only.
func (m *Model) nextHose(applicator string) string {
	a := m.book.Applicator(applicator)
	if a == nil || a.Hose == "" || len(m.book.Rig().Hoses) < 2 {
		return ""
	}
	all := m.book.Rig().Hoses
	for i, h := range all {
		if h.Name == a.Hose {
			return all[(i+1)%len(all)].Name
		}
	}
	return all[0].Name
}

func (m *Model) canHangOnPage() bool {
	return !m.busy() && m.nextHose(m.applicatorChosen()) != ""
}

func (m *Model) hangOnPage() tea.Cmd {
	on := m.applicatorChosen()
	return m.enter(&core.Fitted{Applicator: on, Hose: m.nextHose(on)})
}

// hoseChosen is the hose of the row chosen, empty if that is none.
func (m *Model) hoseChosen() string {
	name, about, _ := strings.Cut(m.chosen(), "/")
	if name != setup.Hose {
		return ""
	}
	return about
}

// drawsThrough is the first applicator that draws through a hose.
func (m *Model) drawsThrough(hose string) string {
	if hose == "" {
		return ""
	}
	for _, n := range m.onHoses() {
		if m.book.Applicator(n).Hose == hose {
			return n
		}
	}
	return ""
}

// goToPressure opens the page of pressure for the hose that is chosen.
func (m *Model) goToPressure() tea.Cmd {
	on := m.drawsThrough(m.hoseChosen())
	cmd := m.goTo(pagePressure)
	m.subject.applicator = on
	return cmd
}

// plumbedWords are what the book has of the pump and of the pipes between it and the compartments.
func (m *Model) plumbedWords(r *core.Rig) string {
	var out []string
	if r.PumpFlow.Known {
		out = append(out, "pump "+r.PumpFlow.V.Text())
	}
	if r.PumpPSI.Known {
		out = append(out, wholeWords(r.PumpPSI.V)+" psi")
	}
	if r.Suction > 0 {
		out = append(out, "suction "+size(r.Suction)+" gal")
	}
	for _, d := range r.DeadLegs {
		out = append(out, d.Name+" "+size(d.Volume)+" gal")
	}
	if len(out) == 0 {
		return "pump flow not entered: no bypass is reckoned"
	}
	return m.g.clean(strings.Join(out, ", "))
}

// tankWords are tint and agitation of a compartment, as far as they are in the book.
func tankWords(c *core.RigCompartment) string {
	words := ""
	if c.Tint != "" {
		words = "  tint " + c.Tint
	}
	switch c.Agitation {
	case "":
	case core.NotAgitated:
		words += "  unstirred"
	default:
		words += "  " + c.Agitation
	}
	return words
}

// crossWords are what is known of the pipe between two compartments: with two supplies open they level out through it.
func crossWords(r *core.Rig) string {
	if !r.CrossBore.Known && !r.CrossLength.Known && !r.CrossLoss.Known {
		return "not entered: the settings stand for it"
	}
	return "its bore, length and fittings are entered"
}
