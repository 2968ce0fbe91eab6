package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

func (a *app) replayCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "replay FILE|-",
		Short: "Make a book from lines of facts, all of them or none",
		Long: `Makes the book --book, which must not exist, from a file of facts, one JSON object a line.
A line with a digest is restored as it was and must follow from the line before; a line without one is
admitted as if it were typed. If one line is refused, no book is made. A line with a digest that holds what this version
does not know was written by a newer one.`,
		Example: `  tintline journal --book truck.db --json > truck.jsonl
  tintline replay truck.jsonl --book copy.db
  tintline replay - --book new.db < facts.jsonl`,
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
			b, err := a.replay(path, newID(), r)
			if err = errors.Join(err, closer.Close()); err != nil {
				return err
			}
			return a.printDigests(b)
		},
	}
}

// replay makes a book at path from lines.
func (a *app) replay(path, id string, r *lineReader) (*core.Book, error) {
	if err := makeFolder(path); err != nil {
		return nil, err
	}
	b := core.NewBook(newBookTruck)
	err := store.CreateWith(path, id, storeOptions(false), func(add func(string, []store.Item) error) error {
		for {
			lines, err := r.action()
			if err != nil || len(lines) == 0 {
				return err
			}
			if err := a.replayAction(b, r, lines, add); err != nil {
				return err
			}
		}
	})
	if err == nil {
		keepIn(path, b)
	}
	return b, err
}

func (a *app) replayAction(b *core.Book, r *lineReader, lines []*numbered, add func(string, []store.Item) error) error {
	first := lines[0]
	action := first.Action
	if action == "" {
		action = newID()
	}
	var entries []core.Entry
	on := &applying{b: b}
	wrong, err := first, error(nil)
	if first.HasDigest {
		entries, wrong, err = readmit(b, action, lines, on.apply)
	} else if entries, err = admit(b, action, first, a.clock); err == nil {
		for _, e := range entries {
			if err = on.apply(e); err != nil {
				break
			}
		}
	}
	if err != nil {
		return r.refused(wrong.n, err)
	}
	err = add(action, on.items(entries))
	if errors.Is(err, store.ErrInput) { // the same action twice, or more in one than the file takes
		return r.refused(first.n, err)
	}
	return err
}

// printDigests says what the book came to.
func (a *app) printDigests(b *core.Book) error {
	if a.flags.json {
		return a.printJSON(struct {
			Entries uint64 `json:"entries"`
			State   string `json:"state"`
			Journal string `json:"journal"`
		}{b.Seq(), b.StateDigest().String(), b.Digest().String()})
	}
	return a.print(fmt.Sprintf("entries %d\nstate %s\njournal %s\n", b.Seq(), b.StateDigest(), b.Digest()))
}

// replayText makes a book at path from lines that the program carries.
func (a *app) replayText(path, id, name, text string) (*core.Book, error) {
	return a.replay(path, id, newLineReader(name, strings.NewReader(text)))
}
