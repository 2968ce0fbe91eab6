package core

import "example.com/tintline/core/measure"

// Task defines something to be done to the rig again and again, changes it, or takes it away. It is due by whichever of its intervals
// comes first.
type Task struct {
	TaskName    string
	EngineHours Maybe[float64]
	PumpHours   Maybe[float64]
	Gallons     Maybe[measure.Volume] // through the pump
	Days        Maybe[float64]
	Season      string // SpringTask, AutumnTask; empty: at any time
	Once        string // "yes": it is done once, after its interval
	Words       string // what is to be done
	Source      string // where the interval comes from
	Retired     string // "yes": it is not done any more
}

// The seasons of a task.
const (
	SpringTask = "spring"
	AutumnTask = "autumn"
)

// Kind of the fact.
func (*Task) Kind() Kind { return kindTask }

// Name of the fact.
func (*Task) Name() string { return "task" }

func (f *Task) fields(w walker) {
	w.text(1, "name", &f.TaskName)
	w.maybeNumber(2, "engine_h", &f.EngineHours)
	w.maybeNumber(3, "pump_h", &f.PumpHours)
	w.maybeVolume(4, "through", &f.Gallons)
	w.maybeNumber(5, "days", &f.Days)
	w.text(6, "season", &f.Season)
	w.text(7, "once", &f.Once)
	w.text(8, "words", &f.Words)
	w.text(9, "source", &f.Source)
	w.text(10, "retired", &f.Retired)
}

// Upkept: a task was done. What the meters had run by then is filled in from the book, so that the next time follows from the entry.
type Upkept struct {
	Task string
	Note string
	By   string
	Cost Maybe[measure.Money]
	Date string // on which it was done; empty: that of the entry
	// EngineRun and PumpRun are the hours that the meters had run in all, Through what had gone through the pump; filled in.
	EngineRun, PumpRun Maybe[float64]
	Through            Maybe[measure.Volume]
}

// Kind of the fact.
func (*Upkept) Kind() Kind { return kindUpkept }

// Name of the fact.
func (*Upkept) Name() string { return "upkept" }

func (f *Upkept) fields(w walker) {
	w.text(1, "task", &f.Task)
	w.text(2, "note", &f.Note)
	w.text(3, "by", &f.By)
	w.maybeMoney(4, "cost", &f.Cost)
	w.text(5, "date", &f.Date)
	w.maybeNumber(6, "engine_run_h", &f.EngineRun)
	w.maybeNumber(7, "pump_run_h", &f.PumpRun)
	w.maybeVolume(8, "through", &f.Through)
}

// Paper is a licence, a certificate or an insurance with its last day. A later one of the same name takes its place.
type Paper struct {
	PaperName string
	Type      string // PaperKinds
	Number    string
	Until     string         // its last day
	Training  Maybe[float64] // hours of training still to be had before
	Retired   string         // "yes": it is not needed any more
}

// PaperKinds lists the kinds of paper.
func PaperKinds() []string {
	return []string{"licence", "certification", "insurance", "training", "other"}
}

// Kind of the fact.
func (*Paper) Kind() Kind { return kindPaper }

// Name of the fact.
func (*Paper) Name() string { return "paper" }

func (f *Paper) fields(w walker) {
	w.text(1, "name", &f.PaperName)
	w.text(2, "kind", &f.Type)
	w.text(3, "number", &f.Number)
	w.text(4, "until", &f.Until)
	w.maybeNumber(5, "training_h", &f.Training)
	w.text(6, "retired", &f.Retired)
}
