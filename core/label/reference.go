package label

import "example.com/tintline/core/measure"

// Rating is what a row of the reference says of an active on a grass, the heavier the greater.
type Rating uint8

// The ratings. RatingUnknown is counted as not tolerant where a warning depends on it, never as tolerant: see
// Verdict.Counted.
const (
	RatingUnknown Rating = iota
	Tolerant
	Moderate // at a reduced rate, or with passing injury
	OnlyDormant
	NotTolerant
)

var ratingNames = [...]string{"unknown", "tolerant", "moderate", "dormant only", "not tolerant"}

func (r Rating) String() string { return ratingNames[r] }

// What a row of the reference rests on. One that was recalled may raise a warning and never clears one.
const (
	BasisTrial     = "trial"
	BasisLabel     = "label"
	BasisExtension = "extension"
	BasisRecalled  = "recalled"
	BasisNone      = "none"
)

// The stages of turf of which a row speaks.
const (
	StageEstablished  = "established"
	StageEstablishing = "establishing" // sod, plugs, sprigs
	StageSeedling     = "seedling"
	StageDormant      = "dormant"
	StageGreenUp      = "green_up"
)

// The forms in which an active goes down, where a row holds for one of them only.
const (
	FormSpray   = "spray"
	FormGranule = "granule"
)

// Conditions are those under which a row holds, as far as they can be evaluated.
type Conditions struct {
	Stage string // one of the stages
	// MostRate is the highest rate of the active, by weight, of which the row speaks: the highest that was tried, or, with
	// MostIsLimit, the one that the source sets as the most.
	MostRate    measure.Maybe[measure.Rate]
	MostIsLimit bool
	// LeastRate is the rate below which the source saw no or little injury, of a row that says that there is some.
	LeastRate measure.Maybe[measure.Rate]
	TempMax   measure.Maybe[float64] // degrees Fahrenheit
	TempMin   measure.Maybe[float64]
	Months    []int    // 1 to 12; empty: any
	Cultivar  string   // those that are named, with commas between; empty: the species
	NotIn     []string // states of growth in which the row does not hold
	Form      string   // FormSpray or FormGranule; empty: any
	Needs     []string // what else must hold, in words that the operator can check
}

// Row is a row of the reference: what one source says of one active on one grass.
type Row struct {
	Active string
	Grass  string
	Rating Rating
	Basis  string
	When   Conditions
	Words  string // what else the source says
	Source string // id
	// Contradicted is the source that was read and says otherwise, of a recalled row; such a row is shown and decides nothing.
	Contradicted string
}

// Recalled tells whether nobody read the row anywhere.
func (r *Row) Recalled() bool { return r.Basis == BasisRecalled }

// read tells whether a source that was read stands behind the row.
func (r *Row) read() bool { return r.Basis != BasisRecalled && r.Basis != BasisNone }

// Circumstances are what is known of a zone, of the spraying and of the day.
type Circumstances struct {
	Growth   string // one of Growths, or empty
	Cultivar string
	Rate     measure.Maybe[measure.Rate] // of the active, by weight
	TempF    measure.Maybe[float64]      // the higher of the reading and the forecast high
	Month    int                         // 1 to 12; 0: not known
	Form     string                      // FormSpray or FormGranule; empty: not known
}

// Verdict is what the reference says of an active on a grass.
type Verdict struct {
	Rating   Rating
	Rows     []Row // those that apply, the one that decides first
	Disagree bool  // sources that were read differ
	Recalled bool  // no row that was read says so: it rests on recalled rows alone
}
