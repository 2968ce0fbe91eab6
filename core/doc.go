// Package core is the book of one truck: a fold over the journal of what happened.
//
// A fact says what happened. An entry is a numbered and dated fact, chained to the one before it by a
// digest. Facts that are written together or not at all are one action. Prepare turns facts into entries:
// it fills in what follows from the book, and refuses what could not have happened; it only reads. Apply
// changes the book and never refuses an entry that was once written; it fails only on an unknown kind or a
// broken number. Strike takes an entry out of the sum; it stays in the journal.
//
// The package is pure: no clock, file, chance, goroutine or log. The same journal gives the same book, to
// the last unit, on every machine.
package core
