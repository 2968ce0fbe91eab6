package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/sheet"
	"example.com/tintline/store"
)

// The exit codes, as the contract of the command line has them. 0 is done.
const (
	exitCannot  = 1
	exitUsage   = 2
	exitAsk     = 3
	exitStop    = 4
	exitBusy    = 5
	exitDamaged = 6
	exitNewer   = 7
	exitWrite   = 8
)

// failure is an error for the person at the terminal, with its exit code. One without words has said all
// on standard output already.
type failure struct {
	what, do string
	code     int
	err      error
}

func (f *failure) Error() string { return f.what }
func (f *failure) Unwrap() error { return f.err }

// usage is what is wrong with the words of a command.
func usage(format string, args ...any) *failure {
	return &failure{what: fmt.Sprintf(format, args...), do: "Correct the command; nothing was changed.", code: exitUsage}
}

// advice is what errors of core/reckon have.
type advice interface{ Do() string }

// explain finds words and exit code for any error.
func explain(err error) *failure {
	var f *failure
	var shown told
	var trouble *store.Trouble
	var problem *core.Problem
	var with advice
	var text *measure.TextError
	var cells sheet.Troubles
	switch {
	case errors.As(err, &shown): // before the failure that it may hold
		return shown.failure
	case errors.As(err, &f):
		return f
	case errors.As(err, &cells):
		what, do := troublesText(cells)
		return &failure{what, do, exitUsage, err}
	case errors.As(err, &trouble):
		return &failure{trouble.What, trouble.Do, storeCode(err), err}
	case errors.As(err, &problem) && errors.Is(err, core.ErrNewer):
		return &failure{problem.What, problem.Do, exitNewer, err}
	case errors.As(err, &problem):
		return &failure{problem.What, problem.Do, exitUsage, err}
	case errors.As(err, &with):
		return &failure{err.Error(), with.Do(), exitUsage, err}
	case errors.As(err, &text):
		return &failure{text.Sentence, "Correct it; nothing was changed.", exitUsage, err}
	}
	if f := unprinted(err); f != nil {
		return f
	}
	return &failure{"It could not be done: " + err.Error() + ".", "Try again; if it stays, keep the book as it is and ask for help.", exitCannot, err}
}

// unprinted is an answer that did not reach the file that standard output was sent to.
func unprinted(err error) *failure {
	var p *fs.PathError
	if !errors.As(err, &p) || p.Path != os.Stdout.Name() {
		return nil
	}
	return &failure{
		"The answer could not be written: " + p.Err.Error() + ".",
		"Make room where it goes, or send it to another place.", exitWrite, err,
	}
}

// storeCode is the exit code of trouble with the file.
func storeCode(err error) int {
	for _, c := range []struct {
		kind error
		code int
	}{
		{store.ErrBusy, exitBusy},
		{store.ErrNewer, exitNewer},
		{store.ErrDamaged, exitDamaged},
		{store.ErrShort, exitDamaged},
		{store.ErrEmpty, exitDamaged},
		{store.ErrForeign, exitDamaged},
		{store.ErrReadOnly, exitWrite},
		{store.ErrFull, exitWrite},
		{store.ErrSync, exitWrite},
		{store.ErrUnsure, exitWrite},
		{store.ErrLatched, exitWrite},
		{store.ErrGone, exitWrite},
		{store.ErrIO, exitWrite},
		{store.ErrInput, exitUsage},
	} {
		if errors.Is(err, c.kind) {
			return c.code
		}
	}
	return exitCannot
}

// report says what went wrong and answers with the exit code.
func report(w io.Writer, err error, asJSON bool) int {
	f := explain(err)
	if f.what == "" {
		return f.code
	}
	if asJSON {
		enc := json.NewEncoder(w)
		enc.SetEscapeHTML(false)
		_ = enc.Encode(problemObject(f)) // nothing is left to be done if this fails too
		return f.code
	}
	_, _ = fmt.Fprintf(w, "%s\n%s\n", f.what, f.do)
	return f.code
}

// problemObject is a problem in JSON; one of a file of cells says where they are.
func problemObject(f *failure) any {
	var cells sheet.Troubles
	if errors.As(f, &cells) {
		return troublesObject(cells)
	}
	return struct {
		Problem string `json:"problem"`
		Do      string `json:"do"`
	}{f.what, f.do}
}
