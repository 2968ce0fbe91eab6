package core

import "example.com/tintline/core/measure"

// TruedUp: the gallons that were logged on the lawns since a compartment's last reading were put right by what its gauge
// showed. More goes from the unexplained to the lawns, less back to it, at the composition that was laid there. The tank
// itself has the reading already. Without lines all of the difference is shared over the sprayings logged by area.
type TruedUp struct {
	Tank  string // a letter
	Lines []TruedLine
	// What follows from the book, filled in: how much more left the compartment than was logged since the reading or load
	// before, less being negative, and how much of it is moved.
	Showed Maybe[measure.Volume]
	Moved  Maybe[measure.Volume]
	// Include names ways of measuring whose sprayings are put right too: gallons, gauge.
	Include []string
}

// TruedLine is what one spraying of the day on one zone is put right by. It is named by its place among what was laid on
// that zone on the day, from 1, and by the gallons that it had: a spraying that is struck then takes the line with it.
type TruedLine struct {
	Lawn, Zone string
	Nth        int64
	Logged     measure.Volume
	More       measure.Volume // less: below 0
}

// Kind of the fact.
func (*TruedUp) Kind() Kind { return kindTruedUp }

// Name of the fact.
func (*TruedUp) Name() string { return "trued_up" }

func (f *TruedUp) fields(w walker) {
	w.text(1, "tank", &f.Tank)
	list(w, 2, "lines", &f.Lines, func(w walker, l *TruedLine) {
		w.text(1, "lawn", &l.Lawn)
		w.text(2, "zone", &l.Zone)
		w.integer(3, "nth", &l.Nth)
		w.volume(4, "logged", &l.Logged)
		w.volume(5, "more", &l.More)
	})
	w.maybeVolume(3, "showed", &f.Showed)
	w.maybeVolume(4, "moved", &f.Moved)
	w.later()
	w.texts(5, "include", &f.Include)
}

// Sum is what all lines together move to the lawns.
func (f *TruedUp) Sum() measure.Volume {
	var sum measure.Volume
	for i := range f.Lines {
		sum += f.Lines[i].More
	}
	return sum
}
