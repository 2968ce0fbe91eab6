package glance

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// ToClean says what it takes until the nozzle is clean enough for the intent, nil when it is.
func ToClean(b *core.Book, in check.Intent) *Changeover {
	c := check.AllWays(b, in)
	if c == nil {
		return nil
	}
	name := in.With
	if name == "" {
		name = check.FirstApplicator(b)
	}
	var flow core.Maybe[measure.Flow]
	if a := b.Applicator(name); a != nil {
		flow = a.Flow
	}
	out := &Changeover{
		To: string(c.To), Arrives: c.Arrives.Gallons(), Half: c.Half.Gallons(), Clean: c.Clean.Gallons(),
		ArrivesS: c.ArrivesS.Pointer(), HalfS: c.HalfS.Pointer(), CleanS: c.CleanS.Pointer(),
		TintFrom: c.TintFrom.Gallons(), TintBy: c.TintBy.Gallons(), TintFromS: c.TintFromS.Pointer(), TintByS: c.TintByS.Pointer(),
		Tint: c.Tint, TintGone: c.TintGone.Gallons(), Air: c.Air.Gallons(),
		DecidedBy: c.DecidedBy, Why: c.Why, Share: c.Share,
		Band: c.Band.Gallons(), Advised: c.Advised.Gallons(), Learned: c.Learned, Margins: c.Margins,
		Cell: c.Cell.Gallons(), Bypass: c.Bypass, FlowLow: c.FlowLow,
		Left: c.Left.Gallons(), LeftShare: c.LeftShare, NewLost: c.NewLost.Gallons(), Legs: legs(c.Legs, c.Air, flow), Ways: []Way{},
	}
	if c.SmearFactor > 0 {
		sigma, factor := c.Smear.Gallons(), c.SmearFactor
		out.Sigma, out.SigmaFactor = &sigma, &factor
	}
	if c.Re > 0 {
		re := c.Re
		out.Reynolds = &re
	}
	if c.MinFlow.Known {
		gpm := c.MinFlow.V.GPM()
		out.MinFlow = &gpm
	}
	for i := range c.Ways {
		out.Ways = append(out.Ways, way(&c.Ways[i], c.Air, flow))
	}
	if o := c.Order; o != nil {
		out.Order = &ReturnOrder{o.Together.Gallons(), o.HeldS, o.Held.Gallons(), c.SweepS() > 0}
	}
	if o := c.Overflow; o != nil {
		out.Overflow = &Overflow{string(o.Letter), o.Gets.Gallons(), o.Room.Gallons(), o.Over.Gallons()}
	}
	if c.Into == 0 {
		return out
	}
	out.PushBack = &PushBack{Into: text(string(c.Into)), Gal: c.PushBack.Gallons(), S: seconds(c.PushBack+c.Air, flow)}
	return out
}

func seconds(v measure.Volume, flow core.Maybe[measure.Flow]) *float64 {
	if !flow.Known {
		return nil
	}
	s := flow.V.Seconds(v)
	return &s
}

func legs(list []check.Leg, air measure.Volume, flow core.Maybe[measure.Flow]) []Leg {
	out := []Leg{}
	var each []float64
	if flow.Known {
		each = check.LegSeconds(list, air, flow.V)
	}
	for i, l := range list {
		leg := Leg{To: text(l.To), Gal: l.Volume.Gallons()}
		if flow.Known {
			leg.S = &each[i]
		}
		if l.Into != 0 {
			leg.Into = text(string(l.Into))
		}
		out = append(out, leg)
	}
	return out
}

func way(w *check.Way, air measure.Volume, flow core.Maybe[measure.Flow]) Way {
	out := Way{
		Way: w.Name, Chosen: w.Chosen, Legs: legs(w.Legs, air, flow), NewOld: w.NewOld.Gallons(), OldNew: w.OldNew.Gallons(), Wasted: w.Wasted.Gallons(),
		Weight: w.Weight.String(), Load: w.Load, Product: text(w.Worst), On: text(w.On), Cannot: text(w.Cannot),
	}
	switch share := w.Share; {
	case w.Worst == "":
	case w.Own:
		out.Own = &share
	default:
		out.Share = &share
	}
	if w.RunS > 0 {
		s := w.RunS
		out.RunS = &s
	}
	if w.In != 0 {
		out.In = text(string(w.In))
	}
	return out
}

