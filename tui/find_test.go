package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
)

func TestSearchByThreeLetters(t *testing.T) {
	c := climbIn(t, atAlder).press("s").sees("three letters").typed("wi").seesNot("2 Willow Way", "Nothing bears")
	c.press("enter").sees("No row is chosen.").typed("l").sees("2 Willow Way", "open the page of 2 Willow Way").press("enter").sees("Lawn", "5,600 sq ft")
	c.press("esc").sees("at 418 Alder Court")
	c.press("s").typed("zzz").sees("Nothing bears these letters.").press("esc").sees("at 418 Alder Court")
	c.press("g", "s").typed("triclo").sees("Example Cool").press("enter").sees("triclopyr").press("esc").sees("at 418 Alder Court")
	c.press("s").typed("iron, a").press("enter").sees("iron, any grass", "Example Iron")
	if c.facts() != "" {
		t.Errorf("logged: %s", c.facts())
	}
}

func TestSearchIsChosenWhileOneTypes(t *testing.T) {
	c := climbIn(t, atAlder).press("s").typed("lane").sees("77 Fir Lane", "12 Fir Lane", "open the page of 77 Fir Lane")
	c.press("down").sees("open the page of 12 Fir Lane", "look for: lane_").press("up").sees("open the page of 77 Fir Lane").press("down", "enter").sees("6,100 sq ft")
	c.press("esc", "s").typed("lane")
	for y, l := range strings.Split(c.screen(), "\n") {
		if strings.Contains(l, "12 Fir Lane") {
			c.tapAt(12, y).sees("6,100 sq ft")
			return
		}
	}
	t.Fatal("no row to tap")
}

func TestSearchTakesTextGluedToItsKey(t *testing.T) {
	climbIn(t, atAlder).send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("swill")}).sees("look for: will_", "2 Willow Way")
	climbIn(t, atAlder).press("g").send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("swill")}).sees("look for: will_")
}

func TestVisitIsPutInBehindAnother(t *testing.T) {
	c := climbIn(t, `{"fact":"lawn","name":"7 Ash Close","zones":[{"name":"all","grass":"tall_fescue","area_sqft":3300}]}`+"\n"+morning)
	c.press("g", "v").down("418 Alder").press("i").sees("put in behind 418 Alder Court").typed("warm").sees("Nothing bears").press("esc").sees("Visits of the day")
	c.press("i").typed("ash").press("enter").sees("Visits of the day", "booked still to do today: 77 Fir Lane, 418 Alder Court, 7 Ash Close, 12 Fir")
	c.press("i").typed("ash").press("enter").sees("NOT BOOKED", "named twice")
	c.press("esc", "s").sees("look for: _").typed("ash").press("enter").sees("Lawn", "3,300 sq ft")
}
