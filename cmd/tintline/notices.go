package main

import (
	"github.com/spf13/cobra"

	"example.com/tintline/core/notice"
	"example.com/tintline/core/past"
	"example.com/tintline/core/tally"
)

func (a *app) noticesCommand() *cobra.Command {
	var date, as string
	cmd := &cobra.Command{
		Use:   "notices [--date D] [--as FORM]",
		Short: "Signs that stand, notices owed, neighbours to tell, re-entry clocks",
		Long: `Lists what is owed now: neighbours to tell of today's and tomorrow's lawns with the time for it, signs to put up and to take down, notices
to leave; then the signs that stand, when lawns may be entered again by the words of the label entries, the neighbours and each contact.
With the date of an ended day it lists what its records say of these. The rules are those of the setting state, or notice_state.
The product label, the law and local rules decide.`,
		Example: `  tintline notices
  tintline notices --json
  tintline notices --date 2026-05-28 --as html > day.html`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			var from, to string
			if err := dates(cmd, date, &from, &to); err != nil {
				return err
			}
			form, err := a.handedOut(as)
			if err != nil {
				return err
			}
			return a.reading(func(k *keptBook) error { return a.notices(k, date, form) })
		},
	}
	cmd.Flags().StringVar(&date, "date", "", "an ended `DAY`, as in 2026-05-28")
	asFlag(cmd, &as)
	return cmd
}

func (a *app) notices(k *keptBook, date, form string) error {
	if date == "" || date == k.book.Day().Date {
		o := notice.Look(k.book, a.clock())
		if form == asJSON {
			return a.printJSON(o.Document())
		}
		return a.printDocument(o.Printed(), form)
	}
	list, err := a.recordsOn(k, date, "")
	if err != nil {
		return err
	}
	if len(list) == 0 {
		return noDay(k)
	}
	if form == asJSON {
		rows := []map[string]any{}
		for i := range list {
			r := &list[i]
			rows = append(rows, map[string]any{"lawn": r.Lawn, "zone": r.Zone, "product": r.Product, "signs": r.SignsAt, "notice": r.Notice, "neighbours": r.Neighbours})
		}
		return a.printJSON(map[string]any{"date": date, "records": rows})
	}
	return a.printDocument(notice.OfDay(date, list), form)
}

// recordsOn are the rows of the record of one day, of one lawn if it is named.
func (a *app) recordsOn(k *keptBook, date, lawn string) (list []tally.Record, err error) {
	err = a.pastDays(k, func(read past.Reader) (err error) {
		list, err = past.Records(k.book, read, past.Query{From: date, To: date, Lawn: lawn})
		return err
	})
	return list, err
}

func (a *app) noticeCommand() *cobra.Command {
	var lawn, date, as string
	cmd := &cobra.Command{
		Use:   "notice --lawn N [--date D] [--as FORM]",
		Short: "The customer's notice for one lawn: what was put down, or what will be",
		Long: `Prints the notice for the customer of a lawn: what was put down, when, with registration numbers and actives, the label's words on going
back onto the lawn, how long signs stay, and whom to call. For a date to come it is the advance notice. Without a date it is the open
day, else the last one.`,
		Example: `  tintline notice --lawn "77 Fir Lane"
  tintline notice --lawn "77 Fir Lane" --date 2026-05-28 --as html > notice.html`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			var from, to string
			if err := dates(cmd, date, &from, &to); err != nil {
				return err
			}
			form, err := a.handedOut(as)
			switch {
			case err != nil:
				return err
			case lawn == "":
				return usage("Say which lawn: --lawn.")
			}
			return a.reading(func(k *keptBook) error { return a.noticeOf(k, lawn, date, form) })
		},
	}
	cmd.Flags().StringVar(&lawn, "lawn", "", "the `LAWN`")
	cmd.Flags().StringVar(&date, "date", "", "the `DAY`, as in 2026-05-28")
	asFlag(cmd, &as)
	return cmd
}

func (a *app) noticeOf(k *keptBook, lawn, date, form string) error {
	if date == "" {
		date = k.book.Day().Date
	}
	if date == "" {
		return &failure{what: "The book " + k.path + " has no day yet.", do: "Open a day first, or give a date to come.", code: exitCannot}
	}
	list, err := a.recordsOn(k, date, lawn)
	if err != nil {
		return err
	}
	d, err := notice.Of(k.book, lawn, date, list)
	if err != nil {
		return err
	}
	if form == asJSON {
		return a.printJSON(map[string]any{"lawn": lawn, "date": date, "notice": notice.Flat(d), "text": d.Text()})
	}
	return a.printDocument(d, form)
}
