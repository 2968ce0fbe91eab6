package reckon

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/tintline/core/calib"
	"example.com/tintline/core/measure"
)

// caught is what a calibration is reckoned from, in base units.
type caught struct {
	in        *inputs
	width     quantity // um that one run, or one nozzle, covers
	course    quantity // um
	plot      quantity // mm2
	rounded   bool     // plot is the usual rounding of 1/128 acre
	seconds   []float64
	collected []float64 // nL
	used      quantity  // nL over course and width
	flow      quantity  // nL/s
	speed     quantity  // um/s
	dropped   quantity  // ng
	dry       quantity  // ng/mm2
	nitrogen  quantity  // ng/mm2
	percentN  quantity  // share
	percentAI quantity  // share
	drop      quantity  // share by which the speed falls
	tank      quantity  // nL
	allowed   quantity  // share by which a run may differ
}

// catch answers what an applicator puts down, by a catch test.
func catch(in *inputs) (map[string]any, error) {
	c := &caught{in: in}
	for _, step := range []func() error{c.readGround, c.readTurns, c.readTimes, c.readCaught, c.readDry, in.unknown} {
		if err := step(); err != nil {
			return nil, err
		}
	}
	if err := c.even(); err != nil {
		return nil, err
	}
	out := answers{}
	c.ground(out)
	c.pace(out)
	c.wet(out)
	c.weighed(out)
	if c.drop.given {
		out["over_application_pct"] = float64(100 * calib.OverBySlower(c.drop.base))
	}
	if len(out) == 0 {
		return nil, in.missing("a catch (collected_fl_oz), a flow with speed_mph and a width, a weight (lb_delivered), or a width such as swath_ft")
	}
	return out, nil
}

// oneOf reads a quantity that may stand under one of several names.
func (in *inputs) oneOf(unit func(string) (float64, bool), names ...string) (quantity, error) {
	var q quantity
	for _, name := range names {
		next, err := in.one(name, unit, true)
		if err != nil {
			return q, err
		}
		if !next.given {
			continue
		}
		if err := in.twice(q, next); err != nil {
			return q, err
		}
		q = next
	}
	return q, nil
}

func (c *caught) readGround() (err error) {
	in := c.in
	if c.width, err = in.oneOf(plain("length"), "swath_", "spray_width_", "boom_width_", "width_", "band_", "nozzle_spacing_", "pattern_width_"); err != nil {
		return err
	}
	if c.course, err = in.oneOf(plain("length"), "course_", "distance_", "length_"); err != nil {
		return err
	}
	if c.plot, err = in.sides(); err != nil {
		return err
	}
	more, err := in.oneOf(plain("area"), "plot_", "test_area_", "area_", "fraction_", "")
	if err != nil {
		return err
	}
	if err := in.twiceGiven(c.plot, more); err != nil {
		return err
	}
	if more.given {
		c.plot = more
	}
	c.rounded = c.plot.given && math.Abs(c.plot.base/calib.OuncePlot()-1) < roundedPlot
	return nil
}

// roundedPlot is how far the usual roundings of 1/128 acre, 340 and 340.3 sq ft, are from it.
const roundedPlot = 0.001

// twiceGiven refuses a second figure of the same thing.
func (in *inputs) twiceGiven(first, second quantity) error {
	if !second.given {
		return nil
	}
	return in.twice(first, second)
}

// sides reads a plot that is given by its two sides, "plot_ft=18.5,18.5".
func (in *inputs) sides() (quantity, error) {
	for _, key := range in.keys {
		name, ok := strings.CutPrefix(key, "plot_")
		f, known := factor("length", name)
		if !ok || !known || in.taken[key] {
			continue
		}
		both, err := in.list(key)
		if err != nil {
			return quantity{}, err
		}
		if len(both) != 2 || both[0] <= 0 || both[1] <= 0 {
			return quantity{}, &InputError{Key: key, Value: in.value[key], Want: "two sides with a comma, each above 0"}
		}
		return quantity{given: true, key: key, base: calib.AreaOf(both[0]*f, both[1]*f)}, nil
	}
	return quantity{}, nil
}

// readTurns reads a course that a wheel measured.
func (c *caught) readTurns() error {
	in := c.in
	turns, given, err := in.bare("wheel_revolutions", true)
	if err != nil {
		return err
	}
	around, err := in.one("circumference_", plain("length"), true)
	if err != nil {
		return err
	}
	switch {
	case given && !around.given:
		return in.missing("circumference_ft")
	case around.given && !given:
		return in.missing("wheel_revolutions")
	case !given:
		return nil
	}
	course := quantity{given: true, key: "wheel_revolutions", base: turns * around.base}
	if err := in.twice(c.course, course); err != nil {
		return err
	}
	c.course = course
	return nil
}

