package tui

import "example.com/tintline/tui/theme"

// span is a piece of clean text with what it means.
type span struct {
	t theme.Token
	s string
}

// line is one row of a part: text from the left, text that ends at the right edge, and what lies between. The
// right part is never cut as long as it fits; the left one gives way.
type line struct {
	left, right []span
	fill        theme.Token
	raw         string // in their place: a row that is drawn already, and how many cells it has
	rawCells    int
}

func text(t theme.Token, s string) line { return line{left: []span{{t, s}}} }

// painter appends lines to one buffer. Escape codes are written only where the token changes.
type painter struct {
	b   []byte
	st  *theme.Styles
	g   *glyphs
	now theme.Token
	on  bool
}

func (p *painter) token(t theme.Token) {
	if p.on && p.now == t {
		return
	}
	p.end()
	p.b = append(p.b, p.st.On(t)...)
	p.now, p.on = t, true
}

func (p *painter) end() {
	if p.on {
		p.b = append(p.b, p.st.Off(p.now)...)
		p.on = false
	}
}

// spaces appends n blanks of a token.
func (p *painter) spaces(t theme.Token, n int) {
	if n <= 0 {
		return
	}
	p.token(t)
	for ; n > 0; n-- {
		p.b = append(p.b, ' ')
	}
}

// spans appends pieces up to w cells and returns how many are left.
func (p *painter) spans(list []span, w int) int {
	for _, s := range list {
		if w <= 0 {
			return 0
		}
		n := cells(s.s)
		if n == 0 {
			continue
		}
		p.token(s.t)
		if n > w {
			w -= p.cut(s.s, w)
			continue
		}
		p.b = append(p.b, s.s...)
		w -= n
	}
	return w
}

// cut appends as much of s as fits before the sign that it goes on; it uses w cells or one less.
func (p *painter) cut(s string, w int) int {
	n := 0
	for _, r := range s {
		c := cellsOf(r)
		if n+c > w-1 {
			break
		}
		p.b = appendRune(p.b, r)
		n += c
	}
	p.b = appendRune(p.b, p.g.cut)
	for n++; n < w; n++ {
		p.b = append(p.b, ' ')
	}
	return w
}

func appendRune(b []byte, r rune) []byte {
	if r < 0x80 {
		return append(b, byte(r))
	}
	return append(b, string(r)...)
}

// line appends exactly w cells.
func (p *painter) line(l line, w int) {
	if l.raw != "" {
		p.end()
		p.b = append(p.b, l.raw...)
		p.spaces(theme.Base, w-l.rawCells)
		return
	}
	right := 0
	for _, s := range l.right {
		right += cells(s.s)
	}
	right = min(right, w)
	p.spaces(l.fill, p.spans(l.left, w-right))
	p.spaces(l.fill, p.spans(l.right, right))
}
