package calib

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core/measure"
)

func gun() Catch {
	return Catch{Kind: Gun, Runs: []float64{77, 79, 78}, Course: measure.Feet(200), Swath: measure.Feet(5), Caught: []measure.Volume{measure.Gallons(1.5)}}
}

func TestRefusals(t *testing.T) {
	change := func(f func(c *Catch)) Catch {
		c := gun()
		f(&c)
		return c
	}
	tests := []struct {
		name     string
		c        Catch
		what, do string
	}{
		{"runs too far apart", change(func(c *Catch) { c.Runs = []float64{70, 78, 86} }), "70, 78 and 86 s: one lies 10.3 per cent off their mean of 78 s, and 5 per cent is allowed", "Walk the course again"},
		{"two runs", change(func(c *Catch) { c.Runs = c.Runs[:2] }), "2 timed runs; a hand gun needs 3", "3 times or more"},
		{"run of nothing", change(func(c *Catch) { c.Runs[1] = 0 }), "Run 2 took 0 s", "more than 0"},
		{"not a number", change(func(c *Catch) { c.Runs[1] = math.NaN() }), "Run 2 took NaN s", "more than 0"},
		{"no swath", change(func(c *Catch) { c.Swath = 0 }), "200 ft long, and its swath is not given", "width"},
		{"nothing caught", change(func(c *Catch) { c.Caught = nil }), "Nothing was caught", "Catch what"},
		{"catch of nothing", change(func(c *Catch) { c.Caught = []measure.Volume{0} }), "Catch 1 is 0 fl oz", "more than 0"},
		{"catches apart", change(func(c *Catch) { c.Caught = []measure.Volume{measure.Gallons(1), measure.Gallons(1.5)} }), "128 and 192 fl oz: one lies 20.0 per cent off", "Catch again"},
		{"caught for nothing", change(func(c *Catch) { c.CaughtFor = measure.Known(0.) }), "caught for 0 s", "more than 0"},
		{"course of a continent", change(func(c *Catch) { c.Course = measure.Mile * 100 }), "528,000 ft", "10,000 ft"},
		{"all nozzles shut", Catch{Kind: RideOn, Runs: []float64{30}, Course: measure.Feet(100), Swath: measure.Feet(4), Caught: []measure.Volume{0, 0}}, "gave 0 fl oz", "valve"},
		{"nothing weighed", Catch{Kind: Spreader, Course: measure.Feet(100), Swath: measure.Feet(3)}, "Nothing was weighed", "Weigh"},
		{"weight of nothing", Catch{Kind: Spreader, Course: measure.Feet(100), Swath: measure.Feet(3), Weighed: []measure.Mass{0}}, "dropped 0 lb", "more than 0"},
		{"weights apart", Catch{Kind: Spreader, Course: measure.Feet(100), Swath: measure.Feet(3), Weighed: []measure.Mass{measure.Pounds(1), measure.Pounds(2)}}, "1 and 2 lb: one lies 33.3", "gate"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := tt.c.Work(Usual())
			var trouble *measure.Trouble
			if !errors.As(err, &trouble) {
				t.Fatalf("got %v", err)
			}
			if !strings.Contains(trouble.Error(), tt.what) || !strings.Contains(trouble.Do(), tt.do) {
				t.Errorf("says %q, do %q", trouble.Error(), trouble.Do())
			}
		})
	}
}

