package check

import (
	"fmt"
	"strings"
)

// OwnNote begins the source of what the operator's own note says.
const OwnNote = "own note"

// GroundWords says where a limit comes from, as people read it. What was recalled was read by nobody.
func GroundWords(ground string) string {
	if ground == GroundRecalled {
		return "recalled, not read"
	}
	return strings.ReplaceAll(ground, "_", " ")
}

// GroundWords says on what the finding rests.
func (f *Finding) GroundWords() string {
	if f.Ground == GroundSetting && strings.HasPrefix(strings.ToLower(f.Source), OwnNote) {
		return OwnNote
	}
	return GroundWords(f.Ground)
}

// SourceWords is the ground with its source whole; empty where the finding has neither.
func (f *Finding) SourceWords() string {
	ground, source := f.GroundWords(), strings.TrimSpace(f.Source)
	switch {
	case ground == "" || source == "":
		return ground + source
	case strings.HasPrefix(strings.ToLower(source), ground):
		return source
	}
	return ground + ", " + source
}

// FigureWords are figure and limit with their unit; empty where the finding has no figure.
func (f *Finding) FigureWords() string {
	if !f.Figured.Known {
		return ""
	}
	unit := " " + strings.ReplaceAll(f.Unit, "_", " ")
	if f.Unit == "multiple" {
		unit = " times"
	}
	words := "figured " + sized(f.Figured.V) + unit
	if f.Limit.Known {
		words += ", limit " + sized(f.Limit.V) + unit
	}
	return strings.TrimRight(words, " ")
}

// sized is a figure for the eye: three digits, none of them behind the point from 100 up.
func sized(v float64) string {
	if v >= 100 || v <= -100 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.3g", v)
}
