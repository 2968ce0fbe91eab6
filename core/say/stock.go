package say

import (
	"strconv"

	"example.com/tintline/core"
	"example.com/tintline/core/batch"
)

// stocked is "bought 2 jugs of 2.5 gal of P for $62.00", "counted 3.75 gal of P".
func stocked(f *core.Stocked) string {
	switch f.What {
	case core.Counted:
		return "counted " + f.Amount.Text() + " of " + f.Product
	case core.Reorder:
		if f.Amount.N == 0 {
			return "no line any more below which " + f.Product + " is to be bought"
		}
		return "buy " + f.Product + " when it is below " + f.Amount.Text()
	}
	s := "bought " + f.Amount.Text() + " of " + f.Product
	if f.Packages.Known && f.Package.N > 0 {
		s = "bought " + batch.Packages(int64(f.Packages.V), f.Package, "") + " of " + f.Product
	}
	if f.Paid.Known {
		s += " for " + f.Paid.V.Text()
	}
	if f.Supplier != "" {
		s += " from " + f.Supplier
	}
	if f.Lot != "" {
		s += ", lot " + strconv.Quote(f.Lot)
	}
	return s
}
