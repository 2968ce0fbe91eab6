package tui

import "strings"

// big figures are read from the tank lid, six feet from the screen: each sign is three dots by five, and a dot is as
// many cells as there is room for. A cell is about half as wide as it is high.
var bigSigns = map[rune][5]string{
	'0': {"###", "# #", "# #", "# #", "###"},
	'1': {"  #", "  #", "  #", "  #", "  #"},
	'2': {"###", "  #", "###", "#  ", "###"},
	'3': {"###", "  #", "###", "  #", "###"},
	'4': {"# #", "# #", "###", "  #", "  #"},
	'5': {"###", "#  ", "###", "  #", "###"},
	'6': {"###", "#  ", "###", "# #", "###"},
	'7': {"###", "  #", "  #", "  #", "  #"},
	'8': {"###", "# #", "###", "# #", "###"},
	'9': {"###", "# #", "###", "  #", "###"},
	'-': {"   ", "   ", "###", "   ", "   "},
	'.': {" ", " ", " ", " ", "#"},
	' ': {" ", " ", " ", " ", " "},
	'_': {"   ", "   ", "   ", "   ", "   "}, // the place of a figure
	'A': {"###", "# #", "###", "# #", "# #"},
	'C': {"###", "#  ", "#  ", "#  ", "###"},
	'E': {"###", "#  ", "###", "#  ", "###"},
	'L': {"#  ", "#  ", "#  ", "#  ", "###"},
	'N': {"###", "# #", "# #", "# #", "# #"},
	'O': {"###", "# #", "# #", "# #", "###"},
	'P': {"###", "# #", "###", "#  ", "#  "},
	'S': {"###", "#  ", "###", "  #", "###"},
	'T': {"###", " # ", " # ", " # ", " # "},
}

const bigHigh = 5

// bigWide is how many dots a text is wide, with one dot between two signs.
func bigWide(s string) int {
	n := 0
	for _, r := range s {
		n += len(bigSigns[r][0]) + 1
	}
	return max(n-1, 0)
}

// bigScale is the largest dot, in cells, with which a text fits; 0 if none does.
func bigScale(s string, w, h int) (wide, high int) {
	for high = h / bigHigh; high > 0; high-- {
		for wide = 2 * high; wide >= high; wide-- {
			if bigWide(s)*wide <= w {
				return wide, high
			}
		}
	}
	return 0, 0
}

// bigLines draw a text in figures that fill w by h as well as they can; as plain text where they do not fit.
func (m *Model) bigLines(s string, w, h int) []string {
	wide, high := bigScale(s, w, h)
	if wide == 0 {
		return []string{s}
	}
	dot, gap := strings.Repeat(string(m.g.full), wide), strings.Repeat(" ", wide)
	var out []string
	for row := range bigHigh {
		var b strings.Builder
		for i, r := range []rune(s) {
			if i > 0 {
				b.WriteString(gap)
			}
			for _, on := range bigSigns[r][row] {
				if on == '#' {
					b.WriteString(dot)
				} else {
					b.WriteString(gap)
				}
			}
		}
		for range high {
			out = append(out, b.String())
		}
	}
	return out
}
