// Command tintline is the operator's program in the cab: the screen, and the commands that do the same
// without one. This package joins the rooms and words what they say; it works nothing out itself.
package main

import (
	"os"
	"time"

	// Fixes light or dark before the terminal is asked, which would cost five seconds where nobody answers.
	// It must be imported first of all that draws.
	_ "example.com/tintline/tui/tone"
)

func main() {
	a := &app{stdin: os.Stdin, stdout: os.Stdout, stderr: os.Stderr, getenv: os.Getenv, now: time.Now}
	os.Exit(a.run(os.Args[1:]))
}
