package check

import (
	"bytes"
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Propose says which act comes next: one key does it. It looks at the visit now, or at the next one.
func Propose(b *core.Book, in Intent) Proposal {
	p := comesNext(b, in)
	if cause, yes := HoldFor(b, in.At); yes && len(p.Else) == 0 && p.Act != ActOpenDay {
		p.Else, p.ElseWords = hold(cause)
	}
	return p
}

func comesNext(b *core.Book, in Intent) Proposal {
	switch {
	case b.Rig() == nil:
		return Proposal{Act: ActNone, Words: "enter the rig", Why: "The book has no rig yet."}
	case !b.Day().Open || in.At.Date() > b.Day().Date:
		return proposeDay(b, in)
	case b.Day().Hold != nil:
		return proposeHold(b)
	}
	v := b.Day().Visiting()
	if v == nil {
		next := b.Day().Next()
		if len(next) == 0 {
			return Proposal{Act: ActCloseDay, Words: "close the day", Facts: []core.Fact{&core.DayClosed{}}, Why: "A day that is closed cannot be opened again."}
		}
		return Proposal{Act: ActArrived, Words: "arrived at " + next[0].Lawn, Facts: []core.Fact{&core.VisitBegun{Lawn: next[0].Lawn}}}
	}
	in.Lawn = v.Lawn
	if len(in.Zones) == 0 {
		if in = aim(b, in); len(in.Zones) == 0 {
			return proposeLeave(b, v)
		}
	}
	s, err := look(b, in)
	if err != nil {
		return Proposal{Act: ActNone, Words: "nothing", Why: err.Error()}
	}
	return s.propose()
}

// proposeLeave leaves the lawn; what is left of a zone may be carried over instead.
func proposeLeave(b *core.Book, v *core.Visit) Proposal {
	p := Proposal{Act: ActLeave, Words: "leave " + v.Lawn, Facts: []core.Fact{&core.VisitDone{Lawn: v.Lawn}}}
	if rest := RestOf(b); len(rest) > 0 {
		var area measure.Area
		for _, z := range rest {
			area += z.Area
		}
		p.Else, p.ElseWords = LeaveRest(b, "part only"), "leave, and carry over "+sqft(area)
	}
	return p
}

func hold(cause string) ([]core.Fact, string) {
	return []core.Fact{&core.Held{Cause: cause}}, "hold the day for " + cause
}

// Likely fills in what the operator is likely to do next: the visit now with the zones that are left, by the valves
// as they stand; on the road the next visit, from the compartment that the screen would have him turn to.
func Likely(b *core.Book, in Intent) Intent {
	in.Lawn = Subject(b)
	if b.Day().Visiting() != nil {
		return aim(b, in)
	}
	if o := b.OwedAt(in.Lawn); o != nil && len(in.Zones) == 0 {
		for _, z := range o.Zones {
			in.Zones = append(in.Zones, z.Zone)
		}
	}
	if fits := Fits(b, in.Lawn); len(fits) > 0 && !chosen(b) {
		in.From = fits[0]
	}
	return in
}

// Untreated lists the zones that the visit now is for and on which no liquid was laid in it.
func Untreated(b *core.Book) []string { return untreated(b, false) }

// proposeDay opens the day with the last operator. A visit of the last day that is still begun is ended first, with
// what is left of it carried over.
func proposeDay(b *core.Book, in Intent) Proposal {
	p := Proposal{Act: ActOpenDay, Words: "open " + in.At.Date()}
	if len(b.Lawns()) == 0 {
		return Proposal{Act: ActNone, Words: "enter a lawn", Why: "The book has no lawn yet."}
	}
	if in.At.Date() < b.Day().Date {
		return Proposal{Act: ActNone, Words: "nothing", Why: fmt.Sprintf("The clock says %s, before %s, the last day in the book. Set the clock, or start the program with --at and the time.", in.At.Date(), b.Day().Date)}
	}
	if in.At.Date() == b.Day().Date {
		return Proposal{Act: ActNone, Words: "nothing", Why: fmt.Sprintf("%s is closed; the next day opens when the clock, now at %s, says a later date.", b.Day().Date, in.At.Date())}
	}
	open := &core.DayOpened{Date: in.At.Date(), Operator: b.Day().Operator, Route: RouteFor(b, in.At.Date())}
	p.Facts = []core.Fact{open}
	if v := b.Day().Visiting(); v != nil && b.Day().Open {
		p.Words = "end " + v.Lawn + ", " + p.Words
		p.Facts = append(LeaveRest(b, "not ended on "+b.Day().Date), open)
	}
	if b.Day().Open {
		p.Words += "; " + b.Day().Date + " was not closed"
	}
	if open.Operator == "" {
		p.Why = "Type who works today."
	}
	return p
}

// propose is the order of a visit: turn the valves, push the hose clean, see the weather, then spray. So the first
// line of the verdict, a stop before an ask, is what Enter does.
func (s *situation) propose() Proposal {
	r := s.report()
	if s.wet && s.tank == nil {
		if p, flush := s.flush(r); flush {
			return p
		}
		if !goingOn(r, PartCompartment, PartRig) {
			if p, turn := s.proposeLineUp(); turn {
				return p
			}
		}
		if c := s.toClean(); c != nil && c.Into != 0 && s.heavy(r) {
			p := Proposal{Act: ActPushBack, Words: "push "}
			for i, l := range c.Legs {
				if i > 0 {
					p.Words += ", then "
				}
				p.Words += fmt.Sprintf("%s into %s", gal(l.Volume), l.Place())
			}
			p.Facts = Pushed(c, c.PushBack)
			return p
		}
	}
	if p, look := s.proposeLook(r); look {
		return p
	}
	if r.Verdict >= Ask {
		p := Proposal{Act: ActConfirm, Words: "answer the " + r.Verdict.String(), Why: r.heaviest().Do}
		if r.windStops() {
			p.Else, p.ElseWords = hold(HoldWind)
		}
		return p
	}
	if s.spot() {
		p := Proposal{Act: ActSpray, Words: "type the area sprayed on " + joinZones(s.names()), Why: "A spot is less than the zone."}
		if !s.wet {
			p.Act, p.Words = ActSpread, "type the area spread on "+joinZones(s.names())
		}
		return p
	}
	var p Proposal
	if s.wet {
		p = s.proposeSpray()
	}
	s.addDry(&p)
	return p
}

// proposeLook is to look at what an ask asks about: at the weather, or at how the grass grows.
func (s *situation) proposeLook(r Report) (Proposal, bool) {
	for i := range r.Findings {
		for _, f := range r.Findings[i].All() {
			if f.Weight != Ask || f.Reason != "" {
				continue
			}
			switch {
			case f.Cure == ActWeather:
				return s.proposeWeather(f), true
			case f.Cure == ActGrowth:
				zones := f.Zones
				if len(zones) == 0 {
					zones = s.names()
				}
				return Proposal{Act: ActGrowth, Words: "say how the grass grows on " + joinZones(zones), Why: f.Says, GrowthOf: zones}, true
			}
		}
	}
	return Proposal{}, false
}

// proposeWeather is to look at the weather: at all of it, which may be unchanged since, or at what a limit needs.
func (s *situation) proposeWeather(f Finding) Proposal {
	p := Proposal{Act: ActWeather, Words: "look at the weather", Why: f.Says}
	switch {
	case f.About == aboutAge:
		p.Unchanged = true
	case s.b.Weather() != nil:
		what, _, _ := strings.Cut(strings.TrimPrefix(f.Do, "Look at "), " and log ")
		p.Words = "look at " + what
	}
	return p
}

func (s *situation) proposeSpray() Proposal {
	f := &core.Sprayed{Lawn: s.lawn.LawnName, Zones: s.names(), Applicator: s.with.Name, By: core.ByArea}
	if s.in.Volume.Known {
		f.By, f.Volume = core.ByGallons, core.Known(s.want)
	}
	f.Area = s.in.Area
	return Proposal{
		Act: ActSpray, Words: fmt.Sprintf("sprayed %s on %s", gal(s.want), strings.Join(f.Zones, " + ")),
		Facts: []core.Fact{f},
	}
}

// names are those of the zones.
func (s *situation) names() []string {
	var out []string
	for _, z := range s.zones {
		out = append(out, z.Name)
	}
	return out
}

// windStops tells whether the wind is a stop that stands: over the setting, or over a label's limit.
func (r *Report) windStops() bool {
	return r.some(func(f *Finding) bool {
		return f.Rule == "weather" && f.Weight == Stop && f.Unit == "mph" && f.Reason == ""
	})
}

// some tells whether a finding, or what was merged into one, is such.
func (r *Report) some(such func(f *Finding) bool) bool {
	for i := range r.Findings {
		for _, f := range r.Findings[i].All() {
			if such(&f) {
				return true
			}
		}
	}
	return false
}

// heaviest is the first finding that the operator does not go on in spite of.
func (r *Report) heaviest() Finding {
	for _, f := range r.Findings {
		if f.Reason == "" {
			return f
		}
	}
	return Finding{}
}

// goingOn tells whether the operator goes on in spite of every stop about these parts, and there is one.
func goingOn(r Report, parts ...string) bool {
	stop := func(f *Finding) bool { return f.Weight == Stop && hasText(parts, f.Part) }
	return r.some(stop) && !r.some(func(f *Finding) bool { return stop(f) && f.Reason == "" })
}

// heavy tells whether the nozzle's liquid is the reason of an ask or a stop that stands.
func (s *situation) heavy(r Report) bool {
	return r.some(func(f *Finding) bool { return f.stands() && (f.Part == PartHose || f.Part == PartCell) })
}

// proposeLineUp turns to the compartment that fits best, unless the one in use is that one, or fits and was chosen
// by the operator for this visit.
func (s *situation) proposeLineUp() (Proposal, bool) {
	fits := Fits(s.b, s.lawn.LawnName)
	if len(fits) == 0 {
		return Proposal{}, false
	}
	to := fits[0]
	if now := s.up.Supply; len(now) == 1 && bytes.IndexByte(fits, now[0]) >= 0 && chosen(s.b) {
		to = now[0]
	}
	up := fluid.LineUp{Supply: []byte{to}, Return: to}
	words := fmt.Sprintf("turn supply and return to %c", to)
	if string(up.Supply) == string(s.up.Supply) && up.Return == s.up.Return {
		if missed := s.tintMissed(); len(missed) == 0 || missed[0].Weight != Stop {
			return Proposal{}, false
		}
		words = fmt.Sprintf("look at the valves, and set supply and return to %c", to)
	}
	p := Proposal{Act: ActLineUp, Words: words, LineUp: up, Facts: []core.Fact{&core.LinedUp{Supply: up.Supply, Return: up.Return}}}
	s.proposeSweep(&p, to)
	return p, true
}

// proposeSweep makes of turning the valves what costs less, where that is to hold the return while the bypass washes the cell.
// Without the pump's output nothing is known of that, and a return that stands on the new compartment cannot be held.
func (s *situation) proposeSweep(p *Proposal, to byte) {
	if now := s.b.Plumbing().LineUp.Return; !s.b.Rig().PumpFlow.Known || now == 0 || now == to {
		return
	}
	in := s.in
	in.From = to
	turned, err := look(s.b, in)
	if err != nil {
		return
	}
	if c := turned.toClean(); c.SweepS() > 0 {
		p.Words = fmt.Sprintf("gun shut, turn the supply to %c, leave the return on %c for %s s, then turn it", to, c.Into, measure.SecondsText(c.SweepS()))
		p.Facts = turned.turnFacts(c)
	}
}

// chosen tells whether the valves were turned since the last lawn was left: then they stand as the operator
// wants them here. Left over from the lawn before, they say nothing about this one.
func chosen(b *core.Book) bool {
	since := b.Since()
	for i := len(since) - 1; i >= 0; i-- {
		switch since[i].What.(type) {
		case *core.LinedUp:
			return true
		case *core.VisitDone, *core.VisitSkipped, *core.DayOpened:
			return false
		}
	}
	return false
}
