package batch

import "math/bits"

// freeZones is the number of zones of a visit up to which every order of them is tried; beyond it they keep the order in which they are given.
const freeZones = 6

// move is a zone that can be laid next, and the position within the visit that follows. A position is the set of zones that are laid, or their
// number where they keep their order.
type move struct{ zone, next int }

func (v *workVisit) free() bool { return len(v.zones) <= freeZones }

// positions is their number; the last one is that of a visit that is done.
func (v *workVisit) positions() int {
	if v.free() {
		return 1 << len(v.zones)
	}
	return len(v.zones) + 1
}

func (v *workVisit) moves(at int) (out []move) {
	if !v.free() {
		return []move{{at, at + 1}}
	}
	for z := range v.zones {
		if at&(1<<z) == 0 {
			out = append(out, move{z, at | 1<<z})
		}
	}
	return out
}

// ahead are lower bounds of what is still to come of an order. They ask about no compartment, but about which liquids a load can have at all, about
// the refills, and about the room of the whole tank: not as a limit, but at a price, in which a refill earns a tank (Lagrangian relaxation,
// Geoffrion 1974). For no price are they above the truth, so the highest is taken.
type ahead struct {
	w      *work
	order  []int
	prices []int64
	sets   []uint16    // of liquids in a load
	low    [][][]score // [visit][position][at(set, refills, price, line)]; a position before the first zone has the drive to it
	rest   [][][]int64 // [visit][position][liquid]: the most that can still be laid of it
	known  map[lowKey]*lows
}

// Refills to come are counted to the last, which is that many or more.
const refillsAhead = 3

// mostSets is the number of sets of liquids up to which they are told apart; beyond it a load may have all.
const mostSets = 300

const millilitre = 1_000_000

func (w *work) ahead(order []int, apart bool) *ahead {
	n := len(order)
	a := &ahead{w: w, order: order, prices: w.prices(), low: make([][][]score, n+1), rest: make([][][]int64, n+1), known: map[lowKey]*lows{}}
	a.sets = w.sets(apart)
	home := make([]score, len(a.sets)*refillsAhead*len(a.prices)*(w.liquids+1))
	for set := range a.sets {
		for refills := range refillsAhead {
			for k := range a.prices {
				for line := range w.liquids + 1 {
					home[a.at(set, refills, k)+line] = never
					if refills == 0 && n > 0 {
						home[a.at(set, refills, k)+line] = scored(w.leg[order[n-1]][w.base], 0, 0)
					}
				}
			}
		}
	}
	a.low[n], a.rest[n] = [][]score{home}, [][]int64{make([]int64, w.liquids)}
	for i := n - 1; i >= 0; i-- {
		a.visit(i)
	}
	return a
}

// prices of a volume, in sixteenths of a thousandth of a second for each millilitre; the first is none.
func (w *work) prices() (out []int64) {
	tank := max(w.tank/millilitre, 1)
	last := int64(-1)
	for _, part := range []int64{0, 2, 4, 6, 8, 12, 20} {
		if p := w.refill * 16 * part / 8 / tank; p > last {
			out, last = append(out, p), p
		}
	}
	return out
}

// priced is the price of a volume, rounded down; of a volume below 0, down too.
func priced(price, volume int64) score { return scored(price*(volume/millilitre)/16, 0, 0) }

// pricedUp is the price of room, rounded up.
func pricedUp(price, volume int64) score { return scored(price*(volume/millilitre+1)/16+1, 0, 0) }

// sets are those of no more liquids than there are compartments.
func (w *work) sets(apart bool) (out []uint16) {
	all := 1<<w.liquids - 1
	for s := range all + 1 {
		if bits.OnesCount(uint(s)) <= len(w.usable) {
			if out = append(out, uint16(s)); len(out) > mostSets || !apart {
				return []uint16{uint16(all)}
			}
		}
	}
	return out
}

