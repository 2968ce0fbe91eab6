package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"example.com/tintline/core/past"
	"example.com/tintline/core/printed"
	"example.com/tintline/core/tally"
)

func (a *app) tallyCommand() *cobra.Command {
	var date, from, to, by, as string
	cmd := &cobra.Command{
		Use:   "tally [--date D | --from D --to D] [--by year|month] [--as FORM]",
		Short: "Gallons and area by compartment, mix, product and lawn",
		Long: `Adds up what went down: by compartment, mix, product and lawn. Without a date it is the open day,
else the last one. As printed, each column adds up, and so does each row of the compartments:
left = start + loaded + pushed in - drawn - other + unexplained.
By year or month it lists days, hours, gallons, area and products of each, of all days unless dates are given.
As html a day is one page; as csv it is one table with the units in the head, without sums, and the zones stand for their lawns.`,
		Example: `  tintline tally --book truck.db
  tintline tally --date 2026-05-28
  tintline tally --from 2026-05-01 --to 2026-05-31 --json
  tintline tally --by year
  tintline tally --as html > day.html`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := dates(cmd, date, &from, &to); err != nil {
				return err
			}
			form, err := a.handedOut(as)
			if err != nil {
				return err
			}
			switch f := cmd.Flags(); {
			case !f.Changed("by") && from == "" && to == "":
				return a.tallyLast(form)
			case !f.Changed("by"):
				return a.tally(from, to, form)
			case by != string(tally.Year) && by != string(tally.Month):
				return usage("--by %q is neither year nor month.", by)
			}
			return a.tallyBy(tally.By(by), from, to, form)
		},
	}
	cmd.Flags().StringVar(&date, "date", "", "one `DAY`, as in 2026-05-28")
	cmd.Flags().StringVar(&from, "from", "", "first `DAY` of several")
	cmd.Flags().StringVar(&to, "to", "", "last `DAY` of several")
	asFlag(cmd, &as)
	cmd.Flags().StringVar(&by, "by", "", "a list by `PERIOD`: year or month")
	completes(cmd, "by", cobra.FixedCompletions([]string{string(tally.Year), string(tally.Month)}, cobra.ShellCompDirectiveNoFileComp))
	return cmd
}

// tallyLast prints the sums of the open day, else of the last one.
func (a *app) tallyLast(form string) error {
	return a.reading(func(k *keptBook) error {
		if k.book.Day().Date == "" {
			return &failure{what: "The book " + k.path + " has no day yet.", do: "Open a day first.", code: exitCannot}
		}
		t := tally.Close(k.book, a.at)
		return a.printSums(form, t.Text, t.Printed, t.Figures, func() any { return t.Document() })
	})
}

func (a *app) tally(from, to, form string) error {
	return a.reading(func(k *keptBook) error {
		var t tally.Tally
		var ok bool
		err := a.pastDays(k, func(read past.Reader) (err error) {
			t, ok, err = past.Sums(k.book, read, from, to, a.at)
			return err
		})
		if err == nil && !ok {
			err = noDay(k)
		}
		if err != nil {
			return err
		}
		return a.printSums(form, t.Text, t.Printed, t.Figures, func() any { return t.Document() })
	})
}

func (a *app) tallyBy(by tally.By, from, to, form string) error {
	return a.reading(func(k *keptBook) error {
		var list tally.Periods
		err := a.pastDays(k, func(read past.Reader) (err error) {
			list, err = past.By(k.book, read, by, from, to, a.at)
			return err
		})
		if err == nil && len(list.List) == 0 {
			err = noDay(k)
		}
		if err != nil {
			return err
		}
		return a.printSums(form, list.Text, list.Printed, list.Figures, func() any { return list.Document() })
	})
}

func noDay(k *keptBook) error {
	return &failure{
		what: fmt.Sprintf("The book %s has no day in what was asked for; the last one is %q.", k.path, k.book.Day().Date),
		do:   "Ask for dates on which a day was opened.", code: exitCannot,
	}
}

// printSums prints what was added up in the form asked for.
func (a *app) printSums(form string, text func() string, page, figures func() printed.Document, document func() any) error {
	switch form {
	case asJSON:
		return a.printJSON(document())
	case asHTML:
		return a.printDocument(page(), form)
	case asCSV:
		return a.printDocument(figures(), form)
	}
	return a.print(text())
}
