package say

import "example.com/tintline/core"

func fitted(f *core.Fitted) string {
	switch {
	case f.Hose == "":
		return "fitted " + f.Tip + " on " + f.Applicator
	case f.Tip == "":
		return "hung " + f.Applicator + " on hose " + f.Hose
	}
	return "fitted " + f.Tip + " on " + f.Applicator + " and hung it on hose " + f.Hose
}
