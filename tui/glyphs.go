package tui

import (
	"strings"
	"unicode"
)

// glyphs are the signs that the screen draws: a closed list, each one cell wide, with an ASCII twin.
type glyphs struct {
	ascii bool

	full, empty rune // a bar
	supply      rune // open to the pump
	back        rune // where the return leads
	pipe        rune // a length of plumbing without liquid of its own
	rule        rune
	edge        rune // the left edge of the band that says what Enter does
	water       rune // liquid of no compartment
	air         rune
	cut         rune // text goes on beyond the edge
	caret       rune
}

// plusMinus and times are the two signs that are words in ASCII.
const (
	plusMinusSign = '±'
	timesSign     = '×'
)

func newGlyphs(ascii bool) *glyphs {
	if ascii {
		return &glyphs{
			ascii: true,
			full:  '#', empty: '-', supply: '>', back: '<', pipe: '=', rule: '-', edge: '|',
			water: '~', air: ' ', cut: '>', caret: '_',
		}
	}
	return &glyphs{
		full: '█', empty: '░', supply: '►', back: '◄', pipe: '═', rule: '─', edge: '▌',
		water: '~', air: ' ', cut: '…', caret: '_',
	}
}

// all lists the signs, for the test that each is one cell.
func (g *glyphs) all() []rune {
	return []rune{g.full, g.empty, g.supply, g.back, g.pipe, g.rule, g.edge, g.water, g.air, g.cut, g.caret}
}

func (g *glyphs) plusMinus() string {
	if g.ascii {
		return "+-"
	}
	return string(plusMinusSign)
}

func (g *glyphs) times() string {
	if g.ascii {
		return "x"
	}
	return string(timesSign)
}

// clean makes text from outside fit for the screen: no control characters, no marks that join, nothing whose
// width terminals disagree about. What cannot be shown becomes a question mark.
func (g *glyphs) clean(s string) string {
	if plainText(s) {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		switch {
		case r >= ' ' && r < 0x7f:
			b.WriteRune(r)
		case r == '\t' || r == '\n' || r == '\r' || r == 0xa0:
			b.WriteByte(' ')
		case unicode.Is(unicode.Mn, r) || unicode.Is(unicode.Me, r) || unicode.Is(unicode.Cf, r):
		case r == plusMinusSign:
			b.WriteString(g.plusMinus())
		case r == timesSign:
			b.WriteString(g.times())
		case !g.ascii && cellsOf(r) > 0:
			b.WriteRune(r)
		default:
			b.WriteByte('?')
		}
	}
	return b.String()
}

func plainText(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] < ' ' || s[i] >= 0x7f {
			return false
		}
	}
	return true
}

// cellsOf is the width of a rune that the screen may show, 0 for one that it may not.
func cellsOf(r rune) int {
	switch {
	case r >= ' ' && r < 0x7f:
		return 1
	case r < 0xa1, r == 0xad:
		return 0
	case r < 0x0300, r >= 0x0370 && r < 0x0530 && unicode.IsPrint(r) && !unicode.Is(unicode.M, r):
		return 1 // Latin, Greek, Cyrillic
	case r >= 0x1e00 && r < 0x1f00:
		return 1 // Vietnamese and other Latin
	case r >= 0x3041 && r <= 0x3096, r >= 0x30a1 && r <= 0x30fa, r >= 0x4e00 && r <= 0x9fff, r >= 0xac00 && r <= 0xd7a3:
		return 2 // kana, Han, Hangul
	}
	for _, own := range own {
		if r == own {
			return 1
		}
	}
	return 0
}

// own are the signs beyond the alphabets that the screen draws itself.
var own = newGlyphs(false).all()

// cells is how wide clean text is.
func cells(s string) int {
	n := 0
	for i := 0; i < len(s); i++ {
		if s[i] >= 0x80 {
			return n + wideCells(s[i:])
		}
		n++
	}
	return n
}

func wideCells(s string) int {
	n := 0
	for _, r := range s {
		n += cellsOf(r)
	}
	return n
}

// fit cuts clean text to at most w cells; the last one says that it goes on.
func (g *glyphs) fit(s string, w int) string {
	if cells(s) <= w {
		return s
	}
	if w <= 0 {
		return ""
	}
	n := 0
	for i, r := range s {
		if n+cellsOf(r) > w-1 {
			return s[:i] + string(g.cut)
		}
		n += cellsOf(r)
	}
	return s
}

// fitWords cuts like fit, but behind a whole word if that costs little.
func (g *glyphs) fitWords(s string, w int) string {
	const little = 12
	if cells(s) <= w || w <= little {
		return g.fit(s, w)
	}
	cut := g.fit(s, w)
	if at := strings.LastIndexByte(cut, ' '); at > 0 && cells(cut[at:]) <= little {
		return strings.TrimRight(cut[:at], " ,;") + string(g.cut)
	}
	return cut
}

// wrap breaks clean text at spaces into lines of at most w cells.
func (g *glyphs) wrap(s string, w int) []string {
	var out []string
	line := ""
	for _, word := range strings.Fields(s) {
		switch {
		case line == "":
			line = word
		case cells(line)+1+cells(word) <= w:
			line += " " + word
		default:
			out = append(out, g.fit(line, w))
			line = word
		}
	}
	if line != "" {
		out = append(out, g.fit(line, w))
	}
	return out
}
