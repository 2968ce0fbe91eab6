package batch

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

func gallons(f float64) measure.Volume { return measure.Volume(f * float64(measure.USGallon)) }

// plainDay has two lawns of two mixes, and a truck of two compartments: all of it can be reckoned by hand.
func plainDay() Day {
	return Day{
		Visits: []Visit{
			{Name: "Oak", Zones: []Need{{Zone: "front", Area: measure.SquareFeet(10_000), Options: []Option{{Liquid: 0, Volume: gallons(15), Minutes: 14, Cost: 900}}}}},
			{Name: "Elm", Zones: []Need{{Zone: "all", Area: measure.SquareFeet(20_000), Options: []Option{{Liquid: 1, Volume: gallons(30), Minutes: 23, Cost: 2000}}}}},
		},
		Liquids:     []DayLiquid{{Name: "cool", Products: []Target{{"Cool", label.Entry{}, 0.01}}}, {Name: "warm", Products: []Target{{"Warm", label.Entry{}, 0.02}}}},
		Applicators: []DayApplicator{{"gun"}},
		Rig:         DayRig{Compartments: []DayCompartment{{Letter: 'a', Capacity: gallons(100), Heel: gallons(1), Holds: Nothing}, {Letter: 'b', Capacity: gallons(50), Heel: gallons(1), Holds: Nothing}}, Line: DayLine{Hose: gallons(3), Holds: Other}},
		Times:       DayTimes{Changeover: 2, Refill: 25, Rinse: 6, Between: 10, ToRefill: 15, MPH: 25},
		Reserve:     DayReserve{Volume: gallons(2)},
		Start:       420,
	}
}

// 14 + 23 min on site, three ways of 10 min, two changeovers of 2 min: 71 min. Each liquid is loaded with what is laid, a hose of 3 gal, 2 gal of
// reserve and a heel of 1 gal: 21 and 36 gal. The end leaves 3 gal of the second in the hose.
func TestPlanByHand(t *testing.T) {
	p, err := PlanDay(plainDay())
	if err != nil {
		t.Fatal(err)
	}
	if p.Minutes.Total() != 71 || !p.Exact || p.Bound != 71 || len(p.Changeovers) != 2 || len(p.Loads) != 1 || p.Cost != 2900 {
		t.Errorf("%+v", p)
	}
	var levels []float64
	for _, c := range p.Loads[0].Compartments {
		levels = append(levels, c.Level.Gallons())
	}
	if slices.Sort(levels); !slices.Equal(levels, []float64{21, 36}) {
		t.Errorf("levels %v", levels)
	}
	if p.Demand[1].Line != gallons(3) || p.Demand[0].Left != gallons(6) || p.Demand[1].Left != gallons(3) {
		t.Errorf("%+v", p.Demand)
	}
	if len(p.Carry) != 2 || math.Abs(float64(p.Carry[0].Amount.N)-0.01*float64(gallons(21))) > 1 {
		t.Errorf("carry %+v", p.Carry)
	}
	if p.Miles.Known || len(p.Steps) < 4 {
		t.Errorf("%v %v", p.Miles, p.Steps)
	}
}

// A zone without a mix, and one that no load can take, are named with the reason.
func TestPlanNamesWhatIsNotLaid(t *testing.T) {
	d := plainDay()
	d.Visits[0].Zones[0].Options[0].Volume = gallons(146)
	d.Visits[1].Zones = append(d.Visits[1].Zones, Need{Zone: "back"}, Need{Zone: "side", Why: "The only mix would injure it."})
	p, err := PlanDay(d)
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"Oak, front needs 151.0 gal with line and reserve, more than the 148.0 gal of a load.", "There is no mix for Elm, back.", "The only mix would injure it."}
	for i, u := range p.Unserved {
		if i >= len(want) || u.Says != want[i] {
			t.Errorf("%d: %+v", i, u)
		}
	}
	if len(p.Unserved) != 3 || len(p.Order) != 1 || len(p.Laid) != 1 {
		t.Errorf("%+v", p)
	}
}

// The ride-on is taken where its minutes with setting up are fewer, until a changeover eats that.
func TestPlanTakesGunOrRideOn(t *testing.T) {
	for _, c := range []struct {
		rideOn float64
		want   int
	}{{20, 1}, {22, 0}, {26, 0}} { // a changeover of 2 min more: Elm has been laid with the same mix through the gun
		d := plainDay()
		d.Visits[0].Zones[0].Options[0].Liquid = 1
		d.Liquids = append(d.Liquids, DayLiquid{Name: "warm, ride-on"})
		d.Visits[1].Zones[0].Options = append(d.Visits[1].Zones[0].Options, Option{Liquid: 2, Volume: gallons(6), Minutes: c.rideOn, Cost: 2000})
		p, err := PlanDay(d)
		if err != nil {
			t.Fatal(err)
		}
		if p.Laid[1].Option != c.want {
			t.Errorf("%v min: option %d", c.rideOn, p.Laid[1].Option)
		}
	}
}

