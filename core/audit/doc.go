// Package audit reads a journal through as an auditor would: it adds the book up entry by entry and looks after each of
// them whether it follows from the one before, whether all that was in one place is still in some place, and whether what
// was written at the close of a day is what the accounts come to.
//
// It believes the entries and nothing that was made of them: what a file keeps beside its entries (keys, rows, a snapshot)
// is held against the book that comes out here.
package audit
