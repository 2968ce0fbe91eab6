package main

import (
	"errors"
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// again keeps the entries of an action after writing has stopped: it lets the store look at its file anew, makes sure
// that it is still this book, and writes what is not there.
func (k *keptBook) again(action string, entries []core.Entry) error {
	there, err := k.file().Recheck(action)
	if errors.Is(err, store.ErrGone) && k.adopt() {
		_, there, err = k.file().Find(action)
	}
	if err != nil {
		return err
	}
	if err := k.stillThisBook(k.file()); err != nil {
		return err
	}
	if there {
		return nil
	}
	return k.put(action, entries)
}

// stillThisBook tells whether a file holds the entries that this book is the sum of. Another one may have been put in
// its place meanwhile, whole in itself.
func (k *keptBook) stillThisBook(file *store.Store) error {
	other := func(err error) error {
		return &failure{
			what: fmt.Sprintf("The file %s is not the book that was open: another one, or an older copy, was put in its place.", k.path),
			do:   "Put the book back in its place and try again, or end the program: what it showed as booked is in the book that was there.",
			code: exitWrite, err: err,
		}
	}
	if file.Meta().BookID != k.id {
		return other(nil)
	}
	seq, digest := k.book.Seq(), k.book.Digest()
	if seq == 0 {
		return nil
	}
	found := false
	err := file.Each(seq, func(r store.Record) error {
		e, err := core.Decode(r.Number, r.Action, r.Body)
		if found = err == nil && e.Seq == seq && e.Digest == digest; !found {
			return other(err)
		}
		return errEnough
	})
	if err != nil && !errors.Is(err, errEnough) {
		return err
	}
	if !found {
		return other(nil)
	}
	return nil
}

// adopt takes the file at the path in the place of the open one, which has lost its name, if it is this book with all its
// entries: brought back from where it was saved to, for instance.
func (k *keptBook) adopt() bool {
	file, err := store.Open(k.path, storeOptions(false))
	if err != nil {
		return false
	}
	if err := k.stillThisBook(file); err != nil {
		_ = file.Close()
		return false
	}
	lost := k.file()
	k.held.put(file)
	_ = lost.Close() // all that it held is in the other one
	if k.attendant != nil {
		k.attendant.adopted()
	}
	return true
}
