package hydraulics

import (
	"fmt"
	"math"
)

// Inches is a length in inches; of a tank, an inside one. Depths count from its lowest inside point.
type Inches float64

// TankError says in one sentence what is wrong with the measures of a tank or a depth in it, and in another what to do.
type TankError struct{ What, Do string }

func (e *TankError) Error() string { return e.What }

func tankError(do, format string, args ...any) error {
	return &TankError{What: fmt.Sprintf(format, args...), Do: do}
}

// cubicInches in a US gallon, exactly (NIST Handbook 44, Appendix C).
const cubicInches = 231

// Shape is a tank of which the volume up to a depth is known.
type Shape interface {
	// Height is the depth of the full tank; 0 where its top is not given.
	Height() Inches
	// Check refuses measures that make no tank, with a TankError.
	Check() error
	// below is the volume up to a depth within the height, in cubic inches.
	below(h float64) float64
}

// VolumeAt is what a tank holds when it is filled to a depth. The error is a TankError: measures that make no tank, a
// depth below its bottom or above its top.
func VolumeAt(s Shape, depth Inches) (Gallons, error) {
	if err := s.Check(); err != nil {
		return 0, err
	}
	top := s.Height()
	if !(depth >= 0) || math.IsInf(float64(depth), 0) {
		return 0, tankError("Give a depth of 0 or more.", "The depth is %s in.", inchText(depth))
	}
	if top > 0 && depth > top {
		return 0, tankError(fmt.Sprintf("Give a depth of 0 to %s in.", inchText(top)), "A depth of %s in is above the tank, which is %s in high.", inchText(depth), inchText(top))
	}
	return Gallons(s.below(float64(depth)) / cubicInches), nil
}

// FullVolume is what a tank holds that is full; 0 where its top is not given.
func FullVolume(s Shape) (Gallons, error) { return VolumeAt(s, s.Height()) }

// Mark is a depth and the volume up to it.
type Mark struct {
	Depth  Inches
	Volume Gallons
}

// MostMarks is how many marks a chart may have.
const MostMarks = 200

// Chart gives the marks of a gauge, one at each step of depth from the bottom, and one at the top. A last step that would
// stand within a tenth of a step of the top is left out: two marks so close cannot be told apart. The error is a TankError.
func Chart(s Shape, step Inches) ([]Mark, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	top := s.Height()
	if top <= 0 {
		return nil, tankError("Give how high the tank is inside.", "The height of the tank is not given.")
	}
	if !(step > 0) || step > top {
		return nil, tankError(fmt.Sprintf("Give more than 0 and up to %s in.", inchText(top)), "The marks are to be %s in apart.", inchText(step))
	}
	if n := float64(top / step); n > MostMarks {
		return nil, tankError(fmt.Sprintf("Give %s in or more.", inchText(top/MostMarks)), "Marks every %s in would be %.0f; at most %d are kept.", inchText(step), n, MostMarks)
	}
	var out []Mark
	for i := 0; ; i++ {
		h := Inches(float64(i)) * step
		if h > top-step/10 {
			break
		}
		out = append(out, Mark{h, Gallons(s.below(float64(h)) / cubicInches)})
	}
	return append(out, Mark{top, Gallons(s.below(float64(top)) / cubicInches)}), nil
}

// inchText writes a length with what digits it has, up to six.
func inchText(v Inches) string { return fmt.Sprintf("%.6g", float64(v)) }

// measured is a measure by its name.
type measured struct {
	name string
	v    Inches
}

// positive refuses the first measure that is no length above 0.
func positive(list ...measured) error {
	for _, m := range list {
		if !(m.v > 0) || math.IsInf(float64(m.v), 0) {
			return tankError("Give it in inches, more than 0.", "The %s of the tank is %s in.", m.name, inchText(m.v))
		}
	}
	return nil
}

func notNegative(name string, v Inches) error {
	if !(v >= 0) || math.IsInf(float64(v), 0) {
		return tankError("Give it in inches, or leave it out.", "The %s of the tank is %s in.", name, inchText(v))
	}
	return nil
}
