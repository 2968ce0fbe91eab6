package core

import (
	"errors"
	"strings"
	"testing"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// truedDay is a day whose figures are worked out by hand. Compartment a is empty at first, gets 60 gal with 60 fl oz of weed
// (1 fl oz to the gallon) and feeds a gun of 2 gal per 1,000 sq ft; hose and cell are filled from it first. Oak has 5,000 sq ft,
// Fir 2,000 and Elm 1,000 sq ft: 10, 4 and 2 gal by area, with 10, 4 and 2 fl oz. Ash gets 3 gal by gallons.
func truedDay(t *testing.T) *Book {
	t.Helper()
	return play(t, NewBook(1), `
{"at":"2026-05-28T07:00:00-05:00","fact":"rig","name":"R","compartments":[{"letter":"a","name":"A","colour":"blue","capacity_gal":100,"heel_gal":0.5},{"letter":"b","name":"B","colour":"red","capacity_gal":50,"heel_gal":0.5}],"cell_gal":0,"return_line_gal":0,"hoses":[{"name":"reel","volume_gal":1}],"applicators":[{"name":"gun","kind":"gun","delivery_gal_per_1000_sqft":2,"hose":"reel"}]}
{"at":"2026-05-28T07:01:00-05:00","fact":"product","name":"weed","form":"liquid"}
{"at":"2026-05-28T07:02:00-05:00","fact":"lawn","name":"Oak","zones":[{"name":"all","grass":"tall_fescue","area_sqft":5000}]}
{"at":"2026-05-28T07:03:00-05:00","fact":"lawn","name":"Fir","zones":[{"name":"all","grass":"tall_fescue","area_sqft":2000}]}
{"at":"2026-05-28T07:04:00-05:00","fact":"lawn","name":"Elm","zones":[{"name":"all","grass":"tall_fescue","area_sqft":1000}]}
{"at":"2026-05-28T07:05:00-05:00","fact":"lawn","name":"Ash","zones":[{"name":"all","grass":"tall_fescue","area_sqft":1500}]}
{"at":"2026-05-28T07:10:00-05:00","fact":"day_opened","date":"2026-05-28","operator":"R. Example"}
{"at":"2026-05-28T07:20:00-05:00","fact":"loaded","into":"a","volume_gal":60,"parts":[{"product":"weed","amount_fl_oz":60}]}
{"at":"2026-05-28T07:30:00-05:00","fact":"lined_up","supply":["a"],"return":"a"}
{"at":"2026-05-28T07:40:00-05:00","fact":"pushed_back","to":"waste/pail","volume_gal":2}
{"at":"2026-05-28T08:00:00-05:00","fact":"sprayed","lawn":"Oak","applicator":"gun"}
{"at":"2026-05-28T08:30:00-05:00","fact":"sprayed","lawn":"Fir","applicator":"gun"}
{"at":"2026-05-28T09:00:00-05:00","fact":"sprayed","lawn":"Ash","applicator":"gun","volume_gal":3}
{"at":"2026-05-28T09:30:00-05:00","fact":"sprayed","lawn":"Elm","applicator":"gun"}`)
}

func laidOn(b *Book, lawn string) (gal, flOz float64) {
	for i := range b.day.Laid {
		if l := &b.day.Laid[i]; l.Lawn == lawn {
			k, _ := b.ProductKey("weed")
			gal += l.Volume.Gallons()
			flOz += float64(l.Holds.Of(k)) / (float64(measure.USGallon) / 128)
		}
	}
	return gal, flOz
}

// TestTrueUpByHand: booked are 60 - 2 - 19 = 39 gal. The gauge says 35.8, so 3.2 gal more went out. By area 10 + 4 + 2 = 16 gal
// were logged: each of them is 1.2. Oak 12, Fir 4.8, Elm 2.4 gal, and as many fl oz; Ash stays at 3. At 2.4 per 1,000 sq ft it is
// 2.4 fl oz, 1.2 times what was logged. With 42.2 on the gauge each is 0.8: 8, 3.2 and 1.6.
func TestTrueUpByHand(t *testing.T) {
	for _, row := range []struct {
		gauge string
		want  map[string]float64
	}{
		{"35.8", map[string]float64{"Oak": 12, "Fir": 4.8, "Elm": 2.4, "Ash": 3}},
		{"42.2", map[string]float64{"Oak": 8, "Fir": 3.2, "Elm": 1.6, "Ash": 3}},
	} {
		b := truedDay(t)
		before := b.plumbing.Outside[fluid.Unexplained]
		reading := `{"at":"2026-05-28T10:00:00-05:00","fact":"gauge_read","compartment":"a","volume_gal":` + row.gauge + `,"give_or_take_gal":0.5}`
		play(t, b, reading)
		tank := b.plumbing.Compartment('a').Liquid
		play(t, b, `{"at":"2026-05-28T10:05:00-05:00","fact":"trued_up","tank":"a"}`)
		for lawn, want := range row.want {
			gal, oz := laidOn(b, lawn)
			if !closeTo(gal, want) || !closeTo(oz, want) {
				t.Errorf("gauge %s, %s: %.6f gal with %.6f fl oz, not %g of both", row.gauge, lawn, gal, oz, want)
			}
			var kept float64
			for _, w := range b.History(lawn, "all") {
				kept += float64(w.Peak) / float64(peakArea) * float64(w.Area) / (float64(measure.USGallon) / 128)
			}
			if !closeTo(kept, want) {
				t.Errorf("gauge %s, %s: the part that got most has %.6f fl oz, not %g", row.gauge, lawn, kept, want)
			}
			if z := b.plumbing.Outside[fluid.ZonePlace(lawn, "all")]; !closeTo(z.Volume.Gallons(), want) {
				t.Errorf("gauge %s: the account of %s has %.6f gal", row.gauge, lawn, z.Volume.Gallons())
			}
		}
		if now := b.plumbing.Outside[fluid.Unexplained]; now.Volume != before.Volume {
			t.Errorf("gauge %s: %d nL stay unexplained, before %d", row.gauge, now.Volume, before.Volume)
		}
		if c := b.plumbing.Compartment('a').Liquid; c.Volume != tank.Volume {
			t.Errorf("the true-up changed the tank")
		}
		balanced(t, b)
		refusedFact(t, b, &TruedUp{Tank: "a"}, "was trued up already")
		// A later reading goes from the new state.
		play(t, b, `{"at":"2026-05-28T10:06:00-05:00","fact":"gauge_read","compartment":"a","volume_gal":30,"give_or_take_gal":0.5}`)
		refusedFact(t, b, &TruedUp{Tank: "a"}, "no spraying from it was logged by area since 10:00")
	}
}

func closeTo(a, b float64) bool { return max(a-b, b-a) < 1e-6 }

func refusedFact(t *testing.T, b *Book, f Fact, says string) {
	t.Helper()
	_, err := b.Prepare("x", b.LastAt(), f)
	var p *Problem
	if !errors.As(err, &p) || !strings.Contains(p.What, says) || p.Do == "" {
		t.Errorf("%+v: %v; it should say %q", f, err, says)
	}
}

func readTrued(t *testing.T, gal string) *Book {
	t.Helper()
	return play(t, truedDay(t), `{"at":"2026-05-28T10:00:00-05:00","fact":"gauge_read","compartment":"a","volume_gal":`+gal+`,"give_or_take_gal":0.5}`)
}

func TestTrueUpIsRefused(t *testing.T) {
	gal := measure.Gallons
	line := func(lawn string, nth int64, logged, more float64) *TruedUp {
		return &TruedUp{Tank: "a", Lines: []TruedLine{{lawn, "all", nth, gal(logged), gal(more)}}}
	}
	for _, row := range []struct {
		name, gauge string
		f           *TruedUp
		says        string
	}{
		{"no such tank", "35.8", &TruedUp{Tank: "d"}, `There is no compartment "d"`},
		{"not read", "35.8", &TruedUp{Tank: "b"}, "The gauge of b was not read on"},
		{"within what the gauge tells", "39.3", &TruedUp{Tank: "a"}, "that is within what it can tell"},
		{"all of it", "59", &TruedUp{Tank: "a"}, "that is all that was laid from it by area, 16.0 gal"},
		{"no such way", "35.8", &TruedUp{Tank: "a", Include: []string{"eye"}}, `"eye", which is none of the ways`},
		{"no such spraying", "35.8", line("Oak", 2, 10, 1), "Spraying 2 on Oak, all is none between"},
		{"another volume", "35.8", line("Oak", 1, 9, 1), "Spraying 1 on Oak, all has 10.0 gal; the true-up says that 9.00 gal were logged."},
		{"the other way", "35.8", line("Oak", 1, 10, -1), "The line of Oak, all moves -1.00 gal"},
		{"more than was laid", "42.2", line("Elm", 1, 2, -2), "takes 2.00 gal away; 2.00 gal were laid there"},
		{"more than the gauge shows", "35.8", line("Oak", 1, 10, 4), "The lines move 4.00 gal"},
		{"twice", "35.8", &TruedUp{Tank: "a", Lines: []TruedLine{{"Oak", "all", 1, gal(10), gal(1)}, {"Oak", "all", 1, gal(10), gal(1)}}}, "is named twice"},
		{"another sum", "35.8", &TruedUp{Tank: "a", Moved: Known(gal(2)), Lines: line("Oak", 1, 10, 1).Lines}, "The lines come to 1.00 gal"},
		{"another difference", "35.8", &TruedUp{Tank: "a", Showed: Known(gal(2))}, "the true-up says 2.00 gal"},
	} {
		t.Run(row.name, func(t *testing.T) { refusedFact(t, readTrued(t, row.gauge), row.f, row.says) })
	}
	refusedFact(t, truedDay(t), &TruedUp{Tank: "a"}, "was not read on")
	closed := play(t, readTrued(t, "35.8"), `{"at":"2026-05-28T17:00:00-05:00","fact":"day_closed"}`)
	refusedFact(t, closed, &TruedUp{Tank: "a"}, "No day is open")
}

// TestTrueUpIsStruck: struck, all is as before; a spraying under it is struck only with it.
func TestTrueUpIsStruck(t *testing.T) {
	b := readTrued(t, "35.8")
	before, accounts := b.StateDigest(), b.AccountsDigest()
	play(t, b, `{"at":"2026-05-28T10:05:00-05:00","fact":"trued_up","tank":"a"}`)
	up := int64(b.Seq())
	var oak int64
	for _, e := range b.Since() {
		if f, ok := e.What.(*Sprayed); ok && f.Lawn == "Oak" {
			oak = int64(e.Seq)
		}
	}
	_, err := b.Prepare("x", b.LastAt(), &Struck{Of: oak, Reason: "slip"})
	var later *LaterFall
	if !errors.As(err, &later) || len(later.Also) != 1 || later.Also[0] != up {
		t.Fatalf("striking the spraying under it: %v", err)
	}
	es, err := b.Prepare("x", b.LastAt(), &Struck{Of: up, Reason: "slip"})
	if err != nil {
		t.Fatal(err)
	}
	if err := b.Apply(es[0]); err != nil {
		t.Fatal(err)
	}
	if b.StateDigest() != before || b.AccountsDigest() != accounts {
		t.Error("the strike of a true-up does not restore the book")
	}
}

// TestTrueUpIncludes: with those by gallons 19 gal share 3.2: Ash goes from 3 to 3 * (1 + 3.2/19).
func TestTrueUpIncludes(t *testing.T) {
	b := readTrued(t, "35.8")
	play(t, b, `{"at":"2026-05-28T10:05:00-05:00","fact":"trued_up","tank":"a","include":["gallons"]}`)
	if gal, _ := laidOn(b, "Ash"); !closeTo(gal, 3*(1+3.2/19)) {
		t.Errorf("Ash has %.6f gal", gal)
	}
}
