package season

import (
	"fmt"
	"slices"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/past"
	"example.com/tintline/core/yard"
)

// roundDays are the days from one round of a lawn to its next.
func roundDays(b *core.Book, lawn string) (days int, own bool) {
	if l := b.Lawn(lawn); l != nil && l.RoundDays.Known {
		return int(l.RoundDays.V), true
	}
	return int(b.Setting(core.RoundDays)), false
}

// takeRounds adds up by round. A lawn's first round begins with what was first laid there in the year, each next one with what
// comes half a round or more after the day on which the one before began: a rest that was carried over, or a call-back, belongs to
// the round that it goes on with. Common practice, no source.
func (g *gathering) takeRounds(list []past.Laid) {
	type at struct {
		begun string
		n     int
	}
	now := map[string]at{}
	for i := range list {
		l := &list[i]
		r, days := now[l.Lawn], 0
		days, _ = roundDays(g.b, l.Lawn)
		if r.n == 0 || core.After(r.begun, float64(days)/2) <= l.Date {
			r = at{l.Date, r.n + 1}
			now[l.Lawn] = r
			g.out.Lawns[g.lawns[l.Lawn]].Rounds = r.n
		}
		for len(g.out.Rounds) < r.n {
			g.out.Rounds = append(g.out.Rounds, Covered{Name: fmt.Sprintf("round %d", len(g.out.Rounds)+1), From: l.Date})
		}
		name := fmt.Sprintf("round %d", r.n)
		sums := Sums{Volume: l.Volume, Area: l.Treated}
		if l.Dry {
			for _, u := range l.Products {
				sums.Mass += measure.Mass(u.Amount.N)
			}
		}
		g.out.Rounds = cover(g.out.Rounds, name, l.Date, sums, g.fresh("round", name, l.Lawn))
	}
}

// finish says how a lawn stands against limits, and when it is due.
func (g *gathering) finish(l *Lawn) {
	days, own := roundDays(g.b, l.Lawn)
	l.Due = Due{Days: days, Own: own}
	var lines []core.SeasonLine
	for i := range l.Zones {
		z := &l.Zones[i]
		lines = append(lines, g.limits(l.Lawn, z)...)
		if lawn := g.b.Lawn(l.Lawn); lawn != nil && !z.Gone {
			entered, _ := lawn.Zone(z.Zone)
			for _, mix := range yard.MixesDue(g.b, g.at, l.Lawn, entered) {
				l.Due.Once = once(l.Due.Once, mix)
			}
		}
	}
	l.Due.reckon(lines, g.at)
	if o := g.b.OwedAt(l.Lawn); o != nil {
		l.Due.Owed = o.Since
	}
}

// limits puts beside what was laid on a zone how it stands in the year, and gives the lines of its products as of today.
func (g *gathering) limits(lawn string, z *Zone) []core.SeasonLine {
	if z.Grass != "" {
		z.Most = check.NitrogenYear(g.b, z.Grass)
	}
	if g.out.Kept {
		x := g.b.Season(lawn, z.Zone, g.out.To, nil)
		for i := range z.Used {
			u := &z.Used[i]
			if k, ok := g.b.ProductKey(u.Product); ok {
				line := x.Product(k)
				if g.out.Over {
					line.Again, line.Fits, line.Next = "", "", ""
				} else {
					u.More, u.MoreBy = x.MostMore(k)
				}
				u.Line, u.over = core.Known(line), g.out.Over
				z.UnknownBefore = max(z.UnknownBefore, line.UnknownBefore)
			}
		}
		n, p := x.Nitrogen(), x.Phosphate()
		z.Nitrogen.Rate, z.Phosphate.Rate = core.Known(n.AtLeast), core.Known(p.AtLeast)
		for _, line := range x.Lines() {
			if line.Of == core.OfActive && line.From <= g.out.To {
				z.Actives = append(z.Actives, line)
			}
		}
	}
	if z.Gone {
		return nil
	}
	return g.b.Season(lawn, z.Zone, g.at, nil).Products()
}

// reckon says when a lawn is due by what its zones had last.
func (d *Due) reckon(lines []core.SeasonLine, at string) {
	for i := range lines {
		d.Last = max(d.Last, lines[i].Last)
	}
	if d.Last == "" {
		return
	}
	d.Date = core.After(d.Last, float64(d.Days))
	begun := daysBefore(d.Last, d.Days/2)
	for i := range lines {
		switch l := &lines[i]; {
		case l.Last == "" || l.Last < begun:
		case l.Fits == "":
			d.Never = once(d.Never, l.Name)
		case l.Next > at && l.Next > d.Again:
			d.Again, d.Waits = l.Next, l.Name
		}
	}
	slices.Sort(d.Never)
}

func daysBefore(date string, n int) string {
	t, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return date
	}
	return t.AddDate(0, 0, -n).Format(time.DateOnly)
}

// stocks puts the stock beside the products; of a whole season those that went nowhere stand there too if they are in stock.
func (g *gathering) stocks(all bool) error {
	shelf, err := yard.Stock(g.b)
	if err != nil {
		return err
	}
	now := len(g.at) >= 4 && g.out.Year == g.at[:4] && len(g.b.Day().Date) >= 4 && g.b.Day().Date[:4] == g.out.Year
	for i := range shelf.Products {
		st := &shelf.Products[i]
		at := productAt(g.out.Products, st.Product)
		if at < 0 {
			if !all || !st.Have.Known {
				continue
			}
			key, _ := g.b.ProductKey(st.Product)
			at = len(g.out.Products)
			g.out.Products = append(g.out.Products, Product{Used: newUsed(past.Used{Product: st.Product, Key: key, Amount: measure.Amount{Kind: st.Form}})})
		}
		p := &g.out.Products[at]
		p.Stock = st.Stock
		if st.Order.Known {
			p.Order = st.Order.V.Words()
		}
		p.Bought = core.Maybe[measure.Amount]{V: st.BoughtYear, Known: now && st.Have.Known}
	}
	return nil
}
