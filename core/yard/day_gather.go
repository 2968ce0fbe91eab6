package yard

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// gathered is what the plan of a day is made from, and how its figures lead back to the book.
type gathered struct {
	b        *core.Book
	at       core.Moment
	date     string
	mixes    []core.Mix         // that can be sprayed
	with     []*core.Applicator // that are planned with
	atHand   map[string]bool    // mixes that stand in a tank or are to be loaded
	day      batch.Day
	liquids  map[liquidOf]int
	asks     map[[3]int][]string // by visit, zone and option
	place    string              // where it is loaded
	unpriced map[string]bool
	warnings []DayWarning
	notes    []string
}

// liquidOf is a mix at the strength of a delivery rate.
type liquidOf struct {
	mix      string
	delivery float64
}

func gatherDay(b *core.Book, q DayAsk) (*gathered, error) {
	if b.Rig() == nil {
		return nil, measure.Troublef("Enter the rig first.", "The book has no rig yet.")
	}
	g := &gathered{b: b, at: q.At, date: q.At.Date(), atHand: map[string]bool{}, liquids: map[liquidOf]int{}, asks: map[[3]int][]string{}, unpriced: map[string]bool{}}
	if b.Day().Open {
		g.date = b.Day().Date
	}
	g.findMixes()
	g.findApplicators()
	if len(g.mixes) == 0 || len(g.with) == 0 {
		return nil, measure.Troublef("Enter a mix, and a gun or a ride-on machine with its delivery rate.", "The book has %d mixes that can be sprayed and %d applicators to plan with.", len(g.mixes), len(g.with))
	}
	g.times()
	if err := g.visits(q); err != nil {
		return nil, err
	}
	if len(g.day.Visits) == 0 {
		return nil, measure.Troublef("Put lawns in, or name them.", "No lawn is left to plan on %s.", g.date)
	}
	g.rig()
	slices.SortStableFunc(g.warnings, func(a, b DayWarning) int { return int(b.Weight) - int(a.Weight) })
	return g, nil
}

// findMixes takes the mixes that can be sprayed: none of their products is a granule.
func (g *gathered) findMixes() {
	for _, m := range g.b.Mixes() {
		sprayed := true
		for _, p := range m.Parts {
			prod := g.b.Product(p.Product)
			class := ""
			if prod != nil {
				class = strings.ToLower(prod.Label.MixingClass)
			}
			sprayed = sprayed && prod != nil && class != "g" && !strings.HasPrefix(class, "gr")
		}
		if sprayed {
			g.mixes = append(g.mixes, m)
		}
	}
	p := g.b.Plumbing()
	for i := range p.Compartments {
		if c := &p.Compartments[i]; c.Drawable() > 0 {
			g.atHand[g.b.MixIn(string(c.Letter))] = true
		}
	}
	for _, l := range g.b.LoadPlans() {
		g.atHand[l.Mix] = true
	}
}

// findApplicators takes guns and ride-on machines: backpacks are for spots, spreaders draw from no compartment.
func (g *gathered) findApplicators() {
	rig := g.b.Rig()
	for i := range rig.Applicators {
		a := &rig.Applicators[i]
		if (a.Type == core.Gun || a.Type == core.RideOn) && a.Delivery.V > 0 {
			g.with = append(g.with, a)
			g.day.Applicators = append(g.day.Applicators, batch.DayApplicator{Name: a.Name})
		}
		if t := g.b.Plumbing().Tank(a.Name); t != nil && t.Liquid.Volume > 0 {
			g.notes = append(g.notes, fmt.Sprintf("what stands in the tank of %s, %s gal, is not counted on", a.Name, t.Liquid.Volume.Text()))
		}
	}
}

func (g *gathered) times() {
	b := g.b
	g.day.Times = batch.DayTimes{
		Changeover: b.Setting(core.PlanChangeoverMin), Refill: b.Setting(core.PlanRefillMin), Rinse: b.Setting(core.PlanRinseMin),
		Between: b.Setting(core.PlanDriveMin), ToRefill: b.Setting(core.PlanToRefillMin), MPH: b.Setting(core.PlanDriveMPH),
	}
	g.day.Reserve.Share = b.Setting(core.PlanReservePct) / 100
	g.day.Start = minuteOf(g.at)
	if at, err := core.MinuteOfDay(g.text(core.PlanStarts)); err == nil && !b.Day().Open {
		g.day.Start = float64(at)
	}
	name, lat, long, err := core.ReadRefillPlace(g.text(core.RefillPlace))
	if g.place = name; err != nil || name == "" {
		g.place = "yard"
	}
	g.day.Base = batch.Place{Lat: lat, Long: long}
}

func (g *gathered) text(setting string) string {
	s, _ := g.b.SettingText(setting)
	return s
}

// minuteOf is the minute of the day at a moment.
func minuteOf(at core.Moment) float64 {
	t, err := time.Parse("15:04", at.Clock())
	if err != nil {
		return 0
	}
	return float64(60*t.Hour() + t.Minute())
}

