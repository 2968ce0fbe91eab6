package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/store"
	"example.com/tintline/tui"
)

// keeper looks after the file of an open book for the screen, beside the actions: it makes the copies and reads the book
// through. It never looks at the book in memory, which the actions change.
type keeper struct {
	b       *attendant
	passing bool // a book that goes when the screen does: nothing is made by itself

	mu sync.Mutex // one thing at a time, also when the program ends
}

// unfinished is how old what a killed program left half made must be before it is removed.
const unfinished = 24 * time.Hour

// Kept tells how the book is kept.
func (k *keeper) Kept() (tui.Kept, error) {
	file, days := k.b.keeps()
	out := tui.Kept{Path: k.b.path, Days: days}
	for _, c := range copiesOf(k.b.path) {
		out.Copies = append(out.Copies, tui.KeptCopy{Date: c.date, Name: filepath.Base(c.path), Bytes: c.bytes})
	}
	out.Lines, out.Notes = k.b.lines.count(), k.b.says()
	if file == nil {
		return out, nil
	}
	m := file.Meta()
	out.Format, out.Program, out.Made = int(m.Format), m.Program, m.Created
	if w := file.Warning(); w != "" {
		out.Notes = append(out.Notes, w)
	}
	var err error
	if out.Entries, err = file.Last(); err != nil {
		return out, told{explain(err)}
	}
	if st, err := os.Stat(k.b.path); err == nil {
		out.Bytes = st.Size()
	}
	return out, nil
}

// Daily makes the copy of the day if one is due: the last one is of another day and entries came since, or a day was
// closed since.
func (k *keeper) Daily() (string, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	file, days := k.b.keeps()
	if file == nil || k.passing {
		return "", nil
	}
	if days <= 0 {
		return "", k.linesOnly(file)
	}
	due, err := k.due(file)
	if err != nil {
		return "", told{k.notCopied(err)}
	}
	if !due {
		return "", nil
	}
	return k.copy(file, days)
}

// linesOnly is for a book of which no copies are wanted: the lines hold what came since the last close.
func (k *keeper) linesOnly(file *store.Store) error {
	closed, err := lastClose(file, k.b.lines.begins())
	if err != nil {
		return told{k.notCopied(err)}
	}
	if closed > 0 {
		k.b.complain(k.b.lines.renew(file, closed))
	}
	return nil
}

// due tells whether a copy is.
func (k *keeper) due(file *store.Store) (bool, error) {
	last, err := file.Last()
	if err != nil || last == 0 {
		return false, err
	}
	c, holds, ok := furthest(k.b.path, copyOf(file))
	switch {
	case !ok:
		return true, nil
	case holds.last >= last:
		return false, nil
	case c.date != k.today():
		return true, nil
	}
	closed, err := lastClose(file, holds.last+1)
	return closed > 0, err
}

// lastClose is the number of the last close of a day from an entry on, 0 if there is none.
func lastClose(file *store.Store, from uint64) (closed uint64, err error) {
	err = file.Each(from, func(r store.Record) error {
		e, err := core.Decode(r.Number, r.Action, r.Body)
		if err != nil {
			return err
		}
		if _, ok := e.What.(*core.DayClosed); ok {
			closed = e.Seq
		}
		return nil
	})
	return closed, err
}

func (k *keeper) today() string { return k.b.now().Format(time.DateOnly) }

// Copy makes the copy of today now.
func (k *keeper) Copy() (string, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	file, days := k.b.keeps()
	if file == nil {
		return "There is nothing to copy yet.", nil
	}
	return k.copy(file, days)
}

func (k *keeper) copy(file *store.Store, days int) (string, error) {
	c, err := copyOfToday(k.b.path, k.today(), file.BackupOver)
	if err != nil {
		return "", told{k.notCopied(err)}
	}
	k.b.complain(k.b.lines.renew(file, c.last))
	said := fmt.Sprintf("Copy of %s made and checked: %d entries.", shortDate(k.today()), c.last)
	if days > 0 {
		if err := pruneCopies(k.b.path, file.Meta().BookID, k.today(), days); err != nil {
			return said, told{explain(err)}
		}
	}
	return said, nil
}

// notCopied is why there is no copy. If it is the book that is damaged, the way back begins with the end of the program.
func (k *keeper) notCopied(err error) *failure {
	f := explain(wayBack(k.b.path, err))
	if command, ok := strings.CutPrefix(f.do, "Run "); ok && isBroken(err) {
		out := *f
		out.do = "End the program and run " + command
		return &out
	}
	return f
}

// copyOfToday lets over make the daily copy of a book, and looks at it.
func copyOfToday(book, today string, over func(to string) error) (looked, error) {
	store.SweepUnfinished(filepath.Dir(book), time.Now().Add(-unfinished))
	to := copyPath(book, today)
	if err := over(to); err != nil {
		return looked{}, err
	}
	return lookAt(to)
}

// Verify reads the whole book through, as tintline verify does.
func (k *keeper) Verify(share func(float64)) (tui.Verified, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	file, _ := k.b.keeps()
	if file == nil {
		return tui.Verified{OK: true, Says: []string{"There is nothing to read yet."}}, nil
	}
	v := verifyFile(file, share)
	lines := v.lines(k.b.path)
	if v.OK {
		return tui.Verified{OK: true, Says: lines}, nil
	}
	// The way back stands last; with a copy it is the command as it has to be typed.
	if do, found := copyBack(k.b.path); found && !v.entries {
		lines[len(lines)-1] = do
	}
	return tui.Verified{Says: lines}, nil
}
