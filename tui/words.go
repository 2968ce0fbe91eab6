package tui

import (
	"fmt"
	"strings"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// sentence gives words a capital and a full stop.
func sentence(s string) string {
	if s == "" {
		return ""
	}
	if c := s[0]; c >= 'a' && c <= 'z' {
		s = string(c-'a'+'A') + s[1:]
	}
	if strings.ContainsRune(".!?", rune(s[len(s)-1])) {
		return s
	}
	return s + "."
}

func joined(list []string) string { return strings.Join(list, " + ") }

// glance is a volume for the eye: whole gallons from 20 up.
func glance(v measure.Volume) string {
	const coarse = 20 * measure.USGallon
	switch {
	case v == 0:
		return "0"
	case v < coarse:
		return v.Text()
	}
	return wholeWords(v.Gallons())
}

// wholeWords is a figure without decimals.
func wholeWords(f float64) string { return measure.SecondsText(f) }

// size is a capacity, which is mostly whole: "300", "14", "2.5".
func size(v measure.Volume) string {
	s := v.Text()
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// bandWords is a give or take to a tenth of a gallon.
func bandWords(v measure.Volume) string {
	return strings.TrimSuffix(measure.Multiple(v.Gallons()), ".0")
}

// grassWords names the grasses of zones, each once.
func grassWords(zones []core.Zone) string {
	var out []string
	seen := map[string]bool{}
	for _, z := range zones {
		if !seen[z.Grass] {
			seen[z.Grass] = true
			out = append(out, label.GrassWords(z.Grass))
		}
	}
	return joined(out)
}

// hazardWords lists the hazards of zones, each once.
func hazardWords(zones []core.Zone) string {
	var out []string
	seen := map[string]bool{}
	for _, z := range zones {
		for _, h := range z.Hazards {
			if !seen[h] {
				seen[h] = true
				out = append(out, h)
			}
		}
	}
	return strings.Join(out, ", ")
}

// rateWords is an applicator's delivery: "1.50 gal per 1,000 sq ft".
func rateWords(a *core.Applicator) string {
	return a.Delivery.Volume(measure.ThousandSquareFeet).Text() + " gal per 1,000 sq ft"
}

// shortRules are the words for rules whose name says too little.
var shortRules = map[string]string{"season": "too much this year", "interval": "too soon", "trace": "residue"}

// shortThings are the words for what a finding is about, where its rule looks at several things.
var shortThings = map[string]string{
	"wind": "wind", "temperature": "temperature", "inversion": "inversion", "rain": "rain", "drying": "drying", "age": "old weather", "growth": "growth", "date": "restricted date", "phosphorus": "phosphorus", "own note": "own note", "new_turf": "new turf",
	"strainers": "strainers", "agitation": "agitation", "no agitation": "agitation", "standing": "standing time", "pressure": "pressure", "flow": "flow", "pump flow": "flow of the pump",
	label.SiteWater: "water", label.SiteWell: "well", label.SiteEdible: "edible bed", label.SiteRoots: "tree roots", label.SiteBloom: "bloom", label.SiteSeeding: "seeding",
}

// ruleShort is the word for what a finding is about.
func ruleShort(f check.Finding) string {
	if w := shortThings[f.About]; w != "" {
		return w
	}
	if w := shortRules[f.Rule]; w != "" {
		return w
	}
	return strings.ReplaceAll(f.Rule, "_", "-")
}

// ruleWords names a finding shortly: "grass, warm weed".
func ruleWords(f check.Finding) string {
	s := ruleShort(f)
	if f.Product != "" {
		s += ", " + f.Product
	}
	if n := len(f.Products); n > 1 {
		s += fmt.Sprintf(" and %d more", n-1)
	}
	return s
}

// groundWords say where a limit comes from.
func groundWords(ground string) string { return check.GroundWords(ground) }

// ageWords is how long ago something was: "22 min ago", "3 h ago".
func ageWords(at core.Moment, now time.Time) string {
	const hour = time.Hour
	age := now.Sub(at.Time())
	switch {
	case age < 0:
		return "later than the clock"
	case age < time.Minute:
		return "just now"
	case age < 2*hour:
		return wholeWords(age.Truncate(time.Minute).Minutes()) + " min ago"
	}
	return wholeWords(age.Truncate(hour).Hours()) + " h ago"
}
