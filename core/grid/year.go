package grid

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/say"
)

// Year says what went on a zone in the year of a date, product by product, actives that have a limit, and nitrogen. What came as a trace only is named last.
func Year(b *core.Book, lawn string, z core.Zone, date string) []Told {
	var out []Told
	var traces []string
	before := ""
	for _, l := range b.SeasonOf(lawn, z.Name, date) {
		before = max(before, l.UnknownBefore)
		switch {
		case l.Of == core.OfProduct && l.Times == 0 && len(l.Unknown) == 0:
			traces = append(traces, l.Name)
		case l.Of == core.OfActive && !l.Limit.Known:
		default:
			out = append(out, Told{l.Name, say.Season(l)})
		}
	}
	if len(traces) > 0 {
		out = append(out, Told{"traces", "of " + strings.Join(traces, ", ")})
	}
	if len(out) == 0 {
		out = append(out, Told{"nothing", "is in the book of this year"})
		before = max(before, knownSince(b, lawn, date))
	}
	if before != "" {
		out = append(out, Told{"not known", "what was laid before " + before + " is not in the book"})
	}
	return out
}

// knownSince is the date since which the book has all, if it lies in the year of a date.
func knownSince(b *core.Book, lawn, date string) string {
	since := b.KnownSince(lawn)
	if len(date) < len("2026") || since <= date[:len("2026")]+"-01-01" {
		return ""
	}
	return since
}

// NitrogenRange is what the reference has of nitrogen in a year for a grass, in the region of the operator's place; without
// one in all regions.
func NitrogenRange(b *core.Book, grass string) string {
	region, set := b.SettingText(core.NitrogenRegion)
	if !set || region == "none" {
		region = ""
	}
	rows := label.NitrogenOf(label.NitrogenYear, grass, region)
	if len(rows) == 0 {
		return "the reference has no range for " + label.GrassWords(grass)
	}
	var parts []string
	for _, r := range rows {
		parts = append(parts, fmt.Sprintf("%s in %s (%s)", span(r.Low, r.High, "lb"), r.Region, shortSource(r.Source)))
	}
	words := "nitrogen for a year of " + label.GrassWords(grass) + ", per 1,000 sq ft: " + strings.Join(parts, ", ")
	if region == "" {
		return words + "; no region is set among the settings"
	}
	return words
}

// shortSource is who says so, without the title.
func shortSource(id string) string {
	s, ok := label.FindSource(id)
	if !ok {
		return id
	}
	return s.Institution
}
