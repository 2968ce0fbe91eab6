package tui

import (
	"errors"
	"strings"
	"testing"

	"example.com/tintline/core"
)

func TestTroubleTriesAgain(t *testing.T) {
	c := climbIn(t, atAlder)
	before, had := c.book().StateDigest(), len(c.disk.entries)
	c.disk.err = &core.Problem{What: "The disk is full.", Do: "Free some room.", Err: errDisk}
	c.slow = true
	c.press("enter", "b") // the second waits behind the first
	c.slow = false
	c.catchUp()
	c.sees("The disk is full.", "Free some room.", "pushed back", "One more action waits behind this one.", "Enter tries again")
	c.press("a", "y", "l", "u", "esc", "?", "g").sees("The disk is full.")
	c.press("enter").sees("The disk is full.")
	if c.book().StateDigest() != before || len(c.disk.entries) != had {
		t.Error("something was booked that the disk does not have")
	}
	c.disk.err = nil
	c.press("enter").seesNot("The disk is full.").sees("booked")
	if got := c.facts(); !strings.HasSuffix(got, "pushed_back lined_up") {
		t.Errorf("logged %s", got)
	}
	if c.model().Trouble() != nil {
		t.Errorf("left to say: %v", c.model().Trouble())
	}
}

func TestTroubleIsLeftToSay(t *testing.T) {
	c := climbIn(t, atAlder)
	c.disk.err = &core.Problem{What: "The disk is full.", Do: "Free some room.", Err: errDisk}
	c.press("enter")
	if c.press("q"); !c.quit || !errors.Is(c.model().Trouble(), errDisk) {
		t.Errorf("quit %v, trouble %v", c.quit, c.model().Trouble())
	}
}

func TestPanicInTheJournalEndsInOrder(t *testing.T) {
	c := climbIn(t, atAlder)
	c.disk.panics = true
	c.press("enter")
	if !c.quit || c.model().Trouble() == nil || !strings.Contains(c.model().Trouble().Error(), "the card is gone") {
		t.Errorf("quit %v, trouble %v", c.quit, c.model().Trouble())
	}
}
