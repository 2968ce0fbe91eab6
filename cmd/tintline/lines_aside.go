package main

import (
	"fmt"
	"os"
	"time"
)

// keepLines gives the lines that do not follow on the book a second name: they would be given back at the next start, or
// stand in the way of new ones. They keep the first until the book is back, or a restore that is killed could not be
// repeated from them. With older they lose it at once: the next start would undo the way back.
func (r *rebuilt) keepLines(path string, now time.Time, older bool) (name string, err error) {
	// They may be torn: each that can be read counts.
	beyond, _ := readLines(linesPath(path), r.book.Seq())
	if _, _, ok := linesHold(linesPath(path)); len(beyond) == 0 && (!ok || !older) {
		return "", nil
	}
	name = freeName(path, now, ".lines")
	if !older {
		if os.Link(linesPath(path), name) == nil {
			return name, nil
		}
	}
	if err := os.Rename(linesPath(path), name); err != nil {
		return "", &failure{
			what: fmt.Sprintf("The lines beside the book could not be set aside: %v.", bareError(err)),
			do:   fmt.Sprintf("Move %s to another place, then try again.", linesPath(path)), code: exitWrite, err: err,
		}
	}
	return name, nil
}
