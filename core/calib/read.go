package calib

import (
	"strings"

	"example.com/tintline/core/measure"
)

// Allowed says what may be typed for a test of a kind.
func Allowed(kind string) string {
	switch kind {
	case RideOn:
		return "40 41 s 15 15.5 16 fl oz for 30 s 200 ft x 80 in 40 psi: runs, each nozzle, ground, pressure"
	case Spreader:
		return "1.5 lb on 100 ft x 3 ft, with pans 2 5 5 2 apart 12 in"
	}
	return "77 79 78 s 5.25 gal 200 ft x 5 ft 40 psi: runs, the catch, ground, pressure"
}

// ReadCatch reads a test as it is typed in one line, over what was known before: course, swath, pressure and what else it
// does not name stay. Numbers stand before the unit that they have in common: "77 79 78 s 5.25 gal 200 ft x 5 ft 40 psi".
func ReadCatch(text string, c Catch) (Catch, error) {
	r := &catchReader{c: c, kind: c.Kind, typed: text}
	spaced := strings.NewReplacer(",", " ", ";", " ", " by ", " x ").Replace(" " + strings.ToLower(text) + " ")
	words := strings.Fields(spaced)
	for i := 0; i < len(words); i++ {
		w := words[i]
		if i+1 < len(words) && (w == "fl" || w == "sq") {
			i++
			w += " " + words[i]
		}
		if err := r.word(w); err != nil {
			return c, err
		}
	}
	if err := r.pan(); err != nil {
		return c, err
	}
	if len(r.numbers) > 0 {
		return c, r.not("It is not said what %s is.", strings.Join(r.numbers, " "))
	}
	if r.pans != nil {
		r.c.Pans = r.pans
	}
	return r.c, nil
}

// catchReader reads word for word.
type catchReader struct {
	c       Catch
	kind    string
	typed   string
	numbers []string
	mode    string // "for", "x", "pans", "apart", "rated": what the next quantity is
	pans    []float64
	caught  bool // a catch is among what was typed
	runs    bool // the runs that were known have made way
}

func (r *catchReader) not(format string, args ...any) error {
	return measure.Troublef("Type "+Allowed(r.kind)+".", format, args...)
}

func (r *catchReader) word(w string) error {
	switch w {
	case "for", "x", "apart", "rated":
		r.mode = w
		return r.pan()
	case "pans":
		r.mode, r.pans = w, []float64{}
		return nil
	case "on", "at", "caught", "runs":
		return r.pan()
	}
	number, unit := w, ""
	for i, c := range w {
		if !strings.ContainsRune("0123456789.:/", c) {
			number, unit = w[:i], w[i:]
			break
		}
	}
	if number != "" {
		r.numbers = append(r.numbers, number)
	}
	if unit == "" {
		return nil
	}
	if len(r.numbers) == 0 {
		return r.not("%q is not known here.", w)
	}
	if r.mode == "pans" {
		if err := r.pan(); err != nil {
			return err
		}
	}
	list := r.numbers
	r.numbers = nil
	return r.quantity(list, unit)
}

// pan ends the list of pans.
func (r *catchReader) pan() error {
	if r.pans == nil || len(r.numbers) == 0 {
		return nil
	}
	for _, n := range r.numbers {
		f, err := measure.ParseNumber(n)
		if err != nil {
			return r.not("%q is no amount of a pan.", n)
		}
		r.pans = append(r.pans, f)
	}
	r.numbers = nil
	return nil
}

func (r *catchReader) quantity(list []string, unit string) error {
	mode := r.mode
	r.mode = ""
	switch unit {
	case "s", "sec", "secs", "second", "seconds":
		return r.seconds(list, mode)
	case "psi", "bar", "kpa":
		p, err := measure.ReadPressure(one(list)+" "+unit, "")
		if err != nil || len(list) != 1 {
			return r.not("%q is no pressure.", strings.Join(list, " ")+" "+unit)
		}
		r.c.PSI = measure.Known(p.PSI())
		if f, err := measure.ParseNumber(one(list)); err == nil && unit == "psi" {
			r.c.PSI = measure.Known(f) // as it stands, so that 40 is not 39.99
		}
		return nil
	case "gpm":
		q, err := measure.ReadFlow(one(list), "gpm")
		if err != nil || len(list) != 1 {
			return r.not("%q is no flow.", strings.Join(list, " ")+" "+unit)
		}
		r.c.Rated = measure.Known(q)
		return nil
	}
	if l, err := measure.ReadLength(one(list)+" "+unit, ""); err == nil && len(list) == 1 {
		return r.length(l, mode)
	}
	if a, err := measure.ReadArea(one(list)+" "+unit, ""); err == nil && len(list) == 1 {
		r.c.Plot, r.c.Course, r.c.Swath = a, 0, 0
		return nil
	}
	if r.kind == Spreader {
		return r.weights(list, unit)
	}
	return r.volumes(list, unit)
}

func one(list []string) string { return list[0] }

func (r *catchReader) seconds(list []string, mode string) error {
	var out []float64
	for _, n := range list {
		s, err := measure.ReadSeconds(n)
		if err != nil {
			return err
		}
		out = append(out, s)
	}
	if mode == "for" {
		if len(out) != 1 {
			return r.not("It was caught for %s s: one time is needed.", strings.Join(list, ", "))
		}
		r.c.CaughtFor = measure.Known(out[0])
		return nil
	}
	if !r.runs {
		r.c.Runs, r.runs = nil, true
	}
	r.c.Runs = append(r.c.Runs, out...)
	return nil
}

func (r *catchReader) length(l measure.Length, mode string) error {
	switch mode {
	case "x":
		r.c.Swath = l
	case "apart":
		r.c.Apart = l
	default:
		r.c.Course, r.c.Plot = l, 0
	}
	return nil
}

func (r *catchReader) volumes(list []string, unit string) error {
	if unit == "oz" {
		unit = "fl oz"
	}
	var out []measure.Volume
	for _, n := range list {
		v, err := measure.ReadVolume(n+" "+unit, "")
		if err != nil {
			return err
		}
		out = append(out, v)
	}
	if r.caught && len(out) == 1 && len(r.c.Caught) == 1 { // "1 gal 20 fl oz" is one catch
		r.c.Caught = []measure.Volume{r.c.Caught[0] + out[0]}
		return nil
	}
	if r.caught {
		return r.not("Two lists of catches are given.")
	}
	r.c.Caught, r.caught = out, true
	return nil
}

func (r *catchReader) weights(list []string, unit string) error {
	var out []measure.Mass
	for _, n := range list {
		m, err := measure.ReadMass(n+" "+unit, "")
		if err != nil {
			return err
		}
		out = append(out, m)
	}
	r.c.Weighed = out
	return nil
}
