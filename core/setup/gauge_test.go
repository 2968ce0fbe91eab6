package setup

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

func TestReadShape(t *testing.T) {
	for _, row := range []struct {
		text string
		want hydraulics.Shape
	}{
		{"obround 27 x 44 x 60 in", hydraulics.Obround{Width: 27, Tall: 44, Length: 60}},
		{"Oval 27x44x60", hydraulics.Obround{Width: 27, Tall: 44, Length: 60}},
		{"obround 27 by 44 by 5 ft", hydraulics.Obround{Width: 324, Tall: 528, Length: 60}},
		{`ellipse 48" x 2 ft 8 in x 60 in`, hydraulics.Elliptical{Width: 48, Tall: 32, Length: 60}},
		{"elliptical 48 × 32 × 60", hydraulics.Elliptical{Width: 48, Tall: 32, Length: 60}},
		{"lying 36 x 60 in", hydraulics.Lying{Diameter: 36, Length: 60}},
		{"lying 36 x 60 in, flat heads", hydraulics.Lying{Diameter: 36, Length: 60, Head: hydraulics.FlatHead}},
		{"lying 36 1/2 x 60 in, dished heads 4 in", hydraulics.Lying{Diameter: 36.5, Length: 60, Head: hydraulics.DishedHead, HeadDepth: 4}},
		{"lying 127 x 254 cm, ellipsoidal ends 25.4 cm", hydraulics.Lying{Diameter: 50, Length: 100, Head: hydraulics.EllipsoidalHead, HeadDepth: 10}},
		{"upright 40 x 50 in", hydraulics.Upright{Diameter: 40, Tall: 50}},
		{"upright 40 x 50 in, cone bottom 8 in", hydraulics.Upright{Diameter: 40, Tall: 50, Bottom: hydraulics.ConicalBottom, BottomDepth: 8}},
		{"upright 30 x 20 x 40 in", hydraulics.Upright{Length: 30, Width: 20, Tall: 40}},
		{"box 30 x 20 x 40", hydraulics.Upright{Length: 30, Width: 20, Tall: 40}},
	} {
		got, err := ReadShape(row.text)
		if err != nil || got != row.want {
			t.Errorf("%s: %+v (%v), want %+v", row.text, got, err, row.want)
		}
	}
}

func TestReadGauge(t *testing.T) {
	s, step, err := ReadGauge("obround 27 x 44 x 60 in, mark every 4 in")
	if err != nil || step != 4*measure.Inch || s != (hydraulics.Obround{Width: 27, Tall: 44, Length: 60}) {
		t.Errorf("%+v %d %v", s, step, err)
	}
	if _, step, err = ReadGauge("lying 36 x 60, flat heads, marks every 10 cm"); err != nil || step != 10*measure.Centimetre {
		t.Errorf("%d %v", step, err)
	}
	if _, step, err = ReadGauge("lying 36 x 60"); err != nil || step != 0 {
		t.Errorf("%d %v", step, err)
	}
}

func TestReadShapeSaysWhatIsWrong(t *testing.T) {
	for _, row := range []struct{ text, says, do string }{
		{"", "No shape of a tank is given.", "obround 27 x 44"},
		{"moulded 3 x 4", `"moulded 3 x 4" is no shape of a tank.`, "inside measures"},
		{"obround", "A measure is missing.", "27 x 44 x 60 in"},
		{"lying 36 x", "A measure is missing.", "27 x 44 x 60 in"},
		{"obround 27 x 44 in", "is no shape of a tank.", "width x height x length"},
		{"obround 27 x 44 x 0 in", "The length of the tank is 0 in.", "more than 0"},
		{"obround 27 x -4 x 60 in", "less than nothing", "inside measures"},
		{"obround 27 x 44 x 60 gal", "gal", "inside measures"},
		{"obround 27 x 44 x 60 in, cone bottom 8 in", "only a lying or an upright round tank", "Write"},
		{"obround 27 x 44 x 60 in, mark every 0 in", "The marks are 0 in apart.", "mark every 4 in"},
		{"obround 27 x 44 x 60 in, mark every mile or so", "does not begin with a number", "mark every 4 in"},
		{"mark every 4 in", "the marks stand last", "Write"},
		{"lying 36 x 60 in, dished heads 20 in", "A dished head cannot be 20 in deep.", "half the diameter, 18 in"},
		{"lying 36 x 60 in, pointed heads 20 in", "heads are said as in", "Write"},
		{"upright 40 x 50 in, cone bottom 60 in", "its bottom alone 60 in", "with the bottom"},
		{"upright 40 x 50 in, bottom", "a bottom is said as in", "Write"},
	} {
		_, _, err := ReadGauge(row.text)
		var w *Wrong
		if !errors.As(err, &w) || !strings.Contains(w.What, row.says) || !strings.Contains(w.Do, row.do) {
			t.Errorf("%q: %+v", row.text, err)
		}
	}
	if _, err := ReadShape("obround 27 x 44 x 60 in, mark every 4 in"); err == nil {
		t.Error("a shape with marks is read as a shape alone")
	}
}

