package core

import (
	"fmt"
	"math"
	"sort"
	"strconv"
	"strings"

	"example.com/tintline/core/measure"
)

// Rounding is by how much a sum or a dose may be above a limit: rounding of rates as printed, no allowance. common
// practice, no source.
const Rounding = 1.005

// question is what is added up over a zone's past.
type question struct {
	x    *Season
	kind measure.Kind
	days Maybe[float64] // the label's own period; unknown: the calendar year
	dose float64        // of one more application, where none is planned
	// counts tells whether something holds what is asked about, value how much of it, on the part that got most.
	counts func(*Went) bool
	value  func(*Went) Maybe[float64]
}

// from is the first day of the period that ends on a day.
func (q *question) from(day int) string {
	if q.days.Known {
		return dateOf(day - int(q.days.V) + 1)
	}
	return firstOfYear(dateOf(day))
}

// total is a sum over rounds: of each the largest part.
type total struct {
	rate    float64
	unknown []Went // of which the value is not known
}

type roundKey struct{ product, round int32 }

func (q *question) total(past, plan []Went, from string) (t total) {
	var rounds []roundKey
	var most []float64
	add := func(w *Went) {
		if w.Date < from || !q.counts(w) {
			return
		}
		v := q.value(w)
		if !v.Known || w.Area == 0 {
			t.unknown = append(t.unknown, *w)
			return
		}
		key := roundKey{w.Product, w.Round}
		for i := len(rounds) - 1; i >= 0; i-- {
			if rounds[i] == key {
				most[i] = max(most[i], v.V)
				return
			}
		}
		rounds, most = append(rounds, key), append(most, v.V)
	}
	for i := range past {
		add(&past[i])
	}
	for i := range plan {
		add(&plan[i])
	}
	for _, m := range most {
		t.rate += m
	}
	return t
}

func (q *question) sum(past, plan []Went, from string) Maybe[measure.Rate] {
	t := q.total(past, plan, from)
	return Maybe[measure.Rate]{V: measure.Rate{V: t.rate, Kind: q.kind}, Known: len(t.unknown) == 0}
}

// fill answers all that a line says.
func (q *question) fill(line *SeasonLine) {
	x := q.x
	line.From, line.To = q.from(x.day), x.at
	t := q.total(x.past, nil, line.From)
	line.AtLeast = measure.Rate{V: t.rate, Kind: q.kind}
	line.Sum = Maybe[measure.Rate]{V: line.AtLeast, Known: len(t.unknown) == 0}
	line.With = q.sum(x.past, x.plan, line.From)
	for i := range t.unknown {
		w := &t.unknown[i]
		why := x.s.products[w.Product].Name
		if w.Area == 0 {
			why += ", poured out on " + w.Date
		}
		if !containsText(line.Unknown, why) {
			line.Unknown = append(line.Unknown, why)
		}
	}
	if x.known > line.From {
		line.UnknownBefore = x.known
	}
	line.Times, line.TimesWith = q.times(x.past, nil, line.From), q.times(x.past, x.plan, line.From)
	if line.Limit.Known {
		line.Left = Known(measure.Rate{V: max(line.Limit.V.V-t.rate, 0), Kind: q.kind})
		line.Room = Known(measure.Rate{V: max(line.Limit.V.V-q.others(line.From), 0), Kind: q.kind})
		if line.Limit.V.V > 0 {
			line.Share = Known(t.rate / line.Limit.V.V)
		}
	}
	q.dates(line)
}

// others is what the rounds had with which the plan does not go on.
func (q *question) others(from string) float64 {
	var rest []Went
	for _, w := range q.x.past {
		if !q.x.goesOn(&w) {
			rest = append(rest, w)
		}
	}
	return q.total(rest, nil, from).rate
}

// goesOn tells whether the plan goes on with the round of something laid.
func (x *Season) goesOn(w *Went) bool {
	for _, p := range x.plan {
		if p.Product == w.Product && p.Round == w.Round {
			return true
		}
	}
	return false
}

