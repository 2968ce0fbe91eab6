// Package yard puts the questions of the yard and the tank lid to batch and calib, with what the book holds, and
// what check says of the answer.
//
// One question, one file. What is not said is taken from the book as it most likely is: the compartment that has least, the mix that
// stands in it, the applicator that this mix is made up for.
package yard
