package core

import (
	"math"
	"testing"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// tinted is a rig whose compartment b is blue; a, c and the first water are clear. Its hose holds 1.1475 gal.
func tinted(t *testing.T) *Book {
	t.Helper()
	b := NewBook(1)
	mustEnter(t, b, &Rig{
		RigName: "truck", Cell: measure.Gallons(0.2),
		Compartments: []RigCompartment{
			{Letter: 'a', Capacity: measure.Gallons(200), Tint: NoTint}, {Letter: 'b', Capacity: measure.Gallons(100), Tint: "blue"},
			{Letter: 'c', Capacity: measure.Gallons(100), Tint: NoTint}, {Letter: 'd', Capacity: measure.Gallons(100)},
		},
		Hoses: []RigHose{{Name: "reel", Bore: Known(measure.Inches(0.375)), Length: Known(measure.Feet(200))}},
		Applicators: []Applicator{{
			Name: "gun", Type: Gun, Hose: "reel", Delivery: measure.Rate{V: 2, Kind: measure.Liquid}, Flow: Known(measure.GPM(3)),
		}},
	})
	for _, l := range []string{"a", "b", "c", "d"} {
		mustEnter(t, b, &Loaded{Into: l, Volume: measure.Gallons(80)})
	}
	return b
}

// changeTo turns to a compartment and pushes so much through the hose.
func changeTo(t *testing.T, b *Book, l byte, gal float64) {
	t.Helper()
	mustEnter(t, b, &LinedUp{Supply: []byte{l}, Return: l})
	mustEnter(t, b, &PushedBack{Into: l, Volume: measure.Gallons(gal)})
}

func timed(s float64) *TintSeen { return &TintSeen{Seconds: Known(s)} }

// TestLearnsTheHoseOfTheReference is row ES-6 of the check values (Gaussian product, worked out independently): prior
// 1.1475 gal with 0.1113, a colour after 24.6 s with 1 s at 3 gpm with 3 per cent.
func TestLearnsTheHoseOfTheReference(t *testing.T) {
	b := tinted(t)
	f := timed(24.6)
	f.HoseSD, f.FirstSD = Known(measure.Gallons(0.1113)), Known(measure.Volume(0))
	changeTo(t, b, 'b', 3)
	mustEnter(t, b, f)
	got := b.Learned("reel")
	// The row starts from the volume rounded to 1.1475 gal; the book from that of bore and length.
	prior, u, obs := fluid.BoreVolume(measure.Inches(0.375), measure.Feet(200)).Gallons(), 0.1113, 1.23
	r := math.Pow(0.05, 2) + math.Pow(1.23*0.03, 2)
	mean := (prior/(u*u) + obs/r) / (1/(u*u) + 1/r)
	if math.Abs(got.Hose.Gallons()-mean) > 1e-7 || math.Abs(got.Hose.Gallons()-1.2103940585) > 2e-5 {
		t.Errorf("the hose holds %.7f gal, not %.7f", got.Hose.Gallons(), mean)
	}
	if math.Abs(got.HoseSD.Gallons()-0.05425778) > 1e-6 {
		t.Errorf("give or take %.7f gal, not 0.0542578", got.HoseSD.Gallons())
	}
	if got.FromRig || got.N != 1 {
		t.Errorf("learned %+v", got)
	}
	if h := b.Plumbing().Hose("reel"); h.Size != got.Hose {
		t.Errorf("the ledger's hose is %s", h.Size.Text())
	}
	if sum := b.Plumbing().Sum(); !sum.Empty() {
		t.Errorf("all places sum to %+v", sum)
	}
}
