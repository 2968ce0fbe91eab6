package core

// Signed: signs were put up at a lawn, or taken down. The entry holds for how long they are to stay, so that a later table of rules
// changes nothing of it.
type Signed struct {
	Lawn  string
	What  string         // SignsUp or SignsDown
	Count int64          // that were put up; 0 where they were taken down: all of them
	Clock string         // the time of day, "09:35", on the date of the entry; empty: the time of the entry
	Hours Maybe[float64] // they stay at least so long
	Until string         // and are not taken down before this date; empty: no date is set
}

// What a Signed entry says was done.
const (
	SignsUp   = "up"
	SignsDown = "down"
)

// Kind of the fact.
func (*Signed) Kind() Kind { return kindSigned }

// Name of the fact.
func (*Signed) Name() string { return "signed" }

func (f *Signed) fields(w walker) {
	w.text(1, "lawn", &f.Lawn)
	w.text(2, "what", &f.What)
	w.integer(3, "count", &f.Count)
	w.text(4, "clock", &f.Clock)
	w.maybeNumber(5, "hours", &f.Hours)
	w.text(6, "until", &f.Until)
}

// Told is one contact, or one attempt at it, with the customer of a lawn or with a neighbour who is to be told before it is treated.
type Told struct {
	Lawn   string
	Whom   string // ToldCustomer or ToldNeighbour
	Person string // of the neighbour, as entered; of the person met, where it was the customer's household: may be empty
	How    string // one of ContactWays
	Result string // ToldReached or ToldFailed
	Given  []string
	For    string // the date of treatment that it is about
	Clock  string // the time of day, "18:30", on the date of the entry; empty: the time of the entry
	// EarliestStart and LatestFinish are the times of day on For that were named; empty: none were.
	EarliestStart, LatestFinish string
	Note                        string
}

// Whom a contact was with, and what came of it.
const (
	ToldCustomer  = "customer"
	ToldNeighbour = "neighbour"
	ToldReached   = "reached" // spoken to, or the paper or message left
	ToldFailed    = "failed"  // nobody answered
)

// How a contact was made.
const (
	ByPaper    = "paper_at_door"
	ByPhone    = "phone"
	ByText     = "text"
	ByMail     = "mail"
	ByEmail    = "email"
	InPerson   = "in_person"
	ByDoorNote = "note_on_door"
)

// ContactWays lists how a contact can be made.
func ContactWays() []string {
	return []string{ByPaper, ByPhone, ByText, ByMail, ByEmail, InPerson, ByDoorNote}
}

// What a contact gave.
const (
	GaveNotice  = "notice"         // what was put down, after or at the visit
	GaveAdvance = "advance_notice" // what will be, before it
	GaveRecord  = "record_copy"
	GaveLabel   = "label"
)

// Givens lists what a contact can give.
func Givens() []string { return []string{GaveNotice, GaveAdvance, GaveRecord, GaveLabel} }

// Kind of the fact.
func (*Told) Kind() Kind { return kindTold }

// Name of the fact.
func (*Told) Name() string { return "told" }

func (f *Told) fields(w walker) {
	w.text(1, "lawn", &f.Lawn)
	w.text(2, "whom", &f.Whom)
	w.text(3, "name", &f.Person)
	w.text(4, "how", &f.How)
	w.text(5, "result", &f.Result)
	w.texts(6, "given", &f.Given)
	w.text(7, "for", &f.For)
	w.text(8, "clock", &f.Clock)
	w.text(9, "earliest_start", &f.EarliestStart)
	w.text(10, "latest_finish", &f.LatestFinish)
	w.text(11, "note", &f.Note)
}

// Neighbour is somebody who is to be told before a lawn is treated. A later one of the same name at the same lawn takes its place.
type Neighbour struct {
	Lawn          string
	NeighbourName string
	Phone         string
	Address       string
	Feet          Maybe[float64] // from the border of the property to the place treated
	// HoursLeast and HoursMost are how long before the treatment the contact is to be made; unknown: no bound.
	HoursLeast, HoursMost Maybe[float64]
	// Calls is how many calls have to fail before a note on the door counts; 0: it counts without any.
	Calls    int64
	Until    string // the last date on which it holds; empty: no end
	Register string // OwnRequest or StateRegister
	Note     string
	Gone     string // "yes": nobody has to be told any more
}

// Why a neighbour is to be told.
const (
	OwnRequest    = "own_request"
	StateRegister = "state_register"
)

// Kind of the fact.
func (*Neighbour) Kind() Kind { return kindNeighbour }

// Name of the fact.
func (*Neighbour) Name() string { return "neighbour" }

func (f *Neighbour) fields(w walker) {
	w.text(1, "lawn", &f.Lawn)
	w.text(2, "name", &f.NeighbourName)
	w.text(3, "phone", &f.Phone)
	w.text(4, "address", &f.Address)
	w.maybeNumber(5, "feet", &f.Feet)
	w.maybeNumber(6, "hours_least", &f.HoursLeast)
	w.maybeNumber(7, "hours_most", &f.HoursMost)
	w.integer(8, "calls", &f.Calls)
	w.text(9, "until", &f.Until)
	w.text(10, "register", &f.Register)
	w.text(11, "note", &f.Note)
	w.text(12, "gone", &f.Gone)
}
