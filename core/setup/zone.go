package setup

import (
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/sheet"
)

// ZoneMore is the form of what is known of a zone besides area and grass. It is about the zone: PlaceOf.
const ZoneMore = "zone_more"

const (
	keyGrowth   = "growth"
	keySince    = "growth_since"
	keyCultivar = "cultivar"
	keySites    = "sites"
)

// PlaceOf names a zone of a lawn, or all of it, where a form is about it.
func PlaceOf(lawn, zone string) string {
	if zone == "" {
		return lawn
	}
	return lawn + "/" + zone
}

// place finds what PlaceOf named; the lawn is nil where the book has it not.
func place(b *core.Book, about string) (lawn *core.Lawn, zone int) {
	for _, l := range b.Lawns() {
		if about == l.LawnName {
			return l, -1
		}
		for i, z := range l.Zones {
			if about == PlaceOf(l.LawnName, z.Name) {
				return l, i
			}
		}
	}
	return nil, -1
}

// zoneMoreForm asks how the grass of a zone stands, which cultivar it is, and what lies beside it.
func zoneMoreForm(b *core.Book, about string) (Form, bool) {
	lawn, at := place(b, about)
	if lawn == nil || at < 0 {
		return Form{}, false
	}
	z := lawn.Zones[at]
	start := Answers{keyGrowth: z.Growth, keySince: z.GrowthSince, keyCultivar: z.Cultivar, keySites: SitesText(z.Sites)}
	grows := []Option{{"", label.GrowthWords("")}}
	for _, g := range label.Growths() {
		grows = append(grows, Option{g, label.GrowthWords(g)})
	}
	field := func(key, words, help string) Field {
		return Field{Key: key, Words: words, Start: start[key], Help: help, Allowed: allowed(sheet.Lawns, key), check: cell(sheet.Lawns, key)}
	}
	growth := field(keyGrowth, "grass is", "How it stands now. What injures it depends on that.")
	growth.Options, growth.Allowed, growth.check = grows, "one of the list", nil
	fields := []Field{
		growth,
		field(keySince, "since", "Blank: today. Of a new turf the date on which it was seeded or sodded."),
		field(keyCultivar, "cultivar", "Where it is known."),
		field(keySites, "beside it", "Feet off, or a date: water 20 ft; edible; seeding 2026-09-10."),
	}
	return Form{
		Name: ZoneMore, Title: "What is known of " + z.Name + ", " + lawn.LawnName,
		Pages: []Page{{Title: "growth and sites", Fields: fields}, {Title: "for the application record", Fields: forRecord(lawn, z)}},
		facts: func(b *core.Book, _ core.Moment, a Answers) ([]core.Fact, error) {
			return zoneFacts(b, about, start, a)
		},
	}, true
}

// zoneFacts are what has changed: the lawn's entry, and how the grass stands as a thing that was seen.
func zoneFacts(b *core.Book, about string, start, a Answers) ([]core.Fact, error) {
	lawn, at := place(b, about)
	if lawn == nil || at < 0 {
		return nil, &Wrong{What: "The zone is gone from the book.", Do: "Leave the form."}
	}
	var out []core.Fact
	c := *lawn
	c.Zones = slices.Clone(lawn.Zones)
	changed := takeForRecord(&c, &c.Zones[at], a)
	if a[keyCultivar] != start[keyCultivar] || a[keySites] != start[keySites] {
		sites, err := readSites(a[keySites])
		if err != nil {
			return nil, err
		}
		c.Zones[at].Cultivar, c.Zones[at].Sites, changed = a[keyCultivar], sites, true
	}
	if changed {
		out = append(out, &c)
	}
	if a[keyGrowth] == start[keyGrowth] && a[keySince] == start[keySince] {
		return out, nil
	}
	if a[keyGrowth] == "" {
		return nil, &Wrong{Field: keyGrowth, What: "How the grass stands is not chosen.", Do: "Choose one of the list."}
	}
	seen := &core.GrowthSeen{Lawn: lawn.LawnName, Zones: []string{lawn.Zones[at].Name}, Growth: a[keyGrowth], Since: a[keySince]}
	if a[keyGrowth] != start[keyGrowth] && a[keySince] == start[keySince] {
		seen.Since = "" // the date that stands there is that of the state before
	}
	return append(out, seen), nil
}

// readSites reads what lies beside a zone as the column of a file does.
func readSites(said string) ([]core.Site, error) {
	fact, err := sheet.Row(sheet.Lawns, map[string]string{"lawn": "any", "zone": "any", "grass": label.Grasses()[0].Name, "area_sqft": "1", keySites: said}, nil)
	if err != nil {
		return nil, err
	}
	return fact.(*core.Lawn).Zones[0].Sites, nil
}

// SitesText is what lies beside a zone as it would be typed.
func SitesText(sites []core.Site) string {
	var out []string
	for _, s := range sites {
		words := s.Kind
		if s.Feet.Known {
			words += " " + figure(s.Feet.V) + " ft"
		}
		if s.Date != "" {
			words += " " + s.Date
		}
		out = append(out, words)
	}
	return strings.Join(out, Joint)
}
