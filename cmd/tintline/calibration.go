package main

import (
	"github.com/spf13/cobra"

	"example.com/tintline/core/yard"
)

func (a *app) calibrationCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "calibration",
		Short: "What each applicator lays: as entered, by its last catch test, and how far it has drifted",
		Long: `For each applicator of the rig: the delivery rate that it was entered with, the one that is in force since
the last catch test that was accepted, how far it has drifted, which test is due, and the last tests. A test
is entered on the page "Calibrate" of the screen, or as a line with the fact "calibrated".`,
		Example: `  tintline calibration --book truck.db
  tintline calibration --book truck.db --json`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error { return a.reading(a.calibration) },
	}
}

func (a *app) calibration(k *keptBook) error {
	if a.flags.json {
		return a.printJSON(yard.Calibration(k.book, a.clock()))
	}
	return a.print(yard.CalibrationText(k.book, a.clock()))
}
