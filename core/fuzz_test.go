package core

import (
	"errors"
	"testing"
)

// FuzzDecode: whatever is read from a stored form gives the same bytes again, and the same line.
func FuzzDecode(f *testing.F) {
	for _, k := range kinds() {
		e := Entry{Seq: 1, What: (&filler{}).fact(newFact[k](), true)}
		f.Add(e.Encode())
		f.Add((&Entry{What: newFact[k]()}).Encode())
	}
	f.Fuzz(func(t *testing.T, b []byte) {
		e, err := Decode(7, "x", b)
		if err != nil {
			if !errors.Is(err, ErrCode) && !errors.Is(err, ErrNewer) {
				t.Fatalf("%x: %v", b, err)
			}
			return
		}
		if again := e.Encode(); string(again) != string(b) {
			t.Fatalf("%x was read as %+v, which is stored as %x", b, e.What, again)
		}
		line := EncodeLine(e, 0)
		l, err := DecodeLine(line)
		if err != nil {
			t.Fatalf("%s: %v", line, err)
		}
		back := Entry{Seq: l.Seq, At: l.At.V, Action: l.Action, Truck: l.Truck, What: l.Fact, Digest: l.Digest}
		if string(back.Encode()) != string(b) {
			t.Fatalf("%s was read as another fact", line)
		}
	})
}

// FuzzDecodeLine: whatever is read as a line is stored and read back as the same fact, and admission answers
// with an entry or with a sentence.
func FuzzDecodeLine(f *testing.F) {
	for _, k := range kinds() {
		f.Add(EncodeLine(Entry{Seq: 1, What: (&filler{}).fact(newFact[k](), true)}, 0))
	}
	f.Add([]byte(`{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","volume_gal":1.5}`))
	f.Add([]byte(`{"fact":"product","name":"p","rate_low_fl_oz_per_1000_sqft":-0,"actives":[{"lb_per_gal":-0}]}`))
	book := play(f, NewBook(1), setUp)
	f.Fuzz(func(t *testing.T, b []byte) {
		l, err := DecodeLine(b)
		if err != nil {
			var p *Problem
			if !errors.As(err, &p) || p.What == "" || p.Do == "" {
				t.Fatalf("%q: %v is no sentence", b, err)
			}
			return
		}
		e := Entry{Seq: 7, At: l.At.V, Truck: l.Truck, What: l.Fact}
		stored := e.Encode()
		back, err := Decode(7, "", stored)
		if err != nil {
			t.Fatalf("%q was read, stored as %x and not read back: %v", b, stored, err)
		}
		if string(back.Encode()) != string(stored) {
			t.Fatalf("%q: %x was stored again as %x", b, stored, back.Encode())
		}
		before := book.StateDigest()
		if es, err := book.Prepare("x", Moment{Unix: 1_790_000_000}, l.Fact); err == nil {
			if err := book.Clone().Apply(es[0]); err != nil {
				t.Fatalf("%q was admitted and not applied: %v", b, err)
			}
		} else if p := (*Problem)(nil); !errors.As(err, &p) {
			t.Fatalf("%q was refused without a sentence: %v", b, err)
		}
		if book.StateDigest() != before {
			t.Fatalf("%q changed the book while it was prepared", b)
		}
	})
}
