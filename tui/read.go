package tui

import (
	"sort"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

func blank(s string) bool { return strings.TrimSpace(s) == "" }

// readAmount reads what was sprayed: zones, if any are named, then gallons, an area or two gauge readings.
func (m *Model) readAmount(said string) (core.Fact, error) {
	v := m.book.Day().Visiting()
	a := m.applicator()
	if v == nil || a == nil {
		return nil, slip("No visit is begun.", "Arrive first.")
	}
	zones, rest := readZones(said, m.book.Lawn(v.Lawn).ZoneNames())
	if len(zones) == 0 {
		zones = m.got.left
	}
	f, err := readLaid(core.Sprayed{Lawn: v.Lawn, Zones: zones, Applicator: a.Name}, rest)
	if err != nil && a.Spreads() {
		if dry, wrong := m.readSpread(said); wrong == nil {
			return dry, nil
		}
	}
	return f, err
}

// readLaid reads how much a spraying laid: gallons, an area or two gauge readings.
func readLaid(laid core.Sprayed, rest string) (core.Fact, error) {
	f := &laid
	if figures, gauge := cutWord(rest, "gauge"); gauge {
		f.By = core.ByGauge
		two := strings.Fields(figures)
		if len(two) != 2 {
			return nil, slip("A gauge needs two readings.", "Type before and after: gauge 151 140.")
		}
		before, err := measure.ReadVolume(two[0], "gal")
		if err != nil {
			return nil, err
		}
		after, err := measure.ReadVolume(two[1], "gal")
		f.Before, f.After = core.Known(before), core.Known(after)
		return f, err
	}
	vol, err := measure.ReadVolume(rest, "gal")
	if err == nil {
		f.By, f.Volume = core.ByGallons, core.Known(vol)
		return f, nil
	}
	if area, wrong := measure.ReadArea(rest, "sqft"); wrong == nil {
		f.By, f.Area = core.ByArea, core.Known(area)
		return f, nil
	}
	return nil, err
}

// readZones takes the names of zones from the front, longest first, so that "front" does not hide "front strip".
func readZones(said string, names []string) (zones []string, rest string) {
	byLength := append([]string(nil), names...)
	sort.SliceStable(byLength, func(i, j int) bool { return len(byLength[i]) > len(byLength[j]) })
	rest = strings.TrimLeft(said, " ,+")
next:
	for {
		for _, n := range byLength {
			if after, ok := cutWord(rest, n); ok {
				zones = append(zones, n)
				rest = strings.TrimLeft(after, " ,+")
				continue next
			}
		}
		return zones, strings.TrimSpace(rest)
	}
}

// cutWord takes a word or a name from the front, whatever its case.
func cutWord(s, word string) (rest string, ok bool) {
	if len(s) < len(word) || !strings.EqualFold(s[:len(word)], word) {
		return s, false
	}
	rest = s[len(word):]
	if rest != "" && !strings.ContainsRune(" ,+", rune(rest[0])) {
		return s, false
	}
	return strings.TrimSpace(rest), true
}

// cutLastWord takes a word or a name from the end, whatever its case.
func cutLastWord(s, word string) (rest string, ok bool) {
	n := len(s) - len(word)
	if n < 1 || s[n-1] != ' ' || !strings.EqualFold(s[n:], word) {
		return s, false
	}
	return strings.TrimSpace(s[:n]), true
}

// inUse is the compartment that alone feeds the pump, 0 if none or several do.
func (m *Model) inUse() byte {
	if s := m.book.Plumbing().LineUp.Supply; len(s) == 1 {
		return s[0]
	}
	return 0
}

// pushInto is where a push goes if nothing is said: where the changeover puts it, else into the compartment in
// use, which only goes round.
func (m *Model) pushInto() byte {
	if c := m.got.change; c != nil && c.Into != 0 {
		return c.Into
	}
	return m.inUse()
}

// readPush reads a push-back, a fill of an applicator's tank, or when the tint was seen.
func (m *Model) readPush(said string) (core.Fact, error) {
	rest := strings.TrimSpace(said)
	if when, tint := cutWord(rest, "tint"); tint {
		return m.readTint(when)
	}
	for _, a := range m.book.Rig().Applicators {
		if amount, ok := cutLastWord(rest, a.Name); ok {
			if load, is, err := m.readHopper(&a, amount); is {
				return load, err
			}
			v, err := m.readThrough(amount, a.Hose)
			return &core.Filled{Applicator: a.Name, Volume: v}, err
		}
	}
	if amount, ok := cutLastWord(rest, pailWord); ok {
		v, err := m.readThrough(amount, m.hoseInHand())
		return &core.PushedBack{To: string(fluid.WastePlace(pailWord)), Volume: v, Hose: m.hoseInHand()}, err
	}
	into := m.pushInto()
	if n := len(rest); n > 2 && rest[n-2] == ' ' && m.book.Plumbing().Compartment(rest[n-1]) != nil {
		into, rest = rest[n-1], strings.TrimSpace(rest[:n-2])
	}
	if into == 0 {
		return nil, slip("Into which compartment is not said.", "Type its letter behind the gallons: 2.6 b.")
	}
	v, err := m.readThrough(rest, m.hoseInHand())
	return &core.PushedBack{Into: into, Volume: v, Hose: m.hoseInHand()}, err
}

// readThrough reads gallons, or seconds at the flow of what hangs on the hose.
func (m *Model) readThrough(said, hose string) (measure.Volume, error) {
	v, err := measure.ReadVolume(said, "gal")
	if err == nil {
		return v, nil
	}
	s, wrong := measure.ReadSeconds(said)
	if wrong != nil {
		return 0, err
	}
	for _, a := range m.book.Rig().Applicators {
		if a.Flow.Known && (hose == "" || a.Hose == hose) {
			return a.Flow.V.Over(s), nil
		}
	}
	return 0, slip("The flow of the gun is not in the book, so seconds cannot be turned into gallons.", "Type gallons.")
}

// hoseInHand is the hose that the applicator hangs on; empty where the rig has one only.
func (m *Model) hoseInHand() string {
	if a := m.sprayer(); a != nil && len(m.book.Rig().Hoses) > 1 {
		return a.Hose
	}
	return ""
}

// readTint reads when the tint came, and behind it when half and full colour did: "48 s half 55 s full 70 s".
func (m *Model) readTint(said string) (core.Fact, error) {
	f := &core.TintSeen{Hose: m.hoseInHand()}
	said, full, toldFull := strings.Cut(said, "full ")
	said, half, toldHalf := strings.Cut(said, "half ")
	var err error
	if f.Volume, f.Seconds, err = readMoment(said); err != nil {
		return nil, err
	}
	if toldHalf {
		if f.Half, f.HalfSeconds, err = readMoment(half); err != nil {
			return nil, err
		}
	}
	if toldFull {
		if f.Full, f.FullSeconds, err = readMoment(full); err != nil {
			return nil, err
		}
	}
	return f, nil
}

// readMoment reads gallons pushed, or seconds.
func readMoment(said string) (v core.Maybe[measure.Volume], s core.Maybe[float64], err error) {
	gal, err := measure.ReadVolume(said, "gal")
	if err == nil {
		return core.Known(gal), s, nil
	}
	sec, wrong := measure.ReadSeconds(said)
	if wrong != nil {
		return v, s, slip(err.Error(), "Type tint 48 s, or tint 2.1 for gallons; tint 48 s half 55 s full 70 s.")
	}
	return v, core.Known(sec), nil
}

// readGauge reads a letter and gallons, or gallons alone for the compartment in use.
func (m *Model) readGauge(said string) (core.Fact, error) {
	rest := strings.TrimSpace(said)
	l := m.inUse()
	if len(rest) > 1 && rest[1] == ' ' && m.book.Plumbing().Compartment(rest[0]) != nil {
		l, rest = rest[0], strings.TrimSpace(rest[1:])
	}
	if l == 0 {
		return nil, slip("Which compartment is not said.", "Type its letter first: b 62.")
	}
	return m.readReading(l, rest)
}
