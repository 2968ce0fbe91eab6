package main

import (
	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/core/yard"
)

func (a *app) planCommand() *cobra.Command {
	var lawns, pins []string
	var order string
	var accept bool
	cmd := &cobra.Command{
		Use:   "plan [--order given|best] [--accept] [--lawn NAME ...]",
		Short: "The plan of the day: what to load, in which order, what it takes",
		Long: `Plans what is still to do today, or what a day opened now would have: lawns for which there is no mix first,
then what goes into which compartment, what to put on the truck, and the visits in order with changeovers and
refills. The operator's own order stands beside the best other one that was found. Nothing is booked, unless
the plan is accepted: then it is kept, the visits take its order, and what is to be loaded becomes load lists.`,
		Example: `  tintline plan --book truck.db
  tintline plan --order best --accept
  tintline plan --order best --pin "418 Alder Court" --pin "77 Fir Lane 9:00 11:30"
  tintline plan --lawn "418 Alder Court" --lawn "77 Fir Lane" --json`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if order != core.OrderGiven && order != core.OrderBest {
				return usage("--order %q is neither given nor best.", order)
			}
			if accept {
				return a.changing(func(k *keptBook) error { return a.plan(k, lawns, pins, order, true) })
			}
			return a.reading(func(k *keptBook) error { return a.plan(k, lawns, pins, order, false) })
		},
	}
	f := cmd.Flags()
	f.StringVar(&order, "order", core.OrderGiven, "the `ORDER` that is shown or accepted: given or best")
	f.BoolVar(&accept, "accept", false, "keep the plan, its order and its loads")
	f.StringArrayVar(&lawns, "lawn", nil, "a `NAME` of a lawn, in the order of the visits; else what is to do today")
	f.StringArrayVar(&pins, "pin", nil, "a `NAME` of a lawn that keeps its place, or with one or two times of the day (\"NAME 9:00 11:30\") between which its visit begins")
	completes(cmd, "order", cobra.FixedCompletions([]string{core.OrderGiven, core.OrderBest}, cobra.ShellCompDirectiveNoFileComp))
	completes(cmd, "lawn", a.names(lawnNames))
	return cmd
}

func (a *app) plan(k *keptBook, lawns, pins []string, order string, accept bool) error {
	ask := yard.DayAsk{Lawns: lawns, At: a.clock()}
	for _, said := range pins {
		pin, err := yard.ReadPin(k.book, said)
		if err != nil {
			return err
		}
		ask.Pins = yard.Pin(ask.Pins, pin)
	}
	p, err := yard.PlanDay(k.book, ask)
	if err != nil {
		return err
	}
	if accept {
		if _, _, err := k.log(a.clock(), p.Accept(k.book, order)...); err != nil {
			return err
		}
	}
	if a.flags.json {
		d := p.Document(order)
		d["accepted"] = accept
		return a.printJSON(d)
	}
	return a.print(p.Text(order))
}
