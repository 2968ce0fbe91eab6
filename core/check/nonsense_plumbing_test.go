package check_test

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// wildRig draws plumbing from the edges of what a rig may be.
func wildRig(r *rapid.T) *core.Rig {
	pick := func(name string, from ...float64) float64 { return rapid.SampledFrom(from).Draw(r, name) }
	gal := measure.Gallons
	f := &core.Rig{RigName: "truck", Cell: gal(pick("cell", 0, 0, 0.000001, 0.2, 3)), ReturnLine: gal(pick("return", 0, 0, 0.1, 2))}
	for i := range rapid.IntRange(2, 6).Draw(r, "compartments") {
		size := pick("size", 1, 5, 40, 160, 300)
		f.Compartments = append(f.Compartments, core.RigCompartment{
			Letter: byte('a' + i), Name: string(rune('a' + i)), Capacity: gal(size), Heel: gal(pick("heel", 0, 0.01, 0.99*size)),
			Tint:      rapid.SampledFrom([]string{"", core.NoTint, "blue"}).Draw(r, "tint"),
			Agitation: rapid.SampledFrom([]string{"", core.Paddle, core.Jet, core.NotAgitated}).Draw(r, "agitation"),
		})
	}
	for _, name := range []string{"reel", "other"} {
		h := core.RigHose{Name: name}
		if h.Volume = gal(pick("hose", 0, 0, 0.00001, 0.5, 2, 25)); h.Volume == 0 {
			h.Bore = core.Known(measure.Inches(pick("bore", 0.1, 0.375, 0.5, 1.5)))
			h.Length = core.Known(measure.Feet(pick("length", 0.1, 50, 300, 900)))
		}
		f.Hoses = append(f.Hoses, h)
	}
	gun := core.Applicator{Name: "gun", Type: core.Gun, Hose: "reel", Delivery: measure.Rate{V: 1.6 * float64(measure.USGallon) / float64(measure.ThousandSquareFeet)}}
	if rapid.IntRange(0, 3).Draw(r, "flow known") > 0 {
		q := pick("flow", 0.01, 0.5, 2.5, 9)
		gun.Flow = core.Known(measure.GPM(q))
		if rapid.Bool().Draw(r, "pump known") {
			f.PumpFlow = core.Known(measure.GPM(q * pick("pump", 1, 1.000001, 1.5, 10, 300)))
		}
	}
	f.Applicators = []core.Applicator{gun}
	if rapid.Bool().Draw(r, "suction") {
		f.Suction = gal(pick("suction gal", 0.0001, 0.1, 5))
	}
	return f
}

// wildFact draws something that may happen to such a rig.
func wildFact(r *rapid.T, rig *core.Rig) core.Fact {
	letter := func() byte { return rapid.SampledFrom(rig.Compartments).Draw(r, "letter").Letter }
	hose := rapid.SampledFrom([]string{"", "reel", "other"}).Draw(r, "which hose")
	gal := measure.Gallons(rapid.SampledFrom([]float64{0.0001, 0.3, 0.9, 3, 30, 120}).Draw(r, "gal"))
	seconds := func(name string) core.Maybe[float64] { return oddMaybe(r, name, 0, 3600) }
	switch rapid.IntRange(0, 10).Draw(r, "fact") {
	case 0, 1: // so much that a parcel's whole units do not decide how strong it is
		gal = max(gal, measure.Gallons(0.3))
		return &core.Loaded{Into: string(letter()), Volume: gal, Parts: []core.LoadPart{{Product: rapid.SampledFrom([]string{"wet", "other"}).Draw(r, "product"), Amount: measure.Amount{N: int64(gal / 100), Kind: measure.Liquid}}}}
	case 2, 3:
		up := &core.LinedUp{Supply: []byte{letter()}, Return: letter()}
		if rapid.IntRange(0, 4).Draw(r, "two open") == 0 {
			up.Supply = append(up.Supply, letter())
		}
		return up
	case 4, 5:
		f := &core.PushedBack{Into: letter(), Volume: gal, Hose: hose}
		if rapid.IntRange(0, 4).Draw(r, "pail") == 0 {
			f.Into, f.To = 0, check.Pail
		}
		return f
	case 6:
		return &core.Ran{Seconds: seconds("ran"), Pump: rapid.SampledFrom([]string{"on", "off"}).Draw(r, "pump")}
	case 7:
		return &core.TintSeen{Seconds: seconds("tint"), HalfSeconds: seconds("half"), FullSeconds: seconds("full"), Hose: hose}
	case 8:
		return &core.Fitted{Applicator: "gun", Hose: hose}
	case 9:
		return wildRig(r)
	}
	return &core.Sprayed{Lawn: "L", Applicator: "gun", Volume: core.Known(gal)}
}