// times counts applications: rounds, but two of one call as one. What is less than a small share of the lowest rate is a
// trace and no application.
func (q *question) times(past, plan []Went, from string) int {
	var seen []*Went
	n := 0
	add := func(w *Went) {
		if w.Date < from || !q.counts(w) || !q.x.applied(w) {
			return
		}
		fresh := true
		for _, o := range seen {
			fresh = fresh && !o.SameCall(*w) && (o.Product != w.Product || o.Round != w.Round)
		}
		seen = append(seen, w)
		if fresh {
			n++
		}
	}
	for i := range past {
		add(&past[i])
	}
	for i := range plan {
		add(&plan[i])
	}
	return n
}

// applied tells whether what was laid was an application and not only a trace.
func (x *Season) applied(w *Went) bool {
	if w.Area == 0 {
		return true
	}
	return perMM2(w) >= x.trace*x.lowestRate(w)
}

// lowestRate is the label's lowest rate of a product on the grass, else its highest, else the lowest of the mixes; 0 if
// none is known.
func (x *Season) lowestRate(w *Went) float64 {
	low, high := x.labelOf(w).RatesFor(w.Grass)
	if low.Known || high.Known {
		return low.Or(high.V).V
	}
	least := 0.0
	for i := range x.s.mixes {
		if r, ok := x.s.mixes[i].Rate(x.s.products[w.Product].Name); ok && (least == 0 || r.V < least) {
			least = r.V
		}
	}
	return least
}

// dates says when it was laid last and when it may be again.
func (q *question) dates(line *SeasonLine) {
	x := q.x
	for i := len(x.past) - 1; i >= 0; i-- {
		w := &x.past[i]
		if q.counts(w) && x.applied(w) && !x.goesOn(w) && (len(x.plan) == 0 || !w.SameCall(x.plan[0])) {
			line.Last = w.Date
			line.DaysSince = Known(x.day - dayNumber(w.Date))
			break
		}
	}
	line.Again = line.To
	if line.DaysBetween.Known && line.DaysSince.Known && float64(line.DaysSince.V) < line.DaysBetween.V {
		line.Again = After(line.Last, line.DaysBetween.V)
	}
	line.Fits = q.fits(line)
	if line.Fits != "" {
		line.Next = max(line.Again, line.Fits)
	}
}

func wholeDays(days float64) int { return int(math.Ceil(days)) }

// fits is the first date on which one more dose fits into the yearly limits; empty: it never does.
func (q *question) fits(line *SeasonLine) string {
	x := q.x
	if !line.Limit.Known && !line.MostTimes.Known {
		return line.To
	}
	for _, day := range append([]int{x.day}, q.candidates()...) {
		if q.within(line, day) {
			return dateOf(day)
		}
	}
	return ""
}

// with is what would have gone down in the period that ends on a day if one more dose went down on it.
func (q *question) with(day int) (rate float64, times int) {
	x := q.x
	from := q.from(day)
	plan := make([]Went, len(x.plan))
	for i, w := range x.plan {
		if day != x.day { // no longer part of a round or call of today
			w.Round, w.Date, w.after = 0, dateOf(day), 0
		}
		plan[i] = w
	}
	rate, times = q.total(x.past, plan, from).rate, q.times(x.past, plan, from)
	if len(plan) == 0 {
		rate, times = rate+q.dose, times+1
	}
	return rate, times
}

func (q *question) within(line *SeasonLine, day int) bool {
	rate, times := q.with(day)
	return (!line.Limit.Known || rate <= line.Limit.V.V*Rounding) && (!line.MostTimes.Known || float64(times) <= line.MostTimes.V)
}

// candidates are the days after today on which something drops out of the period.
func (q *question) candidates() []int {
	x := q.x
	if !q.days.Known {
		year, _, _ := strings.Cut(x.at, "-")
		n, _ := strconv.Atoi(year)
		return []int{dayNumber(fmt.Sprintf("%04d-01-01", n+1))}
	}
	var out []int
	for i := range x.past {
		if d := dayNumber(x.past[i].Date) + int(q.days.V); d > x.day && q.counts(&x.past[i]) {
			out = append(out, d)
		}
	}
	sort.Ints(out)
	return out
}
