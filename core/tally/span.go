package tally

import "example.com/tintline/core"

// Span adds up the days from one date to another while the journal is folded: call Before with each entry
// before it is applied and After when it was, and Sum at the end. Empty dates have no bound.
type Span struct {
	From, To string
	Now      core.Maybe[core.Moment]
	sum      Tally
	held     *Tally      // the day before, until the opening of the next can no longer be struck
	opened   core.Moment // when the held day was opened
}

// Before takes the sums of a day whose figures the entry will end.
func (s *Span) Before(b *core.Book, e core.Entry) {
	if _, opens := e.What.(*core.DayOpened); opens {
		s.take(b)
	}
}

// After gives a day back whose end was struck: its figures stand in the book again.
func (s *Span) After(b *core.Book, e core.Entry) {
	if _, strike := e.What.(*core.Struck); !strike || s.held == nil {
		return
	}
	if d := b.Day(); d.Date == s.held.To && d.Opened == s.opened {
		s.held = nil
	}
}

// take holds the book's day and books the one held before.
func (s *Span) take(b *core.Book) {
	s.flush()
	d := b.Day()
	if d.Date == "" || (s.From != "" && d.Date < s.From) || (s.To != "" && d.Date > s.To) {
		return
	}
	day := Close(b, s.Now)
	s.held, s.opened = &day, d.Opened
}

func (s *Span) flush() {
	if s.held != nil {
		s.sum.add(s.held)
		s.held = nil
	}
}

// Sum is what the days come to; false if the book has no day in the span.
func (s *Span) Sum(b *core.Book) (Tally, bool) {
	s.take(b)
	s.flush()
	return s.sum, s.sum.From != ""
}
