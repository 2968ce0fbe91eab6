package fluid

import (
	"fmt"
	"os"
	"reflect"
	"testing"

	"example.com/tintline/core/measure"
	"pgregory.net/rapid"
)

// moves is how many moves a sequence has; TINTLINE_LONG=1 makes it thousands.
func moves() int {
	if os.Getenv("TINTLINE_LONG") != "" {
		return 20_000
	}
	return 3000
}

const liquidProducts = 3 // keys 0 to 2 are liquid, 3 and 4 dry

func isLiquid(key int32) bool { return key < liquidProducts }

var packages = map[int32]Place{0: "package/p0", 1: "package/p1", 2: "package/p2", 3: "package/p3", 4: "package/p4"}

// anyRig draws a rig whose parts hold their first water, as the book sets them up.
func anyRig(t *rapid.T) *Plumbing {
	p := &Plumbing{Outside: Accounts{}}
	size := rapid.SampledFrom([]measure.Volume{5, 1000, measure.USFluidOunce, measure.USGallon, 400 * measure.USGallon, 100_000 * measure.USGallon})
	part := func(label string) measure.Volume {
		return measure.Volume(rapid.Int64Range(1, int64(size.Draw(t, label))).Draw(t, label+" size"))
	}
	water := func(v measure.Volume) Liquid {
		p.Outside.Take(WaterSupply, Water(v, NoTank))
		return Water(v, NoTank)
	}
	for i := range rapid.IntRange(2, 6).Draw(t, "compartments") {
		c := Compartment{Letter: byte('a' + i)}
		c.Capacity, c.Origin = part("capacity"), int32(i+1)
		c.Heel = measure.Volume(rapid.Int64Range(0, int64(c.Capacity)-1).Draw(t, "heel"))
		p.Compartments = append(p.Compartments, c)
	}
	if rapid.Bool().Draw(t, "cell") {
		p.Cell.Size = part("cell")
		p.Cell.Liquid = water(p.Cell.Size)
	}
	if rapid.Bool().Draw(t, "return line") {
		p.Return.Size = part("return line")
		p.Return.Liquid = water(p.Return.Size)
	}
	for i := range rapid.IntRange(1, 2).Draw(t, "hoses") {
		v := part("hose")
		p.Hoses = append(p.Hoses, Hose{Name: fmt.Sprint("h", i), Size: v, Charge: []Parcel{{Liquid: water(v)}}})
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "tanks") {
		a := ApplicatorTank{Name: fmt.Sprint("t", i)}
		a.Capacity, a.Origin = part("tank"), KeepOrigins
		p.Tanks = append(p.Tanks, a)
	}
	return p
}

// anyVolume is tiny, or of the size of the thing it is taken from, or huge.
func anyVolume(t *rapid.T, about measure.Volume) measure.Volume {
	switch rapid.IntRange(0, 9).Draw(t, "scale") {
	case 0:
		return measure.Volume(rapid.Int64Range(1, 50).Draw(t, "nL"))
	case 1:
		return measure.Volume(rapid.Int64Range(1, 1e14).Draw(t, "huge nL"))
	}
	return measure.Volume(rapid.Int64Range(1, max(1, int64(about))).Draw(t, "volume"))
}

func anyLoad(t *rapid.T, room measure.Volume) Liquid {
	l := Liquid{Volume: anyVolume(t, room)}
	left := int64(l.Volume)
	for _, key := range rapid.SliceOfNDistinct(rapid.Int32Range(0, 4), 0, 3, rapid.ID[int32]).Draw(t, "products") {
		most := left
		if !isLiquid(key) {
			most = 5 * int64(l.Volume) // 5 g/L: thousands of huge moves stay within int64
		}
		if n := rapid.Int64Range(0, most).Draw(t, "amount"); n > 0 {
			l.Holds = l.Holds.Plus(Parts{{key, n}})
			if isLiquid(key) {
				left -= n
			}
		}
	}
	return l
}

