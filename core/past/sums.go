package past

import (
	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/tally"
)

// encodeSums writes the sums of a day without its lawns, which are added up from what was laid.
func encodeSums(h head, t *tally.Tally) []byte {
	w := &writer{b: make([]byte, 0, 512)}
	w.head(h)
	w.ints(t.Seconds, int64(t.Volume), int64(t.Mass), int64(t.Area), int64(t.Sprayed))
	w.count(len(t.Compartments))
	for i := range t.Compartments {
		c := &t.Compartments[i]
		w.text(c.Letter)
		w.flows(c.Flows)
		w.yes(c.Gauge.Known)
		if c.Gauge.Known {
			w.int(int64(c.Gauge.V))
		}
		w.int(int64(c.ToLawns))
	}
	w.count(len(t.Mixes))
	for _, m := range t.Mixes {
		w.text(m.Mix)
		w.ints(int64(m.Volume), int64(m.Area))
	}
	w.count(len(t.Products))
	for _, p := range t.Products {
		w.text(p.Product)
		w.uint(uint64(p.Amount.Kind))
		w.uint(uint64(p.Key))
		w.ints(p.Amount.N, int64(p.Area))
	}
	w.count(len(t.Tanks))
	for _, a := range t.Tanks {
		w.text(a.Name)
		w.flows(a.Flows)
		w.int(int64(a.ToLawns))
	}
	w.count(len(t.Hoppers))
	for _, p := range t.Hoppers {
		w.text(p.Name)
		w.ints(int64(p.Flows.Start), int64(p.Flows.Loaded), int64(p.Flows.Spread), int64(p.Flows.Other), int64(p.ToLawns))
	}
	return w.b
}

func (w *writer) flows(f fluid.Flows) {
	w.ints(int64(f.Start), int64(f.Loaded), int64(f.PushedIn), int64(f.Drawn), int64(f.Other), int64(f.Unexplained))
}

func (r *reader) flows() fluid.Flows {
	return fluid.Flows{
		Start: measure.Volume(r.int()), Loaded: measure.Volume(r.int()), PushedIn: measure.Volume(r.int()), Drawn: measure.Volume(r.int()),
		Other: measure.Volume(r.int()), Unexplained: measure.Volume(r.int()),
	}
}

// sums reads what follows the head into t, whose lists are used again.
func (r *reader) sums(h head, t *tally.Tally) error {
	*t = tally.Tally{
		From: h.date, To: h.date, Compartments: t.Compartments[:0], Mixes: t.Mixes[:0], Products: t.Products[:0],
		Tanks: t.Tanks[:0], Hoppers: t.Hoppers[:0],
	}
	t.Seconds = r.int()
	t.Volume, t.Mass = measure.Volume(r.int()), measure.Mass(r.int())
	t.Area, t.Sprayed = measure.Area(r.int()), measure.Area(r.int())
	for n := r.count(); n > 0 && r.err == nil; n-- {
		c := tally.Compartment{Letter: r.text(), Flows: r.flows()}
		if r.yes() {
			c.Gauge = core.Known(measure.Volume(r.int()))
		}
		c.ToLawns = measure.Volume(r.int())
		t.Compartments = append(t.Compartments, c)
	}
	for n := r.count(); n > 0 && r.err == nil; n-- {
		t.Mixes = append(t.Mixes, tally.Mix{Mix: r.text(), Volume: measure.Volume(r.int()), Area: measure.Area(r.int())})
	}
	for n := r.count(); n > 0 && r.err == nil; n-- {
		p := tally.Product{Product: r.text()}
		p.Amount.Kind, p.Key = r.kind(), r.int32()
		p.Amount.N, p.Area = r.int(), measure.Area(r.int())
		t.Products = append(t.Products, p)
	}
	for n := r.count(); n > 0 && r.err == nil; n-- {
		t.Tanks = append(t.Tanks, tally.Tank{Name: r.text(), Flows: r.flows(), ToLawns: measure.Volume(r.int())})
	}
	for n := r.count(); n > 0 && r.err == nil; n-- {
		p := tally.Hopper{Name: r.text()}
		p.Flows = fluid.HopperFlows{Start: measure.Mass(r.int()), Loaded: measure.Mass(r.int()), Spread: measure.Mass(r.int()), Other: measure.Mass(r.int())}
		p.ToLawns = measure.Mass(r.int())
		t.Hoppers = append(t.Hoppers, p)
	}
	return r.end()
}
