package worth

import (
	"math"
	"testing"

	"example.com/tintline/core/measure"
)

const (
	dollar = measure.Dollar
	// Where the figures come from.
	a329     = "Iowa State University extension, Ag Decision Maker A3-29"
	a324     = "Iowa State University extension, Ag Decision Maker A3-24"
	c5240    = "Iowa State University extension, Ag Decision Maker C5-240 names the method"
	textbook = "textbook exercise on capital budgeting, read in a copy; checked by arithmetic"
	annuity  = "table of capital recovery factors as printed in textbooks of engineering economy, recalled from memory; checked by arithmetic"
	byHand   = "arithmetic"
)

func near(t *testing.T, source string, got, want, tolerance float64) {
	t.Helper()
	if math.Abs(got-want) > tolerance {
		t.Errorf("%v, want %v (%s)", got, want, source)
	}
}

func TestPublishedPaybacks(t *testing.T) {
	near(t, textbook+"; "+c5240, Even(20_000*dollar, 5_000*dollar).V, 4, 0)
	uneven := []measure.Money{13_300 * dollar, 18_300 * dollar, 40_000 * dollar, 22_400 * dollar}
	near(t, textbook+": 2.46 years", Uneven(50_000*dollar, uneven).V, 2.46, 0.005)
	near(t, byHand+": 2 + 18,400/40,000", Uneven(50_000*dollar, uneven).V, 2+18_400.0/40_000, 1e-12)
	if p := Uneven(50_000*dollar, uneven[:2]); p.Known {
		t.Errorf("not recovered in two years, and %v", p)
	}
	if Even(dollar, 0).Known || Even(dollar, -dollar).Known {
		t.Error("no cash comes in, and yet it is paid back")
	}
}

func TestDiscounting(t *testing.T) {
	// 1,000 out, 500 a year at 10 %: 454.55 + 413.22 = 867.77; 132.23 / 375.66 = 0.352 (arithmetic).
	flows := []measure.Money{500 * dollar, 500 * dollar, 500 * dollar}
	near(t, byHand, Discounted(1_000*dollar, flows, 10).V, 2.352, 0.0005)
	near(t, byHand, NetPresent(1_000*dollar, flows, 10).Dollars(), 243.43, 0.005)
	near(t, "without interest it is the plain payback", Discounted(1_000*dollar, flows, 0).V, Uneven(1_000*dollar, flows).V, 0)
}

func TestMachineCosts(t *testing.T) {
	for _, c := range []struct {
		list, pay, salvage, rest float64
		source                   string
	}{
		{110_000, 93_500, 25_300, 68_200, a329},
		{150_000, 130_000, 34_500, 95_500, a329 + ", later printing; the last sum by arithmetic"},
	} {
		salvage := Salvage(measure.Dollars(c.list), 23)
		near(t, c.source, salvage.Dollars(), c.salvage, 0)
		near(t, c.source, (measure.Dollars(c.pay) - salvage).Dollars(), c.rest, 0)
	}
	near(t, a329, RealInterest(8, 3), 5, 0)
	near(t, annuity+": 5 %, 10 years", Recovery(5, 10).V, 0.1295, 0.00005)
	near(t, annuity+": 8 %, 10 years", Recovery(8, 10).V, 0.1490, 0.00005)
	near(t, byHand, Recovery(0, 8).V, 0.125, 0)
	if Recovery(5, 0).Known {
		t.Error("a machine without years has a cost a year")
	}
	m := Machine{Buy: 10_000 * dollar, Salvage: 2_000 * dollar, Years: 10, Interest: 5, TaxInsurance: 100 * dollar, Running: 400 * dollar}
	got, _ := m.Year()
	near(t, byHand+": 8,000 x 0.129505 + 100 + 100 + 400", got.V.Dollars(), 1636.04, 0.005)
}

func TestPrices(t *testing.T) {
	known := func(d float64) measure.Maybe[measure.Money] { return measure.Known(measure.Dollars(d)) }
	area := func(sqft float64) measure.Area { return measure.SquareFeet(sqft) }
	byArea := Tariff{Minimum: known(45), Included: measure.Known(area(5_000)), Per1000: known(5.5)}
	for _, c := range []struct {
		of   Tariff
		sqft float64
		want measure.Maybe[measure.Money]
	}{
		{byArea, 8_000, known(61.5)},
		{byArea, 5_000, known(45)},
		{byArea, 1_200, known(45)},
		{Tariff{Per1000: known(6)}, 10_000, known(60)},
		{Tariff{Minimum: known(40)}, 10_000, known(40)},
		{Tariff{Flat: known(0), Per1000: known(6)}, 10_000, known(0)},
		{Tariff{}, 10_000, measure.Maybe[measure.Money]{}},
	} {
		if got, working := c.of.Price(area(c.sqft)); got != c.want || len(working) == 0 {
			t.Errorf("%+v over %v sq ft is %v, want %v", c.of, c.sqft, got, c.want)
		}
	}
	left, _ := Contribution(60*dollar, 9*dollar, 20, dollar)
	if left != 31*dollar {
		t.Errorf("a visit leaves %s", left.Text())
	}
	cost, _ := Retreat(9*dollar, 15, 20, dollar)
	if cost != 44*dollar {
		t.Errorf("a re-treat costs %s", cost.Text())
	}
}

func TestPace(t *testing.T) {
	near(t, a324+": 5 mph x 12 ft x 0.80", Capacity(5, 12, 0.80), 5.82, 0.005)
	near(t, byHand+": 3 gpm at 2 gal per 1,000 sq ft", GunArea(3, 2).V, 1_500, 0)
	near(t, "trade magazine, green-industry consultant's budget (trade press): 1,000 in 8 h", PerHour(1_000*dollar, 8*3600).V.Dollars(), 125, 0)
	near(t, byHand+": doubling the speed at 22 % trigger", DaySaved(0.22, 2), 0.11, 1e-12)
	near(t, byHand, Density(12, 3).V, 4, 0)
	if PerHour(dollar, 0).Known || Density(3, 0).Known || Share(dollar, 0).Known || Per(dollar, 0).Known {
		t.Error("by nothing, and yet known")
	}
	if got := MaterialTrue(1_000*dollar, 400*dollar, 900*dollar); got != 500*dollar {
		t.Errorf("used up %s", got.Text())
	}
	saved, _ := RideOn(4, 500, dollar, 0, 600*dollar)
	if saved != 1_400*dollar {
		t.Errorf("a ride-on brings %s", saved.Text())
	}
}

func TestTheDayOfPayback(t *testing.T) {
	flows := []Flow{{1, 40 * dollar}, {2, 70 * dollar}, {3, -30 * dollar}}
	if day, paid, left := Paid(100*dollar, flows); day != 2 || !paid || left != 20*dollar {
		t.Errorf("%d %v %s", day, paid, left.Text())
	}
	if _, paid, left := Paid(200*dollar, flows); paid || left != 120*dollar {
		t.Errorf("%v %s", paid, left.Text())
	}
	if d := DaysAt(100*dollar, 365*dollar); d != measure.Known(100) {
		t.Errorf("%v", d)
	}
	if DaysAt(dollar, 0).Known || DaysAt(1_000_000*dollar, dollar).Known {
		t.Error("no pace, and yet a day")
	}
	if y := Assumed(22, 150, 30*dollar); y != 99_000*dollar {
		t.Errorf("a year of %s", y.Text())
	}
}
