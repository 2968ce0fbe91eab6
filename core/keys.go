package core

// The ordered keys under which an entry can be found again without reading the journal: its day, and the
// lawn it is about. A key ends in no separator; the store keeps keys apart.

// DayKey is the key of the entries of a day, "day/2026-05-28".
func DayKey(date string) []byte { return []byte("day/" + date) }

// LawnKey is the key of the entries about a lawn.
func LawnKey(lawn string) []byte { return []byte("lawn/" + lawn) }

// Keys lists the keys of a fact entered now.
func (s *state) Keys(f Fact, at Moment) [][]byte {
	date := at.Date()
	if s.day.Open {
		date = s.day.Date
	}
	var lawn string
	switch f := f.(type) {
	case *DayOpened:
		date = f.Date
	case *Lawn:
		lawn = f.LawnName
	case *VisitBegun:
		lawn = f.Lawn
	case *VisitSkipped:
		lawn = f.Lawn
	case *VisitDone:
		lawn = f.Lawn
	case *Sprayed:
		lawn = f.Lawn
	case *Overridden:
		lawn = f.Lawn
	case *CarriedOver:
		lawn = f.Lawn
	case *Noted:
		lawn = f.Lawn
	case *Spread:
		lawn = f.Lawn
	}
	out := [][]byte{DayKey(date)}
	if lawn != "" {
		out = append(out, LawnKey(lawn))
	}
	return out
}
