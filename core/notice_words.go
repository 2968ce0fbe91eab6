package core

import (
	"fmt"
	"strings"
)

var contactWords = map[string]string{
	ByPaper: "paper at the door", ByPhone: "by phone", ByText: "by text", ByMail: "by mail", ByEmail: "by e-mail",
	InPerson: "in person", ByDoorNote: "note on the door",
}

// ContactWords is how a contact was made, in words.
func ContactWords(how string) string {
	if w := contactWords[how]; w != "" {
		return w
	}
	return how
}

var givenWords = map[string]string{
	GaveNotice: "notice", GaveAdvance: "advance notice", GaveRecord: "copy of the record", GaveLabel: "label",
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

// Ahead is how long before a treatment a neighbour is to be told, in words; empty if no time is set.
func (f *Neighbour) Ahead() string {
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
