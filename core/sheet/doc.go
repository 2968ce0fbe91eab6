// Package sheet reads the rig, products, mixes and lawns from what a person wrote: a CSV file with a header
// row, or the fields of a form. Both go through the same columns, so that a cell means the same in either and
// is refused in the same words.
//
// A file is read whole or not at all: every bad cell is named by file, line and column, with what is wrong,
// what is allowed and the nearest known name. What is read has been admitted by the book it was read for.
// The package changes no book.
package sheet
