package say

import (
	"fmt"
	"strings"

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

var contactWords = map[string]string{
	core.ByPaper: "paper at the door", core.ByPhone: "by phone", core.ByText: "by text", core.ByMail: "by mail", core.ByEmail: "by e-mail",
	core.InPerson: "in person", core.ByDoorNote: "note on the door",
}

// ContactWords is how a contact was made, in words.
func ContactWords(how string) string {
	if w := contactWords[how]; w != "" {
		return w
	}
	return how
}

var givenWords = map[string]string{
	core.GaveNotice: "notice", core.GaveAdvance: "advance notice", core.GaveRecord: "copy of the record", core.GaveLabel: "label",
}

// GivenWords is what a contact gave, in words.
func GivenWords(given []string) string {
	var out []string
	for _, g := range given {
		if w := givenWords[g]; w != "" {
			g = w
		}
		out = append(out, g)
	}
	return strings.Join(out, ", ")
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
	s += ", " + ContactWords(f.How) + clock(f.Clock)
	if len(f.Given) > 0 {
		s += ": " + GivenWords(f.Given)
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
	if w := HoursAhead(f); w != "" {
		s += ", " + w
	}
	if f.Until != "" {
		s += ", until " + f.Until
	}
	return s
}

// HoursAhead is how long before a treatment a neighbour is to be told, in words; empty if no time is set.
func HoursAhead(f *core.Neighbour) string {
	switch {
	case f.HoursLeast.Known && f.HoursMost.Known:
		return fmt.Sprintf("%g to %g h ahead", f.HoursLeast.V, f.HoursMost.V)
	case f.HoursLeast.Known:
		return fmt.Sprintf("at least %g h ahead", f.HoursLeast.V)
	case f.HoursMost.Known:
		return fmt.Sprintf("at most %g h ahead", f.HoursMost.V)
	}
	return ""
}
