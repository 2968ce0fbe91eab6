package glance

import "example.com/tintline/core/notice"

// Document is the glance as JSON: keys end in their unit, figures are not rounded, what is unknown is null
// and no list is.
type Document struct {
	Book         string          `json:"book"`
	Demo         bool            `json:"demo"`
	At           string          `json:"at"`
	Day          *string         `json:"day"`
	Visit        *Visit          `json:"visit"`
	LineUp       LineUp          `json:"line_up"`
	Compartments []Compartment   `json:"compartments"`
	Cell         Cell            `json:"cell"`
	Hose         []Parcel        `json:"hose"`
	Applicators  []Applicator    `json:"applicators"`
	Loads        []Load          `json:"loads"`
	Changeover   *Changeover     `json:"changeover"`
	Weather      *Weather        `json:"weather"`
	Hold         *Hold           `json:"hold"`
	Owed         []Owed          `json:"owed"`
	Notices      notice.Document `json:"notices"` // owed, signs that stand, re-entry clocks, neighbours, contacts
	DriedOn      []DriedOn       `json:"dried_on"`
	Taught       []Taught        `json:"taught"`
	Calibration  []string        `json:"calibration_due"` // catch tests that are due, and rates that have drifted
	Upkeep       []string        `json:"upkeep_due"`      // tasks that are due, and papers that have ended or end soon
	Today        Today           `json:"today"`
	StillToEnter []Missing       `json:"still_to_enter"`
	OffRecord    []string        `json:"off_record"` // products without the registration number that their record needs
	Accounts     []Account       `json:"accounts"`
	Entries      uint64          `json:"entries"`
	State        string          `json:"state"`
	Journal      string          `json:"journal"`
}

// Visit is the visit now, or the next one; lawn is null when all are ended.
type Visit struct {
	Number int     `json:"number"`
	Of     int     `json:"of"`
	Lawn   *string `json:"lawn"`
	Kind   *string `json:"kind"`  // null until it is begun
	Cause  *string `json:"cause"` // of a call-back
}

// Hold is what the day waits for, and since when.
type Hold struct {
	Cause string `json:"cause"`
	Since string `json:"since"`
}

// Owed is what was carried over on a lawn and is still to do.
type Owed struct {
	Lawn   string     `json:"lawn"`
	Zones  []OwedZone `json:"zones"`
	Reason string     `json:"reason"`
	Since  string     `json:"since"`
	Until  *string    `json:"until"`
}

// DriedOn is a product of which little injures and which went through the strainers, until those are opened and each
// compartment that it was loaded into has had three rinses: Rinses counts them by letter.
type DriedOn struct {
	Product string         `json:"product"`
	Since   string         `json:"since"`
	Opened  bool           `json:"strainers_opened"`
	Rinses  map[string]int `json:"rinses"`
}

// OwedZone is how much of a zone is still to do.
type OwedZone struct {
	Zone string  `json:"zone"`
	Area float64 `json:"area_sqft"`
}

// Missing is what is not entered yet on which a verdict of today would rest: of a product, or of a zone.
type Missing struct {
	Product *string `json:"product"`
	Lawn    *string `json:"lawn"`
	Zone    *string `json:"zone"`
	Field   string  `json:"field"`
	Why     string  `json:"why"`
}

// LineUp is how the valves stand, and what is wrong with that.
type LineUp struct {
	Name    *string           `json:"name"`
	Supply  []string          `json:"supply"`
	Return  *string           `json:"return"`
	Valves  map[string]string `json:"valves"` // null where the line-up has no name
	Finding *string           `json:"finding"`
}

// Load is what is to be loaded into a compartment or an applicator's tank, and which of it is in.
type Load struct {
	Into   string     `json:"into"`
	Volume float64    `json:"volume_gal"`
	Mix    *string    `json:"mix"`
	For    *string    `json:"for"`
	Items  []LoadItem `json:"items"`
}

// LoadItem is water or a product, in gal for water, else in fl_oz or oz.
type LoadItem struct {
	Item   string  `json:"item"`
	Amount float64 `json:"amount"`
	Unit   string  `json:"unit"`
	Ticked bool    `json:"ticked"`
}

