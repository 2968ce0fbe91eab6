// Package find finds lawns, products, mixes, compartments and applicators of a book by a few letters of their names. It
// reads the book and changes nothing.
package find
