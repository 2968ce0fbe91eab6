package tui

import (
	"strings"

	"example.com/tintline/tui/theme"
)

// stagePage sets a page that is text: head line, text, keys at the foot.
func (m *Model) stagePage(s *scene, body []line) {
	n := m.needs.foot
	s.add(m.head(), line{})
	s.add(body...)
	s.end(m.h - n)
	s.add(m.foot(rect{0, m.h - n, m.w, n}, s)...)
	s.end(m.h)
}

// stageHelp lists every key with what it does; those that do not work now are dim.
func (m *Model) stageHelp(s *scene) {
	const keyWidth, longest = 8, 24
	var body []line
	letters := ""
	for _, b := range m.keys {
		if b.act == actTake {
			if m.book.Plumbing().Compartment(b.letter) != nil {
				letters += b.Help().Key + " "
			}
			continue
		}
		if letters != "" {
			body = append(body, helpLine(m.padded(strings.TrimSpace(letters), keyWidth), "turn supply and return to that compartment"))
			letters = ""
		}
		if b.long == "" {
			continue
		}
		k := b.Help().Key
		if len(b.Keys()) > 1 {
			k += " ^C"
		}
		body = append(body, helpLine(m.padded(k, keyWidth), b.long))
	}
	body = append(
		body, line{},
		text(theme.Dim, " A touch on the band, on a compartment or on a key does the same as the key."),
		text(theme.Dim, " "+string(m.g.supply)+" open to the pump  "+string(m.g.back)+" takes the return  "+string(m.g.water)+" water  "+m.g.plusMinus()+" give or take"),
	)
	if len(body) > longest {
		body = body[:longest]
	}
	m.stagePage(s, body)
}

func helpLine(k, words string) line {
	return line{left: []span{{theme.Base, " "}, {theme.Strong, k}, {theme.Base, " " + words}}}
}

// stageTrouble says what is wrong with the journal. Nothing can be logged any more.
func (m *Model) stageTrouble(s *scene) {
	what, do := sentences(m.trouble)
	body := []line{{left: []span{{theme.Base, " "}, {theme.Stop, " The last action is not booked, and nothing more can be. "}}}, {}}
	for _, l := range m.g.wrap(m.g.clean(what), m.w-2) {
		body = append(body, text(theme.Strong, " "+l))
	}
	body = append(body, line{})
	for _, l := range m.g.wrap(m.g.clean(do), m.w-2) {
		body = append(body, text(theme.Base, " "+l))
	}
	body = append(body, line{}, text(theme.Base, " What was booked before is in the book. Only q works now."))
	m.stagePage(s, body)
}

// stageStart is the page of a book without a rig.
func (m *Model) stageStart(s *scene) {
	body := []line{
		text(theme.Strong, " This book has no rig yet."),
		{},
		text(theme.Base, " To look around in a book with invented data:   tintline demo"),
		text(theme.Base, " To enter a rig, mixes and lawns from a file:   tintline enter FILE"),
		text(theme.Base, " To make this book from a journal:              tintline replay FILE"),
		{},
		text(theme.Base, " The day on this screen begins once there are a rig and a lawn."),
	}
	if m.status.what != "" {
		body = append(body, line{}, text(theme.Refused, " "+m.g.clean(m.status.what)))
	}
	m.stagePage(s, body)
}
