package core

import (
	"fmt"
	"slices"
	"strings"

	"example.com/tintline/core/measure"
)

// chartWith is a chart with one mark more, in its place by volume. A mark that stands there already, by its letters or as the
// same figure, gets the new volume.
func chartWith(marks []GaugeMark, mark string, v measure.Volume) []GaugeMark {
	out := chartWithout(marks, mark)
	i := 0
	for i < len(out) && out[i].Volume < v {
		i++
	}
	return slices.Insert(out, i, GaugeMark{mark, v})
}

// chartWithout is a copy of a chart without a mark.
func chartWithout(marks []GaugeMark, mark string) []GaugeMark {
	return slices.DeleteFunc(slices.Clone(marks), func(m GaugeMark) bool { return sameMark(m.Mark, mark) })
}

// sameMark tells whether two marks are one: the same letters, or the same figure ("2" and "2.00").
func sameMark(a, b string) bool {
	if a == b {
		return true
	}
	x, okX := measure.ReadFigure(a)
	y, okY := measure.ReadFigure(b)
	return okX && okY && x.Cmp(y) == 0
}

func (s *state) admitMarked(f *Marked) error {
	set := s.RigCompartment(f.Compartment)
	if set == nil {
		return s.noCompartment(f.Compartment)
	}
	if err := name("mark", f.Mark); err != nil {
		return err
	}
	if !f.Volume.Known {
		if len(chartWithout(set.Marks, f.Mark)) == len(set.Marks) {
			do := "Give the gallons at it to put it on."
			if len(set.Marks) > 0 {
				do = fmt.Sprintf("Name a mark of the chart, %s, or give the gallons at it to put it on.", set.markRange())
			}
			return refuse(do, "The chart of %c has no mark %q to take off.", f.Compartment, f.Mark)
		}
		return nil
	}
	v := f.Volume.V
	if v < 0 || v > set.Capacity {
		return refuse(fmt.Sprintf("Give 0 to %s gal.", set.Capacity.Text()), "Mark %s of the gauge of %c cannot stand for %s gal.", f.Mark, f.Compartment, v.Text())
	}
	marks := chartWith(set.Marks, f.Mark, v)
	if len(marks) > MostMarks {
		return refuse("Take a mark off first.", "The chart of %c would have %d marks; %d are kept.", f.Compartment, len(marks), MostMarks)
	}
	return backwards(set.Letter, marks, f.Mark)
}

// MostMarks is how many marks a chart may get one by one.
const MostMarks = 200

// backwards refuses a chart in which the mark just read stands at the same volume as another, or above or below one that its
// figure belongs under or over.
func backwards(letter byte, marks []GaugeMark, read string) error {
	i := slices.IndexFunc(marks, func(m GaugeMark) bool { return m.Mark == read })
	says := func(m GaugeMark) string { return fmt.Sprintf("mark %s stands for %s gal", m.Mark, m.Volume.Text()) }
	const again = "Read both again, or take the wrong mark off first."
	if i+1 < len(marks) && marks[i+1].Volume == marks[i].Volume {
		return refuse(again, "Two marks of the gauge of %c would be one: %s, and so would mark %s.", letter, says(marks[i+1]), read)
	}
	at, ok := measure.ReadFigure(read)
	if !ok {
		return nil
	}
	for j, m := range marks {
		here, figure := measure.ReadFigure(m.Mark)
		if j == i || !figure || (here.Cmp(at) < 0) == (j < i) {
			continue
		}
		where := "above"
		if here.Cmp(at) < 0 {
			where = "below"
		}
		return refuse(again, "The chart of %c would run backwards: %s, and mark %s %s it for %s gal.", letter, says(marks[i]), m.Mark, where, m.Volume.Text())
	}
	return nil
}

// applyMarked puts a mark on the chart of a compartment, or takes it off. The rig before stays as it is: other copies of the
// book hold it.
func (s *state) applyMarked(f *Marked) {
	if s.entered == nil {
		return
	}
	i := slices.IndexFunc(s.entered.Compartments, func(c RigCompartment) bool { return c.Letter == f.Compartment })
	if i < 0 {
		return
	}
	rig := *s.entered
	rig.Compartments = slices.Clone(rig.Compartments)
	c := &rig.Compartments[i]
	if f.Volume.Known {
		c.Marks = chartWith(c.Marks, f.Mark, f.Volume.V)
	} else {
		c.Marks = chartWithout(c.Marks, f.Mark)
	}
	s.entered = &rig
	s.fit()
	if !strings.ContainsRune(s.charted, rune(f.Compartment)) {
		s.charted = sortedLetters(s.charted + string(f.Compartment))
	}
}

func sortedLetters(letters string) string {
	l := []byte(letters)
	slices.Sort(l)
	return string(l)
}

// keepCharts is a rig as it was entered, with the charts that were read with a meter where it brings none of its own: it is asked
// before the new rig stands in the book. Another chart of the new entry takes their place, and an entry that says the same chart
// leaves them what they are. Marks above a new, smaller capacity go.
func (s *state) keepCharts(f *Rig) *Rig {
	if s.charted == "" || s.entered == nil {
		return f
	}
	rig, kept := *f, ""
	rig.Compartments = slices.Clone(f.Compartments)
	for i := range rig.Compartments {
		c := &rig.Compartments[i]
		if !strings.ContainsRune(s.charted, rune(c.Letter)) {
			continue
		}
		for _, old := range s.entered.Compartments {
			if old.Letter != c.Letter {
				continue
			}
			if len(c.Marks) > 0 {
				if slices.Equal(c.Marks, old.Marks) {
					kept += string(c.Letter)
				}
				continue
			}
			c.Marks = slices.DeleteFunc(slices.Clone(old.Marks), func(m GaugeMark) bool { return m.Volume > c.Capacity })
			if c.MarkUnit == "" {
				c.MarkUnit = old.MarkUnit
			}
			kept += string(c.Letter)
		}
	}
	s.charted = kept
	return &rig
}

// digestGauges adds what books of earlier versions could not hold, and only where there is some.
func (s *state) digestGauges(w *binaryWriter) {
	if s.charted != "" {
		w.str("charted")
		w.str(s.charted)
	}
	for i := range s.plumbing.Compartments {
		if c := &s.plumbing.Compartments[i]; c.ReadBand > 0 {
			w.str("read_band")
			w.count(int(c.Letter))
			w.int(int64(c.ReadBand))
		}
	}
}