// Four nozzles of 20 in, 200 ft in 40 s, each caught for 40 s; by hand: 4 x 16 fl oz = 0.5 gal on 1,333 sq ft.
func TestRideOn(t *testing.T) {
	oz := func(list ...float64) (out []measure.Volume) {
		for _, f := range list {
			out = append(out, measure.FluidOunces(f))
		}
		return out
	}
	c := Catch{
		Kind: RideOn, Runs: []float64{40}, Course: measure.Feet(200), Swath: measure.Inches(80), Caught: oz(15, 15, 15, 19),
		Rated: measure.Known(measure.Flow(float64(measure.FluidOunces(15)) / 40)),
	}
	r, err := c.Work(Usual())
	if err != nil {
		t.Fatal(err)
	}
	if want := 0.5 / (200 * 80. / 12) * 1000; !agree(r.Delivery.GalPer1000(), want) {
		t.Errorf("delivery %.8g, want %.8g", r.Delivery.GalPer1000(), want)
	}
	if w := r.Worn(); len(w) != 1 || w[0] != 4 || !r.Nozzles[3].Far || !r.Nozzles[3].Worn {
		t.Errorf("worn %v: %+v", w, r.Nozzles)
	}
	if !agree(r.Nozzles[3].OffMean, 3./16) || !agree(r.Nozzles[3].OffRated.V, 4./15) || r.Nozzles[0].OffRated.V != 0 {
		t.Errorf("nozzles %+v", r.Nozzles)
	}
	// The standard deviation of 15, 15, 15, 19 is 2, their mean 16.
	if !agree(r.Variation, 2./16) {
		t.Errorf("variation %g", r.Variation)
	}
	if all := strings.Join(r.Working, "\n"); !strings.Contains(all, "Nozzle 4 gives +26.7 per cent against a new one, more than 10: replace it.") {
		t.Error(all)
	}
	c.Runs, c.CaughtFor = []float64{40}, measure.Known(80.)
	half, err := c.Work(Usual())
	if err != nil || !agree(half.Delivery.V, r.Delivery.V/2) {
		t.Errorf("caught for twice the time: %v, %v", half.Delivery, err)
	}
}

func TestSpreaderAndPattern(t *testing.T) {
	c := Catch{
		Kind: Spreader, Course: measure.Feet(100), Swath: measure.Feet(3), Weighed: []measure.Mass{measure.Pounds(1.5)},
		Pans: []float64{1, 2, 4, 4, 4, 2, 1}, Apart: measure.Feet(1),
	}
	r, err := c.Work(Usual())
	if err != nil {
		t.Fatal(err)
	}
	// Louisiana State University AgCenter, drop spreader: 1.5 lb on 300 sq ft.
	if got, _ := r.Delivery.In("lb_per_1000_sqft"); !agree(got, 5) || r.Delivery.Kind != measure.Dry {
		t.Errorf("%g lb per 1,000 sq ft", got)
	}
	// Half of the middle, 2, falls in the second pan from each side: 4 ft apart.
	if r.Pattern.Effective != measure.Feet(4) || !agree(r.Pattern.Lowest, 7./18) || !agree(r.Pattern.Highest, 28./18) {
		t.Errorf("%+v, %g ft", r.Pattern, r.Pattern.Effective.Feet())
	}
}

func TestDrift(t *testing.T) {
	meant := measure.GalPer1000(1.5)
	tests := []struct {
		gal    float64
		weight string
		words  string
	}{
		{1.5, Within, "the same"},
		{1.57, Within, "4.7 per cent more"},
		{1.59, Off, "6.0 per cent more"},
		{1.40, Off, "6.7 per cent less"},
		{1.66, Worn, "10.7 per cent more"},
		{1.30, Worn, "13.3 per cent less"},
	}
	for _, tt := range tests {
		d, ok := DriftOf(measure.GalPer1000(tt.gal), meant, Usual())
		if !ok || d.Weight != tt.weight || d.Words() != tt.words {
			t.Errorf("%g: %s, %s", tt.gal, d.Weight, d.Words())
		}
	}
	if _, ok := DriftOf(measure.GalPer1000(1), measure.Rate{V: 1, Kind: measure.Dry}, Usual()); ok {
		t.Error("liquid was held against dry")
	}
}

