package main

import (
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"example.com/tintline/core/tally"
)

func (a *app) tallyCommand() *cobra.Command {
	var date, from, to string
	cmd := &cobra.Command{
		Use:   "tally [--date D | --from D --to D]",
		Short: "Gallons and area by compartment, mix, product and lawn",
		Long: `Adds up what went down: by compartment, mix, product and lawn. Without a date it is the open day,
else the last one. As printed, each column adds up, and so does each row of the compartments:
left = start + loaded + pushed in - drawn - other + unexplained.`,
		Example: `  tintline tally --book truck.db
  tintline tally --date 2026-05-28
  tintline tally --from 2026-05-01 --to 2026-05-31 --json`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			f := cmd.Flags()
			if f.Changed("date") && (f.Changed("from") || f.Changed("to")) {
				return usage("--date stands for one day; leave --from and --to out.")
			}
			for _, d := range [][2]string{{"date", date}, {"from", from}, {"to", to}} {
				if _, err := time.Parse(time.DateOnly, d[1]); f.Changed(d[0]) && err != nil {
					return usage("--%s %q is not a date; write it as in 2026-05-28.", d[0], d[1])
				}
			}
			if date != "" {
				from, to = date, date
			}
			if from != "" && to != "" && from > to {
				return usage("--from %s is after --to %s.", from, to)
			}
			return a.tally(from, to)
		},
	}
	cmd.Flags().StringVar(&date, "date", "", "one `DAY`, as in 2026-05-28")
	cmd.Flags().StringVar(&from, "from", "", "first `DAY` of several")
	cmd.Flags().StringVar(&to, "to", "", "last `DAY` of several")
	return cmd
}

func (a *app) tally(from, to string) error {
	last := from == "" && to == ""
	span := &tally.Span{From: from, To: to, Now: a.at}
	if last {
		return a.reading(func(k *keptBook) error {
			if k.book.Day().Date == "" {
				return &failure{what: "The book " + k.path + " has no day yet.", do: "Open a day first.", code: exitCannot}
			}
			t := tally.Close(k.book, a.at)
			return a.printTally(&t)
		})
	}
	return a.reading(func(k *keptBook) error {
		t, ok := span.Sum(k.book)
		if !ok {
			return &failure{
				what: fmt.Sprintf("The book %s has no day in what was asked for; the last one is %q.", k.path, k.book.Day().Date),
				do:   "Ask for dates on which a day was opened.", code: exitCannot,
			}
		}
		return a.printTally(&t)
	}, span)
}

func (a *app) printTally(t *tally.Tally) error {
	if a.flags.json {
		return a.printJSON(t.Document())
	}
	return a.print(t.Text())
}
