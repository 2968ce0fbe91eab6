package season

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/printed"
)

// foot says who decides.
var foot = []string{
	"Sums are those of the book. The product label, the rules of the place and licensed practice decide; what is blank in a label entry is not checked.",
}

// Sheet is the season of one lawn on one page.
func (s *Season) Sheet(lawn string) (printed.Document, error) {
	for i := range s.Lawns {
		if s.Lawns[i].Lawn == lawn {
			return s.sheet(&s.Lawns[i]), nil
		}
	}
	return printed.Document{}, &core.Problem{What: fmt.Sprintf("There is no lawn %q in the book, and none of that name was treated in %s.", lawn, s.Year), Do: "Write its name as it stands in the book.", Err: core.ErrRefused}
}

func (s *Season) sheet(l *Lawn) printed.Document {
	d := printed.Document{OnePage: true, Title: "Season " + s.Year + ": " + l.Lawn, Foot: foot}
	d.About = append(d.About, fmt.Sprintf("As of %s. %s in %s: %s gal sprayed, %s lb spread, %s sq ft treated.", s.To, counted(l.Rounds, "round"), s.Year,
		l.Volume.Text(), measure.Commas(l.Mass.Pounds(), 1), l.Area.Text()))
	switch e := l.Due.Else(); {
	case !s.Kept:
		d.About = append(d.About, "The book keeps limits and dates of this year and the last; of "+s.Year+" it has what was laid.")
	case s.Over:
		d.About = append(d.About, "The year is over: what is left and what is due stands on the sheet of this year.")
	case e != "":
		d.About = append(d.About, l.Due.Words(), "Besides: "+e+".")
	default:
		d.About = append(d.About, l.Due.Words())
	}
	if l.Gone {
		d.About = append(d.About, "The book has no lawn of this name any more; what was laid under it stands here.")
	}
	var who []string
	for _, w := range []string{l.Customer, l.Address} {
		if w != "" && w != l.Lawn {
			who = append(who, w)
		}
	}
	if len(who) > 0 {
		d.About = append(d.About, strings.Join(who, ", "))
	}
	for i := range l.Zones {
		d.Parts = append(d.Parts, s.zonePart(&l.Zones[i]))
	}
	return d
}

func (s *Season) zonePart(z *Zone) printed.Part {
	title := z.Zone + ", " + label.GrassWords(z.Grass)
	if z.Area > 0 {
		title += ", " + z.Area.Text() + " sq ft"
	}
	p := printed.Part{Title: title}
	if z.Gone {
		p.Lines = append(p.Lines, "The lawn as it is entered now has no zone of this name: what was laid on it counts in no sum of another zone.")
	}
	if len(z.Used) == 0 {
		p.Lines = append(p.Lines, "Nothing was laid there in "+s.Year+", as far as the book has it.")
	} else {
		p.Table = s.zoneTable(z)
	}
	for _, w := range []string{z.Nitrogen.Words(), z.Phosphate.words("P2O5")} {
		if w != "" {
			p.Lines = append(p.Lines, w)
		}
	}
	p.Lines = append(p.Lines, z.left()...)
	for i := range z.Actives {
		if w := activeWords(&z.Actives[i]); w != "" {
			p.Lines = append(p.Lines, w)
		}
	}
	for i := range z.Used {
		if l := z.Used[i].Line.V; z.Used[i].Line.Known && l.From != s.Year+"-01-01" {
			p.Lines = append(p.Lines, z.Used[i].Product+": times and sum are counted from "+l.From+", the label's own year.")
		}
	}
	if z.UnknownBefore != "" {
		p.Lines = append(p.Lines, "What was laid before "+z.UnknownBefore+" is not in the book.")
	}
	return p
}

func (s *Season) zoneTable(z *Zone) printed.Table {
	t := printed.Table{Columns: []printed.Column{
		{Title: "product", Left: true},
		{Title: "went down"},
		{Title: "times"},
		{Title: "per 1,000 sq ft"},
		{Title: "last", Left: true},
		{Title: "again from", Left: true},
		{Title: "label still allows"},
	}}
	for i := range z.Used {
		t.Rows = append(t.Rows, z.Used[i].cells(z, s.Year))
	}
	return t
}

// Document is the season arranged in one way.
func (s *Season) Document(by string) printed.Document {
	d := printed.Document{Title: "Season " + s.Year + ", " + Titles[by], About: []string{s.AllWords()}, Foot: foot}
	if by == ByPlots {
		for _, c := range s.Charts() {
			d.Parts = append(d.Parts, c.part())
		}
		return d
	}
	d.Parts = []printed.Part{{Table: s.Table(by), Lines: s.notes(by)}}
	return d
}

// AllWords is the season in one line.
func (s *Season) AllWords() string {
	return fmt.Sprintf("As of %s: %s gal sprayed, %s lb spread, %s sq ft treated on %s.", s.To, s.All.Volume.Text(), measure.Commas(s.All.Mass.Pounds(), 1), s.All.Area.Text(), counted(len(s.Days), "day"))
}

// notes say how a way is to be read.
func (s *Season) notes(by string) []string {
	switch by {
	case ByDue:
		return []string{"Due is the day of the last treatment and a round after it; what the label makes wait stands beside it."}
	case ByProduct:
		return []string{"Stock and orders are as of now; what was bought is known of the year of the book's day."}
	case ByRound:
		return []string{"A lawn's next round begins with what comes half a round or more after its last one began; what comes sooner belongs to that one."}
	}
	return nil
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// part is a chart on paper: the figures as a table with the bar beside each, so that it stands in any type.
func (c *Chart) part() printed.Part {
	p := printed.Part{Title: c.Title}
	if len(c.Bars) == 0 {
		p.Lines = []string{c.None + "."}
		return p
	}
	p.Table.Columns = []printed.Column{{Title: "", Left: true}, {Title: c.Unit}, {Title: c.axisWords(), Left: true}}
	for i, b := range c.barsOnly('#', '|') {
		p.Table.Rows = append(p.Table.Rows, []string{c.Bars[i].Name, c.Bars[i].Says, b})
	}
	return p
}
