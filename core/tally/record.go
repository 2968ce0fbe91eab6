package tally

import (
	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// Record is a row of the application record: what went of one product on one zone in one visit, with all that the rules which were
// read ask for. What is not known is empty; Missing names what a state's rule asks for of it.
type Record struct {
	Date       string
	Lawn, Zone string
	Pieces     []int64 // which of what was laid on that zone on that day, from 1, in order
	Product    string
	Seq        uint64 // the entry of the first piece
	Opened     uint64 // the entry that opened the day

	Arrived, Completed         string // times of day
	Customer, CustomerAddress  string
	Phone                      string
	Site, ZIP, Town, County    string
	Grass, Spot                string
	Area                       measure.Area
	Kind, Pesticide            string
	Registration               string
	Actives, Signal            string
	Restricted, Target         string
	Amount                     measure.Amount
	Trace                      string
	Mix                        string
	Volume                     measure.Volume // of the mix put down; 0 of dry product
	Applicator, Method         string
	Measured                   string
	Load, LoadOrder            core.Maybe[float64]
	LoadLawns, LoadedAt        string
	MixedWhere                 string
	Operator                   string
	Licence, Category          string
	Supervisor                 string
	SupervisorLicence, Helpers string
	Business, BusinessAddress  string
	BusinessPhone              string
	BusinessLicence            string
	WindFrom                   string
	Wind, Temp                 core.Maybe[float64] // mph, degrees Fahrenheit
	OtherWeather               string
	WeatherAt, WeatherBy       string
	Reentry                    string
	Signs                      core.Maybe[float64]
	SignsAt, Notice            string
	Neighbours                 string
	Incident, Disposal         string
	Analysis                   string
	Nitrogen, Phosphate        core.Maybe[float64] // lb per 1,000 sq ft, laid here
	SeasonNitrogen             core.Maybe[float64]
	SoilTest, Reasons          string

	Amended []AmendedField // what amendments changed; not in the walk: it stands beside
}

// RecordWalker is shown each field of a record by its key. One walk serves for printing, for JSON, for rows beside the book and for
// what is filled in.
type RecordWalker interface {
	Text(key string, v *string)
	Number(key string, v *core.Maybe[float64])
	Area(key string, v *measure.Area)
	Volume(key string, v *measure.Volume)
	Amount(key string, v *measure.Amount)
}

// Walk shows each field once, in the order of core.RecordFields; what follows from others (rate, dilution) is left out.
func (r *Record) Walk(w RecordWalker) {
	w.Text("date", &r.Date)
	w.Text("arrived", &r.Arrived)
	w.Text("completed", &r.Completed)
	w.Text("customer", &r.Customer)
	w.Text("customer_address", &r.CustomerAddress)
	w.Text("phone", &r.Phone)
	w.Text("lawn", &r.Lawn)
	w.Text("site_address", &r.Site)
	w.Text("site_zip", &r.ZIP)
	w.Text("site_town", &r.Town)
	w.Text("site_county", &r.County)
	w.Text("zone", &r.Zone)
	w.Text("grass", &r.Grass)
	w.Text("spot", &r.Spot)
	w.Area("area", &r.Area)
	r.walkProduct(w)
	r.walkHow(w)
	r.walkAfter(w)
}

func (r *Record) walkProduct(w RecordWalker) {
	w.Text("product", &r.Product)
	w.Text("kind", &r.Kind)
	w.Text("pesticide", &r.Pesticide)
	w.Text("registration", &r.Registration)
	w.Text("actives", &r.Actives)
	w.Text("signal", &r.Signal)
	w.Text("restricted", &r.Restricted)
	w.Text("target", &r.Target)
	w.Amount("amount", &r.Amount)
	w.Text("trace", &r.Trace)
	w.Text("mix", &r.Mix)
	w.Volume("mix_volume", &r.Volume)
}

func (r *Record) walkHow(w RecordWalker) {
	w.Text("applicator", &r.Applicator)
	w.Text("method", &r.Method)
	w.Text("measured", &r.Measured)
	w.Number("load", &r.Load)
	w.Number("load_order", &r.LoadOrder)
	w.Text("load_lawns", &r.LoadLawns)
	w.Text("loaded_at", &r.LoadedAt)
	w.Text("mixed_where", &r.MixedWhere)
	w.Text("operator", &r.Operator)
	w.Text("licence", &r.Licence)
	w.Text("category", &r.Category)
	w.Text("supervisor", &r.Supervisor)
	w.Text("supervisor_licence", &r.SupervisorLicence)
	w.Text("helpers", &r.Helpers)
	w.Text("business", &r.Business)
	w.Text("business_address", &r.BusinessAddress)
	w.Text("business_phone", &r.BusinessPhone)
	w.Text("business_licence", &r.BusinessLicence)
	w.Text("wind_from", &r.WindFrom)
	w.Number("wind_mph", &r.Wind)
	w.Number("temp_f", &r.Temp)
	w.Text("other_weather", &r.OtherWeather)
	w.Text("weather_at", &r.WeatherAt)
	w.Text("weather_by", &r.WeatherBy)
}

func (r *Record) walkAfter(w RecordWalker) {
	w.Text("reentry", &r.Reentry)
	w.Number("signs", &r.Signs)
	w.Text("signs_at", &r.SignsAt)
	w.Text("notice", &r.Notice)
	w.Text("neighbours", &r.Neighbours)
	w.Text("incident", &r.Incident)
	w.Text("disposal", &r.Disposal)
	w.Text("analysis", &r.Analysis)
	w.Number("nitrogen_lb_per_1000_sqft", &r.Nitrogen)
	w.Number("phosphate_lb_per_1000_sqft", &r.Phosphate)
	w.Number("season_nitrogen_lb_per_1000_sqft", &r.SeasonNitrogen)
	w.Text("soil_test", &r.SoilTest)
	w.Text("reasons", &r.Reasons)
}

// Rate is how much of the product went on each area; unknown where nothing of an area was told.
func (r *Record) Rate() core.Maybe[measure.Rate] {
	if r.Area <= 0 {
		return core.Maybe[measure.Rate]{}
	}
	return core.Known(measure.RateOf(r.Amount, r.Area))
}

// Dilution is the product in a gallon of what was put down; unknown of what went down dry.
func (r *Record) Dilution() core.Maybe[measure.Amount] {
	if r.Volume <= 0 {
		return core.Maybe[measure.Amount]{}
	}
	return core.Known(measure.Amount{N: measure.MulDivRound(r.Amount.N, int64(measure.USGallon), int64(r.Volume)), Kind: r.Amount.Kind})
}
