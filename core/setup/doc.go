// Package setup asks for what a book is set up with by hand: the rig, a product with the mix that comes of it, a
// lawn, the first day. A Form is pages of fields; each field says what it asks, what may be answered and where its
// starting value comes from, and the answers to all of them make facts. The screen and the plain prompts ask the
// same fields and refuse in the same words.
//
// A starting value is a proposal that stands in the field to be confirmed; its source stands beside it. The package
// changes no book.
package setup
