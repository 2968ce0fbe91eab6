package main

import (
	"bytes"
	"io/fs"
	"os"
	"strings"
	"syscall"
	"testing"
)

func TestAnAnswerThatDoesNotFitOnTheDiskIsNoTroubleOfTheBook(t *testing.T) {
	var out bytes.Buffer
	code := report(&out, &fs.PathError{Op: "write", Path: os.Stdout.Name(), Err: syscall.ENOSPC}, false)
	if code != exitWrite || !strings.HasPrefix(out.String(), "The answer could not be written: no space left on device.\nMake room") {
		t.Fatalf("%d %s", code, out.String())
	}
}

func TestAWarningIsGivenOnce(t *testing.T) {
	var out bytes.Buffer
	a := &app{stderr: &out}
	for range 2 {
		a.warning("The lines could not be written.")
	}
	if out.String() != "The lines could not be written.\n" {
		t.Fatal(out.String())
	}
}
