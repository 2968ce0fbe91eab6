package say

import (
	"fmt"

	"example.com/tintline/core"
)

func signed(f *core.Signed) string {
	if f.What == core.SignsDown {
		return "signs taken down at " + f.Lawn + clock(f.Clock)
	}
	s := fmt.Sprintf("%d %s put up at %s%s", f.Count, plural(f.Count, "sign"), f.Lawn, clock(f.Clock))
	if f.Hours.Known {
		s += fmt.Sprintf(", for %g h", f.Hours.V)
	}
	if f.Until != "" {
		s += ", until " + f.Until
	}
	return s
}

func clock(at string) string {
	if at == "" {
		return ""
	}
	return " at " + at
}

func plural(n int64, word string) string {
	if n == 1 {
		return word
	}
	return word + "s"
}

func told(f *core.Told) string {
	who := "the customer"
	if f.Whom == core.ToldNeighbour {
		who = f.Person
	} else if f.Person != "" {
		who += " (" + f.Person + ")"
	}
	s := "told " + who + " of " + f.Lawn
	if f.Result == core.ToldFailed {
		s = "no answer from " + who + " of " + f.Lawn
	}
	s += ", " + core.ContactWords(f.How) + clock(f.Clock)
	if len(f.Given) > 0 {
		s += ": " + core.GivenWords(f.Given)
	}
	if f.For != "" {
		s += " for " + f.For
	}
	if f.EarliestStart != "" || f.LatestFinish != "" {
		s += ", " + f.EarliestStart + " to " + f.LatestFinish
	}
	if f.Note != "" {
		s += " (" + f.Note + ")"
	}
	return s
}

func neighbour(f *core.Neighbour) string {
	if f.Gone != "" {
		return f.NeighbourName + " need not be told of " + f.Lawn + " any more"
	}
	s := f.NeighbourName + " is to be told before " + f.Lawn + " is treated"
	if f.Phone != "" {
		s += ", " + f.Phone
	}
	if f.Feet.Known {
		s += fmt.Sprintf(", %g ft off", f.Feet.V)
	}
	if w := f.Ahead(); w != "" {
		s += ", " + w
	}
	if f.Until != "" {
		s += ", until " + f.Until
	}
	return s
}
