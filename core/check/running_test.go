package check

import (
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// TestRunning follows a changeover of 1.86 gal into b and 0.79 into a at 2.5 gpm by hand: 2.5 gpm is a gallon in 24 s.
func TestRunning(t *testing.T) {
	c := &Changeover{
		Arrives: measure.Gallons(1.72), Half: measure.Gallons(1.86), Clean: measure.Gallons(2.64), PushBack: measure.Gallons(2.65),
		TintBy: measure.Gallons(2.22), Legs: []Leg{{Into: 'b', Volume: measure.Gallons(1.86)}, {Into: 'a', Volume: measure.Gallons(0.79)}},
	}
	for _, tc := range []struct {
		s     float64
		stage string
		into  byte
		turn  float64
		togo  float64
		late  bool
	}{
		{0, StageOld, 'b', 1.86, 2.65, false},
		{24, StageOld, 'b', 0.86, 1.65, false},
		{42, StageArriving, 'b', 0.11, 0.90, false},
		{48, StageArriving, 'a', 0, 0.65, false},
		{60, StageArriving, 'a', 0, 0.15, true},
		{66, StageClean, 'a', 0, 0, true},
	} {
		p := Running(c, measure.GPM(2.5), tc.s)
		if p.Stage != tc.stage || p.Into != tc.into || p.Late != tc.late || !near(p.Turn.Gallons(), tc.turn) || !near(p.ToGo.Gallons(), tc.togo) || !near(p.ToGoS, tc.togo*24) {
			t.Errorf("after %v s: %+v", tc.s, p)
		}
	}
}

func near(a, b float64) bool { return a-b < 0.001 && b-a < 0.001 }

func TestPushedLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := &Changeover{}
		for range rapid.IntRange(1, 3).Draw(t, "legs") {
			c.Legs = append(c.Legs, Leg{Into: byte(rapid.IntRange('a', 'f').Draw(t, "into")), Volume: measure.Volume(rapid.Int64Range(1, 1e10).Draw(t, "leg"))})
		}
		v := measure.Volume(rapid.Int64Range(1, 3e10).Draw(t, "pushed"))
		var sum measure.Volume
		for i, f := range Pushed(c, v) {
			p := f.(*core.PushedBack)
			if p.Into != c.Legs[i].Into || p.Volume <= 0 {
				t.Fatalf("leg %d goes into %c: %v", i, p.Into, p.Volume)
			}
			sum += p.Volume
		}
		if sum != v {
			t.Fatalf("%v pushed, %v logged", v, sum)
		}
	})
}
