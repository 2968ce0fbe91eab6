package core

import "example.com/tintline/core/measure"

// DayOpened begins a day. A day that is still open is closed by it, marked unclosed.
type DayOpened struct {
	Date      string
	Operator  string
	Route     []string
	FlowModel int64 // number of the flow model by which the day's liquid moves
}

// Kind of the fact.
func (*DayOpened) Kind() Kind { return kindDayOpened }

// Name of the fact.
func (*DayOpened) Name() string { return "day_opened" }

func (f *DayOpened) fields(w walker) {
	w.text(1, "date", &f.Date)
	w.text(2, "operator", &f.Operator)
	w.texts(3, "route", &f.Route)
	w.integer(4, "flow_model", &f.FlowModel)
}

// DayClosed ends the day. Accounts is the digest of all accounts at that moment.
type DayClosed struct {
	Overnight string
	Reason    string
	Accounts  string
	Open      []string // what did not add up, as it was shown
}

// Kind of the fact.
func (*DayClosed) Kind() Kind { return kindDayClosed }

// Name of the fact.
func (*DayClosed) Name() string { return "day_closed" }

func (f *DayClosed) fields(w walker) {
	w.text(1, "overnight", &f.Overnight)
	w.text(2, "reason", &f.Reason)
	w.text(3, "accounts", &f.Accounts)
	w.later()
	w.texts(4, "open", &f.Open)
}

// The kinds of visit. A visit that does not say is a round.
const (
	Round    = "round"
	CallBack = "call_back" // no charge; it has a cause
	First    = "first"
	Spot     = "spot"
	LookOnly = "look_only" // nothing is put down
)

// VisitBegun: the operator arrived, at the time of the entry or at the one given.
type VisitBegun struct {
	Lawn    string
	Type    string
	Cause   string // of a call-back
	Arrived string // time of day, "09:35"; empty: when it was entered
}

// Kind of the fact.
func (*VisitBegun) Kind() Kind { return kindVisitBegun }

// Name of the fact.
func (*VisitBegun) Name() string { return "visit_begun" }

func (f *VisitBegun) fields(w walker) {
	w.text(1, "lawn", &f.Lawn)
	w.later()
	w.text(2, "kind", &f.Type)
	w.text(3, "cause", &f.Cause)
	w.text(4, "arrived", &f.Arrived)
}

// VisitSkipped: nothing was done there today, and why.
type VisitSkipped struct{ Lawn, Reason string }

// Kind of the fact.
func (*VisitSkipped) Kind() Kind { return kindVisitSkipped }

// Name of the fact.
func (*VisitSkipped) Name() string { return "visit_skipped" }

func (f *VisitSkipped) fields(w walker) {
	w.text(1, "lawn", &f.Lawn)
	w.text(2, "reason", &f.Reason)
}

// VisitDone: the operator leaves. Price is what the visit is charged by the prices of that day, 0 where it is free; unknown where no price was
// entered, and in entries of before prices were kept.
type VisitDone struct {
	Lawn  string
	Price Maybe[measure.Money]
}

// Kind of the fact.
func (*VisitDone) Kind() Kind { return kindVisitDone }

// Name of the fact.
func (*VisitDone) Name() string { return "visit_done" }

func (f *VisitDone) fields(w walker) {
	w.text(1, "lawn", &f.Lawn)
	w.later()
	w.maybeMoney(2, "price", &f.Price)
}

// Weather is an observation. What was not looked at is unknown.
type Weather struct {
	Wind     Maybe[measure.Speed]
	WindFrom string
	Temp     Maybe[float64] // degrees Fahrenheit
	Humidity Maybe[float64] // relative, per cent
	RainFree Maybe[float64] // hours to the next rain expected
	// ForecastHigh is the day's highest temperature as forecast, by whom and at which time of day, "06:10".
	ForecastHigh   Maybe[float64] // degrees Fahrenheit
	ForecastSource string
	ForecastAt     string
	Inversion      string // signs of an inversion were seen: label.Yes, label.No; empty: not looked for
}

// Kind of the fact.
func (*Weather) Kind() Kind { return kindWeather }

// Name of the fact.
func (*Weather) Name() string { return "weather" }

func (f *Weather) fields(w walker) {
	w.maybeSpeed(1, "wind", &f.Wind)
	w.text(2, "wind_from", &f.WindFrom)
	w.maybeNumber(3, "temp_f", &f.Temp)
	w.maybeNumber(4, "rh_pct", &f.Humidity)
	w.maybeNumber(5, "rain_free_h", &f.RainFree)
	w.later()
	w.maybeNumber(6, "forecast_high_f", &f.ForecastHigh)
	w.text(7, "forecast_source", &f.ForecastSource)
	w.text(8, "forecast_at", &f.ForecastAt)
	w.text(9, "inversion", &f.Inversion)
}

// Overridden: the operator goes on in spite of a finding; in force for this visit and line-up. Said keeps
// the finding as it was shown.
type Overridden struct {
	Rule, Lawn, Reason string
	Weight, Said       string
	Product            string // the product that the finding is about; empty: all that the rule says
	Zone               string // the zone for which it is; empty: all of the lawn
	About              string // which of the things that the rule looks at, as the finding names it; empty: all of them
}

// Kind of the fact.
func (*Overridden) Kind() Kind { return kindOverridden }

// Name of the fact.
func (*Overridden) Name() string { return "overridden" }

func (f *Overridden) fields(w walker) {
	w.text(1, "rule", &f.Rule)
	w.text(2, "lawn", &f.Lawn)
	w.text(3, "reason", &f.Reason)
	w.text(4, "weight", &f.Weight)
	w.text(5, "said", &f.Said)
	w.text(6, "product", &f.Product)
	w.later()
	w.text(7, "zone", &f.Zone)
	w.text(8, "about", &f.About)
}

// Opens tells whether it opens a finding of this weight: the answer to an ask is no reason to go on in spite of a stop.
func (f *Overridden) Opens(weight string) bool {
	heavy := map[string]int{"note": 1, "ask": 2}
	own, known := heavy[f.Weight]
	if !known { // a stop, or a line that says nothing of it
		return true
	}
	other, known := heavy[weight]
	return known && other <= own
}

// Setting is anything the operator may set. The value DefaultSetting takes it back.
type Setting struct{ SettingName, Value string }

// Kind of the fact.
func (*Setting) Kind() Kind { return kindSetting }

// Name of the fact.
func (*Setting) Name() string { return "setting" }

func (f *Setting) fields(w walker) {
	w.text(1, "name", &f.SettingName)
	w.scalar(2, "value", &f.Value)
}
