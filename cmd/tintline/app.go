package main

import (
	"encoding/json"
	"io"
	"slices"
	"time"

	"example.com/tintline/core"
)

// app is one run of the program: where it reads and writes, the clock, and the flags for all commands.
type app struct {
	stdin          io.Reader
	stdout, stderr io.Writer
	getenv         func(string) string
	now            func() time.Time

	flags struct {
		book, at, colour string
		json, noMouse    bool
	}
	warned []string // each warning is given once
	// at is the time given by hand; it stands for the clock.
	at core.Maybe[core.Moment]
}

// run does one command and answers with the exit code.
func (a *app) run(args []string) int {
	root := a.root()
	root.SetArgs(args)
	root.SetIn(a.stdin)
	root.SetOut(a.stdout)
	root.SetErr(a.stderr)
	err := root.Execute()
	if err == nil {
		return 0
	}
	// A wrong flag ends the reading of flags, so that --json may not have been seen.
	return report(a.stderr, err, a.flags.json || slices.Contains(args, "--json"))
}

// settle checks the flags for all commands once they have been read.
func (a *app) settle() error {
	switch a.flags.colour {
	case "auto", "none", "16", "256", "full":
	default:
		return usage("--colour %q is not known; use auto, none, 16, 256 or full.", a.flags.colour)
	}
	at := a.flags.at
	if at == "" {
		at = a.getenv("TINTLINE_AT")
	}
	if at == "" {
		return nil
	}
	m, err := core.ParseMoment(at)
	if err != nil {
		return err
	}
	a.at = core.Known(m)
	return nil
}

// clock is the time that an entry gets: the one given by hand, else the clock's.
func (a *app) clock() core.Moment {
	if a.at.Known {
		return a.at.V
	}
	return core.At(a.now())
}

// printJSON writes one object on one line.
func (a *app) printJSON(v any) error {
	enc := json.NewEncoder(a.stdout)
	enc.SetEscapeHTML(false)
	return enc.Encode(v)
}

func (a *app) print(text string) error {
	_, err := io.WriteString(a.stdout, text)
	return err
}
