package glance

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/say"
)

// Text is the glance as people read it: what is left, how the valves stand, what the hose holds.
func Text(b *core.Book, at core.Moment, now core.Maybe[core.Moment]) string {
	d := Of(b, at, now)
	var w strings.Builder
	w.WriteString(heading(b, &d) + "\n\n")
	writeLevels(&w, b, at)
	writeLine(&w, b, &d)
	writeLoads(&w, b)
	if d.Weather != nil {
		seen := b.Weather().Weather
		fmt.Fprintf(&w, "weather     %s, looked %s, %s\n", observed(&seen), b.Weather().At.Clock(), agoWords(d.Weather.Age))
		if d.Weather.DeltaT != nil {
			fmt.Fprintf(&w, "            wet-bulb depression %.1f C\n", *d.Weather.DeltaT)
		}
	}
	if h := b.Day().Hold; h != nil {
		fmt.Fprintf(&w, "on hold     for %s since %s\n", h.Cause, h.Since.Clock())
	}
	writeOwed(&w, b)
	writeNotices(&w, b, at)
	writeDried(&w, b, at)
	for i, due := range d.Upkeep {
		fmt.Fprintf(&w, "%-12s%s\n", []string{"upkeep due", ""}[min(i, 1)], due)
	}
	for i, due := range d.Calibration {
		fmt.Fprintf(&w, "%-12s%s\n", []string{"catch test", ""}[min(i, 1)], due)
	}
	if d.Today.Hours != nil {
		y := measure.Gallons(d.Today.Volume)
		spread := ""
		if d.Today.Mass > 0 {
			spread = fmt.Sprintf(" and %.1f lb", d.Today.Mass)
		}
		fmt.Fprintf(&w, "today       %s gal%s on %s sq ft, %d lawns, %.1f h\n", y.Text(), spread, measure.SquareFeet(d.Today.Area).Text(), d.Today.Lawns, *d.Today.Hours)
	}
	writeTaught(&w, &d)
	writeMissing(&w, b, &d)
	fmt.Fprintf(&w, "entries     %d\nstate       %s\njournal     %s\n", d.Entries, d.State, d.Journal)
	return w.String()
}

func heading(b *core.Book, d *Document) string {
	day := b.Day()
	switch {
	case day.Date == "":
		return "no day yet"
	case !day.Open:
		return day.Date + "   closed"
	}
	s := day.Date + "   " + day.Operator
	if d.Visit == nil {
		return s
	}
	if d.Visit.Lawn == nil {
		return s + fmt.Sprintf("   all %d visits ended", d.Visit.Of)
	}
	s += fmt.Sprintf("   visit %d of %d: %s", d.Visit.Number, d.Visit.Of, *d.Visit.Lawn)
	if v := day.Visiting(); v != nil && v.Kind != core.Round {
		s += ", " + say.VisitKind(v.Kind)
	}
	return s
}

// writeOwed says what is owed, a line a lawn.
func writeOwed(w *strings.Builder, b *core.Book) {
	label := "owed"
	for _, o := range b.Owed() {
		fmt.Fprintf(w, "%-12s%s", label, o.Lawn)
		for _, z := range o.Zones {
			fmt.Fprintf(w, ", %s %s sq ft", z.Zone, z.Area.Text())
		}
		fmt.Fprintf(w, "; %s, since %s", o.Reason, o.Since)
		if o.Until != "" {
			fmt.Fprintf(w, ", for %s", o.Until)
		}
		w.WriteString("\n")
		label = ""
	}
}

func writeLevels(w *strings.Builder, b *core.Book, at core.Moment) {
	with := b.Applicator(check.FirstApplicator(b))
	var names, levels []string
	agitated := check.Agitated(b, at)
	for i := range b.Plumbing().Compartments {
		c := &b.Plumbing().Compartments[i]
		name := string(c.Letter)
		if set := b.RigCompartment(c.Letter); set != nil {
			name += " " + set.Name
		}
		level := fmt.Sprintf("%s of %s gal, give or take %s", c.Liquid.Volume.Text(), c.Capacity.Text(), b.Band(&c.Tank).Text())
		if v, _, ok := b.Expected(c); ok {
			level += fmt.Sprintf(", %s gal expected by what gauges taught", v.Text())
		}
		if with != nil && with.Delivery.V > 0 {
			level += fmt.Sprintf(", covers %s sq ft with %s", with.Delivery.AreaFor(c.Drawable()).Text(), with.Name)
		}
		level += agitation(agitated[i])
		names, levels = append(names, name), append(levels, level+holding(b, c.Liquid, "\n"))
	}
	for i := range b.Plumbing().Tanks {
		t := &b.Plumbing().Tanks[i]
		names = append(names, t.Name)
		levels = append(levels, fmt.Sprintf("%s of %s gal", t.Liquid.Volume.Text(), t.Capacity.Text())+holding(b, t.Liquid, "\n"))
	}
	for i := range b.Plumbing().Hoppers {
		h := &b.Plumbing().Hoppers[i]
		names = append(names, h.Name)
		levels = append(levels, hopper(b, h))
	}
	wide := 0
	for _, n := range names {
		wide = max(wide, utf8.RuneCountInString(n))
	}
	for i, n := range names {
		indent := "\n" + strings.Repeat(" ", wide+4)
		fmt.Fprintf(w, "%s%s  %s\n", n, strings.Repeat(" ", wide-utf8.RuneCountInString(n)), strings.ReplaceAll(levels[i], "\n", indent))
	}
}

