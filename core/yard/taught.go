package yard

import (
	"fmt"
	"math"
	"strconv"

	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/calib"
	"example.com/tintline/core/measure"
)

// Verdicts of what gauges teach, held against how far a delivery rate may be off.
const (
	TaughtNothing = "not yet known" // no reading teaches of it
	TaughtLittle  = "little known"  // fewer readings than are asked for before they are used
	TaughtOpen    = "open"          // it may be within, and it may be past
	TaughtWithin  = "within"
	TaughtPast    = "past"
)

// toldSDs is how many standard deviations a figure has to be from another to be told from it: about 95 in 100.
const toldSDs = 2

// Teaching is what gauges teach.
type Teaching struct {
	Applicators []TaughtOf
	Tanks       []ExpectedIn // compartments of which more is known than what is booked
	Readings    []core.Reading
}

// TaughtOf is what gauges teach of an applicator that sprays, at its delivery rate in force.
type TaughtOf struct {
	core.Taught // Readings is 0 where none teaches of it
	Needed      int
	Delivery    measure.Rate
	Lays        core.Maybe[measure.Rate] // what leaves it as far as the gauges say; known from as many readings as are needed
	Verdict     string
	Says        string   // in one sentence
	Means       []string // on a lawn
	Test        string   // whether a catch test would settle it
	Steps       []batch.Step
}

// ExpectedIn is what a compartment holds as far as all that is known says, beside what is booked.
type ExpectedIn struct {
	Letter               byte
	Booked, Expected, SD measure.Volume
}

// Taught gathers what gauges teach: of each applicator that sprays, of what stands in the compartments, and the readings of
// the day from which it was learned last.
func Taught(b *core.Book) Teaching {
	out := Teaching{Readings: b.Day().Readings}
	if b.Rig() == nil {
		return out
	}
	for _, a := range b.Rig().Applicators {
		if a.Type != core.Spreader && a.Delivery.V > 0 {
			out.Applicators = append(out.Applicators, taughtOf(b, &a))
		}
	}
	p := b.Plumbing()
	for i := range p.Compartments {
		c := &p.Compartments[i]
		if v, sd, ok := b.Expected(c); ok {
			out.Tanks = append(out.Tanks, ExpectedIn{c.Letter, c.Liquid.Volume, v, sd})
		}
	}
	return out
}

// TaughtSays is what gauges teach of an applicator, in one sentence; empty where the rig has none of that name.
func TaughtSays(b *core.Book, applicator string) string {
	a := b.Applicator(applicator)
	if a == nil {
		return ""
	}
	t := taughtOf(b, a)
	return t.Says
}

func taughtOf(b *core.Book, a *core.Applicator) TaughtOf {
	t := TaughtOf{Needed: int(math.Ceil(b.Setting(core.FactorReadings))), Delivery: a.Delivery}
	known, ok := b.Taught(a.Name)
	t.Taught = known
	t.Applicator = a.Name
	if !ok {
		t.Ratio, t.SD = 1, b.Setting(core.FactorErrorPct)/100
	}
	limits := calib.Usual()
	t.Verdict = t.verdict(limits.OffPct / 100)
	if t.Enough {
		t.Lays = core.Known(measure.Rate{V: float64(t.Delivery.V * t.Ratio), Kind: t.Delivery.Kind})
	}
	t.Says = t.says()
	t.Means = t.means(limits)
	t.Test = t.test(limits, b.Plumbing().Tank(a.Name) != nil)
	t.Steps = t.steps(b, limits)
	return t
}

// verdict holds the ratio against a limit, with what is not known of it.
func (t *TaughtOf) verdict(limit float64) string {
	off, open := math.Abs(t.Ratio-1), float64(toldSDs*t.SD)
	switch {
	case t.Readings == 0:
		return TaughtNothing
	case !t.Enough:
		return TaughtLittle
	case off+open <= limit:
		return TaughtWithin
	case off-open > limit:
		return TaughtPast
	}
	return TaughtOpen
}

func (t *TaughtOf) says() string {
	give := "give or take " + share(t.SD)
	switch {
	case t.Readings == 0:
		return "It is not yet known what you put down: no reading of a gauge teaches of it."
	case !t.Enough:
		return fmt.Sprintf("It is not yet known what you put down: %s of the %d that it takes; so far %s than you think, %s.", readings(t.Readings), t.Needed, t.more(), give)
	case math.Abs(t.Ratio-1) <= float64(toldSDs*t.SD):
		return fmt.Sprintf("You put down what you think, as far as %s can tell: %s, %s.", readings(t.Readings), t.more(), give)
	}
	return fmt.Sprintf("You put down %s than you think, %s, from %s.", t.more(), give, readings(t.Readings))
}

