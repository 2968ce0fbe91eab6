package main

import (
	"errors"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/testdata/demo"
)

func (a *app) demoCommand() *cobra.Command {
	var file string
	cmd := &cobra.Command{
		Use:   "demo",
		Short: "Look round in an invented book",
		Long: `Opens the cab screen on an invented morning. The book is a copy that is removed at the end; yours is
not touched, whatever --book says. With --make the invented book is written to a file, and that is all.`,
		Example: `  tintline demo
  tintline demo --make demo.db
  tintline status --book demo.db`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if !cmd.Flags().Changed("make") {
				return a.demoScreen()
			}
			if file == "" {
				return usage("--make needs the name of a file.")
			}
			b, err := a.makeDemo(file)
			if err != nil {
				return err
			}
			return a.printDigests(b)
		},
	}
	cmd.Flags().StringVar(&file, "make", "", "write the demo's book to `FILE` and end")
	return cmd
}

func (a *app) makeDemo(path string) (*core.Book, error) {
	return a.replayText(path, demoID, "the demo's journal", demo.Journal)
}

// demoLater is how long after the last entry of the demo's journal its clock begins.
const demoLater = 4 * time.Minute

// demoScreen opens the screen on a copy of its own.
func (a *app) demoScreen() error {
	dir, err := os.MkdirTemp("", "tintline-demo-")
	if err != nil {
		return &failure{what: "The demo has no place for its book: " + err.Error() + ".", do: "Make room for temporary files.", code: exitWrite, err: err}
	}
	path := filepath.Join(dir, "demo.db")
	b, err := a.makeDemo(path)
	if err == nil {
		clock := a.runningFrom(b.LastAt().Time().Add(demoLater))
		if a.at.Known {
			clock = a.cabClock()
		}
		o := a.cabOptions(path, clock)
		o.passing = true
		err = runCab(o)
	}
	return errors.Join(err, os.RemoveAll(dir))
}

// runningFrom is a clock that begins at a time and runs on.
func (a *app) runningFrom(start time.Time) func() time.Time {
	begun := a.now()
	return func() time.Time { return start.Add(a.now().Sub(begun)) }
}
