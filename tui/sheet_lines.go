package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/yard"
)

// goesOn leads to the next line of the sheet once one was logged.
func goesOn(item string) func(m *Model, logged []core.Fact) *textLine {
	return func(m *Model, _ []core.Fact) *textLine {
		m.chooseRow(pageLoad, m.nextItem(item))
		return nil
	}
}

// withoutOne is typed where a meter reading or a place is not to be noted.
const withoutOne = "none"

// placeLine asks where the load is mixed.
func (m *Model) placeLine() textLine {
	into := m.subject.tank
	return textLine{
		prompt: "mixed at", hint: "a word for the place, such as home yard; none to leave it out", was: m.lastPlace(),
		read: func(_ *Model, said string) ([]core.Fact, error) {
			f := &core.Ticked{List: core.LoadList(into), Item: core.StepPlace, Place: strings.TrimSpace(said)}
			if blank(said) || strings.EqualFold(f.Place, withoutOne) {
				f.Place = ""
			}
			return []core.Fact{f}, nil
		},
		again: goesOn(core.StepPlace),
	}
}

// meterLine asks what the water meter shows: before, what it showed last; after, what it should show.
func (m *Model) meterLine(s *yard.LoadSheet, item string) textLine {
	l := textLine{
		prompt: core.ItemWords(item) + ", gal", hint: "what it shows; left empty there is no meter",
		read: func(_ *Model, said string) ([]core.Fact, error) {
			f := &core.Ticked{List: core.LoadList(s.Plan.Into), Item: item}
			if blank(said) || strings.EqualFold(strings.TrimSpace(said), withoutOne) {
				return []core.Fact{f}, nil
			}
			v, err := measure.ReadVolume(said, "gal")
			if err != nil {
				return nil, err
			}
			f.Meter = core.Known(v)
			return []core.Fact{f}, nil
		},
		again: goesOn(item),
	}
	_, meant := m.book.LastFill()
	if item == core.StepMeterAfter {
		meant = s.MeterMeant()
	}
	if meant.Known {
		l.was = strings.ReplaceAll(meant.V.Text(), ",", "")
	}
	return l
}

// What a jar can have come to, as it is chosen or typed.
const (
	jarMixed   = "mixed"
	jarWithout = "go on without a jar"
	jarFailed  = "failed"
)

// jarLine asks what a jar of the products came to. With a result, or without a jar, the line of the sheet is done.
func (m *Model) jarLine() textLine {
	s := m.loadSheet()
	products := s.JarProducts()
	tick := &core.Ticked{List: core.LoadList(s.Plan.Into), Item: core.StepJar}
	l := textLine{
		prompt: "the jar of " + strings.Join(products, " + ") + " came to",
		hint:   "or failed and what was seen: " + strings.Join(core.JarSigns(), " ") + "; a note behind a semicolon",
		read: func(_ *Model, said string) ([]core.Fact, error) {
			if said == jarWithout {
				return []core.Fact{tick}, nil
			}
			f, err := readJar(said, products)
			if err != nil {
				return nil, err
			}
			facts := []core.Fact{f}
			if line := s.Line(core.StepJar); f.Result == core.JarMixed && line != nil && !line.Done {
				facts = append(facts, tick)
			}
			return facts, nil
		},
		again: goesOn(core.StepJar),
	}
	l.choices = []string{jarMixed}
	if line := s.Line(core.StepJar); line != nil && !line.Done {
		l.choices = append(l.choices, jarWithout)
	}
	return l
}

// readJar reads mixed, or failed and what was seen, and a note behind a semicolon.
func readJar(said string, products []string) (*core.JarTested, error) {
	result, note, _ := strings.Cut(said, ";")
	words := strings.FieldsFunc(strings.ToLower(result), func(r rune) bool { return r == ' ' || r == ',' })
	f := &core.JarTested{Products: products, Note: strings.TrimSpace(note)}
	switch {
	case len(words) == 1 && words[0] == jarMixed:
		f.Result = core.JarMixed
	case len(words) > 1 && words[0] == jarFailed:
		f.Result, f.Signs = core.JarFailed, words[1:]
	default:
		return nil, slip(fmt.Sprintf("%q is no result of a jar.", said), "Type mixed, or failed and what was seen: "+strings.Join(core.JarSigns(), ", ")+".")
	}
	return f, nil
}

// What stands before a pair in the choice of marks.
const (
	notMixWords = "not to be mixed: "
	mayMixWords = "may be mixed after all: "
)

// pairLine marks two products of the load as not to be mixed, or takes a mark back.
func (m *Model) pairLine() textLine {
	p := m.planned()
	pairs := map[string]*core.JarTested{}
	l := textLine{prompt: "pair", hint: "a number; a note behind a semicolon"}
	for i, a := range p.Parts {
		for _, b := range p.Parts[i+1:] {
			f := &core.JarTested{Products: []string{a.Product, b.Product}, Result: core.JarNotMixing}
			words := notMixWords
			if m.book.IsMarkedApart(f.Products) {
				f.Result, words = core.JarMayMix, mayMixWords
			}
			words += a.Product + " with " + b.Product
			pairs[words] = f
			l.choices = append(l.choices, words)
		}
	}
	l.read = func(m *Model, said string) ([]core.Fact, error) {
		which, note, _ := strings.Cut(said, ";")
		which = strings.TrimSpace(which)
		for i, words := range l.choices {
			if which == words || which == fmt.Sprint(i+1) {
				f := *pairs[words]
				f.Note = strings.TrimSpace(note)
				return []core.Fact{&f}, nil
			}
		}
		return nil, slip(fmt.Sprintf("%q is no pair of this load.", said), "Type its number.")
	}
	return l
}
