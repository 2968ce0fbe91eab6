package core

import (
	"bytes"
	"slices"
	"sort"
	"strconv"
	"strings"

	"example.com/tintline/core/fluid"
)

// LineUpOf finds the named line-up that opens these compartments to the pump, in whatever order, and leads the return
// there; nil if the rig names none.
func (s *state) LineUpOf(supply []byte, to byte) *NamedLineUp {
	if s.rig == nil {
		return nil
	}
	for i := range s.rig.LineUps {
		if l := &s.rig.LineUps[i]; l.Return == to && sameLetters(l.Supply, supply) {
			return l
		}
	}
	return nil
}

func sameLetters(a, b []byte) bool {
	x, y := bytes.Clone(a), bytes.Clone(b)
	slices.Sort(x)
	slices.Sort(y)
	return bytes.Equal(x, y)
}

// LineUpName is the name of the line-up as it stands, empty if it has none.
func (s *state) LineUpName() string {
	if l := s.LineUpOf(s.plumbing.LineUp.Supply, s.plumbing.LineUp.Return); l != nil {
		return l.Name
	}
	return ""
}

// Positions are those of the valves as booked: of the named line-up that stands now. Nil where it has no name: then
// they are not known.
func (s *state) Positions() map[string]string {
	if l := s.LineUpOf(s.plumbing.LineUp.Supply, s.plumbing.LineUp.Return); l != nil {
		return cloneMap(l.Valves)
	}
	return nil
}

// ValveChange is a valve, how it stands by the book, and how it has to.
type ValveChange struct {
	Valve string
	From  Maybe[string]
	To    string
}

// ValveChanges parts the valves of a line-up into those to set, because they stand otherwise or are not known, and
// those that stay. Each list is in the order of the valves' names, figures as figures, those of the
// return last.
func (s *state) ValveChanges(to NamedLineUp) (set, stay []ValveChange) {
	now := s.Positions()
	for _, v := range valveNames(to) {
		c := ValveChange{Valve: v, To: to.Valves[v]}
		if at, known := now[v]; known {
			c.From = Known(at)
		}
		if c.From == Known(c.To) {
			stay = append(stay, c)
		} else {
			set = append(set, c)
		}
	}
	return set, stay
}

// ValvesTo is ValveChanges for supply and return, both lists empty where the rig names no such line-up.
func (s *state) ValvesTo(up fluid.LineUp) (set, stay []ValveChange) {
	if l := s.LineUpOf(up.Supply, up.Return); l != nil {
		return s.ValveChanges(*l)
	}
	return nil, nil
}

// Unsaid lists the valves that another line-up of the rig names and this one does not: how they stand in it is not
// said.
func (f *Rig) Unsaid(l NamedLineUp) []string {
	all := NamedLineUp{Valves: map[string]string{}}
	for _, o := range f.LineUps {
		for v := range o.Valves {
			if _, said := l.Valves[v]; !said {
				all.Valves[v] = ""
			}
		}
	}
	return valveNames(all)
}

func valveNames(l NamedLineUp) []string {
	var out []string
	for v := range l.Valves {
		out = append(out, v)
	}
	sort.Slice(out, func(i, j int) bool { return valveBefore(out[i], out[j]) })
	return out
}

func isReturn(valve string) bool {
	low := strings.ToLower(valve)
	return strings.Contains(low, "return") || strings.Contains(low, "bypass")
}

// valveBefore puts figures before words, and 2 before 10. What is called a return, or a bypass, comes last: the supply is
// turned first, so that what stands in the pump goes back where it came from.
func valveBefore(a, b string) bool {
	if x, y := isReturn(a), isReturn(b); x != y {
		return y
	}
	x, noX := strconv.Atoi(a)
	y, noY := strconv.Atoi(b)
	switch {
	case noX == nil && noY == nil && x != y:
		return x < y
	case (noX == nil) != (noY == nil):
		return noX == nil
	}
	return a < b
}
