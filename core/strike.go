package core

import (
	"fmt"
	"strings"
)

func orderSentence(seq, last uint64) string {
	return fmt.Sprintf("Entry %d came after entry %d.", seq, last)
}

func chainSentence(seq uint64) string {
	return fmt.Sprintf("The digest of entry %d does not follow from the one before it: the entry, or one before it, was changed.", seq)
}

// fact is what a line adds to the sum: itself, what a strike put in its place, or nothing.
func (l *sinceLine) fact() Fact {
	if l.struckBy != 0 {
		return l.instead
	}
	if _, strike := l.entry.What.(*Struck); strike {
		return nil
	}
	return l.entry.What
}

// strike marks the lines and folds again from the last close.
func (b *Book) strike(e Entry, f *Struck) {
	b.since = markStruck(append(b.since, sinceLine{entry: e}), e.Seq, f)
	b.again()
}

// again folds what is in the sum from the last close.
func (b *Book) again() {
	s := b.base.clone()
	for i := range b.since {
		if what := b.since[i].fact(); what != nil {
			again := b.since[i].entry
			again.What = what
			s.apply(again)
		}
	}
	b.state = *s
}

// markStruck marks what f strikes. Striking a strike that put a fact in the place of another takes that
// fact away, or puts a new one there; the first one stays struck.
func markStruck(lines []sinceLine, seq uint64, f *Struck) []sinceLine {
	for i := range lines {
		l := &lines[i]
		switch n := int64(l.entry.Seq); {
		case l.by != 0 && int64(l.by) == f.Of:
			l.instead, l.by = f.Instead, seq
		case l.by != 0 && contains(f.Also, int64(l.by)):
			l.instead, l.by = nil, seq
		case n == f.Of && l.struckBy == 0:
			l.struckBy = seq
			if _, strike := l.entry.What.(*Struck); !strike && f.Instead != nil {
				l.instead, l.by = f.Instead, seq
			}
		case contains(f.Also, n) && l.struckBy == 0:
			l.struckBy = seq
		}
	}
	return lines
}

func contains(list []int64, n int64) bool {
	for _, m := range list {
		if m == n {
			return true
		}
	}
	return false
}

// admitStruck tries the strike: every entry after it must still be possible.
func (b *Book) admitStruck(f *Struck) (Fact, error) {
	full := *f
	if strings.TrimSpace(full.Reason) == "" {
		full.Reason = "slip"
	}
	for _, n := range append([]int64{full.Of}, full.Also...) {
		if err := b.strikable(n); err != nil {
			return nil, err
		}
	}
	if err := b.admitInstead(&full); err != nil {
		return nil, err
	}
	lines := markStruck(append([]sinceLine(nil), b.since...), b.seq+1, &full)
	s := b.base.clone()
	var short, numbers []string
	var also []int64
	for i := range lines {
		l := &lines[i]
		what := l.fact()
		if what == nil {
			continue
		}
		fresh := l.by == b.seq+1
		if fresh {
			var err error
			if what, err = s.resolve(what); err != nil {
				return nil, err
			}
			full.Instead = what
		}
		if err := s.admit(what, l.entry.At); err != nil {
			if fresh {
				return nil, err
			}
			seq := l.entry.Seq
			if l.by != 0 {
				seq = l.by // what a strike put there is taken away by striking that
			}
			short = append(short, fmt.Sprintf("%d (%s): %s", seq, what.Name(), strings.TrimSuffix(err.Error(), ".")))
			numbers = append(numbers, fmt.Sprint(seq))
			also = append(also, int64(seq))
			continue
		}
		again := l.entry
		again.What = what
		s.apply(again)
	}
	if len(short) > 0 {
		return nil, &Problem{
			What: fmt.Sprintf("Without entry %d later entries fall short: %s.", full.Of, firstFew(short)),
			Do:   "Strike those too (also " + strings.Join(numbers, ", ") + "), or put a corrected entry in the place of this one.",
			Err:  &LaterFall{also},
		}
	}
	return &full, nil
}

// firstFew joins the first three; the numbers of all stand in what to do.
func firstFew(list []string) string {
	const few = 3
	if len(list) <= few {
		return strings.Join(list, "; ")
	}
	return fmt.Sprintf("%s; and %d more", strings.Join(list[:few], "; "), len(list)-few)
}

// admitInstead refuses in the place of an entry what would move the bounds between which strikes fold: a
// strike, the close of a day, and the opening of one in the place of anything else.
func (b *Book) admitInstead(f *Struck) error {
	switch f.Instead.(type) {
	case *Struck:
		return refuse("Put a fact other than a strike in its place.", "A strike cannot stand in the place of an entry.")
	case *DayClosed:
		return refuse("Strike the entry, and close the day by itself.", "The close of a day cannot stand in the place of an entry.")
	case *DayOpened:
		for i := range b.since {
			l := &b.since[i]
			// The struck one is the line itself, or the strike that put the last fact there.
			if int64(l.entry.Seq) == f.Of || (l.by != 0 && int64(l.by) == f.Of) {
				if _, opened := l.entry.What.(*DayOpened); opened {
					return nil
				}
			}
		}
		return refuse("Strike the entry, and open the day by itself.", "The opening of a day can only stand in the place of another.")
	}
	return nil
}

func (b *Book) strikable(n int64) error {
	for i := range b.since {
		l := &b.since[i]
		if int64(l.entry.Seq) != n {
			continue
		}
		if l.struckBy != 0 {
			return refuse("Look at the journal; nothing is to be done.", "Entry %d is struck already, by entry %d.", n, l.struckBy)
		}
		if f, strike := l.entry.What.(*Struck); strike && f.Instead == nil {
			return refuse("Enter the fact again.", "Entry %d is a strike; what it struck is not brought back.", n)
		}
		return nil
	}
	if n > 0 && uint64(n) <= b.seq {
		return refuse("Write an entry of today that puts it right.", "Entry %d was written before the last day was closed and can no longer be struck.", n)
	}
	return refuse("Look up the number in the journal.", "There is no entry %d; the last one is %d.", n, b.seq)
}
