// Package upkeep says what is due on the rig, which papers end when, what the check lists hold, and what antifreeze comes to once it is
// thinned by the water that was left.
package upkeep
