package batch

import (
	"testing"

	"pgregory.net/rapid"
)

// What the search says a plan costs is what walking through it comes to.
func TestSearchAgreesWithReplay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDay(t, dayRoom{6, 3, 6, 5, 3})
		drawWindows(t, &d)
		w, err := d.work()
		if err != nil {
			t.Fatal(err)
		}
		order := w.ownOrder()
		s := w.solve(order, mostStates)
		r := w.replay(order, s.acts)
		if r.short != 0 || r.score() != s.score {
			t.Fatalf("%d nL short, %d ms, search says %d", r.short, r.score().ms(), s.score.ms())
		}
		mustBalance(t, d, r.plan)
		mustNameAll(t, d, r.plan)
	})
}

func drawWindows(t *rapid.T, d *Day) {
	for i := range d.Visits {
		if rapid.IntRange(0, 4).Draw(t, "window") == 0 {
			d.Visits[i].From.V, d.Visits[i].From.Known = d.Start+float64(rapid.IntRange(0, 120).Draw(t, "from")), true
		}
	}
}

// brute is the least minutes, cost and changeovers of a day in one order, by trying everything: each order of the zones of a visit, each option,
// a refill or none before each zone, and each way to give the compartments to the liquids at each load. It knows no bound and no state but what
// it needs, and reckons in whole numbers of its own.
type brute struct {
	d     *Day
	w     *work
	order []int
	best  score
	line  int64
}

func bruteForce(d *Day, w *work, order []int) score {
	b := &brute{d: d, w: w, order: order, best: never, line: int64(d.Rig.Line.volumes().net) + int64(d.Reserve.Volume)}
	var holds []int
	for _, c := range d.Rig.Compartments {
		holds = append(holds, c.Holds)
	}
	b.load(bruteState{holds: holds, line: d.Rig.Line.Holds, clock: millis(d.Start), done: map[int]bool{}}, 0)
	return b.best
}

type bruteState struct {
	holds []int
	need  []int64
	used  []bool
	line  int
	clock int64
	score score
	done  map[int]bool // zones of the visit at hand
	fresh bool         // nothing is laid since the load
	again bool         // it is no load of the morning
}

// load tries each way to give each compartment to a liquid, or to leave it.
func (b *brute) load(s bruteState, visit int) {
	s.need, s.used, s.fresh = make([]int64, b.w.liquids), make([]bool, b.w.liquids), true
	var give func(c int, holds []int, given []bool, score score)
	give = func(c int, holds []int, given []bool, score score) {
		if c == len(holds) {
			room := make([]int64, b.w.liquids)
			for i, h := range holds {
				if given[i] {
					room[h] += int64(b.d.Rig.Compartments[i].Capacity - b.d.Rig.Compartments[i].Heel)
				}
			}
			n := s
			n.holds, n.score = holds, score
			b.next(n, room, visit)
			return
		}
		give(c+1, holds, given, score)
		for l := range b.w.liquids {
			h, g, cost := append([]int(nil), holds...), append([]bool(nil), given...), score
			if h[c] != l && h[c] != Nothing && !s.again {
				cost += scored(millis(b.d.Times.Rinse), 0, 0)
			}
			h[c], g[c] = l, true
			give(c+1, h, g, cost)
		}
	}
	give(0, s.holds, make([]bool, len(s.holds)), s.score)
}

// next lays one more zone, before or after a refill.
func (b *brute) next(s bruteState, room []int64, i int) {
	if s.score >= b.best {
		return
	}
	if i == len(b.order) {
		if len(b.order) > 0 {
			s.score += scored(b.w.leg[b.order[i-1]][b.w.base], 0, 0)
		}
		b.best = min(b.best, s.score)
		return
	}
	v := b.w.visits[b.order[i]]
	if len(s.done) == len(v.zones) {
		s.done = map[int]bool{}
		b.next(s, room, i+1)
		return
	}
	from := b.order[i]
	if len(s.done) == 0 {
		from = b.w.base
		if i > 0 {
			from = b.order[i-1]
		}
	}
	for z, zone := range v.zones {
		if s.done[z] {
			continue
		}
		for _, o := range zone.options {
			b.lay(s, room, i, from, z, b.d.Visits[v.visit].Zones[zone.need].Options[o.option])
		}
	}
	if !s.fresh {
		n := s
		extra := b.w.detour(from, b.order[i]) + millis(b.d.Times.Refill)
		n.score += scored(extra, 0, 0)
		n.clock += extra
		n.again = true
		b.load(n, i)
	}
}

func (b *brute) lay(s bruteState, room []int64, i, from, z int, o Option) {
	v := b.w.visits[b.order[i]]
	spend := func(ms int64) { s.score, s.clock = s.score+scored(ms, 0, 0), s.clock+ms }
	if len(s.done) == 0 {
		spend(b.w.leg[from][b.order[i]])
		if s.clock < v.from {
			spend(v.from - s.clock)
		}
	}
	if l := o.Liquid; l >= 0 {
		s.need, s.used = append([]int64(nil), s.need...), append([]bool(nil), s.used...)
		s.need[l] += int64(o.Volume) + int64(float64(o.Volume)*b.d.Reserve.Share+0.999999)
		line := int64(0)
		if s.used[l] = true; s.used[l] {
			line = b.line
		}
		if s.need[l]+line > room[l] {
			return
		}
		if s.line != l {
			spend(millis(b.d.Times.Changeover))
			s.score += scored(0, 0, 1)
			s.line = l
		}
		s.fresh = false
	}
	spend(millis(o.Minutes))
	s.score += scored(0, o.Cost, 0)
	done := map[int]bool{z: true}
	for k := range s.done {
		done[k] = true
	}
	s.done = done
	b.next(s, room, i)
}

// Nothing beats a plan that is said to be exact, and none is below its bound.
func TestNothingBeatsTheExactPlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDay(t, rapid.SampledFrom([]dayRoom{{4, 2, 2, 2, 2}, {6, 1, 3, 2, 2}, {3, 2, 3, 3, 2}, {2, 4, 2, 3, 2}}).Draw(t, "room"))
		if rapid.Bool().Draw(t, "windows") {
			drawWindows(t, &d)
		}
		w, err := d.work()
		if err != nil {
			t.Fatal(err)
		}
		got := w.best(w.ownOrder(), mostStates)
		if !got.plan.Exact {
			t.Fatal("a small day is not exact")
		}
		if want := bruteForce(&d, w, w.ownOrder()); got.score() != want {
			t.Fatalf("%v min for %d cents with %d changeovers, brute force: %v %d %d", minutes(got.score().ms()), got.score()>>scoreCosts&(1<<22-1), got.score()&511, minutes(want.ms()), want>>scoreCosts&(1<<22-1), want&511)
		}
	})
}
