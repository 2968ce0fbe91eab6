// Package worth holds the arithmetic of money: what a visit is charged, what it leaves, what a machine costs in a year and when
// it has paid for itself. Values in, values with their working out; it knows no book. Amounts are cents; a share or a rate is a
// float, and each product of it is rounded once to the cent.
package worth

// Step is a line of working out.
type Step struct{ Says string }

type steps []Step

func (s *steps) say(text string) { *s = append(*s, Step{text}) }