// apart tells whether the sets are told apart.
func (a *ahead) apart() bool { return len(a.sets) > 1 }

func (a *ahead) at(set, refills, price int) int {
	return ((set*refillsAhead+refills)*len(a.prices) + price) * (a.w.liquids + 1)
}

// visit fills the positions of one visit from those of the next.
func (a *ahead) visit(i int) {
	v := &a.w.visits[a.order[i]]
	end := v.positions() - 1
	a.low[i], a.rest[i] = make([][]score, end+1), make([][]int64, end+1)
	a.low[i][end], a.rest[i][end] = a.low[i+1][0], a.rest[i+1][0]
	for at := end - 1; at >= 0; at-- {
		from, drive := a.order[i], int64(0)
		if at == 0 {
			from = a.w.base
			if i > 0 {
				from = a.order[i-1]
			}
			drive = a.w.leg[from][a.order[i]]
		}
		low := make([]score, len(a.low[i][end]))
		for j := range low {
			low[j] = never
		}
		moves := v.moves(at)
		for _, m := range moves {
			a.lay(low, a.low[i][m.next], v.zones[m.zone].options)
		}
		a.refill(low, scored(a.w.refill+a.w.detour(from, a.order[i]), 0, 0))
		for j := range low {
			low[j] = min(low[j]+scored(drive, 0, 0), never)
		}
		a.low[i][at] = low
		a.rest[i][at] = a.most(a.rest[i][moves[0].next], v.zones[moves[0].zone].options)
	}
}

// lay lowers the bounds before a zone by those behind it.
func (a *ahead) lay(low, next []score, options []workOption) {
	change := scored(a.w.change, 0, 1)
	lines := a.w.liquids + 1
	for set, has := range a.sets {
		for rp := range refillsAhead * len(a.prices) {
			at := a.at(set, 0, 0) + rp*lines
			price := a.prices[rp%len(a.prices)]
			least := never
			for _, o := range options {
				if o.liquid < 0 {
					for line := range lines {
						low[at+line] = min(low[at+line], o.score+next[at+line])
					}
				} else if has&(1<<o.liquid) != 0 {
					c := o.score + priced(price, o.volume) + next[at+int(o.liquid)]
					low[at+int(o.liquid)] = min(low[at+int(o.liquid)], c)
					least = min(least, c)
				}
			}
			for line := range lines {
				low[at+line] = min(low[at+line], least+change)
			}
		}
	}
}

// refill lowers the bounds by those after a refill, with any set.
func (a *ahead) refill(low []score, cost score) {
	lines := a.w.liquids + 1
	least := make([]score, lines)
	for refills := refillsAhead - 1; refills > 0; refills-- {
		for k, price := range a.prices {
			for _, before := range []int{refills - 1, refills} {
				if before == refills && refills < refillsAhead-1 {
					continue
				}
				for line := range least {
					least[line] = never
				}
				for set, has := range a.sets {
					line := priced(price, int64(a.liquidsIn(has))*a.w.room)
					for l, c := range low[a.at(set, before, k) : a.at(set, before, k)+lines] {
						least[l] = min(least[l], c+line)
					}
				}
				earned := cost - pricedUp(price, a.w.tank)
				for set := range a.sets {
					at := a.at(set, refills, k)
					for l := range lines {
						low[at+l] = min(low[at+l], least[l]+earned)
					}
				}
			}
		}
	}
}

// liquidsIn is the number of liquids that a load of the set must have room for, at least.
func (a *ahead) liquidsIn(set uint16) int {
	if !a.apart() {
		return 0
	}
	return bits.OnesCount16(set)
}

// most adds the most that a zone can take of each liquid.
func (a *ahead) most(rest []int64, options []workOption) []int64 {
	out := append([]int64(nil), rest...)
	for l := range out {
		zone := int64(0)
		for _, o := range options {
			if int(o.liquid) == l {
				zone = max(zone, o.volume)
			}
		}
		out[l] += zone
	}
	return out
}
