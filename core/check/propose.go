package check

import (
	"bytes"
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
)

// Propose says which act comes next: one key does it. It looks at the visit now, or at the next one.
func Propose(b *core.Book, in Intent) Proposal {
	switch {
	case b.Rig() == nil:
		return Proposal{Act: ActNone, Words: "enter the rig", Why: "The book has no rig yet."}
	case !b.Day().Open:
		return proposeDay(b, in)
	}
	v := b.Day().Visiting()
	if v == nil && in.At.Date() > b.Day().Date {
		return proposeDay(b, in)
	}
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
			return Proposal{Act: ActLeave, Words: "leave " + v.Lawn, Facts: []core.Fact{&core.VisitDone{Lawn: v.Lawn}}}
		}
	}
	s, err := look(b, in)
	if err != nil {
		return Proposal{Act: ActNone, Words: "nothing", Why: err.Error()}
	}
	return s.propose()
}

// Likely fills in what the operator is likely to do next: the visit now with the zones that are left, by the valves
// as they stand; on the road the next visit, from the compartment that the screen would have him turn to.
func Likely(b *core.Book, in Intent) Intent {
	in.Lawn = Subject(b)
	if b.Day().Visiting() != nil {
		return aim(b, in)
	}
	if fits := Fits(b, in.Lawn); len(fits) > 0 && !chosen(b) {
		in.From = fits[0]
	}
	return in
}

// Untreated lists the zones of the lawn now visited on which no liquid was laid in this visit.
func Untreated(b *core.Book) []string { return untreated(b, false) }

// proposeDay opens the day with the last operator; the route is what the last day left over, else all lawns
// in their order.
func proposeDay(b *core.Book, in Intent) Proposal {
	p := Proposal{Act: ActOpenDay, Words: "open " + in.At.Date()}
	if len(b.Lawns()) == 0 {
		return Proposal{Act: ActNone, Words: "enter a lawn", Why: "The book has no lawn yet."}
	}
	if in.At.Date() <= b.Day().Date {
		return Proposal{Act: ActNone, Words: "nothing", Why: fmt.Sprintf("%s is closed; the next day opens when the clock, now at %s, says a later date.", b.Day().Date, in.At.Date())}
	}
	open := &core.DayOpened{Date: in.At.Date(), Operator: b.Day().Operator}
	for _, v := range b.Day().Visits {
		if v.State == core.Planned || v.State == core.Begun {
			open.Route = append(open.Route, v.Lawn)
		}
	}
	if len(open.Route) == 0 {
		for _, l := range b.Lawns() {
			open.Route = append(open.Route, l.LawnName)
		}
	}
	p.Facts = []core.Fact{open}
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
		if p, turn := s.proposeLineUp(); turn && !goingOn(r, PartCompartment, PartRig) {
			return p
		}
		if c := s.toClean(); c != nil && c.Into != 0 && s.heavy(r) {
			p := Proposal{Act: ActPushBack, Words: "push "}
			for i, l := range c.Legs {
				if i > 0 {
					p.Words += ", then "
				}
				p.Words += fmt.Sprintf("%s into %c", gal(l.Volume), l.Into)
				p.Facts = append(p.Facts, &core.PushedBack{Into: l.Into, Volume: l.Volume})
			}
			return p
		}
	}
	for _, f := range r.Findings {
		if f.Rule == "weather" && f.Weight == Ask && f.Reason == "" && (f.Unit == "min" || !f.Figured.Known) {
			return Proposal{Act: ActWeather, Words: "look at the weather", Why: f.Says}
		}
	}
	if r.Verdict >= Ask {
		return Proposal{Act: ActConfirm, Words: "answer the " + r.Verdict.String(), Why: r.heaviest().Do}
	}
	var p Proposal
	if s.wet {
		p = s.proposeSpray()
	}
	s.addDry(&p)
	return p
}

func (s *situation) proposeSpray() Proposal {
	f := &core.Sprayed{Lawn: s.lawn.LawnName, Applicator: s.with.Name, By: core.ByArea}
	for _, z := range s.zones {
		f.Zones = append(f.Zones, z.Name)
	}
	if s.in.Volume.Known {
		f.By, f.Volume = core.ByGallons, core.Known(s.want)
	}
	return Proposal{
		Act: ActSpray, Words: fmt.Sprintf("sprayed %s on %s", gal(s.want), strings.Join(f.Zones, " + ")),
		Facts: []core.Fact{f},
	}
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
	some := false
	for _, f := range r.Findings {
		if f.Weight != Stop || !hasText(parts, f.Part) {
			continue
		}
		if f.Reason == "" {
			return false
		}
		some = true
	}
	return some
}

// heavy tells whether the nozzle's liquid is the reason of an ask or a stop that stands.
func (s *situation) heavy(r Report) bool {
	for _, f := range r.Findings {
		if f.Weight >= Ask && f.Reason == "" && (f.Part == PartHose || f.Part == PartCell) {
			return true
		}
	}
	return false
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
	return Proposal{
		Act: ActLineUp, Words: words, LineUp: up,
		Facts: []core.Fact{&core.LinedUp{Supply: up.Supply, Return: up.Return}},
	}, true
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
