package glance

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

// TestTextSaysWhatTheEyeWillSee, and that air comes first; without either it says nothing of them.
func TestTextSaysWhatTheEyeWillSee(t *testing.T) {
	for _, c := range []struct {
		is  Changeover
		say string
	}{
		{Changeover{Tint: core.BetweenAlike}, "no tint tells them apart: go by gallons"},
		{Changeover{Tint: core.TowardsClear, TintGone: 2.18}, "the last of the colour goes at about 2.18 gal; it is late"},
		{Changeover{Air: 0.86}, "air comes first, 0.86 gal of it"},
	} {
		if got := c.is.Text(); !strings.Contains(got, c.say) {
			t.Error(got)
		}
	}
	for _, quiet := range []string{"", core.TowardsTint} {
		if got := (&Changeover{Tint: quiet}).Text(); strings.Contains(got, "apart") || strings.Contains(got, "colour") || strings.Contains(got, "air") {
			t.Error(got)
		}
	}
}
