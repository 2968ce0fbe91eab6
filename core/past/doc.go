// Package past keeps what a day came to, as rows beside its entries, and answers from them what was laid before the
// book's own day: sums between dates, by year and by month, and what went on one lawn or of one product.
//
// A day has a row for its sums (tally.Tally without the lawns), one for all that was laid, piece by piece, one for what it brought and took, and one for its
// application record, as the day left it, without amendments. Apply gives them when an entry closes the day or opens the next one; they are kept
// in the commit of that entry. What happens between the close and the next opening still counts with the day, so the opening
// gives them again. A day whose end is struck is the book's own again, and is ended again later under the same keys: the
// book's own day, open or last, always comes from the book and never from its rows.
//
// Each row names the entry that opened its day and the one that opened the day before, so that a row that is missing
// shows (ErrFit); then the journal is folded instead (Folded). A row says nothing that a fold does not say.
package past
