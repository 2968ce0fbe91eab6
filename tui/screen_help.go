package tui

import (
	"strings"

	"example.com/tintline/tui/theme"
)

// helpPage lists every key with what it does.
func helpPage() *pageSpec {
	return &pageSpec{page: pageHelp, title: "Keys", show: (*Model).showKeys}
}

func (m *Model) showKeys() sheet {
	const keyWidth = 8
	var rows []row
	letters := ""
	for _, b := range m.keys {
		if b.act == actTake {
			if m.book.Plumbing().Compartment(b.letter) != nil {
				letters += b.Help().Key + " "
			}
			continue
		}
		if letters != "" {
			rows = append(rows, m.helpRows(m.padded(strings.TrimSpace(letters), keyWidth), "turn supply and return to that compartment")...)
			letters = ""
		}
		if b.long == "" || b.act == actRun {
			continue
		}
		k := b.Help().Key
		if len(b.Keys()) > 1 && b.act == actQuit {
			k += " ^C"
		}
		rows = append(rows, m.helpRows(m.padded(k, keyWidth), b.long)...)
	}
	rows = append(rows, m.pageHelp(keyWidth)...)
	rows = append(rows, blankRow())
	rows = append(rows, m.wrapped(theme.Dim, "A touch on the band, on a compartment, on a row or on a key does the same as the key.")...)
	rows = append(rows, m.wrapped(theme.Dim, string(m.g.supply)+" open to the pump  "+string(m.g.back)+" takes the return  "+string(m.g.water)+" water  "+m.g.plusMinus()+" give or take")...)
	for i := range rows {
		rows[i].id = "" // read, not chosen
	}
	return sheet{rows: rows}
}

// pageHelp lists the keys of the pages, page by page.
func (m *Model) pageHelp(keyWidth int) []row {
	var out []row
	for _, s := range m.specs {
		first := true
		for _, b := range m.keys {
			if b.act != actRun || b.page != s.page || b.unlisted || b.long == "" {
				continue
			}
			if first {
				out = append(out, blankRow(), sectionRow(s.title))
				first = false
			}
			out = append(out, m.helpRows(m.padded(b.Help().Key, keyWidth), b.long)...)
		}
	}
	return out
}

// helpRows are a key and what it does, in as many lines as that takes.
func (m *Model) helpRows(k, words string) []row {
	const mark = 2
	var out []row
	for _, l := range m.g.wrap(words, m.w-mark-cells(k)-2) {
		out = append(out, row{line: line{left: []span{{theme.Strong, k}, {theme.Base, " " + l}}}})
		k = strings.Repeat(" ", cells(k))
	}
	return out
}
