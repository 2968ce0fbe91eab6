package upkeep

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/printed"
)

// Document is all that there is to say of upkeep, for JSON.
type Document struct {
	Date     string     `json:"date"`
	Tasks    []TaskRow  `json:"tasks"`
	Papers   []PaperRow `json:"papers"`
	Lists    []ListRow  `json:"lists"`
	EngineH  *float64   `json:"engine_h"`
	PumpH    *float64   `json:"pump_h"`
	Odometer *float64   `json:"odometer_mi"`
	Pumped   float64    `json:"through_pump_gal"`
}

// TaskRow is a task.
type TaskRow struct {
	Task   string  `json:"task"`
	State  string  `json:"state"`
	Says   string  `json:"says"`
	Share  float64 `json:"share"`
	Every  string  `json:"every"`
	Done   *string `json:"done"`
	Words  string  `json:"words"`
	Source string  `json:"source"`
}

// PaperRow is a paper.
type PaperRow struct {
	Paper  string `json:"paper"`
	Kind   string `json:"kind"`
	Number string `json:"number"`
	Until  string `json:"until"`
	Days   int    `json:"days_left"`
	State  string `json:"state"`
	Says   string `json:"says"`
}

// ListRow is a check list.
type ListRow struct {
	List  string    `json:"list"`
	Items []ItemRow `json:"items"`
}

// ItemRow is a line of it.
type ItemRow struct {
	Item   string `json:"item"`
	Done   bool   `json:"done"`
	Source string `json:"source"`
}

// DocumentOf gathers it as of a moment.
func DocumentOf(b *core.Book, at core.Moment) Document {
	m := b.Meters()
	d := Document{
		Date: at.Date(), Tasks: []TaskRow{}, Papers: []PaperRow{}, Lists: []ListRow{},
		EngineH: m.Engine.Last.Pointer(), PumpH: m.Pump.Last.Pointer(), Odometer: m.Odometer.Last.Pointer(), Pumped: b.Pumped().Gallons(),
	}
	for _, it := range Due(b, at) {
		row := TaskRow{Task: it.Task.TaskName, State: it.State, Says: it.Says, Share: it.Share, Every: it.Every, Words: it.Task.Words, Source: it.Task.Source}
		if it.Done != "" {
			done := it.Done
			row.Done = &done
		}
		d.Tasks = append(d.Tasks, row)
	}
	for _, p := range Papers(b, at.Date()) {
		d.Papers = append(d.Papers, PaperRow{p.PaperName, p.Type, p.Number, p.Until, p.Days, p.State, p.Says})
	}
	for _, name := range Lists() {
		row := ListRow{List: name, Items: []ItemRow{}}
		for _, i := range List(b, name, at.Date()) {
			row.Items = append(row.Items, ItemRow{i.Item, i.Done, i.Source})
		}
		d.Lists = append(d.Lists, row)
	}
	return d
}

// ManualCaution stands under what is due.
const ManualCaution = "The machine's own manual goes before these figures; they are values to start with."

// Printed is it as it is handed out.
func (d Document) Printed() printed.Document {
	out := printed.Document{Title: "Upkeep of the rig", About: []string{"as of " + d.Date}, Foot: []string{ManualCaution}}
	tasks := printed.Part{Title: "Tasks", Table: printed.Table{Columns: []printed.Column{{Title: "task", Left: true}, {Title: "state", Left: true}, {Title: "how far", Left: true}, {Title: "every", Left: true}, {Title: "done", Left: true}, {Title: "what", Left: true}}}}
	for _, t := range d.Tasks {
		done := ""
		if t.Done != nil {
			done = *t.Done
		}
		tasks.Table.Rows = append(tasks.Table.Rows, []string{t.Task, t.State, t.Says, t.Every, done, t.Words})
	}
	if len(d.Tasks) == 0 {
		tasks = printed.Part{Title: "Tasks", Lines: []string{"None is set up. tintline upkeep start takes over those to start with."}}
	}
	papers := printed.Part{Title: "Papers", Table: printed.Table{Columns: []printed.Column{{Title: "paper", Left: true}, {Title: "kind", Left: true}, {Title: "number", Left: true}, {Title: "until", Left: true}, {Title: "state", Left: true}}}}
	for _, p := range d.Papers {
		papers.Table.Rows = append(papers.Table.Rows, []string{p.Paper, p.Kind, p.Number, p.Until, p.Says})
	}
	if len(d.Papers) == 0 {
		papers = printed.Part{Title: "Papers", Lines: []string{"None is entered: licence, certificates and insurance are not looked at."}}
	}
	out.Parts = []printed.Part{tasks, papers}
	for _, l := range d.Lists {
		part := printed.Part{Title: "Check list: " + l.List}
		for _, i := range l.Items {
			mark := "[ ] "
			if i.Done {
				mark = "[x] "
			}
			part.Lines = append(part.Lines, mark+i.Item)
		}
		out.Parts = append(out.Parts, part)
	}
	return out
}

// GlycolWords say what thinned antifreeze comes to.
func GlycolWords(pct, freezes float64) string {
	return fmt.Sprintf("%.1f %% of propylene glycol at the gun, freezing near %.0f F. %s", pct, freezes, BurstCaution)
}
