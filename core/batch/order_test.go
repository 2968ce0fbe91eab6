package batch

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core/measure"
)

// permutations gives each order of n.
func permutations(n int, give func([]int)) {
	var rest func(order []int)
	rest = func(order []int) {
		if len(order) == n {
			give(order)
			return
		}
		for i := range n {
			if !slices.Contains(order, i) {
				rest(append(order[:len(order):len(order)], i))
			}
		}
	}
	rest(nil)
}

// No order is below the bound, the plan that is found is no worse than the one that was given and no better than the best of all, and it keeps
// the pins.
func TestNoOrderIsBelowTheBound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDay(t, rapid.SampledFrom([]dayRoom{{4, 1, 2, 2, 2}, {5, 1, 2, 2, 1}, {6, 1, 1, 2, 1}, {3, 2, 3, 2, 2}}).Draw(t, "room"))
		if rapid.Bool().Draw(t, "pinned") {
			d.Visits[rapid.IntRange(0, len(d.Visits)-1).Draw(t, "which")].Pinned = measure.Known(rapid.IntRange(0, len(d.Visits)-1).Draw(t, "where"))
		}
		w, err := d.work()
		if err != nil {
			t.Fatal(err)
		}
		got, err := ChooseDay(d)
		if err != nil {
			t.Fatal(err)
		}
		best := never
		permutations(len(w.visits), func(order []int) { best = min(best, bruteForce(&d, w, order)) })
		if low := minutes(best.ms()); got.Bound > low || got.Best.Minutes.Total() < low-1e-9 || got.Given.Minutes.Total() < got.Best.Minutes.Total()-1e-9 {
			t.Fatalf("bound %v, best %v, found %v, given %v", got.Bound, low, got.Best.Minutes.Total(), got.Given.Minutes.Total())
		}
		if got.Better {
			mustKeepPins(t, d, w, got.Best)
		}
		mustBalance(t, d, got.Best)
		mustNameAll(t, d, got.Best)
	})
}

func mustKeepPins(t *rapid.T, d Day, w *work, p DayPlan) {
	for at, v := range w.pins() {
		if v >= 0 && p.Order[at] != w.visits[v].visit {
			t.Fatalf("%d stands at %d, not visit %d", p.Order[at], at, w.visits[v].visit)
		}
	}
	if len(w.visits) == len(d.Visits) {
		for i, v := range d.Visits {
			if v.Pinned.Known && p.Order[v.Pinned.V] != i {
				t.Fatalf("visit %d is pinned to %d: %v", i, v.Pinned.V, p.Order)
			}
		}
	}
}

// Windows: no more comes late than in the order that is given.
func TestNoMoreComesLate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDay(t, dayRoom{6, 2, 3, 3, 2})
		for i := range d.Visits {
			if rapid.Bool().Draw(t, "window") {
				from := rapid.IntRange(0, 200).Draw(t, "from")
				d.Visits[i].From, d.Visits[i].To = measure.Known(d.Start+float64(from)), measure.Known(d.Start+float64(from+rapid.IntRange(0, 60).Draw(t, "open")))
			}
		}
		got, err := ChooseDay(d)
		if err != nil {
			t.Fatal(err)
		}
		late := func(p DayPlan) (sum float64) {
			for _, a := range p.Arrivals {
				sum += a.Late
				if v := d.Visits[a.Visit]; a.At < v.From.V || a.At-a.Late > v.To.V+1e-4 && v.To.Known {
					t.Fatalf("%+v for %+v", a, v)
				}
			}
			return sum
		}
		if given, best := late(got.Given), late(got.Best); best > given+1e-9 {
			t.Fatalf("%v min late, given %v", best, given)
		}
		if got.Bound > got.Best.Minutes.Total()+1e-9 {
			t.Fatalf("bound %v above %v", got.Bound, got.Best.Minutes.Total())
		}
	})
}

// The way through places on a circle is known: the bound of Held and Karp reaches it.
func TestLeastDriveOfACircle(t *testing.T) {
	w := &work{base: 8, visits: make([]workVisit, 8)}
	at := func(i int) (x, y int64) {
		return []int64{100, 71, 0, -71, -100, -71, 0, 71, 130}[i], []int64{0, 71, 100, 71, 0, -71, -100, -71, 35}[i]
	}
	for i := range 9 {
		row := make([]int64, 9)
		for j := range row {
			a, b := at(i)
			c, e := at(j)
			row[j] = 1000 * (max(a-c, c-a) + max(b-e, e-b)) // taxicab: a metric
		}
		w.leg = append(w.leg, row)
	}
	least := int64(1 << 60)
	permutations(8, func(order []int) {
		sum, from := int64(0), 8
		for _, v := range order {
			sum, from = sum+w.leg[from][v], v
		}
		least = min(least, sum+w.leg[from][8])
	})
	if got := w.leastDrive(); got > least || got < least*99/100 {
		t.Errorf("bound %d, least %d", got, least)
	}
}

func BenchmarkChooseDay(b *testing.B) {
	for _, seed := range []chance{1, 2, 3} {
		b.Run("30visits", func(b *testing.B) {
			d := fullDay(30, seed)
			var c DayChoice
			for b.Loop() {
				var err error
				if c, err = ChooseDay(d); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(c.Given.Minutes.Total(), "given_min")
			b.ReportMetric(c.Best.Minutes.Total(), "best_min")
			b.ReportMetric(c.Bound, "bound_min")
			b.ReportMetric(100*c.Off, "off_pct")
			b.ReportMetric(float64(c.Saves.Changeovers), "changeovers_saved")
		})
	}
}
