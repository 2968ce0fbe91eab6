package tui

import (
	"strings"
	"testing"
)

// TestAllOfAPageIsRead goes down page by page and row by row, on the smallest screen, and back up: every row comes
// into sight, whether it can be chosen or is text between.
func TestAllOfAPageIsRead(t *testing.T) {
	for _, keys := range [][]string{{"g", "p", "enter"}, {"g", "n", "t"}, {"g", "g"}, {"g", "x", "enter"}, {"g", "o"}, {"g", "u"}, {"?"}} {
		for _, down := range []string{"down", "pgdown"} {
			c := twoLawns(t).size(40, 16).press(keys...)
			rows := c.model().sheet.rows
			seen := map[int]bool{}
			look := func() {
				screen := strings.Split(c.screen(), "\n")
				m := c.model()
				at := m.on[m.spec().page]
				for i := at.top; i < min(at.top+at.rows, len(rows)); i++ {
					line := strings.Join(screen, "\n")
					if words := strings.TrimSpace(rowWords(rows[i])); strings.Contains(line, cutTo(words, 20)) {
						seen[i] = true
					}
				}
			}
			look()
			for range 3 * len(rows) {
				c.press(down)
				look()
			}
			for i := range rows {
				if !seen[i] {
					t.Errorf("%v, %s: row %d never comes into sight: %q", keys, down, i, rowWords(rows[i]))
				}
			}
			for range 3 * len(rows) {
				c.press("up")
			}
			m := c.model()
			if at := m.on[m.spec().page]; at.top != 0 {
				t.Errorf("%v: after going up the first row in sight is %d", keys, at.top)
			}
		}
	}
}

func rowWords(r row) string {
	s := ""
	for _, p := range r.left {
		s += p.s
	}
	return s
}

func cutTo(s string, n int) string { return s[:min(n, len(s))] }
