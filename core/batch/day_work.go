package batch

import (
	"math"
	"math/bits"

	"example.com/tintline/core/measure"
)

// score packs minutes (in thousandths of a second), cost (cents) and changeovers into one number, so that of two sums of scores the lower is
// the better plan: minutes first, then cost, then changeovers. The limits in check keep the parts from running over.
type score int64

const (
	scoreCosts   = 9
	scoreMinutes = scoreCosts + 22
	never        = score(math.MaxInt64 / 2)
)

func scored(ms int64, cost measure.Money, changes int64) score {
	return score(ms<<scoreMinutes | int64(cost)<<scoreCosts | changes)
}

func (s score) ms() int64 { return int64(s >> scoreMinutes) }

func millis(minutes float64) int64 { return int64(math.RoundToEven(minutes * 60_000)) }

func minutes(ms int64) float64 { return float64(ms) / 60_000 }

// work is a day made ready: times in thousandths of a second, volumes in nanolitres.
type work struct {
	d        *Day
	liquids  int
	visits   []workVisit
	unserved []DayUnserved
	base     int         // its number among the places, after the visits
	leg      [][]int64   // from place to place
	miles    [][]float64 // below 0: unknown
	known    []bool      // whether a place is
	usable   []int64     // of each compartment, above its heel
	sums     [1 << mostCompartments]int64
	tank     int64                  // of all
	holds    [mostCompartments]int8 // in the morning
	likes    [mostCompartments]int8
	room     int64 // that each liquid of a load takes beside what is laid of it: a line and the reserve
	change   int64
	refill   int64
	rinse    int64
	toRefill int64
	waits    bool // some visit has a window
}

type workVisit struct {
	visit    int // in the Day
	zones    []workZone
	from, to int64 // ms of the day; -1: none
	loads    bool
}

type workZone struct {
	need    int
	options []workOption
}

type workOption struct {
	option int
	liquid int8 // ByHand or one
	volume int64
	score  score
}

// lineVolumes are what a changeover moves: drawn of the new liquid into the line beyond what it returns to its own compartment, the old that
// comes into the new one's compartment, and the new that is sprayed into the old one's.
type lineVolumes struct{ full, net, oldIntoNew, newIntoOld int64 }

// volumes: what the gun flow does not sweep of the cell, and the return line, goes to the new compartment; at the nozzle hose and the rest of
// the cell are pushed through until the share that is clean (a stirred cell before plug flow: mass balance).
func (l DayLine) volumes() lineVolumes {
	cell := float64(float64(l.Cell) * (1 - l.Bypass))
	past := 0.0
	if l.Clean > 0 {
		past = float64(cell * -math.Log1p(-l.Clean))
	}
	sprayed := int64(math.RoundToEven(max(past-float64(cell*l.Clean), 0)))
	swept := int64(math.RoundToEven(cell))
	out := lineVolumes{full: int64(l.Hose + l.Cell + l.Return), oldIntoNew: int64(l.Return+l.Cell) - swept, newIntoOld: sprayed}
	out.net = out.full + out.newIntoOld - out.oldIntoNew
	return out
}

// ready makes a checked day ready.
func (d *Day) ready() *work {
	w := &work{d: d, liquids: len(d.Liquids), change: millis(d.Times.Changeover), refill: millis(d.Times.Refill), rinse: millis(d.Times.Rinse), toRefill: millis(d.Times.ToRefill)}
	w.holds, w.likes = takesNothing, takesNothing
	for i, c := range d.Rig.Compartments {
		if c.Likes.Known {
			w.likes[i] = int8(c.Likes.V)
		}
		w.usable = append(w.usable, int64(c.Capacity-c.Heel))
		w.tank += int64(c.Capacity - c.Heel)
		w.holds[i] = int8(c.Holds)
	}
	for m := 1; m < 1<<len(w.usable); m++ {
		w.sums[m] = w.sums[m&(m-1)] + w.usable[bits.TrailingZeros(uint(m))]
	}
	w.room = d.Rig.Line.volumes().net + int64(d.Reserve.Volume)
	for i, v := range d.Visits {
		if v.Done {
			continue
		}
		out := workVisit{visit: i, from: -1, to: -1, loads: v.Loads}
		if v.From.Known {
			out.from, w.waits = millis(v.From.V), true
		}
		if v.To.Known {
			out.to, w.waits = millis(v.To.V), true
		}
		for n := range v.Zones {
			if z := w.zone(i, n); len(z.options) > 0 {
				out.zones = append(out.zones, z)
			}
		}
		if len(out.zones) > 0 {
			w.visits = append(w.visits, out)
		}
	}
	w.ways()
	return w
}