// Whatever the plumbing and whatever happened to it, purity stays in 0 to 1 and never falls, nothing less than nothing is
// left, and all that is said of a changeover is made of figures.
func TestNothingOddIsAnsweredOfPlumbing(t *testing.T) {
	changeovers, moved, pushed := 0, 0, 0
	rapid.Check(t, func(r *rapid.T) {
		at := core.Moment{Unix: 1_779_980_000}
		b := core.NewBook(1)
		rig := wildRig(r)
		if !taken(b, at, rig) || !taken(b, at, &core.DayOpened{Date: "2026-05-28", Operator: "R. Example"}) {
			return
		}
		for i, name := range []string{"wet", "other"} {
			taken(b, at, &core.Product{ProductName: name, Label: label.Entry{Form: measure.Liquid, Kind: "herbicide", Grasses: []string{[]string{label.AllTurf, "tall_fescue"}[i]}}})
		}
		grass := rapid.SampledFrom(someGrasses).Draw(r, "grass")
		taken(b, at, &core.Lawn{LawnName: "L", Zones: []core.Zone{{Name: "z", Grass: grass, Area: 4 * measure.ThousandSquareFeet}}})
		taken(b, at, &core.VisitBegun{Lawn: "L"})
		for range rapid.IntRange(2, 14).Draw(r, "facts") {
			if f := wildFact(r, rig); taken(b, at, f) {
				moved++
				if n, ok := f.(*core.Rig); ok {
					rig = n
				}
			}
		}
		answers(r, b, at)
		for _, c := range rig.Compartments {
			in := check.Intent{Lawn: "L", At: at}
			turn, err := check.WhatIf(b, in, c.Letter)
			steps := check.Steps(b, in, c.Letter)
			in.From = c.Letter
			all := check.AllWays(b, in)
			for what, a := range map[string]any{"what if": turn, "steps": steps, "ways": all, "clean": check.ToClean(b, in)} {
				if wrong := wrongIn(reflect.ValueOf(a), 0); wrong != "" {
					r.Fatalf("%s: %s", what, wrong)
				}
				if _, err := json.Marshal(a); err != nil {
					r.Fatalf("%s: %v", what, err)
				}
			}
			if err != nil && strings.Contains(fmt.Sprint(err), "NaN") {
				r.Fatal(err)
			}
			for _, ch := range []*check.Changeover{turn.Changeover, all} {
				if ch != nil {
					changeovers++
					holdsPurity(r, ch)
				}
			}
		}
		if pushedAsAdvised(r, b, at, rapid.SampledFrom(rig.Compartments).Draw(r, "to").Letter) {
			pushed++
		}
	})
	t.Logf("%d pushed as advised; %d facts, %d changeovers", pushed, moved, changeovers)
	if changeovers < 50 {
		t.Errorf("only %d changeovers were looked at", changeovers)
	}
}

func holdsPurity(r *rapid.T, c *check.Changeover) {
	before := -1.0
	for i := range 60 {
		v := measure.Volume(float64(c.Advised) * float64(i) / 25)
		share := c.NewAt(v)
		if !(share >= 0 && share <= 1) || share < before {
			r.Fatalf("after %d nL %g new, before that %g", v, share, before)
		}
		before = share
		if c.LeftAt(v) < 0 {
			r.Fatalf("after %d nL %d are left", v, c.LeftAt(v))
		}
	}
	if c.NewAt(math.MaxInt64) < before || c.NewAt(math.MinInt64) < 0 {
		r.Fatal("at the ends")
	}
	for what, v := range map[string]measure.Volume{"arrives": c.Arrives, "half": c.Half, "clean": c.Clean, "band": c.Band, "advised": c.Advised, "push back": c.PushBack, "left": c.Left, "lost": c.NewLost, "tint": c.TintFrom} {
		if v < 0 {
			r.Fatalf("%s is %d nL", what, v)
		}
	}
	if c.Arrives > c.Half || c.Clean > c.Advised || c.TintFrom > c.TintBy {
		r.Fatalf("out of order: arrives %d half %d clean %d advised %d tint %d to %d", c.Arrives, c.Half, c.Clean, c.Advised, c.TintFrom, c.TintBy)
	}
}

// pushedAsAdvised does what the steps say; where the book takes all of it, nothing is asked for a second time. A compartment
// that holds little more than what is pushed is changed by it itself; in a hose of drops the whole units of the account do,
// and so in a cell of drops: one of 3785 nL that gets 0.0019846 of a product holds 8 units of it, which is 6.5 per cent stronger, and 5 are borne.
func pushedAsAdvised(r *rapid.T, b *core.Book, at core.Moment, to byte) bool {
	in := check.Intent{Lawn: "L", At: at}
	if cell := b.Plumbing().Cell.Size; cell > 0 && cell < measure.Gallons(0.01) {
		return false
	}
	any, stock := false, b.Plumbing().Compartment(to).Liquid.Volume
	for _, s := range check.Steps(b, in, to) {
		for _, f := range s.Facts {
			if !taken(b, at, f) {
				return false
			}
			if p, ok := f.(*core.PushedBack); ok {
				if any = true; 30*p.Volume > stock || b.Plumbing().Hose(p.Hose).Size < measure.Gallons(0.3) {
					return false
				}
			}
		}
	}
	if !any {
		return false
	}
	if again := check.ToClean(b, in); again != nil {
		r.Fatalf("after what was advised %d nL more are asked for: %+v", again.Clean, again)
	}
	return true
}
