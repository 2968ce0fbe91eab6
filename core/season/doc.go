// Package season says what went down in a calendar year: by lawn and zone with what is left of the limits and what is due next, by
// product with its stock, by grass, by round, by day and by month. Amounts come from the rows of past days (core/past) and so add
// up to the book's accounts; limits come from the functions on which the rules of check rest.
package season
