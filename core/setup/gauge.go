package setup

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// ShapeAllowed says what ReadShape reads.
const ShapeAllowed = "obround 27 x 44 x 60 in, ellipse 48 x 32 x 60 in (width x height x length), lying 36 x 60 in (diameter x length), upright 40 x 50 in (diameter x height) or upright 30 x 20 x 40 in (length x width x height)"

// ReadGauge reads the shape of a tank and, where it is said, how far apart the marks of its gauge are to be: "obround 27 x
// 44 x 60 in, mark every 4 in". The step is 0 where it is not said. The error is a Wrong.
func ReadGauge(text string) (shape hydraulics.Shape, step measure.Length, err error) {
	parts := clauses(text)
	if strings.TrimSpace(text) == "" {
		return nil, 0, wrongShape(text, "")
	}
	for i, p := range parts {
		said, ok := after(p, "marks every ", "mark every ", "every ")
		if !ok {
			continue
		}
		if i != len(parts)-1 || i == 0 {
			return nil, 0, wrongShape(text, "The marks stand last.")
		}
		if step, err = measure.ReadLength(said, "in"); err != nil {
			return nil, 0, &Wrong{What: err.Error(), Do: "Write how far apart the marks are, such as mark every 4 in."}
		}
		if step <= 0 {
			return nil, 0, &Wrong{What: "The marks are 0 in apart.", Do: "Write how far apart the marks are, such as mark every 4 in."}
		}
		parts = parts[:i]
	}
	shape, err = shapeOf(text, parts)
	return shape, step, err
}

// ReadShape reads the shape of a tank by its inside measures: a word, then the measures with x between them. A unit stands
// at each or once at the end; without any they are inches. A round tank may have more after a comma: "lying 36 x 60 in,
// ellipsoidal heads 9 in", "upright 40 x 50 in, cone bottom 8 in". The error is a Wrong.
func ReadShape(text string) (hydraulics.Shape, error) {
	shape, step, err := ReadGauge(text)
	if err == nil && step != 0 {
		return nil, wrongShape(text, "The marks are asked for by themselves.")
	}
	return shape, err
}

// clauses are the parts between commas, in small letters; a comma inside a number parts nothing.
func clauses(text string) []string {
	var out []string
	for _, p := range strings.Split(strings.ToLower(text), ", ") {
		out = append(out, strings.Join(strings.Fields(p), " "))
	}
	return out
}

func after(text string, words ...string) (rest string, ok bool) {
	for _, w := range words {
		if rest, ok = strings.CutPrefix(text, w); ok {
			return rest, true
		}
	}
	return "", false
}

func wrongShape(text, more string) error {
	what := fmt.Sprintf("%q is no shape of a tank.", strings.TrimSpace(text))
	if strings.TrimSpace(text) == "" {
		what = "No shape of a tank is given."
	}
	if more != "" {
		what = fmt.Sprintf("%q cannot be read: %s", strings.TrimSpace(text), strings.ToLower(more[:1])+more[1:])
	}
	return &Wrong{What: what, Do: "Write " + ShapeAllowed + "; inside measures."}
}

// shapeOf makes the shape of the word and measures in the first part and what the others add.
func shapeOf(text string, parts []string) (hydraulics.Shape, error) {
	word, rest, _ := strings.Cut(parts[0], " ")
	m, err := lengths(rest)
	if err != nil {
		return nil, err
	}
	more := parts[1:]
	var shape hydraulics.Shape
	switch {
	case (word == "obround" || word == "oval") && len(m) == 3:
		shape = hydraulics.Obround{Width: m[0], Tall: m[1], Length: m[2]}
	case (word == "ellipse" || word == "elliptical") && len(m) == 3:
		shape = hydraulics.Elliptical{Width: m[0], Tall: m[1], Length: m[2]}
	case word == "lying" && len(m) == 2 && len(more) <= 1:
		return lying(text, hydraulics.Lying{Diameter: m[0], Length: m[1]}, more)
	case (word == "upright" || word == "box") && len(m) == 3:
		shape = hydraulics.Upright{Length: m[0], Width: m[1], Tall: m[2]}
	case word == "upright" && len(m) == 2 && len(more) <= 1:
		return upright(text, hydraulics.Upright{Diameter: m[0], Tall: m[1]}, more)
	default:
		return nil, wrongShape(text, "")
	}
	if len(more) > 0 {
		return nil, wrongShape(text, "Only a lying or an upright round tank has heads or a bottom.")
	}
	return checked(shape)
}

func lying(text string, t hydraulics.Lying, more []string) (hydraulics.Shape, error) {
	for _, p := range more {
		word, rest, _ := strings.Cut(p, " ")
		head, ok := map[string]hydraulics.Head{
			"ellipsoidal": hydraulics.EllipsoidalHead, "dished": hydraulics.DishedHead, "spherical": hydraulics.DishedHead, "conical": hydraulics.ConicalHead, "flat": hydraulics.FlatHead,
		}[word]
		deep, heads := after(rest, "heads ", "head ", "ends ")
		if flat := rest == "heads" || rest == "ends"; head == hydraulics.FlatHead && flat {
			t.Head = head
			continue
		}
		if !ok || !heads {
			return nil, wrongShape(text, "Heads are said as in ellipsoidal heads 9 in.")
		}
		m, err := lengths(deep)
		if err != nil {
			return nil, err
		}
		if len(m) != 1 {
			return nil, wrongShape(text, "Heads have one depth.")
		}
		t.Head, t.HeadDepth = head, m[0]
	}
	return checked(t)
}

