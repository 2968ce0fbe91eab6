package core

import (
	"pgregory.net/rapid"

	"example.com/tintline/core/measure"
)

// truedUp is mostly what the last reading asks for, at times with lines of its own, sound or not. Where no reading came
// after a spraying it is a reading of what was drawn from, so that the next one finds something.
func (g *anyFact) truedUp() Fact {
	f := &TruedUp{Tank: string(g.letter())}
	shown := false
	for _, s := range g.b.Day().Shown {
		if s.To > s.First && !s.Trued.Known {
			f.Tank, shown = string(s.Letter), true
		}
	}
	if !shown && g.b.Day().Open {
		for i := range g.b.Day().Laid {
			for _, d := range g.b.Day().Laid[i].Drew {
				c := g.b.Plumbing().Compartment(d.Letter)
				if c == nil {
					continue
				}
				off := measure.Volume(float64(d.Volume) * rapid.Float64Range(-0.9, 0.9).Draw(g.t, "off"))
				return &GaugeRead{Compartment: d.Letter, Volume: Known(max(c.Liquid.Volume+off, 0)), GiveOrTake: Known(measure.Volume(rapid.Int64Range(0, 1e6).Draw(g.t, "band")))}
			}
		}
	}
	if rapid.IntRange(0, 3).Draw(g.t, "include") > 0 {
		f.Include = []string{ByGallons, ByGauge}
	}
	t, err := g.b.TrueUp(f.Tank, f.Include...)
	if len(t.Lines) == 0 {
		f.Lines = []TruedLine{{g.lawn(), "front", 1, g.volume(4), g.volume(1)}}
		return f
	}
	if err == nil && rapid.Bool().Draw(g.t, "as asked") {
		return f
	}
	for _, l := range t.Lines {
		if l.More == 0 { // within what the gauge can tell
			l.More = t.Off / measure.Volume(2*len(t.Lines))
		}
		if rapid.IntRange(0, 2).Draw(g.t, "half") == 0 {
			l.More /= 2
		}
		f.Lines = append(f.Lines, l.TruedLine)
	}
	return f
}
