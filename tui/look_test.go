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
		c.press("g", "l")
		for range 6 {
			fmt.Println(c.screen())
			c.press("pgdown")
		}
	}
}
