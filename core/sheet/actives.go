package sheet

import (
	"fmt"
	"regexp"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// content is an active with how much of it is in the product; bare is a figure at the end without its unit; most is
// what follows on a year.
var (
	content = regexp.MustCompile(`(?i)^(.+?)\s+([0-9]*\.?[0-9]+)\s*(?:(%|per ?cent)|lbs?\s*(?:/|per)\s*gal(?:lons?)?)$`)
	bare    = regexp.MustCompile(`(?i)(?:\s[0-9]*\.?[0-9]+|%|per ?cent|gal(?:lons?)?)$`)
	most    = regexp.MustCompile(`(?i)^(.+?)\s+most\s+(.+?)(?:\s*(?:per|a|in a|/)\s*(?:year|yr))?$`)
)

// ownActive stands before an active that the reference does not have.
const ownActive = "own:"

// actives takes active ingredients, each with its content or without.
func actives() reader {
	allowed := "actives, each with its content in % by weight or lb/gal, such as iron 5%; mesotrione 4 lb/gal most 0.5 lb per acre per year; one that the reference does not have as own: its name"
	return reader{allowed, func(cell string) (any, error) {
		var out []label.Active
		for _, s := range items(cell) {
			a, err := active(s)
			if err != nil {
				return nil, err
			}
			out = append(out, a)
		}
		return out, nil
	}}
}

// Actives are those of a cell that can be read.
func Actives(cell string) []label.Active {
	v, err := actives().read(trim(cell))
	if err != nil {
		return nil
	}
	return v.([]label.Active)
}

func active(s string) (label.Active, error) {
	a := label.Active{Name: s}
	own := len(s) > len(ownActive) && strings.EqualFold(s[:len(ownActive)], ownActive)
	if own {
		a.Name = strings.TrimSpace(s[len(ownActive):])
	}
	if m := most.FindStringSubmatch(a.Name); m != nil {
		r, err := typedRate(m[2]).of(measure.Dry)
		if err != nil {
			return a, err
		}
		a.Name, a.MostYear = m[1], core.Known(r)
	}
	if m := content.FindStringSubmatch(a.Name); m != nil {
		f, err := measure.ParseNumber(m[2])
		if err != nil {
			return a, err
		}
		a.Name = strings.TrimSpace(m[1])
		most := 100.0
		if m[3] == "" {
			a.PoundsPerGallon, most = f, core.MostPoundsPerGallon
		} else {
			a.PercentByWeight = f
		}
		if !(f > 0) || f > most {
			return a, faultf("The content in %s is out of range: more than 0 and up to 100%% or %d lb/gal.", quote(s), core.MostPoundsPerGallon)
		}
	} else if bare.MatchString(a.Name) {
		return a, faultf("The content in %s cannot be read.", quote(s))
	}
	if !own && !label.KnownActive(a.Name) {
		return a, unknownActive(a.Name)
	}
	// A slash may stand in the name of an active, which is no place in the book.
	return a, core.CheckName("active", strings.ReplaceAll(a.Name, "/", " "))
}

// unknownActive lists what may have been meant, and how one is entered that the reference does not have.
func unknownActive(name string) error {
	return &fault{
		what:    fmt.Sprintf("%s is no active that the reference knows; one that it does not have is written as %s %s.", quote(name), ownActive, name),
		nearest: strings.Join(label.NearestActives(name), ", "),
	}
}
