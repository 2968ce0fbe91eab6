package hydraulics

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// anyShape draws a tank of any kind.
func anyShape(t *rapid.T) Shape {
	in := func(name string) Inches { return Inches(rapid.Float64Range(4, 120).Draw(t, name)) }
	share := Inches(rapid.Float64Range(0.05, 1).Draw(t, "share"))
	d := in("diameter")
	switch rapid.IntRange(0, 8).Draw(t, "kind") {
	case 0:
		return Upright{Diameter: d, Tall: d + in("tall"), Bottom: ConicalBottom, BottomDepth: d * share}
	case 1:
		return Upright{Diameter: d, Tall: d + in("tall"), Bottom: EllipsoidalBottom, BottomDepth: d * share}
	case 2:
		return Upright{Diameter: d, Tall: d + in("tall"), Bottom: SphericalBottom, BottomDepth: d / 2 * share}
	case 3:
		return Lying{Diameter: d, Length: in("length"), Head: EllipsoidalHead, HeadDepth: d * share}
	case 4:
		return Lying{Diameter: d, Length: in("length"), Head: DishedHead, HeadDepth: d / 2 * share}
	case 5:
		return Lying{Diameter: d, Length: in("length"), Head: TorisphericalHead, DishRadius: 0.6 + float64(share), KnuckleRadius: 0.4 * float64(share)}
	case 6:
		return Elliptical{Width: d, Tall: in("tall"), Length: in("length"), EndDepth: in("ends")}
	case 7:
		return Obround{Width: d, Tall: in("tall"), Length: in("length")}
	}
	r := d / 2
	up := r * share
	return Slanted{Radius: r, Slant: in("slant"), Wall: in("wall"), CapRadius: (r*r + up*up) / (2 * up), CapHeight: up}
}

// A tank is empty at its bottom, holds more the higher it stands, and a thin layer is what the plan there and its depth make: the
// volume is the integral of a section that never falls below nothing.
func TestShapesFill(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShape(t)
		if err := s.Check(); err != nil {
			t.Fatalf("%+v: %v", s, err)
		}
		full, err := FullVolume(s)
		if err != nil || !(full > 0) {
			t.Fatalf("%+v holds %g (%v)", s, float64(full), err)
		}
		const n = 200
		const tiny = 1e-8 // an obround that is all but round: its straight part is a difference of nearly equal figures
		before, step := Gallons(0), s.Height()/n
		for i := range n + 1 {
			v, err := VolumeAt(s, min(Inches(i)*step, s.Height()))
			if err != nil {
				t.Fatal(err)
			}
			if i == 0 && math.Abs(float64(v)) > 1e-9*float64(full) {
				t.Fatalf("%+v holds %g at the bottom", s, float64(v))
			}
			if v < before-1e-9*full || v > full*(1+tiny) {
				t.Fatalf("%+v: %g gal at step %d after %g, full %g", s, float64(v), i, float64(before), float64(full))
			}
			if i > 0 && v-before > full/4 { // a jump
				t.Fatalf("%+v jumps from %g to %g", s, float64(before), float64(v))
			}
			before = v
		}
	})
}

// What lies and what mirrors itself holds as much below a level as above the mirrored one.
func TestLyingTanksAreSymmetric(t *testing.T) {
	for _, s := range []Shape{
		Lying{Diameter: 108, Length: 156, Head: EllipsoidalHead, HeadDepth: 42},
		Lying{Diameter: 108, Length: 156, Head: DishedHead, HeadDepth: 42},
		Lying{Diameter: 108, Length: 156, Head: ConicalHead, HeadDepth: 42},
		Lying{Diameter: 108, Length: 156, Head: TorisphericalHead, DishRadius: 1, KnuckleRadius: 0.06},
		Elliptical{Width: 48, Tall: 32, Length: 60},
		Obround{Width: 27, Tall: 44, Length: 60},
		Obround{Width: 44, Tall: 27, Length: 60},
	} {
		full, err := FullVolume(s)
		if err != nil {
			t.Fatal(err)
		}
		for _, share := range []Inches{0.01, 0.1, 0.3, 0.5, 0.77} {
			low, _ := VolumeAt(s, s.Height()*share)
			high, _ := VolumeAt(s, s.Height()*(1-share))
			if math.Abs(float64(low+high-full)) > 1e-6*float64(full) {
				t.Errorf("%+v at %g: %g and %g make %g, not %g", s, float64(share), float64(low), float64(high), float64(low+high), float64(full))
			}
		}
	}
	// The same fractions of a lying cylinder in any handbook: 5.20, 14.24, 19.55, 25.23, 37.35 and 50 per cent.
	c := Lying{Diameter: 1, Length: 231}
	full, _ := FullVolume(c)
	for _, row := range [][2]float64{{0.1, 5.20}, {0.2, 14.24}, {0.25, 19.55}, {0.3, 25.23}, {0.4, 37.35}, {0.5, 50}} {
		v, _ := VolumeAt(c, Inches(row[0]))
		if got := 100 * float64(v/full); math.Abs(got-row[1]) > 0.005 {
			t.Errorf("at %g of its height %g per cent, not %g", row[0], got, row[1])
		}
	}
	// A ball: hemispherical heads on no cylinder.
	ball, err := FullVolume(Lying{Diameter: 20, Head: DishedHead, HeadDepth: 10})
	if want := 4.0 / 3 * math.Pi * 1000 / 231; err != nil || math.Abs(float64(ball)-want) > 1e-6*want {
		t.Errorf("a ball holds %g, not %g (%v)", float64(ball), want, err)
	}
}