func TestMarksOf(t *testing.T) {
	s := hydraulics.Obround{Width: 27, Tall: 44, Length: 60}
	full, _ := hydraulics.FullVolume(s)
	marks, unit, err := MarksOf(s, 4*measure.Inch, 300*measure.USGallon)
	if err != nil || unit != core.MarksInches || len(marks) != 12 || marks[10].Mark != "40" || marks[11].Mark != "44" || marks[0] != (core.GaugeMark{Mark: "0"}) {
		t.Fatalf("%v %s %v", marks, unit, err)
	}
	if got := marks[10].Volume.Gallons(); math.Abs(got-254.19798216462135) > 1e-6 { // quadrature of chord widths
		t.Errorf("40 in: %g gal", got)
	}
	if marks[11].Volume != full.Volume() {
		t.Error("the last mark is not the full tank")
	}
	marks, unit, err = MarksOf(s, 10*measure.Centimetre, 300*measure.USGallon)
	if err != nil || unit != core.MarksCentims || marks[1].Mark != "10" || marks[len(marks)-1].Mark != "111.76" {
		t.Errorf("%v %s %v", marks, unit, err)
	}
	// A compartment that is entered with less than its shape holds ends where it is full.
	marks, _, err = MarksOf(s, 4*measure.Inch, 240*measure.USGallon)
	last := marks[len(marks)-1]
	if err != nil || last.Volume > 240*measure.USGallon || last.Volume < 239*measure.USGallon || last.Mark != "37.4" {
		t.Errorf("%v %v", marks, err)
	}
	for _, row := range []struct {
		step     measure.Length
		capacity measure.Volume
		says     string
	}{
		{0, 300 * measure.USGallon, "0 in apart"},
		{measure.Inch / 100, 300 * measure.USGallon, "at most 200 are kept"},
		{60 * measure.Inch, 300 * measure.USGallon, "60 in apart"},
		{4 * measure.Inch, 30 * measure.USGallon, "the compartment 30.0 gal"},
		{4 * measure.Inch, 900 * measure.USGallon, "the compartment 900.0 gal"},
	} {
		if _, _, err := MarksOf(s, row.step, row.capacity); err == nil || !strings.Contains(err.Error(), row.says) {
			t.Errorf("step %d: %v", row.step, err)
		}
	}
}

// Whatever is typed makes a tank that can be filled, or two sentences.
func FuzzReadGauge(f *testing.F) {
	for _, text := range []string{"obround 27 x 44 x 60 in, mark every 4 in", "lying 36 x 60, dished heads 4", "upright 1 x 1e9 x 3 mi", "ellipse x x x", ", , ,", "every 4", "lying 3,6 x 1/0"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, step, err := ReadGauge(text)
		if err != nil {
			var w *Wrong
			if !errors.As(err, &w) || w.What == "" || w.Do == "" {
				t.Fatalf("%q: %#v", text, err)
			}
			return
		}
		full, err := hydraulics.FullVolume(s)
		if err != nil || math.IsNaN(float64(full)) || full < 0 || step < 0 {
			t.Fatalf("%q: %+v holds %g (%v)", text, s, float64(full), err)
		}
		if step > 0 {
			marks, _, err := MarksOf(s, step, full.Volume())
			for i := range marks {
				if i > 0 && marks[i].Volume < marks[i-1].Volume {
					t.Fatalf("%q: %v (%v)", text, marks, err)
				}
			}
		}
	})
}