// visits gathers the lawns and what each of their zones may get.
func (g *gathered) visits(q DayAsk) error {
	d, lawns := g.b.Day(), q.Lawns
	if len(lawns) == 0 {
		switch {
		case d.Open:
			lawns = ahead(g.b)
		default:
			lawns = check.RouteFor(g.b, g.date)
		}
	}
	for i, name := range lawns {
		l := g.b.Lawn(name)
		if l == nil {
			return measure.Troublef("Write its name as it stands in the book.", "There is no lawn %q in the book.", name)
		}
		if slices.Contains(lawns[:i], name) {
			return measure.Troublef("Name each lawn once.", "%s is named twice.", name)
		}
		v := batch.Visit{Name: name, Place: batch.Place{Lat: l.Latitude, Long: l.Longitude}, From: minuteMaybe(l.WindowFrom), To: minuteMaybe(l.WindowTo)}
		if on := d.Visiting(); on != nil && on.Lawn == name {
			v.Pinned = core.Known(len(g.day.Visits))
		}
		if pin, ok := q.pinOf(name); ok {
			g.pin(&v, pin)
		}
		for _, z := range g.left(l) {
			need, err := g.need(l, z, len(g.day.Visits), len(v.Zones))
			if err != nil {
				return err
			}
			v.Zones = append(v.Zones, need)
		}
		if len(v.Zones) > 0 {
			g.day.Visits = append(g.day.Visits, v)
		}
	}
	return nil
}

// pin holds a visit to its place, or to times of the day.
func (g *gathered) pin(v *batch.Visit, p DayPin) {
	g.notes = append(g.notes, p.Says())
	if !p.From.Known {
		v.Pinned = core.Known(len(g.day.Visits))
		return
	}
	v.From, v.To = p.From, p.To
}

func minuteMaybe(clock string) core.Maybe[float64] {
	m, err := core.MinuteOfDay(clock)
	return core.Maybe[float64]{V: float64(m), Known: err == nil}
}

// left is what of a lawn is still to do: of the visit that is on what it has left, else what is owed there, else all.
func (g *gathered) left(l *core.Lawn) []core.ZoneRest {
	if v := g.b.Day().Visiting(); v != nil && v.Lawn == l.LawnName {
		return g.b.RestAt(v)
	}
	if o := g.b.OwedAt(l.LawnName); o != nil {
		return o.Zones
	}
	var out []core.ZoneRest
	for _, z := range l.Zones {
		out = append(out, core.ZoneRest{Zone: z.Name, Area: z.Area})
	}
	return out
}

// need is a zone with the options that the plan may take for it.
func (g *gathered) need(l *core.Lawn, rest core.ZoneRest, visit, at int) (batch.Need, error) {
	z, _ := l.Zone(rest.Zone)
	out := batch.Need{Zone: rest.Zone, Area: rest.Area}
	zones := float64(max(len(g.left(l)), 1))
	warned := len(g.warnings)
	for n, a := range g.with {
		list, err := g.candidates(l.LawnName, z, check.Intent{Lawn: l.LawnName, Zones: []string{z.Name}, With: a.Name, Area: core.Known(rest.Area), At: g.at})
		if err != nil {
			return out, err
		}
		take := chosen(list)
		if n == 0 { // the rates are the mix's, whatever lays it
			g.warnOf(l.LawnName, z, list, take)
		}
		for _, c := range take {
			o, err := g.option(c.mix, a, n, rest.Area, zones)
			if err != nil {
				return out, err
			}
			g.asks[[3]int{visit, at, len(out.Options)}] = c.asks
			out.Options = append(out.Options, o)
		}
	}
	if len(out.Options) == 0 && len(g.warnings) > warned {
		out.Why = g.warnings[warned].Says
	}
	return out, nil
}

// option is a mix through an applicator on so much of a zone.
func (g *gathered) option(m *core.Mix, a *core.Applicator, with int, area measure.Area, zones float64) (batch.Option, error) {
	o := batch.Option{Applicator: with, Volume: max(a.Delivery.Volume(area), 1), Minutes: g.minutes(a, area)}
	if a.Type == core.RideOn {
		o.Minutes += g.b.Setting(core.PlanRideOnMin) / zones
	}
	key := liquidOf{m.MixName, a.Delivery.V}
	at, there := g.liquids[key]
	if !there {
		list, err := parts(g.b, m.MixName)
		if err != nil {
			return o, err
		}
		targets, err := batch.Targets(list, a.Delivery)
		if err != nil {
			return o, err
		}
		at = len(g.day.Liquids)
		g.liquids[key] = at
		g.day.Liquids = append(g.day.Liquids, batch.DayLiquid{Name: m.MixName + " for " + a.Name, Mix: m.MixName, Delivery: a.Delivery, Products: targets})
	}
	o.Liquid = at
	cost, err := g.cost(m, area)
	o.Cost = cost
	return o, err
}

// minutes is how long an area takes through an applicator: by flow and delivery, else by the setting.
func (g *gathered) minutes(a *core.Applicator, area measure.Area) float64 {
	pace := g.b.Setting(core.PlanRideOnSqftMin)
	if a.Type == core.Gun {
		if a.Flow.Known && a.Flow.V > 0 {
			return a.Flow.V.Seconds(a.Delivery.Volume(area)) / 60
		}
		pace = g.b.Setting(core.PlanGunSqftMin)
	}
	return area.SquareFeet() / pace
}

// cost is what of products goes on an area, as far as prices are known.
func (g *gathered) cost(m *core.Mix, area measure.Area) (measure.Money, error) {
	var list []batch.Priced
	for _, p := range m.Parts {
		list = append(list, g.priced(p.Product, p.Rate.Over(area)))
	}
	c, err := batch.CostOf(list)
	for _, p := range c.Unpriced {
		g.unpriced[p] = true
	}
	return c.Total, err
}
