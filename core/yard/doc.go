// Package yard puts the questions of the yard and the tank lid to batch and calib, with what the book holds, and
// what check says of the answer.
package yard
