package main

import (
	"strings"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/core/closing"
)

func (a *app) closeCommand() *cobra.Command {
	var yes bool
	var reason, overnight string
	cmd := &cobra.Command{
		Use:   "close [--yes [--reason R] [--overnight WORDS]]",
		Short: "What there is to do before the day is closed; and closing it",
		Long: `Lists what there is to do before the open day is closed: gauges to be read, lawns to be put right by them, meters, what stays in tanks and
hose overnight, what was not reached, and what does not add up. Nothing is booked, unless --yes says so: then the day is closed, where
something does not add up with the reason. A day that is closed cannot be opened again; after that only an amendment changes a record (tintline amend).`,
		Example: `  tintline close
  tintline close --yes
  tintline close --yes --reason "gauge of b is broken"`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error {
			if !yes {
				if reason != "" || overnight != "" {
					return usage("--reason and --overnight go with --yes, which closes the day.")
				}
				return a.reading(func(k *keptBook) error { return a.printClose(k) })
			}
			return a.changing(func(k *keptBook) error { return a.closeDay(k, reason, overnight) })
		},
	}
	f := cmd.Flags()
	f.BoolVar(&yes, "yes", false, "close the day")
	f.StringVar(&reason, "reason", "", "why it is closed although something does not add up, in `WORDS`")
	f.StringVar(&overnight, "overnight", "", "what stays in the tanks overnight, in `WORDS`; left out: as booked")
	return cmd
}

func (a *app) printClose(k *keptBook) error {
	d := closing.DocumentOf(k.book, a.clock())
	if a.flags.json {
		return a.printJSON(d)
	}
	return a.print(d.Text())
}

func (a *app) closeDay(k *keptBook, reason, overnight string) error {
	if open := closing.Open(k.book, a.clock()); len(open) > 0 && strings.TrimSpace(reason) == "" {
		f := usage("The day does not add up: %s.", strings.Join(open, "; "))
		f.do = "See to it, or close it all the same with --reason and why."
		return f
	}
	_, entries, err := k.log(a.clock(), closing.Close(k.book, a.clock(), reason, overnight))
	if err != nil {
		return err
	}
	closed := entries[len(entries)-1].What.(*core.DayClosed)
	if a.flags.json {
		return a.printJSON(map[string]any{"date": k.book.Day().Date, "closed": true, "overnight": closed.Overnight, "reason": closed.Reason, "does_not_add_up": append([]string{}, closed.Open...)})
	}
	return a.print("Closed " + k.book.Day().Date + ". Overnight: " + closed.Overnight + ".\n")
}
