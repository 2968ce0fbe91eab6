package check

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// aboutNewTurf is what a finding of the site rule is about where it is about none of the label.SiteKinds.
const aboutNewTurf = "new_turf"

// siteRule: what lies in or beside a zone, and new turf, judged product by product for what would be put there.
func siteRule(s *situation) []Finding {
	var out []Finding
	for i, z := range s.zones {
		sites := sitesOf(z)
		if len(sites) == 0 && !newTurf(z) {
			continue
		}
		for _, k := range s.reaching(z.Name) {
			c := siteCase{s, z, s.b.ProductByKey(k)}
			for _, f := range c.all(sites) {
				f.Part, f.Zones, f.Area = PartZone, []string{z.Name}, s.areas[i]
				f.Product, f.Active = c.p.ProductName, c.p.Label.Words()
				out = append(out, f)
			}
		}
	}
	return out
}

// siteCase is one product on one zone.
type siteCase struct {
	s *situation
	z core.Zone
	p *core.Product
}

func (c siteCase) all(sites []core.Site) []Finding {
	var out []Finding
	add := func(f Finding, found bool) {
		if found {
			out = append(out, f)
		}
	}
	for _, site := range sites {
		switch site.Kind {
		case label.SiteWater, label.SiteWell:
			add(c.water(site))
		case label.SiteEdible:
			add(c.edible(site))
		case label.SiteRoots:
			add(c.roots(site))
		case label.SiteBloom:
			add(c.bloom())
		case label.SiteSeeding:
			add(c.seeding(site))
		}
	}
	if newTurf(c.z) {
		add(c.newTurf())
	}
	return out
}

func newTurf(z core.Zone) bool { return z.Growth == label.Seeded || z.Growth == label.Sodded }

// sitesOf are the sites of a zone, with the hazards in free words that are about one of a kind that is not entered.
func sitesOf(z core.Zone) []core.Site {
	out := append([]core.Site(nil), z.Sites...)
	for _, h := range z.Hazards {
		kind, ok := label.SiteOf(h)
		for _, site := range out {
			ok = ok && site.Kind != kind
		}
		if ok {
			out = append(out, core.Site{Kind: kind})
		}
	}
	return out
}

// today is the date of the day, else that of the clock.
func (s *situation) today() string {
	if d := s.b.Day(); d.Open {
		return d.Date
	}
	return s.in.At.Date()
}

// onLabel makes a finding one of the label entry's.
func (c siteCase) onLabel(about string, weight Weight) Finding {
	return Finding{Weight: weight, About: about, Ground: GroundLabel, Source: labelSource(c.p)}
}

func (c siteCase) name() string { return c.p.ProductName }

func feetWords(feet float64) string { return fmt.Sprintf("%.4g ft", feet) }

// water: nearer than the label's strip is a stop, nearer than the strip of the setting an ask for what feeds plants; a
// distance that is not entered is asked for where a strip holds.
func (c siteCase) water(site core.Site) (Finding, bool) {
	strip := c.p.Label.WaterFeet
	what := "the " + site.Kind
	if strip.Known && strip.V > 0 {
		f := c.onLabel(site.Kind, Stop)
		f.Limit, f.Unit, f.Figured = core.Known(strip.V), "ft", site.Feet
		asks := fmt.Sprintf("the label entry of %s asks for a strip of %s", c.name(), feetWords(strip.V))
		switch {
		case !site.Feet.Known:
			return c.howFar(f, what, asks), true
		case site.Feet.V < strip.V:
			f.Says = fmt.Sprintf("%s: %s is %s off; %s.", c.z.Name, what, feetWords(site.Feet.V), asks)
			f.Do = fmt.Sprintf("Leave %s of %s along %s, or leave the zone out.", feetWords(strip.V-site.Feet.V), c.z.Name, what)
			return f, true
		}
	}
	wide := c.s.b.Setting(core.WaterStripFt)
	if !feeds(c.p.Label) || wide <= 0 {
		return Finding{}, false
	}
	f := Finding{
		Weight: Ask, About: site.Kind, Ground: GroundSetting, Source: localRules(c.s.b.SettingSource(core.WaterStripFt)),
		Limit: core.Known(wide), Unit: "ft", Figured: site.Feet,
	}
	asks := fmt.Sprintf("%s feeds plants, and %s are left along water; local rules decide", c.name(), feetWords(wide))
	switch {
	case !site.Feet.Known:
		return c.howFar(f, what, asks), true
	case site.Feet.V < wide:
		f.Says = fmt.Sprintf("%s: %s is %s off; %s.", c.z.Name, what, feetWords(site.Feet.V), asks)
		f.Do = fmt.Sprintf("Leave %s of %s along %s, or what local rules ask.", feetWords(wide-site.Feet.V), c.z.Name, what)
		return f, true
	}
	return f, false
}

// localRules adds who decides, unless the source says it already.
func localRules(source string) string {
	const decide = "local rules decide"
	if strings.Contains(source, decide) {
		return source
	}
	return source + "; " + decide
}

// howFar asks for a distance that is not entered.
func (c siteCase) howFar(f Finding, what, asks string) Finding {
	f.Weight = Ask
	f.Says = fmt.Sprintf("%s: %s has no distance entered; %s.", c.z.Name, what, asks)
	f.Do = fmt.Sprintf("Look how far off %s is, and enter it with the zone.", what)
	return f
}

// feeds tells whether a product brings nitrogen or phosphorus, or may.
func feeds(e label.Entry) bool {
	n := e.NitrogenPerProduct()
	return !n.Known || n.V > 0 || e.Phosphate.V > 0
}
