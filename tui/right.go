package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// right is how an entry is put right: what the line asks, what was logged as it would be typed, and what the answer
// puts in the place of it.
type right struct {
	prompt, was, hint string
	read              func(said string) (core.Fact, error)
}

// corrects tells whether a line of text can put an entry right.
func (m *Model) corrects(w core.Written) bool {
	_, ok := m.rightOf(w.Stands, w.At)
	return ok
}

// rightOf is how what stands by an entry is put right.
func (m *Model) rightOf(f core.Fact, at core.Moment) (right, bool) {
	if r, ok := m.rightDry(f); ok {
		return r, true
	}
	switch f := f.(type) {
	case *core.Sprayed:
		return m.rightSprayed(f), true
	case *core.Weather:
		return right{"the weather was", weatherSaid(f), weatherHint, readWeather}, true
	case *core.VisitBegun:
		was := f.Arrived
		if was == "" {
			was = at.Clock()
		}
		return right{"arrived at " + f.Lawn + " at", was, "9:35", func(said string) (core.Fact, error) {
			c := *f
			c.Arrived = strings.TrimSpace(said)
			return &c, nil
		}}, true
	case *core.VisitSkipped:
		return right{"skipped " + f.Lawn + " because", f.Reason, "why", func(said string) (core.Fact, error) {
			return &core.VisitSkipped{Lawn: f.Lawn, Reason: said}, nil
		}}, true
	case *core.CarriedOver:
		return right{"carried over because", f.Reason, "why", func(said string) (core.Fact, error) {
			c := *f
			c.Reason = said
			return &c, nil
		}}, true
	case *core.Noted:
		return right{"note on " + f.Lawn, f.Text, "what is to be kept", func(said string) (core.Fact, error) {
			return &core.Noted{Lawn: f.Lawn, Text: said}, nil
		}}, true
	}
	return m.rightMove(f)
}

// rightMove is how a move of liquid, or a measurement of it, is put right: by its gallons.
func (m *Model) rightMove(f core.Fact) (right, bool) {
	gallons := func(prompt string, was measure.Volume, with func(v measure.Volume) core.Fact) (right, bool) {
		return right{prompt, was.Text() + " gal", "gallons, or with another unit: 41 qt", func(said string) (core.Fact, error) {
			v, err := measure.ReadVolume(said, "gal")
			if err != nil {
				return nil, err
			}
			return with(v), nil
		}}, true
	}
	switch f := f.(type) {
	case *core.PushedBack:
		return gallons("pushed back into "+string(f.Into), f.Volume, func(v measure.Volume) core.Fact {
			return &core.PushedBack{Into: f.Into, Volume: v}
		})
	case *core.Filled:
		return gallons("filled "+f.Applicator+" with", f.Volume, func(v measure.Volume) core.Fact {
			return &core.Filled{Applicator: f.Applicator, Volume: v}
		})
	case *core.Loaded:
		return gallons("loaded into "+f.Into, f.Volume, func(v measure.Volume) core.Fact { return m.book.LoadOf(f, v) })
	case *core.GaugeRead:
		was := f.Volume.V.Text() + " gal"
		if f.Mark != "" {
			was = "mark " + f.Mark
		}
		return right{"the gauge of " + string(f.Compartment) + " read", was, "62 gal, or mark 9", func(said string) (core.Fact, error) {
			return m.readReading(f.Compartment, said)
		}}, true
	case *core.Rinsed:
		return gallons("rinsed "+string(f.Compartment)+" with", f.Water, func(v measure.Volume) core.Fact {
			c := *f
			c.Water = v
			return &c
		})
	case *core.Dumped:
		return gallons("ran out", f.Volume.V, func(v measure.Volume) core.Fact {
			c := *f
			c.Volume = core.Known(v)
			return &c
		})
	}
	return right{}, false
}

func (m *Model) rightSprayed(f *core.Sprayed) right {
	was := f.Volume.V.Text() + " gal"
	if f.By == core.ByArea {
		was = f.Area.V.Text() + " sqft"
	}
	return right{"sprayed on " + joined(f.Zones), was, "11.5 gal, or 6200 sqft, or gauge 151 140", func(said string) (core.Fact, error) {
		c := core.Sprayed{Lawn: f.Lawn, Zones: f.Zones, Applicator: f.Applicator}
		got, err := readLaid(c, said)
		if g, ok := got.(*core.Sprayed); ok && !g.Area.Known {
			g.Area = f.Area
		}
		return got, err
	}}
}

// openRight asks what the entry chosen should have said.
func (m *Model) openRight() tea.Cmd {
	w, ok := m.written(m.chosenEntry())
	if !ok {
		return nil
	}
	r, ok := m.rightOf(w.Stands, w.At)
	if !ok {
		return nil
	}
	m.openLine(textLine{
		prompt: r.prompt, was: r.was, hint: r.hint,
		read: func(_ *Model, said string) ([]core.Fact, error) {
			if strings.TrimSpace(said) == r.was {
				return nil, slip("That is what was logged.", "Type what it should have said, or press Esc.")
			}
			f, err := r.read(said)
			if err != nil {
				return nil, err
			}
			return onlyFact(&core.Struck{Of: int64(w.Seq), Reason: "put right", Instead: f}, nil)
		},
	})
	return nil
}
