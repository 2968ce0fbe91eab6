package say

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/calib"
)

func calibrated(f *core.Calibrated) string {
	s := "catch test of " + f.Applicator
	if f.Tip != "" {
		s += " with " + f.Tip
	}
	if f.Product != "" {
		s += " with " + f.Product
	}
	if f.Delivery.Known {
		s += ": " + calib.RateText(f.Delivery.V)
	}
	if f.Flow.Known {
		s += ", " + f.Flow.V.Text()
	}
	if d, ok := calib.DriftOf(f.Delivery.V, f.Meant.V, calib.Usual()); ok && f.Delivery.Known && f.Meant.Known {
		if d.Same() {
			s += ", as meant"
		} else {
			s += ", " + d.Words() + " than meant"
		}
	}
	if n := len(f.Runs); n > 1 && f.SpreadPct.Known {
		s += fmt.Sprintf(", %d runs within %.1f per cent", n, f.SpreadPct.V)
	}
	if f.Accepted == core.Yes {
		s += "; in force from now on"
	} else {
		s += "; kept as a note"
	}
	if f.Text != "" {
		s += ": " + f.Text
	}
	return s
}
