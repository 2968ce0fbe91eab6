package main

import (
	"github.com/spf13/cobra"

	"example.com/tintline/core/glance"
)

func (a *app) statusCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "status",
		Short: "Levels, line-up, hose, today, accounts, digests",
		Example: `  tintline status --book truck.db
  tintline status --book truck.db --json`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error { return a.reading(a.status) },
	}
}

func (a *app) status(k *keptBook) error {
	demo := k.file().Meta().BookID == demoID
	if a.flags.json {
		d := glance.Of(k.book, a.clock(), a.at)
		d.Book, d.Demo = k.path, demo
		return a.printJSON(d)
	}
	name := k.path
	if demo {
		name += "   DEMO BOOK"
	}
	return a.print(name + "\n" + glance.Text(k.book, a.clock(), a.at))
}
