package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/say"
	"example.com/tintline/core/upkeep"
)

func (a *app) upkeepCommand() *cobra.Command {
	var as string
	cmd := &cobra.Command{
		Use:   "upkeep [--as text|html|csv|json]",
		Short: "What is due on the rig, papers with their last day, check lists",
		Long: `Lists the tasks of upkeep by engine hours, pump hours, gallons, days and season, what is due first; licence, certificates and insurance;
and the check lists before the first stop, for winter and for spring. The machine's own manual goes before the figures to start with.`,
		Example: `  tintline upkeep
  tintline upkeep start
  tintline upkeep done "engine oil" --cost 14.50
  tintline upkeep winter --glycol 25 --poured 4 --left 1.5`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error {
			return a.handOut(as, func(b *core.Book) handout { return upkeep.DocumentOf(b, a.clock()) })
		},
	}
	asFlag(cmd, &as)
	cmd.AddCommand(a.upkeepStartCommand(), a.upkeepDoneCommand(), a.upkeepWinterCommand())
	return cmd
}

func (a *app) upkeepStartCommand() *cobra.Command {
	return &cobra.Command{
		Use: "start", Short: "Take over the tasks to start with", Args: noArgs,
		Example: "  tintline upkeep start --book truck.db",
		RunE: func(*cobra.Command, []string) error {
			return a.changing(func(k *keptBook) error {
				facts := upkeep.StartFacts(k.book)
				if len(facts) == 0 {
					return a.booked(k, nil, "The book has all of them already.\n")
				}
				return a.booked(k, facts, fmt.Sprintf("Took over %d tasks; change or retire them as your manuals say.\n", len(facts)))
			})
		},
	}
}

func (a *app) upkeepDoneCommand() *cobra.Command {
	var cost, note, by string
	cmd := &cobra.Command{
		Use: "done TASK [--cost DOLLARS] [--note WORDS] [--by WHO]", Short: "Log that a task was done", Args: cobra.ExactArgs(1),
		Example: `  tintline upkeep done "engine oil" --cost 14.50 --note "10W-30"`,
		RunE: func(_ *cobra.Command, args []string) error {
			f := &core.Upkept{Task: args[0], Note: note, By: by}
			if cost != "" {
				m, err := measure.ReadMoney(cost, "usd")
				if err != nil {
					return err
				}
				f.Cost = core.Known(m)
			}
			return a.changing(func(k *keptBook) error {
				return a.booked(k, []core.Fact{f}, say.Fact(f)+".\n")
			})
		},
	}
	f := cmd.Flags()
	f.StringVar(&cost, "cost", "", "what it cost, in `DOLLARS`")
	f.StringVar(&note, "note", "", "what was done, in `WORDS`")
	f.StringVar(&by, "by", "", "`WHO` did it")
	return cmd
}

func (a *app) upkeepWinterCommand() *cobra.Command {
	var glycol, poured, left float64
	cmd := &cobra.Command{
		Use: "winter --glycol PCT --poured GAL --left GAL", Short: "What antifreeze comes to, thinned by the water that was left", Args: noArgs,
		Example: "  tintline upkeep winter --glycol 25 --poured 4 --left 1.5",
		RunE: func(*cobra.Command, []string) error {
			pct, err := upkeep.Thinned(glycol, measure.Gallons(poured), measure.Gallons(left))
			if err != nil {
				return err
			}
			f, err := upkeep.Freezes(pct)
			if err != nil {
				return err
			}
			if a.flags.json {
				return a.printJSON(map[string]any{"glycol_pct": pct, "freezes_f": f})
			}
			return a.print(upkeep.GlycolWords(pct, f) + "\n")
		},
	}
	f := cmd.Flags()
	f.Float64Var(&glycol, "glycol", 0, "`PCT` of propylene glycol by volume, as the can says")
	f.Float64Var(&poured, "poured", 0, "`GAL` of it poured in")
	f.Float64Var(&left, "left", 0, "`GAL` of water that were left in pump and hose")
	return cmd
}

// booked writes facts as one action and says so.
func (a *app) booked(k *keptBook, facts []core.Fact, words string) error {
	if len(facts) > 0 {
		if _, _, err := k.log(a.clock(), facts...); err != nil {
			return err
		}
	}
	if a.flags.json {
		return a.printJSON(map[string]any{"entries": len(facts)})
	}
	return a.print(words)
}
