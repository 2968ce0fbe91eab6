package main

import (
	"errors"
	"fmt"
	"os"
	"time"

	"github.com/spf13/cobra"

	"example.com/tintline/store"
)

func (a *app) backupCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "backup [FILE]",
		Short: "Copy the book to a file, checked after writing",
		Long: `Copies the book as it stands at this moment to FILE, which must not exist: also while the screen has the book open and
writes to it. The copy is read back and checked before it gets its name; it is a book like any other. Without FILE it is
the daily copy beside the book, BOOK.DATE.copy, in the place of an earlier one of the same day.`,
		Example: `  tintline backup /media/stick/truck.db
  tintline backup --book truck.db`,
		Args: atMostOne("file for the copy"),
		RunE: func(_ *cobra.Command, args []string) error {
			path, err := a.bookPath()
			if err != nil {
				return err
			}
			to := ""
			if len(args) > 0 {
				to = args[0]
			}
			return a.backup(path, to)
		},
	}
}

func atMostOne(what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		switch {
		case len(args) > 1:
			return usage("%s takes one %s, not %d.", cmd.CommandPath(), what, len(args))
		case len(args) == 1 && args[0] == "":
			return usage("%s needs the name of a %s that is not empty.", cmd.CommandPath(), what)
		}
		return nil
	}
}

// copied is the answer to a backup.
type copied struct {
	To      string `json:"to"`
	Entries uint64 `json:"entries"`
	Bytes   int64  `json:"bytes"`
	Journal string `json:"journal"`
}

func (a *app) backup(path, to string) error {
	if to == "" {
		if err := a.backupToday(path); err != nil {
			return wayBack(path, err)
		}
		to = copyPath(path, a.today())
	} else if err := store.Backup(path, to); err != nil {
		return wayBack(path, howToBegin(err))
	}
	out, err := describeCopy(to)
	if err != nil {
		return err
	}
	a.tellWhatIsAhead(path, out.Entries)
	a.tellWhatChanged(path, to)
	if a.flags.json {
		return a.printJSON(out)
	}
	return a.print(fmt.Sprintf("Copied to %s and checked: %d entries, %d bytes.\n", out.To, out.Entries, out.Bytes))
}

// today is the day of the clock, or of the time given by hand.
func (a *app) today() string { return a.clock().Date() }

// backupToday makes the daily copy. If nobody has the book open, the lines beside it begin anew, as they do when the
// screen makes it.
func (a *app) backupToday(path string) error {
	k, err := openBook(path, false)
	if err == nil {
		a.warn(k)
		keep := &keeper{b: k.attendant}
		k.attendant.now = func() time.Time { return a.clock().Time() }
		_, err = keep.Copy()
		return errors.Join(err, k.Close())
	}
	if !errors.Is(err, store.ErrBusy) {
		return err
	}
	_, err = copyOfToday(path, a.today(), func(to string) error { return store.BackupOver(path, to) })
	return err
}

// describeCopy says what a copy holds.
func describeCopy(path string) (copied, error) {
	at, err := lookAt(path)
	out := copied{To: path, Entries: at.last, Journal: at.digest.String()}
	if st, bad := os.Stat(path); bad == nil {
		out.Bytes = st.Size()
	}
	return out, err
}

// tellWhatIsAhead says so if the lines beside the book hold more than the copy: a damaged head may have taken the last
// action from the book.
func (a *app) tellWhatIsAhead(path string, entries uint64) {
	_, last, ok := linesHold(linesPath(path))
	if !ok || last <= entries || a.flags.json {
		return
	}
	at, err := lookAt(path)
	if err != nil || at.last >= last { // it was written to after the copy, or is being written to
		return
	}
	_, _ = fmt.Fprintf(a.stderr, "The lines beside the book hold %d entries more than the book. Open it once, and it gets them back.\n", last-entries)
}
