package yard

import (
	"errors"
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// TrueUp is what the last reading of a compartment's gauge asks to put right on the lawns, and what comes of it.
type TrueUp struct {
	Tank     string
	Shown    core.Shown
	Share    measure.Volume // of the difference, what is this day's
	Band     measure.Volume // of the difference, standard uncertainty
	Lawns    []TruedLawn
	Left     []core.TruedSpray // not logged by area, left as they are
	Why, Do  string            // where none is proposed
	Fact     *core.TruedUp     // nil where none is proposed
	Findings []Finding         // what crosses the label's most or a yearly limit by it
	Steps    []batch.Step
}

// TruedLawn is one spraying on one zone, as logged and as the gauge says.
type TruedLawn struct {
	core.TruedSpray
	Now   measure.Volume
	Doses []TruedDose
	Sums  []TruedSum
}

// TruedDose is a product on it, as laid over all of the area.
type TruedDose struct {
	Product             string
	Before, After       measure.Rate
	Mix                 core.Maybe[measure.Rate] // what the mix means
	Lowest, Most        core.Maybe[measure.Rate] // of the label, on that grass
	TimesMix, TimesMost [2]core.Maybe[float64]   // before and after
	Crosses             bool                     // the label's most, only by the true-up
}

// TruedSum is a sum of the season with a limit, of all that went on the zone.
type TruedSum struct {
	Name          string
	Before, After float64 // as a share of the limit
	Crosses       bool    // only by the true-up
}

// TrueUpOf works it out. Ways that are included besides area are put right too. The error is of a tank that cannot be asked about.
func TrueUpOf(b *core.Book, tank string, include ...string) (TrueUp, error) {
	t, why := b.TrueUp(tank, include...)
	if t.Letter == 0 {
		return TrueUp{}, why
	}
	out := TrueUp{Tank: tank, Shown: t.Shown, Share: t.Share, Band: t.GiveOrTake, Left: t.Left}
	out.steps(&t)
	if why != nil {
		var p *core.Problem
		if errors.As(why, &p) {
			out.Why, out.Do = p.What, p.Do
		}
		for _, l := range t.Lines {
			out.Lawns = append(out.Lawns, TruedLawn{TruedSpray: l, Now: l.Logged, Doses: doses(b, b, l)})
		}
		return out, nil
	}
	f := &core.TruedUp{Tank: tank, Include: include}
	after := b.Clone()
	es, err := after.Prepare("true up", b.LastAt(), f)
	if err == nil {
		err = after.Apply(es[0])
	}
	if err != nil {
		return TrueUp{}, err
	}
	out.Fact = f
	for _, l := range t.Lines {
		lawn := TruedLawn{TruedSpray: l, Now: l.Logged + l.More, Doses: doses(b, after, l), Sums: seasonSums(b, after, l)}
		out.Lawns = append(out.Lawns, lawn)
		out.crossed(&lawn)
	}
	return out, nil
}

func (t *TrueUp) steps(u *core.TrueUp) {
	say := func(format string, args ...any) {
		t.Steps = append(t.Steps, batch.Step{Says: fmt.Sprintf(format, args...)})
	}
	since := map[string]string{core.FromReading: "the reading before", core.FromLoad: "the load into the empty tank", core.FromOpening: "the day was opened"}
	say("gauge of %s at %s, since %s at %s: %s", t.Tank, u.At.Clock(), since[u.By], u.Since.Clock(), u.Words())
	say("the readings tell it to %s gal (standard uncertainty)", gallonsText(u.GiveOrTake))
	if u.Earlier > 0 {
		say("%s of %s gal were drawn today, the rest on days before: %s gal are today's", gallonsText(u.Drawn), gallonsText(u.Drawn+u.Earlier), gallonsText(u.Share))
	}
	var logged measure.Volume
	for i := range u.Lines {
		logged += u.Lines[i].Logged
	}
	if len(u.Lines) > 0 && u.Share != 0 && !u.Trued.Known {
		say("shared in proportion over %s gal: each gallon logged is %.3f gal", gallonsText(logged), 1+float64(u.Share)/float64(logged))
	}
	for i := range u.Left {
		say("%s, %s stays as it is: logged by %s", u.Left[i].Lawn, u.Left[i].Zone, u.Left[i].By)
	}
}

// gallonsText is a volume that may be less than nothing.
func gallonsText(v measure.Volume) string {
	if v < 0 {
		return "-" + (-v).Text()
	}
	return v.Text()
}

// doses lists the products of one spraying before and after.
func doses(before, after *core.Book, l core.TruedSpray) []TruedDose {
	was, now := &before.Day().Laid[l.Laid], &after.Day().Laid[l.Laid]
	var mix *core.Mix
	var most int64
	for _, o := range was.From {
		if o.N > most {
			most, mix = o.N, before.Mix(before.Origin(o.Key).Mix)
		}
	}
	var out []TruedDose
	for _, h := range was.Holds {
		p := before.ProductByKey(h.Key)
		rate := func(n int64) measure.Rate {
			if was.Area <= 0 {
				return measure.Rate{Kind: p.Label.Form}
			}
			return measure.Rate{V: float64(n) / float64(was.Area), Kind: p.Label.Form}
		}
		d := TruedDose{Product: p.ProductName, Before: rate(h.N), After: rate(now.Holds.Of(h.Key))}
		if mix != nil {
			if r, ok := mix.Rate(p.ProductName); ok {
				d.Mix = core.Known(r)
			}
		}
		d.Lowest, _ = p.Label.RatesFor(was.Grass)
		d.Most = p.Label.MostFor(was.Grass)
		for i, r := range []measure.Rate{d.Before, d.After} {
			d.TimesMix[i], d.TimesMost[i] = over(r, d.Mix), over(r, d.Most)
		}
		d.Crosses = d.TimesMost[1].Or(0) > core.Rounding && d.TimesMost[0].V <= core.Rounding
		out = append(out, d)
	}
	return out
}

func over(r measure.Rate, of core.Maybe[measure.Rate]) core.Maybe[float64] {
	if !of.Known || of.V.V <= 0 {
		return core.Maybe[float64]{}
	}
	return core.Known(r.V / of.V.V)
}

// seasonSums lists the yearly sums that have a limit.
func seasonSums(before, after *core.Book, l core.TruedSpray) []TruedSum {
	date := before.Day().Date
	now := after.SeasonOf(l.Lawn, l.Zone, date)
	var out []TruedSum
	for _, was := range before.SeasonOf(l.Lawn, l.Zone, date) {
		for _, is := range now {
			if is.Of == was.Of && is.Name == was.Name && is.Share.Known {
				s := TruedSum{Name: is.Name, Before: was.Share.V, After: is.Share.V}
				s.Crosses = s.After > core.Rounding && s.Before <= core.Rounding
				out = append(out, s)
			}
		}
	}
	return out
}

// crossed notes what goes over a limit by the true-up. It went down so: the true-up only says it.
func (t *TrueUp) crossed(l *TruedLawn) {
	const do = "It is booked as it went down, and the record will say so."
	for _, d := range l.Doses {
		if d.Crosses {
			t.Findings = append(t.Findings, Finding{check.Stop, fmt.Sprintf("%s went down at %.2f times the label's most on %s, %s.", d.Product, d.TimesMost[1].V, l.Lawn, l.Zone), do, "label as entered"})
		}
	}
	for _, s := range l.Sums {
		if s.Crosses {
			t.Findings = append(t.Findings, Finding{check.Stop, fmt.Sprintf("%s is at %.2f times its yearly limit on %s, %s.", s.Name, s.After, l.Lawn, l.Zone), do, "label as entered"})
		}
	}
}
