package main

import (
	"errors"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

func (a *app) enterCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "enter FILE|-",
		Short: "Add lines of facts to the book, one action a line",
		Long: `Adds facts to the book, one JSON object a line, in order, and prints {"seq","action"} for each when
it is on the disk. It ends at the first line that is refused; the lines before it stay. A line whose action
is in the book already is answered as it was the first time and not entered again. Where there is no book
yet, the first line begins one.`,
		Example: `  tintline enter facts.jsonl --book truck.db
  echo '{"fact":"gauge_read","compartment":"a","volume_gal":151}' | tintline enter - --book truck.db
  echo '{"fact":"ran","seconds":45,"pump":"on"}' | tintline enter - --book truck.db
  echo '{"fact":"marked","compartment":"a","mark":"8","volume_gal":50}' | tintline enter - --book truck.db
  echo '{"fact":"dumped","from":"hose/reel","to":"waste/pail"}' | tintline enter - --book truck.db
  echo '{"fact":"cleaned","what":"strainers"}' | tintline enter - --book truck.db`,
		Args: oneArg("a file of lines, or - for standard input"),
		RunE: func(_ *cobra.Command, args []string) error {
			path, err := a.bookPath()
			if err != nil {
				return err
			}
			r, closer, err := a.openLines(args[0])
			if err != nil {
				return err
			}
			k, err := openOrNew(path, a.adding())
			if err != nil {
				return errors.Join(err, closer.Close())
			}
			a.warn(k)
			err = a.enter(k, r)
			a.warnOfLines(k)
			return errors.Join(err, k.Close(), closer.Close())
		},
	}
}

func (a *app) enter(k *keptBook, r *lineReader) error {
	for {
		lines, err := r.action()
		if err != nil || len(lines) == 0 {
			return err
		}
		if err := a.enterAction(k, r, lines); err != nil {
			return err
		}
	}
}

// entered is the answer to a line.
type entered struct {
	Seq    uint64 `json:"seq"`
	Action string `json:"action"`
}

func (a *app) enterAction(k *keptBook, r *lineReader, lines []*numbered) error {
	first := lines[0]
	action := first.Action
	if action == "" {
		action = newID()
	}
	seq, done, err := k.done(action)
	if err != nil {
		return err
	}
	if done && first.HasDigest {
		if err := k.sameLength(action, lines); err != nil {
			return r.refused(first.n, err)
		}
	}
	if !done {
		if seq, err = a.enterNew(k, r, action, lines); err != nil {
			return err
		}
	}
	for i := range lines {
		if err := a.printJSON(entered{seq + uint64(i), action}); err != nil {
			return err
		}
	}
	return nil
}

// sameLength tells whether an action that is in the book has as many entries as the lines that name it. A book that was
// brought back may end within one.
func (k *keptBook) sameLength(action string, lines []*numbered) error {
	had, _, err := k.file().Find(action)
	if n := had.Last - had.First + 1; err == nil && n != uint64(len(lines)) {
		err = usage("The action %s has %d of its entries in the book, and the lines give it %d.", action, n, len(lines))
	}
	return err
}

func (a *app) enterNew(k *keptBook, r *lineReader, action string, lines []*numbered) (seq uint64, err error) {
	first := lines[0]
	var entries []core.Entry
	wrong := first
	if first.HasDigest {
		b := k.book.Clone()
		entries, wrong, err = readmit(b, action, lines, b.Apply)
	} else {
		entries, err = admit(k.book, action, first, a.clock)
	}
	if err != nil {
		return 0, r.refused(wrong.n, err)
	}
	if err = k.write(action, entries); errors.Is(err, store.ErrInput) {
		return 0, r.refused(first.n, err)
	}
	return entries[0].Seq, err
}
