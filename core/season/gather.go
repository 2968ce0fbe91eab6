package season

import (
	"fmt"
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/past"
)

// gathering is a season while its rows are read.
type gathering struct {
	b     *core.Book
	out   *Season
	at    string
	lawns map[string]int
	seen  map[string]bool  // what was counted: names joined
	n, p  map[[2]int32]per // nitrogen and phosphate of a product's label entry
}

// per is how much of something a unit of a product holds.
type per = measure.Maybe[float64]

// Of is the season of a year as of a date, of all lawns. At is the date of the open day, else of the clock; an empty year is that of
// the date. Rows that cannot be read are an error.
func Of(b *core.Book, read past.Reader, year, at string) (*Season, error) {
	return of(b, read, year, at, "")
}

// OfLawn is the same of one lawn alone. Rounds, products and days are those of that lawn.
func OfLawn(b *core.Book, read past.Reader, year, at, lawn string) (*Season, error) {
	return of(b, read, year, at, lawn)
}

func of(b *core.Book, read past.Reader, year, at, lawn string) (*Season, error) {
	const digits = len("2026")
	if year == "" {
		year = at[:min(digits, len(at))]
	}
	s := &Season{Year: year, To: year + "-12-31"}
	if at[:min(digits, len(at))] == year {
		s.To = at
	}
	s.Over = s.To < at
	s.Kept = year+"-01-01" >= b.KeptFrom()
	list, err := past.Find(b, read, past.Query{Lawn: lawn, From: year + "-01-01", To: year + "-12-31"})
	if err != nil {
		return nil, err
	}
	g := &gathering{b: b, out: s, at: at, lawns: map[string]int{}, seen: map[string]bool{}, n: map[[2]int32]per{}, p: map[[2]int32]per{}}
	for _, l := range b.Lawns() {
		if lawn == "" || l.LawnName == lawn {
			g.addLawn(l)
		}
	}
	for i := range list {
		g.take(&list[i])
	}
	g.takeRounds(list)
	for i := range s.Lawns {
		g.finish(&s.Lawns[i])
	}
	slices.SortStableFunc(s.Lawns, func(a, b Lawn) int { return strings.Compare(a.Due.By(), b.Due.By()) })
	if err := g.stocks(lawn == ""); err != nil {
		return nil, err
	}
	if lawn == "" {
		s.Drifts = driftsOf(b, s.Year, !s.Over)
	}
	return s, nil
}

func (g *gathering) addLawn(l *core.Lawn) {
	g.lawns[l.LawnName] = len(g.out.Lawns)
	lawn := Lawn{Lawn: l.LawnName, Customer: l.Customer, Address: l.Address}
	for _, z := range l.Zones {
		lawn.Zones = append(lawn.Zones, Zone{Zone: z.Name, Grass: z.Grass, Area: z.Area})
	}
	g.out.Lawns = append(g.out.Lawns, lawn)
}

// fresh tells whether names were not counted together yet, and counts them.
func (g *gathering) fresh(names ...string) bool {
	key := strings.Join(names, "\x00")
	was := g.seen[key]
	g.seen[key] = true
	return !was
}

// take adds what one spraying or spreading laid on a zone to all that it belongs to.
func (g *gathering) take(l *past.Laid) {
	sums := Sums{Volume: l.Volume, Area: l.Treated}
	if l.Dry {
		for _, u := range l.Products {
			sums.Mass += measure.Mass(u.Amount.N)
		}
	}
	s := g.out
	s.All.add(sums)
	lawn, zone := g.zone(l)
	lawn.add(sums)
	zone.add(sums)
	if n := len(s.Days); n == 0 || s.Days[n-1].Date != l.Date {
		s.Days = append(s.Days, Day{Date: l.Date})
	}
	s.Days[len(s.Days)-1].add(sums)
	s.Grasses = cover(s.Grasses, l.Grass, l.Date, sums, g.fresh("grass", l.Grass, l.Lawn))
	for _, u := range l.Products {
		zone.Used = use(zone.Used, u, l)
		if s.Products = useOf(s.Products, u, l); g.fresh("product", u.Product, l.Lawn, l.Zone) {
			s.Products[productAt(s.Products, u.Product)].Zones++
		}
		g.takeNutrients(zone, l, u)
	}
}

