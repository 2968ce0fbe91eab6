package core

import (
	"errors"
	"fmt"
)

// Written is an entry since the last close and what became of it.
type Written struct {
	Entry
	StruckBy uint64 // 0: it was not struck
	// Stands is what is in the sum by this entry: its fact; for a strike, what it put in the place of another; nil if
	// it is struck, or only took something out.
	Stands Fact
}

// Written lists the entries since the last close, struck ones and strikes too, oldest first.
func (b *Book) Written() []Written {
	out := make([]Written, 0, len(b.since))
	by := map[uint64]int{} // the line into whose place a strike put a fact
	for i := range b.since {
		if b.since[i].by != 0 {
			by[b.since[i].by] = i
		}
	}
	for i := range b.since {
		l := &b.since[i]
		w := Written{Entry: l.entry, StruckBy: l.struckBy}
		if l.struckBy == 0 {
			w.Stands = l.fact()
			if of, put := by[l.entry.Seq]; put {
				w.Stands = b.since[of].instead
			}
		}
		out = append(out, w)
	}
	return out
}

// StruckIn says which of the entries are struck by others of the list, and by which. A strike reaches back to the
// close before it and no further.
func StruckIn(list []Entry) map[uint64]uint64 {
	out := map[uint64]uint64{}
	mark := func(n int64, by uint64) {
		if was, struck := out[uint64(n)]; !struck || by < was {
			out[uint64(n)] = by
		}
	}
	for i := range list {
		if f, ok := list[i].What.(*Struck); ok {
			mark(f.Of, list[i].Seq)
			for _, n := range f.Also {
				mark(n, list[i].Seq)
			}
		}
	}
	return out
}

// LaterFall is the cause of a refused strike: without the entry, these later ones could not have happened.
type LaterFall struct{ Also []int64 }

func (e *LaterFall) Error() string { return fmt.Sprintf("later entries fall short: %v", e.Also) }

// Unwrap makes it a refusal like others.
func (e *LaterFall) Unwrap() error { return ErrRefused }

// WithLater is a strike that also takes out the later entries that would fall short without it; the strike itself if
// there are none. The error says why it cannot be struck at all.
func (b *Book) WithLater(f *Struck, at Moment) (*Struck, error) {
	all := *f
	for {
		_, err := b.Prepare("", at, &all)
		var fall *LaterFall
		if !errors.As(err, &fall) {
			return &all, err
		}
		all.Also = append(append([]int64(nil), all.Also...), fall.Also...)
	}
}