func anyTank(t *rapid.T, p *Plumbing) (*Tank, Place) {
	i := rapid.IntRange(0, len(p.Compartments)+len(p.Tanks)-1).Draw(t, "tank")
	if i < len(p.Compartments) {
		return &p.Compartments[i].Tank, CompartmentPlace(p.Compartments[i].Letter)
	}
	a := &p.Tanks[i-len(p.Compartments)]
	return &a.Tank, ApplicatorPlace(a.Name)
}

func anyInside(t *rapid.T, p *Plumbing) Place {
	switch rapid.IntRange(0, 3).Draw(t, "from") {
	case 0:
		return HosePlace(rapid.SampledFrom(p.Hoses).Draw(t, "hose").Name)
	case 1:
		return CellPlace
	case 2:
		return ReturnPlace
	}
	_, pl := anyTank(t, p)
	return pl
}

// anyBypass is none as often as not, else less or more than what leaves the nozzle.
func anyBypass(t *rapid.T, v measure.Volume) measure.Volume {
	if rapid.Bool().Draw(t, "no bypass") {
		return 0
	}
	return anyVolume(t, 3*v)
}

// move makes one random move and says what it was.
func move(t *rapid.T, p *Plumbing) string {
	hose := rapid.SampledFrom(p.Hoses).Draw(t, "hose")
	about := hose.Size + p.Cell.Size
	exact := func(what string, v measure.Volume, out []Liquid) string {
		var got measure.Volume
		for _, l := range out {
			if l.Volume <= 0 {
				t.Fatalf("%s of %d gave an empty parcel", what, v)
			}
			got += l.Volume
		}
		if got != v {
			t.Fatalf("%s of %d gave %d", what, v, got)
		}
		return fmt.Sprintf("%s %d", what, v)
	}
	switch kind := rapid.IntRange(0, 14).Draw(t, "move"); kind {
	case 0, 1:
		tank, _ := anyTank(t, p)
		l := anyLoad(t, tank.Capacity)
		if tank.Origin == KeepOrigins {
			l.From = Parts{{NoTank, int64(l.Volume)}}
		} else {
			tank.Rename(rapid.Int32Range(1, 9).Draw(t, "origin"), tank.Liquid.Volume <= tank.Heel)
		}
		p.Load(tank, l, packages, isLiquid)
		return fmt.Sprintf("load %v", l)
	case 2, 3:
		v := anyVolume(t, 2*about)
		out := p.Draw(hose.Name, v, anyBypass(t, v))
		for _, l := range out {
			p.Outside.Give("zone/L/z", l)
		}
		return exact("draw", v, out)
	case 4:
		v := anyVolume(t, 2*about)
		return exact("push back", v, p.PushBack(hose.Name, v, anyBypass(t, v), &p.Compartments[rapid.IntRange(0, len(p.Compartments)-1).Draw(t, "into")]))
	case 12:
		v := anyVolume(t, 2*about)
		return exact("push out", v, p.PushOut(hose.Name, v, anyBypass(t, v), "waste/pail"))
	case 13:
		letter := func(what string) byte { return rapid.SampledFrom(p.Compartments).Draw(t, what).Letter }
		var drawn []Drawing
		var levelled []Levelling
		for range rapid.IntRange(0, 2).Draw(t, "drawn") {
			drawn = append(drawn, Drawing{letter("from"), anyVolume(t, about)})
		}
		for range rapid.IntRange(0, 2).Draw(t, "levelled") {
			levelled = append(levelled, Levelling{letter("from"), letter("to"), anyVolume(t, about)})
		}
		p.Stand(drawn, levelled, "waste/overflow")
		return fmt.Sprint("stand ", drawn, levelled)
	case 5, 6:
		if len(p.Tanks) == 0 {
			return "no tank"
		}
		a := &p.Tanks[rapid.IntRange(0, len(p.Tanks)-1).Draw(t, "applicator")]
		v := anyVolume(t, a.Capacity)
		if kind == 5 {
			return exact("fill", v, p.Fill(hose.Name, v, anyBypass(t, v), a))
		}
		out := p.Spray(a, v)
		for _, l := range out {
			p.Outside.Give("zone/L/z", l)
		}
		return exact("spray", v, out)
	case 7:
		tank, pl := anyTank(t, p)
		v := anyVolume(t, tank.Capacity) - 1
		p.Gauge(tank, v)
		if tank.Liquid.Volume != v {
			t.Fatalf("read %d in %s, booked %d", v, pl, tank.Liquid.Volume)
		}
		return "gauge"
	case 8:
		c := &p.Compartments[rapid.IntRange(0, len(p.Compartments)-1).Draw(t, "rinsed")]
		p.Rinse(c, anyVolume(t, c.Capacity), rapid.SampledFrom([]Place{"", "waste/pad", "compartment/a", "applicator/t0"}).Draw(t, "to"))
		return "rinse"
	case 9, 10:
		from, to := anyInside(t, p), rapid.SampledFrom([]Place{"waste/pad", "zone/L/z", "compartment/b", "applicator/t0"}).Draw(t, "to")
		v, held := anyVolume(t, about), measure.Volume(0)
		for _, a := range p.Accounts() {
			if a.Place == from {
				held = a.Volume
			}
		}
		if ran := p.Dump(from, v, to).Volume; ran != min(v, held) {
			t.Fatalf("%s holds %d, %d were to run out and %d did", from, held, v, ran)
		}
		return fmt.Sprintf("dump %s to %s", from, to)
	case 11:
		up := LineUp{Return: rapid.SampledFrom([]byte{0, 'a', 'b'}).Draw(t, "return")}
		for _, i := range rapid.SliceOfNDistinct(rapid.IntRange(0, len(p.Compartments)-1), 0, 3, rapid.ID[int]).Draw(t, "supply") {
			up.Supply = append(up.Supply, p.Compartments[i].Letter)
		}
		p.Turn(up)
		return fmt.Sprint("turn ", up)
	default:
		return resize(t, p, hose.Name)
	}
}

