package core

import (
	"encoding/binary"
	"fmt"
)

// keptForm is the first byte of a snapshot. It goes up when the same entries come to something else than before, or are
// kept in another way, while the fields stay.
const keptForm = 1

// keptLayout stands for the fields of all that is kept, as a test reckons it. A snapshot of another layout is of no use.
const keptLayout = 0x84d4fbc037b6f213

// keptHead is how many bytes form and layout take.
const keptHead = 1 + 8

// Keep is the book at the last close as a snapshot: Resume takes it up again. The same journal gives the same bytes.
func (b *Book) Keep() []byte { return b.base.Keep() }

// Keep is the book at that close as a snapshot. It may be called beside others: nothing is changed.
func (c Closed) Keep() []byte {
	k := &keptCodec{w: &binaryWriter{}, history: &historyWriter{at: map[string]int{}}}
	k.w.b = append(k.w.b, keptForm)
	k.w.b = binary.LittleEndian.AppendUint64(k.w.b, keptLayout)
	k.mark(&c.mark)
	k.state(c.state)
	return k.w.b
}

// Resume is the book that a snapshot was made of, at its last close: whatever is entered into it gives what it gives in
// the book that the entries were added up to. The error wraps ErrCode, or ErrNewer where another version has made it:
// then the journal tells. The book keeps parts of b, which is not to be changed.
func Resume(b []byte) (*Book, error) {
	if len(b) < keptHead {
		return nil, fmt.Errorf("snapshot: %w: %d bytes", ErrCode, len(b))
	}
	if b[0] != keptForm || binary.LittleEndian.Uint64(b[1:]) != keptLayout {
		return nil, fmt.Errorf("snapshot: %w: form %d, layout %x", ErrNewer, b[0], b[1:keptHead])
	}
	book := NewBook(0)
	k := &keptCodec{r: &binaryReader{b: b[keptHead:], whole: string(b[keptHead:])}}
	k.mark(&book.mark)
	k.state(&book.state)
	if k.r.err == nil && len(k.r.b) != 0 {
		k.r.fail("%d bytes too many", len(k.r.b))
	}
	if k.r.err != nil {
		return nil, fmt.Errorf("snapshot: %w", k.r.err)
	}
	book.rebase(book.mark)
	return book, nil
}

func (k *keptCodec) mark(m *mark) {
	whole(k, &m.seq)
	k.raw(m.digest[:])
	whole(k, &m.truck)
	k.moment(&m.lastAt)
}
