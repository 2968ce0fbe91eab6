package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Turn is what it would come to if supply and return were turned to a compartment now. Nothing is entered.
type Turn struct {
	To        byte
	Name, Mix string // of the compartment
	Fits      bool   // it may go on all grasses of the lawn
	Set, Stay []core.ValveChange
	// Instead is the lawn that it is judged by where none is ahead: of those that the compartment fits, on the route or else in
	// the book, the one that asks for most. ByStrength: there is none, so that clean goes by strength alone, and there is
	// no verdict.
	Instead    string
	ByStrength bool
	// Report is the verdict if the trigger were pulled right after the valves are turned.
	Report Report
	// Changeover is what it takes until the nozzle is clean; nil where it is clean as it is.
	Changeover *Changeover
	// Places are the compartments that the push-back reaches, as they would be afterwards.
	Places []PlaceAfter
	// Pushed is the verdict after the push-back; nil where none is needed, or none can be.
	Pushed *Report
	// Cannot is the Problem for which the push-back could not be logged as it is advised; nil if it can.
	Cannot error
}

// PlaceAfter is a compartment after a push-back.
type PlaceAfter struct {
	Letter        byte
	Name, Mix     string
	Gets          measure.Volume // what is pushed into it
	Before, After measure.Volume
	// Foreign is what it gets that is not its own, by where it came from; Share is all of that as a share of what it
	// then holds.
	Foreign []Foreign
	Share   float64
	// Lays is what that does on the lawns that it still serves.
	Lays Residue
	// Sum is what has come in of others since it was last loaded empty or rinsed, this push-back included; 0 where that
	// cannot be.
	Sum measure.Volume
	// Loses are the lawns ahead today that it fits now and would not fit any more.
	Loses []string
}

// Residue is the worst that a compartment would lay of what is not its own: a product, as a share of its lowest label rate and
// of the limit from which it is asked about, and the lawn. Of a product of its own mix Share is its strength against what
// it was.
type Residue struct {
	Product, On string
	Share, Load float64
	Weight      Weight
	Own         bool // a product of its own mix
}

// Foreign is liquid in a compartment that came from another one, or from before it was loaded with what it holds now.
type Foreign struct {
	From   byte // 0: the rig's first water, or a load put straight into an applicator
	Mix    string
	Volume measure.Volume
	Share  float64
}

// WhatIf says what turning supply and return to a compartment would do. The error is a Problem: the intent names
// something that the book does not have, or the applicator does not draw through a hose.
func WhatIf(b *core.Book, in Intent, to byte) (Turn, error) {
	s, err := lookTo(b, in, to)
	if err != nil {
		return Turn{}, err
	}
	if s.tank != nil {
		return Turn{}, &core.Problem{
			What: fmt.Sprintf("%s draws from its own tank: turning the valves does not change what it lays.", s.with.Name),
			Do:   "Ask for an applicator on the hose.", Err: core.ErrRefused,
		}
	}
	if b.Plumbing().Compartment(to) == nil {
		return Turn{}, &core.Problem{What: "No compartment is named.", Do: "Name one that the rig has.", Err: core.ErrRefused}
	}
	s.allWays, s.changeKnown = true, false
	t := Turn{To: to, Name: b.RigCompartment(to).Name, Mix: b.MixIn(string(to)), Changeover: s.toClean()}
	t.Instead, t.ByStrength = s.instead, s.byStrength
	if !s.byStrength {
		t.Report = s.report()
	}
	t.Set, t.Stay = b.ValvesTo(s.up)
	for _, l := range Fits(b, s.lawn.LawnName) {
		t.Fits = t.Fits || l == to
	}
	if t.Changeover != nil && t.Changeover.Into != 0 {
		t.Places = s.placesAfter(t.Changeover)
		var then *core.Book
		if t.Pushed, then, t.Cannot = s.afterPush(t.Changeover); then != nil {
			for i := range t.Places {
				t.Places[i].Sum = strangeSum(then, t.Places[i].Letter)
			}
		}
	}
	return t, nil
}

// afterPush enters the changeover into a copy of the book and asks again.
func (s *situation) afterPush(c *Changeover) (*Report, *core.Book, error) {
	try := s.b.Clone()
	for _, f := range append(s.turnFacts(c), Pushed(c, c.PushBack)...) {
		es, err := try.Prepare("what if", s.in.At, f)
		if err != nil {
			return nil, nil, err
		}
		if err := try.Apply(es[0]); err != nil {
			return nil, nil, err
		}
	}
	if s.byStrength {
		return nil, try, nil
	}
	r, err := Before(try, s.in)
	if err != nil {
		return nil, nil, err
	}
	return &r, try, nil
}

// placesAfter pushes on a sketch in which the compartments, too, keep where their liquid came from.
func (s *situation) placesAfter(c *Changeover) []PlaceAfter {
	own := map[byte]int32{}
	for i := range s.b.Plumbing().Compartments {
		t := &s.b.Plumbing().Compartments[i]
		own[t.Letter] = t.Origin
	}
	p := s.tried(c, c.Legs, c.SweepS())
	var out []PlaceAfter
	for i := range p.Compartments {
		t := &p.Compartments[i]
		before := s.b.Plumbing().Compartment(t.Letter)
		a := PlaceAfter{
			Letter: t.Letter, Name: s.b.RigCompartment(t.Letter).Name, Mix: s.b.MixIn(string(t.Letter)),
			Gets: t.Flows.PushedIn - before.Flows.PushedIn, Before: before.Liquid.Volume, After: t.Liquid.Volume,
		}
		for _, f := range t.Liquid.From {
			if f.Key == own[t.Letter] {
				continue
			}
			o := s.b.Origin(f.Key)
			share := float64(f.N) / float64(t.Liquid.Volume)
			a.Foreign = append(a.Foreign, Foreign{o.Letter, o.Mix, measure.Volume(f.N), share})
			a.Share += share
		}
		if a.Gets > 0 || len(a.Foreign) > 0 {
			k := s.keptFor(t.Letter)
			lays := s.laysStrange(&k, t)
			a.Lays = lays.residue()
			a.Loses = s.loses(before, t)
			out = append(out, a)
		}
	}
	return out
}

// loses lists the lawns ahead that a compartment fits as it is and not as it would be.
func (s *situation) loses(before, after *fluid.Compartment) []string {
	var out []string
	seen := map[string]bool{}
	for _, v := range s.b.Day().Visits {
		l := s.b.Lawn(v.Lawn)
		if l == nil || seen[v.Lawn] || !isAhead(v) {
			continue
		}
		seen[v.Lawn] = true
		if now, _ := fitsLawn(s.b, before, l); !now {
			continue
		}
		if still, _ := fitsLawn(s.b, after, l); !still {
			out = append(out, v.Lawn)
		}
	}
	return out
}