// resize changes a part around what it holds.
func resize(t *rapid.T, p *Plumbing, hose string) string {
	more := anyVolume(t, measure.USGallon)
	switch rapid.IntRange(0, 3).Draw(t, "part") {
	case 0:
		p.Cell.Size = p.Cell.Liquid.Volume + more
	case 1:
		p.ResizeReturn(p.Return.Liquid.Volume + more)
	case 2:
		h := p.Hose(hose)
		if len(h.Charge) > 0 && h.Charge[0].Air > 1 {
			if !p.ResizeHose(hose, h.Size-1) {
				t.Fatal("a hose with air at the nozzle cannot be made shorter")
			}
		}
	default:
		p.ResizeHose(hose, p.Hose(hose).Size+more)
	}
	return "resize"
}

// sound checks everything that must always hold.
func sound(t rapid.TB, p *Plumbing) {
	t.Helper()
	if s := p.Sum(); s.Volume != 0 || len(s.Holds) != 0 {
		t.Fatalf("the sum over all places is %v", s)
	}
	inside := func(pl Place, l Liquid, origins bool) {
		if l.Volume < 0 {
			t.Fatalf("%s holds %d nL", pl, l.Volume)
		}
		for _, q := range append(append(Parts{}, l.Holds...), l.From...) {
			if q.N <= 0 {
				t.Fatalf("%s holds %v", pl, l)
			}
		}
		if origins && l.From.Sum() != int64(l.Volume) {
			t.Fatalf("%s: the origins of %v sum to %d", pl, l, l.From.Sum())
		}
	}
	tank := func(pl Place, tk *Tank) {
		inside(pl, tk.Liquid, tk.Origin == KeepOrigins)
		if tk.Flows.Left() != tk.Liquid.Volume {
			t.Fatalf("%s: flows %v come to %d, it holds %d", pl, tk.Flows, tk.Flows.Left(), tk.Liquid.Volume)
		}
		for _, q := range append(append(Parts{}, tk.Strange...), tk.StrangeIn...) {
			if now, in := tk.Strange.Of(q.Key), tk.StrangeIn.Of(q.Key); now < 0 || now > in || q.Key == tk.Origin || tk.Origin == KeepOrigins {
				t.Fatalf("%s of origin %d: strange now %v, in all %v", pl, tk.Origin, tk.Strange, tk.StrangeIn)
			}
		}
		if tk.Strange.Sum() > int64(tk.Liquid.Volume) {
			t.Fatalf("%s: strangers %v in %v", pl, tk.Strange, tk.Liquid)
		}
		if tk.Origin != KeepOrigins && len(tk.Liquid.From) != 0 {
			t.Fatalf("%s is an origin itself, but keeps %v", pl, tk.Liquid.From)
		}
	}
	for i := range p.Compartments {
		tank(CompartmentPlace(p.Compartments[i].Letter), &p.Compartments[i].Tank)
	}
	for i := range p.Tanks {
		tank(ApplicatorPlace(p.Tanks[i].Name), &p.Tanks[i].Tank)
	}
	inside(CellPlace, p.Cell.Liquid, true)
	inside(ReturnPlace, p.Return.Liquid, true)
	if p.Cell.Liquid.Volume > p.Cell.Size || p.Return.Liquid.Volume > p.Return.Size {
		t.Fatalf("cell %d of %d, return line %d of %d", p.Cell.Liquid.Volume, p.Cell.Size, p.Return.Liquid.Volume, p.Return.Size)
	}
	if len(p.Return.Charge) > 0 {
		var all Liquid
		for _, l := range p.Return.Charge {
			inside(ReturnPlace, l, true)
			all = all.Plus(l)
		}
		if r := p.Return.Liquid; all.Volume != r.Volume || len(all.From.Minus(r.From)) > 0 || len(all.Holds.Minus(r.Holds)) > 0 {
			t.Fatalf("the parcels of the return line are %v, it holds %v", all, p.Return.Liquid)
		}
	}
	for i := range p.Hoses {
		h := &p.Hoses[i]
		var length measure.Volume
		for j, c := range h.Charge {
			inside(HosePlace(h.Name), c.Liquid, true)
			if c.Air < 0 || c.length() <= 0 || (c.Air > 0 && (c.Volume > 0 || j > 0)) {
				t.Fatalf("%s: parcel %d is %v", h.Name, j, c)
			}
			length += c.length()
		}
		if length != h.Size {
			t.Fatalf("%s: parcels fill %d of %d", h.Name, length, h.Size)
		}
	}
}

