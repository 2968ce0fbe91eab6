// Package measure holds the quantities of the trade as types, and the three
// borders where they meet text: exact readers for stored figures (ParseIn and
// its kin), readers for what a person types (ReadVolume and its kin), and the
// printed forms (Text and its kin).
//
// What is booked is an integer: nanolitres, nanograms, square millimetres,
// micrometres, cents. A figure is rounded once, half to even, when it becomes
// such an integer. What is only reckoned with (rate, flow, pressure,
// concentration) is a float64.
//
// Every function is pure and gives the same bits on every processor: a product
// that is then added to something is written float64(a*b)+c, which the language
// does not allow to be fused. No function panics on any number, and none
// overflows silently: integers stop at the ends of int64.
//
// The units and their exact factors stand in units.csv, each with its source.
package measure
