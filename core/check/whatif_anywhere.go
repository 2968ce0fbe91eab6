package check

import (
	"sort"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// lookTo looks at the rig as if the valves were turned to a compartment. With no lawn in the intent it judges by one of the
// route that the compartment fits, else of the book, the one for which most has to be pushed; and where there is none, by
// strength.
func lookTo(b *core.Book, in Intent, to byte) (*situation, error) {
	in.From = to
	if in.Lawn != "" {
		return look(b, in)
	}
	var best *situation
	for _, name := range standIns(b, to) {
		in.Lawn, in.Zones = name, nil
		s, err := look(b, in)
		if err != nil {
			return nil, err
		}
		s.instead = name
		if s.tank != nil || best == nil || pushes(s) > pushes(best) {
			best = s
		}
	}
	if best != nil {
		return best, nil
	}
	in.Lawn = ""
	return lookByStrength(b, in)
}

func pushes(s *situation) measure.Volume {
	if c := s.toClean(); c != nil {
		return c.PushBack
	}
	return 0
}

// standIns are lawns that a compartment fits, one for each set of grasses: of the route that is left, else of the book.
func standIns(b *core.Book, to byte) []string {
	seen := map[string]bool{}
	var out []string
	add := func(l *core.Lawn) {
		c := b.Plumbing().Compartment(to)
		if l == nil || c == nil || len(l.Zones) == 0 {
			return
		}
		var grasses []string
		for _, z := range l.Zones {
			grasses = append(grasses, z.Grass)
		}
		sort.Strings(grasses)
		key := strings.Join(grasses, "\n")
		if seen[key] {
			return
		}
		seen[key] = true
		if fits, _ := fitsLawn(b, c, l); fits {
			out = append(out, l.LawnName)
		}
	}
	for _, v := range b.Day().Visits {
		if isAhead(v) {
			add(b.Lawn(v.Lawn))
		}
	}
	if len(out) == 0 {
		seen = map[string]bool{}
		for _, l := range b.Lawns() {
			add(l)
		}
	}
	return out
}

// lookByStrength is a situation without any lawn: nothing is listed or not, so that only strength counts. The delivery is the
// applicator's own.
func lookByStrength(b *core.Book, in Intent) (*situation, error) {
	s, err := situationOf(b, in, &core.Lawn{})
	if err != nil {
		return nil, err
	}
	s.byStrength = true
	if err := s.findApplicator(); err != nil {
		return nil, err
	}
	s.wet, s.area = s.with.Sprays(), measure.SquareFeet(1000)
	s.want = max(s.with.Delivery.Volume(s.area), 1)
	s.up = fluid.LineUp{Supply: []byte{in.From}, Return: in.From}
	s.after = b.Plumbing().Sketch()
	if b.Plumbing().Compartment(in.From) == nil || !s.wet || s.tank != nil {
		return s, nil
	}
	s.after.Turn(s.up)
	s.after.PushOut(s.with.Hose, s.want, b.BypassAtHose(s.after, s.with.Hose, s.want).Or(0), Pail)
	return s, nil
}
