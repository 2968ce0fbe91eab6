package check

import "example.com/tintline/core"

// due lists the zones that a visit is for and has not carried over: all of the lawn, or what was owed there. One that
// only looks is for none, and for a spot the first spraying is all.
func due(b *core.Book, v *core.Visit) []string {
	lawn := b.Lawn(v.Lawn)
	if lawn == nil || v.Kind == core.LookOnly || (v.Kind == core.Spot && len(b.Day().LaidAt(v)) > 0) {
		return nil
	}
	var out []string
	for _, z := range lawn.Zones {
		owed := len(v.Due) == 0
		for _, d := range v.Due {
			owed = owed || d.Zone == z.Name
		}
		if owed && !hasText(v.Carried, z.Name) {
			out = append(out, z.Name)
		}
	}
	return out
}

// RestOf is what the visit now has still to do, zone by zone: zones that got nothing, and what is left of those that
// got a part. What is left of a zone after rounding is nothing. A visit for a spot, or to look only, leaves no rest.
func RestOf(b *core.Book) []core.ZoneRest {
	v := b.Day().Visiting()
	if v == nil || v.Kind == core.LookOnly || v.Kind == core.Spot {
		return nil
	}
	lawn := b.Lawn(v.Lawn)
	var out []core.ZoneRest
	for _, r := range b.RestAt(v) {
		z, _ := lawn.Zone(r.Zone)
		if float64(r.Area) > smallShare*float64(z.Area) {
			out = append(out, r)
		}
	}
	return out
}

// LeaveRest leaves the lawn now visited and carries over what is left of it. Where nothing was laid the visit is
// skipped.
func LeaveRest(b *core.Book, reason string) []core.Fact {
	v := b.Day().Visiting()
	if v == nil {
		return nil
	}
	rest := RestOf(b)
	switch {
	case len(rest) == 0:
		return []core.Fact{&core.VisitDone{Lawn: v.Lawn}}
	case len(b.Day().LaidAt(v)) == 0:
		return SkipAndCarry(b, v.Lawn, reason, true)
	}
	return []core.Fact{&core.CarriedOver{Lawn: v.Lawn, Zones: rest, Reason: reason}, &core.VisitDone{Lawn: v.Lawn}}
}

// SkipAndCarry skips the visit at a lawn, begun or planned; with carry, what was to be done there is kept for another
// day. A visit at which something was laid already is ended, not skipped, if the rest is carried over.
func SkipAndCarry(b *core.Book, lawn, reason string, carry bool) []core.Fact {
	skip := &core.VisitSkipped{Lawn: lawn, Reason: reason}
	if !carry {
		return []core.Fact{skip}
	}
	over := &core.CarriedOver{Lawn: lawn, Reason: reason}
	if v := b.Day().Visiting(); v != nil && v.Lawn == lawn {
		if over.Zones = RestOf(b); len(over.Zones) == 0 {
			return []core.Fact{skip}
		}
		if len(b.Day().LaidAt(v)) > 0 {
			return LeaveRest(b, reason)
		}
	}
	return []core.Fact{skip, over}
}

// RouteFor is the route of a day to be opened: what is owed by then, what the last day left over, and if that left
// nothing, all lawns in their order but those owed later.
func RouteFor(b *core.Book, date string) []string {
	var out []string
	later := map[string]bool{}
	add := func(lawn string) {
		if !hasText(out, lawn) {
			out = append(out, lawn)
		}
	}
	for _, o := range b.Owed() {
		if later[o.Lawn] = o.Until > date; !later[o.Lawn] {
			add(o.Lawn)
		}
	}
	left := false
	for _, v := range b.Day().Visits {
		if v.State == core.Planned || (v.State == core.Begun && len(RestOf(b)) > 0) {
			left = true
			add(v.Lawn)
		}
	}
	if left {
		return asPlanned(b, date, out)
	}
	for _, l := range b.Lawns() {
		if !later[l.LawnName] {
			add(l.LawnName)
		}
	}
	return asPlanned(b, date, out)
}

// asPlanned puts lawns into the order of the plan that was accepted for the date; those that it does not have come behind.
func asPlanned(b *core.Book, date string, lawns []string) []string {
	p := b.Planned()
	if p == nil || p.Date != date {
		return lawns
	}
	var out []string
	for _, l := range p.Lawns() {
		if hasText(lawns, l) {
			out = append(out, l)
		}
	}
	for _, l := range lawns {
		if !hasText(out, l) {
			out = append(out, l)
		}
	}
	return out
}
