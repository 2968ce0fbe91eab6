//go:build !linux

package main

import (
	"fmt"
	"io"
)

// more would be what is measured: it reads what only Linux tells of a process.
func more(command string, _ []string, _ io.Writer) error {
	return fmt.Errorf("there is no command %q here; bench ratios runs on Linux.\n%s", command, usage)
}
