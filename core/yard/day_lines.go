package yard

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// The kinds of a line of a plan.
const (
	LineWrong = "wrong" // a lawn that gets nothing
	LineAsk   = "ask"
	LineSum   = "sum"
	LineHead  = "head"
	LineLoad  = "load"
	LineMark  = "mark" // a changeover or a refill in the order
	LineStop  = "stop"
	LineMore  = "more" // belongs to the line before
	LineNote  = "note"
	LineWork  = "work"
)

// DayLine is a line of a plan, as screen and text show it.
type DayLine struct {
	Kind, Says string
	Lawn       string // of a stop, or of what is wrong
}

// dayLines collects them.
type dayLines []DayLine

func (d *dayLines) add(kind, says string, args ...any) {
	*d = append(*d, DayLine{Kind: kind, Says: fmt.Sprintf(says, args...)})
}

// Lines are a plan in one of its orders: what is wrong, what it comes to, what is loaded, the order, how it was worked out.
func (p *DayPlan) Lines(name string) []DayLine {
	o := p.Order(name)
	var d dayLines
	for _, w := range p.Warnings {
		kind := LineNote
		switch {
		case w.NoMix || w.Weight >= check.Stop:
			kind = LineWrong
		case w.Weight == check.Ask:
			kind = LineAsk
		}
		d = append(d, DayLine{kind, w.Lawn + ": " + strings.TrimSuffix(w.Says, ".") + ". " + w.Do, w.Lawn})
	}
	p.sums(&d, o)
	o.loadLines(&d)
	o.truckLines(&d)
	o.stopLines(&d)
	o.timeLines(&d)
	for _, n := range p.Notes {
		d.add(LineNote, "%s", n)
	}
	d.add(LineHead, "worked out")
	for _, s := range o.Steps {
		d.add(LineWork, "%s", s.Says)
	}
	for _, s := range p.Steps {
		d.add(LineWork, "%s", s.Says)
	}
	return d
}

// sums say what an order comes to, and what the other one does.
func (p *DayPlan) sums(d *dayLines, o *DayOrder) {
	d.add(LineSum, "%s: %s", orderWords(o.Name), o.Sum())
	switch {
	case !p.Better:
		d.add(LineSum, "no other order that was tried is better; none can be below %s min", tens(p.Bound))
	case o.Name == core.OrderGiven:
		d.add(LineSum, "another order saves %s; none can be below %s min", p.savesWords(), tens(p.Bound))
	default:
		d.add(LineSum, "it saves %s against the order given; it is at most %s %% above the best there can be", p.savesWords(), tens(100*p.Off))
	}
}

// timeLines say what the minutes go into, and what is not in the cost.
func (o *DayOrder) timeLines(d *dayLines) {
	m := o.Minutes
	d.add(LineHead, "minutes")
	d.add(LineMore, "on lawns %s, driving %s, changeovers %s, refills %s, rinsing %s, waiting %s", tens(m.Site), tens(m.Drive), tens(m.Changeover), tens(m.Refill), tens(m.Rinse), tens(m.Wait))
	if len(o.Unpriced) > 0 {
		d.add(LineNote, "not in the cost, because no price is entered: %s", and(o.Unpriced))
	}
}

func orderWords(name string) string {
	if name == core.OrderBest {
		return "the order found"
	}
	return "the order given"
}

// Sum is an order in one line.
func (o *DayOrder) Sum() string {
	words := fmt.Sprintf("lawns %d, changeovers %d, refills %d, %s min, back %s", len(o.Stops), o.Changeovers, o.Refills, tens(o.Minutes.Total()), clockOf(o.Back))
	if o.Miles.Known {
		words += fmt.Sprintf(", %s mi great-circle", tens(o.Miles.V))
	}
	if o.Cost > 0 {
		words += ", product " + o.Cost.Text()
	}
	if !o.Exact {
		words += "; perhaps not the least for this order"
	}
	return words
}

func (p *DayPlan) savesWords() string {
	words := []string{}
	add := func(n int, one, many string) {
		switch {
		case n == 1:
			words = append(words, "1 "+one)
		case n != 0:
			words = append(words, fmt.Sprintf("%d %s", n, many))
		}
	}
	add(p.Saves.Changeovers, "changeover", "changeovers")
	add(p.Saves.Refills, "refill", "refills")
	words = append(words, tens(p.Saves.Minutes)+" min")
	if p.Saves.Miles.Known {
		words = append(words, tens(p.Saves.Miles.V)+" mi")
	}
	return and(words)
}

func (o *DayOrder) loadLines(d *dayLines) {
	for i := range o.Loads {
		l := &o.Loads[i]
		if l.Before == "" {
			d.add(LineHead, "to load now, at %s", l.Place)
		} else {
			d.add(LineHead, "refill before %s, at %s", l.Before, l.Place)
		}
		for _, t := range l.Tanks {
			t.lines(d)
		}
	}
	if len(o.Loads) == 0 {
		d.add(LineHead, "nothing is to be loaded")
	}
}

