package core

import (
	"bytes"
	"errors"
	"runtime"
	"testing"
)

// FuzzResume: whatever is read as a snapshot is kept as the same bytes again and can be asked; all else is an error.
func FuzzResume(f *testing.F) {
	for _, b := range [][]byte{NewBook(1).Keep(), play(f, NewBook(1), setUp).Keep(), closedBook(f).Keep()} {
		f.Add(b[keptHead:])
	}
	head := NewBook(0).Keep()[:keptHead]
	f.Fuzz(func(t *testing.T, b []byte) {
		b = append(bytes.Clone(head), b...) // with another head nothing is read
		book, err := Resume(b)
		if err != nil {
			if !errors.Is(err, ErrCode) && !errors.Is(err, ErrNewer) {
				t.Fatalf("%x: %v", b, err)
			}
			return
		}
		kept := book.Keep()
		again, err := Resume(kept)
		if err != nil {
			t.Fatalf("%x was read, and kept as %x, which is not: %v", b, kept, err)
		}
		if !bytes.Equal(again.Keep(), kept) || again.StateDigest() != book.StateDigest() {
			t.Fatalf("%x is kept in two ways", b)
		}
		for _, l := range book.Lawns() {
			for _, z := range l.Zones {
				book.History(l.LawnName, z.Name)
			}
		}
		book.AccountsDigest()
		book.Dried()
		book.Learned("")
	})
}

// closedBook is a book with a bit of everything, closed.
func closedBook(t testing.TB) *Book {
	t.Helper()
	b := NewBook(1)
	for _, e := range seasonJournal(t, 3, 30) {
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
	return b
}

// TestCutAndChangedSnapshots: one that ends early is never taken, one with a changed byte never breaks anything.
func TestCutAndChangedSnapshots(t *testing.T) {
	kept := closedBook(t).Keep()
	for n := 0; n < len(kept); n += 13 {
		if _, err := Resume(kept[:n]); err == nil {
			t.Fatalf("%d of %d bytes were taken", n, len(kept))
		}
	}
	for i := 0; i < len(kept); i += 5 {
		b := bytes.Clone(kept)
		b[i] ^= 1 << (i % 8)
		if book, err := Resume(b); err == nil {
			book.StateDigest()
			book.Keep()
		} else if !errors.Is(err, ErrCode) && !errors.Is(err, ErrNewer) {
			t.Fatalf("byte %d: %v", i, err)
		}
	}
}

// TestALengthThatIsNotTrueCostsNoMemory: each list says that it has as many elements as there are bytes left.
func TestALengthThatIsNotTrueCostsNoMemory(t *testing.T) {
	kept := closedBook(t).Keep()
	long := append(bytes.Clone(kept), bytes.Repeat([]byte{0xff}, 1<<20)...)
	for i := keptHead; i < len(kept); i += 101 {
		was := bytes.Clone(long[i : i+3])
		copy(long[i:], []byte{0x80, 0x80, 0x2f}) // 770,000
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, _ = Resume(long)
		runtime.ReadMemStats(&after)
		if took := after.TotalAlloc - before.TotalAlloc; took > 16<<20 {
			t.Errorf("byte %d: %d MiB were taken for %d bytes", i, took>>20, len(long))
		}
		copy(long[i:], was)
	}
}