func upright(text string, t hydraulics.Upright, more []string) (hydraulics.Shape, error) {
	for _, p := range more {
		word, rest, _ := strings.Cut(p, " ")
		bottom, ok := map[string]hydraulics.Bottom{
			"cone": hydraulics.ConicalBottom, "conical": hydraulics.ConicalBottom, "ellipsoidal": hydraulics.EllipsoidalBottom, "spherical": hydraulics.SphericalBottom, "dished": hydraulics.SphericalBottom,
		}[word]
		deep, has := after(rest, "bottom ")
		if !ok || !has {
			return nil, wrongShape(text, "A bottom is said as in cone bottom 8 in.")
		}
		m, err := lengths(deep)
		if err != nil {
			return nil, err
		}
		if len(m) != 1 {
			return nil, wrongShape(text, "A bottom has one depth.")
		}
		t.Bottom, t.BottomDepth = bottom, m[0]
	}
	return checked(t)
}

// lengths reads measures with x, by or * between them. A measure without a unit has that of the last one.
func lengths(text string) ([]hydraulics.Inches, error) {
	text = strings.NewReplacer("×", " x ", "*", " x ", " by ", " x ").Replace(" " + text + " ")
	texts := strings.Split(text, "x")
	last := strings.TrimLeft(texts[len(texts)-1], " 0123456789.,/-")
	var out []hydraulics.Inches
	for _, t := range texts {
		t = strings.TrimSpace(t)
		if t == "" {
			return nil, &Wrong{What: "A measure is missing.", Do: "Write the inside measures with x between them, such as 27 x 44 x 60 in."}
		}
		l, err := measure.ReadLength(t, "")
		if err != nil {
			if _, bare := measure.ReadFigure(t); bare && !strings.ContainsAny(last, "0123456789") {
				l, err = measure.ReadLength(t+" "+last, "in")
			}
		}
		if err != nil {
			return nil, &Wrong{What: err.Error(), Do: "Write the inside measures with x between them, such as 27 x 44 x 60 in."}
		}
		out = append(out, hydraulics.Inches(l.Inches()))
	}
	return out, nil
}

func checked(s hydraulics.Shape) (hydraulics.Shape, error) {
	if err := s.Check(); err != nil {
		return nil, tankWrong(err)
	}
	return s, nil
}

// tankWrong gives what is wrong with a tank's measures as every form says it.
func tankWrong(err error) error {
	var t *hydraulics.TankError
	if errors.As(err, &t) {
		return &Wrong{What: t.What, Do: t.Do}
	}
	return err
}

// MarksOf is the chart of a gauge by the shape of its tank, a mark at each step of depth, and what its marks are:
// core.MarksCentims where the step is a whole number of millimetres and of no eighths of an inch, else core.MarksInches.
// A chart ends at the capacity: where the shape holds more, its last mark is the depth at which the capacity is reached, to a
// tenth below. Refused as a Wrong: a step of nothing or too many marks, and a shape that holds less than half the capacity or
// more than twice as much, for then it is another tank.
func MarksOf(shape hydraulics.Shape, step measure.Length, capacity measure.Volume) (marks []core.GaugeMark, unit string, err error) {
	unit, each := core.MarksInches, measure.Inch
	if step%(measure.Inch/8) != 0 && step%measure.Millimetre == 0 {
		unit, each = core.MarksCentims, measure.Centimetre
	}
	chart, err := hydraulics.Chart(shape, hydraulics.Inches(step.Inches()))
	if err != nil {
		return nil, "", tankWrong(err)
	}
	full := chart[len(chart)-1].Volume.Volume()
	if full < capacity/2 || full/2 > capacity {
		return nil, "", &Wrong{
			What: fmt.Sprintf("The shape holds %s gal, the compartment %s gal.", full.Text(), capacity.Text()),
			Do:   "Measure the tank inside, or give the capacity anew.",
		}
	}
	perInch := float64(measure.Inch) / float64(each)
	for _, m := range chart {
		v := m.Volume.Volume()
		if v <= capacity {
			marks = append(marks, core.GaugeMark{Mark: depthText(float64(m.Depth) * perInch), Volume: v})
			continue
		}
		if last, ok := markAt(shape, capacity, perInch); ok && len(marks) > 0 && last.Volume > marks[len(marks)-1].Volume {
			marks = append(marks, last)
		}
		break
	}
	return marks, unit, nil
}

// markAt is the mark, a tenth of the unit at most below it, at which the shape holds the capacity.
func markAt(shape hydraulics.Shape, capacity measure.Volume, perInch float64) (core.GaugeMark, bool) {
	low, high := 0.0, float64(shape.Height())
	for range 60 {
		mid := (low + high) / 2
		if v, err := hydraulics.VolumeAt(shape, hydraulics.Inches(mid)); err == nil && v.Volume() <= capacity {
			low = mid
		} else {
			high = mid
		}
	}
	tenths := math.Floor(low * perInch * 10)
	v, err := hydraulics.VolumeAt(shape, hydraulics.Inches(tenths/10/perInch))
	return core.GaugeMark{Mark: depthText(tenths / 10), Volume: v.Volume()}, err == nil
}

// depthText writes a depth to a thousandth.
func depthText(d float64) string {
	return strconv.FormatFloat(math.Round(d*1000)/1000, 'f', -1, 64)
}
