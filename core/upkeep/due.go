package upkeep

import (
	"fmt"
	"math"
	"strings"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/say"
)

// How far a task is.
const (
	Later   = "later"
	Soon    = "soon"
	DueNow  = "due"
	Unknown = "not known" // its meter was never read
)

// Item is a task with how far it is, by whichever of its intervals comes first.
type Item struct {
	Task  core.Task
	State string
	Share float64 // of its interval; 1 and more: due
	Says  string  // "53.0 of 50 engine hours"
	Every string
	Done  string // the date on which it was done last; empty: never logged
	Order int
}

// SoonShare is from which share of its interval on a task is due soon.
//
// Common practice, no source.
const SoonShare = 0.9

// The seasons begin and end, as month and day.
//
// Common practice, no source.
var seasons = map[string][2]string{core.SpringTask: {"02-15", "05-31"}, core.AutumnTask: {"10-01", "12-31"}}

// Due lists all tasks: those that are due first, by how far they are over.
func Due(b *core.Book, at core.Moment) []Item {
	var out []Item
	m := b.Meters()
	for i, u := range b.Upkeeps() {
		it := Item{Task: u.What, State: Later, Every: say.TaskEvery(&u.What), Order: i}
		if u.Done {
			it.Done = u.Last.Date
		}
		from := u.From()
		hours := func(every, since core.Maybe[float64], now core.Meter, name string) {
			if !every.Known {
				return
			}
			if !now.Last.Known {
				it.unread(name)
				return
			}
			it.part(now.Run-since.Or(0), every.V, name)
		}
		hours(u.What.EngineHours, from.EngineRun, m.Engine, "engine hours")
		hours(u.What.PumpHours, from.PumpRun, m.Pump, "pump hours")
		if u.What.Gallons.Known {
			it.part((b.Pumped() - from.Through.Or(0)).Gallons(), u.What.Gallons.V.Gallons(), "gal")
		}
		if u.What.Days.Known {
			it.part(float64(days(from.Date, at.Date())), u.What.Days.V, "days")
		}
		it.season(u.What.Season, from.Date, u.Done, at.Date())
		out = append(out, it)
	}
	sortItems(out)
	return out
}

// part takes an interval in, if it comes before those that are in.
func (it *Item) part(gone, every float64, unit string) {
	share := gone / every
	if every == 1 {
		unit = strings.TrimSuffix(unit, "s")
	}
	if math.IsNaN(share) || (it.Says != "" && it.State != Unknown && share <= it.Share) {
		return
	}
	it.Share, it.Says = share, fmt.Sprintf("%.0f of %.0f %s", gone, every, unit)
	if every < 100 && !strings.HasPrefix(unit, "day") {
		it.Says = fmt.Sprintf("%.1f of %g %s", gone, every, unit)
	}
	switch {
	case share >= 1:
		it.State = DueNow
	case share >= SoonShare:
		it.State = Soon
	default:
		it.State = Later
	}
}

func (it *Item) unread(name string) {
	if it.Says == "" {
		it.State, it.Says = Unknown, name+" were never read"
	}
}

// season: due from the beginning of its season on, until it is done in it.
func (it *Item) season(season, from string, done bool, today string) {
	s, known := seasons[season]
	if !known || len(today) < 10 {
		return
	}
	begins, ends := today[:5]+s[0], today[:5]+s[1]
	if today < begins || today > ends || (done && from >= begins) {
		if it.Says == "" {
			it.Says = "each " + season
		}
		return
	}
	if it.Share < 1 {
		it.State, it.Share, it.Says = DueNow, 1, "this "+season
	}
}

func days(from, to string) int {
	a, wrong := time.Parse(time.DateOnly, from)
	b, wrongTo := time.Parse(time.DateOnly, to)
	if wrong != nil || wrongTo != nil {
		return 0
	}
	return int(b.Sub(a).Hours() / 24)
}

var ranks = map[string]int{DueNow: 0, Soon: 1, Unknown: 2, Later: 3}

func sortItems(list []Item) {
	for i := 1; i < len(list); i++ { // few, and equal ones keep their order
		for j := i; j > 0 && before(&list[j], &list[j-1]); j-- {
			list[j], list[j-1] = list[j-1], list[j]
		}
	}
}

func before(a, b *Item) bool {
	if ranks[a.State] != ranks[b.State] {
		return ranks[a.State] < ranks[b.State]
	}
	return a.Share > b.Share
}

// Words is a task in a line: "engine oil: 53.0 of 50 engine hours".
func (it *Item) Words() string { return it.Task.TaskName + ": " + it.Says }

// Short is what is due, for a place with one line; empty: nothing is.
func Short(b *core.Book, at core.Moment) string {
	n := 0
	first := ""
	for _, it := range Due(b, at) {
		if it.State != DueNow {
			continue
		}
		if n++; first == "" {
			first = it.Words()
		}
	}
	switch n {
	case 0:
		return ""
	case 1:
		return "upkeep due: " + first
	}
	return fmt.Sprintf("upkeep due: %s, and %d more", first, n-1)
}
