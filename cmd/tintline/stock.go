package main

import (
	"github.com/spf13/cobra"

	"example.com/tintline/core/yard"
)

func (a *app) stockCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "stock",
		Short: "What is in stock, what the planned loads take of it, and what to order",
		Long: `Lists the products: what is in stock by what was counted and bought and what has gone out of the packages since, what
was used this year, what the planned loads take as it is measured out, and what to order. A product that was neither
counted nor bought is not known. Counts, purchases and the line below which to order are entered on the page of the
stock, or as lines with the fact stocked.`,
		Example: `  tintline stock --book truck.db
  tintline stock --json`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error {
			return a.reading(func(k *keptBook) error {
				s, err := yard.Stock(k.book)
				if err != nil {
					return err
				}
				if a.flags.json {
					return a.printJSON(s.Document())
				}
				return a.print(s.Text())
			})
		},
	}
}
