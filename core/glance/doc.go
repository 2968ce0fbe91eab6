// Package glance arranges what an operator wants to see at a glance, and what a script may want: levels,
// line-up, hose, the visit now, today's sums, all accounts, and the digests. It works nothing out that the
// book, the check or the tally does not; it names and orders.
package glance
