package tally

import "example.com/tintline/core"

// Span adds up the days from one date to another while the journal is folded: call Before with each entry
// before it is applied and After when it was, and Sum at the end. Empty dates have no bound.
type Span struct {
	From, To string
	Now      core.Maybe[core.Moment]
	sum      Tally
	held     *Tally // the day before, until the opening of the next can no longer be struck
	opened   uint64 // the entry that opened the held day
}

// Before takes the sums of a day whose figures the entry will end.
func (s *Span) Before(b *core.Book, e core.Entry) {
	if _, opens := e.What.(*core.DayOpened); opens {
		s.take(b, core.Maybe[core.Moment]{}) // whatever the time is now, that day is over
	}
}

// After gives a day back whose end was struck: its figures stand in the book again.
func (s *Span) After(b *core.Book, e core.Entry) {
	if _, strike := e.What.(*core.Struck); !strike || s.held == nil {
		return
	}
	if b.Day().Seq == s.opened {
		s.held = nil
	}
}

// take holds the book's day and books the one held before.
func (s *Span) take(b *core.Book, now core.Maybe[core.Moment]) {
	s.flush()
	d := b.Day()
	if d.Date == "" || (s.From != "" && d.Date < s.From) || (s.To != "" && d.Date > s.To) {
		return
	}
	day := Close(b, now)
	s.held, s.opened = &day, d.Seq
}

func (s *Span) flush() {
	if s.held != nil {
		s.sum.AddDay(s.held)
		s.held = nil
	}
}

// Sum is what the days come to; false if the book has no day in the span.
func (s *Span) Sum(b *core.Book) (Tally, bool) {
	s.take(b, s.Now)
	s.flush()
	return s.sum, s.sum.From != ""
}
