package check

import (
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// laying is so much of a product on the acre of the lawn, on a date. What is dry and "spread" comes from the spreader, the
// rest from the backpack.
type laying struct {
	date, product string
	rate          float64
	unit          string
}

// acreBook is a book with one lawn of one acre, on which things are laid day by day.
type acreBook struct {
	*core.Book
	t testing.TB
}

func newAcre(t testing.TB, grass string, products []core.Product) acreBook {
	t.Helper()
	b := acreBook{core.NewBook(1), t}
	more(t, b.Book, `
{"fact":"rig","name":"truck","compartments":[{"letter":"a","capacity_gal":300},{"letter":"b","capacity_gal":300}],"cell_gal":0.2,"hoses":[{"name":"reel","volume_gal":1.7}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1},{"name":"pack","kind":"backpack","hose":"reel","delivery_gal_per_1000_sqft":1,"tank_gal":60},{"name":"spreader","kind":"spreader"}]}`)
	for i := range products {
		products[i].Label.Grasses = []string{label.AllTurf}
		log(t, b.Book, &products[i])
	}
	log(t, b.Book, &core.Lawn{LawnName: "Acre", KnownSince: "2020-01-01", Zones: []core.Zone{{Name: "all", Grass: grass, Area: measure.SquareFeet(43_560)}}})
	return b
}

func rateIn(t testing.TB, f float64, unit string) measure.Rate {
	t.Helper()
	r, err := measure.RateUnit(f, unit)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func (b acreBook) open(date string) {
	if b.Day().Date != date || !b.Day().Open {
		log(b.t, b.Book, &core.DayOpened{Date: date, Operator: "R. Example"})
		log(b.t, b.Book, &core.Weather{Wind: core.Known(measure.MPH(5)), WindFrom: "W", Temp: core.Known(70.0)})
	}
}

// ready opens the day and puts what is to be sprayed into the backpack; the intent is to lay all of it.
func (b acreBook) ready(l laying) Intent {
	b.open(l.date)
	zone := b.Lawn("Acre").Zones[0]
	amount := rateIn(b.t, l.rate, strings.TrimPrefix(l.unit, "spread ")).Over(zone.Area)
	if strings.HasPrefix(l.unit, "spread ") {
		return Intent{Lawn: "Acre", With: "spreader", Product: l.product, Amount: core.Known(measure.Mass(amount.N)), At: clock}
	}
	log(b.t, b.Book, &core.Loaded{Into: "pack", Volume: measure.Gallons(43.56), Parts: []core.LoadPart{{Product: l.product, Amount: amount}}})
	return Intent{Lawn: "Acre", With: "pack", At: clock}
}

func (b acreBook) lay(l laying) {
	b.t.Helper()
	in := b.ready(l)
	if in.Product != "" {
		log(b.t, b.Book, &core.Spread{Lawn: "Acre", Applicator: "spreader", Product: in.Product, By: core.ByWeight, Amount: measure.DryAmount(in.Amount.V)})
		return
	}
	log(b.t, b.Book, &core.Sprayed{Lawn: "Acre", Applicator: "pack", Volume: core.Known(measure.Gallons(43.56)), Area: core.Known(b.Lawn("Acre").Area())})
}

func active(name string, perGallon, percent float64) label.Active {
	return label.Active{Name: name, PoundsPerGallon: perGallon, PercentByWeight: percent}
}

func most(a label.Active, t testing.TB, pounds float64) label.Active {
	a.MostYear = core.Known(rateIn(t, pounds, "lb_per_acre"))
	return a
}

// none says that the label has no limits but those named.
func none(but ...string) []string {
	var out []string
	for _, l := range []string{label.LimitRateHigh, label.LimitMost, label.LimitMostYear, label.LimitMostTimes, label.LimitDaysBetween} {
		if !hasText(but, l) {
			out = append(out, l)
		}
	}
	return out
}

const (
	ozAcre = "oz_per_acre"
	flAcre = "fl_oz_per_acre"
	ozThou = "oz_per_1000_sqft"
	flThou = "fl_oz_per_1000_sqft"
	lbThou = "lb_per_1000_sqft"
	spread = "spread "
)

func trinexapac(t testing.TB) core.Product {
	return core.Product{ProductName: "R", Label: label.Entry{
		Actives: []label.Active{active("trinexapac-ethyl", 1, 0)}, None: none(label.LimitRateHigh),
		Rates: []label.GrassRates{
			{Grasses: []string{"bermudagrass_hybrid"}, Low: core.Known(rateIn(t, 0.125, flThou)), High: core.Known(rateIn(t, 0.25, flThou))},
			{Grasses: []string{"tall_fescue", "kentucky_bluegrass"}, Low: core.Known(rateIn(t, 0.5, flThou)), High: core.Known(rateIn(t, 1, flThou))},
		},
	}}
}
