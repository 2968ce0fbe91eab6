// Package say puts facts into words: one line each, for the text form of the journal and for "the last thing
// logged" on the screen. Figures are rounded as people read them; the exact ones stand in the journal.
package say