func TestNothingIsLostWhateverMoves(t *testing.T) {
	total := 0
	rapid.Check(t, func(t *rapid.T) {
		p := anyRig(t)
		sound(t, p)
		for range rapid.IntRange(1, moves()).Draw(t, "moves") {
			t.Log(move(t, p))
			sound(t, p)
			total++
		}
	})
	t.Logf("%d moves", total)
}

func TestCloneAndSketchShareNothingThatMoves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyRig(t)
		for range 20 {
			move(t, p)
		}
		before := fmt.Sprint(p.Accounts(), p.LineUp, p.Hoses, p.Compartments, p.Tanks, p.Return)
		c, s := p.Clone(), p.Sketch()
		if !reflect.DeepEqual(c.Accounts(), p.Accounts()) {
			t.Fatal("a clone holds something else")
		}
		for range 20 {
			move(t, c)
			move(t, s)
		}
		if after := fmt.Sprint(p.Accounts(), p.LineUp, p.Hoses, p.Compartments, p.Tanks, p.Return); after != before {
			t.Fatalf("moving a copy moved the first:\n%s\n%s", before, after)
		}
	})
}

func TestNeedsIsWhatTheDrawTakes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyRig(t)
		for range 30 {
			move(t, p)
		}
		have := p.SupplyDrawable()
		v := anyVolume(t, p.Hoses[0].Size)
		bypass := anyBypass(t, v)
		needs := p.Needs("h0", v, bypass)
		p.Draw("h0", v, bypass)
		if took := have - p.SupplyDrawable(); needs <= have && took != needs {
			t.Fatalf("drawing %d took %d, not the %d it needs", v, took, needs)
		}
	})
}
