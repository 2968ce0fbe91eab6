package core

// notesKept is how many notes of a lawn the book holds; older ones stand in the journal.
const notesKept = 8

// LawnNote is what was once written down about a lawn.
type LawnNote struct{ Date, Text string }

// Notes lists the last notes of a lawn, newest last.
func (s *state) Notes(lawn string) []LawnNote { return s.notes[lawn] }

func (s *state) applyNoted(e Entry, f *Noted) {
	if s.Lawn(f.Lawn) == nil {
		return
	}
	old := s.notes[f.Lawn]
	if n := len(old) + 1 - notesKept; n > 0 {
		old = old[n:]
	}
	s.notes[f.Lawn] = append(append([]LawnNote(nil), old...), LawnNote{e.At.Date(), f.Text}) // a clone shares the old list
}
