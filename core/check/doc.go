// Package check says, before the trigger is pulled, what would be wrong with it. Before is the one gate: the
// screen and the command line both call it. Each rule stands in a file of its own name and judges what would
// leave the nozzle parcel by parcel, in the order in which it would leave, each at its own strength and over
// the area that it would cover. The package changes nothing and never says that a spraying is harmless: the
// label and the local rules decide.
package check
