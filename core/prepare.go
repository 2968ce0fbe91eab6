package core

// Prepare turns facts into the entries of one action: what follows from the book is filled in, each fact is
// admitted, numbered and chained. It only reads; the book changes by Apply, after the entries are kept. The
// error is a Problem and refuses all of them.
//
// An entry holds the fact as it will be read back from its stored form, and shares nothing with the fact
// given: what is applied now is what a later fold applies.
func (b *Book) Prepare(action string, at Moment, facts ...Fact) ([]Entry, error) {
	if !at.sound() {
		return nil, refuse("Set the clock.", "The time of the entry, %s, cannot be kept; a book keeps the years 1 to 9998.", at)
	}
	on := b
	if len(facts) > 1 {
		on = b.Clone()
	}
	out := make([]Entry, 0, len(facts))
	for _, f := range facts {
		full, err := on.admit(f, at)
		if err != nil {
			return nil, err
		}
		e := Entry{Seq: on.seq + 1, At: at, Action: action, Truck: on.truck, What: full, Keys: on.Keys(full, at)}
		body := e.body()
		e.Digest = chain(on.digest, e.Seq, e.Truck, body)
		back, err := Decode(e.Seq, action, append(body, e.Digest[:]...))
		if err != nil { // plain should have refused it; an entry that cannot be read would end the book
			return nil, refuse("Report this with what you entered.", "The entry could not be read back: %v.", err)
		}
		e.What = back.What
		out = append(out, e)
		if len(facts) > 1 {
			if err := on.Apply(e); err != nil {
				return nil, err
			}
		}
	}
	return out, nil
}

// admit fills a fact in and says whether it could have happened.
func (b *Book) admit(f Fact, at Moment) (Fact, error) {
	if f == nil {
		return nil, refuse("Name a fact.", "An entry holds no fact.")
	}
	if err := plain(f); err != nil {
		return nil, err
	}
	if s, ok := f.(*Struck); ok {
		return b.admitStruck(s)
	}
	full, err := b.state.resolve(f)
	if err != nil {
		return nil, err
	}
	return full, b.state.admit(full, at)
}

// Apply adds an entry to the book. It refuses only an entry that does not follow the last one, or whose
// digest does not; whatever was written once always applies.
func (b *Book) Apply(e Entry) error {
	if err := b.follows(e); err != nil {
		return err
	}
	switch f := e.What.(type) {
	case *DayOpened:
		if b.day.Open {
			// What was written on the day left open can no longer be struck, but this opening can: then that
			// day is open again, as if the new one had never been opened.
			b.rebase(b.mark)
		}
		b.keep(e)
	case *DayClosed:
		b.state.apply(e)
		b.rebase(mark{e.Seq, e.Digest, e.Truck, e.At})
	case *Struck:
		b.strike(e, f)
	default:
		b.keep(e)
	}
	b.mark = mark{e.Seq, e.Digest, e.Truck, e.At}
	return nil
}

// follows tells why an entry cannot come next.
func (b *Book) follows(e Entry) error {
	if e.What == nil {
		return &Problem{What: "An entry holds no fact.", Do: "Run this book with the version that wrote it.", Err: ErrCode}
	}
	if e.Seq != b.seq+1 {
		return &Problem{What: orderSentence(e.Seq, b.seq), Do: "Close the program and open the book again.", Err: ErrOrder}
	}
	if want := chain(b.digest, e.Seq, e.Truck, e.body()); want != e.Digest {
		return &Problem{What: chainSentence(e.Seq), Do: "Keep the file as it is and go back to the last copy.", Err: ErrChain}
	}
	return nil
}

func (b *Book) keep(e Entry) {
	b.state.apply(e)
	b.since = append(b.since, sinceLine{entry: e})
}
