package main

import (
	"crypto/rand"
	"encoding/hex"
	"errors"
	"fmt"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// demoID is the id of books made from the demo's journal.
const demoID = "demo"

// newBookTruck is the number of the truck whose book is made here; lines that carry another one keep it.
const newBookTruck = 1

// keptBook joins the file and the book that its entries add up to. It is the journal that the screen asks
// for. Without a file yet, the first action makes it.
type keptBook struct {
	path string
	held held
	id   string // of the file, by which another one in its place is known
	book *core.Book

	attendant *attendant // nil: nothing is kept beside it, it is only read

	snapshot *snapshot // nil: none is kept
}

func storeOptions(readOnly bool) store.Options {
	return store.Options{Program: "tintline " + programVersion, ReadOnly: readOnly}
}

// openBook opens a file and adds up its journal.
func openBook(path string, readOnly bool) (*keptBook, error) {
	return openBookWith(path, readOnly, nil)
}

// openBookWith is openBook that shows how far it is.
func openBookWith(path string, readOnly bool, p *progress) (*keptBook, error) {
	file, said, err := openFile(path, readOnly)
	if err != nil {
		return nil, wayBack(path, howToBegin(err))
	}
	k := &keptBook{path: path, id: file.Meta().BookID, book: core.NewBook(newBookTruck)}
	k.held.put(file)
	if err := k.load(p); err != nil {
		return nil, errors.Join(wayBack(path, err), file.Close())
	}
	if !readOnly {
		k.attend(time.Now)
		k.attendant.note(said)
	}
	return k, nil
}

// howToBegin says what to do where there is no book yet.
func howToBegin(err error) error {
	if !errors.Is(err, store.ErrMissing) {
		return err
	}
	f := explain(err)
	f.do = "Check the path, begin a book there with tintline enter or tintline replay, or look round with tintline demo."
	return f
}

func (k *keptBook) unreadable(err error) error { return unreadable(k.path, err) }

// unreadable is an entry in the file of a book that this version cannot add up.
func unreadable(path string, err error) error {
	f := &failure{
		what: fmt.Sprintf("The book %s is damaged: %v.", path, err),
		do:   "Leave the file as it is and restore the last backup beside it.", code: exitDamaged, err: err,
	}
	var p *core.Problem
	switch {
	case errors.Is(err, core.ErrNewer):
		f.what = fmt.Sprintf("The book %s holds entries of a newer version: %v.", path, err)
		f.do, f.code = "Open it with the newer program that wrote it.", exitNewer
	case errors.As(err, &p):
		f.what, f.do = fmt.Sprintf("The book %s is damaged. %s", path, p.What), p.Do
	}
	return f
}

// Close gives the file back.
func (k *keptBook) Close() error {
	k.snapshot.wait()
	k.attendant.close()
	if file := k.file(); file != nil {
		return file.Close()
	}
	return nil
}

// items are entries as the file keeps them.
func items(entries []core.Entry) []store.Item {
	out := make([]store.Item, len(entries))
	for i := range entries {
		out[i] = store.Item{Body: entries[i].Encode(), Keys: entries[i].Keys}
	}
	return out
}

// Append keeps the entries of one action; nil means that they are on the disk. The book is not changed.
func (k *keptBook) Append(action string, entries []core.Entry) error {
	return k.attendant.after(k, entries, k.keep(action, entries))
}

func (k *keptBook) keep(action string, entries []core.Entry) error {
	if k.file() == nil {
		return k.begin(action, entries)
	}
	err := k.put(action, entries)
	if errors.Is(err, store.ErrLatched) || errors.Is(err, store.ErrClosed) || errors.Is(err, store.ErrUnsure) {
		return k.again(action, entries)
	}
	return err
}

// put writes the entries, if they are the ones that come next in the file: between its making and its opening another
// copy of the program may have written to it.
func (k *keptBook) put(action string, entries []core.Entry) error {
	last, err := k.file().Last()
	if err != nil {
		return err
	}
	if last+1 != entries[0].Seq {
		if first, there, err := k.done(action); err != nil || there && first == entries[0].Seq {
			return err
		}
		return &failure{
			what: fmt.Sprintf("Another copy of the program wrote to the book %s meanwhile: it has %d entries, and this one knows of %d.", k.path, last, entries[0].Seq-1),
			do:   "Close this one and open it again. The action that stands here is not in the book; what was shown as booked before is.", code: exitBusy,
		}
	}
	list, err := k.rowsWith(entries, items(entries))
	if err == nil {
		_, err = k.file().Append(action, list)
	}
	return err
}

// begin makes the file together with its first action, so that a refused one leaves nothing behind.
func (k *keptBook) begin(action string, entries []core.Entry) error {
	if err := makeFolder(k.path); err != nil {
		return err
	}
	if k.id == "" {
		k.id = newID()
	}
	list, err := k.rowsWith(entries, items(entries))
	if err != nil {
		return err
	}
	err = store.CreateWith(k.path, k.id, storeOptions(false), func(add func(string, []store.Item) error) error {
		return add(action, list)
	})
	if err != nil && !errors.Is(err, store.ErrExists) {
		return err
	}
	file, open := store.Open(k.path, storeOptions(false))
	switch {
	case err != nil && open != nil:
		return k.begunByAnother(errors.Join(err, open), storeCode(open))
	case open != nil:
		return open
	case file.Meta().BookID != k.id:
		return k.begunByAnother(errors.Join(err, file.Close()), exitCannot)
	}
	k.held.put(file)
	if k.attendant != nil {
		k.attendant.began(k)
	}
	return nil
}

// begunByAnother is a book that was not there when this one was opened, and is now.
func (k *keptBook) begunByAnother(err error, code int) error {
	return &failure{
		what: fmt.Sprintf("The book %s was begun by another copy of the program meanwhile.", k.path),
		do:   "Close this one and open it again: it will have that book. The action that stands here is not in it.",
		code: code, err: err,
	}
}

// log makes facts one action, writes it and adds it to the book.
func (k *keptBook) log(at core.Moment, facts ...core.Fact) (action string, entries []core.Entry, err error) {
	action = newID()
	if entries, err = k.book.Prepare(action, at, facts...); err != nil {
		return action, nil, err
	}
	return action, entries, k.write(action, entries)
}

// write keeps the entries and then adds them to the book.
func (k *keptBook) write(action string, entries []core.Entry) error {
	if err := k.Append(action, entries); err != nil {
		return err
	}
	for _, e := range entries {
		if err := k.book.Apply(e); err != nil {
			return k.unreadable(err)
		}
	}
	k.keepAfter(entries)
	return nil
}

// done finds an action that was written before.
func (k *keptBook) done(action string) (first uint64, yes bool, err error) {
	file := k.file()
	if file == nil {
		return 0, false, nil
	}
	a, yes, err := file.Find(action)
	if errors.Is(err, store.ErrClosed) { // a snapshot failed, and the file could not be opened again then
		if _, err = file.Recheck(action); err == nil {
			a, yes, err = file.Find(action)
		}
	}
	return a.First, yes, err
}

// newID is an id for an action or a book: nobody makes the same one twice.
func newID() string {
	var b [16]byte
	_, _ = rand.Read(b[:]) // never fails
	return hex.EncodeToString(b[:])
}

// reading opens the book for a command that only reads it, and gives the file back afterwards.
func (a *app) reading(f func(*keptBook) error) error {
	path, err := a.bookPath()
	if err != nil {
		return err
	}
	k, err := openBookWith(path, true, a.adding())
	if err != nil {
		return err
	}
	a.warn(k)
	return errors.Join(f(k), k.Close())
}

// changing opens the book for a command that enters something, and gives the file back afterwards.
func (a *app) changing(f func(*keptBook) error) error {
	path, err := a.bookPath()
	if err != nil {
		return err
	}
	k, err := openBookWith(path, false, a.adding())
	if err != nil {
		return err
	}
	a.warn(k)
	err = f(k)
	a.warnOfLines(k)
	return errors.Join(err, k.Close())
}
