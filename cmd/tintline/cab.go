package main

import (
	"io"
	"time"
)

// cabOptions are what the cab screen is opened with.
type cabOptions struct {
	path    string
	now     func() time.Time
	colour  string // auto, none, 16, 256 or full
	mouse   bool
	stdin   io.Reader
	stdout  io.Writer
	getenv  func(string) string
	timeSet bool // the clock was given by hand
}

// cab opens the screen on the operator's book.
func (a *app) cab() error {
	path, err := a.bookPath()
	if err != nil {
		return err
	}
	return runCab(a.cabOptions(path, a.cabClock()))
}

func (a *app) cabOptions(path string, now func() time.Time) cabOptions {
	return cabOptions{
		path: path, now: now, colour: a.flags.colour, mouse: !a.flags.noMouse,
		stdin: a.stdin, stdout: a.stdout, getenv: a.getenv, timeSet: a.at.Known,
	}
}

// cabClock is the clock of the screen: the time given by hand stands still.
func (a *app) cabClock() func() time.Time {
	if a.at.Known {
		return a.at.V.Time
	}
	return a.now
}

// runCab runs the screen until the operator leaves it.
func runCab(cabOptions) error {
	return &failure{what: "There is no screen yet.", do: "Use the commands; see tintline --help.", code: exitCannot}
}
