package say

import (
	"fmt"

	"example.com/tintline/core"
)

// paid is "paid $62.40 for fuel, 18.00 gal, of the rig: at the corner", "came in: $200.00, old pump".
func paid(f *core.Paid) string {
	s := "paid " + f.Amount.V.Text() + " for " + f.What
	if f.What == core.PaidIn {
		s = "came in: " + f.Amount.V.Text()
	}
	if f.Fuel.Known {
		s += ", " + f.Fuel.V.Text() + " gal"
	}
	if f.Of != "" {
		s += ", of " + f.Of
	}
	if f.Date != "" {
		s += ", on " + f.Date
	}
	if f.Note != "" {
		s += ": " + f.Note
	}
	return s
}

// invested is "bought ride-on for $9,500.00 on 2026-04-01; saves 4 min a lawn with RIDE", "retired ride-on on 2026-11-01, sold for $3,000.00".
func invested(f *core.Invested) string {
	if f.Retired != "" {
		s := "retired " + f.Thing + " on " + f.Retired
		if f.SoldFor.Known {
			s += ", sold for " + f.SoldFor.V.Text()
		}
		return s
	}
	s := "bought " + f.Thing + " for " + f.Cost.V.Text() + " on " + f.Date
	if f.Salvage.Known {
		s += ", worth " + f.Salvage.V.Text() + " at the end"
	}
	if f.Years.Known {
		s += fmt.Sprintf(", in use for %g years", f.Years.V)
	}
	if f.Interest.Known {
		s += fmt.Sprintf(", at %g %% interest", f.Interest.V)
	}
	switch f.Earns {
	case core.EarnsApplicator:
		s += "; earns by the visits with " + f.Applicator
	case core.EarnsMinutes:
		s += fmt.Sprintf("; saves %g min a lawn with %s", f.Minutes.V, f.Applicator)
	}
	return s
}

// left is "left 12 Oak", "left 12 Oak, $55.00".
func left(f *core.VisitDone) string {
	if f.Price.Known && f.Price.V == 0 {
		return "left " + f.Lawn + ", no charge"
	}
	if f.Price.Known {
		return "left " + f.Lawn + ", " + f.Price.V.Text()
	}
	return "left " + f.Lawn
}