func (g *gathering) zone(l *past.Laid) (*Lawn, *Zone) {
	at, ok := g.lawns[l.Lawn]
	if !ok {
		at = len(g.out.Lawns)
		g.lawns[l.Lawn] = at
		g.out.Lawns = append(g.out.Lawns, Lawn{Lawn: l.Lawn, Gone: true})
	}
	lawn := &g.out.Lawns[at]
	z := slices.IndexFunc(lawn.Zones, func(z Zone) bool { return z.Zone == l.Zone })
	if z < 0 {
		z = len(lawn.Zones)
		lawn.Zones = append(lawn.Zones, Zone{Zone: l.Zone, Grass: l.Grass, Gone: true})
	}
	return lawn, &lawn.Zones[z]
}

func cover(list []Covered, name, date string, sums Sums, newLawn bool) []Covered {
	at := slices.IndexFunc(list, func(c Covered) bool { return c.Name == name })
	if at < 0 {
		at, list = len(list), append(list, Covered{Name: name, From: date})
	}
	c := &list[at]
	c.From, c.Upto = min(c.From, date), max(c.Upto, date)
	c.add(sums)
	if newLawn {
		c.Lawns++
	}
	return list
}

func (u *Used) add(p past.Used, l *past.Laid) {
	u.Amount.N += p.Amount.N
	u.Area += l.Area
	if u.last != l.Date {
		u.last = l.Date
		u.Days++
	}
}

func newUsed(p past.Used) Used {
	return Used{Product: p.Product, Key: p.Key, Amount: measure.Amount{Kind: p.Amount.Kind}}
}

// use adds a product to the list of a zone, which stays in the order of the book.
func use(list []Used, p past.Used, l *past.Laid) []Used {
	at := slices.IndexFunc(list, func(u Used) bool { return u.Product == p.Product })
	if at < 0 {
		for at = 0; at < len(list) && list[at].Key < p.Key; at++ {
		}
		list = slices.Insert(list, at, newUsed(p))
	}
	list[at].add(p, l)
	return list
}

func productAt(list []Product, name string) int {
	return slices.IndexFunc(list, func(o Product) bool { return o.Product == name })
}

func useOf(list []Product, p past.Used, l *past.Laid) []Product {
	at := productAt(list, p.Product)
	if at < 0 {
		for at = 0; at < len(list) && list[at].Key < p.Key; at++ {
		}
		list = slices.Insert(list, at, Product{Used: newUsed(p)})
	}
	list[at].Used.add(p, l)
	return list
}

// takeNutrients adds nitrogen and P2O5 by the label entry that was in force.
func (g *gathering) takeNutrients(z *Zone, l *past.Laid, u past.Used) {
	e := g.entry(u)
	if e == nil {
		return
	}
	key := [2]int32{u.Key, u.Version}
	if _, ok := g.n[key]; !ok {
		g.n[key], g.p[key] = e.NitrogenPerProduct(), e.PhosphatePerProduct()
	}
	n, p := g.n[key], g.p[key]
	mass := z.Nitrogen.take(n, u)
	if p.Known || !n.Known || n.V > 0 { // what feeds nothing is not asked for its analysis
		z.Phosphate.take(p, u)
	}
	if n.Known && n.V == 0 {
		return
	}
	month := l.Date[:min(len("2026-05"), len(l.Date))]
	s := g.out
	if k := len(s.Months); k == 0 || s.Months[k-1].Month != month {
		s.Months = append(s.Months, Month{Month: month})
	}
	m := &s.Months[len(s.Months)-1]
	m.Mass += mass
	if !n.Known {
		m.Unknown = once(m.Unknown, u.Product)
		return
	}
	if g.fresh("fed", fmt.Sprint(l.Seq), l.Lawn, l.Zone) { // two products in one mix feed the same ground
		m.Area += l.Area
	}
}

func (g *gathering) entry(u past.Used) *label.Entry {
	if k, ok := g.b.ProductKey(u.Product); ok {
		if v := g.b.ProductVersions(k).Versions; int(u.Version) < len(v) && u.Version >= 0 {
			return &v[u.Version].Label
		}
	}
	return nil
}

// take adds what an amount of a product holds; ng.
func (n *Nutrient) take(p per, u past.Used) measure.Mass {
	if !p.Known {
		n.Unknown = once(n.Unknown, u.Product)
		return 0
	}
	m := measure.Rate{V: p.V, Kind: measure.Dry}.Over(measure.Area(u.Amount.N)) // so much of it for each unit
	n.Mass += measure.Mass(m.N)
	return measure.Mass(m.N)
}

func once(list []string, s string) []string {
	if slices.Contains(list, s) {
		return list
	}
	return append(list, s)
}
