package main

import (
	"fmt"
	"runtime"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// programVersion is written into new books and told by the version command.
const programVersion = "0.1.0"

func (a *app) versionCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "version",
		Short: "Versions of the program, the file's format and the flow model",
		Example: `  tintline version
  tintline version --json`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error {
			if a.flags.json {
				return a.printJSON(struct {
					Version   string `json:"version"`
					Go        string `json:"go"`
					Format    uint32 `json:"format"`
					FlowModel int    `json:"flow_model"`
				}{programVersion, runtime.Version(), store.Format, core.FlowModel})
			}
			return a.print(fmt.Sprintf("tintline %s, %s, format %d, flow model %d\n",
				programVersion, runtime.Version(), store.Format, core.FlowModel))
		},
	}
}