func TestBringBack(t *testing.T) {
	c := gun()
	c.Caught = []measure.Volume{measure.Gallons(1.59)}
	c.PSI = measure.Known(40.)
	r, err := c.Work(Usual())
	if err != nil {
		t.Fatal(err)
	}
	meant := measure.GalPer1000(1.5)
	tests := []struct {
		name     string
		meant    measure.Rate
		g        Gives
		possible bool
		why      string
	}{
		{"less pressure", meant, Gives{Pump: measure.Known(60.)}, true, ""},
		{"pump not known", meant, Gives{}, true, "not in the rig"},
		{"more than the pump gives", measure.GalPer1000(1.8), Gives{Pump: measure.Known(60.), Loss: measure.Known(12.)}, false, "have to give 66.64 psi and gives at most 60"},
		{"too far for pressure", measure.GalPer1000(2.5), Gives{Pump: measure.Known(500.)}, false, "too far for pressure"},
	}
	for _, tt := range tests {
		b := c.BringBack(r, tt.meant, tt.g, Usual())
		want := 40 * math.Pow(tt.meant.V/r.Delivery.V, 2)
		if !agree(b.PSI.V, want) || b.Possible != tt.possible || !strings.Contains(b.Why, tt.why) || (tt.why == "") != (b.Why == "") {
			t.Errorf("%s: %+v, want %g psi", tt.name, b, want)
		}
		if !agree(b.Seconds.V, 78*tt.meant.V/r.Delivery.V) {
			t.Errorf("%s: %g s", tt.name, b.Seconds.V)
		}
	}
}

func TestEveryLimitHasASource(t *testing.T) {
	l := Usual()
	for _, r := range LimitRows() {
		if r.Source == "" || r.Words == "" || !(r.Value > 0) {
			t.Errorf("%+v", r)
		}
	}
	for _, f := range []float64{l.SpreadPct, l.OffPct, l.WornPct, l.NozzleOffPct, l.PressureTimes, float64(l.Runs[Gun]), float64(l.Runs[Backpack])} {
		if !(f > 0) {
			t.Errorf("a limit is missing: %+v", l)
		}
	}
}

func TestDeliveryGoesWithTheCatch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := gun()
		c.Runs = []float64{rapid.Float64Range(10, 600).Draw(t, "seconds")}
		c.Course = measure.Feet(rapid.Float64Range(10, 1000).Draw(t, "course"))
		c.Swath = measure.Feet(rapid.Float64Range(1, 40).Draw(t, "swath"))
		v := measure.Gallons(rapid.Float64Range(0.05, 20).Draw(t, "gal"))
		times := rapid.IntRange(2, 9).Draw(t, "times")
		l := Usual()
		l.Runs = nil
		c.Caught = []measure.Volume{v}
		one, err := c.Work(l)
		if err != nil {
			t.Fatal(err)
		}
		c.Caught = []measure.Volume{v * measure.Volume(times)}
		more, err := c.Work(l)
		if err != nil {
			t.Fatal(err)
		}
		if !near(more.Delivery.V, one.Delivery.V*float64(times)) || !near(more.Flow.V.GPM(), one.Flow.V.GPM()*float64(times)) {
			t.Fatalf("%g and %g", one.Delivery.V, more.Delivery.V)
		}
		// By flow and speed the same comes out as by catch and course.
		if by := LaidBy(float64(one.Flow.V), SpeedOf(float64(c.Course), c.Runs[0]), float64(c.Swath)); !near(by, one.Delivery.V) {
			t.Fatalf("%g by flow and speed, %g by catch", by, one.Delivery.V)
		}
		// Lost and found: what the catch says is what it puts on its own area.
		// The area is rounded to whole square millimetres, so that a small course is off by its share of one.
		if got := one.Delivery.Volume(measure.Area(one.Area)); math.Abs(float64(got-v)) > float64(v)/float64(one.Area)+2 && !near(float64(got), float64(v)) {
			t.Fatalf("%d on the course, %d caught", got, v)
		}
	})
}

func TestPressureThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.Float64Range(1, 500).Draw(t, "psi")
		q := rapid.Float64Range(0.01, 20).Draw(t, "gpm")
		other := rapid.Float64Range(1, 500).Draw(t, "other psi")
		flow := FlowAt(q, p, other)
		if back := PressureFor(p, q, flow); !near(back, other) {
			t.Fatalf("%g psi came back as %g", other, back)
		}
		if back := FlowAt(flow, other, p); !near(back, q) {
			t.Fatalf("%g gpm came back as %g", q, back)
		}
	})
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-6*math.Abs(b) }
