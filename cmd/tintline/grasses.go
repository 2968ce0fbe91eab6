package main

import (
	"strings"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/core/grid"
	"example.com/tintline/core/label"
)

func (a *app) grassesCommand() *cobra.Command {
	var grass, active string
	cmd := &cobra.Command{
		Use:   "grasses [--grass NAME] [--active NAME]",
		Short: "What may go on which grass, and who says so",
		Long: `A table: grasses down, the products of the current loads across, a letter and a word in each cell.
Nothing loaded: all products; no product: what the reference says of actives. --grass and --active narrow
it down and print the rows of the reference with their sources, to be argued with; --grass also prints all
on which each cell stands. The label and local rules decide; what was recalled and not read is said to be
so.`,
		Example: `  tintline grasses --book truck.db
  tintline grasses --grass zoysiagrass --active dicamba
  tintline grasses --json`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error {
			asked, err := readAsked(grass, active)
			if err != nil {
				return err
			}
			return a.reading(func(k *keptBook) error { return a.grasses(k.book, asked) })
		},
	}
	f := cmd.Flags()
	f.StringVar(&grass, "grass", "", "the `NAME` of a grass")
	f.StringVar(&active, "active", "", "the `NAME` of an active")
	completes(cmd, "grass", cobra.FixedCompletions(grassNames(), cobra.ShellCompDirectiveNoFileComp))
	completes(cmd, "active", cobra.FixedCompletions(activeNames(), cobra.ShellCompDirectiveNoFileComp))
	return cmd
}

func grassNames() []string {
	var out []string
	for _, g := range label.Grasses() {
		out = append(out, g.Name)
	}
	return out
}

func activeNames() []string {
	var out []string
	for _, a := range label.Actives() {
		out = append(out, a.Name)
	}
	return out
}

// readAsked finds the names that were typed; an unknown one lists the nearest.
func readAsked(grass, active string) (grid.Asked, error) {
	var out grid.Asked
	if grass != "" {
		name, ok := label.ReadGrass(grass)
		if !ok || name == label.AllTurf {
			return out, unknownName("grass", grass, label.NearestGrasses(grass))
		}
		out.Grass = name
	}
	if active != "" {
		name, ok := label.ReadActive(active)
		if !ok {
			return out, unknownName("active", active, label.NearestActives(active))
		}
		out.Active = name
	}
	return out, nil
}

func unknownName(what, typed string, nearest []string) error {
	f := usage("%q is not a known %s.", typed, what)
	f.do = "Nearest known names: " + strings.Join(nearest, ", ") + "."
	return f
}

func (a *app) grasses(b *core.Book, asked grid.Asked) error {
	g := grid.OfBook(b, a.clock())
	g.Narrow(asked)
	var rows []grid.Ground
	if asked != (grid.Asked{}) {
		rows = grid.Reference(asked)
	}
	if a.flags.json {
		return a.printJSON(g.Document(rows))
	}
	text := g.Text()
	if asked.Grass != "" {
		text += g.Why()
	}
	if asked != (grid.Asked{}) {
		text += grid.ReferenceText(rows, asked)
	}
	return a.print(text)
}
