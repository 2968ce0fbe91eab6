package tui

import (
	"strings"
	"testing"
	"unicode"
)

// TestKeys holds what is promised about keys in every situation: no two that work share a key, each is readable
// at 80 columns and has a place to tap, and none could be the tail of a torn escape sequence.
func TestKeys(t *testing.T) {
	for _, s := range situations {
		t.Run(s.name, func(t *testing.T) {
			c := s.cab(t).size(80, 24)
			m := c.model()
			used := map[string]bool{}
			lines := strings.Split(c.screen(), "\n")
			for _, b := range m.keys {
				if !b.Enabled() {
					continue
				}
				for _, k := range b.Keys() {
					if used[k] {
						t.Errorf("two keys that work are %q", k)
					}
					used[k] = true
					if r := []rune(k); len(r) == 1 && (unicode.IsUpper(r[0]) || unicode.IsDigit(r[0]) || r[0] == 'm') {
						t.Errorf("%q is bound", k)
					}
				}
				readable, tappable := false, false
				h := b.Help()
				words := strings.TrimSpace(h.Key + " " + h.Desc)
				for _, l := range lines {
					readable = readable || strings.Contains(l, words)
				}
				for _, p := range m.scene.spots {
					if b.page == pageMenu && p.row == b.Keys()[0] {
						tappable = true
					}
					if p.tapTarget == b.target() {
						tappable = true
						if p.x < 0 || p.y < 0 || p.x+p.w > 80 || p.y+p.h > 24 || p.w <= 0 || p.h <= 0 {
							t.Errorf("the place of %q lies off the screen: %+v", words, p.rect)
						}
					}
				}
				if b.act == actPageUp || b.act == actPageDown {
					continue // Up and Down do the same
				}
				if !readable || !tappable {
					t.Errorf("%q: readable %v, tappable %v\n%s", words, readable, tappable, c.screen())
				}
			}
		})
	}
}

// TestSpotsAreDisjoint: a finger means one thing.
func TestSpotsAreDisjoint(t *testing.T) {
	for _, s := range situations {
		c := s.cab(t)
		for _, size := range [][2]int{{40, 16}, {60, 20}, {80, 24}, {120, 40}} {
			spots := c.size(size[0], size[1]).model().scene.spots
			for i, a := range spots {
				for _, b := range spots[i+1:] {
					if a.x < b.x+b.w && b.x < a.x+a.w && a.y < b.y+b.h && b.y < a.y+a.h {
						t.Errorf("%s at %v: %+v and %+v overlap", s.name, size, a, b)
					}
				}
			}
		}
	}
}

func TestKeysKeepTheirPlaces(t *testing.T) {
	c := climbIn(t, morning)
	at := map[string]int{}
	for _, k := range []string{"enter", "enter", "enter", "enter"} {
		m := c.model()
		places, _ := place(m.cabKeys(), 80)
		for _, p := range places {
			name := p.b.Help().Key
			if was, ok := at[name]; ok && was != p.row*80+p.x {
				t.Errorf("%s moved", name)
			}
			at[name] = p.row*80 + p.x
		}
		c.press(k)
	}
}

func TestHelpListsEveryKey(t *testing.T) {
	c := climbIn(t, atAlder).press("?")
	words := ""
	for _, r := range c.model().sheet.rows {
		for _, p := range r.left {
			words += p.s
		}
		words += "\n"
	}
	for _, b := range newKeys(newPages()) {
		if b.long != "" && b.act != actTake && !strings.Contains(words, b.Help().Key+" ") {
			t.Errorf("%q is not on the page of keys", b.Help().Key)
		}
	}
}
