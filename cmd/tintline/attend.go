package main

import (
	"errors"
	"fmt"
	"math"
	"sync"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// attendant looks after what is kept beside an open book. It is called with each action: it writes the lines, heeds the
// setting of the copies, and saves a book whose file has lost its name. The keeper, which makes the copies, reads it
// meanwhile.
type attendant struct {
	path  string
	now   func() time.Time
	lines *linesBeside
	held  *held // of the book: no file as long as there is none

	mu    sync.Mutex
	days  int // for which copies are kept
	notes []string
	saved string // where the book was saved to when its file had lost its name
}

func newAttendant(k *keptBook, now func() time.Time) *attendant {
	return &attendant{path: k.path, now: now, lines: &linesBeside{book: k.path}, held: &k.held, days: wholeDays(k.book.Setting(core.CopiesKeptDays))}
}

// wholeDays is what the setting says: a part of a day keeps no copy.
func wholeDays(days float64) int { return int(math.Floor(days)) }

func (b *attendant) note(words string) {
	if words == "" {
		return
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	b.notes = append(b.notes, words)
}

// adopted says that another file took the place of one that had lost its name.
func (b *attendant) adopted() {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.saved = ""
}

// keeps is the file, nil if there is none yet, and for how many days its copies are kept.
func (b *attendant) keeps() (file *store.Store, days int) {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.held.get(), b.days
}

// newBook is a book that its first action will make. Where something is left of one that stood there, none is begun.
func newBook(path string) *keptBook {
	k := &keptBook{path: path, book: core.NewBook(newBookTruck), snapshot: &snapshot{}}
	k.attendant = newAttendant(k, time.Now)
	return k
}

// began looks after the lines of a book that was just made.
func (b *attendant) began(k *keptBook) {
	aside := func() string { return freeName(k.path, b.now(), ".lines") }
	beyond, note, err := b.lines.begin(k.file(), aside)
	if len(beyond) > 0 { // of an earlier book of this name
		note, err = b.lines.setAside(k.file(), aside())
	}
	b.note(note)
	b.complain(err)
}

// says is what the operator should know of what stands beside the book.
func (b *attendant) says() []string {
	if b == nil {
		return nil
	}
	b.mu.Lock()
	out := append([]string(nil), b.notes...)
	b.mu.Unlock()
	if err := b.lines.trouble(); err != nil {
		f := explain(err)
		out = append(out, f.what+" "+f.do)
	}
	return out
}

func (b *attendant) close() {
	if b != nil {
		b.lines.close()
	}
}

// attend begins to look after the lines of a book that was opened for writing. What they hold beyond the book, the book
// has lost (a damaged head takes the last action with it), and gets back.
func (k *keptBook) attend(now func() time.Time) {
	k.attendant = newAttendant(k, now)
	aside := func() string { return freeName(k.path, now(), ".lines") }
	beyond, note, err := k.attendant.lines.begin(k.file(), aside)
	k.attendant.note(note)
	if len(beyond) > 0 {
		var back int
		if back, err = k.giveBack(beyond); back > 0 {
			k.attendant.note(fmt.Sprintf("The file had lost its last %s; %s taken back from the lines beside it.", countOf(back, "entry", "entries"), wasWere(back)))
		}
		if err == nil && back == len(beyond) {
			_, note, err = k.attendant.lines.begin(k.file(), aside)
		} else {
			note, err = k.attendant.lines.setAside(k.file(), aside())
		}
		k.attendant.note(note)
	}
	k.attendant.complain(err)
}

// giveBack appends the lines that follow on the book, action by action.
func (k *keptBook) giveBack(lines []core.Line) (n int, err error) {
	for n < len(lines) {
		action := lines[n].Action
		var group []*numbered
		for i := n; i < len(lines) && lines[i].Action == action; i++ {
			group = append(group, &numbered{Line: lines[i]})
		}
		ahead := k.book.Clone()
		entries, _, err := readmit(ahead, action, group, ahead.Apply)
		if err == nil {
			err = k.put(action, entries)
		}
		for i := 0; i < len(entries) && err == nil; i++ {
			err = k.book.Apply(entries[i])
		}
		if err != nil {
			return n, err
		}
		n += len(group)
	}
	return n, nil
}

// complain notes trouble with what stands beside the book.
func (b *attendant) complain(err error) {
	if err == nil {
		return
	}
	if b.lines.trouble() != nil {
		return // it is told from there, as long as it lasts
	}
	f := explain(err)
	b.note(f.what + " " + f.do)
}

// after does what follows on an action: its lines if it was kept, and a copy of the whole book if the file has lost its
// name, since the open handle is the last hold on it.
func (b *attendant) after(k *keptBook, entries []core.Entry, err error) error {
	if b == nil {
		return err
	}
	if err == nil {
		b.heed(entries)
		b.complain(b.lines.add(k.file(), entries))
		return nil
	}
	if !errors.Is(err, store.ErrGone) || k.file() == nil {
		return err
	}
	return b.rescue(k, err)
}

// heed follows the setting, which the keeper cannot read from the book: it works beside the screen.
func (b *attendant) heed(entries []core.Entry) {
	for _, e := range entries {
		f, ok := e.What.(*core.Setting)
		if !ok || f.SettingName != core.CopiesKeptDays {
			continue
		}
		b.mu.Lock()
		b.days = wholeDays(core.SettingValue(f.SettingName, f.Value))
		b.mu.Unlock()
	}
}

// rescue writes what the handle still holds to a file of its own, once, and says how to go on. Actions come one at a time;
// the lock is not held while the copy is written, because the page of the book asks for what it guards.
func (b *attendant) rescue(k *keptBook, err error) error {
	f := *explain(err)
	f.err = err
	b.mu.Lock()
	to := b.saved
	b.mu.Unlock()
	if to == "" {
		to = freeName(b.path, b.now(), ".saved")
		if bad := k.file().Backup(to); bad != nil {
			f.what += " What it held could not be saved beside it: " + explain(bad).what
			return &f
		}
		b.mu.Lock()
		b.saved = to
		b.mu.Unlock()
	}
	f.what += fmt.Sprintf(" All that was booked is saved in %s.", to)
	f.do = fmt.Sprintf("Put the file back, or run in another window: %s; then try again here.", restoreCommand(to, b.path))
	return &f
}

func countOf(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return fmt.Sprintf("%d %s", n, many)
}

func wasWere(n int) string {
	if n == 1 {
		return "it was"
	}
	return "they were"
}