func (t *DayTank) lines(d *dayLines) {
	switch {
	case t.Emptied > 0:
		d.add(LineAsk, "%c: %s gal of something else have to go first; rinse it", t.Letter, t.Emptied.Text())
	case t.Rinsed:
		d.add(LineAsk, "%c: rinse it first", t.Letter)
	}
	what := fmt.Sprintf("%s for %s", t.Mix, t.For)
	switch {
	case t.Add == 0:
		d.add(LineLoad, "%c  nothing: its %s gal of %s do", t.Letter, t.Had.Text(), what)
	case t.Had > 0:
		d.add(LineLoad, "%c  add %s gal of %s to the %s gal in it: %s gal", t.Letter, t.Add.Text(), what, t.Had.Text(), t.Level.Text())
	default:
		d.add(LineLoad, "%c  load %s gal of %s", t.Letter, t.Add.Text(), what)
	}
	d.add(LineMore, "on lawns %s, hose and cell %s, heel %s, reserve %s gal", t.OnLawns.Text(), t.Line.Text(), t.Heel.Text(), t.Reserve.Text())
	if t.Strength > 0 && t.Strength < 0.9995 {
		d.add(LineMore, "changeovers leave %s %% of its strength", hundredths(100*t.Strength))
	}
	var words []string
	for _, p := range t.Products {
		words = append(words, p.Product+" "+p.Amount.Text())
	}
	if len(words) > 0 {
		d.add(LineMore, "with %s", strings.Join(words, ", "))
	}
}

func (o *DayOrder) truckLines(d *dayLines) {
	if len(o.Truck) == 0 {
		return
	}
	d.add(LineHead, "to put on the truck")
	for _, t := range o.Truck {
		words := t.Product + ": " + t.Amount.Text()
		if t.Shelf != t.Amount.Text() {
			words += ", out of " + t.Shelf
		}
		if t.Cost.Known {
			words += ", " + t.Cost.V.Text()
		}
		d.add(LineLoad, "%s", words)
	}
}

func (o *DayOrder) stopLines(d *dayLines) {
	d.add(LineHead, "in this order")
	for i := range o.Stops {
		s := &o.Stops[i]
		for j := range s.Zones {
			if z := &s.Zones[j]; z.Refill {
				d.add(LineMark, ">> refill before %s", s.Lawn)
			}
		}
		words := fmt.Sprintf("%2d  %s  %s", i+1, clockOf(s.At), s.Lawn)
		if s.served() == 0 {
			words = fmt.Sprintf("%2d  --:--  %s: nothing goes on it", i+1, s.Lawn)
		}
		if s.Waited >= 1 {
			words += fmt.Sprintf(", after waiting %s min", tens(s.Waited))
		}
		if s.Late >= 1 {
			words += fmt.Sprintf(", %s min after its window", tens(s.Late))
		}
		*d = append(*d, DayLine{LineStop, words, s.Lawn})
		for j := range s.Zones {
			s.Zones[j].lines(d)
		}
	}
}

// served is how many of its zones get something.
func (s *DayStop) served() int {
	n := 0
	for i := range s.Zones {
		if s.Zones[i].Mix != "" || s.Zones[i].With != "" {
			n++
		}
	}
	return n
}

func (z *DayZone) lines(d *dayLines) {
	if z.Changeover {
		d.add(LineMark, ">> changeover to %s, %s", letters(z.From), z.Mix)
	}
	if z.With == "" {
		d.add(LineMore, "%s %s sq ft: left out", z.Zone, z.Area.Text())
		return
	}
	d.add(LineMore, "%s %s sq ft: %s %s, %s, %s gal, %s min", z.Zone, z.Area.Text(), letters(z.From), z.Mix, z.With, z.Volume.Text(), tens(z.Minutes))
}

// letters are compartments: "a", "a or b".
func letters(from string) string { return strings.Join(strings.Split(from, ""), " or ") }

// tens prints a figure to a tenth.
func tens(f float64) string { return measure.Multiple(f) }

func hundredths(f float64) string { return fmt.Sprintf("%.2f", f) }

// clockOf is a minute of the day as a time of day.
func clockOf(minute float64) string {
	m := int(minute + 0.5)
	return fmt.Sprintf("%02d:%02d", m/60, m%60)
}

// Text is a plan in one of its orders, as the command line prints it.
func (p *DayPlan) Text(name string) string {
	var w strings.Builder
	fmt.Fprintf(&w, "plan of %s\n", p.Date)
	for _, l := range p.Lines(name) {
		switch l.Kind {
		case LineWrong:
			w.WriteString("STOP  ")
		case LineAsk:
			w.WriteString("ASK   ")
		case LineNote:
			w.WriteString("NOTE  ")
		case LineHead:
			w.WriteString("\n")
		case LineMore, LineWork:
			w.WriteString("      ")
		case LineMark, LineLoad:
			w.WriteString("  ")
		}
		w.WriteString(l.Says + "\n")
	}
	return w.String()
}
