package say

import (
	"fmt"

	"example.com/tintline/core"
)

func loadPlanned(f *core.LoadPlanned) string {
	if f.Volume == 0 {
		return "no load is planned for " + f.Into + " any more"
	}
	s := fmt.Sprintf("to load into %s: %s gal", f.Into, f.Volume.Text())
	if f.Mix != "" {
		s += " of " + f.Mix
	}
	if f.For != "" {
		s += " for " + f.For
	}
	var parts []string
	for _, p := range f.Parts {
		parts = append(parts, p.Amount.Text()+" "+p.Product)
	}
	if len(parts) > 0 {
		return s + ": " + and(parts)
	}
	return s
}

func ticked(f *core.Ticked) string {
	if f.Undo == "yes" {
		return f.List + ": " + f.Item + " is not done after all"
	}
	return f.List + ": " + f.Item + " is done"
}
