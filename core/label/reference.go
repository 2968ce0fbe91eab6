package label

import "example.com/tintline/core/measure"

// Rating is what a row of the reference says of an active on a grass, the heavier the greater.
type Rating uint8

// The ratings. RatingUnknown is counted as not tolerant where a warning depends on it, never as tolerant.
const (
	RatingUnknown Rating = iota
	Tolerant
	Moderate // at a reduced rate, or with passing injury
	OnlyDormant
	NotTolerant
)

func (r Rating) String() string {
	return [...]string{"unknown", "tolerant", "moderate", "dormant only", "not tolerant"}[r]
}

// What a row of the reference rests on. One that was recalled may raise a warning and never clears one.
const (
	BasisTrial     = "trial"
	BasisLabel     = "label"
	BasisExtension = "extension"
	BasisRecalled  = "recalled"
	BasisNone      = "none"
)

// Source is where a row comes from.
type Source struct {
	ID          string
	Institution string // or authors
	Title       string
	URL         string
	Weak        bool // a column, a garden site
}

// ActiveInfo is an active as the reference knows it.
type ActiveInfo struct {
	Name  string // as in the reference, "metsulfuron-methyl"
	Class string // herbicide_post, insecticide, ...
	Group string // open code of the mode of action: "HRAC 2", "IRAC 4A", "FRAC 11"; "none"
	// Trace is the class by which residue of it is judged, 'A' to 'F' (low_dose thresholds, see the settings trace_*).
	Trace  byte
	Source string // of the group
}

// Conditions are those under which a row holds, as far as they can be evaluated.
type Conditions struct {
	Stage    string                      // established, establishing, seedling, dormant, green_up
	MostRate measure.Maybe[measure.Rate] // of the active, by weight: up to this rate
	TempMax  measure.Maybe[float64]      // degrees Fahrenheit
	TempMin  measure.Maybe[float64]
	Months   []int    // 1 to 12; empty: any
	Cultivar string   // one that is named; empty: the species
	Needs    []string // what else must hold, in words that the operator can check
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
}

// Circumstances are what is known of a zone, of the spraying and of the day.
type Circumstances struct {
	Growth   string // one of Growths, or empty
	Cultivar string
	Rate     measure.Maybe[measure.Rate] // of the active, by weight
	TempF    measure.Maybe[float64]      // the higher of the reading and the forecast high
	Month    int                         // 1 to 12; 0: not known
}

// Verdict is what the reference says of an active on a grass.
type Verdict struct {
	Rating   Rating
	Rows     []Row // those that apply, the one that decides first
	Disagree bool  // sources that were read differ
	Recalled bool  // it rests on recalled rows alone
}

// Tolerance is the verdict of one active on one grass: of the rows that apply, the strictest decides; a recalled row may
// make it stricter and never milder.
func Tolerance(active, grass string, c Circumstances) Verdict { return Verdict{} }

// LeaveKind is what label entry and reference together say of a product on a grass, in this order of authority.
type LeaveKind uint8

// The kinds of leave, from the heaviest down.
const (
	Unlisted   LeaveKind = iota // the label entry does not list the grass: a stop, whatever the reference says
	WrongState                  // listed, but the reference knows it on dormant turf only, and this is not said to be dormant
	Injures                     // listed, and the reference calls the grass not tolerant: both grounds are shown
	Reduced                     // listed, and the reference calls it moderate
	Listed                      // listed, and the reference has nothing against it, or nothing
)

// Leave is what label entry and reference say of a product on a grass.
type Leave struct {
	Kind    LeaveKind
	Active  string  // the active that decided; empty where it is the label entry alone
	Verdict Verdict // of that active
}

// May says whether a product may go on a grass: the label entry first, then the reference. The rates of its actives follow
// from the rate of the product, where that is known.
func May(e Entry, grass string, c Circumstances, rate measure.Maybe[measure.Rate]) Leave {
	if !e.Lists(grass) {
		return Leave{Kind: Unlisted}
	}
	return Leave{Kind: Listed}
}

// Actives lists the actives that the reference knows, in order of their names.
func Actives() []ActiveInfo { return nil }

// FindActive finds an active by its name or another spelling of it, in any case.
func FindActive(name string) (ActiveInfo, bool) { return ActiveInfo{}, false }

// NearestActives lists up to three known names, the most alike first.
func NearestActives(name string) []string { return nil }

// FindSource finds a source by its id.
func FindSource(id string) (Source, bool) { return Source{}, false }

// RateRow is a row of the reference on rates: what one source gives for an active in one formulation.
type RateRow struct {
	Active      string
	Formulation string
	RateLow     measure.Maybe[float64]
	RateHigh    measure.Maybe[float64]
	RateUnit    string
	PoundsLow   measure.Maybe[float64] // of active per acre, as the columns that follow
	PoundsHigh  measure.Maybe[float64]
	MostOnce    measure.Maybe[float64]
	MostYear    measure.Maybe[float64]
	DaysBetween measure.Maybe[float64]
	TempMax     measure.Maybe[float64]
	RainFree    measure.Maybe[float64]
	ReseedWeeks measure.Maybe[float64]
	Signal      string
	Source      string
}

// RatesOf lists what the reference has on the rates of an active.
func RatesOf(active string) []RateRow { return nil }

// NitrogenRow is a row of the reference on nitrogen.
type NitrogenRow struct {
	Record string // annual_n, per_app, per_app_p2o5, calendar
	Grass  string // or all, warm-season, ...
	Region string
	Low    measure.Maybe[float64]
	High   measure.Maybe[float64]
	Unit   string
	Note   string
	Source string
}

// NitrogenOf lists the rows of a record that hold for a grass in a region; a region that is empty: all regions.
func NitrogenOf(record, grass, region string) []NitrogenRow { return nil }

// NitrogenRegions lists the regions of the table.
func NitrogenRegions() []string { return nil }
