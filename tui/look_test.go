package tui

import (
	"fmt"
	"os"
	"testing"
	"time"

	demodata "example.com/tintline/testdata/demo"
)

func TestLook(t *testing.T) {
	if os.Getenv("LOOK") == "" {
		t.Skip()
	}
	for _, s := range [][2]int{{40, 16}, {80, 24}, {120, 40}} {
		c := inRig(t, demodata.Journal, demo, func(o *Options) { o.Now = func() time.Time { return o.Book.LastAt().Time().Add(4 * time.Minute) } }).size(s[0], s[1])
		c.press("g", "k")
		fmt.Println(c.screen())
		c.press("right", "down", "down", "right", "right", "down")
		c.press("w")
		c.press("esc", "up", "up", "up", "enter")
		fmt.Println(c.screen())
		for range 5 {
			c.press("pgdown")
			fmt.Println(c.screen())
		}
	}
}
