package say

import (
	"fmt"

	"example.com/tintline/core"
)

func spread(f *core.Spread) string {
	s := fmt.Sprintf("spread %s of %s on %s", f.Amount.Text(), f.Product, f.Lawn)
	if len(f.Zones) > 0 {
		s += " " + and(f.Zones)
	}
	return s + " with " + f.Applicator
}
