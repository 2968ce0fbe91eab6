package yard

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
)

// sheetWidth is that of the printed sheet, in letters.
const sheetWidth = 72

// Text is the sheet to be printed: plain text of 72 columns, on one page as long as the load is an ordinary one.
func (s *LoadSheet) Text(b *core.Book, at core.Moment) string {
	var w strings.Builder
	p := &s.Plan
	head := fmt.Sprintf("LOAD SHEET  %s", p.Into)
	if s.Tank != p.Into {
		head += " (" + s.Tank + ")"
	}
	fmt.Fprintf(&w, "%s   %s %s\n", head, at.Date(), at.Clock())
	paragraph(&w, "", fmt.Sprintf("%s gal: %s", p.Volume.Text(), what(p)))
	if s.Standing > 0 {
		paragraph(&w, "", fmt.Sprintf("%s gal stand in it already, %s gal in all then", s.Standing.Text(), (s.Standing+p.Volume).Text()))
	}
	for _, f := range s.Findings {
		if f.Weight == check.Stop || f.Weight == check.Ask && f.About != "jar" {
			paragraph(&w, strings.ToUpper(f.Weight.String())+"  ", f.Says+" "+f.Do)
		}
	}
	w.WriteByte('\n')
	for _, l := range s.Lines {
		box := "[ ] "
		if l.Done {
			box = "[x] "
		}
		says := l.Says
		if l.Amount.N != 0 {
			says = l.Amount.Text() + " " + says
		}
		paragraph(&w, box, says)
		for _, x := range l.Details {
			if short(l, x) {
				paragraph(&w, "    ", x.Says)
			}
		}
	}
	w.WriteByte('\n')
	if words := s.MeterWords(); words != "" {
		paragraph(&w, "", words)
	}
	for _, f := range s.Findings {
		if f.Weight == check.Note && f.Unit != "h" { // how long it may stand is said at the last line
			paragraph(&w, "note  ", f.Says)
		}
	}
	paragraph(&w, "", "The labels in hand decide: where they say otherwise, they are followed.")
	return w.String()
}

// short tells whether a detail is printed: where it comes from and where sheets do not agree stands on the screen and in JSON.
func short(l SheetLine, d Detail) bool {
	return !strings.HasPrefix(d.Says, "The sheets do not agree") && !strings.Contains(d.Says, "is the setting") && !strings.HasPrefix(d.Says, "One sheet") && (l.Item != core.StepAirGap || !strings.HasPrefix(d.Says, "In Florida"))
}

// paragraph writes a paragraph behind a lead, cut to the width, the next lines under its words.
func paragraph(w *strings.Builder, lead, says string) {
	room := sheetWidth - utf8.RuneCountInString(lead)
	indent := strings.Repeat(" ", utf8.RuneCountInString(lead))
	line := ""
	flush := func() {
		if line != "" {
			fmt.Fprintf(w, "%s%s\n", lead, line)
			lead, line = indent, ""
		}
	}
	for _, word := range strings.Fields(says) {
		for utf8.RuneCountInString(word) > room { // a name without a space
			flush()
			r := []rune(word)
			line, word = string(r[:room]), string(r[room:])
			flush()
		}
		if n := utf8.RuneCountInString(line); n > 0 && n+1+utf8.RuneCountInString(word) > room {
			flush()
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	flush()
}
