package notice

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/printed"
	"example.com/tintline/core/tally"
)

// Overview is what is owed, which signs stand, when lawns may be entered again by their label entries, and who is to be told.
type Overview struct {
	Owed       []Owed
	Signs      []core.Signs // that stand
	Clocks     []Clock
	Neighbours []core.Neighbour
	Contacts   []core.Contact
	now        core.Moment
	state      string
}

// Look is the overview of a book at a moment.
func Look(b *core.Book, now core.Moment) Overview {
	o := Overview{Owed: List(b, now), Clocks: Clocks(b), Neighbours: b.AllNeighbours(), Contacts: b.AllContacts(), now: now, state: stateOf(b)}
	for _, g := range b.AllSigns() {
		if g.Down.Zero() {
			o.Signs = append(o.Signs, g)
		}
	}
	return o
}

// Short is what is owed in one line; empty if nothing is.
func Short(list []Owed) string {
	n := map[string]int{}
	for i := range list {
		n[list[i].Kind]++
	}
	var out []string
	for _, k := range []struct{ kind, one, many string }{
		{KindNeighbour, "neighbour to tell", "neighbours to tell"},
		{KindSignUp, "sign to put up", "signs to put up"},
		{KindNotice, "notice to leave", "notices to leave"},
		{KindSignDown, "sign to take down", "signs to take down"},
	} {
		switch n[k.kind] {
		case 0:
		case 1:
			out = append(out, "1 "+k.one)
		default:
			out = append(out, fmt.Sprintf("%d %s", n[k.kind], k.many))
		}
	}
	return strings.Join(out, ", ")
}

// Window is the time in which something is to be done, in words; empty if none is set.
func (o *Owed) Window() string {
	at := func(m core.Moment) string { return m.Date() + " " + m.Clock() }
	switch {
	case !o.From.Zero() && !o.To.Zero():
		return at(o.From) + " to " + at(o.To)
	case !o.To.Zero():
		return "until " + at(o.To)
	case !o.From.Zero():
		return "from " + at(o.From)
	}
	return ""
}

// Printed is the overview as it is handed out.
func (o *Overview) Printed() printed.Document {
	d := printed.Document{Title: "Notices and signs", About: []string{"as of " + o.now.Date() + ", " + o.now.Clock()}, Foot: []string{decides}}
	if o.state == "" {
		d.Foot = append(d.Foot, "No state is set, so no rule on notices or signs is held against the day.")
	}
	d.Parts = []printed.Part{
		{Title: "Owed", Table: o.OwedTable()},
		{Title: "Signs that stand", Table: o.SignTable()},
		{Title: "Going back onto the lawn, by the label entries", Table: o.ClockTable()},
		{Title: "Neighbours to be told", Table: o.NeighbourTable()},
		{Title: "Contacts and attempts", Table: o.ContactTable()},
	}
	for i := range d.Parts {
		if p := &d.Parts[i]; len(p.Table.Rows) == 0 {
			p.Lines, p.Table = []string{"none"}, printed.Table{}
		}
	}
	return d
}

func words(titles ...string) []printed.Column {
	var out []printed.Column
	for _, t := range titles {
		out = append(out, printed.Column{Title: t, Left: true})
	}
	return out
}

// OwedTable has what to do in its first column.
func (o *Overview) OwedTable() printed.Table {
	t := printed.Table{Columns: words("to do", "when", "why")}
	for i := range o.Owed {
		w := &o.Owed[i]
		t.Rows = append(t.Rows, []string{w.Do, w.Window(), w.Says})
	}
	return t
}

// SignTable lists the signs that stand.
func (o *Overview) SignTable() printed.Table {
	t := printed.Table{Columns: words("lawn", "signs", "put up", "to stay until")}
	for _, g := range o.Signs {
		until := "no time is set"
		if !g.Due.Zero() {
			until = g.Due.Date() + " " + g.Due.Clock()
		}
		t.Rows = append(t.Rows, []string{g.Lawn, fmt.Sprint(g.Count), g.Up.Date() + " " + g.Up.Clock(), until})
	}
	return t
}

// ClockTable lists the re-entry clocks.
func (o *Overview) ClockTable() printed.Table {
	t := printed.Table{Columns: words("lawn", "last piece", "left", "words of the label entries")}
	for i := range o.Clocks {
		c := &o.Clocks[i]
		said := c.Words
		for _, p := range c.Blank {
			said = append(said[:len(said):len(said)], p+": not entered, the label in hand decides")
		}
		t.Rows = append(t.Rows, []string{c.Lawn, c.Laid.Clock(), c.Left(o.now), strings.Join(said, "; ")})
	}
	return t
}

// NeighbourTable lists who is to be told.
func (o *Overview) NeighbourTable() printed.Table {
	t := printed.Table{Columns: words("lawn", "who", "phone", "off (ft)", "ahead", "until", "why", "note")}
	for i := range o.Neighbours {
		n := &o.Neighbours[i]
		feet := ""
		if n.Feet.Known {
			feet = fmt.Sprintf("%g", n.Feet.V)
		}
		t.Rows = append(t.Rows, []string{n.Lawn, n.NeighbourName, n.Phone, feet, n.Ahead(), n.Until, strings.ReplaceAll(n.Register, "_", " "), n.Note})
	}
	return t
}

// ContactTable lists each contact and each attempt.
func (o *Overview) ContactTable() printed.Table {
	t := printed.Table{Columns: words("when", "lawn", "for", "who", "how", "came of it")}
	for i := range o.Contacts {
		c := &o.Contacts[i]
		who := c.Person
		if who == "" {
			who = c.Whom
		}
		came := core.GivenWords(c.Given)
		if !c.Reached() {
			came = "no answer"
		}
		t.Rows = append(t.Rows, []string{c.At.Date() + " " + c.At.Clock(), c.Lawn, c.For, who, core.ContactWords(c.How), came})
	}
	return t
}

// OfDay is what the records of an ended day say of signs, notices and neighbours, a row a lawn.
func OfDay(date string, records []tally.Record) printed.Document {
	t := printed.Table{Columns: words("lawn", "signs", "notices and copies", "neighbours told")}
	seen := map[string]bool{}
	for i := range records {
		if r := &records[i]; !seen[r.Lawn] {
			seen[r.Lawn] = true
			t.Rows = append(t.Rows, []string{r.Lawn, none(r.SignsAt), none(r.Notice), none(r.Neighbours)})
		}
	}
	return printed.Document{
		Title: "Notices and signs of " + date, Parts: []printed.Part{{Table: t}},
		Foot: []string{"What was entered after that day was ended stands in the journal.", decides},
	}
}

func none(s string) string {
	if s == "" {
		return "none"
	}
	return s
}
