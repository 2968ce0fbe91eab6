package core

// Fold adds a journal to a book, entry by entry, and comes to what Apply comes to. What is struck is known before anything
// is moved, so that a day is folded once, however many slips were put right on it.
type Fold struct {
	b       *Book
	wait    []Entry // since the last close or opening, not yet added
	strikes bool    // there is one among them
}

// NewFold begins to add to a book.
func NewFold(b *Book) *Fold { return &Fold{b: b} }

// Add takes the next entry and refuses what Apply refuses. The book has it after End.
func (f *Fold) Add(e Entry) error {
	switch e.What.(type) {
	case *DayOpened, *DayClosed:
		f.End()
		return f.b.Apply(e)
	}
	if err := f.b.follows(e); err != nil {
		return err
	}
	if _, strike := e.What.(*Struck); strike {
		f.strikes = true
	}
	f.wait = append(f.wait, e)
	f.b.mark = mark{e.Seq, e.Digest, e.Truck, e.At}
	return nil
}

// End adds what waits.
func (f *Fold) End() {
	wait, strikes := f.wait, f.strikes
	f.wait, f.strikes = nil, false
	if !strikes {
		for _, e := range wait {
			f.b.keep(e)
		}
		return
	}
	for _, e := range wait {
		f.b.since = append(f.b.since, sinceLine{entry: e})
		if s, strike := e.What.(*Struck); strike {
			f.b.since = markStruck(f.b.since, e.Seq, s)
		}
	}
	f.b.again()
}
