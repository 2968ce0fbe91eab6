package notice

import (
	"fmt"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
)

// What is owed.
const (
	KindNotice    = "notice"
	KindSignUp    = "sign_up"
	KindSignDown  = "sign_down"
	KindNeighbour = "neighbour"
)

// Owed is something that is to be done about a lawn's treatment on a date, with the facts that log it.
type Owed struct {
	Kind string
	Lawn string
	Date string
	Who  string // the neighbour
	Says string // why, with figures
	Do   string
	// From and To are the time in which it is to be done; zero: no bound.
	From, To core.Moment
	Source   string
	Done     []core.Fact // it was done
	Failed   []core.Fact // an attempt that failed; none where there is no such thing
}

// List says what is owed now: neighbours to be told first, because their time runs out, then signs to put up, notices, and signs to
// take down.
func List(b *core.Book, now core.Moment) []Owed {
	out := neighbours(b, now)
	out = append(out, signsUp(b)...)
	out = append(out, notices(b)...)
	return append(out, signsDown(b, now)...)
}

// treated lists the lawns on which something was laid in the book's day, in order, and whether a pesticide was.
func treated(b *core.Book) (lawns []string, pesticide map[string]bool) {
	pesticide = map[string]bool{}
	for i := range b.Day().Laid {
		l := &b.Day().Laid[i]
		lawns = withText(lawns, l.Lawn)
		for _, h := range l.Holds {
			if b.ProductVersions(h.Key).Now().Label.Pesticide() {
				pesticide[l.Lawn] = true
			}
		}
	}
	return lawns, pesticide
}

// setTo is what a setting of when says, by_state if nothing was set.
func setTo(b *core.Book, name string) string {
	if s, set := b.SettingText(name); set {
		return s
	}
	return core.ByState
}

func notices(b *core.Book) []Owed {
	rule, why := RuleOf(stateOf(b), core.ToldCustomer), setTo(b, core.CustomerNotice)
	if why == core.Never || why == core.ByState && (rule == nil || rule.Owed != OwedVisit) {
		return nil
	}
	o := Owed{Kind: KindNotice, Date: b.Day().Date, Says: "A notice is left after each visit, as set.", Source: "set by the operator"}
	if why == core.ByState {
		o.Says, o.Source = rule.State+" asks for "+rule.Words+".", rule.Source
	}
	lawns, _ := treated(b)
	var out []Owed
next:
	for _, l := range lawns {
		for _, c := range b.ContactsOf(l, o.Date, core.ToldCustomer) {
			for _, g := range c.Given {
				if c.Reached() && (g == core.GaveNotice || g == core.GaveRecord) {
					continue next
				}
			}
		}
		one := o
		one.Lawn, one.Do = l, "Leave the notice at "+l+"."
		one.Done = []core.Fact{&core.Told{Lawn: l, Whom: core.ToldCustomer, How: core.ByPaper, Result: core.ToldReached, Given: []string{core.GaveNotice}, For: o.Date}}
		out = append(out, one)
	}
	return out
}

func signsUp(b *core.Book) []Owed {
	rule, why := SignRuleOf(stateOf(b)), setTo(b, core.PostSigns)
	if why == core.Never || why == core.ByState && rule == nil {
		return nil
	}
	o := Owed{Kind: KindSignUp, Date: b.Day().Date, Says: "Signs are put up after each pesticide, as set.", Source: "set by the operator"}
	if why == core.ByState {
		o.Says, o.Source = fmt.Sprintf("%s asks for signs, put up %s: %s.", rule.State, rule.Up, rule.Size), rule.Source
	}
	lawns, pesticide := treated(b)
	if v := b.Day().Visiting(); v != nil && rule != nil && rule.BeforeIt && !pesticide[v.Lawn] && v.Kind != core.LookOnly {
		lawns, pesticide[v.Lawn] = withText(lawns, v.Lawn), true
	}
	var out []Owed
	for _, l := range lawns {
		if !pesticide[l] || len(b.SignsOf(l, o.Date)) > 0 {
			continue
		}
		one := o
		one.Lawn, one.Do = l, "Put up the sign at "+l+"."
		one.Done = []core.Fact{PutUp(b, l)}
		out = append(out, one)
	}
	return out
}

// PutUp is the fact that signs were put up at a lawn in the book's day, with the hours of the setting, else of the state's rule as it was
// read; neither: no hours.
func PutUp(b *core.Book, lawn string) *core.Signed {
	f := &core.Signed{Lawn: lawn, What: core.SignsUp, Count: int64(b.Setting(core.SignsPerLawn))}
	rule := SignRuleOf(stateOf(b))
	switch hours := b.Setting(core.SignHours); {
	case hours > 0:
		f.Hours = core.Known(hours)
	case rule != nil:
		f.Hours = rule.Hours
		if rule.NextDay {
			f.Until = dayAfter(b.Day().Date)
		}
	}
	return f
}

