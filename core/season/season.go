package season

import (
	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// Season is what went down in a calendar year up to a date.
type Season struct {
	Year string // "2026"
	To   string // the last date of it that is asked about
	// Kept tells whether the book keeps that year piece by piece (this one and the last): else limits are not told.
	Kept bool
	// Over: it is a year before that of the date asked about, so nothing of it is left or due.
	Over     bool
	Lawns    []Lawn // what is due first
	Products []Product
	Grasses  []Covered
	Rounds   []Covered // in their order
	Days     []Day
	Months   []Month // that had something with nitrogen
	Drifts   []Drift
	All      Sums
}

// Sums are what was laid: sprayed, spread, and the area treated. A zone that got liquid and dry product in one visit counts once.
type Sums struct {
	Volume measure.Volume
	Mass   measure.Mass
	Area   measure.Area
}

func (s *Sums) add(o Sums) {
	s.Volume += o.Volume
	s.Mass += o.Mass
	s.Area += o.Area
}

// Lawn is one lawn in the year.
type Lawn struct {
	Lawn, Customer, Address string
	Zones                   []Zone
	Sums
	Rounds int // of the year so far
	Due    Due
	// Gone: the book has no lawn of this name any more.
	Gone bool
}

// Zone is a zone of a lawn in the year.
type Zone struct {
	Zone, Grass string
	Area        measure.Area // as entered; 0: the lawn has no such zone any more
	Gone        bool         // the lawn as it is entered now has no zone of this name
	Sums
	Used      []Used // in the order of the book
	Nitrogen  Nutrient
	Phosphate Nutrient
	Actives   []core.SeasonLine // with a limit, or without one
	// Most are the rows of the reference against which the year's nitrogen is held.
	Most []label.NitrogenRow
	// UnknownBefore is a date in the year before which the book does not know what was laid; empty: it knows all.
	UnknownBefore string
}

// Used is a product on a zone, or on all of them.
type Used struct {
	Product string
	Key     int32
	Amount  measure.Amount
	Area    measure.Area // that was treated with it, each time counted
	Days    int          // on which it was laid
	// Line is how it stands against its label; More is what label entries still allow in the year, MoreBy whose. Unknown: the
	// book does not keep that year piece by piece, or no entry has a limit.
	Line   core.Maybe[core.SeasonLine]
	More   core.Maybe[measure.Rate]
	MoreBy string
	last   string
	over   bool // the year is
}

// Trace tells whether it came in no more than traces, as far as the book keeps it.
func (u *Used) Trace() bool {
	return u.Line.Known && u.Line.V.Times == 0 && len(u.Line.V.Unknown) == 0
}

// Nutrient is nitrogen or P2O5. Mass is what went down of it, of what is known; Rate is on the part that got most. Unknown names
// products of which the content is not entered.
type Nutrient struct {
	Mass    measure.Mass
	Rate    core.Maybe[measure.Rate]
	Unknown []string
}

// Due says when a lawn is due.
type Due struct {
	Last string // day of the last application; empty: none in this year and the last
	Date string // a round after it; empty: nothing is known to reckon from
	Days int    // of a round
	Own  bool   // the lawn has its own
	Owed string // the day since which a rest is owed: it is due now; empty: none is
	// Again is when the label entry of the last round's product that waits longest lets it go down again, and Waits its
	// name; empty: nothing to wait for. Never: no more of it fits into the label's year.
	Again, Waits string
	Never        []string
	Once         []string // mixes for once a year that no visit has brought yet
}

// By is the date by which lawns are ordered: that of the rest, of the round, or none.
func (d *Due) By() string {
	switch {
	case d.Owed != "":
		return d.Owed
	case d.Date == "":
		return "9999"
	}
	return d.Date
}

// Product is a product in the year: what went down, and its stock as it is now.
type Product struct {
	Used
	Zones  int // on which it was laid
	Stock  core.Stock
	Order  string // what to buy: "2 jugs of 2.5 gal"; empty: nothing
	Bought core.Maybe[measure.Amount]
}

// Covered is a grass or a round, and what was laid there.
type Covered struct {
	Name  string
	Lawns int
	From  string // first and last day
	Upto  string
	Sums
}

// Day is a day on which something was laid.
type Day struct {
	Date string
	Sums
}

// Month is the nitrogen that went down in a month: on what area, and of which products it is not known how much.
type Month struct {
	Month   string // "2026-05"
	Mass    measure.Mass
	Area    measure.Area
	Unknown []string
}

// Rate is the nitrogen on the area that got any.
func (m *Month) Rate() measure.Rate { return measure.RateOf(measure.DryAmount(m.Mass), m.Area) }

// Drift is a catch test that was accepted, held against the rate meant; or what the gauges teach of an applicator.
type Drift struct {
	Applicator string
	Date       string // of the test; empty: by gauges
	Share      float64
	Band       float64 // plus or minus, of gauges
	Readings   int     // of gauges
	Rate       measure.Rate
}
