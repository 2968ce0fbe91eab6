package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
	"example.com/tintline/core/tally"
)

func (a *app) moneyCommand() *cobra.Command {
	var date, from, to, by, as string
	cmd := &cobra.Command{
		Use:   "money [--date D | --from D --to D] [--by WAY] [--as FORM]",
		Short: "What the days earned and what they cost; when the rig has paid back",
		Long: `Adds up visits, revenue, product, hours and driving by day, week, month, lawn or round. Without dates it is the open day, else the last
one. Revenue is the price in the entry that ended each visit; a visit of before prices were kept counts at the lawn's price now, and that
is said. A call-back is free. What has no price is named and is not counted as 0. Payback says of each investment what it has earned.`,
		Example: `  tintline money
  tintline money --from 2026-05-01 --to 2026-05-31 --by lawn --as csv > may.csv
  tintline money payback --stops 22 --days 150`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := dates(cmd, date, &from, &to); err != nil {
				return err
			}
			form, err := a.handedOut(as)
			if err != nil {
				return err
			}
			if !slices.Contains(tally.MoneyWays, by) {
				return usage("--by %q is none of %s.", by, strings.Join(tally.MoneyWays, ", "))
			}
			return a.reading(func(k *keptBook) error { return a.money(k, from, to, by, form) })
		},
	}
	f := cmd.Flags()
	f.StringVar(&date, "date", "", "one `DAY`, as in 2026-05-28")
	f.StringVar(&from, "from", "", "first `DAY` of several")
	f.StringVar(&to, "to", "", "last `DAY` of several")
	f.StringVar(&by, "by", "day", "the `WAY`: "+strings.Join(tally.MoneyWays, ", "))
	asFlag(cmd, &as)
	completes(cmd, "by", cobra.FixedCompletions(tally.MoneyWays, cobra.ShellCompDirectiveNoFileComp))
	cmd.AddCommand(a.paybackCommand())
	return cmd
}

// yearBefore is the first day of the year of a date, from which rounds are counted; empty: no bound.
func yearBefore(date string) string {
	if len(date) < len("2026-01-01") {
		return ""
	}
	return date[:4] + "-01-01"
}

func (a *app) money(k *keptBook, from, to, by, form string) error {
	d := k.book.Day()
	if d.Date == "" {
		return &failure{what: "The book " + k.path + " has no day yet.", do: "Open a day first.", code: exitCannot}
	}
	if from == "" && to == "" {
		from, to = d.Date, d.Date
	}
	var list []tally.Earned
	err := a.pastDays(k, func(read past.Reader) (err error) {
		list, err = past.Earned(k.book, read, yearBefore(from), to, a.at)
		return err
	})
	if err != nil {
		return err
	}
	m := tally.AddMoney(k.book, list, by, from, to)
	if m.Days == 0 {
		return noDay(k)
	}
	title := "Money"
	for _, s := range []string{from, to} {
		if s != "" && !strings.HasSuffix(title, s) {
			title += ", " + s
		}
	}
	switch form {
	case asJSON:
		return a.printJSON(m.JSON())
	case asCSV:
		return a.printTable(m.Table())
	}
	return a.printDocument(m.Document(k.book, title), form)
}

func (a *app) paybackCommand() *cobra.Command {
	var as string
	var assumed tally.Assumed
	cmd := &cobra.Command{
		Use:   "payback [--stops N --days N] [--as FORM]",
		Short: "What each investment has earned, and the day on which it has paid back",
		Example: `  tintline money payback
  tintline money payback --stops 22 --days 150`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			form, err := a.handedOut(as)
			if err != nil {
				return err
			}
			f := cmd.Flags()
			if f.Changed("stops") != f.Changed("days") {
				return usage("--stops and --days belong together.")
			}
			if f.Changed("stops") && !(assumed.Stops > 0 && assumed.Stops <= 500 && assumed.Days > 0 && assumed.Days <= 366) {
				return usage("--stops is up to 500 a day and --days up to 366 a year, both more than 0.")
			}
			return a.reading(func(k *keptBook) error { return a.payback(k, assumed, form) })
		},
	}
	cmd.Flags().Float64Var(&assumed.Stops, "stops", 0, "assume so many `STOPS` a day")
	cmd.Flags().Float64Var(&assumed.Days, "days", 0, "assume so many `DAYS` a year")
	asFlag(cmd, &as)
	return cmd
}

func (a *app) payback(k *keptBook, assumed tally.Assumed, form string) error {
	var list []tally.Earned
	err := a.pastDays(k, func(read past.Reader) (err error) {
		list, err = past.Earned(k.book, read, firstBought(k.book), "", a.at)
		return err
	})
	if err != nil {
		return err
	}
	p := tally.Paybacks(k.book, list, a.seasonDate(k.book), assumed)
	if form == asJSON {
		return a.printJSON(tally.PaybackJSON(p))
	}
	return a.printDocument(tally.PaybackDocument(p, assumed), form)
}

// firstBought is the date of the oldest investment.
func firstBought(b *core.Book) string {
	first := ""
	for _, f := range b.Investments() {
		if first == "" || f.Date < first {
			first = f.Date
		}
	}
	return first
}
