package main

import (
	"bufio"
	"errors"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/core/say"
)

func (a *app) journalCommand() *cobra.Command {
	var want wanted
	var date string
	cmd := &cobra.Command{
		Use:   "journal [--since SEQ] [--date D | --from D --to D] [--lawn N]",
		Short: "All entries, in order",
		Long: `Prints the entries in order, one a line; struck ones are marked. With --json the lines are exact and
complete: tintline replay makes the same book from them. A key that came with a later version of the program is left out
where it says nothing, so that an older one reads the lines too. Of a lawn it prints what names it, and what strikes that.`,
		Example: `  tintline journal --book truck.db --date 2026-05-28
  tintline journal --book truck.db --json > truck.jsonl
  tintline journal --lawn "77 Fir" --from 2026-01-01
  tintline journal --since 1200 --json`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := dates(cmd, date, &want.from, &want.to); err != nil {
				return err
			}
			return a.reading(func(k *keptBook) error { return a.journal(k, want) })
		},
	}
	f := cmd.Flags()
	f.Uint64Var(&want.since, "since", 0, "begin with entry number `SEQ`")
	f.StringVar(&date, "date", "", "only the entries of one `DAY`, as in 2026-05-28")
	f.StringVar(&want.from, "from", "", "first `DAY` of several")
	f.StringVar(&want.to, "to", "", "last `DAY` of several")
	f.StringVar(&want.lawn, "lawn", "", "only what is about one `LAWN`")
	return cmd
}

// dates settles the flags date, from and to, which say from which day to which.
func dates(cmd *cobra.Command, date string, from, to *string) error {
	f := cmd.Flags()
	if f.Changed("date") && (f.Changed("from") || f.Changed("to")) {
		return usage("--date stands for one day; leave --from and --to out.")
	}
	for _, d := range [][2]string{{"date", date}, {"from", *from}, {"to", *to}} {
		if _, err := time.Parse(time.DateOnly, d[1]); f.Changed(d[0]) && err != nil {
			return usage("--%s %q is not a date; write it as in 2026-05-28.", d[0], d[1])
		}
	}
	if date != "" {
		*from, *to = date, date
	}
	if *from != "" && *to != "" && *from > *to {
		return usage("--from %s is after --to %s.", *from, *to)
	}
	return nil
}

func (a *app) journal(k *keptBook, want wanted) error {
	out := bufio.NewWriterSize(a.stdout, 1<<16)
	none := true
	err := k.marked(want, func(e core.Entry, struckBy uint64) error {
		var err error
		none = false
		if a.flags.json {
			_, err = out.Write(append(core.EncodeLine(e, struckBy), '\n'))
		} else {
			_, err = out.WriteString(entryLine(e, struckBy))
		}
		return err
	})
	if err == nil && none && want.lawn != "" && k.book.Lawn(want.lawn) == nil {
		return usage("There is no lawn %q in the book.", want.lawn) // nothing at all would read like a lawn without entries
	}
	return errors.Join(err, out.Flush())
}

// entryLine is an entry as people read it.
func entryLine(e core.Entry, struckBy uint64) string {
	mark := ""
	if struckBy != 0 {
		mark = fmt.Sprintf("[struck by %d] ", struckBy)
	}
	return fmt.Sprintf("%6d  %s %5s  %s%s\n", e.Seq, e.At.Date(), e.At.Clock(), mark, say.Fact(e.What))
}
