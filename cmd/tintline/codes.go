package main

import (
	"fmt"
	"strings"
)

// exitCodes say in words what each exit code means, for the help.
var exitCodes = []struct {
	code  int
	means string
}{
	{0, "done; for check: nothing above a note"},
	{exitCannot, "could not be done, with the reason"},
	{exitUsage, "wrong flags, or input refused: nothing was changed"},
	{exitAsk, "check: something is asked, and nothing stops"},
	{exitStop, "check: something stops"},
	{exitBusy, "the book is in use by another copy"},
	{exitDamaged, "the book is damaged, cut short, empty, or not a book"},
	{exitNewer, "the book was written by a newer version"},
	{exitWrite, "not written: disk full, read-only, not confirmed, or the file is gone"},
}

// exitHelp is the table of exit codes as the help prints it.
func exitHelp() string {
	var b strings.Builder
	b.WriteString("Exit codes:\n")
	for _, c := range exitCodes {
		fmt.Fprintf(&b, "  %d  %s\n", c.code, c.means)
	}
	return strings.TrimSuffix(b.String(), "\n")
}
