// Package theme turns tokens into escape codes: what a piece of text means on one side, how it looks on the
// other. It is the only place that knows a colour. Every token can be told from its neighbours without colour,
// by words and signs that the screen draws in any theme.
package theme

import "github.com/charmbracelet/lipgloss"

// Token says what a piece of text means.
type Token uint8

// The tokens.
const (
	Base Token = iota
	Dim
	Strong
	Rule
	Head
	Demo
	Stop
	Ask
	Note
	Next
	Act     // the band that says what Enter does
	ActStop // the same where an answer is needed first
	ActOff  // the same where nothing is to be done
	Waiting
	Booked
	Refused
	Key
	Field
	Cursor
	Nozzle
	Water
	Tank
	CompA
	CompB
	CompC
	CompD
	CompE
	CompF
	count
)

// Compartment is the token of a compartment's liquid: by the colour that the operator gave it where the theme
// knows the word, else by its letter.
func Compartment(letter byte, colour string) Token {
	for i, c := range colourWords {
		if c == colour {
			return CompA + Token(i)
		}
	}
	if letter >= 'a' && letter <= 'f' {
		return CompA + Token(letter-'a')
	}
	return Water
}

// colourWords are the words for the colours of CompA to CompF.
var colourWords = [...]string{"yellow", "blue", "red", "green", "purple", "white"}

// look is how one token is drawn.
type look struct {
	fg, bg    ink
	bold      bool
	reverse   bool
	underline bool
}

// ink is a colour in the three sets of colours that terminals have; empty leaves it alone.
type ink struct{ full, many, few string }

func (i ink) set() bool { return i != ink{} }

// dark tells whether it is one of the eight darker of sixteen colours. Many terminals draw those brighter where they
// are bold, and so make black on white grey.
func (i ink) dark() bool { return len(i.few) == 1 && i.few < "8" }

func (i ink) colour() lipgloss.CompleteColor {
	return lipgloss.CompleteColor{TrueColor: i.full, ANSI256: i.many, ANSI: i.few}
}

// The names of the themes.
const (
	Night = "night"
	Sun   = "sun"
	Plain = "plain"
)

// Names lists the themes.
func Names() []string { return []string{Night, Sun, Plain} }

func looks(name string) [count]look {
	switch name {
	case Sun:
		return sun()
	case Plain:
		return plain()
	}
	return night()
}
