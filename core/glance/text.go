package glance

import (
	"fmt"
	"strings"

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
	writeLevels(&w, b)
	writeLine(&w, b, &d)
	if d.Weather != nil {
		seen := b.Weather().Weather
		fmt.Fprintf(&w, "weather     %s, looked %s, %.0f min ago\n", observed(&seen), b.Weather().At.Clock(), d.Weather.Age)
	}
	if d.Today.Hours != nil {
		y := measure.Gallons(d.Today.Volume)
		fmt.Fprintf(&w, "today       %s gal on %s sq ft, %d lawns, %.1f h\n", y.Text(), measure.SquareFeet(d.Today.Area).Text(), d.Today.Lawns, *d.Today.Hours)
	}
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
	return s + fmt.Sprintf("   visit %d of %d: %s", d.Visit.Number, d.Visit.Of, *d.Visit.Lawn)
}

func writeLevels(w *strings.Builder, b *core.Book) {
	with := b.Applicator(check.FirstApplicator(b))
	for i := range b.Plumbing().Compartments {
		c := &b.Plumbing().Compartments[i]
		name := ""
		if set := b.RigCompartment(c.Letter); set != nil {
			name = set.Name
		}
		fmt.Fprintf(w, "%-10s  %s of %s gal, give or take %s", string(c.Letter)+" "+name, c.Liquid.Volume.Text(), c.Capacity.Text(), b.Band(&c.Tank).Text())
		if with != nil && with.Delivery.V > 0 {
			fmt.Fprintf(w, ", covers %s sq ft with %s", with.Delivery.AreaFor(c.Drawable()).Text(), with.Name)
		}
		w.WriteString(holding(b, c.Liquid) + "\n")
	}
	for i := range b.Plumbing().Tanks {
		t := &b.Plumbing().Tanks[i]
		fmt.Fprintf(w, "%-10s  %s of %s gal%s\n", t.Name, t.Liquid.Volume.Text(), t.Capacity.Text(), holding(b, t.Liquid))
	}
}

// holding names the products in a liquid with their strengths.
func holding(b *core.Book, l fluid.Liquid) string {
	var out []string
	for _, h := range l.Holds {
		p := b.ProductByKey(h.Key)
		per := measure.ConcentrationOf(measure.Amount{N: h.N, Kind: p.Label.Form}, l.Volume).In(measure.USGallon, p.Label.Form)
		out = append(out, p.ProductName+" "+per.Text()+" per gal")
	}
	if len(out) == 0 {
		return ""
	}
	return "; " + strings.Join(out, ", ")
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
		fmt.Fprintf(w, "hose        %s gal%s\n", h.Liquid().Volume.Text(), holding(b, h.Liquid()))
	}
	if c := d.Changeover; c != nil {
		fmt.Fprintf(w, "changeover  to %s: arrives %s, half %s, clean %s gal", c.To,
			measure.Gallons(c.Arrives).Text(), measure.Gallons(c.Half).Text(), measure.Gallons(c.Clean).Text())
		if c.CleanS != nil {
			fmt.Fprintf(w, " (%s s)", measure.SecondsText(*c.CleanS))
		}
		if c.PushBack != nil {
			fmt.Fprintf(w, "; push back %s gal into %s", measure.Gallons(c.PushBack.Gal).Text(), c.PushBack.Into)
		}
		w.WriteString("\n")
	}
}

// observed is an observation without the word that say puts before it.
func observed(f *core.Weather) string { return strings.TrimPrefix(say.Fact(f), "weather: ") }
