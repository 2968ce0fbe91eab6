package core

import (
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// From when on a span of a compartment goes.
const (
	FromReading = "reading"
	FromLoad    = "load" // into an empty compartment: a top-up measures nothing
	FromOpening = "opening"
)

// LevelSpan is the time since it was last known how much a compartment held.
type LevelSpan struct {
	Letter byte
	By     string
	Since  Moment
	First  int            // how much of the day's list was laid before
	Was    measure.Volume // what the compartment's account of the unexplained stood at
}

// Shown is what the last reading of a compartment showed of the span that it ended.
type Shown struct {
	LevelSpan
	At Moment
	To int // how much of the day's list was laid before the reading
	// Off is how much more left the compartment than was logged; less: below 0.
	Off measure.Volume
	// Drawn is all that was drawn on the day in that span, Earlier what was drawn on days before it.
	Drawn, Earlier measure.Volume
	// Band is the standard uncertainty of the reading, BandBefore that of the one before; 0 where no chart told it.
	Band, BandBefore measure.Volume
	Trued            Maybe[measure.Volume] // what was moved by a true-up
}

// Drew is how much of what was laid counts as drawn from a compartment.
type Drew struct {
	Letter byte
	Volume measure.Volume
}

// DrewFrom is how much of what was laid counts as drawn from a compartment.
func (l *Laid) DrewFrom(letter byte) measure.Volume {
	for _, d := range l.Drew {
		if d.Letter == letter {
			return d.Volume
		}
	}
	return 0
}

// ShownBy is what the last reading of a compartment on this day showed, nil if there was none.
func (d *Day) ShownBy(letter byte) *Shown {
	for i := range d.Shown {
		if d.Shown[i].Letter == letter {
			return &d.Shown[i]
		}
	}
	return nil
}

// span is the one that goes on now.
func (d *Day) span(letter byte) LevelSpan {
	for _, s := range d.Spans {
		if s.Letter == letter {
			return s
		}
	}
	return LevelSpan{Letter: letter, By: FromOpening, Since: d.Opened}
}

// beginSpan begins a new one. Lists are made anew, because a clone shares them.
func (d *Day) beginSpan(s LevelSpan) {
	s.First = len(d.Laid)
	list := make([]LevelSpan, 0, len(d.Spans)+1)
	for _, o := range d.Spans {
		if o.Letter != s.Letter {
			list = append(list, o)
		}
	}
	d.Spans = append(list, s)
}

func (d *Day) show(s Shown) {
	list := make([]Shown, 0, len(d.Shown)+1)
	for _, o := range d.Shown {
		if o.Letter != s.Letter {
			list = append(list, o)
		}
	}
	d.Shown = append(list, s)
}

// emptyLoaded begins a span where a load goes into an empty compartment. It is called before the load is put in.
func (s *state) emptyLoaded(e Entry, f *Loaded) {
	if len(f.Into) != 1 {
		return
	}
	if c := s.plumbing.Compartment(f.Into[0]); c != nil && c.Liquid.Volume <= c.Heel {
		s.day.beginSpan(LevelSpan{Letter: c.Letter, By: FromLoad, Since: e.At, Was: c.Flows.Unexplained})
	}
}

// shows keeps what a reading shows, and begins the next span; before is the compartment as it was before the reading.
func (s *state) shows(e Entry, c *fluid.Compartment, before *fluid.Tank) {
	span := s.day.span(c.Letter)
	shown := Shown{
		LevelSpan: span, At: e.At, To: len(s.day.Laid), Off: span.Was - c.Flows.Unexplained, Drawn: before.Moved,
		Band: c.ReadBand, BandBefore: before.ReadBand,
	}
	if span.By == FromOpening {
		shown.Drawn = min(before.Moved, max(before.Flows.Drawn, 0))
		shown.Earlier = before.Moved - shown.Drawn
	}
	s.day.show(shown)
	s.day.beginSpan(LevelSpan{Letter: c.Letter, By: FromReading, Since: e.At, Was: c.Flows.Unexplained})
}

// drawnBy is what each compartment gave so far today.
func (s *state) drawnBy() []measure.Volume {
	out := make([]measure.Volume, len(s.plumbing.Compartments))
	for i := range out {
		out[i] = s.plumbing.Compartments[i].Flows.Drawn
	}
	return out
}

// drewSince shares a volume that was laid over the compartments by what each gave since then.
func (s *state) drewSince(before []measure.Volume, v measure.Volume) []Drew {
	weights := make([]int64, len(before))
	any := false
	for i := range before {
		weights[i] = int64(s.plumbing.Compartments[i].Flows.Drawn - before[i])
		any = any || weights[i] > 0
	}
	if !any || v <= 0 {
		return nil
	}
	var out []Drew
	for i, n := range measure.Apportion(weights, int64(v)) {
		if n > 0 {
			out = append(out, Drew{s.plumbing.Compartments[i].Letter, measure.Volume(n)})
		}
	}
	return out
}