func dayAfter(date string) string {
	t, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return ""
	}
	return t.AddDate(0, 0, 1).Format(time.DateOnly)
}

func signsDown(b *core.Book, now core.Moment) []Owed {
	var out []Owed
	for _, g := range b.AllSigns() {
		if !g.Down.Zero() || g.Due.Zero() || g.Due.Unix > now.Unix {
			continue
		}
		out = append(out, Owed{
			Kind: KindSignDown, Lawn: g.Lawn, Date: g.Date, From: g.Due, Source: "the entry of the signs",
			Says: fmt.Sprintf("%d put up on %s; they were to stay until %s %s.", g.Count, g.Date, g.Due.Date(), g.Due.Clock()),
			Do:   "Take down the signs at " + g.Lawn + ".", Done: []core.Fact{&core.Signed{Lawn: g.Lawn, What: core.SignsDown}},
		})
	}
	return out
}

// startsAt is when work begins where no start of the day is set: common practice, no source.
const startsAt = 8 * 60

// neighbours are those to be told of today's visits that are planned or begun, and of tomorrow's as far as they are known: by a plan for that
// date, or because a lawn was carried over to it.
func neighbours(b *core.Book, now core.Moment) []Owed {
	today := now.Date()
	if d := b.Day(); d.Open {
		today = d.Date
	}
	var out []Owed
	for i := range b.Day().Visits {
		v := &b.Day().Visits[i]
		if !b.Day().Open || v.State != core.Planned && v.State != core.Begun {
			continue
		}
		begins := now
		if v.State == core.Begun {
			begins = v.Begun
		}
		out = append(out, toTell(b, v.Lawn, today, begins, now)...)
	}
	next := dayAfter(today)
	start := startsAt
	if s, set := b.SettingText(core.PlanStarts); set {
		if m, err := core.MinuteOfDay(s); err == nil {
			start = int(m)
		}
	}
	t, err := time.Parse(time.DateOnly, next)
	if err != nil {
		return out
	}
	begins := core.Moment{Unix: t.Unix() - int64(now.Offset) + int64(start)*60, Offset: now.Offset}
	for _, l := range LawnsOf(b, next) {
		out = append(out, toTell(b, l, next, begins, now)...)
	}
	return out
}

// LawnsOf are the lawns that are meant for a date to come, as far as the book knows.
func LawnsOf(b *core.Book, date string) []string {
	var out []string
	if p := b.Planned(); p != nil && p.Date == date {
		out = append(out, p.Lawns()...)
	}
	for _, o := range b.Owed() {
		if o.Until == date {
			out = withText(out, o.Lawn)
		}
	}
	return out
}

func toTell(b *core.Book, lawn, date string, begins, now core.Moment) []Owed {
	var out []Owed
	list := b.NeighboursOf(lawn, date)
	for i := range list {
		n := &list[i]
		t := check.Told(b, n, date, begins)
		if t.Done != nil {
			continue
		}
		o := Owed{Kind: KindNeighbour, Lawn: lawn, Date: date, Who: n.NeighbourName, Says: t.Says(n), Source: n.Register}
		if n.HoursMost.Known {
			o.From = hoursBefore(begins, n.HoursMost.V)
		}
		if n.HoursLeast.Known {
			o.To = hoursBefore(begins, n.HoursLeast.V)
		}
		how := core.ByPhone
		o.Do = "Call " + n.NeighbourName
		if n.Phone != "" {
			o.Do += " (" + n.Phone + ")"
		}
		if n.Calls > 0 && int64(t.Calls) >= n.Calls {
			how, o.Do = core.ByDoorNote, "Leave a note on the door of "+n.NeighbourName
		}
		o.Do += " about " + lawn + " on " + date + "."
		if !o.To.Zero() && o.To.Unix < now.Unix {
			o.Do = fmt.Sprintf("Choose another date for %s: too late to tell %s.", lawn, n.NeighbourName)
		}
		o.Done = []core.Fact{&core.Told{Lawn: lawn, Whom: core.ToldNeighbour, Person: n.NeighbourName, How: how, Result: core.ToldReached, Given: []string{core.GaveAdvance}, For: date}}
		if how == core.ByPhone {
			o.Failed = []core.Fact{&core.Told{Lawn: lawn, Whom: core.ToldNeighbour, Person: n.NeighbourName, How: how, Result: core.ToldFailed, For: date}}
		}
		out = append(out, o)
	}
	return out
}

func hoursBefore(m core.Moment, h float64) core.Moment {
	return core.Moment{Unix: m.Unix - int64(h*3600), Offset: m.Offset}
}
