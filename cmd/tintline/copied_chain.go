package main

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// tellWhatChanged says so if an entry of a copy was changed: whole as it is, it would pass for one that was booked. The
// copy holds what the book holds, and stays.
func (a *app) tellWhatChanged(path, to string) {
	s, err := store.Open(to, storeOptions(true))
	if err != nil {
		return // it was checked a moment ago, and says nothing more
	}
	defer func() { _ = s.Close() }()
	var before core.Digest
	_ = s.Each(1, func(r store.Record) error {
		e, err := core.Decode(r.Number, r.Action, r.Body)
		if err != nil {
			return err
		}
		if !e.Follows(before) {
			a.warning(fmt.Sprintf("Entry %d, in the copy as in the book, does not follow from what stands before it: it, or one before it, was changed. See tintline verify --book %s.", e.Seq, shellWord(path)))
			return errEnough
		}
		before = e.Digest
		return nil
	})
}