// Text says the three figures: when the tint comes, when it is clean enough and by what, and what is left then. It is empty
// where nothing has to be pushed.
func (c *Changeover) Text() string {
	if c == nil {
		return ""
	}
	w := &strings.Builder{}
	gal := func(v float64) string { return measure.Gallons(v).Text() }
	fmt.Fprintf(w, "changeover  to %s: arrives %s, half %s, clean %s gal", c.To, gal(c.Arrives), gal(c.Half), gal(c.Clean))
	if c.CleanS != nil {
		fmt.Fprintf(w, " (%s s)", measure.SecondsText(*c.CleanS))
	}
	switch {
	case c.PushBack != nil && len(c.Legs) > 1:
		fmt.Fprintf(w, "; push back %s gal, part by part", gal(c.PushBack.Gal))
	case c.PushBack != nil:
		fmt.Fprintf(w, "; push back %s gal into %s", gal(c.PushBack.Gal), *c.PushBack.Into)
	}
	fmt.Fprintf(w, "\n            clean give or take %s gal, %s; %s decides: %s\n", gal(c.Band), c.Margins, c.DecidedBy, c.Why)
	fmt.Fprintf(w, "            left of the old liquid when you stop there: %.4f gal, %.2g of hose and pump\n", c.Left, c.LeftShare)
	switch c.Tint {
	case core.BetweenAlike:
		fmt.Fprintf(w, "            no tint tells them apart: go by gallons\n")
	case core.TowardsClear:
		fmt.Fprintf(w, "            the last of the colour goes at about %s gal; it is late\n", gal(c.TintGone))
	}
	if c.Air > 0 {
		fmt.Fprintf(w, "            air comes first, %s gal of it: the seconds count it, the gallons do not\n", gal(c.Air))
	}
	if c.FlowLow && c.MinFlow != nil {
		fmt.Fprintf(w, "            the flow is too low for a clean changeover: at least %.2f gpm\n", *c.MinFlow)
	}
	if o := c.Overflow; o != nil {
		fmt.Fprintf(w, "            %s has room for %s gal: %s gal into it would run over by %s gal\n", o.Letter, gal(o.Room), gal(o.Gets), gal(o.Over))
	}
	if o := c.Order; o != nil {
		fmt.Fprintf(w, "            return turned with the supply: %.3f gal of the old come into %s; held for %s s with the gun shut: %.3f gal of the new are lost\n",
			o.Together, c.To, measure.SecondsText(o.HeldS), o.Held)
	}
	for _, way := range c.Ways {
		wayText(w, &way)
	}
	return w.String()
}

func wayText(w *strings.Builder, way *Way) {
	var legs []string
	for _, l := range way.Legs {
		into := "a pail"
		if l.Into != nil {
			into = *l.Into
		}
		legs = append(legs, measure.Gallons(l.Gal).Text()+" gal into "+into)
	}
	mark := "  or"
	if way.Chosen {
		mark = "  so"
	}
	fmt.Fprintf(w, "            %s %s", mark, strings.Join(legs, ", "))
	switch {
	case way.Cannot != nil:
		fmt.Fprintf(w, ": cannot be: %s\n", *way.Cannot)
		return
	case way.RunS != nil:
		fmt.Fprintf(w, " after the bypass ran for %s s", measure.SecondsText(*way.RunS))
	}
	fmt.Fprintf(w, ": %.3f gal new in the old, %.3f gal old in the new", way.NewOld, way.OldNew)
	if way.Product != nil {
		switch {
		case way.Own != nil:
			fmt.Fprintf(w, ", %s at %.2f of its own strength", *way.Product, *way.Own)
		case way.Share != nil:
			fmt.Fprintf(w, ", %s at %.2g of its lowest label rate", *way.Product, *way.Share)
		}
		if way.Weight != "none" {
			fmt.Fprintf(w, ", %s", way.Weight)
		}
	}
	w.WriteString("\n")
}
