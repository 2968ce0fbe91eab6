package batch

import (
	"math"
	"strconv"
)

// says is the working of a plan, in the order of the day.
func (d *Day) says(p *DayPlan) []Step {
	var s steps
	for l, x := range p.Demand {
		if x.Needed > 0 {
			s.say(d.Liquids[l].Name, ": ", x.Laid.Text(), " gal to lay, ", x.Needed.Text(), " gal with a line and the reserve in each load")
		}
	}
	for i, l := range p.Loads {
		d.sayLoad(&s, i, l)
	}
	m := p.Minutes
	s.say(whole(m.Site), " min on site + ", whole(m.Drive), " min of drive", d.sayMiles(p), " + ", strconv.Itoa(len(p.Changeovers)), " changeovers ", whole(m.Changeover),
		" min + ", strconv.Itoa(max(len(p.Loads)-1, 0)), " refills ", whole(m.Refill), " min + rinses ", whole(m.Rinse), " min + waiting ", whole(m.Wait), " min = ", whole(m.Total()), " min")
	s.say("product that is laid: ", p.Cost.Text())
	for _, u := range p.Unserved {
		s.say(u.Says)
	}
	if p.Exact {
		s.say("in this order no choice of options, compartments and refills takes fewer minutes (", strconv.Itoa(p.States), " states were looked at)")
	} else {
		s.say("in this order no plan takes fewer than ", whole(p.Bound), " min; not all could be looked at (", strconv.Itoa(p.States), " states were)")
	}
	return s
}

func (d *Day) sayLoad(s *steps, i int, l DayLoad) {
	when := "in the morning"
	if l.Visit >= 0 {
		when = "refill before " + d.Visits[l.Visit].Name + ", " + d.Visits[l.Visit].Zones[l.Need].Zone
	}
	for _, c := range l.Compartments {
		of := d.Rig.Compartments[c.Compartment]
		words := ""
		if c.Had > 0 {
			words = " on " + c.Had.Text() + " gal that stand in it"
		}
		if c.Rinsed {
			words = " after a rinse, " + c.ThrownOut.Text() + " gal of what stood in it are poured out"
		}
		s.say(when, ", ", string(rune(c.Letter)), ": ", d.Liquids[c.Liquid].Name, " ", c.Add.Text(), " gal", words, " = ", c.Level.Text(), " gal of ", of.Capacity.Text(), " gal, ",
			of.Heel.Text(), " gal of it heel; ", c.Laid.Text(), " gal laid, ", c.Left.Text(), " gal left at ", percent(c.Strength), " of its strength")
	}
}

func (d *Day) sayMiles(p *DayPlan) string {
	if !p.Miles.Known {
		return " (not all ways are known)"
	}
	return " (" + figure(p.Miles.V) + " miles great-circle at " + figure(d.Times.MPH) + " mph)"
}

// saySaves is the working of a choice.
func (d *Day) saySaves(c *DayChoice) []Step {
	var s steps
	if c.Better {
		s.say("the other order takes ", whole(c.Best.Minutes.Total()), " min, the given one ", whole(c.Given.Minutes.Total()), " min: ", whole(c.Saves.Minutes), " min less")
		s.say("changeovers ", strconv.Itoa(len(c.Given.Changeovers)), " to ", strconv.Itoa(len(c.Best.Changeovers)), ", refills ", strconv.Itoa(max(len(c.Given.Loads)-1, 0)), " to ", strconv.Itoa(max(len(c.Best.Loads)-1, 0)))
		if m := c.Saves.Miles; m.Known {
			s.say("great-circle miles ", figure(c.Given.Miles.V), " to ", figure(c.Best.Miles.V))
		}
	} else {
		s.say("no better order was found")
	}
	s.say("no order takes fewer than ", whole(c.Bound), " min, so it is at most ", percent(c.Off), " above the best there can be")
	return s
}

func whole(minutes float64) string { return strconv.FormatFloat(math.Round(minutes), 'f', 0, 64) }
