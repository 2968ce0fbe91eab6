package batch

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// dayRoom is how large the days are that are drawn.
type dayRoom struct{ visits, zones, compartments, liquids, options int }

// drawDay draws a day with round minutes, so that plans of equal minutes occur.
func drawDay(t *rapid.T, most dayRoom) Day {
	gal := func(name string, low, high int) measure.Volume {
		return measure.Volume(rapid.IntRange(low, high).Draw(t, name)) * measure.USGallon / 2
	}
	minute := func(name string, low, high int) float64 { return float64(rapid.IntRange(low, high).Draw(t, name)) }
	d := Day{Start: minute("start", 0, 480), Applicators: []DayApplicator{{"gun"}, {"ride-on"}}, Times: DayTimes{
		Changeover: minute("changeover", 0, 5), Refill: minute("refill", 0, 30), Rinse: minute("rinse", 0, 6), Between: minute("between", 0, 10), ToRefill: minute("to refill", 0, 10), MPH: 20,
	}}
	k := rapid.IntRange(1, most.liquids).Draw(t, "liquids")
	for l := range k {
		d.Liquids = append(d.Liquids, DayLiquid{Name: fmt.Sprint("mix ", l), Products: []Target{{fmt.Sprint("product ", l/2), label.Entry{}, 0.01}}})
	}
	for c := range rapid.IntRange(1, most.compartments).Draw(t, "compartments") {
		in := DayCompartment{Letter: byte('a' + c), Capacity: gal("capacity", 12, 60), Heel: gal("heel", 0, 3), Holds: rapid.IntRange(Other, k-1).Draw(t, "holds")}
		if in.Holds != Nothing {
			in.Left = min(gal("left", 0, 40), in.Capacity)
		}
		d.Rig.Compartments = append(d.Rig.Compartments, in)
	}
	d.Rig.Line = DayLine{Hose: gal("hose", 0, 3), Cell: gal("cell", 0, 1), Return: gal("return", 0, 1), Bypass: rapid.SampledFrom([]float64{0, 0.25, 0.5}).Draw(t, "bypass"), Clean: rapid.SampledFrom([]float64{0, 0.5, 0.9, 0.99}).Draw(t, "clean"), Holds: rapid.IntRange(0, k).Draw(t, "line")}
	if d.Rig.Line.Holds == k {
		d.Rig.Line.Holds = Other
	}
	d.Reserve = DayReserve{Share: rapid.SampledFrom([]float64{0, 0.1}).Draw(t, "reserve"), Volume: gal("reserve volume", 0, 2)}
	d.Base = drawPlace(t)
	for v := range rapid.IntRange(1, most.visits).Draw(t, "visits") {
		in := Visit{Name: fmt.Sprint("lawn ", v), Place: drawPlace(t), Loads: rapid.IntRange(0, 5).Draw(t, "loads") == 0}
		for z := range rapid.IntRange(1, most.zones).Draw(t, "zones") {
			n := Need{Zone: fmt.Sprint("zone ", z)}
			for range rapid.IntRange(0, most.options).Draw(t, "options") {
				o := Option{Liquid: rapid.IntRange(ByHand, k-1).Draw(t, "liquid"), Applicator: rapid.IntRange(0, 1).Draw(t, "applicator"), Volume: gal("volume", 1, 40), Minutes: minute("minutes", 0, 30), Cost: measure.Money(rapid.IntRange(0, 3).Draw(t, "cost"))}
				n.Options = append(n.Options, o)
			}
			in.Zones = append(in.Zones, n)
		}
		d.Visits = append(d.Visits, in)
	}
	return d
}

// drawPlace draws one of a few places in a town, or none.
func drawPlace(t *rapid.T) Place {
	at := rapid.IntRange(-2, 15).Draw(t, "place")
	if at < 0 {
		return Place{}
	}
	return Place{measure.Known(38 + 0.02*float64(at%4)), measure.Known(-85 + 0.03*float64(at/4))}
}

