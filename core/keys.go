package core

// The ordered keys under which an entry can be found again without reading the journal: its day, and the
// lawn it is about. A key ends in no separator; the store keeps keys apart.

// DayKey is the key of the entries of a day, "day/2026-05-28".
func DayKey(date string) []byte { return []byte("day/" + date) }

// LawnKey is the key of the entries about a lawn.
func LawnKey(lawn string) []byte { return []byte("lawn/" + lawn) }

// ManyLawnsKey is the key of a strike that is about more lawns than an entry can have keys for.
func ManyLawnsKey() []byte { return []byte("lawns") }

// Keys lists the keys of a fact entered now, before it is applied: its day, and the lawn that it is about. A strike is
// about the lawns of what it takes out and puts in.
func (b *Book) Keys(f Fact, at Moment) [][]byte {
	date := at.Date()
	if b.day.Open {
		date = b.day.Date
	}
	if d, ok := f.(*DayOpened); ok {
		date = d.Date
	}
	out := [][]byte{DayKey(date)}
	if s, ok := f.(*Struck); ok {
		return append(out, b.strikeKeys(s)...)
	}
	if lawn := LawnOf(f); lawn != "" {
		out = append(out, LawnKey(lawn))
	}
	return out
}

// strikeKeys are the keys of the lawns that a strike is about: two, or else the one for many.
func (b *Book) strikeKeys(f *Struck) [][]byte {
	const most = 2
	var lawns []string
	add := func(f Fact) {
		if f == nil {
			return
		}
		if l := LawnOf(f); l != "" && !containsText(lawns, l) {
			lawns = append(lawns, l)
		}
	}
	for _, w := range b.Written() {
		if n := int64(w.Seq); n == f.Of || contains(f.Also, n) {
			add(w.Stands)
		}
	}
	add(f.Instead)
	if len(lawns) > most {
		return [][]byte{ManyLawnsKey()}
	}
	var out [][]byte
	for _, l := range lawns {
		out = append(out, LawnKey(l))
	}
	return out
}

// LawnOf is the lawn that a fact is about, empty if it is about none.
func LawnOf(f Fact) string {
	switch f := f.(type) {
	case *Lawn:
		return f.LawnName
	case *VisitBegun:
		return f.Lawn
	case *VisitSkipped:
		return f.Lawn
	case *VisitDone:
		return f.Lawn
	case *Sprayed:
		return f.Lawn
	case *Overridden:
		return f.Lawn
	case *CarriedOver:
		return f.Lawn
	case *Amended:
		return f.Lawn
	case *Noted:
		return f.Lawn
	case *Spread:
		return f.Lawn
	case *GrowthSeen:
		return f.Lawn
	case *Cautioned:
		return f.Lawn
	case *Signed:
		return f.Lawn
	case *Told:
		return f.Lawn
	case *Neighbour:
		return f.Lawn
	}
	return ""
}
