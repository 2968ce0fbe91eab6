// Package calib is the arithmetic of what an applicator really puts down: catch tests, spreaders, nozzles, speed,
// and what the readings of a gauge say of it.
//
// It takes values and gives values: it knows no book.
package calib
