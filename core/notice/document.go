package notice

import (
	"example.com/tintline/core"
	"example.com/tintline/core/printed"
)

// Document is the overview as JSON: keys end in their unit, times are RFC 3339, no list is null.
type Document struct {
	At         string         `json:"at"`
	State      *string        `json:"state"`
	Owed       []OwedRow      `json:"owed"`
	Signs      []SignRow      `json:"signs"`
	Clocks     []ClockRow     `json:"reentry"`
	Neighbours []NeighbourRow `json:"neighbours"`
	Contacts   []ContactRow   `json:"contacts"`
}

// OwedRow is something owed.
type OwedRow struct {
	Kind   string  `json:"kind"`
	Lawn   string  `json:"lawn"`
	Date   string  `json:"date"`
	Who    *string `json:"who"`
	Do     string  `json:"do"`
	Says   string  `json:"says"`
	From   *string `json:"from"`
	To     *string `json:"to"`
	Source string  `json:"source"`
}

// SignRow are signs that stand.
type SignRow struct {
	Lawn  string  `json:"lawn"`
	Count int64   `json:"count"`
	Up    string  `json:"up"`
	Due   *string `json:"until"`
}

// ClockRow is a re-entry clock. Words are those of the label entries; not_entered are products whose entry has none.
type ClockRow struct {
	Lawn  string   `json:"lawn"`
	Laid  string   `json:"laid"`
	Until *string  `json:"until"`
	Left  string   `json:"left"`
	Words []string `json:"words"`
	Blank []string `json:"not_entered"`
}

// NeighbourRow is somebody to be told.
type NeighbourRow struct {
	Lawn       string   `json:"lawn"`
	Name       string   `json:"name"`
	Phone      *string  `json:"phone"`
	Feet       *float64 `json:"feet"`
	HoursLeast *float64 `json:"hours_least"`
	HoursMost  *float64 `json:"hours_most"`
	Calls      int64    `json:"calls"`
	Until      *string  `json:"until"`
	Register   string   `json:"register"`
	Note       *string  `json:"note"`
}

// ContactRow is a contact or an attempt.
type ContactRow struct {
	At     string   `json:"at"`
	Lawn   string   `json:"lawn"`
	For    string   `json:"for"`
	Whom   string   `json:"whom"`
	Name   *string  `json:"name"`
	How    string   `json:"how"`
	Result string   `json:"result"`
	Given  []string `json:"given"`
}

func text(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}

func moment(m core.Moment) *string {
	if m.Zero() {
		return nil
	}
	return text(m.String())
}

func texts(list []string) []string { return append([]string{}, list...) }

// Document is the overview for JSON.
func (o *Overview) Document() Document {
	d := Document{At: o.now.String(), State: text(o.state), Owed: []OwedRow{}, Signs: []SignRow{}, Clocks: []ClockRow{}, Neighbours: []NeighbourRow{}, Contacts: []ContactRow{}}
	for i := range o.Owed {
		w := &o.Owed[i]
		d.Owed = append(d.Owed, OwedRow{w.Kind, w.Lawn, w.Date, text(w.Who), w.Do, w.Says, moment(w.From), moment(w.To), w.Source})
	}
	for _, g := range o.Signs {
		d.Signs = append(d.Signs, SignRow{g.Lawn, g.Count, g.Up.String(), moment(g.Due)})
	}
	for i := range o.Clocks {
		c := &o.Clocks[i]
		d.Clocks = append(d.Clocks, ClockRow{c.Lawn, c.Laid.String(), moment(c.Until), c.Left(o.now), texts(c.Words), texts(c.Blank)})
	}
	for i := range o.Neighbours {
		n := &o.Neighbours[i]
		d.Neighbours = append(d.Neighbours, NeighbourRow{
			n.Lawn, n.NeighbourName, text(n.Phone), n.Feet.Pointer(), n.HoursLeast.Pointer(), n.HoursMost.Pointer(), n.Calls, text(n.Until), n.Register, text(n.Note),
		})
	}
	for i := range o.Contacts {
		c := &o.Contacts[i]
		d.Contacts = append(d.Contacts, ContactRow{c.At.String(), c.Lawn, c.For, c.Whom, text(c.Person), c.How, c.Result, texts(c.Given)})
	}
	return d
}

// Flat is a notice as JSON: its pairs by their names, its lines, and its table as rows by the titles of the columns.
func Flat(d printed.Document) map[string]any {
	pairs, lines, rows := map[string]string{}, []string{}, []map[string]string{}
	for _, p := range d.Parts {
		for _, q := range p.Pairs {
			pairs[q.Name] = q.Says
		}
		lines = append(lines, p.Lines...)
		for _, r := range p.Table.Rows {
			row := map[string]string{}
			for i, c := range p.Table.Columns {
				row[c.Head()] = r[i]
			}
			rows = append(rows, row)
		}
	}
	return map[string]any{"title": d.Title, "business": texts(d.About), "says": pairs, "lines": lines, "products": rows, "foot": texts(d.Foot)}
}