// Compartment is what is left in one part of the tank, and the area that it covers with an applicator.
type Compartment struct {
	Letter   string    `json:"letter"`
	Name     string    `json:"name"`
	Capacity float64   `json:"capacity_gal"`
	Heel     float64   `json:"heel_gal"`
	Left     float64   `json:"left_gal"`
	Band     float64   `json:"plus_minus_gal"`
	Expected *float64  `json:"expected_gal"` // by what gauges have shown of the applicators; null where that says no more than what is left
	Covers   *float64  `json:"covers_sqft"`
	With     *string   `json:"with"`
	Agitated *float64  `json:"agitated_min"` // since what is in it was last moved about; null where that is not known
	Products []Product `json:"products"`
}

// Taught is what gauges have shown of an applicator: by how much what leaves it is more than area times rate. It is used from
// so many readings on as the setting asks for.
type Taught struct {
	Applicator string  `json:"applicator"`
	Ratio      float64 `json:"ratio"`
	SD         float64 `json:"ratio_sd"`
	Readings   int     `json:"readings"`
	Odd        int     `json:"readings_odd"`
	Used       bool    `json:"used"`
}

// Product is what a place holds of a product, in fl_oz or oz; per_gal is its strength in that unit.
type Product struct {
	Product string   `json:"product"`
	Amount  float64  `json:"amount"`
	Unit    string   `json:"unit"`
	PerGal  *float64 `json:"per_gal"`
}

// Cell is the mixing cell. Origins name compartments by letter; "water" is the rig's first water.
type Cell struct {
	Volume   float64            `json:"volume_gal"`
	Origins  map[string]float64 `json:"origins"`
	Products []Product          `json:"products"`
}

// Parcel is a stretch of the hose; one that was drained holds air.
type Parcel struct {
	Volume   float64            `json:"gal"`
	Air      float64            `json:"air_gal"`
	Origins  map[string]float64 `json:"origins"`
	Products []Product          `json:"products"`
}

// Applicator is an applicator; without a tank of its own, or a hopper, its figures are null. Products are those of the
// tank, then those of the hopper, which have no strength.
type Applicator struct {
	Name     string    `json:"name"`
	Tank     *float64  `json:"tank_gal"`
	Left     *float64  `json:"left_gal"`
	Hopper   *float64  `json:"hopper_lb"`
	LeftDry  *float64  `json:"left_lb"`
	Products []Product `json:"products"`
}

// Changeover is what it takes until the nozzle is clean enough for the visit.
type Changeover struct {
	To        string   `json:"to"`
	Arrives   float64  `json:"arrives_gal"`
	Half      float64  `json:"half_gal"`
	Clean     float64  `json:"clean_gal"`
	ArrivesS  *float64 `json:"arrives_s"`
	HalfS     *float64 `json:"half_s"`
	CleanS    *float64 `json:"clean_s"`
	TintFrom  float64  `json:"tint_from_gal"`
	TintBy    float64  `json:"tint_by_gal"`
	TintFromS *float64 `json:"tint_from_s"`
	TintByS   *float64 `json:"tint_by_s"`
	// Tint is which way the colour changes: tint, clear or alike; left out where the rig does not say. TintGone is where the
	// last of the colour goes. Air leaves the hose first: the seconds count it.
	Tint      string    `json:"tint,omitempty"`
	TintGone  float64   `json:"tint_gone_gal,omitempty"`
	Air       float64   `json:"air_gal,omitempty"`
	DecidedBy string    `json:"decided_by"`
	Why       string    `json:"why"`
	Share     float64   `json:"share"`
	PushBack  *PushBack `json:"push_back"`
	// Band is give or take for clean; Advised what is to be pushed while hose and cell were not timed.
	Band    float64 `json:"band_gal"`
	Advised float64 `json:"advised_gal"`
	Learned bool    `json:"learned"`
	// The smear with its margin, the cell as the gun sees it; null where they are not reckoned.
	Sigma       *float64 `json:"sigma_gal"`
	SigmaFactor *float64 `json:"sigma_factor"`
	Margins     string   `json:"margins"`
	Cell        float64  `json:"cell_gal"`
	Bypass      bool     `json:"bypass"`
	Reynolds    *float64 `json:"reynolds"`
	FlowLow     bool     `json:"flow_low"`
	MinFlow     *float64 `json:"min_flow_gpm"`
	// Left is what of the old liquid has still to come when one stops at clean, LeftShare the same of hose and cell;
	// NewLost the new liquid that has gone by then.
	Left      float64   `json:"left_gal"`
	LeftShare float64   `json:"left_share"`
	NewLost   float64   `json:"new_lost_gal"`
	Legs      []Leg     `json:"legs"`
	Ways      []Way     `json:"ways"`
	Overflow  *Overflow `json:"overflow"`
	// Order is what the return brings along; null where no bypass is reckoned, or it was turned already.
	Order *ReturnOrder `json:"return_order"`
}

