package batch

import (
	"cmp"
	"slices"
)

// guesser looks at orders roughly: without the tank, but with a refill spread over what is laid.
type guesser struct {
	w       *work
	pins    []int
	price   int64
	through [][]score // of each visit: from line to line, the least that it takes
	guesses int
}

// guess is what an order roughly comes to.
type guess struct {
	late int64
	cost score
}

func (g guess) less(o guess) bool {
	return cmp.Or(cmp.Compare(g.late, o.late), cmp.Compare(g.cost, o.cost)) < 0
}

// off is how much more a guess is than another.
func (g guess) off(o guess) int64 { return g.late - o.late + g.cost.ms() - o.cost.ms() }

func (g *guesser) prepare() {
	g.price = g.w.refill * 16 / max(g.w.tank/millilitre, 1)
	lines := g.w.liquids + 1
	for i := range g.w.visits {
		v := &g.w.visits[i]
		out := make([]score, lines*lines)
		for line := range lines {
			copy(out[line*lines:], g.passing(v, line))
		}
		g.through = append(g.through, out)
	}
}

// passing is the least that a visit takes from a line to each.
func (g *guesser) passing(v *workVisit, line int) []score {
	lines, end := g.w.liquids+1, v.positions()-1
	at := make([][]score, end+1)
	for p := range at {
		at[p] = slices.Repeat([]score{never}, lines)
	}
	at[0][line] = 0
	for p := range end {
		for _, m := range v.moves(p) {
			for _, o := range v.zones[m.zone].options {
				for from, c := range at[p] {
					to := from
					if c += o.score; o.liquid >= 0 {
						to = int(o.liquid)
						c += priced(g.price, o.volume)
						if to != from {
							c += scored(g.w.change, 0, 1)
						}
					}
					at[m.next][to] = min(at[m.next][to], c)
				}
			}
		}
	}
	return at[end]
}

// guess adds up an order, line by line. The clock is that of the line that is best so far, and counts the price of a refill as time.
func (g *guesser) guess(order []int) guess {
	g.guesses++
	lines := g.w.liquids + 1
	var a, b [mostLiquids + 1]score
	now, next := a[:lines], b[:lines]
	for i := range now {
		now[i] = never
	}
	now[(int(g.w.d.Rig.Line.Holds)+lines)%lines] = 0
	if g.w.d.Rig.Line.Holds < 0 {
		now[lines-1], now[lines-2] = 0, never
	}
	var out guess
	at, start := g.w.base, millis(g.w.d.Start)
	for _, v := range order {
		drive := g.w.leg[at][v]
		if t, in := start+slices.Min(now).ms()+drive, &g.w.visits[v]; t < in.from {
			drive += in.from - t
		} else if in.to >= 0 && t > in.to {
			out.late += t - in.to
		}
		for to := range next {
			least := never
			for from, c := range now {
				least = min(least, c+g.through[v][from*lines+to])
			}
			next[to] = min(least+scored(drive, 0, 0), never)
		}
		now, next, at = next, now, v
	}
	out.cost = slices.Min(now) + scored(g.w.leg[at][g.w.base], 0, 0)
	return out
}

// improve moves and turns for as long as that helps.
func (g *guesser) improve(order []int) []int {
	order = slices.Clone(order)
	least := g.guess(order)
	until := g.guesses + mostGuesses/3
	for better := true; better; {
		better = false
		g.each(order, func(o []int) bool {
			if c := g.guess(o); c.less(least) {
				copy(order, o)
				least, better = c, true
			}
			return better || g.guesses > until
		})
	}
	return order
}

// each gives the orders next to one: stretches of one to three visits put elsewhere, forwards or backwards (Or 1976), and stretches turned around
// (Croes 1958). It stops when it is told that this is enough. What is given is overwritten.
func (g *guesser) each(order []int, enough func([]int) bool) {
	n := len(order)
	out := make([]int, n)
	try := func() bool { return g.keepsPins(out) && enough(out) }
	for long := 1; long <= min(3, n-1); long++ {
		for from := 0; from+long <= n; from++ {
			for to := 0; to+long <= n; to++ {
				if to == from {
					continue
				}
				moved(out, order, from, long, to)
				if try() {
					return
				}
				if slices.Reverse(out[to : to+long]); long > 1 && try() {
					return
				}
			}
		}
	}
	for from := range n {
		for to := from + 2; to <= n; to++ {
			copy(out, order)
			slices.Reverse(out[from:to])
			if try() {
				return
			}
		}
	}
}

// moved writes the order with a stretch taken out and put in so that it begins at a place.
func moved(out, order []int, from, long, to int) {
	k := 0
	rest := func(until int) {
		for ; k < until; k++ {
			i := k
			if i >= from {
				i += long
			}
			if k < to {
				out[k] = order[i]
			} else {
				out[k+long] = order[i]
			}
		}
	}
	rest(to)
	copy(out[to:], order[from:from+long])
	rest(len(order) - long)
}

func (g *guesser) keepsPins(order []int) bool {
	for i, v := range g.pins {
		if v >= 0 && order[i] != v {
			return false
		}
	}
	return true
}

// pinned is the order with the pinned visits at their places.
func (g *guesser) pinned(order []int) []int {
	out := slices.Clone(g.pins)
	k := 0
	for _, v := range order {
		if slices.Contains(g.pins, v) {
			continue
		}
		for out[k] >= 0 {
			k++
		}
		out[k] = v
	}
	return out
}

// nearest goes to the nearest next, with all visits or those that may.
func (g *guesser) nearest(may []int) (out []int) {
	if may == nil {
		may = g.w.ownOrder()
	}
	return g.nearestFrom(g.w.base, may)
}

func (g *guesser) nearestFrom(at int, may []int) (out []int) {
	left := slices.Clone(may)
	for len(left) > 0 {
		next := 0
		for i, v := range left {
			if g.w.leg[at][v] < g.w.leg[at][left[next]] {
				next = i
			}
		}
		at = left[next]
		out = append(out, at)
		left = slices.Delete(left, next, next+1)
	}
	return out
}

// grouped lays one liquid after the other, each group by the nearest next. A visit belongs to the liquid that takes the most of it, by the options
// that are best by themselves.
func (g *guesser) grouped() (out []int) {
	groups := make([][]int, g.w.liquids+1)
	for i := range g.w.visits {
		of := g.mainly(&g.w.visits[i])
		groups[of] = append(groups[of], i)
	}
	at := g.w.base
	for range groups {
		best, near := -1, int64(0)
		for k, group := range groups {
			for _, v := range group {
				if best < 0 || g.w.leg[at][v] < near {
					best, near = k, g.w.leg[at][v]
				}
			}
		}
		if best < 0 {
			break
		}
		group := g.nearestFrom(at, groups[best])
		at = group[len(group)-1]
		out = append(out, group...)
		groups[best] = nil
	}
	return out
}

func (g *guesser) mainly(v *workVisit) int {
	took := make([]score, g.w.liquids+1)
	for _, z := range v.zones {
		best := slices.MinFunc(z.options, func(a, b workOption) int { return cmp.Compare(a.score, b.score) })
		l := int(best.liquid)
		if l < 0 {
			l = g.w.liquids
		}
		took[l] += best.score + 1
	}
	most := 0
	for l, c := range took {
		if c > took[most] {
			most = l
		}
	}
	return most
}
