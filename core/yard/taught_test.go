package yard

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// gun is a truck whose compartment a was read once, and whose gun puts down ratio times what area times rate says.
type gun struct {
	b     *core.Book
	truth float64 // gallons in a
	ratio float64
}

func newGun(t *testing.T, ratio float64) *gun {
	g := &gun{b: play(t, loaded+`{"fact":"lined_up","supply":["a"],"return":"a"}`+"\n"), truth: 200, ratio: ratio}
	enter(t, g.b, &core.GaugeRead{Compartment: 'a', Volume: core.Known(measure.Gallons(200))})
	return g
}

// round sprays lawns of 7,400 sq ft by area and reads the gauge after them, to a half gallon.
func (g *gun) round(t *testing.T, lawns int) {
	if g.truth < 60 {
		fill := &core.Loaded{Into: "a", Volume: measure.Gallons(200), Parts: []core.LoadPart{}}
		enter(t, g.b, fill)
		g.truth += 200
		g.read(t)
	}
	for range lawns {
		enter(t, g.b, &core.Sprayed{Lawn: "Alder", Applicator: "gun"})
		g.truth -= g.ratio * 7.4 * 1.6
	}
	g.read(t)
}

func (g *gun) read(t *testing.T) {
	enter(t, g.b, &core.GaugeRead{Compartment: 'a', Volume: core.Known(measure.Gallons(math.Round(g.truth*2) / 2))})
}

func (g *gun) taught(t *testing.T) TaughtOf {
	t.Helper()
	all := Taught(g.b)
	if len(all.Applicators) != 2 || all.Applicators[0].Applicator != "gun" {
		t.Fatalf("%+v", all.Applicators)
	}
	if text := all.Text(); strings.Contains(strings.ToLower(text), "safe") {
		t.Error(text)
	}
	if _, err := json.Marshal(all.Document()); err != nil {
		t.Error(err)
	}
	return all.Applicators[0]
}

// At few readings it is not yet known; at many the ratio is near the truth, and what it means is said.
func TestWhatAGaugeTeachesIsSaid(t *testing.T) {
	g := newGun(t, 1.12)
	none := g.taught(t)
	if none.Verdict != TaughtNothing || !strings.Contains(none.Says, "not yet known") || none.Lays.Known || !strings.Contains(none.Test, "catch test tells it today") {
		t.Errorf("%+v", none)
	}
	g.round(t, 4)
	one := g.taught(t)
	if one.Verdict != TaughtLittle || !strings.Contains(one.Says, "not yet known") || !strings.Contains(one.Says, "1 reading of the 3") || one.Lays.Known {
		t.Errorf("%+v", one)
	}
	for range 12 {
		g.round(t, 4)
	}
	many := g.taught(t)
	if many.Verdict != TaughtPast || math.Abs(many.Ratio-1.12) > 0.02 || many.SD > 0.03 {
		t.Errorf("%+v", many)
	}
	want := fmt.Sprintf("You put down %s more than you think, give or take %s, from %d readings.", share(many.Ratio-1), share(many.SD), many.Readings)
	if many.Says != want || !strings.Contains(many.Means[0], "1.60 gal per 1,000 sq ft is counted, 1.79") || !strings.Contains(many.Means[1], "more product on every lawn") {
		t.Errorf("%q %q", many.Says, many.Means)
	}
	if !strings.Contains(many.Test, "past 5 %") || len(many.Steps) < 3 {
		t.Errorf("%q %v", many.Test, many.Steps)
	}
}

// One that is right is told from one that is not, and a figure that may be either asks for a catch test.
func TestVerdictOfAGauge(t *testing.T) {
	for _, row := range []struct {
		ratio, sd float64
		n         int
		verdict   string
		says      string
	}{
		{1.01, 0.01, 9, TaughtWithin, "You put down what you think, as far as 9 readings can tell: 1 % more, give or take 1 %."},
		{0.965, 0.02, 9, TaughtOpen, "You put down what you think, as far as 9 readings can tell: 3.5 % less, give or take 2 %."},
		{0.90, 0.02, 9, TaughtPast, "You put down 10 % less than you think, give or take 2 %, from 9 readings."},
		{1.043, 0.002, 9, TaughtWithin, "You put down 4.3 % more than you think, give or take 0.2 %, from 9 readings."},
	} {
		c := TaughtOf{Taught: core.Taught{Ratio: row.ratio, SD: row.sd, Readings: row.n, Enough: true}}
		if got := c.verdict(0.05); got != row.verdict || c.says() != row.says {
			t.Errorf("%+v: %s, %s", row, got, c.says())
		}
	}
}

// What is booked since a reading is put right by what is known of the gun, and the document says it.
func TestExpectedIsBesideWhatIsBooked(t *testing.T) {
	g := newGun(t, 1.12)
	for range 8 {
		g.round(t, 4)
	}
	if g.truth < 80 {
		g.round(t, 4)
	}
	for range 3 {
		enter(t, g.b, &core.Sprayed{Lawn: "Alder", Applicator: "gun"})
		g.truth -= g.ratio * 7.4 * 1.6
	}
	all := Taught(g.b)
	if len(all.Tanks) != 1 || all.Tanks[0].Letter != 'a' {
		t.Fatalf("%+v", all.Tanks)
	}
	e := all.Tanks[0]
	off := math.Abs(e.Expected.Gallons() - g.truth)
	if was := math.Abs(e.Booked.Gallons() - g.truth); off > 2*e.SD.Gallons() || off > was/2 || e.SD <= 0 {
		t.Errorf("%s; the truth is %.2f", e.Says(), g.truth)
	}
	d := all.Document()
	if n := len(d["readings_today"].([]map[string]any)); n < 8 || len(d["expected"].([]map[string]any)) != 1 {
		t.Errorf("%v", d)
	}
	if !strings.Contains(all.Text(), e.Says()) || !strings.Contains(all.Text(), GiveOrTake) {
		t.Error(all.Text())
	}
}

func TestNothingIsTaughtOfAnEmptyBook(t *testing.T) {
	all := Taught(core.NewBook(1))
	raw, err := json.Marshal(all.Document())
	if err != nil || strings.Contains(string(raw), "null") || !strings.Contains(all.Text(), "no applicator that sprays") {
		t.Errorf("%s %v", raw, err)
	}
}