// more is by how much more or less goes down.
func (t *TaughtOf) more() string {
	if t.Ratio < 1 {
		return share(1-t.Ratio) + " less"
	}
	return share(t.Ratio-1) + " more"
}

// share is a share as a per cent, to a tenth.
func share(f float64) string {
	return strconv.FormatFloat(math.Round(float64(f*1000))/10, 'f', -1, 64) + " %"
}

func readings(n int) string {
	if n == 1 {
		return "1 reading"
	}
	return fmt.Sprintf("%d readings", n)
}

// means is what it comes to on a lawn.
func (t *TaughtOf) means(l calib.Limits) []string {
	if !t.Lays.Known {
		return []string{fmt.Sprintf("%s gal per 1,000 sq ft is counted.", perThousand(t.Delivery))}
	}
	low, high := t.Delivery, t.Delivery
	low.V, high.V = t.Delivery.V*max(t.Ratio-t.SD, 0), t.Delivery.V*(t.Ratio+t.SD)
	out := []string{fmt.Sprintf("%s gal per 1,000 sq ft is counted, %s goes down, %s to %s give or take.",
		perThousand(t.Delivery), perThousand(t.Lays.V), perThousand(low), perThousand(high))}
	if d, ok := calib.DriftOf(t.Lays.V, t.Delivery, l); ok {
		out = append(out, d.Dose())
	}
	return out
}

func perThousand(r measure.Rate) string { return strconv.FormatFloat(r.GalPer1000(), 'f', 2, 64) }

// test tells whether a catch test would settle what the gauges say. What an applicator with a tank of its own takes is learned
// from jobs that are logged by its gauge.
func (t *TaughtOf) test(l calib.Limits, own bool) string {
	limit := share(l.OffPct / 100)
	read := "read the gauge of the compartment after some lawns that were booked by area"
	if own {
		read = "log a job by the gauge of its tank, before and after"
	}
	switch t.Verdict {
	case TaughtNothing, TaughtLittle:
		return "A catch test tells it today; else " + read + "."
	case TaughtWithin:
		return fmt.Sprintf("That is within %s, give or take included: no catch test is called for.", limit)
	case TaughtPast:
		return fmt.Sprintf("That is past %s, give or take included: make a catch test, then bring it back or take the new rate.", limit)
	}
	return fmt.Sprintf("That may be within %s or past it: a catch test would settle it, or more readings.", limit)
}

// steps is the working.
func (t *TaughtOf) steps(b *core.Book, l calib.Limits) []batch.Step {
	out := []batch.Step{{Says: fmt.Sprintf("before any reading: area times rate, give or take %s (%s)", share(b.Setting(core.FactorErrorPct)/100), b.SettingSource(core.FactorErrorPct))}}
	if t.Readings > 0 {
		out = append(out, batch.Step{Says: fmt.Sprintf("after %s: %s times area times rate, standard deviation %s", readings(t.Readings), digits(t.Ratio), digits(t.SD))})
	}
	if t.Odd > 0 {
		out = append(out, batch.Step{Says: fmt.Sprintf("%s lay more than %s standard deviations off and taught nothing", readings(t.Odd), strconv.FormatFloat(b.Setting(core.FactorOddSDs), 'g', -1, 64))})
	}
	if t.Readings > 0 {
		out = append(out, batch.Step{Says: fmt.Sprintf("held against %s with give or take, which is twice the standard deviation here (%s)", share(l.OffPct/100), calib.SourceOf("rate_off_pct"))})
	}
	if t.Lays.Known {
		out = append(out, batch.Step{Says: fmt.Sprintf("%s gal per 1,000 sq ft times %s = %s gal per 1,000 sq ft", perThousand(t.Delivery), digits(t.Ratio), perThousand(t.Lays.V))})
	}
	return out
}

func digits(f float64) string { return strconv.FormatFloat(f, 'f', 3, 64) }

// Says is what a compartment is expected to hold, in one sentence.
func (e ExpectedIn) Says() string {
	return fmt.Sprintf("%c: %s booked, %s expected, give or take %s", e.Letter, gallons(e.Booked), gallons(e.Expected), gallons(e.SD))
}
