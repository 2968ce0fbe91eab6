package main

import (
	"errors"
	"sync"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// shareEach is after how many entries the progress of adding up is told.
const shareEach = 1 << 10

// load makes the book: from the snapshot in the file and the entries after it, or, where that does not fit, from
// all entries.
func (k *keptBook) load(p *progress) error {
	defer atLength()()
	k.snapshot = &snapshot{}
	if k.resume() {
		return nil
	}
	k.book = core.NewBook(newBookTruck)
	defer p.End()
	return k.fold(p)
}

// resume takes the book up from the snapshot. The journal is what counts: a snapshot holds only if the entry it stands
// at carries its digest. Whatever is wrong, the fold over all entries will say it.
func (k *keptBook) resume() bool {
	at, body, ok, err := k.file().Snapshot()
	if err != nil || !ok || at == 0 {
		return false
	}
	book, err := core.Resume(body)
	if err != nil || book.Seq() != at {
		return false
	}
	fits := false
	fold := core.NewFold(book)
	err = k.file().Each(at, func(r store.Record) error {
		e, err := core.Decode(r.Number, r.Action, r.Body)
		switch {
		case err != nil:
			return err
		case r.Number > at:
			return fold.Add(e)
		case e.Digest != book.Digest():
			return errEnough
		}
		fits = true
		return nil
	})
	if err != nil || !fits {
		return false
	}
	fold.End()
	k.book, k.snapshot.at = book, at
	return true
}

// fold adds up all entries.
func (k *keptBook) fold(p *progress) error {
	last := uint64(0)
	if p != nil {
		var err error
		if last, err = k.file().Last(); err != nil {
			return err
		}
	}
	fold := core.NewFold(k.book)
	defer fold.End()
	return k.file().Each(1, func(r store.Record) error {
		e, err := core.Decode(r.Number, r.Action, r.Body)
		if err != nil {
			return k.unreadable(err)
		}
		if err := fold.Add(e); err != nil {
			return k.unreadable(err)
		}
		if e.Seq%shareEach == 0 {
			p.Share(float64(e.Seq) / float64(max(last, e.Seq)))
		}
		return nil
	})
}

// snapshot is what the file has of the book at the last close, and who is writing one.
type snapshot struct {
	turn    sync.Mutex // held while one is written
	at      uint64     // the number of the entry that the one in the file stands at; 0: there is none that fits
	writing sync.WaitGroup
}

// wait waits for the one that is being written.
func (s *snapshot) wait() {
	if s != nil {
		s.writing.Wait()
	}
}

// keepClose puts the book as it was at its last close into the file, if that has an older one. It is a convenience for
// the next start: if it fails, all that was confirmed is there nonetheless. Only that the store writes nothing more
// after a failed commit is put right again.
func (k *keptBook) keepClose(file *store.Store, c core.Closed) {
	if k.snapshot == nil || file == nil {
		return
	}
	k.snapshot.turn.Lock()
	defer k.snapshot.turn.Unlock()
	if c.Seq() <= k.snapshot.at {
		return
	}
	err := file.PutSnapshot(c.Seq(), c.Keep())
	if err == nil {
		k.snapshot.at = c.Seq()
		return
	}
	if !errors.Is(err, store.ErrLatched) && !errors.Is(err, store.ErrClosed) {
		_, _ = file.Recheck(noAction) // if it cannot, the next action says so
	}
}

// noAction is the name of no action.
const noAction = "-"

// manyEntries is how many a start adds up without being slower for it. As long as the snapshot is not further back than
// that, only the close of a day brings a new one.
const manyEntries = 2000

// stale tells whether the next start would have much to add up that lies before the last close.
func (k *keptBook) stale() bool {
	if k.snapshot == nil {
		return false
	}
	k.snapshot.turn.Lock()
	defer k.snapshot.turn.Unlock()
	return k.book.LastClose().Seq() >= k.snapshot.at+manyEntries
}

// keepAfter keeps the last close once an action of a command is on the disk and in the book.
func (k *keptBook) keepAfter(entries []core.Entry) {
	if endsDay(entries) || k.stale() {
		k.keepClose(k.file(), k.book.LastClose())
	}
}

// keepBeside is keepClose beside whatever goes on: the screen does not wait for it. Close does.
func (k *keptBook) keepBeside(c core.Closed) {
	k.snapshot.writing.Add(1)
	file := k.file() // another one may take its place
	go func() {
		defer func() {
			_ = recover() // the next start adds up a few entries more
			k.snapshot.writing.Done()
		}()
		k.keepClose(file, c)
	}()
}

// keepClosedBy keeps, beside the screen, the close that an action on the disk has brought, before the screen adds the
// action to its book. One action is written at a time, so that the book does not change meanwhile.
func (k *keptBook) keepClosedBy(entries []core.Entry) {
	if k.snapshot == nil || !endsDay(entries) {
		return
	}
	after := k.book.Clone()
	for _, e := range entries {
		if after.Apply(e) != nil {
			return // the screen will say it
		}
	}
	k.keepBeside(after.LastClose())
}

// keepIn keeps the last close of a book in the file that was just made of it.
func keepIn(path string, b *core.Book) {
	if b.LastClose().Seq() == 0 {
		return
	}
	file, err := store.Open(path, storeOptions(false))
	if err != nil {
		return // the next one to write will keep it
	}
	k := &keptBook{path: path, book: b, snapshot: &snapshot{}}
	k.held.put(file)
	k.keepClose(file, b.LastClose())
	_ = k.Close() // the journal is on the disk
}

// adding shows how far the adding up of a book is; nothing where the answer is for a program.
func (a *app) adding() *progress {
	if a.flags.json {
		return nil
	}
	return progressOn(a.stderr, a.now, "adding up the book")
}
