package audit

import (
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
)

// total is a column of accounts added up: volume, and each product by its key. In a book that is right the total of all
// places is nothing.
type total struct {
	volume   int64
	products []int64
}

func (t *total) add(volume int64, holds fluid.Parts, sign int64) {
	t.volume += sign * volume
	for _, p := range holds {
		for int(p.Key) >= len(t.products) {
			t.products = append(t.products, 0)
		}
		t.products[p.Key] += sign * p.N
	}
}

func (t *total) plus(o total, sign int64) {
	t.volume += sign * o.volume
	for key, n := range o.products {
		t.add(0, fluid.Parts{{Key: int32(key), N: n}}, sign)
	}
}

func (t *total) nothing() bool {
	for _, n := range t.products {
		if n != 0 {
			return false
		}
	}
	return t.volume == 0
}

func (t *total) same(o total) bool {
	d := total{volume: t.volume, products: append([]int64(nil), t.products...)}
	d.plus(o, -1)
	return d.nothing()
}

// ledger adds up all places after each entry. Lawns are many, and an entry changes one of them, so the totals of the
// others are kept; every close, strike and rig, and every new place, adds up all of them anew.
type ledger struct {
	places  int           // accounts outside, when they were last listed
	few     []fluid.Place // those that are no zones
	zonesOf map[string][]fluid.Place
	totalOf map[string]total
	all     total // of all zones
}

// sum is the total of all places after an entry was applied.
func (l *ledger) sum(b *core.Book, what core.Fact) total {
	p := b.Plumbing()
	if len(p.Outside) != l.places || l.zonesOf == nil || !touchesOneLawn(what) {
		l.list(p.Outside)
	} else if lawn := core.LawnOf(what); lawn != "" {
		l.all.plus(l.totalOf[lawn], -1)
		now := sumOf(p.Outside, l.zonesOf[lawn])
		l.all.plus(now, 1)
		l.totalOf[lawn] = now
	}
	t := total{volume: l.all.volume, products: append([]int64(nil), l.all.products...)}
	for _, a := range p.Inside() {
		t.add(int64(a.Volume), a.Products, 1)
	}
	t.plus(sumOf(p.Outside, l.few), 1)
	return t
}

// list lists all places outside anew and adds the zones up.
func (l *ledger) list(outside fluid.Accounts) {
	l.places, l.few, l.all = len(outside), l.few[:0], total{}
	l.zonesOf, l.totalOf = map[string][]fluid.Place{}, map[string]total{}
	var lawns []string
	for _, p := range outside.Places() {
		kind, name := p.Split()
		lawn, _, zone := strings.Cut(name, "/")
		if kind != "zone" || !zone {
			l.few = append(l.few, p)
			continue
		}
		if l.zonesOf[lawn] == nil {
			lawns = append(lawns, lawn)
		}
		l.zonesOf[lawn] = append(l.zonesOf[lawn], p)
	}
	for _, lawn := range lawns {
		t := sumOf(outside, l.zonesOf[lawn])
		l.totalOf[lawn] = t
		l.all.plus(t, 1)
	}
}

func sumOf(outside fluid.Accounts, places []fluid.Place) (t total) {
	for _, p := range places {
		a := outside[p]
		t.add(int64(a.Volume), a.Holds, 1)
	}
	return t
}

// touchesOneLawn tells whether the only zones that an entry can lay on are those of the lawn that it names.
func touchesOneLawn(what core.Fact) bool {
	zone := func(place string) bool { return strings.HasPrefix(place, "zone/") }
	switch f := what.(type) {
	case *core.Struck, *core.Rig, *core.DayOpened, *core.DayClosed, *core.Lawn, *core.TruedUp:
		return false
	case *core.Dumped:
		return !zone(f.To)
	case *core.PushedBack:
		return !zone(f.To)
	case *core.Rinsed:
		return !zone(f.To)
	}
	return !strings.Contains(core.LawnOf(what), "/")
}
