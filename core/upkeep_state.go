package core

import (
	"math"
	"slices"
	"strings"
	"time"
)

// Upkeep is a task, and when it was done last; before that its intervals count from when it was first set up.
type Upkeep struct {
	What  Task
	Since Upkept // what the meters had run when it was set up, and the date
	Done  bool
	Last  Upkept // where it was done
}

// From is what the intervals count from.
func (u *Upkeep) From() *Upkept {
	if u.Done {
		return &u.Last
	}
	return &u.Since
}

// Upkeeps lists the tasks that are done on the rig, in the order in which they were set up.
func (s *state) Upkeeps() []Upkeep { return s.tasks }

// Upkeep finds a task, nil if there is none of that name.
func (s *state) Upkeep(name string) *Upkeep {
	for i := range s.tasks {
		if s.tasks[i].What.TaskName == name {
			return &s.tasks[i]
		}
	}
	return nil
}

// Papers lists the papers that are needed.
func (s *state) Papers() []Paper { return s.papers }

// longestInterval bounds an interval, in its unit.
const longestInterval = 1e5

func (s *state) admitTask(f *Task) error {
	if err := name("task", f.TaskName); err != nil {
		return err
	}
	for _, w := range []string{f.Once, f.Retired} {
		if w != "" && w != yes {
			return refuse("Write yes, or leave it out.", "%q does not say yes.", w)
		}
	}
	if f.Season != "" && f.Season != SpringTask && f.Season != AutumnTask {
		return refuse("Write spring or autumn, or leave it out.", "%q is no season of a task.", f.Season)
	}
	for _, n := range []Maybe[float64]{f.EngineHours, f.PumpHours, f.Days} {
		if n.Known && (math.IsNaN(n.V) || n.V <= 0 || n.V > longestInterval) {
			return refuse("Give more than 0 and up to 100,000.", "The task %s cannot be due every %g.", f.TaskName, n.V)
		}
	}
	if f.Gallons.Known && (f.Gallons.V <= 0 || f.Gallons.V > LargestVolume) {
		return bounded("The gallons after which the task "+f.TaskName+" is due", f.Gallons.V)
	}
	if f.Retired != "" {
		if s.Upkeep(f.TaskName) == nil {
			return s.noTask(f.TaskName)
		}
		return nil
	}
	if !f.EngineHours.Known && !f.PumpHours.Known && !f.Gallons.Known && !f.Days.Known && f.Season == "" {
		return refuse("Say after how many engine hours, pump hours, gallons or days, or in which season.", "The task %s is due at no time.", f.TaskName)
	}
	return nil
}

func (s *state) noTask(name string) error {
	var names []string
	for i := range s.tasks {
		names = append(names, s.tasks[i].What.TaskName)
	}
	if len(names) == 0 {
		return refuse("Set one up first, or take over those to start with: tintline upkeep start.", "There is no task %q; the book has none.", name)
	}
	return refuse("Use one of "+strings.Join(names, ", ")+".", "There is no task %q in the book.", name)
}

func (s *state) admitUpkept(f *Upkept) error {
	if s.Upkeep(f.Task) == nil {
		return s.noTask(f.Task)
	}
	if f.Cost.Known && (f.Cost.V < 0 || f.Cost.V > HighestPrice) {
		return refuse("Give 0 and up to "+HighestPrice.Text()+".", "The cost of %s cannot be %s.", f.Task, f.Cost.V.Text())
	}
	if f.Date != "" {
		if _, err := time.Parse(time.DateOnly, f.Date); err != nil {
			return refuse("Write it as in 2026-03-14.", "%q is no date.", f.Date)
		}
	}
	return nil
}

// runNow is what the meters have run by now.
func (s *state) runNow(date string) Upkept {
	m := &s.meters
	known := func(x Meter) Maybe[float64] { return Maybe[float64]{V: x.Run, Known: x.Last.Known} }
	return Upkept{Date: date, EngineRun: known(m.Engine), PumpRun: known(m.Pump), Through: Known(s.through)}
}

func (s *state) resolveUpkept(f *Upkept) Fact {
	now, c := s.runNow(""), *f
	if !c.EngineRun.Known {
		c.EngineRun = now.EngineRun
	}
	if !c.PumpRun.Known {
		c.PumpRun = now.PumpRun
	}
	if !c.Through.Known {
		c.Through = now.Through
	}
	return &c
}