// agitation is for how long what settles has not been moved about, where the entries tell; a paddle that turns is not spoken
// of.
func agitation(a check.Agitation) string {
	if len(a.Settles) == 0 || !a.Minutes.Known || a.Minutes.V < 1 {
		return ""
	}
	return "; last agitated " + agoWords(a.Minutes.V)
}

// hopper is what is left in a hopper, and of what.
func hopper(b *core.Book, h *fluid.Hopper) string {
	s := fmt.Sprintf("%.1f of %.1f lb in the hopper", h.Mass().Pounds(), h.Capacity.Pounds())
	for _, q := range h.Holds {
		s += "\n" + b.ProductByKey(q.Key).ProductName
		if len(h.Holds) > 1 {
			s += " " + measure.Amount{N: q.N, Kind: measure.Dry}.Text()
		}
	}
	return s
}

// trace is the share of a product's greatest strength in the rig under which it is only counted here; the
// exact figures stand in the document.
const trace = 0.01

// holding names the products in a liquid with their strengths, each after a separator.
func holding(b *core.Book, l fluid.Liquid, separator string) string {
	s, traces := "", 0
	for _, h := range l.Holds {
		strength := l.Strength(h.Key)
		if float64(strength) < trace*float64(strongest(b, h.Key)) {
			traces++
			continue
		}
		p := b.ProductByKey(h.Key)
		s += separator + p.ProductName + " " + strength.In(measure.USGallon, p.Label.Form).Text() + " per gal"
	}
	if traces > 0 {
		s += separator + fmt.Sprintf("and traces of %d more", traces)
	}
	return s
}

// strongest is the greatest strength of a product in any tank, the cell or a hose as a whole.
func strongest(b *core.Book, product int32) measure.Concentration {
	p := b.Plumbing()
	most := p.Cell.Liquid.Strength(product)
	for i := range p.Compartments {
		most = max(most, p.Compartments[i].Liquid.Strength(product))
	}
	for i := range p.Tanks {
		most = max(most, p.Tanks[i].Liquid.Strength(product))
	}
	for i := range p.Hoses {
		most = max(most, p.Hoses[i].Liquid().Strength(product))
	}
	return most
}

// inHose names the hose where the rig has several.
func inHose(b *core.Book, name string) string {
	if len(b.Plumbing().Hoses) < 2 {
		return ""
	}
	return " in " + name
}

func writeLine(w *strings.Builder, b *core.Book, d *Document) {
	supply, back := "nothing", "nowhere"
	if len(d.LineUp.Supply) > 0 {
		supply = strings.Join(d.LineUp.Supply, " and ")
	}
	if d.LineUp.Return != nil {
		back = *d.LineUp.Return
	}
	fmt.Fprintf(w, "\nline-up     %s to the pump, return to %s\n", supply, back)
	if d.LineUp.Finding != nil {
		fmt.Fprintf(w, "            %s\n", *d.LineUp.Finding)
	}
	if h := b.Plumbing().Hose(hoseName(b)); h != nil {
		fmt.Fprintf(w, "hose        %s gal%s%s\n", h.Liquid().Volume.Text(), inHose(b, h.Name), holding(b, h.Liquid(), "\n            "))
		for _, o := range b.Plumbing().Hoses {
			if o.Name != h.Name {
				l := o.Liquid()
				fmt.Fprintf(w, "            %s gal%s%s\n", l.Volume.Text(), inHose(b, o.Name), holding(b, l, "\n            "))
			}
		}
	}
	w.WriteString(d.Changeover.Text())
}

// observed is an observation without the word that say puts before it.
func observed(f *core.Weather) string { return strings.TrimPrefix(say.Fact(f), "weather: ") }

// agoWords is how long ago something was, in minutes, hours or days.
func agoWords(minutes float64) string {
	const hour, day, several = 60, 24 * 60, 2
	switch {
	case minutes >= several*day:
		return fmt.Sprintf("%.0f days ago", minutes/day)
	case minutes >= several*hour:
		return fmt.Sprintf("%.0f h ago", minutes/hour)
	}
	return fmt.Sprintf("%.0f min ago", minutes)
}