// zone keeps the options that fit into a load by themselves.
func (w *work) zone(visit, need int) workZone {
	n := w.d.Visits[visit].Zones[need]
	z := workZone{need: need}
	least := int64(math.MaxInt64)
	for i, o := range n.Options {
		volume := int64(o.Volume) + int64(math.Ceil(float64(float64(o.Volume)*w.d.Reserve.Share)))
		if o.Liquid >= 0 && volume+w.room > w.tank {
			least = min(least, volume+w.room)
			continue
		}
		z.options = append(z.options, workOption{i, int8(o.Liquid), volume, scored(millis(o.Minutes), o.Cost, 0)})
	}
	name := w.d.Visits[visit].Name + ", " + n.Zone
	switch {
	case len(z.options) > 0:
	case len(n.Options) > 0:
		w.unserved = append(w.unserved, DayUnserved{visit, need, NoRoom, name + " needs " + measure.Volume(least).Text() + " gal with line and reserve, more than the " + measure.Volume(w.tank).Text() + " gal of a load."})
	case n.Why != "":
		w.unserved = append(w.unserved, DayUnserved{visit, need, NoMix, n.Why})
	default:
		w.unserved = append(w.unserved, DayUnserved{visit, need, NoMix, "There is no mix for " + name + "."})
	}
	return z
}

// ways fills the drives between the visits that are worked at, and the base.
func (w *work) ways() {
	w.base = len(w.visits)
	places := make([]Place, 0, w.base+1)
	for _, v := range w.visits {
		places = append(places, w.d.Visits[v.visit].Place)
	}
	places = append(places, w.d.Base)
	w.leg, w.miles = make([][]int64, len(places)), make([][]float64, len(places))
	for i, a := range places {
		w.leg[i], w.miles[i] = make([]int64, len(places)), make([]float64, len(places))
		w.known = append(w.known, a.known())
	}
	for i, a := range places {
		for j, b := range places[:i] {
			ms, far := millis(w.d.Times.Between), -1.0
			if m := GreatCircle(a, b); m.Known {
				ms, far = millis(min(m.V/w.d.Times.MPH*60, mostDayMinutes)), m.V
			}
			w.leg[i][j], w.miles[i][j], w.leg[j][i], w.miles[j][i] = ms, far, ms, far
		}
	}
}

// check refuses a day whose sums would run over: every zone with a changeover, a refill and all rinses of its own.
func (w *work) check() error {
	var zones, far, site int64
	for i, v := range w.visits {
		for _, ms := range w.leg[i] {
			far = max(far, ms)
		}
		for _, z := range v.zones {
			zones++
			most := int64(0)
			for _, o := range z.options {
				most = max(most, o.score.ms())
			}
			site += most
		}
	}
	each := w.change + w.refill + 2*far + w.toRefill + mostCompartments*w.rinse
	if zones >= 1<<scoreCosts || minutes(site)+float64(minutes(each)*float64(zones)) > mostSumMinutes {
		return measure.Troublef("Give shorter times and nearer places, or fewer zones.", "%d zones with up to %s min each for drive, changeover, refill and rinse are more than a day can have.", zones, figure(minutes(each)))
	}
	return nil
}

// detour is what driving to the base and back adds between two places; a refill within a visit has it at both ends.
func (w *work) detour(from, to int) int64 {
	if to < w.base && w.visits[to].loads || from == to && w.visits[from].loads {
		return 0
	}
	if from == w.base {
		return 0
	}
	if !w.known[from] || !w.known[to] || !w.known[w.base] {
		return w.toRefill
	}
	return max(w.leg[from][w.base]+w.leg[w.base][to]-w.leg[from][to], 0)
}

// act is one zone laid, in the order of doing.
type act struct {
	visit  int // among those that are worked at
	zone   int
	option int                    // among the options that fit
	refill bool                   // before it
	takes  [mostCompartments]int8 // of the first act of a load: the liquid of each compartment in it, or Nothing
}