// ReturnOrder is what the bypass brings into the new compartment if the return is turned with the supply, and what the old one
// gets of the new liquid if it is held until that is through.
type ReturnOrder struct {
	Together float64 `json:"together_gal"`
	HeldS    float64 `json:"held_s"`
	Held     float64 `json:"held_gal"`
	Hold     bool    `json:"hold"`
}

// Leg is a part of a push-back, into a compartment or to a place outside.
type Leg struct {
	Into *string  `json:"into"`
	To   *string  `json:"to"`
	Gal  float64  `json:"gal"`
	S    *float64 `json:"s"`
}

// Way is a way that the mixed tail could go, with what it would cost.
type Way struct {
	Way     string   `json:"way"`
	Chosen  bool     `json:"chosen"`
	Legs    []Leg    `json:"legs"`
	RunS    *float64 `json:"run_s"`
	NewOld  float64  `json:"new_in_old_gal"`
	OldNew  float64  `json:"old_in_new_gal"`
	Wasted  float64  `json:"wasted_gal"`
	Weight  string   `json:"weight"`
	Share   *float64 `json:"share_of_label"`
	Own     *float64 `json:"share_of_own"` // of a product of the compartment's own mix: its strength against what it was
	Load    float64  `json:"share_of_limit"`
	Product *string  `json:"product"`
	In      *string  `json:"in"`
	On      *string  `json:"on"`
	Cannot  *string  `json:"cannot"`
}

// Overflow is a compartment that the push-back would make run over.
type Overflow struct {
	Letter string  `json:"letter"`
	Gets   float64 `json:"gets_gal"`
	Room   float64 `json:"room_gal"`
	Over   float64 `json:"over_gal"`
}

// PushBack is what to spray into which compartment; into is null where none can take it.
type PushBack struct {
	Into *string  `json:"into"`
	Gal  float64  `json:"gal"`
	S    *float64 `json:"s"`
}

// Weather is the last observation and its age.
type Weather struct {
	Wind     *float64 `json:"wind_mph"`
	WindFrom *string  `json:"wind_from"`
	Temp     *float64 `json:"temp_f"`
	Humidity *float64 `json:"rh_pct"`
	RainFree *float64 `json:"rain_free_h"`
	// The high of the day as forecast, by whom, at which time of day, and how long ago that is.
	ForecastHigh   *float64 `json:"forecast_high_f"`
	ForecastSource *string  `json:"forecast_source"`
	ForecastAt     *string  `json:"forecast_at"`
	ForecastAge    *float64 `json:"forecast_age_h"`
	Inversion      *string  `json:"inversion"` // signs of one: yes, no; null where nobody looked
	DeltaT         *float64 `json:"delta_t_c"` // wet-bulb depression
	Age            float64  `json:"age_min"`
}

// Today is the bottom line of the open day, or of the last one.
type Today struct {
	Volume float64  `json:"gal"`
	Mass   float64  `json:"lb"` // spread
	Area   float64  `json:"area_sqft"`
	Lawns  int      `json:"lawns"`
	Hours  *float64 `json:"hours"`
}

// Account is what is booked at a place, in exact units: each column adds up to 0.
type Account struct {
	Place    string       `json:"place"`
	Volume   int64        `json:"volume_nl"`
	Products []ExactShare `json:"products"`
}

// ExactShare is an amount of a product: nl of a liquid one, ng of a dry one.
type ExactShare struct {
	Product string `json:"product"`
	NL      *int64 `json:"nl,omitempty"`
	NG      *int64 `json:"ng,omitempty"`
}
