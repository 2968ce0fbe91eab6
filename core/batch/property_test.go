package batch

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// Names of the products that are drawn.
var drawnProducts = []string{"Warm", "Cool", "Grit", "Salt"}

// drawHeld draws what a liquid holds: liquid products in at most a fifth of it, dry ones as they come.
func drawHeld(t *rapid.T, v measure.Volume) []Held {
	var out []Held
	for i, p := range drawnProducts[:rapid.IntRange(0, len(drawnProducts)).Draw(t, "products")] {
		form := measure.Kind(i % 2)
		out = append(out, Held{p, label.Entry{Form: form}, measure.Amount{N: rapid.Int64Range(0, int64(v)/20).Draw(t, p), Kind: form}})
	}
	return out
}

func drawVolume(t *rapid.T, name string) measure.Volume {
	return measure.Volume(rapid.Int64Range(int64(measure.USGallon)/10, 300*int64(measure.USGallon)).Draw(t, name))
}

// After a top-up each product is as strong as it was meant to be, and what is in the tank is what was in it and what was added. The sums are
// made apart, in whole numbers without end.
func TestTopUpConserves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		left := drawVolume(t, "left")
		q := TopUpAsk{Left: left, Holds: drawHeld(t, left), Volume: left + measure.Volume(rapid.Int64Range(0, 300*int64(measure.USGallon)).Draw(t, "more"))}
		if rapid.Bool().Draw(t, "capacity") {
			q.Capacity = measure.Known(drawVolume(t, "holds"))
		}
		for i, p := range drawnProducts[:rapid.IntRange(0, 3).Draw(t, "targets")] {
			q.Targets = append(q.Targets, Target{p, label.Entry{Form: measure.Kind(i % 2)}, measure.Concentration(rapid.Float64Range(0, 0.1).Draw(t, "strength"))})
		}
		got, err := q.Work()
		if err != nil {
			t.Fatal(err)
		}
		if !got.Possible {
			if got.Why == "" || got.Do == "" {
				t.Fatalf("no reason: %+v", got)
			}
			q.mustFail(t)
			return
		}
		if got.Water < 0 || left+got.Water+liquids(got.Add) != q.Volume || (q.Capacity.Known && q.Volume > q.Capacity.V) {
			t.Fatalf("%v + %v + %v is not %v", left, got.Water, liquids(got.Add), q.Volume)
		}
		for i, target := range q.Targets {
			have := q.held(target.Product).N + got.Add[i].Amount.N
			if want := exactly(float64(target.Strength), int64(q.Volume)); math.Abs(float64(have)-want) > 1+hair*want {
				t.Fatalf("%s: %d, want %v", target.Product, have, want)
			}
		}
		for _, s := range got.Strange {
			if q.wants(s.Product) || s.Amount != q.held(s.Product) {
				t.Fatalf("%+v", s)
			}
		}
	})
}

// exactly is f x n without rounding on the way.
func exactly(f float64, n int64) float64 {
	r := new(big.Rat).SetFloat64(f)
	out, _ := r.Mul(r, new(big.Rat).SetInt64(n)).Float64()
	return out
}

// mustFail holds that a top-up that is said to be impossible is: too much in it, no room in the tank, or no room for the products.
func (q TopUpAsk) mustFail(t *rapid.T) {
	need := measure.Volume(0)
	for _, target := range q.Targets {
		lack := exactly(float64(target.Strength), int64(q.Volume)) - float64(q.held(target.Product).N)
		if lack < -1 {
			return
		}
		if target.Label.Form == measure.Liquid {
			need += measure.Volume(lack)
		}
	}
	if q.Capacity.Known && q.Volume > q.Capacity.V || q.Left+need+measure.Volume(len(q.Targets)) >= q.Volume {
		return
	}
	t.Fatalf("it could have been done: %+v", q)
}

// What two hold together is what both held, and its strength lies between theirs.
func TestBlendConserves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawVolume(t, "a"), drawVolume(t, "b")
		q := BlendAsk{A: Liquid{a, drawHeld(t, a)}, B: Liquid{b, drawHeld(t, b)}}
		got, err := q.Work()
		if err != nil {
			t.Fatal(err)
		}
		sum := map[string]int64{}
		for _, h := range append(append([]Held(nil), q.A.Holds...), q.B.Holds...) {
			sum[h.Product] += h.Amount.N
		}
		for _, h := range got.Holds {
			if sum[h.Product] != h.Amount.N {
				t.Fatalf("%s: %d, want %d", h.Product, h.Amount.N, sum[h.Product])
			}
			delete(sum, h.Product)
			low, high := min(h.A, h.B), max(h.A, h.B)
			if h.Both < low*(1-1e-12) || h.Both > high*(1+1e-12) {
				t.Fatalf("%s: %v of %v and %v", h.Product, h.Both, h.A, h.B)
			}
		}
		if len(sum) != 0 || got.Volume != a+b {
			t.Fatalf("left out: %v", sum)
		}
	})
}

