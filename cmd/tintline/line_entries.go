package main

import "example.com/tintline/core"

// admit turns a line without a digest into the entries that it would be if it were typed.
func admit(b *core.Book, action string, l *numbered, clock func() core.Moment) ([]core.Entry, error) {
	if l.Seq != 0 && l.Seq != b.Seq()+1 {
		return nil, usage("The line says that it is entry %d, but it would be entry %d.", l.Seq, b.Seq()+1)
	}
	at := l.At.V
	if !l.At.Known {
		at = clock()
	}
	return b.Prepare(action, at, l.Fact)
}

// readmit adds lines with a digest to a book, by apply, as the entries that they were. It answers with the line
// that does not follow, if one does not.
func readmit(b *core.Book, action string, lines []*numbered, apply func(core.Entry) error) (out []core.Entry, wrong *numbered, err error) {
	for _, l := range lines {
		if !l.At.Known {
			return nil, l, usage("A line with a digest needs the time that it was made with.")
		}
		e := core.Entry{Seq: l.Seq, At: l.At.V, Action: action, Truck: l.Truck, What: l.Fact, Digest: l.Digest}
		if e.Seq == 0 {
			e.Seq = b.Seq() + 1
		}
		if e.Truck == 0 {
			e.Truck = b.Truck()
		}
		e.Keys = b.Keys(e.What, e.At)
		if err := apply(e); err != nil {
			return nil, l, err
		}
		out = append(out, e)
	}
	return out, nil, nil
}
