package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
	"example.com/tintline/store"
)

// openFile opens the file of a book. One of an older format is made ready for this version first, if it is to be written
// to; said is one sentence about that, empty if nothing was done.
func openFile(path string, readOnly bool) (file *store.Store, said string, err error) {
	file, err = store.Open(path, storeOptions(readOnly))
	for tries := 0; errors.Is(err, store.ErrOlder) && tries < 2; tries++ {
		said, err = upgrade(path)
		if err != nil && !errors.Is(err, store.ErrExists) {
			return nil, "", err
		}
		file, err = store.Open(path, storeOptions(readOnly)) // another copy may have done it meanwhile
	}
	if err != nil || readOnly {
		return file, said, err
	}
	return withAllRows(path, file, said)
}

// withAllRows makes a file anew whose days an earlier version of the program kept with fewer figures, so that no question has to read the
// whole journal for them. Where that cannot be, the book is as good as it was.
func withAllRows(path string, file *store.Store, said string) (*store.Store, string, error) {
	if old, err := past.Outdated(file.Rows); err != nil || !old {
		return file, said, nil // rows that cannot be read are told of by who asks them
	}
	if err := file.Close(); err != nil {
		return nil, "", err
	}
	if ready, err := upgrade(path); err == nil {
		said = ready
	}
	file, err := store.Open(path, storeOptions(false))
	return file, said, err
}

// upgrade makes a file of an older format anew in the present one, with all that is kept beside the entries. The file as
// it was keeps its contents under another name. Whatever goes wrong, and whenever it is killed, either the old file
// stands at path, as it was, or the new one, whole.
func upgrade(path string) (said string, err error) {
	was, err := store.Open(path, storeOptions(true))
	if err != nil {
		return "", err
	}
	m := was.Meta()
	last, err := was.Last()
	if err = errors.Join(err, was.Close()); err != nil {
		return "", err
	}
	keepAs, err := nameForOld(path, m.Format)
	if err != nil {
		return "", notReady(path, err)
	}
	o := storeOptions(false)
	o.Created = m.Created
	p := progressOn(os.Stderr, time.Now, "making the book ready for this version")
	defer p.End()
	defer atLength()()
	r := &renewal{path: path, last: last, progress: p, book: core.NewBook(newBookTruck)}
	if err := store.ReplaceWith(path, keepAs, m.BookID, o, r.fill); err != nil {
		return "", notReady(path, err)
	}
	keepIn(path, r.book)
	return fmt.Sprintf("The book was made ready for this version; the file as it was is kept as %s.", keepAs), nil
}

// renewal writes the entries of an older file into a new one.
type renewal struct {
	path     string
	last     uint64
	progress *progress
	book     *core.Book
}

func (r *renewal) fill(old *store.Store, add func(string, []store.Item) error) error {
	if old == nil {
		return &failure{
			what: fmt.Sprintf("The book %s could not be read any more.", r.path),
			do:   "Let tintline verify look at it.", code: exitDamaged,
		}
	}
	g := &grouped{path: r.path, add: add, book: r.book}
	err := old.Each(1, func(rec store.Record) error {
		if rec.Number%eachTold == 0 {
			r.progress.Share(float64(rec.Number) / float64(max(r.last, rec.Number)))
		}
		e, err := core.Decode(rec.Number, rec.Action, rec.Body)
		if err != nil {
			return unreadable(r.path, err)
		}
		return g.put(e, rec.Body)
	})
	if err != nil {
		return err
	}
	return g.flush()
}

// mostOld is how many files of an old format may stand beside a book.
const mostOld = 9

// nameForOld is the name that the file as it was will have. What an upgrade that was killed left there, the very same
// file or a copy of it that is whole, makes room; nothing else does.
func nameForOld(path string, format uint32) (string, error) {
	for n := 1; n <= mostOld; n++ {
		name := fmt.Sprintf("%s.format-%d", path, format)
		if n > 1 {
			name = fmt.Sprintf("%s.%d", name, n)
		}
		_, err := os.Lstat(name)
		if errors.Is(err, os.ErrNotExist) {
			return name, nil
		}
		if err != nil {
			return "", err
		}
		if same, err := sameContents(path, name); err == nil && same {
			return name, os.Remove(name)
		}
	}
	return "", &failure{
		what: fmt.Sprintf("There are %d older files beside the book %s already.", mostOld, path),
		do:   fmt.Sprintf("Move %s and those like it to another folder.", filepath.Base(path)+".format-1"), code: exitCannot,
	}
}

// sameContents tells whether two names lead to the same file, or to two that hold the same.
func sameContents(a, b string) (bool, error) {
	fa, err := os.Open(a)
	if err != nil {
		return false, err
	}
	defer func() { _ = fa.Close() }()
	fb, err := os.Open(b)
	if err != nil {
		return false, err
	}
	defer func() { _ = fb.Close() }()
	sa, err := fa.Stat()
	if err != nil {
		return false, err
	}
	sb, err := fb.Stat()
	if err != nil {
		return false, err
	}
	if os.SameFile(sa, sb) {
		return true, nil
	}
	if sa.Size() != sb.Size() || !sb.Mode().IsRegular() {
		return false, nil
	}
	const piece = 1 << 16
	ba, bb := make([]byte, piece), make([]byte, piece)
	for {
		na, errA := io.ReadFull(fa, ba)
		nb, errB := io.ReadFull(fb, bb)
		switch {
		case na != nb || !bytes.Equal(ba[:na], bb[:nb]):
			return false, nil
		case errA != nil || errB != nil:
			ended := func(err error) bool { return errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) }
			return ended(errA) && ended(errB), nil
		}
	}
}

// notReady says that a book stays as it was, and why.
func notReady(path string, err error) error {
	if errors.Is(err, store.ErrExists) || errors.Is(err, store.ErrBusy) {
		return err
	}
	f := *explain(err)
	f.what = fmt.Sprintf("The book %s is of an earlier version and was left as it is: %s", path, lowerFirst(f.what))
	f.err = err
	return &f
}

func lowerFirst(s string) string {
	if len(s) > 3 && s[:4] == "The " {
		return "the " + s[4:]
	}
	return s
}
