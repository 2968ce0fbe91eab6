package yard

import (
	"strings"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// DayPin holds a visit to its place in the operator's order, or lets it begin only between two times of the day.
type DayPin struct {
	Lawn     string
	From, To core.Maybe[float64] // minutes of the day; neither: it keeps its place
}

// PinExample is how a pin is typed.
const PinExample = "418 Alder Court, or 418 Alder Court 9:00 11:30"

// ReadPin reads a lawn, alone or with one time of day or two: from when, and until when, its visit may begin. Of the name the
// beginning is enough where no other lawn of the book begins so.
func ReadPin(b *core.Book, said string) (DayPin, error) {
	words := strings.Fields(said)
	var times []float64
	for len(words) > 0 && len(times) < 2 {
		m, ok := minuteTyped(words[len(words)-1])
		if !ok {
			break
		}
		times, words = append([]float64{m}, times...), words[:len(words)-1]
	}
	name, err := lawnTyped(b, strings.Join(words, " "))
	if err != nil {
		return DayPin{}, err
	}
	p := DayPin{Lawn: name}
	if len(times) > 0 {
		p.From = core.Known(times[0])
	}
	if len(times) > 1 {
		p.To = core.Known(times[1])
		if times[1] < times[0] {
			return DayPin{}, measure.Troublef("Type the earlier time first.", "%s would have to begin between %s and an earlier time.", name, clockOf(times[0]))
		}
	}
	return p, nil
}

func minuteTyped(s string) (float64, bool) {
	t, err := time.Parse("15:04", s)
	return float64(60*t.Hour() + t.Minute()), err == nil
}

func lawnTyped(b *core.Book, said string) (string, error) {
	if said == "" {
		return "", measure.Troublef("Type a lawn, as in: "+PinExample+".", "No lawn is named.")
	}
	var begin []string
	for _, l := range b.Lawns() {
		if strings.EqualFold(l.LawnName, said) {
			return l.LawnName, nil
		}
		if strings.HasPrefix(strings.ToLower(l.LawnName), strings.ToLower(said)) {
			begin = append(begin, l.LawnName)
		}
	}
	switch len(begin) {
	case 0:
		return "", measure.Troublef("Write its name as it stands in the book.", "There is no lawn %q in the book.", said)
	case 1:
		return begin[0], nil
	}
	return "", measure.Troublef("Type more of the name.", "%d lawns begin with %q.", len(begin), said)
}

// Pin puts a pin to others. One for the same lawn takes its place; the same name alone a second time takes the pin away.
func Pin(pins []DayPin, p DayPin) []DayPin {
	var out []DayPin
	had := false
	for _, o := range pins {
		if o.Lawn != p.Lawn {
			out = append(out, o)
			continue
		}
		had = true
	}
	if had && !p.From.Known {
		return out
	}
	return append(out, p)
}

// Says is a pin in words.
func (p DayPin) Says() string {
	switch {
	case p.To.Known:
		return p.Lawn + " begins from " + clockOf(p.From.V) + " to " + clockOf(p.To.V)
	case p.From.Known:
		return p.Lawn + " begins at " + clockOf(p.From.V) + " or later"
	}
	return p.Lawn + " keeps its place"
}

// pinOf is that of a lawn.
func (q DayAsk) pinOf(lawn string) (DayPin, bool) {
	for _, p := range q.Pins {
		if p.Lawn == lawn {
			return p, true
		}
	}
	return DayPin{}, false
}
