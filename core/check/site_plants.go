package check

import (
	"fmt"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// known is what is known of the product's actives beside a kind of site: what was read before what was recalled.
func (c siteCase) known(site string) (best label.SiteActive, active string, found bool) {
	for _, a := range c.p.Label.Actives {
		row, ok := label.Beside(site, a.Name)
		if ok && (!found || best.Basis == label.BasisRecalled && row.Basis != label.BasisRecalled) {
			best, active, found = row, a.Name, true
		}
	}
	return best, active, found
}

func basisGround(basis string) string {
	switch basis {
	case label.BasisTrial:
		return GroundTrial
	case label.BasisExtension:
		return GroundExtension
	}
	return GroundRecalled
}

// edible: a growth regulator within reach of food plants is a stop, farther off an ask.
func (c siteCase) edible(site core.Site) (Finding, bool) {
	row, active, found := c.known(label.SiteEdible)
	if !found {
		return Finding{}, false
	}
	reach := c.s.b.Setting(core.EdibleReachFt)
	f := Finding{
		Weight: Ask, About: label.SiteEdible, Ground: basisGround(row.Basis), Source: row.Source + "; distance: " + c.s.b.SettingSource(core.EdibleReachFt),
		Limit: core.Known(reach), Unit: "ft", Figured: site.Feet,
	}
	switch {
	case !site.Feet.Known:
		f.Says = fmt.Sprintf("%s: food plants grow in or beside it, how far off is not entered; %s: %s.", c.z.Name, active, row.Words)
		f.Do = "Look how far off they are, and enter it with the zone; spray nothing of it that can reach them."
	case site.Feet.V < reach:
		f.Weight = Stop
		f.Says = fmt.Sprintf("%s: food plants grow %s off, nearer than %s; %s: %s.", c.z.Name, feetWords(site.Feet.V), feetWords(reach), active, row.Words)
		f.Do = fmt.Sprintf("Leave %s out there, or the zone.", c.name())
	default:
		f.Says = fmt.Sprintf("%s: food plants grow %s off; %s: %s.", c.z.Name, feetWords(site.Feet.V), active, row.Words)
		f.Do = "Look which way the wind goes, and spray only away from them."
	}
	return f, true
}

// roots: what roots take up from the soil is asked about.
func (c siteCase) roots(site core.Site) (Finding, bool) {
	row, active, found := c.known(label.SiteRoots)
	if !found {
		return Finding{}, false
	}
	off := ""
	if site.Feet.Known {
		off = ", the tree " + feetWords(site.Feet.V) + " off"
	}
	return Finding{
		Weight: Ask, About: label.SiteRoots, Ground: basisGround(row.Basis), Source: row.Source, Unit: "ft", Figured: site.Feet,
		Says: fmt.Sprintf("%s: roots lie under it%s; %s: %s.", c.z.Name, off, active, row.Words),
		Do:   fmt.Sprintf("Keep %s out of the dripline.", c.name()),
	}, true
}

// bloom: a label entry that forbids it is a stop; an insecticide of a class that harms bees is asked about, whatever the
// label entry says.
func (c siteCase) bloom() (Finding, bool) {
	if c.p.Label.NoBloom == label.Yes {
		f := c.onLabel(label.SiteBloom, Stop)
		f.Says = fmt.Sprintf("%s: flowers bloom that bees visit; the label entry of %s forbids it on what is in bloom.", c.z.Name, c.name())
		f.Do = "Mow the bloom off first, or leave the zone out."
		return f, true
	}
	row, active, found := c.known(label.SiteBloom)
	if !found {
		return Finding{}, false
	}
	return Finding{
		Weight: Ask, About: label.SiteBloom, Ground: basisGround(row.Basis), Source: row.Source,
		Says: fmt.Sprintf("%s: flowers bloom that bees visit; %s: %s.", c.z.Name, active, row.Words),
		Do:   "Mow the bloom off first, or come when no bee flies and the label allows it.",
	}, true
}

// afterMowings is what is taught of herbicides on a new lawn: the id of its source in the reference.
const afterMowings = "PU-SEED"

// newTurf: until the label's days from seeding or sodding are over it is a stop. A herbicide whose label entry is blank of
// it is asked about.
func (c siteCase) newTurf() (Finding, bool) {
	days, since := c.p.Label.NewTurfDays, c.z.GrowthSince
	what := label.GrowthWords(c.z.Growth)
	f := c.onLabel(aboutNewTurf, Stop)
	switch {
	case days.Known && days.V > 0 && since == "":
		f.Weight, f.Limit, f.Unit = Ask, core.Known(days.V), "days"
		f.Says = fmt.Sprintf("%s is %s, since when is not entered; the label entry of %s asks for %s days.", c.z.Name, what, c.name(), mph(days.V))
		f.Do = "Enter the date with the zone."
		return f, true
	case days.Known:
		until := core.After(since, days.V)
		if days.V <= 0 || c.s.today() >= until {
			return f, false
		}
		f.Limit, f.Figured, f.Unit = core.Known(days.V), core.Known(daysBetween(since, c.s.today())), "days"
		f.Says = fmt.Sprintf("%s is %s since %s; the label entry of %s asks for %s days.", c.z.Name, what, since, c.name(), mph(days.V))
		f.Do = fmt.Sprintf("Leave %s out until %s.", c.z.Name, until)
		return f, true
	case c.p.Label.NoneOnLabel(label.LimitNewTurf) || !isHerbicide(c.p.Label):
		return f, false
	}
	f.Weight, f.Ground, f.Source = Ask, GroundExtension, label.SourceWords(afterMowings)
	if since != "" {
		what += " since " + since
	}
	f.Says = fmt.Sprintf("%s is %s, and the label entry of %s says nothing of it; broadleaf herbicides are taught to wait for two mowings.", c.z.Name, what, c.name())
	f.Do = "Read the label, enter its days, or leave the zone out."
	return f, true
}

// seeding: too near to the date on which seed is to be sown is a stop. A pre-emergence herbicide whose label entry is blank
// of it is asked about, with what the reference has.
func (c siteCase) seeding(site core.Site) (Finding, bool) {
	days, today := c.p.Label.ReseedDays, c.s.today()
	pre := isKind(c.p.Label, label.ClassPre) // both kinds of it
	f := c.onLabel(label.SiteSeeding, Stop)
	switch {
	case site.Date != "" && site.Date < today, days.Known && days.V <= 0, c.p.Label.NoneOnLabel(label.LimitReseed), !days.Known && !pre:
		return f, false
	case site.Date == "":
		f.Weight = Ask
		f.Says = fmt.Sprintf("%s: seed is to be sown, when is not entered; %s holds seed back.", c.z.Name, c.name())
		f.Do = "Ask when it is to be sown, and enter it with the zone."
		return f, true
	case days.Known:
		from := core.After(today, days.V)
		if site.Date >= from {
			return f, false
		}
		f.Limit, f.Figured, f.Unit = core.Known(days.V), core.Known(daysBetween(today, site.Date)), "days"
		f.Says = fmt.Sprintf("%s: seed is to be sown on %s, in %s days; the label entry of %s asks for %s.", c.z.Name, site.Date, mph(f.Figured.V), c.name(), mph(days.V))
		f.Do = fmt.Sprintf("Leave %s out, or have it sown from %s on.", c.z.Name, from)
		return f, true
	}
	f.Weight, f.Figured, f.Unit = Ask, core.Known(daysBetween(today, site.Date)), "days"
	weeks, row, active := c.reseedWeeks()
	f.Says = fmt.Sprintf("%s: seed is to be sown on %s, in %s days; the label entry of %s says nothing of it", c.z.Name, site.Date, mph(f.Figured.V), c.name())
	f.Ground, f.Source = GroundPractice, "common practice, no source: what keeps weed seed down keeps grass seed down"
	if active != "" {
		f.Says += fmt.Sprintf("; the reference has %s weeks for %s", mph(weeks), active)
		f.Limit = core.Known(7 * weeks)
		f.Ground, f.Source = groundOf(row.Source), sourceOf(row)
	}
	f.Says += "."
	f.Do = "Read the label, enter its wait, or leave the zone out."
	return f, true
}

// reseedWeeks is the longest wait that the reference has for one of the actives.
func (c siteCase) reseedWeeks() (weeks float64, row label.RateRow, active string) {
	for _, a := range c.p.Label.Actives {
		for _, r := range label.RatesOf(a.Name) {
			if r.ReseedWeeks.Known && (active == "" || r.ReseedWeeks.V > weeks) {
				weeks, row, active = r.ReseedWeeks.V, r, a.Name
			}
		}
	}
	return weeks, row, active
}

// daysBetween counts days; 0 where a date cannot be read.
func daysBetween(from, to string) float64 {
	a, err := time.Parse(time.DateOnly, from)
	b, wrong := time.Parse(time.DateOnly, to)
	if err != nil || wrong != nil {
		return 0
	}
	return b.Sub(a).Hours() / 24
}

// siteUnchecked names what label entries leave blank of the sites ahead.
func siteUnchecked(s *situation) []string {
	has := map[string]bool{}
	for _, z := range s.zones {
		for _, site := range sitesOf(z) {
			has[site.Kind] = true
		}
		has[aboutNewTurf] = has[aboutNewTurf] || newTurf(z)
	}
	var out []string
	for _, l := range []struct {
		ahead       bool
		limit, what string
		entered     func(label.Entry) bool
	}{
		{has[label.SiteWater] || has[label.SiteWell], label.LimitWater, "strip along water", func(e label.Entry) bool { return e.WaterFeet.Known }},
		{has[label.SiteBloom], "", "bloom", func(e label.Entry) bool { return e.NoBloom != "" }},
		{has[label.SiteSeeding], label.LimitReseed, "wait before seeding", func(e label.Entry) bool { return e.ReseedDays.Known }},
		{has[aboutNewTurf], label.LimitNewTurf, "wait on new turf", func(e label.Entry) bool { return e.NewTurfDays.Known }},
	} {
		if l.ahead {
			out = append(out, s.blank(l.limit, l.what, l.entered)...)
		}
	}
	return out
}