func (c *caught) readTimes() (err error) {
	in := c.in
	for _, key := range []string{"seconds", "trip_seconds"} {
		if _, given := in.value[key]; !given {
			continue
		}
		if len(c.seconds) > 0 {
			return &InputError{Key: key, Value: in.value[key], Want: "left out, for seconds already gives it"}
		}
		if c.seconds, err = in.list(key); err != nil {
			return err
		}
		if slices.Min(c.seconds) <= 0 {
			return &InputError{Key: key, Value: in.value[key], Want: "above 0"}
		}
	}
	if c.speed, err = in.one("speed_", plain("speed"), true); err != nil {
		return err
	}
	if c.drop, err = in.percent("speed_drop_pct"); err != nil {
		return err
	}
	if c.drop.given && c.drop.base >= 1 {
		return &InputError{Key: c.drop.key, Value: in.value[c.drop.key], Want: "below 100"}
	}
	c.allowed, err = in.percent("allowed_spread_pct")
	return err
}

// percent reads a per cent as a share.
func (in *inputs) percent(key string) (quantity, error) {
	f, given, err := in.bare(key, true)
	return quantity{given: given, key: key, base: f / 100}, err
}

// even refuses runs that differ by more than is allowed. Two trips of a worksheet whose mean counts are taken as they
// are, unless a spread is allowed.
func (c *caught) even() error {
	limits := calib.Usual()
	if c.allowed.given {
		limits.SpreadPct = 100 * c.allowed.base
	} else if c.in.taken["trip_seconds"] {
		return nil
	}
	return calib.Even(c.seconds, limits)
}

func (c *caught) readCaught() (err error) {
	in := c.in
	for _, name := range []string{"collected_", "mean_catch_"} {
		list, key, err := in.listOf(name, plain("volume"))
		if err != nil {
			return err
		}
		if len(list) == 0 {
			continue
		}
		if len(c.collected) > 0 {
			return &InputError{Key: key, Value: in.value[key], Want: "left out, for a catch is given already"}
		}
		c.collected = list
	}
	if c.used, err = in.ending("_used", plain("volume")); err != nil {
		return err
	}
	if c.used.given && len(c.collected) > 0 {
		return &InputError{Key: c.used.key, Value: in.value[c.used.key], Want: "left out, for a catch is given already"}
	}
	if c.flow, err = in.one("", plain("flow"), true); err != nil {
		return err
	}
	c.tank, err = in.one("tank_", plain("volume"), true)
	return err
}

func (c *caught) readDry() (err error) {
	in := c.in
	for _, end := range []string{"_delivered", "_dropped"} {
		q, err := in.ending(end, plain("mass"))
		if err != nil {
			return err
		}
		if err := in.twiceGiven(c.dropped, q); err != nil {
			return err
		}
		if q.given {
			c.dropped = q
		}
	}
	if c.nitrogen, err = in.one("n_", per("mass", "area"), true); err != nil {
		return err
	}
	if c.dry, err = in.one("", per("mass", "area"), true); err != nil {
		return err
	}
	if c.percentN, err = in.percent("percent_n"); err != nil {
		return err
	}
	if c.percentAI, err = in.percent("percent_ai"); err != nil {
		return err
	}
	for _, q := range []quantity{c.percentN, c.percentAI} {
		if q.base > 1 {
			return &InputError{Key: q.key, Value: in.value[q.key], Want: "at most 100"}
		}
	}
	switch {
	case c.nitrogen.given && !c.percentN.given:
		return in.missing("percent_N")
	case c.percentN.given && !c.nitrogen.given:
		return in.missing("N_lb_per_1000_sqft")
	}
	return nil
}

// listOf reads a list of quantities under a prefix and a unit.
func (in *inputs) listOf(prefix string, unit func(string) (float64, bool)) (out []float64, key string, err error) {
	for _, key := range in.keys {
		name, ok := strings.CutPrefix(key, prefix)
		f, known := unit(name)
		if !ok || !known || in.taken[key] {
			continue
		}
		list, err := in.list(key)
		if err != nil {
			return nil, key, err
		}
		if len(out) > 0 {
			return nil, key, &InputError{Key: key, Value: in.value[key], Want: "left out, for it is given already"}
		}
		for _, v := range list {
			out = append(out, v*f)
		}
		if calib.Mean(out) <= 0 {
			return nil, key, &InputError{Key: key, Value: in.value[key], Want: "above 0"}
		}
	}
	return out, key, nil
}

// ending reads a quantity whose unit stands first, "gal_used".
func (in *inputs) ending(end string, unit func(string) (float64, bool)) (q quantity, err error) {
	for _, key := range in.keys {
		name, ok := strings.CutSuffix(key, end)
		f, known := unit(name)
		if !ok || !known || in.taken[key] {
			continue
		}
		if q.given {
			return q, &InputError{Key: key, Value: in.value[key], Want: "left out, for " + q.key + " already gives it"}
		}
		v, err := in.number(key, true)
		if err != nil {
			return q, err
		}
		q = quantity{given: true, key: key, base: v * f}
	}
	return q, nil
}

// area is what was covered: course and width, else the plot, else that of the ounce method.
func (c *caught) area() float64 {
	switch {
	case c.course.given && c.width.given:
		return calib.AreaOf(c.course.base, c.width.base)
	case c.plot.given:
		return c.plot.base
	}
	return calib.OuncePlot()
}

// feetKey names a figure by a length of so many feet: "seconds_100_ft".
func feetKey(stem string, um float64) string {
	return fmt.Sprintf("%s_%.6g_ft", stem, um/float64(measure.Foot))
}
