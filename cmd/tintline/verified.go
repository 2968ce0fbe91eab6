package main

import (
	"errors"
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/audit"
	"example.com/tintline/store"
)

// verified is what reading a whole book through has shown.
type verified struct {
	OK               bool         `json:"ok"`
	Entries          uint64       `json:"entries"`
	Days             int          `json:"days"`
	Changed          []foundWrong `json:"changed"`
	Damaged          []foundWrong `json:"damaged"`
	Snapshot         string       `json:"snapshot"`
	Rows             string       `json:"rows"`
	Copies           int          `json:"copies"`
	CopiesDiffer     []string     `json:"copies_differ"`
	CopiesUnreadable []string     `json:"copies_unreadable"`
	Lines            int          `json:"lines"`
	LinesUnreadable  int          `json:"lines_unreadable"`
	State            *string      `json:"state"`
	Journal          *string      `json:"journal"`

	newer   bool
	entries bool // all of them are whole and follow, and nothing is wrong with the file around them
	lost    bool // entries that the lines beside it hold
	rekeyed int  // entries under the keys of an earlier version
}

// foundWrong is a finding: the entry at which it shows, and one sentence.
type foundWrong struct {
	Entry *uint64 `json:"entry"`
	Kind  string  `json:"kind"`
	Says  string  `json:"says"`
}

// What is said of what a book keeps beside its entries.
const (
	derivedFits    = "fits"
	derivedNone    = "none"
	derivedWrong   = "does not fit"
	derivedOlder   = "of an earlier version" // fewer figures of a day than are kept now
	derivedUnasked = "not compared"          // the entries cannot be added up
)

// oldKeysBefore is the format from which on all entries stand under all keys of this version: a file of an older one is
// made anew before it is written to.
const oldKeysBefore = 2

// nothingFound is what a reading begins with.
func nothingFound() verified {
	return verified{
		Changed: []foundWrong{}, Damaged: []foundWrong{}, CopiesDiffer: []string{}, CopiesUnreadable: []string{},
		Snapshot: derivedUnasked, Rows: derivedUnasked,
	}
}

// eachTold is after how many entries the progress is told.
const eachTold = 4096

// verifyFile reads an open file through: the entries one by one, all that is made of them, and the structure. It changes
// nothing. told hears now and then which share is done.
func verifyFile(file *store.Store, told func(share float64)) verified {
	v := nothingFound()
	defer atLength()()
	a := audit.New(newBookTruck)
	a.OldKeys = file.Meta().Format < oldKeysBefore
	said := callWitnesses(file)
	derived, err := newDerived(file, a)
	var last uint64
	if err == nil {
		last, err = file.Last()
	}
	if err == nil {
		err = file.Each(1, func(r store.Record) error {
			e, err := core.Decode(r.Number, r.Action, r.Body)
			if err != nil {
				a.Unreadable(e, err)
			} else {
				a.Add(e, r.Keys)
				said.hear(e)
			}
			if told != nil && r.Number%eachTold == 0 {
				told(0.9 * float64(r.Number) / float64(last))
			}
			return nil
		})
	}
	if err != nil {
		a.Damage(err)
	} else if err = file.Check(); err != nil {
		a.Structure(err)
	}
	derived.end(&v)
	if a.Whole() {
		said.end(&v, last)
	}
	v.take(a)
	if told != nil {
		told(1)
	}
	return v
}

// take sorts the findings of the audit and says what the book came to.
func (v *verified) take(a *audit.Audit) {
	v.Entries, v.Days, v.rekeyed = a.Entries, a.Days, a.Rekeyed
	for _, f := range a.Findings {
		v.newer = v.newer || errors.Is(f.Err, core.ErrNewer)
		w := foundWrong{Kind: string(f.Kind), Says: f.Says}
		if f.Entry != 0 {
			w.Entry = &f.Entry
		}
		if f.Kind == audit.Changed {
			v.Changed = append(v.Changed, w)
		} else {
			v.Damaged = append(v.Damaged, w)
		}
	}
	v.entries = len(a.Findings) == 0 && len(v.Changed) == 0 && !v.lost
	v.OK = len(v.Changed)+len(v.Damaged) == 0
	if a.Whole() {
		state, journal := a.Book.StateDigest().String(), a.Book.Digest().String()
		v.State, v.Journal = &state, &journal
	}
}

// wrong adds a finding about something that the book keeps beside its entries.
func (v *verified) wrong(format string, args ...any) {
	v.Damaged = append(v.Damaged, foundWrong{Kind: string(audit.Damaged), Says: fmt.Sprintf(format, args...)})
}
