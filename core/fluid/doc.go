// Package fluid keeps the liquid of the rig: what is in each compartment, in the mixing cell, in the
// return line, in the hose from pump end to nozzle and in each applicator's tank, and what has gone to
// the places outside (lawns, waste, water, packages, the unexplained). Dry product that is spread by weight goes from
// its package through a hopper, or straight, to the lawns; it is in no liquid.
//
// Amounts are integers: volume in nanolitres, a liquid product in nanolitres, a dry one in nanograms.
// Every move takes from one place what it gives to another, so the sum over all places stays zero to the
// last unit, whatever the order and however small the steps.
//
// From the manifold to the nozzle the liquid passes a well-mixed cell and then moves as a plug through
// the hose (Levenspiel, Chemical Reaction Engineering, 3rd ed. 1999, ch. 11 and 14: mixed flow and plug flow
// in series). What leaves the nozzle is an ordered list of parcels, each of one composition.
//
// Products and origins are small numbers here; the book knows their names. Nothing in this room reads a
// clock, a file or a table.
package fluid
