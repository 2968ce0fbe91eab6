package say

import (
	"fmt"

	"example.com/tintline/core"
)

// truedUp tells how much went to or from how many lawns.
func truedUp(f *core.TruedUp) string {
	lawns := map[string]bool{}
	for i := range f.Lines {
		lawns[f.Lines[i].Lawn] = true
	}
	on := "1 lawn"
	if n := len(lawns); n != 1 {
		on = fmt.Sprintf("%d lawns", n)
	}
	if v := f.Moved.V; v < 0 {
		return fmt.Sprintf("trued up %s: %s gal less on %s", f.Tank, (-v).Text(), on)
	}
	return fmt.Sprintf("trued up %s: %s gal more on %s", f.Tank, f.Moved.V.Text(), on)
}
