package main

import (
	"github.com/spf13/cobra"

	"example.com/tintline/core/sheet"
)

func (a *app) templateCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "template rig|products|mixes|lawns",
		Short: "Print a CSV file to begin an import with",
		Long: `Prints a CSV file with the header row that tintline import takes and a few invented rows to be written over.
With --json it lists each column with what stands in it and what is allowed.`,
		Example: `  tintline template rig > rig.csv
  tintline template products --json
  tintline template lawns | tintline import lawns - --book trial.db`,
		Args: func(cmd *cobra.Command, args []string) error {
			if err := oneArg("a kind (rig, products, mixes or lawns)")(cmd, args); err != nil {
				return err
			}
			return oneKind(cmd, args[0])
		},
		ValidArgsFunction: completeKind,
		RunE: func(_ *cobra.Command, args []string) error {
			if a.flags.json {
				return a.printJSON(templateObject(args[0]))
			}
			return a.print(sheet.Template(args[0]))
		},
	}
}

// columnJSON is a column as the command line shows it.
type columnJSON struct {
	Name     string `json:"name"`
	Words    string `json:"words"`
	Allowed  string `json:"allowed"`
	Example  string `json:"example"`
	Required bool   `json:"required"`
}

// templateJSON is a template with its columns explained.
type templateJSON struct {
	Kind    string       `json:"kind"`
	Columns []columnJSON `json:"columns"`
	CSV     string       `json:"csv"`
}

func templateObject(kind string) templateJSON {
	out := templateJSON{Kind: kind, CSV: sheet.Template(kind)}
	for _, c := range sheet.Columns(kind) {
		out.Columns = append(out.Columns, columnJSON(c))
	}
	return out
}
