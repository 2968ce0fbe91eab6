package season

import (
	"fmt"
	"math"
	"strings"
	"unicode/utf8"

	"example.com/tintline/core/measure"
)

// Chart is a plot of bars that lie on their side, one a line, with the figure beside each. It depends on no colour.
type Chart struct {
	Title string
	Unit  string // of the axis
	Bars  []Bar
	Both  bool // values go to both sides of a line in the middle: below it to the left
	None  string
}

// Bar is one of them. Says is the figure as it is printed.
type Bar struct {
	Name  string
	Value float64
	Says  string
}

// leastBar is the narrowest a bar's place may be before names are cut, in cells.
const leastBar = 10

// Lines draws the chart in so many cells: a line for each bar, and the axis below. Full is the sign of a bar, rule that of the axis,
// edge that of the line from which bars begin.
func (c *Chart) Lines(width int, full, rule, edge rune) []string {
	if len(c.Bars) == 0 {
		return nil
	}
	name, says := 0, 0
	for i := range c.Bars {
		b := &c.Bars[i]
		name, says = max(name, utf8.RuneCountInString(b.Name)), max(says, utf8.RuneCountInString(b.Says))
	}
	name = max(min(name, width-says-3-leastBar), 0)
	room := max(width-name-says-3, 1)
	axis := c.axis()
	var out []string
	for i := range c.Bars {
		b := &c.Bars[i]
		out = append(out, strings.TrimRight(fmt.Sprintf("%s %s %s", left(b.Name, name), right(b.Says, says), c.bar(b.Value, axis, room, full, edge)), " "))
	}
	pad := strings.Repeat(" ", name+says+2)
	out = append(out, pad+c.line(room, rule, edge), pad+c.ticks(axis, room))
	return out
}

// paperBar is how many signs the longest bar on paper has.
const paperBar = 30

// barsOnly are the bars alone, for a table that has the figures beside them.
func (c *Chart) barsOnly(full, edge rune) []string {
	axis := c.axis()
	out := make([]string, len(c.Bars))
	for i := range c.Bars {
		out[i] = c.bar(c.Bars[i].Value, axis, paperBar, full, edge)
	}
	return out
}

func (c *Chart) axisWords() string {
	end := plainFigure(c.axis()) + " " + c.Unit
	if c.Both {
		return "from -" + plainFigure(c.axis()) + " to +" + end
	}
	return "0 to " + end
}

// axis is the value at the end of the axis.
func (c *Chart) axis() float64 {
	most := 0.0
	for i := range c.Bars {
		if v := math.Abs(c.Bars[i].Value); !math.IsNaN(v) && !math.IsInf(v, 0) {
			most = max(most, v)
		}
	}
	return niceEnd(most)
}

// bar is the bar itself. What is above nothing has at least one sign, so that it is seen.
func (c *Chart) bar(v, axis float64, room int, full, edge rune) string {
	if math.IsNaN(v) || math.IsInf(v, 0) || axis <= 0 {
		v, axis = 0, 1
	}
	side := room
	if c.Both {
		side = room / 2
	}
	n := int(math.Round(float64(math.Abs(v) / axis * float64(side))))
	if n == 0 && v != 0 {
		n = 1
	}
	n = min(n, side)
	signs := strings.Repeat(string(full), n)
	switch {
	case !c.Both:
		return string(edge) + signs
	case v < 0:
		return strings.Repeat(" ", side-n) + signs + string(edge)
	}
	return strings.Repeat(" ", side) + string(edge) + signs
}

func (c *Chart) line(room int, rule, edge rune) string {
	if c.Both {
		return strings.Repeat(string(rule), room/2) + string(edge) + strings.Repeat(string(rule), room/2)
	}
	return string(edge) + strings.Repeat(string(rule), room)
}

// ticks names the ends of the axis with its unit.
func (c *Chart) ticks(axis float64, room int) string {
	end := plainFigure(axis)
	if c.Both {
		l, r := "-"+end, "+"+end+" "+c.Unit
		half := room / 2
		gap := half - utf8.RuneCountInString(l)
		rest := half - utf8.RuneCountInString(r)
		if gap < 0 || rest < 0 {
			return l + " 0 " + r
		}
		return l + strings.Repeat(" ", gap) + "0" + strings.Repeat(" ", rest) + r
	}
	r := end + " " + c.Unit
	if gap := room - utf8.RuneCountInString(r); gap > 0 {
		return "0" + strings.Repeat(" ", gap) + r
	}
	return "0 " + r
}

// niceEnd is the end of an axis: 1, 2, 2.5 or 5 times a power of ten, at or above the largest value.
func niceEnd(most float64) float64 {
	if !(most > 0) {
		return 1
	}
	ten := math.Pow(10, math.Floor(math.Log10(most)))
	for _, n := range []float64{1, 2, 2.5, 5, 10} {
		if end := float64(n * ten); most <= end*(1+1e-9) {
			return end
		}
	}
	return float64(10 * ten)
}

func plainFigure(f float64) string {
	return strings.TrimSuffix(strings.TrimRight(measure.Commas(f, 4), "0"), ".")
}

func left(s string, w int) string {
	n := utf8.RuneCountInString(s)
	if n > w {
		return string([]rune(s)[:w])
	}
	return s + strings.Repeat(" ", w-n)
}

func right(s string, w int) string { return strings.Repeat(" ", w-utf8.RuneCountInString(s)) + s }
