package main

import (
	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/core/card"
)

func (a *app) cardCommand() *cobra.Command {
	var as string
	cmd := &cobra.Command{
		Use:   "card [--as text|html|csv|json]",
		Short: "What is aboard now, and whom to call: for an emergency",
		Long: `Lists what stands in each compartment, applicator's tank and the hose now, with actives, registration numbers, signal words, amounts and
first measures as they were entered from the labels, and the numbers to call. The label and the data sheet of each product go
before it. The settings spill_line and agriculture_line add your state's own numbers.`,
		Example: `  tintline card
  tintline card --as html > aboard.html`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error {
			return a.handOut(as, func(b *core.Book) handout { return card.Of(b, a.clock()) })
		},
	}
	asFlag(cmd, &as)
	return cmd
}
