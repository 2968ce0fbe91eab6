package core

import "slices"

// LoadMark is the load that stands in a tank, and the lawns that were treated from it, in order.
type LoadMark struct {
	Seq    uint64 // the entry
	At     Moment
	Place  string   // where it was mixed; empty: not said
	Before int64    // how many lawns on earlier days; their names stand with those days
	Lawns  []string // of the day
}

// Order is the place of the last lawn among all that were treated from the load, from 1.
func (m *LoadMark) Order() int64 { return m.Before + int64(len(m.Lawns)) }

// loadsOfDay begins the lawns of a day anew: a tank that lasts for months would else carry all of their names.
func (s *state) loadsOfDay() {
	loads := slices.Clone(s.loads)
	for i := range loads {
		loads[i].Before, loads[i].Lawns = loads[i].Order(), nil
	}
	s.loads = loads
}

// loadIn is which load stands in a tank: a letter, or an applicator.
type loadIn struct {
	Tank string
	Load uint64
}

// markLoad notes a load; what was left in the tank goes on as part of it.
func (s *state) markLoad(e Entry, f *Loaded) {
	s.loads = append(s.loads[:len(s.loads):len(s.loads)], LoadMark{Seq: e.Seq, At: e.At, Place: f.Place})
	s.putLoad(f.Into, e.Seq)
}

// markFilled notes that a tank was filled through the hose: the load in the compartment that feeds the pump stands in it.
func (s *state) markFilled(applicator string) {
	s.putLoad(applicator, s.loadOf(s.supplying()))
}

// supplying is the compartment that feeds the pump, the first where there are two; empty: none does.
func (s *state) supplying() string {
	if up := s.plumbing.LineUp; len(up.Supply) > 0 {
		return string(up.Supply[:1])
	}
	return ""
}

func (s *state) loadOf(tank string) uint64 {
	for _, l := range s.loadsIn {
		if l.Tank == tank {
			return l.Load
		}
	}
	return 0
}

// putLoad makes the lists anew: earlier copies of the state keep theirs. Loads of which nothing stands in any tank are forgotten.
func (s *state) putLoad(tank string, load uint64) {
	in := slices.DeleteFunc(slices.Clone(s.loadsIn), func(l loadIn) bool { return l.Tank == tank })
	if load != 0 {
		in = append(in, loadIn{tank, load})
	}
	s.loadsIn = in
	s.loads = slices.DeleteFunc(slices.Clone(s.loads), func(m LoadMark) bool {
		return !slices.ContainsFunc(in, func(l loadIn) bool { return l.Load == m.Seq })
	})
}

// loadLaid is the load that a piece came from, as it stands with this lawn: the load in the applicator's own tank, or in the compartment
// that most of the piece came from, which after a changeover is not the one that was drawn from.
func (s *state) loadLaid(l *Laid) LoadMark {
	tank := l.Applicator
	if s.loadOf(tank) == 0 {
		tank = ""
		var most int64
		for _, p := range l.From {
			if o := s.origins[p.Key]; p.N > most && o.Letter != 0 {
				most, tank = p.N, string(o.Letter)
			}
		}
	}
	load := s.loadOf(tank)
	for i := range s.loads {
		m := &s.loads[i]
		if m.Seq != load {
			continue
		}
		if n := len(m.Lawns); n == 0 || m.Lawns[n-1] != l.Lawn {
			loads := slices.Clone(s.loads)
			loads[i].Lawns = append(m.Lawns[:n:n], l.Lawn)
			s.loads = loads
		}
		return s.loads[i]
	}
	return LoadMark{}
}
