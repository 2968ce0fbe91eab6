package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.com/tintline/store"
)

func (a *app) verifyCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "verify",
		Short: "Read the whole book through: is it what was written, and does it add up",
		Long: `Reads the book --book through, which may be a copy, and changes nothing: whether the file is whole, whether each
entry follows from the one before, whether every gallon and every product is somewhere after every entry, and whether
what the book keeps beside its entries is what they come to. An entry that is whole and does not follow was changed; one
that is not whole is damaged. It ends with 0 if all is right, and with 6 if not.`,
		Example: `  tintline verify --book truck.db
  tintline verify --book truck.db.2026-05-28.copy --json`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error {
			path, err := a.bookPath()
			if err != nil {
				return err
			}
			return a.verify(path)
		},
	}
}

func (a *app) verify(path string) error {
	file, err := store.Open(path, storeOptions(true))
	if err != nil {
		return a.cannotOpen(wayBack(path, howToBegin(err)))
	}
	bar := progressOn(a.stderr, a.now, "reading the book")
	v := verifyFile(file, bar.Share)
	bar.End()
	return errors.Join(a.printVerified(path, &v), file.Close())
}

// cannotOpen is a file whose very beginning is wrong. Damage is the answer of the command, all else its failure.
func (a *app) cannotOpen(err error) error {
	f := explain(err)
	if f.code != exitDamaged || !a.flags.json {
		return err
	}
	v := nothingFound()
	v.wrong("%s", f.what)
	return errors.Join(a.printJSON(v), &failure{code: exitDamaged})
}

// printVerified says what came out, and ends with the exit code that it means.
func (a *app) printVerified(path string, v *verified) error {
	var err error
	if a.flags.json {
		err = a.printJSON(v)
	} else {
		err = a.print(strings.Join(v.lines(path), "\n") + "\n")
	}
	switch {
	case err != nil:
		return err
	case v.OK:
		return nil
	case v.newer:
		return &failure{code: exitNewer}
	}
	return &failure{code: exitDamaged}
}

// mostWrong is how many findings are said in words; --json has all.
const mostWrong = 6

// lines are the words for a person: one screen.
func (v *verified) lines(path string) []string {
	out := []string{fmt.Sprintf("%s: %s, %s", path, counted(int(v.Entries), "entry", "entries"), counted(v.Days, "day", "days"))}
	if v.OK {
		out = append(out,
			"entries     whole, and each follows from the one before",
			"accounts    every gallon and every product is somewhere after each entry",
			"keys        "+v.keyWords(),
			"rows        "+derivedWords(v.Rows, "the figures kept of each day are"),
			"snapshot    "+derivedWords(v.Snapshot, "the book kept at the last close is"),
			"beside      "+v.besideWords(),
		)
	}
	wrong := append(append([]foundWrong(nil), v.Changed...), v.Damaged...)
	for i, w := range wrong {
		if i == mostWrong {
			out = append(out, fmt.Sprintf("and %d more; --json lists them all", len(wrong)-i))
			break
		}
		out = append(out, fmt.Sprintf("%-11s %s", w.Kind, w.Says))
	}
	if v.State != nil {
		out = append(out, "state       "+*v.State, "journal     "+*v.Journal)
	}
	if !v.OK && v.entries {
		out = append(out, "The entries are whole: tintline journal --json and tintline replay make a book of them in which all else fits.")
	} else if !v.OK && !v.newer {
		out = append(out, doBringBack(path))
	}
	if v.newer {
		out = append(out, "Read it with the newer program that wrote it.")
	}
	return out
}

func (v *verified) keyWords() string {
	switch v.rekeyed {
	case 0:
		return "each entry is found under its day and its lawn"
	case 1:
		return "those of an earlier version for 1 entry; opening the book for writing puts that right"
	}
	return fmt.Sprintf("those of an earlier version for %d entries; opening the book for writing puts that right", v.rekeyed)
}

func derivedWords(what, of string) string {
	switch what {
	case derivedFits:
		return of + " what the entries come to"
	case derivedNone:
		return "none"
	case derivedOlder:
		return "those of an earlier version; opening the book for writing puts that right"
	}
	return what
}

func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
