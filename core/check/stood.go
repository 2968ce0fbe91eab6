package check

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// PartReturn is the return line.
const PartReturn = "return_line"

// Stood is liquid that has not moved over a night, or for longer than the setting standing_h. First water and air are
// left out.
type Stood struct {
	Part   string // PartHose, PartCell, PartReturn, PartCompartment
	Name   string // of the hose, or the letter of the compartment
	Since  core.Moment
	Hours  float64
	Volume measure.Volume
	Of     []StoodOf // what it is, in a hose from the nozzle on
}

// StoodOf is a part of it that came from one place.
type StoodOf struct {
	From   string // a letter
	Mix    string
	Volume measure.Volume
}

// StoodSince lists what stands so: hoses first, then cell and return line, then the compartments, of which the time runs
// from the last load.
func StoodSince(b *core.Book, at core.Moment) []Stood {
	var out []Stood
	p := b.Plumbing()
	add := func(part, name string, m core.Moment, of []StoodOf) {
		s := Stood{Part: part, Name: name, Since: m, Hours: at.MinutesSince(m) / 60, Of: of}
		for _, o := range of {
			s.Volume += o.Volume
		}
		if s.Volume > 0 {
			out = append(out, s)
		}
	}
	for i := range p.Hoses {
		if m, ok := b.HoseMovedAt(p.Hoses[i].Name); ok && isOld(b, m, at) {
			add(PartHose, p.Hoses[i].Name, m, parcelsOf(b, &p.Hoses[i]))
		}
	}
	if m, ok := b.CellMovedAt(); ok && isOld(b, m, at) {
		add(PartCell, "", m, originsOf(b, p.Cell.Liquid))
		add(PartReturn, "", m, originsOf(b, p.Return.Liquid))
	}
	for i := range p.Compartments {
		c := &p.Compartments[i]
		name := string(c.Letter)
		if m, ok := b.LoadedAt(c.Letter); ok && isOld(b, m, at) && c.Drawable() > 0 && len(mixedIn(b, c.Liquid)) > 0 {
			add(PartCompartment, name, m, []StoodOf{{name, b.MixIn(name), c.Liquid.Volume}})
		}
	}
	return out
}

// isOld tells whether what has not moved since then stood over a night, or for hours.
func isOld(b *core.Book, since, at core.Moment) bool {
	return since.Date() < at.Date() || at.MinutesSince(since) > 60*b.Setting(core.StandingH)
}

// parcelsOf lists what a hose holds from the nozzle on; parcels that came from the same place are one.
func parcelsOf(b *core.Book, h *fluid.Hose) []StoodOf {
	var out []StoodOf
	for _, p := range h.Charge {
		for _, o := range originsOf(b, p.Liquid) {
			if n := len(out); n > 0 && out[n-1].From == o.From && out[n-1].Mix == o.Mix {
				out[n-1].Volume += o.Volume
				continue
			}
			out = append(out, o)
		}
	}
	return out
}

// originsOf lists where a liquid came from, most first seen first; none where it holds no product.
func originsOf(b *core.Book, l fluid.Liquid) []StoodOf {
	if len(l.Holds) == 0 {
		return nil
	}
	var out []StoodOf
	for _, f := range l.From {
		o := b.Origin(f.Key)
		if o.Letter != 0 && measure.Volume(f.N) >= sliver {
			out = append(out, StoodOf{string(o.Letter), o.Mix, measure.Volume(f.N)})
		}
	}
	return out
}

// words are the parts that make up a hundredth of it or more: "1.69 gal of b".
func (s *Stood) words() string {
	var out []string
	sums := map[string]measure.Volume{}
	var order []string
	for _, o := range s.Of {
		if sums[o.From] == 0 {
			order = append(order, o.From)
		}
		sums[o.From] += o.Volume
	}
	for _, from := range order {
		if sums[from] >= s.Volume/100 {
			out = append(out, gal(sums[from])+" of "+from)
		}
	}
	return list(out)
}

// holding is the verb of the sentence, which only its first part has.
func holding(before []string) string {
	if len(before) == 0 {
		return "holds "
	}
	return ""
}

// sayStood is one sentence for what stands in the plumbing, and one for the compartments.
func sayStood(stood []Stood, now core.Moment) string {
	var pipes, tanks []string
	oldest := now
	for _, s := range stood {
		words := s.words()
		switch s.Part {
		case PartHose:
			words = "the hose holds " + words
		case PartCell:
			words = "the mixing cell " + holding(pipes) + words
		case PartReturn:
			words = "the return line " + holding(pipes) + words
		case PartCompartment:
			tanks = append(tanks, "compartment "+s.Name+" "+mixWords(s))
			if s.Since.Unix < oldest.Unix {
				oldest = s.Since
			}
			continue
		}
		if len(pipes) == 0 {
			words += " since " + when(s.Since, now)
		}
		pipes = append(pipes, words)
	}
	var out []string
	if len(pipes) > 0 {
		words := list(pipes) + "."
		out = append(out, strings.ToUpper(words[:1])+words[1:])
	}
	if len(tanks) > 0 {
		tanks[0] = "C" + tanks[0][1:]
	}
	switch loaded := when(oldest, now); len(tanks) {
	case 0:
	case 1:
		out = append(out, fmt.Sprintf("%s, loaded %s.", tanks[0], loaded))
	default:
		out = append(out, fmt.Sprintf("%s; the oldest was loaded %s.", list(tanks), loaded))
	}
	return strings.Join(out, " ")
}

func mixWords(s Stood) string {
	if s.Of[0].Mix == "" {
		return "holds " + gal(s.Volume)
	}
	return "holds " + gal(s.Volume) + " of " + s.Of[0].Mix
}
