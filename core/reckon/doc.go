// Package reckon is arithmetic without a book: what a set of inputs, each named by
// a key such as rate_fl_oz_per_acre or tank_gal, determines.
//
// A key is a quantity and a unit. Each quantity is taken in every unit of its
// kind and answered in every unit of its kind, so a reader never has to convert.
// Figures are not rounded. What is answered under a key depends only on the
// inputs, never on their order.
package reckon
