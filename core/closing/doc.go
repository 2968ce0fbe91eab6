// Package closing says what there is to do before a day is closed, and what does not add up. It only reads: each step is an entry of its
// own, so that a close that was broken off goes on where it stood.
package closing
