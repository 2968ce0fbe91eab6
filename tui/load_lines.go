package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// waterWord is what a load without any product is called, where it is chosen or typed.
const waterWord = "water"

// fillWords begin the choice of all that still goes in.
const fillWords = "fill it up"

// loadLine asks what goes into a tank, and how much if that was not typed with it. Planned, it becomes a list to tick;
// else it is in already.
func (m *Model) loadLine(into string, planned bool) textLine {
	l := textLine{
		prompt: "load into " + into, hint: "or 150 gal X for gun; 40 gal water; 5 gal Example 3 oz",
		then: func(m *Model, said string) (*textLine, error) {
			f, err := m.readLoad(into, said)
			if err != nil || f.Volume > 0 {
				return nil, err
			}
			return m.volumeLine(f, planned), nil
		},
		read: func(m *Model, said string) ([]core.Fact, error) {
			f, err := m.readLoad(into, said)
			if err != nil {
				return nil, err
			}
			return loadFact(f, planned), nil
		},
	}
	for _, mix := range m.book.Mixes() {
		l.choices = append(l.choices, mix.MixName)
	}
	l.choices = append(l.choices, waterWord)
	return l
}

// volumeLine asks for the gallons of a load that is known otherwise.
func (m *Model) volumeLine(f *core.LoadPlanned, planned bool) *textLine {
	what := f.Mix
	if what == "" {
		what = waterWord
	}
	l := &textLine{
		prompt: "gallons of " + what + " into " + f.Into, hint: "or type gallons",
		read: func(m *Model, said string) ([]core.Fact, error) {
			c := *f
			if c.Volume = m.roomIn(f.Into); !strings.HasPrefix(said, fillWords) {
				v, err := measure.ReadVolume(said, "gal")
				if err != nil {
					return nil, err
				}
				c.Volume = v
			}
			return loadFact(&c, planned), nil
		},
	}
	if room := m.roomIn(f.Into); room > 0 {
		l.choices = []string{fillWords + ": " + room.Text() + " gal"}
	}
	return l
}

func loadFact(f *core.LoadPlanned, planned bool) []core.Fact {
	if planned {
		return []core.Fact{f}
	}
	return []core.Fact{core.LoadedFrom(f)}
}

// roomIn is what still goes into a tank.
func (m *Model) roomIn(into string) measure.Volume {
	p := m.book.Plumbing()
	if len(into) == 1 {
		if c := p.Compartment(into[0]); c != nil {
			return c.Room()
		}
	}
	if t := p.Tank(into); t != nil {
		return t.Room()
	}
	return 0
}

// readLoad reads gallons, then a mix with the applicator it is made up for, water, or products with their amounts.
// Without gallons the volume is 0; without a mix it is more of what stands in the tank.
func (m *Model) readLoad(into, said string) (*core.LoadPlanned, error) {
	f := &core.LoadPlanned{Into: into}
	var rest string
	f.Volume, rest = leadingVolume(said)
	mixed, applicator := m.cutFor(rest)
	switch {
	case blank(said):
		return nil, slip("Nothing is typed.", "Type gallons and a mix, or the figure of a mix.")
	case strings.EqualFold(rest, waterWord):
		return f, nil
	case m.mixNamed(mixed) != "":
		f.Mix = m.mixNamed(mixed)
	case rest == "":
		if f.Mix = m.book.MixIn(into); m.book.Mix(f.Mix) == nil {
			return nil, slip(fmt.Sprintf("What the %s gal are is not said.", f.Volume.Text()), "Type a mix behind them, or water.")
		}
	default:
		return f, m.readLoadParts(f, rest)
	}
	f.For = m.madeUpFor(into, applicator)
	return f, nil
}

// madeUpFor is the applicator for whose delivery rate a load is: the one that is named, the one whose tank it is, else
// the first that draws through a hose.
func (m *Model) madeUpFor(into, named string) string {
	switch {
	case named != "":
		return named
	case m.book.Applicator(into) != nil:
		return into
	}
	return check.FirstApplicator(m.book)
}

