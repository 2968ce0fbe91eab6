package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core/setup"
	"example.com/tintline/tui/theme"
)

// stageForm draws a form: its title and what the field with the keys means, what Enter does, what may be answered
// or is wrong, then the fields.
func (m *Model) stageForm(s *scene) {
	s.add(m.head())
	s.add(m.formAbout(m.rects[bandVerdict])...)
	s.add(m.bandLines(m.rects[bandAct], s)...)
	body := m.formBody()
	s.end(body.y)
	s.add(m.formLines(body, s)...)
	foot := m.pageFoot()
	s.end(foot.y)
	s.add(m.foot(foot, s)...)
	s.end(m.h)
}

// formAbout is what stands above the band. What is wrong has room before what the field means, and that before what
// may be answered.
func (m *Model) formAbout(r rect) []line {
	f := m.form
	out := []line{m.titled(f.def.Title + m.pageWords())}
	say := func(t theme.Token, words string, rows int) {
		lines := m.g.wrap(m.g.clean(words), r.w-2)
		if rows > 0 && len(lines) > rows {
			lines[rows-1] = strings.Join(lines[rows-1:], " ")
			lines = lines[:rows]
		}
		for _, l := range lines[:min(len(lines), max(rows, 0))] {
			out = append(out, line{left: []span{{theme.Base, " "}, {t, m.g.fit(l, r.w-2)}}})
		}
	}
	if f.wrong != "" {
		say(theme.Refused, f.wrong, r.h-1)
	} else {
		say(theme.Base, helpWords(f.asked()), max(r.h-2, 1))
		say(theme.Dim, "Takes "+f.asked().Allowed+".", r.h-len(out))
	}
	for len(out) < r.h {
		out = append(out, line{})
	}
	return out
}

func (m *Model) pageWords() string {
	f := m.form
	words := ": " + f.def.Pages[f.page].Title
	if n := len(f.def.Pages); n > 1 {
		words = fmt.Sprintf(", page %d of %d", f.page+1, n) + words
	}
	return words
}

func helpWords(d *setup.Field) string {
	if d.Source == "" {
		return d.Help
	}
	return d.Help + " Starting value " + d.Start + ": " + d.Source + "."
}

// formBody is the place of the fields.
func (m *Model) formBody() rect {
	at := m.rects[bandAct]
	y := at.y + at.h
	return rect{0, y, m.w, max(m.pageFoot().y-y, 1)}
}

// offerForm is what Enter does in a form.
func (m *Model) offerForm() offer {
	f := m.form
	o := offer{act: actFormNext, words: "next: ", t: theme.Act}
	last := f.at == len(f.asks())-1
	switch {
	case f.sent:
		return offer{words: "wait: the disk is writing", t: theme.ActOff}
	case !last:
		o.words += f.asks()[f.at+1].Words
		o.small = "PgDn: the rest as it stands"
		if f.starred() {
			o.small += "; * usual, not measured on yours"
		}
	case f.page < len(f.def.Pages)-1:
		o.words += f.def.Pages[f.page+1].Title
	default:
		o.words = "log it"
	}
	switch d := f.asked(); {
	case d.Many:
		o.small = "the space bar ticks and unticks; Up and Down move"
	case d.Long:
		o.small = "type some letters of its name; Up and Down move"
	case isChoice(d):
		o.small = "Left and Right choose" + gapped("; ", o.small)
	}
	return o
}

// starred tells whether a starting value of the page still stands.
func (f *form) starred() bool {
	for i := range f.asks() {
		if f.star(&f.asks()[i]) != "" {
			return true
		}
	}
	return false
}

// formLines are the fields as they are drawn, each a place to tap.
func (m *Model) formLines(r rect, s *scene) []line {
	f := m.form
	var out []line
	full := false
	from := max(min(f.at, len(f.asks())-r.h), 0) // the first field in sight, where each has one row
	for i, l := range f.show() {
		if i == r.h || i == r.h-1 && f.hasMore() {
			break
		}
		inked, plain := m.inked(l)
		full = strings.Trim(plain, string(m.g.edge)+" ") != ""
		out = append(out, line{raw: inked, rawCells: cells(plain)})
		t := tapTarget{act: actFormField, row: m.fieldAt(from+i, plain)}
		if t.row != "" {
			s.spots = append(s.spots, spot{rect{r.x, r.y + i, r.w, 1}, t})
		}
	}
	if f.hasMore() {
		for len(out) < r.h-1 {
			out = append(out, line{})
		}
		if full {
			s.spots = append(s.spots, spot{rect{r.x, r.y + len(out), r.w, 1}, tapTarget{act: actFormMore}})
			out = append(out, text(theme.Dim, "  more of the list: Down, or a tap here"))
		}
	}
	return out
}

// fieldAt is what a tap on a row of the form means: a field by its key, or an option of a list by its value.
func (m *Model) fieldAt(i int, plain string) string {
	asks := m.form.asks()
	if d := &asks[0]; d.Long {
		plain = strings.TrimSpace(plain)
		for _, o := range d.Options {
			if o.Value != "" && strings.HasSuffix(plain, " "+o.Words) {
				return o.Value
			}
		}
		return ""
	}
	if i >= len(asks) {
		return ""
	}
	return asks[i].Key
}

// inked gives drawn text to what has no colour of its own the look of plain text, so that no hole of the terminal's
// own colours is left; blanks at the end are the painter's. plain is the text alone.
func (m *Model) inked(drawn string) (inked, plain string) {
	drawn = strings.TrimRight(drawn, " ")
	var out, bare strings.Builder
	on := false
	for drawn != "" {
		if code := escape(drawn); code != "" {
			if drawn = drawn[len(code):]; code == "\x1b[0m" || code == "\x1b[m" {
				on = false
			} else {
				on = true
			}
			out.WriteString(code)
			continue
		}
		n := strings.IndexByte(drawn[1:], 0x1b) + 1
		if n == 0 {
			n = len(drawn)
		}
		if on {
			out.WriteString(drawn[:n])
		} else {
			out.WriteString(m.ink.On(theme.Base) + drawn[:n] + m.ink.Off(theme.Base))
		}
		bare.WriteString(drawn[:n])
		drawn = drawn[n:]
	}
	return out.String(), bare.String()
}

// escape is the code that sets colours and attributes at the front of s, empty if there is none.
func escape(s string) string {
	if !strings.HasPrefix(s, "\x1b[") {
		return ""
	}
	return s[:strings.IndexByte(s, 'm')+1]
}
