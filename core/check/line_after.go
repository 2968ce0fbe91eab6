package check

import (
	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Line is what stands between the valves and the nozzle.
type Line struct {
	Cell fluid.Cell
	Hose *fluid.Hose // nil: the rig has none
}

// LineNow is what stands in the line of a hose by the book; the empty name is the first one.
func LineNow(b *core.Book, hose string) Line {
	p := b.Plumbing()
	return Line{p.Cell, p.Hose(hose)}
}

// LineAfter is what would stand there once so much of a changeover has been pushed, by a sketch of the ledger: the book is
// left as it is. The valves are taken to stand as the changeover wants them.
func LineAfter(b *core.Book, c *Changeover, gone measure.Volume) Line {
	p := b.Plumbing().Sketch()
	if up := p.LineUp; string(up.Supply) != string(c.To) || up.Return != c.To {
		p.Turn(fluid.LineUp{Supply: []byte{c.To}, Return: c.To})
	}
	for _, f := range Pushed(c, gone) {
		if f, ok := f.(*core.PushedBack); ok {
			pushLeg(b, p, c.Hose, Leg{Into: f.Into, To: f.To, Volume: f.Volume})
		}
	}
	return Line{p.Cell, p.Hose(c.Hose)}
}

// pushLeg pushes a leg on a sketch.
func pushLeg(b *core.Book, p *fluid.Plumbing, hose string, l Leg) {
	bypass := b.BypassAtHose(p, hose, l.Volume).Or(0)
	if into := p.Compartment(l.Into); into != nil {
		p.PushBack(hose, l.Volume, bypass, into)
	} else {
		p.PushOut(hose, l.Volume, bypass, fluid.Place(l.To))
	}
}

// LineSwept is what would stand there after so many seconds of a way that lets the bypass wash the cell first: supply turned,
// return left, gun shut.
func LineSwept(b *core.Book, c *Changeover, seconds float64) Line {
	p := b.Plumbing().Sketch()
	if p.LineUp.Return != 0 && b.Rig().PumpFlow.Known {
		sweep(b, p, c.To, p.LineUp.Return, max(seconds, 0))
	}
	return Line{p.Cell, p.Hose(c.Hose)}
}

// Run is a length of hose in which most of the liquid came from one origin, or in which there is air.
type Run struct {
	Key    int32
	Air    bool
	Volume measure.Volume
}

// Runs are those of the hose, from the pump end. A parcel that is less than a sliver, which is less than any that is judged,
// is no run of its own.
func (l Line) Runs() []Run {
	if l.Hose == nil {
		return nil
	}
	var out []Run
	add := func(r Run) {
		last := len(out) - 1
		switch {
		case r.Volume <= 0:
		case last >= 0 && out[last].Air == r.Air && (r.Air || out[last].Key == r.Key):
			out[last].Volume += r.Volume
		default:
			out = append(out, r)
		}
	}
	for _, p := range l.Hose.FromPumpEnd() {
		r := Run{Volume: p.Volume}
		most := int64(0)
		for _, f := range p.From {
			if f.N > most {
				r.Key, most = f.Key, f.N
			}
		}
		add(r)
		add(Run{Air: true, Volume: p.Air})
	}
	var kept []Run
	for _, r := range out {
		if last := len(kept) - 1; r.Volume < sliver && last >= 0 {
			kept[last].Volume += r.Volume
		} else {
			kept = append(kept, r)
		}
	}
	return kept
}
