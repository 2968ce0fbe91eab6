package main

import (
	"github.com/spf13/cobra"

	"example.com/tintline/core/yard"
)

func (a *app) trueUpCommand() *cobra.Command {
	var from string
	var include []string
	var accept bool
	cmd := &cobra.Command{
		Use:   "trueup --from LETTER [--include gallons] [--accept]",
		Short: "What the last gauge reading says went on the lawns",
		Long: `Shares what the last reading of a compartment's gauge showed over the sprayings of the day that were logged by
area since the reading before, and says what each dose becomes. Nothing is booked, unless it is accepted: then
the gallons and products of these lawns are put right. The tank has the reading already.`,
		Example: `  tintline trueup --from a --book truck.db
  tintline trueup --from a --include gallons --json
  tintline trueup --from a --accept`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error {
			if from == "" {
				f := usage("trueup needs --from and the letter of a compartment.")
				f.do = "Write trueup --from a."
				return f
			}
			if accept {
				return a.changing(func(k *keptBook) error { return a.trueUp(k, from, include, true) })
			}
			return a.reading(func(k *keptBook) error { return a.trueUp(k, from, include, false) })
		},
	}
	f := cmd.Flags()
	f.StringVar(&from, "from", "", "the `LETTER` of the compartment whose gauge was read")
	f.StringArrayVar(&include, "include", nil, "a `WAY` of measuring whose sprayings are put right too: gallons or gauge")
	f.BoolVar(&accept, "accept", false, "book it")
	completes(cmd, "from", a.names(compartmentLetters))
	completes(cmd, "include", cobra.FixedCompletions([]string{"gallons", "gauge"}, cobra.ShellCompDirectiveNoFileComp))
	return cmd
}

func (a *app) trueUp(k *keptBook, from string, include []string, accept bool) error {
	t, err := yard.TrueUpOf(k.book, from, include...)
	if err != nil {
		return err
	}
	accepted := accept && t.Fact != nil
	if accepted {
		if _, _, err := k.log(a.clock(), t.Fact); err != nil {
			return err
		}
	}
	if a.flags.json {
		d := t.Document()
		d["accepted"] = accepted
		return a.printJSON(d)
	}
	return a.print(t.Text())
}
