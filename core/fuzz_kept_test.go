package core

import (
	"errors"
	"testing"
)

// FuzzResume: a snapshot is read from the disk before anything else is. Whatever its bytes are, they give a book that goes
// on, or an error; the number of bytes bounds what is taken of the memory.
func FuzzResume(f *testing.F) {
	b := play(f, NewBook(1), setUp)
	f.Add(NewBook(1).Keep())
	f.Add(b.Keep())
	b = play(f, b, `{"fact":"day_closed"}`)
	whole := b.Keep()
	f.Add(whole)
	f.Add(whole[:len(whole)/2])
	f.Fuzz(func(t *testing.T, rest []byte) {
		for _, kept := range [][]byte{rest, append(append([]byte(nil), whole[:9]...), rest...)} {
			b, err := Resume(kept)
			if err != nil {
				if b != nil || !errors.Is(err, ErrCode) && !errors.Is(err, ErrNewer) {
					t.Fatalf("%x: %v", kept, err)
				}
				continue
			}
			if es, err := b.Prepare("x", Moment{Unix: 1_790_000_000}, &Setting{Theme, "sun"}); err == nil {
				if err := b.Apply(es[0]); err != nil {
					t.Fatalf("%x does not go on: %v", kept, err)
				}
			}
			_, _ = b.Keep(), b.StateDigest()
		}
	})
}
