// Package tally adds up what went down: by compartment, mix, product, lawn and zone, by applicator and hour, and in all. A day's
// figures stand in the book until the next day is opened; Close takes them, Span takes those of each day
// of a span while the journal is folded, and Tally holds them added up.
//
// What holds, in integers and as printed: what is left in a compartment is start + loaded + pushed in -
// drawn - other + unexplained; the columns to lawns, the mixes and the lawns each add up to all gallons;
// the products of the zones add up to the products. Liquid on a lawn that came from no compartment (the
// first water of a rig, a tank that was loaded directly) stands in a row "other".
//
// An applicator's own tank and its hopper have rows of their own: what is left is start + loaded + filled - drawn -
// other + unexplained, and start + loaded - spread - other. What they laid stands in the rows above too. Dry product
// has no gallons; the area of a zone that got liquid and dry product in one visit is counted once.
//
// The application record (Record) has a row for each product on each zone in each visit. What rules ask of it stands in
// record_profiles.csv and record_law.csv, as it was read; Missing names what a row does not hold, and nothing here says
// that a record is lawful.
package tally