func TestTanksSayWhatIsWrong(t *testing.T) {
	for _, row := range []struct {
		s        Shape
		depth    Inches
		says, do string
	}{
		{Obround{27, 44, 60}, 45, "A depth of 45 in is above the tank, which is 44 in high.", "0 to 44 in"},
		{Obround{27, 44, 60}, -1, "The depth is -1 in.", "0 or more"},
		{Obround{27, 44, 60}, Inches(math.NaN()), "The depth is NaN in.", "0 or more"},
		{Obround{0, 44, 60}, 1, "The width of the tank is 0 in.", "more than 0"},
		{Elliptical{48, 32, 0, 0}, 1, "The length of the tank is 0 in.", "more than 0"},
		{Elliptical{48, 32, 60, -1}, 1, "The depth of the ends of the tank is -1 in.", "leave it out"},
		{Lying{Diameter: 0, Length: 5}, 1, "The diameter of the tank is 0 in.", "more than 0"},
		{Lying{Diameter: 5, Length: 0}, 1, "The length of the tank is 0 in.", "more than 0"},
		{Lying{Diameter: 5, Length: 5, Head: "pointed", HeadDepth: 1}, 1, `The heads are "pointed".`, "torispherical"},
		{Lying{Diameter: 5, Length: 5, Head: DishedHead, HeadDepth: 3}, 1, "A dished head cannot be 3 in deep.", "2.5 in"},
		{Lying{Diameter: 5, Length: 5, Head: EllipsoidalHead}, 1, "The depth of the heads of the tank is 0 in.", "more than 0"},
		{Lying{Diameter: 5, Length: 5, Head: TorisphericalHead}, 1, "no dish of 0 and knuckle of 0", "0.5 to 100"},
		{Upright{}, 1, "The diameter of the tank is 0 in.", "more than 0"},
		{Upright{Diameter: 5, Length: 5, Width: 5}, 1, "a diameter, and a length", "box"},
		{Upright{Length: 5, Width: 5, Bottom: ConicalBottom, BottomDepth: 2}, 1, "A shaped bottom belongs to a round tank.", "diameter"},
		{Upright{Diameter: 5, Bottom: "round", BottomDepth: 1}, 1, `The bottom is "round".`, "conical"},
		{Upright{Diameter: 5, Tall: 3, Bottom: ConicalBottom, BottomDepth: 4}, 1, "its bottom alone 4 in", "with the bottom"},
		{Upright{Diameter: 5, Bottom: SphericalBottom, BottomDepth: 4}, 1, "A spherical bottom cannot be 4 in deep.", "2.5 in"},
		{Slanted{72, 12, 180, 90, 30}, 1, "in wide below", "stands on the wall"},
		{Slanted{72, 12, 180, 30, 36}, 1, "36 in high with a radius of 30 in", "no higher"},
	} {
		_, err := VolumeAt(row.s, row.depth)
		var e *TankError
		if !errors.As(err, &e) || !strings.Contains(e.What, row.says) || !strings.Contains(e.Do, row.do) {
			t.Errorf("%+v at %g: %+v", row.s, float64(row.depth), err)
		}
	}
}

func TestChart(t *testing.T) {
	marks, err := Chart(Obround{27, 44, 60}, 4)
	if err != nil || len(marks) != 12 || marks[0].Volume != 0 || marks[11].Depth != 44 {
		t.Fatalf("%v %v", marks, err)
	}
	if math.Abs(float64(marks[10].Volume)-254.19798216462135) > 1e-8 { // the row TK-I6
		t.Errorf("at 40 in %g", float64(marks[10].Volume))
	}
	// 43.9 and 44 in cannot be told apart with marks every 4.39 in.
	if marks, _ = Chart(Obround{27, 44, 60}, 4.39); marks[len(marks)-2].Depth > 40 {
		t.Errorf("%v", marks)
	}
	for _, row := range []struct {
		s    Shape
		step Inches
		says string
	}{
		{Obround{27, 44, 60}, 0, "0 in apart"},
		{Obround{27, 44, 60}, 50, "50 in apart"},
		{Obround{27, 44, 60}, 0.1, "at most 200 are kept"},
		{Upright{Diameter: 20}, 1, "The height of the tank is not given."},
		{Obround{27, 0, 60}, 4, "The height of the tank is 0 in."},
	} {
		if _, err := Chart(row.s, row.step); err == nil || !strings.Contains(err.Error(), row.says) {
			t.Errorf("%+v every %g: %v", row.s, float64(row.step), err)
		}
	}
}
