package closing

import (
	"fmt"
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/tally"
)

// overMeasured is by how much more than its measured area a zone may have got before it is said.
//
// Common practice, no source: what a person who paces a lawn is off by.
const overMeasured = 1.1

// Open lists what does not add up, or is not done, each in one line with its figures. None: the day adds up.
func Open(b *core.Book, at core.Moment) []string {
	if !b.Day().Open {
		return nil
	}
	out := openVisits(b)
	out = append(out, openTanks(b)...)
	out = append(out, openAreas(b)...)
	out = append(out, openMeters(b, at)...)
	out = append(out, openStock(b)...)
	out = append(out, openRecords(b)...)
	return append(out, openNotices(b, at)...)
}

func openVisits(b *core.Book) []string {
	var out []string
	d := b.Day()
	for i := range d.Visits {
		v := &d.Visits[i]
		switch {
		case v.State == core.Begun:
			out = append(out, v.Lawn+" is begun and not ended")
		case v.State == core.Planned:
			out = append(out, v.Lawn+" was not reached and is not carried over")
		case v.State == core.Done && v.Kind != core.LookOnly && len(d.LaidAt(v)) == 0:
			out = append(out, v.Lawn+" was left and nothing is logged on it")
		}
	}
	return out
}

func openTanks(b *core.Book) []string {
	var out []string
	p := b.Plumbing()
	for i := range p.Compartments {
		c := &p.Compartments[i]
		if moved(b, c) {
			out = append(out, fmt.Sprintf("%c: the gauge was not read since it was last drawn from or filled", c.Letter))
		}
		band := b.Band(&c.Tank)
		off := c.Flows.Unexplained
		if shown := b.Day().ShownBy(c.Letter); shown != nil {
			off += shown.Trued.Or(0)
		}
		if max(off, -off) > band {
			words := "less"
			if off > 0 {
				words = "more"
			}
			out = append(out, fmt.Sprintf("%c: the gauge showed %s gal %s than was logged, give or take %s", c.Letter, max(off, -off).Text(), words, band.Text()))
		}
	}
	return out
}

// openAreas are zones that got more area than they have, over the day.
func openAreas(b *core.Book) []string {
	d := b.Day()
	type place struct{ lawn, zone string }
	var order []place
	sum := map[place]measure.Area{}
	areas := tally.Treated(d)
	for i := range d.Laid {
		l := &d.Laid[i]
		k := place{l.Lawn, l.Zone}
		if _, seen := sum[k]; !seen {
			order = append(order, k)
		}
		sum[k] += areas[i]
	}
	var out []string
	for _, k := range order {
		lawn := b.Lawn(k.lawn)
		if lawn == nil {
			continue
		}
		if z, ok := lawn.Zone(k.zone); ok && float64(sum[k]) > float64(float64(z.Area)*overMeasured) {
			out = append(out, fmt.Sprintf("%s, %s: %s sq ft logged today, and it has %s", k.lawn, k.zone, sum[k].Text(), z.Area.Text()))
		}
	}
	return out
}

// openRecords: fields that the rule of the operator's state asks for.
func openRecords(b *core.Book) []string {
	rows := 0
	var fields []string
	list := tally.RecordsOf(b)
	for i := range list {
		missing := tally.MissingFor(b, &list[i])
		if len(missing) > 0 {
			rows++
		}
		for _, f := range missing {
			if !slices.Contains(fields, f.Title) {
				fields = append(fields, f.Title)
			}
		}
	}
	if rows == 0 {
		return nil
	}
	return []string{fmt.Sprintf("%d of %d records miss %s", rows, len(list), strings.Join(fields, ", "))}
}

// Close is the fact that closes the day: what stays overnight, the reason where something is open, and what that is.
func Close(b *core.Book, at core.Moment, reason, overnight string) *core.DayClosed {
	if overnight == "" {
		overnight = fitting(Overnight(b))
	}
	open := Open(b, at)
	for i := range open {
		open[i] = fitting(open[i])
	}
	return &core.DayClosed{Overnight: overnight, Reason: reason, Open: open}
}

// fitting cuts a line to what an entry holds: a close is never refused for what the program itself says.
func fitting(s string) string {
	if r := []rune(s); len(r) > core.LongestText {
		return string(r[:core.LongestText-4]) + " ..."
	}
	return s
}

// Overnight says in a line what stays in the tanks.
func Overnight(b *core.Book) string {
	var out []string
	for _, s := range stays(b) {
		out = append(out, s.Says)
	}
	if len(out) == 0 {
		return "all tanks and lines are empty"
	}
	return strings.Join(out, "; ")
}
