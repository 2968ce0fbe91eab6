package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"example.com/tintline/core/past"
)

func (a *app) laidCommand() *cobra.Command {
	var q past.Query
	var date string
	cmd := &cobra.Command{
		Use:   "laid [--lawn N] [--product P] [--date D | --from D --to D]",
		Short: "What went down, piece by piece: on a lawn, of a product, between dates",
		Long: `Lists each spraying and spreading by zone, with its entry, amounts and label entries, and adds up by product.
Of a product it lists each that held any, be it a trace.`,
		Example: `  tintline laid --lawn "77 Fir"
  tintline laid --product "weed control" --from 2026-01-01 --to 2026-12-31
  tintline laid --lawn "77 Fir" --json`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := dates(cmd, date, &q.From, &q.To); err != nil {
				return err
			}
			return a.reading(func(k *keptBook) error { return a.laid(k, q) })
		},
	}
	f := cmd.Flags()
	f.StringVar(&q.Lawn, "lawn", "", "only on one `LAWN`")
	f.StringVar(&q.Product, "product", "", "only what held one `PRODUCT`")
	f.StringVar(&date, "date", "", "one `DAY`, as in 2026-05-28")
	f.StringVar(&q.From, "from", "", "first `DAY` of several")
	f.StringVar(&q.To, "to", "", "last `DAY` of several")
	return cmd
}

func (a *app) laid(k *keptBook, q past.Query) error {
	switch {
	case q.Lawn != "" && k.book.Lawn(q.Lawn) == nil:
		return usage("There is no lawn %q in the book.", q.Lawn)
	case q.Product != "" && k.book.Product(q.Product) == nil:
		return usage("There is no product %q in the book.", q.Product)
	}
	var list []past.Laid
	err := a.pastDays(k, func(read past.Reader) (err error) {
		list, err = past.Find(k.book, read, q)
		return err
	})
	switch {
	case err != nil:
		return err
	case a.flags.json:
		return a.printJSON(q.Arrange(list))
	case len(list) == 0:
		return &failure{what: fmt.Sprintf("Nothing of that was laid, as far as the book %s goes back.", k.path), do: "Ask for other days, another lawn or another product.", code: exitCannot}
	}
	return a.print(q.Text(list))
}