// What is changed over loses strength: with a cell and a bypass, old liquid comes into the new one's compartment.
func TestChangeoverCostsStrength(t *testing.T) {
	d := plainDay()
	d.Rig.Line = DayLine{Hose: gallons(3), Cell: gallons(0.4), Return: gallons(0.3), Bypass: 0.5, Clean: 0.9, Holds: 0}
	p, err := PlanDay(d)
	if err != nil {
		t.Fatal(err)
	}
	// 0.3 gal of return line and half of the cell, 0.5 gal in all, of the first in 36 gal of the second with its line drawn
	for _, c := range p.Loads[0].Compartments {
		if c.Strength >= 1 || c.Strength < 0.9 {
			t.Errorf("%+v", c)
		}
	}
}

// What a compartment is called, and where it stands, changes no figure.
func TestPlanIsTheSameForOtherLetters(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDay(t, dayRoom{5, 2, 4, 3, 2})
		p, err := PlanDay(d)
		if err != nil {
			t.Fatal(err)
		}
		other := d
		other.Rig.Compartments = rapid.Permutation(d.Rig.Compartments).Draw(t, "compartments")
		q, err := PlanDay(other)
		if err != nil {
			t.Fatal(err)
		}
		if p.Minutes != q.Minutes || p.Cost != q.Cost || len(p.Changeovers) != len(q.Changeovers) || len(p.Loads) != len(q.Loads) || p.Exact != q.Exact {
			t.Fatalf("%+v\n%+v", p, q)
		}
	})
}

// Bad figures are refused in a sentence that says what to do.
func TestBadDays(t *testing.T) {
	for _, c := range []struct {
		name, says string
		spoil      func(*Day)
	}{
		{"no compartments", "The rig has 0 compartments.", func(d *Day) { d.Rig.Compartments = nil }},
		{"heel", "Compartment a holds 100.0 gal with a heel of 100.0 gal.", func(d *Day) { d.Rig.Compartments[0].Heel = gallons(100) }},
		{"left", "Compartment b is said to hold 60.0 gal of at most 50.0 gal.", func(d *Day) { d.Rig.Compartments[1].Left = gallons(60) }},
		{"holds", "What compartment a holds is none of the 2 liquids of the day.", func(d *Day) { d.Rig.Compartments[0].Holds = 2 }},
		{"line", "What the line holds is none of the 2 liquids of the day.", func(d *Day) { d.Rig.Line.Holds = Nothing }},
		{"hose", "A volume of the line, or the reserve, is -1.00 gal.", func(d *Day) { d.Rig.Line.Hose = gallons(-1) }},
		{"bypass", "The bypass is +Inf % of the flow", func(d *Day) { d.Rig.Line.Bypass = math.Inf(1) }},
		{"changeover", "A changeover is given as ? min.", func(d *Day) { d.Times.Changeover = math.NaN() }},
		{"refill", "A refill is given as -1.00 min.", func(d *Day) { d.Times.Refill = -1 }},
		{"speed", "The speed is 0.00 mph.", func(d *Day) { d.Times.MPH = 0 }},
		{"reserve", "The reserve is 200 %.", func(d *Day) { d.Reserve.Share = 2 }},
		{"volume", "Oak, front would get -1.00 gal.", func(d *Day) { d.Visits[0].Zones[0].Options[0].Volume = gallons(-1) }},
		{"minutes", "Oak, front would take ? min.", func(d *Day) { d.Visits[0].Zones[0].Options[0].Minutes = math.NaN() }},
		{"cost", "Oak, front would cost -$1.00.", func(d *Day) { d.Visits[0].Zones[0].Options[0].Cost = -100 }},
		{"liquid", "Oak, front has an option with neither", func(d *Day) { d.Visits[0].Zones[0].Options[0].Liquid = 7 }},
		{"window", "The window of Elm begins at minute 600 of the day and ends at minute 500.", func(d *Day) {
			d.Visits[1].From, d.Visits[1].To = measure.Known(600.0), measure.Known(500.0)
		}},
		{"pins", "Oak and Elm are both pinned to place 1.", func(d *Day) {
			d.Visits[0].Pinned, d.Visits[1].Pinned = measure.Known(0), measure.Known(0)
		}},
		{"pin", "Elm is pinned to place 3 of 2.", func(d *Day) { d.Visits[1].Pinned = measure.Known(2) }},
		{"pins against windows", "Elm is pinned before Oak, but its window begins at minute 700 of the day, and that of Oak ends at minute 600.", func(d *Day) {
			d.Visits[0].Pinned, d.Visits[0].To = measure.Known(1), measure.Known(600.0)
			d.Visits[1].Pinned, d.Visits[1].From = measure.Known(0), measure.Known(700.0)
		}},
		{"half a place", "Elm has only one of latitude and longitude.", func(d *Day) { d.Visits[1].Place.Lat = measure.Known(38.0) }},
		{"no place", "The base lies at 95.0 and 0.00 degrees.", func(d *Day) { d.Base = Place{measure.Known(95.0), measure.Known(0.0)} }},
		{"too much", "3 zones with up to", func(d *Day) {
			d.Visits[0].Zones = append(d.Visits[0].Zones, d.Visits[0].Zones[0])
			d.Times = DayTimes{Changeover: 1440, Refill: 1440, Rinse: 1440, Between: 1440, MPH: 25}
		}},
	} {
		d := plainDay()
		c.spoil(&d)
		_, err := ChooseDay(d)
		var trouble *measure.Trouble
		if !errors.As(err, &trouble) || !strings.HasPrefix(trouble.Error(), c.says) || trouble.Do() == "" {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}
