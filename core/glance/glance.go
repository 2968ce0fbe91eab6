package glance

import (
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/notice"
	"example.com/tintline/core/tally"
)

// Of takes a glance at a book. Where the clock was set by hand, now is when today's hours end.
func Of(b *core.Book, at core.Moment, now core.Maybe[core.Moment]) Document {
	d := Document{
		At: at.String(), LineUp: lineUp(b), Compartments: compartments(b, at), Cell: cell(b), Hose: hose(b),
		Applicators: applicators(b), Loads: loads(b), Changeover: ToClean(b, subject(b, at)), Weather: weather(b, at), Accounts: accounts(b),
		Entries: b.Seq(), State: b.StateDigest().String(), Journal: b.Digest().String(),
	}
	if b.Day().Date != "" {
		d.Day = &b.Day().Date
	}
	d.Visit = visit(b)
	d.Hold, d.Owed, d.DriedOn = hold(b), owed(b), driedOn(b, at)
	notices := notice.Look(b, at)
	d.Notices = notices.Document()
	d.Taught, d.Today = taught(b), today(b, now)
	d.Calibration = check.CalibrationDue(b, at)
	d.Upkeep = upkeepDue(b, at)
	d.StillToEnter, d.OffRecord = stillToEnter(b), offRecord(b)
	return d
}

// subject is what would be sprayed at the visit now, or at the next one.
func subject(b *core.Book, at core.Moment) check.Intent {
	return check.Intent{Lawn: check.Subject(b), At: at}
}

func visit(b *core.Book) *Visit {
	number, of := b.Day().Number()
	if of == 0 {
		return nil
	}
	out := &Visit{Number: number, Of: of, Lawn: text(check.Subject(b))}
	if v := b.Day().Visiting(); v != nil {
		out.Kind, out.Cause = text(v.Kind), text(v.Cause)
	}
	return out
}

func hold(b *core.Book) *Hold {
	h := b.Day().Hold
	if h == nil {
		return nil
	}
	return &Hold{h.Cause, h.Since.String()}
}

func owed(b *core.Book) []Owed {
	out := []Owed{}
	for _, o := range b.Owed() {
		row := Owed{Lawn: o.Lawn, Zones: []OwedZone{}, Reason: o.Reason, Since: o.Since, Until: text(o.Until)}
		for _, z := range o.Zones {
			row.Zones = append(row.Zones, OwedZone{z.Zone, z.Area.SquareFeet()})
		}
		out = append(out, row)
	}
	return out
}

func today(b *core.Book, now core.Maybe[core.Moment]) Today {
	t := tally.Close(b, now)
	all := t.All()
	out := Today{Volume: all.Volume, Mass: all.Mass, Area: all.Area, Lawns: all.Lawns}
	if b.Day().Date != "" {
		out.Hours = &all.Hours
	}
	return out
}

func lineUp(b *core.Book) LineUp {
	now := b.Plumbing().LineUp
	out := LineUp{Name: text(b.LineUpName()), Supply: []string{}, Valves: b.Positions()}
	for _, l := range now.Supply {
		out.Supply = append(out.Supply, string(l))
	}
	if now.Return != 0 {
		out.Return = text(string(now.Return))
	}
	if f, found := check.LineUpNow(b); found {
		out.Finding = text(strings.TrimSpace(f.Says + " " + f.Do))
	}
	return out
}

func weather(b *core.Book, at core.Moment) *Weather {
	w := b.Weather()
	if w == nil {
		return nil
	}
	out := &Weather{
		WindFrom: text(w.WindFrom), Temp: w.Temp.Pointer(), Humidity: w.Humidity.Pointer(), RainFree: w.RainFree.Pointer(),
		ForecastHigh: w.ForecastHigh.Pointer(), ForecastSource: text(w.ForecastSource), ForecastAt: text(w.ForecastAt),
		ForecastAge: check.ForecastAge(w, at).Pointer(), Inversion: text(w.Inversion), DeltaT: check.DeltaT(&w.Weather).Pointer(),
		Age: at.MinutesSince(w.At),
	}
	if w.Wind.Known {
		mph := w.Wind.V.MPH()
		out.Wind = &mph
	}
	return out
}

// text is null where there is none.
func text(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}
