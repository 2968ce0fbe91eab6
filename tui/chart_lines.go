package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/setup"
)

// readMarked reads a mark at a volume, or a mark and the volume that it stands for: "8 at 55 gal".
func readMarked(l byte, at measure.Volume, said string) (core.Fact, error) {
	mark, other, told := strings.Cut(strings.TrimSpace(said), " at ")
	if told {
		v, err := measure.ReadVolume(other, "gal")
		if err != nil {
			return nil, err
		}
		at = v
	}
	if blank(mark) {
		return nil, slip("No mark is typed.", "Type what stands on the gauge, such as 8 or 1/2; "+nextWord+" leaves this volume out.")
	}
	return &core.Marked{Compartment: l, Mark: strings.TrimSpace(mark), Volume: core.Known(at)}, nil
}

// openShape asks for the shape of a tank; the chart that comes of it is shown, and logged after a yes.
func (m *Model) openShape(l byte) {
	m.openLine(textLine{
		prompt: fmt.Sprintf("shape of %c, inside", l),
		hint:   "obround 27 x 44 x 60 in, mark every 4 in; ellipse, lying, upright too; a moulded tank needs its own marks",
		read: func(m *Model, said string) ([]core.Fact, error) {
			r, words, err := m.readShape(l, said)
			if err == nil {
				m.line.after = question{facts: []core.Fact{r}, words: words}
			}
			return nil, err
		},
	})
}

// readShape makes the chart and says what it comes to; a chart that the book would refuse is an error.
func (m *Model) readShape(l byte, said string) (r *core.Rig, words string, err error) {
	set := m.book.RigCompartment(l)
	if set == nil {
		return nil, "", slip("The rig has no such compartment any more.", "Press Esc.")
	}
	shape, step, err := setup.ReadGauge(said)
	if err != nil {
		return nil, "", err
	}
	if step == 0 {
		return nil, "", slip("How far apart the marks stand is not said.", "Type it behind the shape: "+strings.TrimSpace(said)+", mark every 4 in.")
	}
	marks, unit, err := setup.MarksOf(shape, step, set.Capacity)
	if err != nil {
		return nil, "", err
	}
	if r = setup.WithChart(m.book, l, marks, unit); r == nil || len(marks) == 0 {
		return nil, "", slip("The shape has no mark below the capacity.", "Type marks that stand closer.")
	}
	if !m.busy() {
		if _, err = m.book.Prepare("", core.At(m.at), r); err != nil {
			return nil, "", err
		}
	}
	first, last := marks[0], marks[len(marks)-1]
	words = fmt.Sprintf("chart of %c: %d marks, %s %s at %s gal up to %s %s at %s gal", l, len(marks), first.Mark, unit, first.Volume.Text(), last.Mark, unit, last.Volume.Text())
	if len(set.Marks) > 0 {
		words += fmt.Sprintf(", in the place of the %d that it has", len(set.Marks))
	}
	return r, words, nil
}
