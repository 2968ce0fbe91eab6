package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/say"
)

// pailWord is the place outside that is offered first.
const pailWord = "pail"

// plumbingOffer is what Enter does with a row.
func (m *Model) plumbingOffer(id string) (offer, small string) {
	up := m.book.Plumbing().LineUp
	const shown = "what it does is shown before it is logged"
	switch {
	case id == ranOn:
		return "log how long the pump ran so: " + lineUpWords(up), shown
	case id == ranOff:
		return "log how long it stood so with the pump off", shown
	case id == strainers:
		return "strainers opened and cleaned", "a note may be typed with it"
	case m.tankOf(id) != 0:
		return "compartment " + id + " emptied, or part of it: where to", "i logs a rinse; " + shown
	case id != "":
		return say.Place(fluid.Place(id)) + " drained or blown out: where to", shown
	}
	return "", ""
}

func (m *Model) pickPlumbing(id string) tea.Cmd {
	switch {
	case m.busy():
	case id == ranOn:
		m.openRan(core.PumpOn)
	case id == ranOff:
		m.openRan(core.PumpOff)
	case id == strainers:
		m.openStrainers()
	default:
		m.openRunOut(m.placeChosen())
	}
	return nil
}

// tankOf is the letter of a row that is a compartment's, else 0.
func (m *Model) tankOf(id string) byte {
	if len(id) == 1 && m.isCompartment(id[0]) {
		return id[0]
	}
	return 0
}

// tankChosen is the compartment of the row chosen, else the one in use, else the first.
func (m *Model) tankChosen() byte {
	switch l := m.tankOf(m.chosen()); {
	case l != 0:
		return l
	case m.inUse() != 0:
		return m.inUse()
	}
	return m.book.Rig().Compartments[0].Letter
}

// placeChosen is the place of the row chosen; where that is none, the first hose.
func (m *Model) placeChosen() fluid.Place {
	id := m.chosen()
	if l := m.tankOf(id); l != 0 {
		return fluid.CompartmentPlace(l)
	}
	switch kind, _ := fluid.Place(id).Split(); kind {
	case "hose", string(fluid.CellPlace), string(fluid.ReturnPlace):
		return fluid.Place(id)
	}
	if all := m.book.Plumbing().Hoses; len(all) > 0 {
		return fluid.HosePlace(all[0].Name)
	}
	return fluid.CompartmentPlace(m.tankChosen())
}

// openRan asks how long the valves stood so with the gun shut.
func (m *Model) openRan(pump string) {
	m.openLine(textLine{
		prompt: "pump " + pump + ", gun shut, for", tells: true,
		hint: "45 s, 2 min or 1:30; off 10 min: it stood so with the pump off; on 45 s",
		read: func(m *Model, said string) ([]core.Fact, error) { return onlyFact(readRan(said, pump)) },
	})
}

// readRan reads a time, and before it whether the pump was on.
func readRan(said, pump string) (core.Fact, error) {
	for _, w := range []string{core.PumpOn, core.PumpOff} {
		if rest, ok := cutWord(strings.TrimSpace(said), w); ok {
			pump, said = w, rest
		}
	}
	s, err := measure.ReadSeconds(said)
	if err != nil {
		return nil, err
	}
	return &core.Ran{Seconds: core.Known(s), Pump: pump}, nil
}

// openRunOut asks where what stood in a place of the rig ran to, and how much of it if not all.
func (m *Model) openRunOut(from fluid.Place) {
	m.openLine(textLine{
		prompt: say.Place(from) + " ran out into", tells: true, choices: m.outPlaces(from),
		hint: "all of it, or gallons first: 2 gal pail; any name is a place outside",
		read: func(m *Model, said string) ([]core.Fact, error) {
			v, to, err := m.readOut(said)
			return onlyFact(&core.Dumped{From: string(from), Volume: v, To: to}, err)
		},
	})
}

// outPlaces are the places that are offered: a pail, then the compartments.
func (m *Model) outPlaces(from fluid.Place) []string {
	out := []string{pailWord}
	for _, c := range m.book.Rig().Compartments {
		if fluid.CompartmentPlace(c.Letter) != from {
			out = append(out, "compartment "+string(rune(c.Letter)))
		}
	}
	return out
}

// readOut reads gallons, if any are typed, then a place: a compartment, or a name outside the rig.
func (m *Model) readOut(said string) (v core.Maybe[measure.Volume], to string, err error) {
	gal, rest := leadingVolume(said)
	if gal > 0 {
		v = core.Known(gal)
	}
	to, err = m.readPlace(rest)
	return v, to, err
}

// readPlace reads a compartment, by its letter, or any name, which is a place outside.
func (m *Model) readPlace(said string) (string, error) {
	said = strings.TrimSpace(said)
	for _, w := range []string{"into", "to", "compartment"} {
		if rest, ok := cutWord(said, w); ok {
			said = rest
		}
	}
	switch {
	case said == "":
		return "", slip("Where it went is not said.", "Type a compartment's letter, or a place outside, such as "+pailWord+".")
	case len(said) == 1:
		l, err := m.readLetter(strings.ToLower(said))
		return string(fluid.CompartmentPlace(l)), err
	}
	if _, figure := measure.ReadFigure(said); figure {
		return "", slip(fmt.Sprintf("%q is no place.", said), "Type gallons with their unit, then where it went: 2 gal "+pailWord+".")
	}
	return string(fluid.WastePlace(said)), nil
}

// openPushOut asks what was pushed through the hose, and where the nozzle was held.
func (m *Model) openPushOut() {
	m.openLine(textLine{
		prompt: "pushed through the hose", tells: true, hint: "2.6 pail, or 62 s pail; a letter says into which compartment: 2.6 b",
		read: func(m *Model, said string) ([]core.Fact, error) { return onlyFact(m.readPush(said)) },
	})
}

// openRinse asks how much water a compartment was rinsed with, and where that ran.
func (m *Model) openRinse(l byte) {
	m.openLine(textLine{
		prompt: fmt.Sprintf("rinsed %c with", l), tells: true, hint: "5 gal to pail; without a place the water stays in it",
		read: func(m *Model, said string) ([]core.Fact, error) { return onlyFact(m.readRinse(l, said)) },
	})
}

func (m *Model) readRinse(l byte, said string) (core.Fact, error) {
	water, rest := leadingVolume(said)
	if water == 0 {
		_, err := measure.ReadVolume(said, "gal")
		if err == nil {
			err = slip("Nothing would be rinsed with 0 gal.", "Type the gallons of water: 5 gal to pail.")
		}
		return nil, err
	}
	f := &core.Rinsed{Compartment: l, Water: water}
	if rest == "" {
		return f, nil
	}
	to, err := m.readPlace(rest)
	f.To = to
	return f, err
}

// openStrainers logs that the strainers were opened; Enter alone is enough.
func (m *Model) openStrainers() {
	m.openLine(textLine{
		prompt: "strainers opened and cleaned", hint: "Enter logs it; a note if you like. They are off the list once what they held is rinsed three times too",
		read: func(_ *Model, said string) ([]core.Fact, error) {
			return []core.Fact{&core.Cleaned{What: core.Strainers, Text: strings.TrimSpace(said)}}, nil
		},
	})
}
