// Package printed holds what is handed out on paper or to another program: a document of lines, pairs and tables, written as
// text, as one HTML file with print styles, or a table of it as CSV. Who has something to hand out makes a Document; nothing
// here knows a word of the trade.
package printed
