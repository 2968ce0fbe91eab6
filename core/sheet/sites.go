package sheet

import (
	"regexp"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// A date or a distance at the end of a site.
var (
	siteDate = regexp.MustCompile(`^(.*?)\s+([0-9]{4}-[0-9]{1,2}-[0-9]{1,2})$`)
	siteFeet = regexp.MustCompile(`(?i)^(.*?)\s+([0-9][0-9.,]*)\s*(?:ft|feet|foot|')?$`)
)

// sites takes what lies in or beside a zone, each with how far off it is or when it will be, or was.
func sites() reader {
	allowed := "some of " + strings.Join(label.SiteKinds(), ", ") + " with semicolons between them, each with feet or a date behind it, such as water 20 ft; well; seeding 2026-09-10"
	return reader{allowed, func(cell string) (any, error) {
		var out []core.Site
		for _, s := range items(cell) {
			one, err := site(s)
			if err != nil {
				return nil, err
			}
			out = append(out, one)
		}
		return out, nil
	}}
}

func site(s string) (core.Site, error) {
	var out core.Site
	rest := s
	if m := siteDate.FindStringSubmatch(rest); m != nil {
		if _, err := date().read(m[2]); err != nil {
			return out, err
		}
		rest, out.Date = m[1], m[2]
	}
	if m := siteFeet.FindStringSubmatch(rest); m != nil {
		f, err := number("ft", 0, core.FurthestFeet).read(m[2])
		if err != nil {
			return out, err
		}
		rest, out.Feet = m[1], core.Known(f.(float64))
	}
	for _, k := range label.SiteKinds() {
		if w := headerName(rest); w == k || w == headerName(label.SiteWords(k)) {
			out.Kind = k
			return out, nil
		}
	}
	return out, &fault{what: quote(s) + " is no kind of site with its distance or date.", nearest: label.Nearest(rest, label.SiteKinds())}
}