func (s *state) admitPaper(f *Paper) error {
	if err := name("paper", f.PaperName); err != nil {
		return err
	}
	if f.Retired != "" {
		if f.Retired != yes {
			return refuse("Write yes, or leave it out.", "%q does not say yes.", f.Retired)
		}
		if !slices.ContainsFunc(s.papers, func(p Paper) bool { return p.PaperName == f.PaperName }) {
			return refuse("Look at the papers; there is none of that name.", "There is no paper %q in the book.", f.PaperName)
		}
		return nil
	}
	if !containsText(PaperKinds(), f.Type) {
		return refuse("Write one of "+strings.Join(PaperKinds(), ", ")+".", "%q is no kind of paper.", f.Type)
	}
	if _, err := time.Parse(time.DateOnly, f.Until); err != nil {
		return refuse("Write its last day as in 2027-03-31.", "%q is no date.", f.Until)
	}
	if f.Training.Known && (math.IsNaN(f.Training.V) || f.Training.V < 0 || f.Training.V > 1000) {
		return refuse("Give from 0 to 1,000.", "Hours of training cannot be %g.", f.Training.V)
	}
	return nil
}

// applyUpkeep applies what is about the truck and moves nothing.
func (s *state) applyUpkeep(e Entry) {
	switch f := e.What.(type) {
	case *Metered:
		s.applyMetered(e, f)
	case *Task:
		s.applyTask(e, f)
	case *Upkept:
		s.applyUpkept(e, f)
	case *Paper:
		s.applyPaper(f)
	}
}

func (s *state) applyTask(e Entry, f *Task) {
	tasks := slices.Clone(s.tasks) // copies share it
	at := slices.IndexFunc(tasks, func(u Upkeep) bool { return u.What.TaskName == f.TaskName })
	switch {
	case f.Retired != "" && at >= 0:
		tasks = slices.Delete(tasks, at, at+1)
	case f.Retired != "":
	case at >= 0:
		tasks[at].What = *f
	default:
		tasks = append(tasks, Upkeep{What: *f, Since: s.runNow(e.At.Date())})
	}
	s.tasks = tasks
}

func (s *state) applyUpkept(e Entry, f *Upkept) {
	tasks := slices.Clone(s.tasks)
	for i := range tasks {
		if tasks[i].What.TaskName == f.Task {
			done := *f
			if done.Date == "" {
				done.Date = e.At.Date()
			}
			tasks[i].Last, tasks[i].Done = done, true
			if tasks[i].What.Once != "" {
				tasks = slices.Delete(tasks, i, i+1)
			}
			break
		}
	}
	s.tasks = tasks
}

func (s *state) applyPaper(f *Paper) {
	papers := slices.DeleteFunc(slices.Clone(s.papers), func(p Paper) bool { return p.PaperName == f.PaperName })
	if f.Retired == "" {
		papers = append(papers, *f)
	}
	s.papers = papers
}

func (k *keptCodec) upkeep(e *evening) {
	kept(k, &e.tasks, func(u *Upkeep) {
		k.fact(&u.What)
		k.fact(&u.Since)
		k.yes(&u.Done)
		k.fact(&u.Last)
	})
	kept(k, &e.papers, func(p *Paper) { k.fact(p) })
}

func (s *state) digestUpkeep(w *binaryWriter) {
	for i := range s.tasks {
		u := &s.tasks[i]
		w.str("task")
		w.factFields(&u.What)
		w.factFields(u.From())
	}
	for i := range s.papers {
		w.str("paper")
		w.factFields(&s.papers[i])
	}
}

// CheckList is the list of a check list under its name, for ticks: "check/winter 2026".
func CheckList(name string) string { return "check/" + name }

// admitCheckTick admits a tick on a check list, whose items are the operator's.
func (s *state) admitCheckTick(f *Ticked) error {
	if f.Undo != "" && f.Undo != yes {
		return refuse("Write yes, or leave it out.", "The tick says %q under undo.", f.Undo)
	}
	if f.Place != "" || f.Meter.Known {
		return refuse("Leave place and meter out.", "A check list has neither a place nor a meter.")
	}
	if err := name("check list", strings.TrimPrefix(f.List, CheckList(""))); err != nil {
		return err
	}
	if err := name("item", f.Item); err != nil {
		return err
	}
	const most = 200
	done := hasText(s.ticks[f.List], f.Item)
	switch {
	case done && f.Undo == "":
		return refuse("It stands; go on with the next.", "%s is ticked already.", f.Item)
	case !done && f.Undo != "":
		return refuse("There is nothing to take away.", "%s is not ticked.", f.Item)
	case len(s.ticks[f.List]) >= most:
		return refuse("Begin another list.", "The list %s has %d ticks already.", strings.TrimPrefix(f.List, CheckList("")), most)
	}
	return nil
}