// What is loaded and was there is laid, left, in the line, thrown out or displaced; no compartment holds more than it can, and none gives more
// than it has.
func mustBalance(t *rapid.T, d Day, p DayPlan) {
	for l, x := range p.Demand {
		if in, out := x.Had+x.Loaded+x.Mixed, x.Laid+x.Left+x.Line+x.ThrownOut+x.Displaced; in != out {
			t.Fatalf("liquid %d: %v in, %v out: %+v", l, in, out, x)
		}
	}
	laid := make([]measure.Volume, len(d.Liquids))
	for _, l := range p.Laid {
		if o := d.Visits[l.Visit].Zones[l.Need].Options[l.Option]; o.Liquid >= 0 {
			laid[o.Liquid] += o.Volume
		}
	}
	for l, x := range p.Demand {
		if x.Laid != laid[l] {
			t.Fatalf("liquid %d: %v laid, options say %v", l, x.Laid, laid[l])
		}
	}
	for _, load := range p.Loads {
		for _, c := range load.Compartments {
			of := d.Rig.Compartments[c.Compartment]
			if c.Level > of.Capacity || c.Add < 0 || c.Level != c.Had+c.Add || c.Left < 0 || c.Left > of.Capacity {
				t.Fatalf("%+v in %+v", c, of)
			}
			if !(c.Strength >= -1e-9 && c.Strength <= 1+1e-9) {
				t.Fatalf("strength %v", c.Strength)
			}
		}
	}
}

// Each zone is laid once, or is said not to be.
func mustNameAll(t *rapid.T, d Day, p DayPlan) {
	seen := map[[2]int]int{}
	for _, l := range p.Laid {
		seen[[2]int{l.Visit, l.Need}]++
	}
	for _, u := range p.Unserved {
		seen[[2]int{u.Visit, u.Need}]++
		if u.Says == "" {
			t.Fatal("no reason")
		}
	}
	for v := range d.Visits {
		for z := range d.Visits[v].Zones {
			if seen[[2]int{v, z}] != 1 {
				t.Fatalf("zone %d of visit %d is named %d times", z, v, seen[[2]int{v, z}])
			}
		}
	}
}

func TestGreedyBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDay(t, dayRoom{6, 3, 6, 5, 3})
		w, err := d.work()
		if err != nil {
			t.Fatal(err)
		}
		order := w.ownOrder()
		r := w.replay(order, w.greedy(order))
		if r.short != 0 {
			t.Fatalf("%d nL short", r.short)
		}
		mustBalance(t, d, r.plan)
		mustNameAll(t, d, r.plan)
	})
}

// Distances that are published beside the formula: Sinnott's own example is not at hand; from memory are Big Ben to the Statue of Liberty and
// Nashville to Los Angeles airport, which are widely shown with haversine code.
func TestGreatCircle(t *testing.T) {
	at := func(lat, long float64) Place { return Place{measure.Known(lat), measure.Known(long)} }
	for _, c := range []struct {
		source  string
		a, b    Place
		km, off float64
	}{
		{"recalled: airports of Nashville and Los Angeles, 2,887.26 km on a radius of 6,372.8 km", at(36.12, -86.67), at(33.94, -118.40), 2887.2599506071106 * 6371.0088 / 6372.8, 1e-6},
		{"geometry: a quarter of the circle", at(0, 0), at(90, 0), math.Pi / 2 * 6371.0088, 1e-6},
		{"geometry: to the other end", at(0, 0), at(0, 180), math.Pi * 6371.0088, 1e-6},
		{"geometry: none", at(38, -85), at(38, -85), 0, 0},
	} {
		if got := GreatCircle(c.a, c.b); !got.Known || math.Abs(got.V*1.609344-c.km) > c.off {
			t.Errorf("%s: %v km, want %v", c.source, got.V*1.609344, c.km)
		}
	}
	if GreatCircle(at(1, 1), Place{}).Known {
		t.Error("a way to nowhere is known")
	}
}
