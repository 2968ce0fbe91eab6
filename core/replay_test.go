package core

import (
	"bytes"
	"reflect"
	"testing"

	"pgregory.net/rapid"
)

// TestALineGivesTheEntryBack: a journal by chance, written as lines and read again, is the same journal bit for bit: stored
// forms, keys, lines, and all that the book comes to.
func TestALineGivesTheEntryBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyJournal(t, facts()/3)
		struck := StruckIn(r.entries)
		was, again := NewBook(3), NewBook(1)
		for _, e := range r.entries {
			line := EncodeLine(e, struck[e.Seq])
			l, err := DecodeLine(line)
			if err != nil {
				t.Fatalf("%s: %v", line, err)
			}
			back := Entry{Seq: l.Seq, At: l.At.V, Action: l.Action, Truck: l.Truck, What: l.Fact, Digest: l.Digest}
			if !bytes.Equal(back.Encode(), e.Encode()) {
				t.Fatalf("%s is stored as %x and was %x", line, back.Encode(), e.Encode())
			}
			if keys, had := again.Keys(back.What, back.At), was.Keys(e.What, e.At); !reflect.DeepEqual(keys, had) {
				t.Fatalf("%s stands under %q and stood under %q", line, keys, had)
			}
			if second := EncodeLine(back, struck[e.Seq]); !bytes.Equal(second, line) {
				t.Fatalf("%s is written again as %s", line, second)
			}
			if err := was.Apply(e); err != nil {
				t.Fatal(err)
			}
			if err := again.Apply(back); err != nil {
				t.Fatal(err)
			}
		}
		closed := was.LastClose().Seq() > 0 // before that there is nothing to keep
		if was.StateDigest() != again.StateDigest() || was.Digest() != again.Digest() || closed && !bytes.Equal(was.Keep(), again.Keep()) {
			t.Fatal("the book of the lines is another")
		}
	})
}
