package setup

import (
	"slices"
	"strings"

	"example.com/tintline/core/label"
	"example.com/tintline/core/sheet"
)

const tickWords = "Tick the grasses that the label lists, all turf only where it says so. Any other grass will be a stop."

// fromReference stands behind a grass that the reference offers.
const fromReference = ", reference"

func grassesField() Field {
	return Field{
		Key: keyGrasses, Words: "the label lists", Many: true, Long: true, Help: tickWords, Allowed: "at least one",
		Options: grassOptions(Option{label.AllTurf, label.GrassWords(label.AllTurf)}),
	}
}

// prefilled are the ticks that the reference offers for actives as they were typed: those grasses that sources which
// were read call tolerant, none that rests on memory.
func prefilled(actives string) Filled {
	out, offered := marked(actives)
	if len(offered) > 0 {
		out.Answer = strings.Join(offered, Joint)
		out.Help = "Ticked and marked reference: the sources call them tolerant. Confirm each from the label; untick what it does not list."
	}
	return out
}

// marked are the grasses as they are listed, those that the reference would offer marked; nothing is ticked.
func marked(actives string) (out Filled, offered []string) {
	d := grassesField()
	out = Filled{Options: d.Options, Help: d.Help}
	var names []string
	for _, a := range sheet.Actives(actives) {
		names = append(names, a.Name)
	}
	offered = label.PrefillGrasses(names)
	if len(offered) > 0 {
		out.Options = markedFirst(out.Options, offered)
		out.Help = "Those marked reference are called tolerant by the sources; the label alone decides. " + tickWords
	}
	return out, offered
}

// markedFirst marks the grasses that are offered and puts them behind all turf, so that none is ticked out of sight.
func markedFirst(options []Option, offered []string) []Option {
	var marked, rest []Option
	for _, o := range options[1:] {
		if slices.Contains(offered, o.Value) {
			o.Words += fromReference
			marked = append(marked, o)
			continue
		}
		rest = append(rest, o)
	}
	return slices.Concat(options[:1], marked, rest)
}
