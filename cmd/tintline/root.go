package main

import (
	"strings"

	"github.com/spf13/cobra"
)

// root is the tree of commands. Without a command it is the cab screen.
func (a *app) root() *cobra.Command {
	root := &cobra.Command{
		Use:   "tintline",
		Short: "Split-tank spraying: what is in the tank, in the hose, and on the lawn",
		Long: `tintline keeps the book of one truck: what was loaded, which way the valves stand, what the
hose holds, what went down on which lawn. Without a command it opens the cab screen.

The book is one file: --book, else TINTLINE_BOOK, else book.db in the user's data folder.

` + exitHelp(),
		Example: `  tintline demo
  tintline --book truck.db
  tintline status --book truck.db --json`,
		Args:          noArgs,
		SilenceErrors: true,
		SilenceUsage:  true,
		PersistentPreRunE: func(cmd *cobra.Command, _ []string) error {
			if cmd.DisableFlagParsing {
				return nil // it reads the flags itself, and settles them then
			}
			if a.flags.book == "" && cmd.Flag("book").Changed { // a variable of the shell that is not set
				return usage("--book needs the name of a file that is not empty.")
			}
			return a.settle()
		},
		RunE: func(*cobra.Command, []string) error { return a.cab() },
	}
	f := root.PersistentFlags()
	f.StringVar(&a.flags.book, "book", "", "the book's `FILE` (or TINTLINE_BOOK)")
	f.StringVar(&a.flags.at, "at", "", "the `TIME` that stands for the clock, RFC 3339 (or TINTLINE_AT)")
	f.BoolVar(&a.flags.json, "json", false, "answer in JSON")
	f.StringVar(&a.flags.colour, "colour", "auto", "`COLOURS` of the screen: auto, none, 16, 256 or full")
	f.BoolVar(&a.flags.noMouse, "no-mouse", false, "leave mouse and touch to the terminal")
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error {
		return wrongFlags(cmd, err)
	})
	completes(root, "colour", cobra.FixedCompletions([]string{"auto", "none", "16", "256", "full"}, cobra.ShellCompDirectiveNoFileComp))
	root.AddCommand(
		a.statusCommand(), a.checkCommand(), a.sheetCommand(), a.grassesCommand(), a.tallyCommand(), a.laidCommand(), a.recordsCommand(), a.closeCommand(), a.amendCommand(), a.journalCommand(), a.replayCommand(),
		a.seasonCommand(),
		a.cardCommand(), a.upkeepCommand(), a.moneyCommand(),
		a.noticesCommand(), a.noticeCommand(),
		a.setupCommand(), a.verifyCommand(), a.enterCommand(), a.backupCommand(), a.bringBackCommand(), a.importCommand(), a.templateCommand(), a.reckonCommand(), a.mixingCommand(), a.planCommand(), a.calibrationCommand(), a.stockCommand(), a.trueUpCommand(), a.demoCommand(), a.versionCommand(),
	)
	return root
}

func wrongFlags(cmd *cobra.Command, err error) error {
	words, _, _ := strings.Cut(err.Error(), ": strconv.") // which function of the program did not like it is no help
	f := usage("%s: %s.", cmd.CommandPath(), strings.TrimSuffix(words, "."))
	f.do = "See " + cmd.CommandPath() + " --help for what it takes."
	return f
}

func noArgs(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	if cmd.HasParent() {
		return usage("%s takes no %q.", cmd.CommandPath(), args[0])
	}
	f := usage("There is no command %q.", args[0])
	f.do = "See tintline --help for the commands."
	return f
}

// oneArg wants exactly one word after the command.
func oneArg(what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		switch len(args) {
		case 1:
			return nil
		case 0:
			return usage("%s needs %s.", cmd.CommandPath(), what)
		}
		return usage("%s takes one argument, %s, not %d.", cmd.CommandPath(), what, len(args))
	}
}
