package theme

import (
	"fmt"
	"math"
	"strconv"
	"testing"
)

// The formulas and the limits are those of WCAG 2.2: relative luminance and contrast ratio as it defines them
// (https://www.w3.org/TR/WCAG22/#dfn-relative-luminance, #dfn-contrast-ratio), at least 4.5 for text (success
// criterion 1.4.3) and 7 for what must be read at a glance (1.4.6).
const (
	leastContrast = 4.5
	glanced       = 7.0
)

// atAGlance are the tokens of verdict, band and nozzle.
var atAGlance = map[Token]bool{
	Base: true, Strong: true, Head: true, Stop: true, Ask: true, Next: true, Act: true, ActStop: true, ActOff: true,
	Nozzle: true, Field: true, Key: true,
}

// luminance is the relative luminance of a colour in sRGB, of 8 bits a channel.
func luminance(r, g, b int) float64 {
	channel := func(n int) float64 {
		c := float64(n) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*channel(r) + 0.7152*channel(g) + 0.0722*channel(b)
}

func contrast(one, other float64) float64 {
	return (math.Max(one, other) + 0.05) / (math.Min(one, other) + 0.05)
}

// full is the luminance of a colour written #RRGGBB.
func full(t *testing.T, s string) float64 {
	t.Helper()
	n, err := strconv.ParseUint(s[1:], 16, 32)
	if err != nil || len(s) != 7 {
		t.Fatalf("%q is no colour", s)
	}
	return luminance(int(n>>16), int(n>>8&0xff), int(n&0xff))
}

// many is the luminance of one of the 240 fixed colours of the set of 256: 16 to 231 are a cube of six steps a
// channel, 232 to 255 a ramp of greys (xterm, ctlseqs: colours 0 to 15 are the terminal's own).
func many(t *testing.T, s string) float64 {
	t.Helper()
	n, err := strconv.Atoi(s)
	if err != nil || n < 16 || n > 255 {
		t.Fatalf("%q is none of the fixed colours", s)
	}
	if n >= 232 {
		grey := 8 + 10*(n-232)
		return luminance(grey, grey, grey)
	}
	step := func(i int) int {
		if i == 0 {
			return 0
		}
		return 55 + 40*i
	}
	n -= 16
	return luminance(step(n/36), step(n/6%6), step(n%6))
}

// TestContrastKnown holds the formula to ratios that can be looked up: black on white is 21, and #767676 is the lightest
// grey that may stand on white.
func TestContrastKnown(t *testing.T) {
	for _, one := range []struct {
		a, b string
		want string
	}{{"#000000", "#FFFFFF", "21.00"}, {"#767676", "#FFFFFF", "4.54"}, {"#777777", "#FFFFFF", "4.48"}, {"#FF0000", "#FFFFFF", "4.00"}} {
		if got := fmt.Sprintf("%.2f", contrast(full(t, one.a), full(t, one.b))); got != one.want {
			t.Errorf("%s on %s: %s, not %s", one.a, one.b, got, one.want)
		}
	}
}

// few are two sets of sixteen colours as they are often found: xterm's own (XTerm-col.ad) and that of PC text screens,
// which the Linux console has. The terminal may have others, so the limits are lower: 4.5 at a glance, else 3.
var few = map[string][16]string{
	"xterm": {
		"#000000", "#CD0000", "#00CD00", "#CDCD00", "#0000EE", "#CD00CD", "#00CDCD", "#E5E5E5",
		"#7F7F7F", "#FF0000", "#00FF00", "#FFFF00", "#5C5CFF", "#FF00FF", "#00FFFF", "#FFFFFF",
	},
	"text screen": {
		"#000000", "#AA0000", "#00AA00", "#AA5500", "#0000AA", "#AA00AA", "#00AAAA", "#AAAAAA",
		"#555555", "#FF5555", "#55FF55", "#FFFF55", "#5555FF", "#FF55FF", "#55FFFF", "#FFFFFF",
	},
}

func TestContrastOfSixteen(t *testing.T) {
	for _, name := range []string{Sun, Night} {
		for i, l := range looks(name) {
			least := 3.0
			if atAGlance[Token(i)] {
				least = 4.5
			}
			for where, set := range few {
				fg, _ := strconv.Atoi(l.fg.few)
				bg, _ := strconv.Atoi(l.bg.few)
				if c := contrast(full(t, set[fg]), full(t, set[bg])); c < least {
					t.Errorf("%s, %s: token %d, %s on %s: %.2f", name, where, i, l.fg.few, l.bg.few, c)
				}
			}
		}
	}
}

// TestContrast looks at each pair of colours of the two coloured themes.
func TestContrast(t *testing.T) {
	for _, name := range []string{Sun, Night} {
		for i, l := range looks(name) {
			tok := Token(i)
			if !l.fg.set() || !l.bg.set() {
				t.Errorf("%s: token %d lacks a colour, so it stands on what the terminal has", name, tok)
				continue
			}
			least := leastContrast
			if atAGlance[tok] {
				least = glanced
			}
			if c := contrast(full(t, l.fg.full), full(t, l.bg.full)); c < least {
				t.Errorf("%s: token %d, %s on %s: %.2f", name, tok, l.fg.full, l.bg.full, c)
			}
			if c := contrast(many(t, l.fg.many), many(t, l.bg.many)); c < least {
				t.Errorf("%s: token %d, %s on %s of 256: %.2f", name, tok, l.fg.many, l.bg.many, c)
			}
		}
	}
}

// TestCompartmentsCanBeToldApart: the six colours differ from each other where there are enough of them. Of sixteen, not
// six are dark enough on white; the letters differ in any case.
func TestCompartmentsCanBeToldApart(t *testing.T) {
	for _, name := range []string{Sun, Night} {
		all := looks(name)
		for a := CompA; a <= CompF; a++ {
			for b := a + 1; b <= CompF; b++ {
				x, y := all[a].fg, all[b].fg
				if x.full == y.full || x.many == y.many || name == Night && x.few == y.few {
					t.Errorf("%s: compartments %d and %d look alike", name, a-CompA, b-CompA)
				}
			}
		}
	}
}

// TestPlainTellsApartByAttributes: without colour the weights, the band and the nozzle differ from running text.
func TestPlainTellsApartByAttributes(t *testing.T) {
	all := looks(Plain)
	for i, l := range all {
		if l.fg.set() || l.bg.set() {
			t.Errorf("token %d has a colour in the plain theme", i)
		}
	}
	for _, tok := range []Token{Stop, Ask, Note, Next, Act, ActStop, Waiting, Refused, Key, Field, Cursor, Nozzle, Demo, Head, Strong} {
		if all[tok] == all[Base] {
			t.Errorf("token %d looks like running text", tok)
		}
	}
	if all[Stop] == all[Ask] || all[Stop] == all[Note] || all[Act] == all[ActOff] {
		t.Error("a stop looks like something lighter, or a band that acts like one that does not")
	}
}
