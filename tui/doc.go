// Package tui is the cab screen. The rules of the room:
//
//  1. One tea.Model. Screens and parts are plain functions from figures to lines; none sees a message.
//  2. The screen asks core and core/check and draws the answer. No trade rule and no arithmetic on quantities
//     stands here, only layout and the choice of words.
//  3. Keys are declared once, in keys.go, each with a label, a time when it works and a place to tap.
//  4. One action at a time goes to the journal (write.go). The book changes after the disk has it, never before.
//  5. What the check says is asked in Update, when book, minute or choice change; View only paints.
//  6. Layout is pure arithmetic (layout.go). Drawing and tapping use the same rectangles.
//  7. Nothing depends on colour. Signs come from the closed list in glyphs.go, each one cell, with an ASCII twin.
//  8. Torn, glued, pasted and repeated keys are dealt with in input.go and nowhere else.
//  9. Every command is wrapped so that a panic ends the program in order; there are no goroutines of our own.
//  10. No file, no clock, no chance: Journal, Now and NewID come in by hand. Never the word that says all is well.
package tui