// leadingVolume takes gallons from the front, 0 if there are none.
func leadingVolume(said string) (measure.Volume, string) {
	const longest = 3 // words of a figure with its unit: 1 1/2 gal
	words := strings.Fields(said)
	for n := min(longest, len(words)); n > 0; n-- {
		if v, err := measure.ReadVolume(strings.Join(words[:n], " "), "gal"); err == nil {
			return v, strings.Join(words[n:], " ")
		}
	}
	return 0, strings.Join(words, " ")
}

// cutFor takes "for gun" from the end.
func (m *Model) cutFor(said string) (rest, applicator string) {
	for _, a := range m.book.Rig().Applicators {
		if before, ok := cutLastWord(said, "for "+a.Name); ok {
			return before, a.Name
		}
	}
	return said, ""
}

// mixNamed is a mix whose name this is, whatever its case.
func (m *Model) mixNamed(said string) string {
	for _, mix := range m.book.Mixes() {
		if strings.EqualFold(mix.MixName, said) {
			return mix.MixName
		}
	}
	return ""
}

// readLoadParts reads products with their amounts: "Example Iron 3 oz + Example Warm 2 fl oz".
func (m *Model) readLoadParts(f *core.LoadPlanned, said string) error {
	for _, piece := range strings.Split(said, "+") {
		product, amount, err := m.readProduct(piece)
		if err != nil {
			return slip("\""+said+"\" is neither a mix of the book, nor water, nor products with their amounts.", "Type a mix, or as in: 5 gal Example 3 oz + Other 2 oz.")
		}
		form, unit := m.book.Product(product).Label.Form, "fl_oz"
		if form == measure.Dry {
			unit = "oz"
		}
		a, err := measure.ReadAmount(amount, unit, form)
		if err != nil {
			return err
		}
		f.Parts = append(f.Parts, core.LoadPart{Product: product, Amount: a})
	}
	return nil
}

// hopperLine asks what goes into a hopper, and how much if that was not typed with it. It is in at once.
func (m *Model) hopperLine(into string) textLine {
	l := textLine{
		prompt: "pour into the hopper of " + into, hint: "or 25 lb and the product",
		then: func(m *Model, said string) (*textLine, error) {
			w, what := leadingMass(said)
			if w > 0 {
				return nil, nil
			}
			f, err := m.book.HopperLoad(into, what, measure.Gram) // whether any of it may go in
			if err == nil {
				_, err = m.book.Prepare("", core.At(m.at), f)
			}
			return m.weightLine(into, what), err
		},
		read: func(m *Model, said string) ([]core.Fact, error) {
			w, what := leadingMass(said)
			f, err := m.book.HopperLoad(into, what, w)
			if err != nil {
				return nil, err
			}
			return []core.Fact{f}, nil
		},
	}
	for _, h := range m.book.Products() {
		if h.Now().Label.Form == measure.Dry {
			l.choices = append(l.choices, h.Name)
		}
	}
	return l
}

func (m *Model) weightLine(into, what string) *textLine {
	l := &textLine{
		prompt: "weight of " + what + " into " + into, hint: "or type pounds",
		read: func(m *Model, said string) ([]core.Fact, error) {
			w := measure.Mass(0)
			if h := m.book.Plumbing().Hopper(into); h != nil {
				w = h.Room()
			}
			if !strings.HasPrefix(said, fillWords) {
				var err error
				if w, err = measure.ReadMass(said, "lb"); err != nil {
					return nil, err
				}
			}
			f, err := m.book.HopperLoad(into, what, w)
			if err != nil {
				return nil, err
			}
			return []core.Fact{f}, nil
		},
	}
	if h := m.book.Plumbing().Hopper(into); h != nil && h.Room() > 0 {
		l.choices = []string{fillWords + ": " + measure.DryAmount(h.Room()).Text()}
	}
	return l
}

// leadingMass takes a weight from the front, 0 if there is none.
func leadingMass(said string) (measure.Mass, string) {
	const longest = 4 // 2 lb 4 oz
	words := strings.Fields(said)
	for n := min(longest, len(words)); n > 0; n-- {
		if w, err := measure.ReadMass(strings.Join(words[:n], " "), "lb"); err == nil {
			return w, strings.Join(words[n:], " ")
		}
	}
	return 0, strings.Join(words, " ")
}
