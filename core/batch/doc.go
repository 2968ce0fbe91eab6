// Package batch is the arithmetic of what is mixed: loads and top-ups, dilution, what a rest still covers, two
// compartments into one, how a person measures it out, and which mix goes into which compartment on a day.
//
// It takes values and gives values: it knows no book. Each answer says how it was worked out.
package batch

// Step is a line of the working: a sentence of the trade with its figures.
type Step struct{ Says string }
