package main

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/testdata/demo"
)

// The demo's mixes by the compartment that holds them, and the one that is spread.
const (
	mixWarm, mixCool, mixAny = "warm weed", "cool weed", "iron and nitrogen"
	mixDry                   = "spring granule"
	warmLetter, coolLetter   = 'a', 'b'
	anyLetter                = 'c'
)

// invented are the facts of setting up that the demo has: rig, products, mixes, and lawns as patterns.
type invented struct {
	rig      *core.Rig
	products []*core.Product
	mixes    []*core.Mix
	lawns    []*core.Lawn
}

func fromDemo() (invented, error) {
	var out invented
	for _, text := range strings.Split(strings.TrimSpace(demo.Journal), "\n") {
		l, err := core.DecodeLine([]byte(text))
		if err != nil {
			return out, err
		}
		switch f := l.Fact.(type) {
		case *core.Rig:
			if out.rig == nil { // the first one has the spreader
				out.rig = f
			}
		case *core.Product:
			out.products = append(out.products, f)
		case *core.Mix:
			out.mixes = append(out.mixes, f)
		case *core.Lawn:
			out.lawns = append(out.lawns, f)
		}
	}
	return out, nil
}

// street is an address of the demo without number and town.
func street(l *core.Lawn) string {
	s, _, _ := strings.Cut(l.Address, ",")
	_, s, _ = strings.Cut(s, " ")
	return s
}

func (w *writer) setUp(demo invented) {
	w.log(demo.rig)
	for _, p := range demo.products {
		w.log(p)
	}
	for _, m := range demo.mixes {
		w.log(m)
	}
	w.log(&core.Setting{SettingName: core.Theme, Value: "night"})
	for i := range w.lawns {
		w.log(w.lawn(demo.lawns, i))
	}
}

// grasses that the demo's labels allow, the warm ones first.
var grasses = []string{"bermudagrass_common", "zoysiagrass", "bermudagrass_hybrid", "tall_fescue", "kentucky_bluegrass"}

const warmGrasses = 3

func isWarm(grass string) bool {
	for _, g := range grasses[:warmGrasses] {
		if g == grass {
			return true
		}
	}
	return false
}

// neighbours is how many lawns stand beside each other.
const neighbours = 5

// lawn number i, with one to three zones of grasses that stand the same mix.
func (w *writer) lawn(patterns []*core.Lawn, i int) *core.Lawn {
	from := patterns[i%len(patterns)]
	l := &core.Lawn{
		LawnName: fmt.Sprintf("%d %s", 1+i/len(patterns)*2+i%2, street(from)), Customer: fmt.Sprintf("%s %d", from.Customer, i+1),
		Gate: from.Gate, Dog: from.Dog, Phone: fmt.Sprintf("555-01%02d", i%100), KnownSince: "2015-01-01",
	}
	for j := 0; w.lawnNamed(l.LawnName); j++ {
		l.LawnName = fmt.Sprintf("%d %s", 1001+i+j, street(from))
	}
	l.Address = l.LawnName + ", Nettlewick"
	// One street has one grass, so that a route of neighbours needs few changeovers.
	grass := grasses[(i/neighbours*7+i/neighbours/3)%len(grasses)]
	for _, name := range []string{"front", "back", "side"}[:1+w.r.IntN(3)] {
		z := core.Zone{Name: name, Grass: grass, Area: measure.SquareFeet(w.between(1800, 7000, 100)), Growth: "growing", GrowthSince: "2015-03-01"}
		z.Price = core.Known(measure.Dollars(w.between(20, 60, 0.5)))
		if w.chance(3) {
			z.Hazards = []string{"gate"}
		}
		if w.chance(8) {
			z.Sites = []core.Site{{Kind: "water", Feet: core.Known(30.0)}}
		}
		l.Zones = append(l.Zones, z)
	}
	return l
}

func (w *writer) lawnNamed(name string) bool { return w.book.Lawn(name) != nil }

// newYear enters the labels' next versions, the rig as it is now, and some lawns that were measured again.
func (w *writer) newYear(demo invented, n int) {
	for _, p := range demo.products {
		next := *p
		next.Label.Price = core.Known(p.Label.Price.V + measure.Dollars(float64(n)))
		if p.Label.MostTimes.Known || n%3 == 0 {
			next.Label.Reentry = fmt.Sprintf("keep off until dry, as printed in year %d", n+1)
		}
		w.log(&next)
	}
	w.log(demo.rig)
	for range w.lawns / 30 {
		old := w.book.Lawns()[w.r.IntN(w.lawns)]
		next := *old
		next.Zones = append([]core.Zone(nil), old.Zones...)
		z := &next.Zones[w.r.IntN(len(next.Zones))]
		z.Area = measure.SquareFeet(w.between(1800, 7000, 100))
		w.log(&next)
	}
}
