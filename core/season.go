package core

import (
	"slices"
	"strings"
	"time"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// What a line of a season is about.
const (
	OfProduct  = "product"
	OfActive   = "active"
	OfNitrogen = "nitrogen"
	// OfPhosphate is P2O5; it is asked for by Season.Phosphate alone.
	OfPhosphate = "phosphate"
)

// SeasonLine is what went on a zone of one product, of one active or of nitrogen, in the year of a date, and what the
// label entry allows of it. Rates are those on the part that got most; of actives and nitrogen they are by weight.
type SeasonLine struct {
	Of   string // OfProduct, OfActive or OfNitrogen
	Name string
	From string // first day of the calendar year, or of the label's own period
	To   string // the date asked about
	// Sum is what went down from From to To; unknown where Unknown names something. AtLeast is what is known of it.
	Sum     Maybe[measure.Rate]
	AtLeast measure.Rate
	// With is the sum if what is planned went down too; the same where nothing is.
	With Maybe[measure.Rate]
	// Quick and QuickWith are the same of the nitrogen that acts at once.
	Quick, QuickWith Maybe[measure.Rate]
	// Limit is the most in that time, of the label entry of LimitOf; None: the label has none. Unknown and not None: it is
	// not entered.
	Limit   Maybe[measure.Rate]
	LimitOf string
	None    bool
	Left    Maybe[measure.Rate] // of Limit after Sum, 0 if that is over it
	Share   Maybe[float64]      // of Limit
	// Room is the most that one more dose may be now: Left, and what the round with which it goes on has had already.
	Room Maybe[measure.Rate]

	Times       int // applications from From to To
	TimesWith   int
	MostTimes   Maybe[float64]
	Last        string     // date of the last application that the book keeps, before this call; empty: none
	DaysSince   Maybe[int] // from Last to To
	DaysBetween Maybe[float64]
	// Again is when the days between are over, Fits when one more dose fits into the yearly limits: the dose planned, or one
	// at the label's lowest rate. Next is when both hold; To if that is at once, empty if never (Fits) or not known (Next).
	Again, Fits, Next string

	// UnknownBefore is a date after From: what was laid before it is not in the book.
	UnknownBefore string
	// Unknown names why the sum is not known: products whose content is not entered, and what was poured out there.
	Unknown []string
}

// SeasonOf lists what went on a zone up to a date: products first, then actives, then nitrogen. The book keeps this year
// and the last. It is empty where the book has no such zone, and where nothing went on it.
func (s *state) SeasonOf(lawn, zone, at string) []SeasonLine {
	return s.Season(lawn, zone, at, nil).Lines()
}

// Season answers for one zone and one date.
type Season struct {
	s        *state
	at, year string // the date, and the first day of its year
	day      int    // the number of the date
	known    string // since when the book has all
	grass    string
	past     []Went  // up to the date, oldest first
	plan     []Went  // what is to go down (see Would)
	trace    float64 // the share of the lowest rate under which a dose is no application
	contents map[*label.Entry][]content
}

// Season gathers what went on a zone up to a date, as if the plan went down on it.
func (s *state) Season(lawn, zone, at string, plan []Went) *Season {
	x := &Season{s: s, at: at, year: firstOfYear(at), day: dayNumber(at), known: max(s.ZoneKnownSince(lawn, zone), keptFrom(s.day.Date)), plan: plan, trace: s.Setting(ApplicationFromPct) / 100}
	if l := s.Lawn(lawn); l != nil {
		z, _ := l.Zone(zone)
		x.grass = z.Grass
	}
	x.past = s.History(lawn, zone)
	for len(x.past) > 0 && x.past[len(x.past)-1].Date > at {
		x.past = x.past[:len(x.past)-1]
	}
	return x
}

// Lines lists products in the order in which they were entered, then actives, then nitrogen where there is any, or where
// it is not known whether.
func (x *Season) Lines() []SeasonLine {
	var out []SeasonLine
	var actives []string
	keys := x.keys()
	for _, k := range keys {
		out = append(out, x.Product(k))
		for _, a := range x.s.products[k].Now().Label.Actives {
			if n := ActiveName(a.Name); !containsText(actives, n) {
				actives = append(actives, n)
			}
		}
	}
	for _, a := range actives {
		out = append(out, x.strictest(a, keys))
	}
	if n := x.Nitrogen(); n.AtLeast.V > 0 || len(n.Unknown) > 0 || n.With.Or(measure.Rate{}).V > 0 {
		out = append(out, n)
	}
	return out
}

// keys lists the products that went down or are to.
func (x *Season) keys() []int32 {
	has := make([]bool, len(x.s.products))
	for _, list := range [][]Went{x.past, x.plan} {
		for _, w := range list {
			has[w.Product] = true
		}
	}
	var out []int32
	for k, yes := range has {
		if yes {
			out = append(out, int32(k))
		}
	}
	return out
}

// strictest is the line of an active by the label entry that leaves least of it. Most label entries limit none, and adding
// up for each of them would take the cube of what went down.
func (x *Season) strictest(active string, keys []int32) SeasonLine {
	line := x.Active(active, -1)
	for _, k := range keys {
		if !limits(&x.s.products[k].Now().Label, active) {
			continue
		}
		if l := x.Active(active, k); !line.Limit.Known || l.Left.V.V < line.Left.V.V {
			line = l
		}
	}
	return line
}

func limits(e *label.Entry, active string) bool {
	for _, a := range e.Actives {
		if a.MostYear.Known && ActiveName(a.Name) == active {
			return true
		}
	}
	return false
}

// Elsewhere are the lines of an active by the label entries of other products that were applied here in the year of that
// entry, and are not planned: what such an entry limits is the active, whatever it comes in.
func (x *Season) Elsewhere(active string, k int32) []SeasonLine {
	var out []SeasonLine
	for _, o := range x.keys() {
		if o == k || x.plans(o) || !limits(&x.s.products[o].Now().Label, active) {
			continue
		}
		if l := x.Active(active, o); l.Limit.Known && x.appliedSince(o, l.From) {
			out = append(out, l)
		}
	}
	return out
}

func (x *Season) plans(k int32) bool {
	return slices.ContainsFunc(x.plan, func(w Went) bool { return w.Product == k })
}

func (x *Season) appliedSince(k int32, from string) bool {
	return slices.ContainsFunc(x.past, func(w Went) bool { return w.Product == k && w.Date >= from && x.applied(&w) })
}

// labelOf is the label entry in force when something was laid.
func (x *Season) labelOf(w *Went) *label.Entry {
	return &x.s.products[w.Product].Versions[w.Version].Label
}

// Product is the line of a product by its label entry in force.
func (x *Season) Product(k int32) SeasonLine {
	p := x.s.products[k].Now()
	e := &p.Label
	q := &question{x: x, kind: e.Form, days: e.YearDays, counts: func(w *Went) bool { return w.Product == k }}
	q.value = func(w *Went) Maybe[float64] {
		if x.labelOf(w).Form != e.Form {
			return Maybe[float64]{}
		}
		return Known(perMM2(w))
	}
	line := SeasonLine{Of: OfProduct, Name: p.ProductName, MostTimes: e.MostTimes, DaysBetween: e.DaysBetween}
	line.Limit, line.None = e.MostYear, e.NoneOnLabel(label.LimitMostYear)
	if line.Limit.Known || line.MostTimes.Known {
		line.LimitOf = p.ProductName
	}
	low, high := e.RatesFor(x.grass)
	q.dose = low.Or(high.Or(measure.Rate{})).V
	q.fill(&line)
	return line
}

// Active is the line of an active, whatever product it came in, by the limit in the label entry of a product; a product
// less than 0: without a limit.
func (x *Season) Active(active string, by int32) SeasonLine {
	q := &question{x: x, kind: measure.Dry}
	q.counts = func(w *Went) bool { _, has := x.contentOf(w, active); return has }
	q.value = func(w *Went) Maybe[float64] {
		c, _ := x.contentOf(w, active)
		return times(c, perMM2(w))
	}
	line := SeasonLine{Of: OfActive, Name: active}
	if by >= 0 {
		p := x.s.products[by].Now()
		for _, a := range p.Label.Actives {
			if ActiveName(a.Name) == active && a.MostYear.Known {
				line.Limit, line.LimitOf, q.days = a.MostYear, p.ProductName, p.Label.YearDays
				low, high := p.Label.RatesFor(x.grass)
				per, _ := contentIn(x.contentsOf(&p.Label), active)
				q.dose = times(per, low.Or(high.Or(measure.Rate{})).V).V
			}
		}
	}
	q.fill(&line)
	return line
}

// Nitrogen is the line of nitrogen in the calendar year. It has no limit: those of the label are the product's, and those
// of the reference are asked about by the check.
func (x *Season) Nitrogen() SeasonLine {
	line := SeasonLine{Of: OfNitrogen, Name: OfNitrogen}
	q := x.nitrogen(func(e *label.Entry) Maybe[float64] { return e.NitrogenPerProduct() })
	q.fill(&line)
	quick := x.nitrogen(quickPerProduct)
	line.Quick, line.QuickWith = quick.sum(x.past, nil, x.year), quick.sum(x.past, x.plan, x.year)
	return line
}

// Phosphate is the line of P2O5 in the calendar year. It has no limit: what a place allows of it is a matter of dates.
func (x *Season) Phosphate() SeasonLine {
	line := SeasonLine{Of: OfPhosphate, Name: OfPhosphate}
	x.nitrogen(func(e *label.Entry) Maybe[float64] { return e.PhosphatePerProduct() }).fill(&line)
	return line
}

func (x *Season) nitrogen(content func(*label.Entry) Maybe[float64]) *question {
	return &question{
		x: x, kind: measure.Dry,
		counts: func(w *Went) bool { c := content(x.labelOf(w)); return !c.Known || c.V > 0 },
		value:  func(w *Went) Maybe[float64] { return times(content(x.labelOf(w)), perMM2(w)) },
	}
}

func quickPerProduct(e *label.Entry) Maybe[float64] {
	n := e.NitrogenPerProduct()
	if n.Known && n.V == 0 {
		return n
	}
	if !e.QuickNitrogen.Known {
		return Maybe[float64]{}
	}
	return times(n, e.QuickNitrogen.V/100)
}

func times(m Maybe[float64], f float64) Maybe[float64] {
	return Maybe[float64]{V: float64(m.V * f), Known: m.Known}
}

// perMM2 is the dose on the part that got most, in nL or ng for each square millimetre.
func perMM2(w *Went) float64 { return float64(w.Peak) / float64(peakArea) }

// ActiveName is the name under which sums of an active are kept: that of the reference, else as it was entered, in lower
// case.
func ActiveName(entered string) string {
	if a, ok := label.FindActive(entered); ok {
		return a.Name
	}
	return strings.ToLower(strings.TrimSpace(entered))
}

func firstOfYear(date string) string {
	year, _, _ := strings.Cut(date, "-")
	return year + "-01-01"
}

// dayNumber counts days; 0 where the date cannot be read.
func dayNumber(date string) int {
	const day = 86_400
	t, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return 0
	}
	return int(t.Unix() / day)
}

func dateOf(day int) string {
	return time.Unix(int64(day)*86_400, 0).UTC().Format(time.DateOnly)
}