// A rest that is stretched never lays less than the lowest label rate of any product, and no more water would do.
func TestStretchStaysAboveTheLabel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		left := drawVolume(t, "left")
		q := StretchAsk{Left: left, Heel: measure.Volume(rapid.Int64Range(0, int64(left)).Draw(t, "heel")), Holds: drawHeld(t, left), Delivery: measure.GalPer1000(rapid.Float64Range(0.1, 5).Draw(t, "delivery"))}
		for _, h := range q.Holds {
			now := float64(measure.ConcentrationOf(h.Amount, left)) * q.Delivery.V
			q.Lowest = append(q.Lowest, Lowest{Product: h.Product, Rate: measure.Known(measure.Rate{V: (now + 1e-9) * rapid.Float64Range(0.1, 1.2).Draw(t, "lowest"), Kind: h.Amount.Kind})})
		}
		got, err := q.Work()
		if err != nil {
			t.Fatal(err)
		}
		if got.Water < 0 || got.Total != left+got.Water || (!got.Possible && (got.Water != 0 || got.Why == "" || got.Do == "")) {
			t.Fatalf("%+v", got)
		}
		tight := math.Inf(1)
		for _, r := range got.Rates {
			if got.Possible && r.Now.V > 0 {
				tight = math.Min(tight, r.Then.V/r.Lowest.V.V)
			}
		}
		if got.Possible && !(tight >= 1-2*hair && tight < 1+1e-6) {
			t.Fatalf("the tightest is laid at %v of its lowest rate: %+v", tight, got)
		}
	})
}

// Turned for another applicator, a rest lays on an area just what it laid before, of each product.
func TestTurnLaysTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		left := drawVolume(t, "left")
		q := TurnAsk{
			Left: left, Holds: drawHeld(t, left), From: measure.GalPer1000(rapid.Float64Range(0.1, 5).Draw(t, "from")), To: measure.GalPer1000(rapid.Float64Range(0.1, 5).Draw(t, "to")),
		}
		got, err := q.Work()
		if err != nil {
			t.Fatal(err)
		}
		if !got.Possible {
			if got.Why == "" || got.Do == "" {
				t.Fatalf("%+v", got)
			}
			return
		}
		if d := got.Volume - left - got.Water - liquids(got.Add); d > 4 || d < -4 { // each amount is rounded by itself
			t.Fatalf("%v is not %v and %v and %v", got.Volume, left, got.Water, liquids(got.Add))
		}
		for i, h := range q.Holds {
			now := h.Amount.N
			if len(got.Add) > 0 {
				now += got.Add[i].Amount.N
			}
			was := float64(h.Amount.N) / float64(left) * q.From.V
			then := float64(now) / float64(got.Volume) * q.To.V
			if math.Abs(was-then) > 1e-6*was+1e-6 {
				t.Fatalf("%s: %v, then %v", h.Product, was, then)
			}
		}
	})
}

// The loads of a package and what is left are the package.
func TestJugConserves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pack := measure.Amount{N: rapid.Int64Range(1, 1e12).Draw(t, "package")}
		q := JugAsk{Product: "Warm", Package: pack}
		if rapid.Bool().Draw(t, "equal") {
			q.Loads = rapid.IntRange(1, mostLoads).Draw(t, "loads")
		} else {
			q.Each = measure.Known(measure.Amount{N: rapid.Int64Range(max(1, pack.N/mostLoads+1), max(1, pack.N/mostLoads+1)+pack.N).Draw(t, "each")})
			if q.Each.V.N > pack.N {
				return
			}
		}
		got, err := q.Work()
		if err != nil {
			t.Fatal(err)
		}
		sum, low, high := got.Left.N, got.Loads[0].Amount.N, got.Loads[0].Amount.N
		for _, l := range got.Loads {
			sum += l.Amount.N
			low, high = min(low, l.Amount.N), max(high, l.Amount.N)
		}
		if sum != pack.N || got.Left.N < 0 || high-low > 1 || (q.Loads > 0 && got.Left.N != 0) || (q.Each.Known && got.Left.N >= q.Each.V.N) {
			t.Fatalf("%+v", got)
		}
	})
}

// A left-over goes only where each product stays within what the ground can still take, and where it may not it would not.
func TestUseUpStaysWithin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		left := drawVolume(t, "left")
		q := UseUpAsk{Left: left, Holds: drawHeld(t, left), Delivery: measure.GalPer1000(rapid.Float64Range(0.1, 5).Draw(t, "delivery")), Thin: rapid.Float64Range(0, 20).Draw(t, "thin")}
		g := Ground{Name: "ahead", Area: measure.SquareFeet(rapid.Float64Range(10, 50_000).Draw(t, "area"))}
		for _, h := range q.Holds {
			full := float64(measure.ConcentrationOf(h.Amount, left)) * q.Delivery.V
			most := full * rapid.Float64Range(0.1, 3).Draw(t, "most")
			g.Can = append(g.Can, CanTake{
				Product: h.Product, Laid: measure.Rate{V: most * rapid.Float64Range(0, 1.2).Draw(t, "laid"), Kind: h.Amount.Kind},
				Most: measure.Known(measure.Rate{V: most, Kind: h.Amount.Kind}),
			})
		}
		q.Grounds = []Ground{g}
		got, err := q.Work()
		if err != nil {
			t.Fatal(err)
		}
		within := func(thin float64) bool {
			for i, h := range q.Holds {
				full := float64(h.Amount.N) / float64(left) * q.Delivery.V
				if h.Amount.N > 0 && g.Can[i].Laid.V+full/(1+thin) > math.Max(g.Can[i].Most.V.V, g.Can[i].Laid.V)*(1+1e-6)+1e-12 {
					return false
				}
			}
			return true
		}
		p := got.Places[0]
		if p.May && !within(q.Thin) {
			t.Fatalf("too much: %+v", p)
		}
		if p.LeastTo.Known && !within(float64(p.LeastTo.V)) {
			t.Fatalf("the least water is too little: %+v", p)
		}
		if !p.May && p.LeastTo.Known && float64(p.LeastTo.V) < q.Thin*(1-1e-6) {
			t.Fatalf("refused, but %v parts would do: %+v", p.LeastTo.V, p)
		}
		if p.Takes < 0 || p.Takes > left {
			t.Fatalf("%+v", p)
		}
	})
}
