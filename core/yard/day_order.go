package yard

import (
	"fmt"
	"slices"
	"sort"

	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// order turns a plan into what is shown and accepted.
func (g *gathered) order(name string, p *batch.DayPlan) DayOrder {
	out := DayOrder{
		Name: name, Changeovers: len(p.Changeovers), Minutes: p.Minutes, Miles: p.Miles, Cost: p.Cost, Exact: p.Exact, Bound: p.Bound,
		Back: p.Return, Steps: p.Steps,
	}
	for i := range p.Loads {
		out.Loads = append(out.Loads, g.load(&p.Loads[i]))
		if p.Loads[i].Visit >= 0 {
			out.Refills++
		}
	}
	for _, v := range p.Order {
		out.Stops = append(out.Stops, g.stop(p, v))
	}
	for i := range g.day.Visits { // what gets nothing stands at the end, so that no lawn is lost
		if !slices.Contains(p.Order, i) {
			out.Stops = append(out.Stops, g.stop(p, i))
		}
	}
	out.Steps = append(g.demandSteps(p), out.Steps...)
	out.Truck = g.truck(p.Carry)
	for product := range g.unpriced {
		out.Unpriced = append(out.Unpriced, product)
	}
	sort.Strings(out.Unpriced)
	return out
}

func (g *gathered) load(l *batch.DayLoad) DayLoad {
	out := DayLoad{Place: g.place}
	if l.Visit >= 0 {
		out.Before = g.day.Visits[l.Visit].Name
	}
	line := g.day.Rig.Line.Hose + g.day.Rig.Line.Cell
	seen := map[int]bool{} // hose and cell take their fill once of each liquid
	for _, c := range l.Compartments {
		of := &g.day.Liquids[c.Liquid]
		t := DayTank{
			Letter: c.Letter, Mix: of.Mix, For: g.madeFor(of), Had: c.Had, Add: c.Add, Level: c.Level, OnLawns: c.Laid, Heel: g.day.Rig.Compartments[c.Compartment].Heel,
			Emptied: c.ThrownOut, Rinsed: c.Rinsed, Strength: c.Strength,
		}
		rest := max(t.Level-t.OnLawns-t.Heel, 0)
		if !seen[c.Liquid] {
			t.Line = min(line, rest)
		}
		seen[c.Liquid] = true
		t.Reserve = rest - t.Line
		if t.Add > 0 {
			if parts, err := g.b.LoadParts(t.Mix, t.For, t.Add); err == nil {
				t.Products = parts
			}
		}
		out.Tanks = append(out.Tanks, t)
	}
	sort.SliceStable(out.Tanks, func(i, j int) bool { return out.Tanks[i].Letter < out.Tanks[j].Letter })
	return out
}

// madeFor is the first applicator with the delivery rate of a liquid.
func (g *gathered) madeFor(l *batch.DayLiquid) string {
	for _, a := range g.with {
		if a.Delivery == l.Delivery {
			return a.Name
		}
	}
	return ""
}

func (g *gathered) stop(p *batch.DayPlan, visit int) DayStop {
	v := &g.day.Visits[visit]
	out := DayStop{Lawn: v.Name}
	for _, a := range p.Arrivals {
		if a.Visit == visit {
			out.At, out.Drive, out.Miles, out.Waited, out.Late = a.At, a.Drive, a.Miles, a.Waited, a.Late
		}
	}
	for n := range v.Zones {
		z := DayZone{Zone: v.Zones[n].Zone, Area: v.Zones[n].Area, Why: v.Zones[n].Why}
		for _, u := range p.Unserved {
			if u.Visit == visit && u.Need == n && z.Why == "" {
				z.Why = u.Says
			}
		}
		for _, l := range p.Laid {
			if l.Visit == visit && l.Need == n {
				g.laid(&z, p, l)
			}
		}
		for _, c := range p.Changeovers {
			z.Changeover = z.Changeover || c.Visit == visit && c.Need == n
		}
		for i := range p.Loads {
			z.Refill = z.Refill || p.Loads[i].Visit == visit && p.Loads[i].Need == n
		}
		out.Zones = append(out.Zones, z)
	}
	return out
}

func (g *gathered) laid(z *DayZone, p *batch.DayPlan, l batch.DayLaid) {
	o := &g.day.Visits[l.Visit].Zones[l.Need].Options[l.Option]
	z.Why, z.Volume, z.Minutes, z.With = "", o.Volume, o.Minutes, g.with[o.Applicator].Name
	z.Asks = g.asks[[3]int{l.Visit, l.Need, l.Option}]
	if o.Liquid < 0 {
		return
	}
	z.Mix = g.day.Liquids[o.Liquid].Mix
	var from []byte
	for _, c := range p.Loads[l.Load].Compartments {
		if c.Liquid == o.Liquid {
			from = append(from, c.Letter)
		}
	}
	slices.Sort(from)
	z.From = string(from)
}

// demandSteps say what the lawns ask of each liquid: the area at its delivery rate.
func (g *gathered) demandSteps(p *batch.DayPlan) []batch.Step {
	area, volume := make([]measure.Area, len(g.day.Liquids)), make([]measure.Volume, len(g.day.Liquids))
	for _, l := range p.Laid {
		need := &g.day.Visits[l.Visit].Zones[l.Need]
		if o := &need.Options[l.Option]; o.Liquid >= 0 {
			area[o.Liquid] += need.Area
			volume[o.Liquid] += o.Volume
		}
	}
	var out []batch.Step
	for i, l := range g.day.Liquids {
		if area[i] > 0 {
			out = append(out, batch.Step{Says: fmt.Sprintf("%s: %s sq ft at %.2f gal per 1,000 sq ft = %s gal", l.Name, area[i].Text(), l.Delivery.GalPer1000(), volume[i].Text())})
		}
	}
	return out
}

// priced is an amount of a product at the price that was paid last, else at that of the label entry.
func (g *gathered) priced(product string, a measure.Amount) batch.Priced {
	s := g.b.Stock(product)
	return batch.Priced{Product: product, Amount: a, Price: s.Price, Package: s.PriceFor}
}

// short names the products of which less is in stock than an order takes.
func (g *gathered) short(o *DayOrder) []DayWarning {
	var out []DayWarning
	for _, t := range o.Truck {
		if have := g.b.Stock(t.Product).Have; have.Known && have.V.N < t.Amount.N {
			out = append(out, DayWarning{
				Lawn: t.Product, Weight: check.Ask, Says: fmt.Sprintf("the loads take %s, and %s are in stock", t.Amount.Text(), have.V.Text()),
				Do: "Buy it before the day, or plan less.",
			})
		}
	}
	return out
}

// truck is the product to put on the truck, in packages and money.
func (g *gathered) truck(list []batch.Dose) []Truck {
	var out []Truck
	for _, d := range list {
		if d.Amount.N <= 0 {
			continue
		}
		t := Truck{Product: d.Product, Amount: d.Amount, Shelf: d.Amount.Text()}
		if prod := g.b.Product(d.Product); prod != nil {
			if pack := prod.Label.Package; pack.N > 0 && pack.Kind == d.Amount.Kind {
				t.Shelf = batch.Packages((d.Amount.N+pack.N-1)/pack.N, pack, "")
			}
			c, err := batch.CostOf([]batch.Priced{g.priced(d.Product, d.Amount)})
			if err == nil && len(c.Unpriced) == 0 {
				t.Cost = core.Known[measure.Money](c.Total)
			}
		}
		out = append(out, t)
	}
	return out
}
