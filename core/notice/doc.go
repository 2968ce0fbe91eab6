// Package notice is what customers and neighbours are told of a treatment, which signs stand, and when a lawn may be entered again.
//
// The rules of states stand in signs.csv and rules.csv, each with its source; they were read in stored copies. Law changes: the
// product label, the law and local rules decide, and nothing here says that a duty is met.
package notice
