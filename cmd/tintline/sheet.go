package main

import (
	"github.com/spf13/cobra"

	"example.com/tintline/core/yard"
)

func (a *app) sheetCommand() *cobra.Command {
	var into string
	c := &cobra.Command{
		Use:   "sheet --into TANK",
		Short: "The sheet of a planned load, in the order of doing, to be printed",
		Long: `The sheet of a load that is planned: what is worn, where it is mixed, the air gap, the water meter,
water and products in the order in which they go in, each with a box. Ticks that stand in the book
are crossed.`,
		Example: `  tintline sheet --book truck.db --into a
  tintline sheet --book truck.db --into a --json`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error {
			if into == "" {
				f := usage("sheet needs --into with the letter of a compartment, or an applicator.")
				f.do = "Give it as in tintline sheet --into a."
				return f
			}
			return a.reading(func(k *keptBook) error { return a.sheet(k, into) })
		},
	}
	c.Flags().StringVar(&into, "into", "", "the `TANK`: a letter, or an applicator with a tank of its own")
	return c
}

func (a *app) sheet(k *keptBook, into string) error {
	at := a.clock()
	s, err := yard.SheetOf(k.book, at, into)
	if err != nil {
		return err
	}
	if a.flags.json {
		return a.printJSON(s.Doc())
	}
	return a.print(s.Text(k.book, at))
}
