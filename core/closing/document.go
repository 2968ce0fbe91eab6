package closing

import (
	"strings"

	"example.com/tintline/core"
)

// Document is what a close has before it, for JSON.
type Document struct {
	Date  string    `json:"date"`
	Day   string    `json:"day"` // open, closed, none
	Steps []StepRow `json:"steps"`
	Open  []string  `json:"does_not_add_up"`
}

// StepRow is a step; caution says whether it is a mix that stands overnight.
type StepRow struct {
	Kind    string `json:"kind"`
	Of      string `json:"of"`
	Says    string `json:"says"`
	More    string `json:"more"`
	Do      string `json:"do"`
	Caution bool   `json:"caution"`
}

// DocumentOf gathers what a close has before it.
func DocumentOf(b *core.Book, at core.Moment) Document {
	d := b.Day()
	out := Document{Date: d.Date, Day: "closed", Steps: []StepRow{}, Open: []string{}}
	switch {
	case d.Date == "":
		out.Day = "none"
	case d.Open:
		out.Day = "open"
	}
	for _, s := range Steps(b) {
		out.Steps = append(out.Steps, StepRow{s.Kind, s.Of, s.Says, s.More, s.Then, s.Ask})
	}
	out.Open = append(out.Open, Open(b, at)...)
	return out
}

// Text is the same for people.
func (d Document) Text() string {
	if d.Day != "open" {
		return "No day is open; the last one was " + d.Date + ".\n"
	}
	var w strings.Builder
	w.WriteString("To close " + d.Date + ":\n")
	stays := false
	for i := range d.Steps {
		s := &d.Steps[i]
		if s.Kind == Stays {
			stays = true
			continue
		}
		w.WriteString("  " + s.said())
		if s.Do != "" {
			w.WriteString(": " + s.Do)
		}
		w.WriteString("\n")
	}
	if stays {
		w.WriteString("Stays overnight:\n")
		for i := range d.Steps {
			s := &d.Steps[i]
			if s.Kind == Stays {
				w.WriteString("  " + s.said() + "\n")
			}
		}
		w.WriteString(StandingCaution + "\n")
	}
	if len(d.Open) == 0 {
		w.WriteString("It adds up.\n")
		return w.String()
	}
	w.WriteString("Does not add up, or is not done:\n")
	for _, o := range d.Open {
		w.WriteString("  " + o + "\n")
	}
	return w.String()
}

func (s *StepRow) said() string {
	if s.More == "" {
		return s.Says
	}
	return s.Says + " (" + s.More + ")"
}
