package main

import (
	"strings"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
	"example.com/tintline/core/say"
	"example.com/tintline/core/tally"
)

func (a *app) amendCommand() *cobra.Command {
	var q past.Query
	var date, zone, who, why string
	var yes bool
	cmd := &cobra.Command{
		Use:   "amend --date D --lawn N --zone N --product P --who W --why Y FIELD=VALUE... [--yes]",
		Short: "Change the record of a closed day: who, when and why stand beside it, and what stood there first",
		Long: `Amends the record of what went of one product on one zone on a day that is closed: fields of the record, area_sqft, amount (of the product)
or gallons (of the mix, with all that was in it). Liquid that went otherwise than was logged goes against the unexplained of the open day.
The first record stays and is read beside it. Nothing is booked without --yes.`,
		Example: `  tintline amend --date 2026-05-28 --lawn "77 Fir" --zone front --product "Example Warm" --who "R. Example" --why "was clover" target=clover
  tintline amend --date 2026-05-28 --lawn "77 Fir" --zone front --product "Example Warm" --who "R. Example" --why "paced again" area_sqft=3900 --yes`,
		Args: cobra.MinimumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			var changes [][2]string
			for _, s := range args {
				field, value, ok := strings.Cut(s, "=")
				if !ok {
					return usage("%q is no FIELD=VALUE.", s)
				}
				changes = append(changes, [2]string{field, value})
			}
			for _, s := range [][2]string{{"date", date}, {"lawn", q.Lawn}, {"zone", zone}, {"product", q.Product}, {"who", who}, {"why", why}} {
				if s[1] == "" {
					return usage("amend needs --%s.", s[0])
				}
			}
			product := q.Product
			q.From, q.To, q.Product = date, date, ""
			run := func(k *keptBook) error { return a.amend(k, q, zone, product, who, why, changes, yes) }
			if yes {
				return a.changing(run)
			}
			return a.reading(run)
		},
	}
	f := cmd.Flags()
	f.StringVar(&date, "date", "", "the `DAY` whose record it is")
	f.StringVar(&q.Lawn, "lawn", "", "the `LAWN`")
	f.StringVar(&zone, "zone", "", "its `ZONE`")
	f.StringVar(&q.Product, "product", "", "the `PRODUCT`")
	f.StringVar(&who, "who", "", "`WHO` amends it")
	f.StringVar(&why, "why", "", "and `WHY`")
	f.BoolVar(&yes, "yes", false, "book it")
	return cmd
}

func (a *app) amend(k *keptBook, q past.Query, zone, product, who, why string, changes [][2]string, yes bool) error {
	var list []tally.Record
	err := a.pastDays(k, func(read past.Reader) (err error) {
		list, err = past.Records(k.book, read, q)
		return err
	})
	if err != nil {
		return err
	}
	var r *tally.Record
	for i := range list {
		if list[i].Zone == zone && list[i].Product == product && r == nil {
			r = &list[i]
		}
	}
	if r == nil {
		return usage("No %s is on record for %s, %s on %s.", product, q.Lawn, zone, q.From)
	}
	fact, err := tally.Amending(list, r, who, why, changes)
	if err != nil {
		return err
	}
	action := newID()
	entries, err := k.book.Prepare(action, a.clock(), fact)
	if err != nil {
		return err
	}
	if yes {
		if err := k.write(action, entries); err != nil {
			return err
		}
	}
	said := say.Fact(entries[len(entries)-1].What)
	if a.flags.json {
		return a.printJSON(map[string]any{"amended": yes, "says": said, "changes": changesOf(fact)})
	}
	if !yes {
		said += ".\nNothing was booked; with --yes it is"
	}
	return a.print(said + ".\n")
}

func changesOf(f *core.Amended) []map[string]any {
	out := []map[string]any{}
	for _, c := range f.Changes {
		out = append(out, map[string]any{"field": c.Field, "was": c.Was, "is": c.Is})
	}
	for _, m := range f.More {
		out = append(out, map[string]any{"product": m.Product, "more": m.Amount.N, "unit": tally.UnitOf(m.Amount.Kind)})
	}
	return out
}
